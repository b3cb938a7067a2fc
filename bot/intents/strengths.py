"""Curing salt told for one strength and wanted of another, and curing salt that is dissolved already."""

from dataclasses import dataclass
from typing import Final

from bot import measures
from core import patterns as re
from core.cure.contents import STRONG_CURES
from core.units import Fraction, Kilograms

STRONG: Final[Fraction] = STRONG_CURES[0]
_SOLD: Final = r"(?P<n>6\.25|6\.2|5\.88|5\.9|0?\.[4-9]\d?) ?(?:%|percent|pct)?(?![\d.]| ?(?:kg|g|lb|oz|l|in|mm|cm)\b)"
_STRENGTHS: Final = re.compile(rf"(?<![\d.]){_SOLD}")
_HAVE: Final = r"(?:mine|my (?:cure|salt|packet|one|stuff)|i(?:ve| have)(?: got)?|only have|(?:only )?got)"
_MINE: Final = re.compile(rf"\b{_HAVE}\b[^\d,;]{{0,20}}(?<![\d.]){_SOLD}")
_CURE: Final = r"(?:pink(?: salt)?|curing salt|cure|prague(?: powder)?)(?: ?(?:# ?|no ?|number )?1)?"
_STRONG_ASKED: Final = re.compile(
    rf"\bhow much (?:of )?(?:the |my )?(?:us |american )?{_CURE}\b|\b(?:in|of|to|with|use) (?:us |american ){_CURE}\b"
)
_CURE_NAMED: Final = re.compile(r"\b(?:cure|curing|pink|prague|nitrite|p(?:oe|o|ö)kelsalz|nps)\b")
_DISSOLVED: Final = re.compile(
    rf"(?<![\d.])(?P<cure>\d{{1,3}}(?:\.\d)?) ?g(?:rams?)? (?:of )?(?:the )?{_CURE}"
    r"(?: (?:with|w|into|in|and|to|plus|\+|&))+ (?P<water>\d{1,4}(?:\.\d)?) ?(?:g|grams?|ml)(?: of)? water\b"
)
_IN_SALT: Final = re.compile(  # «a mix of 10 g cure and 90 g salt»
    rf"(?<![\d.])(?P<cure>\d{{1,3}}(?:\.\d)?) ?g(?:rams?)? (?:of )?(?:the )?"
    rf"(?:\d{{1,2}}\.\d{{1,2}} ?(?:%|percent)? )?{_CURE}"
    r"(?:,? (?:with|w|into|in|and|to|plus|\+|&)|,)+ (?P<water>\d{1,4}(?:\.\d)?) ?g(?:rams?)?(?: of)? (?:\w+ )?salt\b"
)
_MADE_UP: Final = re.compile(r"\b(?:mix\w*|made|make|blend\w*|pre-?mix\w*|diluted|cut)\b")
_SHARE_ASKED: Final = re.compile(r"\b(?:percent(?:age)?|strength|how strong|what %|% nitrite|nitrite %)|% is\b")
_TENTH: Final = re.compile(
    r"\b(?:10 ?(?:%|percent)|1 ?(?:in|to|:) ?(?:9|10)) (?:cure |curing salt )?(?:stock|solution|mix)\b"
)
_WANTED: Final = re.compile(
    r"\b(?:need|want|dose(?: is| of)?|for|calls for) (?P<n>\d{1,2}(?:\.\d{1,2})?) ?(?:g|grams?)\b(?! ?(?:of )?water)"
)
_LEAST_WATER: Final = 3.0  # times the curing salt, so that all of it dissolves. Common practice
MOST_DOSE: Final[Kilograms] = 0.3


@dataclass(frozen=True)
class Swap:
    """So much curing salt of one strength, and the strength that is wanted instead; whether that was told. [kg, -]"""

    mass: Kilograms
    has: Fraction
    wanted: Fraction
    told: bool


@dataclass(frozen=True)
class Stock:
    """Curing salt in water, or in plain salt, and the curing salt that is wanted of it. [kg]"""

    share: Fraction
    wanted: Kilograms
    in_salt: bool = False


def swapped(text: str) -> Swap | None:
    """«recipe says 30 g of 0.5 % nitrite salt, i only have 6.25»: None where it is not both."""
    found = [*_STRENGTHS.finditer(text)] if "." in text else []
    strengths = list(dict.fromkeys(_share(one) for one in found))
    if not (_CURE_NAMED.search(text) or set(strengths) == set(STRONG_CURES)):
        return None
    masses = [m for m in measures.find(text) if m.kind == "mass" and m.unit in ("g", "oz") and m.value <= MOST_DOSE]
    if len(masses) != 1:
        return None
    if len(strengths) == 1 and strengths[0] < STRONG / 2.0 and _STRONG_ASKED.search(text):
        return Swap(masses[0].value, strengths[0], STRONG, told=False)
    if len(strengths) != 2:
        return None
    mine = _MINE.search(text)
    behind = next((one for one in found if one.start() >= masses[0].end), None)
    first = _share(behind) if behind else strengths[0]
    wanted = _share(mine) if mine else next(one for one in strengths if one != first)
    return Swap(masses[0].value, next(one for one in strengths if one != wanted), wanted, told=True)


def blended(text: str) -> tuple[Kilograms, Kilograms] | None:
    """«nitrite percent if i blend 100 g cure 1 with 900 g salt»: the curing salt and the plain salt of a mix. [kg]"""
    found = _IN_SALT.search(text) if _MADE_UP.search(text) and _SHARE_ASKED.search(text) else None
    if found is None or _WANTED.search(text, found.end()):
        return None
    return float(found["cure"]) / 1000.0, float(found["water"]) / 1000.0


def _share(found: re.Match[str]) -> Fraction:
    return float(found["n"]) / 100.0


def stock(text: str) -> Stock | None:
    """«mixed 10 g cure with 90 g water, need 6 g»: how much of it that is; None where it is no such thing."""
    dry = _IN_SALT.search(text) if _MADE_UP.search(text) else None
    made, tenth = dry or _DISSOLVED.search(text), _TENTH.search(text)
    if made is None and tenth is None:
        return None
    wanted = _WANTED.search(text, made.end() if made else 0) or _WANTED.search(text)
    if wanted is None or (made and not dry and float(made["water"]) < _LEAST_WATER * float(made["cure"])):
        return None
    share = float(made["cure"]) / (float(made["cure"]) + float(made["water"])) if made else 0.1
    return Stock(share, float(wanted["n"]) / 1000.0, bool(dry))
