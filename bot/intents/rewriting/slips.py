"""Slips of a thumb and shorthand, as the words that were meant, by the lists of `lexicon.toml`.

No number is made, dropped or changed here but an hour that is glued together («at 745», «5p») and the sign for pounds.
"""

import tomllib
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path
from typing import Final

from bot.intents.small import SMALL
from core import patterns as re
from core.meat.cuts import cuts
from core.plan.recipe import products

FILE: Final = Path(__file__).parent / "lexicon.toml"
_WORD: Final = re.compile(r"(?<![\w'])[a-z0-9]*[a-z][a-z0-9]*(?![\w'])")
_SHORTEST: Final = 5  # letters; shorter words are one slip away from too many others
# «5p», «7a»: the half of the day as some write it
_HALF_OF_DAY: Final = re.compile(r"(?<![\w.:/])((?:1[0-2]|0?[1-9])(?:[:.][0-5]\d)?)([ap])\b(?!\.?m)")
# «20m ago», «in 20m»: no metres where time is told
_MINUTES: Final = re.compile(r"\b(\d{1,3}) ?m(?= (?:ago|more|later|earlier|late|early)\b)|(?<=\bin )(\d{1,3}) ?m$")
_POUNDS: Final = re.compile(r"(?<![\w.#])(\d{1,2}(?:\.\d{1,3})?) ?#(?! ?\d)")
# an hour without its sign, where no thermometer shows so much
_GLUED: Final = re.compile(
    r"\b(at|since|til|till|until|around|by|from|before|after) (0?[5-9]|1\d|2[0-3])([0-5]\d)\b"
    r"(?! ?(?:%|°|/|:|\.\d|c\b|f\b|kg|kilo|g\b|gr|lb|pound|oz|ml|m\b|met|ft|feet|mm|cm|ppm|mg|deg|cal))"
)


@dataclass(frozen=True)
class Lexicon:
    """Words that decide, words that only look like them, shorthand, and stems of words in -ing."""

    keys: tuple[str, ...]
    known: frozenset[str]
    short: dict[str, str]
    ing: frozenset[str]


@cache
def lexicon() -> Lexicon:
    """The lists as they stand in the file."""
    file = tomllib.loads(FILE.read_text("utf-8"))
    keys = tuple(file["keys"].split())
    files = (word for name in (*products(), *cuts()) for word in name.split("_"))  # a cook may have added some
    known = frozenset((*keys, *SMALL, *file["known"].split(), *file["short"].values(), *files))
    return Lexicon(keys, known, file["short"], frozenset(f"{stem}in" for stem in file["ing"].split()))


def mended(text: str) -> str:
    """A plain line with its shorthand written out and its slips mended; digits stay as they are."""
    text = _POUNDS.sub(r"\1 lb", _MINUTES.sub(lambda m: f"{m[1] or m[2]} min", text))
    text = _GLUED.sub(r"\1 \2:\3", _HALF_OF_DAY.sub(r"\1\2m", text))
    return _WORD.sub(lambda found: word_meant(found[0]), text)


@lru_cache(maxsize=4096)
def word_meant(word: str) -> str:
    """A word as it was meant: shorthand, a dropped g, the one key that is a slip away; else as it is."""
    lists = lexicon()
    if word in lists.short:
        return lists.short[word]
    if word in lists.ing:
        return f"{word}g"
    if len(word) < _SHORTEST or word in lists.known or not word.isalpha():
        return word
    near = [key for key in lists.keys if _begins_alike(word, key) and one_slip(word, key)]
    return near[0] if len(near) == 1 else word


def _begins_alike(one: str, two: str) -> bool:
    """The same first letter, or the first two swapped."""
    return one[0] == two[0] or one[1::-1] == two[:2]


def one_slip(one: str, two: str) -> bool:
    """Whether two words are one letter dropped, added, changed or two swapped apart."""
    if abs(len(one) - len(two)) > 1:
        return False
    start = next((i for i, (a, b) in enumerate(zip(one, two, strict=False)) if a != b), min(len(one), len(two)))
    rest_one, rest_two = one[start:], two[start:]
    changed = rest_one[1:] == rest_two[1:] or rest_one[1:] == rest_two or rest_one == rest_two[1:]
    swapped = len(rest_one) > 1 and rest_one[1::-1] == rest_two[:2] and rest_one[2:] == rest_two[2:]
    return changed or swapped
