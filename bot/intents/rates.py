"""Curing salt told for each kilo or pound of meat, by weight or by the spoon; and shares of the meat: «0.25 % cure»."""

from dataclasses import dataclass
from typing import Final

from bot import measures
from core import patterns as re
from core.cure.dose import from_teaspoons
from core.units import Kilograms

_FOR_EACH: Final = re.compile(  # of curing salt, or of what was spoken of; «15 g salt a kilo» is none
    r"\b(?P<number>\d+(?:\.\d+)?) ?(?P<unit>g|gr|grams?|oz|ounces?|tsps?|teaspoons?|tbsps?|tablespoons?)\b(?: of)?"
    r"(?: (?:(?:pink|curing|nitrite) salt|prague powder|cure|pink|it|that))?(?: (?:no ?|#)?[12])? ?"
    r"(?:\b(?:per|an?|for (?:each|every|an?)|each|every|to the) |/ ?)(?:1 )?(?P<meat>kg|kilo|lb|pound)"
)


_OF_A_PACKET: Final = re.compile(  # «4 oz per 100 lb»
    r"\b(?P<number>\d+(?:\.\d+)?) ?(?P<unit>g|gr|grams?|oz|ounces?|lbs?|pounds?|kg|tsps?|teaspoons?|tbsps?"
    r"|tablespoons?)\b[a-z #1]{0,24}?(?:\bper |\b(?:for|to|in) (?:each |every )|/ ?)"
    r"(?P<of>\d+(?:\.\d+)?) ?(?P<meat>kg|kilos?|lbs?|pounds?)\b"
)
_OF_A_UNIT: Final = re.compile(  # «25 g per kilo», of a packet, a book or a spice
    r"\b(?P<number>\d+(?:\.\d+)?) ?(?P<unit>g|gr|grams?|oz|ounces?|tsps?|teaspoons?|tbsps?|tablespoons?)\b"
    r"[a-z #1]{0,24}?(?:\b(?:per|an?|for (?:each|every|an?)|each|every|to the) |/ ?)(?:1 )?"
    r"(?P<meat>kg|kilo|lb|pound|l|lit(?:er|re)|gal|gallon|qt|quart)\b"
)
_MINE: Final = re.compile(r"\b(?:i have|i got|ive|i do|got|mine|my|have|for|on|with)\b")
_SEASONS: Final = re.compile(
    r"\b(?:pepper\w*|coriander|spices?|rub|seasoning|mustard|paprika|garlic|honey|sugar"
    r"|juniper|(?:table |sea |kosher )?salt)\b"
)
_CURING: Final = (
    r"(?:pink (?:curing )?salt|curing salt|nitrite salt|prague powder|pink stuff|cure)(?: ?(?:no ?|# ?)?[12]"
    r"(?! ?(?:%|percent|pct)))?"
)
_NOUNS: Final = rf"(?P<cure>{_CURING})|(?P<sugar>(?:brown |white |cane )?sugar|honey)|(?P<salt>(?:[a-z]+ )?salt)"
_SHARE: Final = re.compile(
    rf"(?<![\d.])(?P<n>\d{{1,2}}(?:\.\d{{1,3}})?) ?(?:%|percent|pct) (?:of )?(?:the )?(?:{_NOUNS})\b"
)
_SHARE_BEHIND: Final = re.compile(  # «salt 2 % sugar 1 %»
    rf"\b(?:{_NOUNS}):? (?:at |of )?(?P<n>\d{{1,2}}(?:\.\d{{1,3}})?) ?(?:%|percent|pct)"
)
_NUMBERED: Final = re.compile(r"pink|prague|[12]$")  # the strong kind by its name: its share is none of a packet
_OF_A_DOSE: Final = (0.002, 0.0035)  # no curing salt is sold so weak
PLAIN_ASKED: Final = re.compile(
    r"\bhow much (?:more |of the )?(?:plain|normal|regular|other|table|sea|kosher) salt\b"
    r"|\bhow much (?:is )?(?:plain|kosher)\b(?! (?:is|are|makes?)\b)|\b(?:minus|less|without) (?:\w+ ){0,4}?cure\b"
)  # what goes in beside it
CURE_SPOKEN_OF: Final = re.compile(r"\b(?:cure|curing|pink|nitrite|prague)\b")
BRINE: Final = re.compile(  # so many litres of a brine, and no curing salt: «brine for 2 chickens, 4 l at 6 %»
    r"^(?!.*\b(?:cure|curing|pink|nitrite|prague|packet|strength)\b)(?=.*\bbrine\b)"
    r".*\d ?(?:l|lit(?:er|re)s?|gal|gallons?|qts?|quarts?|cups?)\b"
)
_CURE_IS: Final = re.compile(  # «cure is 12.5 g», «11 g of cure»
    r"\b(?:cure|curing salt|pink(?: salt)?)(?: (?:is|was|weighs?|at|of))* (?P<n>\d{1,3}(?:\.\d{1,2})?) ?(?:g|grams?)\b"
    r"|(?<![\d.])(?P<m>\d{1,3}(?:\.\d{1,2})?) ?(?:g|grams?) (?:of )?(?:the )?(?:cure|curing salt|pink)\b"
)
SIZED: Final = re.compile(  # «if 3.4 kg needs 8.2 g cure, how much for 2.1 kg», «6 g for 2.4 kg, what for 3.1 kg»
    r"\d ?(?:kg|kilos?|lbs?|pounds?)\b.*\b(?:how much|how many g(?:rams)?|what) (?:\w+ )?(?:for|on|do|does)\b"
    r".{0,12}\d ?(?:kg|kilos?|lbs?|pounds?)\b"
    r"|\d ?(?:kg|kilos?|lbs?|pounds?)\b.*\b(?:i have|ive|i(?:ve)? (?:only )?got|mines?|mine is|now|only have)"
    r"(?: only| just| about| got)* \d[\d.]* ?(?:kg|kilos?|lbs?|pounds?)\b"
)
OF_NO_MIXTURE: Final = f"{PLAIN_ASKED.pattern}|{SIZED.pattern}"
_NAMES: Final = {"o": "oz", "l": "lb", "p": "lb", "k": "kg", "g": "g"}
_PACKET: Final = re.compile(r"\b(?:pack\w*|label|recipe|book|bag|tub|jar)\b")
MOST_OF_STRONG: Final = 0.015  # of the meat: far over what is lawful of it, and no rate of a weak kind is so low
MOST_RATE: Final = 0.04
MOST_SHARE: Final = 0.02  # of curing salt that anybody would put in


