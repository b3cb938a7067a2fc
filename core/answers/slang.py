"""Words that mean the same to a cook, and words that say little of what is asked; read from `slang.toml`."""

import re
import tomllib
from collections.abc import Mapping
from functools import cache, lru_cache
from importlib import resources
from typing import Any, Final

_ENDINGS: Final = {"en": re.compile(r"(?<=\w{3})(?:ies|ing|ed|ly|es|(?<!s)s)$")}  # of a word of five letters or so
_LAST: Final = {"en": re.compile(r"(?<=\w{3})[ey]$|(?<=([b-df-hj-km-np-rtv-z]))\1$")}  # «flipp», «slice», «fatty»


@cache
def alike() -> Mapping[str, str]:
    """What people type, as the word of the trade that it means."""
    return {said: word for word, others in _told()["alike"].items() for said in others}


@cache
def empty() -> frozenset[str]:
    """Words that say little of what is asked."""
    return frozenset(_told()["empty"]["words"])


def gathered(text: str) -> str:
    """A plain text with what is said in several words as the word of the trade: a power cut is an outage."""
    return _turns().sub(lambda found: alike()[found[0]], text)


def begun(text: str) -> str:
    """A plain text without what only leads up to it: «quick question», «my neighbour says that»."""
    return _before().sub("", text)


def stem(word: str, language: str) -> str:
    """A word without the endings that do not change what it is about; whole where we know none of that language."""
    if language not in _ENDINGS:
        return word
    return _LAST[language].sub("", _ENDINGS[language].sub("", word))


@lru_cache(maxsize=16_384)  # every word of every phrasing is looked up, most of them again and again
def meant(word: str, language: str) -> str:
    """The word of the trade for a word, without its ending."""
    bare = stem(word, language)
    return stem(alike()[word], language) if word in alike() else _stems(language).get(bare, bare)


@cache
def _stems(language: str) -> Mapping[str, str]:
    return {stem(said, language): stem(word, language) for said, word in alike().items()}


@cache
def _turns() -> re.Pattern[str]:
    turns = sorted((said for said in alike() if " " in said), key=len, reverse=True)
    return re.compile(rf"\b(?:{'|'.join(map(re.escape, turns))})\b")


@cache
def _before() -> re.Pattern[str]:
    """What leads up to three words or more."""
    turns, who, where, says = ("|".join(_told()["before"][name]) for name in ("turns", "who", "where", "says"))
    heard = rf"(?:(?:my|our|the|an?|some) (?:\w+ )?)?(?:{who})(?: (?:{where}))? (?:(?:always|just|keeps?) )?(?:{says}) "
    return re.compile(rf"^\s*(?:(?:{turns})\b[\s,.:!-]*)?(?:{heard})?(?:(?:that|to) )?(?=(?:\S+\s+){{2}}\S)")


@cache
def _told() -> dict[str, dict[str, Any]]:
    return tomllib.loads((resources.files("core.answers") / "slang.toml").read_text("utf-8"))
