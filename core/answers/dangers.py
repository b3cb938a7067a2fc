"""Emergencies and dangerous wishes, known by their words before any likeness is looked at.

Each language has its list: `dangers.toml` is in English, `dangers_de.toml` in German. All of them are looked through,
whatever a person is spoken to in. Umlauts count as they are written out, since many type them so.
"""

import tomllib
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib import resources
from typing import Any, Final

from core import patterns as re

_WORD: Final = re.compile(r"[a-zäöüß0-9%]+")
_APOSTROPHES: Final = str.maketrans({"'": "", "’": ""})
_NOT: Final = "no "
_WRITTEN_OUT: Final = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "ß": "ss"})
_HERE: Final = "dangers.toml"
_ABROAD: Final = ("dangers_de.toml",)


@dataclass(frozen=True)
class _Thing:
    """What a danger speaks of, or must not speak of."""

    words: re.Pattern
    there: bool

    def fits(self, line: "_Line") -> bool:
        return line.speaks_of(self.words) is self.there


@dataclass(frozen=True)
class _Grave:
    """One entry of the list: the ways in which its words stand in their order, and the things that stand together."""

    entry: str
    words: re.Pattern | None
    together: tuple[tuple[_Thing, ...], ...]

    def leads(self) -> list[re.Pattern]:
        """Of each way in which it can fit a pattern without which it cannot."""
        spoken = [next(thing.words for thing in things if thing.there) for things in self.together]
        return [self.words, *spoken] if self.words else spoken

    def fits(self, line: "_Line") -> bool:
        if self.words is not None and self.words.search(line.plain):
            return True
        return any(all(thing.fits(line) for thing in things) for things in self.together)


class _Line:
    """A plain line, and of which things it speaks: many dangers ask for the same."""

    def __init__(self, plain: str) -> None:
        self.plain = plain
        self._found: dict[re.Pattern, bool] = {}

    def speaks_of(self, words: re.Pattern) -> bool:
        if words not in self._found:
            self._found[words] = words.search(self.plain) is not None
        return self._found[words]


@lru_cache(maxsize=256)  # a line is asked about by several readers
def grave(question: str) -> str | None:
    """The entry for an emergency or a danger that the words name, however the rest of the line is worded."""
    return _gravest(abroad(question), _named(question, _HERE))


@lru_cache(maxsize=256)
def abroad(question: str) -> str | None:
    """The same of a line as it was typed in a language other than English."""
    return _gravest(*(_named(question, name) for name in _ABROAD))


def as_typed(understood: str, shown: str) -> str | None:
    """The same of a line as it was understood and as it was typed, since mending may lose the word that matters."""
    return _gravest(grave(understood), grave(shown))


def _gravest(*named: str | None) -> str | None:
    """Of several the one that stands first in the list: a baby with blue lips is no question of what babies may eat."""
    ranks = _ranks()
    return min((name for name in named if name), key=lambda name: ranks.get(name, len(ranks)), default=None)


@cache
def _ranks() -> dict[str, int]:
    return {one.entry: rank for rank, one in reversed(list(enumerate(_graves(_HERE))))}


def _named(question: str, name: str) -> str | None:
    return _listed(_spelled(question), name)


@lru_cache(maxsize=64)  # each list asks for the same line
def _spelled(question: str) -> str:
    return " ".join(_WORD.findall(question.lower().translate(_APOSTROPHES))).translate(_WRITTEN_OUT)


@lru_cache(maxsize=64)  # what is typed and how it is understood are often the same words
def _listed(plain: str, name: str) -> str | None:
    line = _Line(plain)
    maybe = sorted({rank for _, rank in _leading(name).fitting(plain)})
    return next((_graves(name)[rank].entry for rank in maybe if _graves(name)[rank].fits(line)), None)


@cache
def _leading(name: str) -> re.Rules[int]:
    """One pattern of each way in which an entry can fit, with its rank in the list: where none matches, none fits."""
    return re.Rules((lead, rank) for rank, one in enumerate(_graves(name)) for lead in one.leads())


@cache
def _graves(name: str) -> tuple[_Grave, ...]:
    text = (resources.files("core.answers") / name).read_text("utf-8").translate(_WRITTEN_OUT)
    told = tomllib.loads(text)
    things = {thing: re.compile(words) for thing, words in told["things"].items()}
    return tuple(_read(one, things) for one in told["grave"])


def _read(one: dict[str, Any], things: dict[str, re.Pattern]) -> _Grave:
    words = re.compile("|".join(one["words"])) if "words" in one else None
    together = tuple(tuple(_thing(name, things) for name in names) for names in one.get("together", ()))
    return _Grave(one["entry"], words, together)


def _thing(name: str, things: dict[str, re.Pattern]) -> _Thing:
    return _Thing(things[name.removeprefix(_NOT)], not name.startswith(_NOT))