def shares(text: str) -> dict[str, float]:
    """The shares of the meat that a line names: of salt, of sugar, of curing salt; a packet's nitrite is none."""
    before, behind = [*_SHARE.finditer(text)], [*_SHARE_BEHIND.finditer(text)]
    found = {
        name: m
        for m in (behind if len(behind) > len(before) else before)
        for name in ("cure", "sugar", "salt")
        if m[name]
    }
    return {name: float(m["n"]) / 100.0 for name, m in found.items() if name != "cure" or _is_a_dose(m)}


def cure_beside(text: str) -> Kilograms | None:
    """The grams of curing salt that a line tells by its word, before them or after."""
    found = _CURE_IS.search(text)
    return float(found["n"] or found["m"]) / 1000.0 if found else None


def _is_a_dose(found: re.Match[str]) -> bool:
    share = float(found["n"]) / 100.0
    return share <= MOST_SHARE and (bool(_NUMBERED.search(found["cure"])) or _OF_A_DOSE[0] <= share <= _OF_A_DOSE[1])


def rate(text: str) -> tuple[float, float] | None:
    """Curing salt for each kilo of meat, as «25 g per kilo», «1 tbsp a lb», «0.25 % cure»: least and most. [kg/kg]"""
    found = _FOR_EACH.search(text)
    if found is None:
        share = shares(text).get("cure")
        return None if share is None else (share, share)
    number, unit = float(found["number"]), found["unit"]
    meat = measures.to_house(1.0, "kg" if found["meat"].startswith("k") else "lb")
    if not unit.startswith("t"):
        one = measures.to_house(number, "oz" if unit.startswith("o") else "g") / meat
        return one, one
    low, high = from_teaspoons(number * (3.0 if unit.startswith(("tb", "ta")) else 1.0))
    return low / meat, high / meat


@dataclass(frozen=True)
class PacketRate:
    """Curing salt for so much meat, as a packet tells it, and the meat of one's own. [kg/kg, kg]"""

    low: float
    high: float
    mine: Kilograms
    poured: bool = False


def of_a_packet(text: str) -> PacketRate | None:
    """«4 oz per 100 lb, i got 3 lb»: the packet's rate, where a weight of one's own stands beside it."""
    found = _rate_beside(text)
    if found is None or found.poured or _of_a_seasoning(text) or found.high > MOST_RATE:
        return None
    weak = found.high > MOST_OF_STRONG  # of a weak kind, or of anything else: its packet is spoken of
    return None if weak and not CURE_SPOKEN_OF.search(text) and not _PACKET.search(text) else found


def at_rate(text: str) -> PacketRate | None:
    """«pepper 20 g per kilo, i have 2.6 kg»: the rate of a seasoning, and the meat that is told beside it."""
    found = _rate_beside(text) if _of_a_seasoning(text) else None
    return None if found is not None and found.poured and "salt" in text else found  # a brine has a sum of its own


def _of_a_seasoning(text: str) -> bool:
    return bool(_SEASONS.search(text)) and not CURE_SPOKEN_OF.search(text)


def _rate_beside(text: str) -> PacketRate | None:
    """The rate of a line beside one other weight, which is that of one's own meat."""
    found = _OF_A_PACKET.search(text) or (_OF_A_UNIT.search(text) if _MINE.search(text) or "," in text else None)
    if found is None or len(_OF_A_UNIT.findall(text)) > 1:
        return None
    rest = text[: found.start()] + " ; " + text[found.end() :]
    poured = found["meat"][0] in "lgq" and not found["meat"].startswith("lb")  # «15 g per liter, 2.5 l»
    mine = [m.value for m in measures.find(rest) if m.kind == ("volume" if poured else "mass")]
    of = float(found.groupdict().get("of") or 1.0) * measures.find(f"1 {found['meat']}")[0].value
    if len(mine) != 1 or of <= 0.0:
        return None
    number, unit = float(found["number"]), found["unit"]
    if unit.startswith("t"):
        low, high = from_teaspoons(number * (3.0 if unit.startswith(("tb", "ta")) else 1.0))
    else:
        low = high = measures.to_house(number, _NAMES[unit[0]])
    return PacketRate(low / of, high / of, mine[0], poured)
