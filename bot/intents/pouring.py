"""What of a line is poured: water, a brine; never a cup of what is dry, which would count as water in a dose."""

from collections.abc import Sequence
from typing import Final

from bot import measures
from core import patterns as re

POURED: Final = ("l", "ml", "gal", "qt", "pt", "cup")
_NO_WATER: Final = re.compile(  # «1 cup brown sugar», «half a cup of kosher salt», «1 cup each of salt and sugar»
    r"^ ?(?:each )?(?:of )?(?:the )?(?:(?!water|ice|brine|and|n|in|with|to|for)[a-z]+ ){0,3}?"
    r"(?:salt|kosher|flakes?|sugar|honey|syrup|molasses|treacle|jaggery|spices?|peppers?|peppercorns?|coriander|rub"
    r"|mustard|seeds?|paprika|garlic|cure|curing|pink)\b"
    r"(?! (?:water|brine|solution|liquid|pickle|bath))"
)
_CURE: Final = re.compile(r"\b(?:cure|curing|pink|nitrite|prague)\b")
_AS_ICE: Final = re.compile(r"^ ?(?:of (?:it|that|the (?:water|brine)|which) )?(?:(?:as|is|in|of) )?ice\b")


def pours(m: measures.Measure) -> bool:
    """Whether a measure is one of liquids, whatever is in it."""
    return m.unit in POURED


def poured_of(text: str, found: Sequence[measures.Measure] | None = None) -> list[measures.Measure]:
    """The measures of a line that are of something poured."""
    return [m for m in (measures.find(text) if found is None else found) if pours(m) and not _is_dry(text, m)]


def _is_dry(text: str, m: measures.Measure) -> bool:
    """By the word behind a cup, or behind an «of»: «3 qts salt 180 g» is said of two."""
    behind = text[m.end :]
    return (m.unit == "cup" or behind.startswith(" of ")) and bool(_NO_WATER.match(behind))


def as_ice(text: str) -> float | None:
    """What of a brine's water goes in as ice by its weight, «5 lb of it as ice». [kg]"""
    return next((m.value for m in measures.find(text) if m.kind == "mass" and _AS_ICE.match(text[m.end :])), None)


def part_ice(text: str) -> bool:
    """Whether so much of a brine's water is told to be ice."""
    return as_ice(text) is not None and len(poured_of(text)) == 1 and "brine" in text


def is_other(text: str, m: measures.Measure) -> bool:
    """Whether a spoon or a cup is of something that is named and is no curing salt: «2 tbsp brown sugar»."""
    found = _NO_WATER.match(text[m.end :])
    return bool(found) and not _CURE.search(found[0] if found else "")


def spoonful(text: str) -> measures.Measure | None:
    """What is told by the cup or the spoon; of several the one that is no water, «2 cups water 1 cup salt»."""
    return next(iter(spoons(text) or _by_spoon(text)), None)


def spoons(text: str) -> list[measures.Measure]:
    """All that is told by the cup or the spoon, but what is poured."""
    found = _by_spoon(text)
    water = poured_of(text, found)
    return [m for m in found if m not in water]


def _by_spoon(text: str) -> list[measures.Measure]:
    return [m for m in measures.find(text) if m.unit in ("tsp", "tbsp", "cup")]
