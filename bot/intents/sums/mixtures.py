"""Mixes told by their figures alone: a pumped pickle, salty meat in water, a tub to thin, a fire by the hour."""

from dataclasses import dataclass
from typing import Final

from bot import measures
from bot.intents.sums.told import Told, told
from bot.intents.sums.wanted import NEEDLED
from core import patterns as re
from core.units import Fraction, Hours, Kilograms

_PUMPED: Final = re.compile(rf"{NEEDLED.pattern}|\b(?:needle\w*|syringe)\b|\bhow many ml\b(?! of)")
_SPAN_ASKED: Final = re.compile(r"\b(?:days|how long|when)\b")
_LEVEL_ASKED: Final = re.compile(r"\b(?:ppm|nitrite|legal|over the limit|too (?:strong|much))\b")
_SOAKED: Final = re.compile(
    r"\b(?:soak\w*|(?:put|lay|lie|leave|sit|steep)\w* (?:it )?in (?:\d[\d.]* ?\w+ (?:of )?)?"
    r"(?:fresh |cold |plain )*water)\b"
)
_CURES: Final = re.compile(r"\b(?:cure|curing|nitrite|pink|prague|brine|grams?|how much salt)\b")
_TO_THIN: Final = re.compile(
    r"\bhow much (?:more |extra |fresh )?water\b|\bwater (?:do i (?:add|need)|to (?:add|get|bring|thin))\b"
)
_OF_BRINE: Final = re.compile(r"\bbrine (?:at|of) \d[\d.]* ?(?:%|percent|pct)|(?:%|percent|pct) brine\b")
_CURE_BESIDE: Final = re.compile(r"\bcure \(?(\d{1,3}(?:\.\d)?) ?g\b")  # «counting the cure (10 g)»
_BURNS: Final = re.compile(  # «burns 1.5 lb pellets an hour», «2 lb/h of lump»
    r"(?<![\d.])(?P<n>\d{1,2}(?:\.\d{1,2})?) ?(?P<unit>kg|kilos?|lbs?|pounds?)"
    r"(?: (?:of )?(?:wood |hardwood )?(?:pellets?|lump|charcoal|briq\w*|coals?|fuel))? ?"
    r"(?:an?|per|each|every|/|1) ?(?:h|hr|hour)\b"
)
_FUEL: Final = re.compile(r"\b(?:pellets?|hopper|lump|charcoal|briq\w*|coals?|fuel)\b")
_SALTED: Final = (0.005, 0.12)  # a share of salt that meat and its brine may have


@dataclass(frozen=True)
class Burns:
    """What a fire takes in an hour [kg], for how long [h], and what there is of it [kg]; None where it is not told."""

    an_hour: Kilograms
    hours: Hours | None
    has: Kilograms | None


@dataclass(frozen=True)
class Soaked:
    """Salt as a share of meat that lies in fresh water."""

    share: Fraction
    meat: Kilograms
    water: Kilograms


@dataclass(frozen=True)
class Thinned:
    """All that salt is a share of, the salt in it, the share that is wanted, and the curing salt in it."""

    whole: Kilograms
    salt: Kilograms
    wanted: Fraction
    cure: Kilograms | None


def needled(line: Told) -> bool:
    """What is pumped into a piece, asked for; of a share without the piece that is asked for then."""
    of_meat = line.has("meat") or (line.has("pump") and "how much" in line.text)
    return of_meat and bool(_PUMPED.search(line.text)) and not _SPAN_ASKED.search(line.text)


def of_pickle(text: str) -> Told | None:
    """«4 l water, 300 g salt, 100 g cure, pump a ham 10 %: ppm»: a pickle by its parts, and how much is pumped."""
    line = told(text)
    pumped = NEEDLED.search(text) and line.has("cure", "water") and line.salt is not None
    return line if pumped and line.pump is not None and _LEVEL_ASKED.search(text) else None


def brine_for(text: str) -> bool | None:
    """«7 l brine at 5 % for a 5 kg bird, salt?»: the strength of the brine, whatever lies in it; None for any other."""
    told_ = told(text)
    plain = not re.search(r"\b(?:cure|curing|pink|nitrite|ppm|soak\w*)\b", text)
    asked = _OF_BRINE.search(text) and "salt" in text and plain
    return True if asked and told_.has("water", "meat") and len(told_.fractions) == 1 else None


def in_water_alone(text: str) -> Told | None:
    """«17 g of cure in 1 gal, what ppm»: of water, and of no meat yet."""
    line = told(text)
    return line if line.has("cure", "water") and line.meat is None and line.pump is None and "ppm" in text else None


def soaked(text: str) -> Soaked | None:
    """«came out at 4 % salt, 3 kg, soaked in 6 l of water where does it end»: meat with its salt, and fresh water."""
    line = told(text) if _SOAKED.search(text) and not _CURES.search(text) else None
    if line is None or len(line.fractions) != 1 or line.meat is None or line.water is None or line.salt is not None:
        return None
    share = line.fractions[0]
    return Soaked(share, line.meat, line.water) if _SALTED[0] <= share <= _SALTED[1] else None


def thinned(text: str) -> Thinned | None:
    """«4 kg meat and water, 140 g salt, how much water to get to 2.5 %»: too salty by weight; else None."""
    line = told(text) if _TO_THIN.search(text) else None
    if line is None or line.meat is None or line.salt is None or len(line.fractions) != 1:
        return None
    whole = line.meat + (line.water or 0.0)
    wanted, beside = line.fractions[0], _CURE_BESIDE.search(text)
    cure = line.cure or (float(beside[1]) / 1000.0 if beside else None)
    return Thinned(whole, line.salt, wanted, cure) if wanted < line.salt / whole <= _SALTED[1] else None


def burns(text: str) -> Burns | None:
    """What a fire burns in an hour as somebody knows it, beside the hours or the fuel that there is."""
    found = _BURNS.search(text) if _FUEL.search(text) else None
    if found is None:
        return None
    rest = text[: found.start()] + text[found.end() :]
    hours = [m.value / 3600.0 for m in measures.of_kind(rest, "duration")]
    masses = [m.value for m in measures.of_kind(rest, "mass")]
    if len(hours) > 1 or len(masses) > 1 or not (hours or masses):
        return None
    unit = "kg" if found["unit"].startswith("k") else "lb"
    return Burns(measures.to_house(float(found["n"]), unit), next(iter(hours), None), next(iter(masses), None))
