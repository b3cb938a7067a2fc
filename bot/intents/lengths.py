"""Lengths that stand for themselves: the height of a place, how thick a piece is without its unit, and at which end."""

from typing import Final

from bot import measures
from core import patterns as re
from core.units import METRES_PER_FOOT, Metres

_HEIGHT: Final = re.compile(r"\b(?P<n>\d{3,5}) ?(?P<unit>m|met(?:er|re)s?|ft|feet|foot)\b")
_BARE_HEIGHT: Final = re.compile(r"\b(?:elevation|altitude)(?: of| is| at)? (?P<n>\d{3,5})\b(?! ?(?:[cf]|°|deg\w*)\b)")
_BARE_THICK: Final = re.compile(
    r"(?<![\d./:])(?P<n>\d{1,3}(?:\.\d{1,2})?) (?:thick|at (?:the|its) thickest|at the thick end)\b"
)
THICK_AND_THIN: Final = re.compile(
    r"\b(?:thin(?:nest|ner)?|skinn(?:y|iest))\b|\btaper\w*|\b(?:one|other|narrow) (?:end|side)\b|\bat the other\b"
    r"|\d[^,;]*\b(?:the )?(?:other|second|next|smaller|2nd)(?: one| piece)?(?:s| is| are)? (?:about )?\d"
    r"|\bmiddle\b.*\d.*\b(?:ends?|edges?|sides?)\b"
)
MOST_INCHES: Final = 8.0  # of a piece: a bare number above it is of millimetres
LEAST_MM: Final = 15.0
MOST_MM: Final = 150.0


def height(text: str, in_feet: bool) -> Metres | None:
    """The height of a place, in feet or metres where the line does not say which."""
    found = _HEIGHT.search(text) or _BARE_HEIGHT.search(text)
    if found is None:
        return None
    unit = found.groupdict().get("unit") or ("ft" if in_feet else "m")
    return float(found["n"]) * (METRES_PER_FOOT if unit.startswith("f") else 1.0)


def bare_thickness(text: str, in_inches: bool) -> Metres | None:
    """«2.25 thick» of who measures in inches, «45 thick» of whoever else."""
    found = _BARE_THICK.search(text)
    if found is None:
        return None
    number = float(found["n"])
    if number < MOST_INCHES:
        return measures.to_house(number, "in") if in_inches else None
    return number / 1000.0 if LEAST_MM <= number <= MOST_MM else None
