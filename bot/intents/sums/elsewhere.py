"""Units of other kitchens that are asked about and never dosed by: British gallons and pints, gas marks, a rise."""

from dataclasses import dataclass
from typing import Final

from core import patterns as re

# Weights and Measures Act 1985, Schedule 1 (of 1985), and NIST Handbook 44, Appendix C: exact. [l]
BRITISH_GALLON: Final = 4.54609
US_GALLON: Final = 3.785411784
IN_A_GALLON: Final = {"gal": 1.0, "qt": 4.0, "pt": 8.0, "gill": 32.0}
FLUID_OUNCES: Final = {"uk": 160.0, "us": 128.0}  # of a gallon
_MARKS_F: Final = {"1/4": 225.0, "0.25": 225.0, "1/2": 250.0, "0.5": 250.0, "half": 250.0, "quarter": 225.0}
_FIRST_MARK_F, _A_MARK_F = 275.0, 25.0  # gas marks of 1 to 9, in °F, as British ovens are marked. Common practice
_N: Final = r"(?P<n>\d{1,4}(?:\.\d{1,2})?|\d/\d|half(?: an?| of an?)?|an?|one)"
_UNIT: Final = (
    r"(?P<land>us |u\.s\. |american |imp |imperial |british |uk |english )?"
    r"(?:(?P<gal>gallons?|gals?)|(?P<qt>quarts?|qts?)|(?P<pt>pints?|pts?)|(?P<gill>gills?)"
    r"|(?P<oz>fl\.? ?oz|fluid ounces?))"
)
_INTO: Final = r"(?:(?P<l>l|lit(?:er|re)s?)|(?P<ml>ml|millilit\w+|ccs?))"
_VOLUME: Final = (
    re.compile(
        rf"^(?:whats |what is |how much is |convert )?{_N} ?{_UNIT}(?: of [a-z]+)? "
        rf"(?:in|to|into|as) (?:how many )?{_INTO}[ ?.]*$"
    ),
    re.compile(
        rf"^how (?:many|much) {_INTO} (?:is|are|in|to|does|do|makes?)(?: there)?(?: in)? {_N} ?{_UNIT}"
        r"(?: have| hold)?[ ?.]*$"
    ),
    re.compile(
        rf"^(?:is |whats )?{_N} {_UNIT}(?: the same| always)?,? (?:\d[\d.]* or \d[\d.]*|how many|what in) ?{_INTO}\b"
    ),
    re.compile(rf"^how (?:big|much) is {_N} {_UNIT}(?:,? in {_INTO})?[ ?.]*$"),
)
_WATER: Final = (
    re.compile(
        rf"^(?:so )?(?:what|how much|how heavy) (?:does|do|is|are|will) {_N} ?(?:{_UNIT}|{_INTO}) of "
        r"(?:plain |cold )?water(?: weigh)?[ ?.]*$"
    ),
    re.compile(
        rf"^{_N} ?(?:{_UNIT}|{_INTO})(?: of)? water (?:in|to|weighs?|is) (?:how much|how many )?"
        r"(?:lbs?|pounds?|kg|kilos?|grams?|g|oz)?[ ?.]*$"
    ),
)
_MARK: Final = re.compile(
    r"^(?:so )?(?:(?:whats|what is|how hot is|convert) )?(?:a )?gas ?(?:mark)? ?"
    r"(?P<n>1/4|1/2|0\.25|0\.5|[1-9](?!\d|/)|half|quarter)"
    r"(?: (?:in|to|is|as|what|how hot|mean\w*|degrees|f|c|fahrenheit|celsius|or|temp\w*))*[ ?.]*$"
)
_RISE: Final = re.compile(
    r"(?<![\d.])(?P<n>\d{1,3}(?:\.\d)?) ?(?:degrees? |deg |°)?(?P<unit>c|f|celsius|fahrenheit) "
    r"(?:warmer|hotter|colder|cooler|higher|lower|more|less|difference|diff|rise|drop|off|out|up|down)\b"
)
_RISE_ASKED: Final = re.compile(
    r"\b(?:how (?:many|much)(?: is (?:that|it))?(?: in)?|whats that(?: in)?|in|to|as) (?:degrees )?"
    r"(?:c|f|celsius|fahrenheit)\b"
)


@dataclass(frozen=True)
class Volume:
    """A volume of a kitchen of elsewhere: how much of which unit, whose it is ("us", "uk" or ""), and as litres."""

    many: float
    unit: str
    land: str
    us: float
    uk: float


def volume(text: str) -> Volume | None:
    """«2 pints in ml», «is a gallon 3.8 or 4.5 litres»: asked in litres, whosever it may be."""
    return next((_volume(found) for words in _VOLUME if (found := words.search(text))), None)


def water(text: str) -> Volume | None:
    """«how much does a gallon of water weigh»: a litre of it for a kilo."""
    found = next((found for words in _WATER if (found := words.search(text))), None)
    if found is None:
        return None
    if not (found["l"] or found["ml"]):
        return _volume(found)
    litres = _many(found["n"]) * (0.001 if found["ml"] else 1.0)
    return Volume(_many(found["n"]), "ml" if found["ml"] else "l", "", litres, litres)


def gas_mark(text: str) -> tuple[str, float] | None:
    """«gas mark 3 in f»: the mark and its oven. [°F]"""
    found = _MARK.match(text) if "gas" in text else None
    if found is None:
        return None
    mark = found["n"]
    return mark, _MARKS_F.get(mark) or _FIRST_MARK_F + _A_MARK_F * (float(mark) - 1.0)


def rise(text: str) -> tuple[float, str, float] | None:
    """«10 degrees c warmer is how many f»: a difference, its unit, and so many degrees of the other."""
    found = _RISE.search(text) if _RISE_ASKED.search(text) else None
    if found is None:
        return None
    many, unit = float(found["n"]), found["unit"][0]
    return many, unit, many * 1.8 if unit == "c" else many / 1.8


def _volume(found: re.Match[str]) -> Volume:
    many = _many(found["n"])
    unit = "fl oz" if found["oz"] else next(one for one in IN_A_GALLON if found[one])
    land = (found["land"] or "").strip()
    each = [1.0 / FLUID_OUNCES[one] if unit == "fl oz" else 1.0 / IN_A_GALLON[unit] for one in ("us", "uk")]
    whose = "" if not land else "us" if land[:2] in ("us", "u.", "am") else "uk"
    return Volume(many, unit, whose, many * each[0] * US_GALLON, many * each[1] * BRITISH_GALLON)


def _many(word: str) -> float:
    if word.startswith("half"):
        return 0.5
    above, _, below = word.partition("/")
    return float(above) / float(below or 1) if above[0].isdigit() else 1.0
