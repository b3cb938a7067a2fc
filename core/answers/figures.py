"""A figure with its unit as one word of its kind: for the likeness of questions 3.4 kg and 7 lb are alike, a weight."""

import re
from typing import Final

_DIGIT: Final = re.compile(r"\d")
_NAMES: Final = frozenset({"1", "2"})  # of the two kinds of curing salt
_FIRST_KIND: Final = re.compile(
    r"(?<!\w)(?:cure )?(?:#|no\.? ?|nr\.? ?|number )1\b(?! ?(?:kg|kilos?|lbs?|g|oz|l|%|h|min|day)\b)"
)
_PIT_F, _HOTTEST_F = 215, 450  # °F; no core of meat is read there. Common practice
_NUMBER: Final = r"(?<![\w.,/#])(?:\d+ )?\d+(?:[.,/]\d+)*"
# the kind, and the units in which it is told; the kinds are words that nobody types
_KINDS: Final = (
    ("qspoon spoon", r"tsps?|teaspoons?|tbsps?|tablespoons?|cups?"),
    ("qmass", r"kgs?|kilos?|kilograms?|gr?|gms?|grams?|lbs?|pounds?|oz|ounces?"),
    ("qlength", r"mm|cm|millimet\w+|centimet\w+|inch(?:es)?|in(?= thick|$)|\""),
    ("qvolume", r"l|lit(?:er|re)s?|mls?|gal|gallons?|qts?|quarts?"),
    ("qshare", r"%|percent|per cent|pct"),
    ("qppm ppm", r"ppm|mg/kg"),
    ("qtemp", r"°? ?[cf]|(?:degrees?|deg)(?: [cf]\b)?|celsius|fahrenheit|centigrade"),
    ("qhours", r"min|mins|minutes?|h|hrs?|hours?"),
    ("qdays", r"d|days?|wks?|weeks?|months?"),
    ("qclock", r"(?::\d\d ?)?(?:am|pm)|oclock|:\d\d"),
    ("qheight", r"m|met(?:er|re)s?|ft|feet|foot"),
)
_UNITS: Final = "|".join(f"(?P<k{n}>{units})" for n, (_, units) in enumerate(_KINDS))
_FIGURE: Final = re.compile(rf"{_NUMBER} ?-?(?:{_UNITS})(?!\w)|(?P<bare>{_NUMBER})(?!\w)")


def folded(text: str) -> str:
    """A plain text with each figure as a word of its kind: «4 kg pork at 110 c» is «qmass pork at qtemp»."""
    if not _DIGIT.search(text):
        return text
    return _FIGURE.sub(_kind, _FIRST_KIND.sub("cure 1", text))


def _kind(found: re.Match[str]) -> str:
    if bare := found["bare"]:
        return bare if bare in _NAMES else _bare(bare)
    return next(word for n, (word, _) in enumerate(_KINDS) if found[f"k{n}"] is not None)


def _bare(number: str) -> str:
    """A number without a unit: small, a core or an amount, or as hot as a pit alone is."""
    if len(number) < 3 or "." in number:
        return "qsmall"
    return "qpit" if number.isdecimal() and _PIT_F <= int(number) <= _HOTTEST_F else "qlarge"
