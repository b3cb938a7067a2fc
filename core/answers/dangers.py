"""Emergencies and dangerous wishes, known by their words before any likeness is looked at; read from `dangers.toml`."""

import re
import tomllib
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib import resources
from typing import Any, Final

_WORD: Final = re.compile(r"[a-zäöüß0-9%]+")
_APOSTROPHES: Final = str.maketrans({"'": "", "’": ""})
_NOT: Final = "no "


@dataclass(frozen=True)
class _Thing:
    """What a danger speaks of, or must not speak of."""

    words: re.Pattern[str]
    there: bool

    def fits(self, plain: str) -> bool:
        return bool(self.words.search(plain)) is self.there


@dataclass(frozen=True)
class _Grave:
    """One entry of the list: the ways in which its words stand in their order, and the things that stand together."""

    entry: str
    words: re.Pattern[str] | None
    together: tuple[tuple[_Thing, ...], ...]

    def fits(self, plain: str) -> bool:
        if self.words is not None and self.words.search(plain):
            return True
        return any(all(thing.fits(plain) for thing in things) for things in self.together)


@lru_cache(maxsize=256)  # a line is asked about by several readers
def grave(question: str) -> str | None:
    """The entry for an emergency or a danger that the words name, however the rest of the line is worded."""
    plain = " ".join(_WORD.findall(question.lower().translate(_APOSTROPHES)))
    return next((one.entry for one in _graves() if one.fits(plain)), None)


@cache
def _graves() -> tuple[_Grave, ...]:
    told = tomllib.loads((resources.files("core.answers") / "dangers.toml").read_text("utf-8"))
    things = {name: re.compile(words) for name, words in told["things"].items()}
    return tuple(_read(one, things) for one in told["grave"])


def _read(one: dict[str, Any], things: dict[str, re.Pattern[str]]) -> _Grave:
    words = re.compile("|".join(one["words"])) if "words" in one else None
    together = tuple(tuple(_thing(name, things) for name in names) for names in one.get("together", ()))
    return _Grave(one["entry"], words, together)


def _thing(name: str, things: dict[str, re.Pattern[str]]) -> _Thing:
    return _Thing(things[name.removeprefix(_NOT)], not name.startswith(_NOT))
