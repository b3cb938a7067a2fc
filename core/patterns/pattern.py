"""A pattern that is tried where its words are, and rules of which only those are looked at that may fit."""

import re
from collections.abc import Callable, Iterable, Iterator
from functools import cached_property
from typing import Final, Generic, TypeVar

from core.patterns.kept import KEPT
from core.patterns.line import INDEX

T = TypeVar("T")
Put = str | Callable[[re.Match[str]], str]
_PARTS: Final = re.compile(r"\\.|\[\^?\]?(?:\\.|[^\]\\])*\]|[()|]|[^\\\[()|]+", re.DOTALL)
_OUT: Final = INDEX.lines  # by line the bits of the patterns that cannot match it


class Pattern:
    """A regular expression; what it finds is what `re` would find. It is built when it is first tried in earnest.

    Where it was tried on a line in vain, that is remembered: many readers ask the same of the same line.
    """

    def __init__(self, pattern: str, flags: int = 0) -> None:
        self.pattern: Final = pattern
        self.flags = flags
        self.bit: Final = INDEX.add(KEPT.needs(pattern, flags))

    @cached_property
    def tried(self) -> re.Pattern[str]:
        """The pattern as it is tried, whatever the words of a line."""
        return re.compile(self.pattern, self.flags)

    def search(self, text: str, place: int = 0) -> re.Match[str] | None:
        """The first place where it matches."""
        out = _OUT[text]
        if out & self.bit:
            return None
        found = self.tried.search(text, place)
        if found is None and not place:
            _OUT[text] = out | self.bit
        return found

    def match(self, text: str, place: int = 0) -> re.Match[str] | None:
        """Whether it matches from a place on."""
        return None if _OUT[text] & self.bit else self.tried.match(text, place)

    def fullmatch(self, text: str) -> re.Match[str] | None:
        """Whether it matches all of a text."""
        return None if _OUT[text] & self.bit else self.tried.fullmatch(text)

    def sub(self, put: Put, text: str, count: int = 0) -> str:
        """A text with what matches written anew."""
        return text if _OUT[text] & self.bit else self.subn(put, text, count)[0]

    def subn(self, put: Put, text: str, count: int = 0) -> tuple[str, int]:
        """The same, and how many there were."""
        out = _OUT[text]
        if out & self.bit:
            return text, 0
        new, times = self.tried.subn(put, text, count)
        if not times:
            _OUT[text] = out | self.bit
        return new, times

    def split(self, text: str, most: int = 0) -> list[str]:
        """The parts of a text between what matches."""
        return self.tried.split(text, most) if self.search(text) else [text]

    def findall(self, text: str) -> list[str]:
        """All that matches, as `re` gives it."""
        return self.tried.findall(text) if self.search(text) else []

    def finditer(self, text: str) -> Iterator[re.Match[str]]:
        """Every match."""
        return self.tried.finditer(text) if self.search(text) else iter(())


class Rules(Generic[T]):
    """Patterns in an order, each with what goes with it, of which a line is held only against those that may match."""

    def __init__(self, rules: Iterable[tuple[Pattern, T]]) -> None:
        self._rules = tuple(rules)
        self._places: dict[int, list[int]] = {}
        for place, (pattern, _) in enumerate(self._rules):
            self._places.setdefault(pattern.bit, []).append(place)
        self._all = sum(self._places)

    def __iter__(self) -> Iterator[tuple[Pattern, T]]:
        return iter(self._rules)

    def fitting(self, text: str) -> list[tuple[Pattern, T]]:
        """The rules that may match a text, in their order."""
        return [self._rules[place] for place in self._fitting(text)]

    def hits(self, text: str) -> Iterator[tuple[re.Match[str], T]]:
        """Where each rule first matches a text, in their order."""
        return ((found, what) for rule, what in self.fitting(text) if (found := rule.search(text)))

    def in_turn(self, text: str, rewrite: Callable[[str, Pattern, T], str]) -> str:
        """A text after every rule that may match it has had its turn; each sees what those before it wrote."""
        places = self._fitting(text)
        while places:
            place = places.pop(0)
            new = rewrite(text, *self._rules[place])
            if new != text:  # its words are others now
                text, places = new, [later for later in self._fitting(new) if later > place]
        return text

    def _fitting(self, text: str) -> list[int]:
        bits, found = self._all & ~_OUT[text], []
        while bits:
            lowest = bits & -bits
            found += self._places[lowest]
            bits ^= lowest
        return sorted(found)


def either(pattern: str) -> Rules[None]:
    """A long pattern as its ways, what stands between its outermost bars; for whether it matches, and not for where.

    Of the ways only those are tried whose words are there, while a pattern with one of them is tried with all.
    """
    ways, depth = [""], 0
    for part in _PARTS.findall(pattern):
        depth += (part == "(") - (part == ")")
        if part == "|" and not depth:
            ways.append("")
        else:
            ways[-1] += part
    return Rules((Pattern(way), None) for way in ways)


def keep() -> None:
    """Keep what was read from the patterns for the next start."""
    KEPT.keep()


def forget() -> None:
    """Forget the lines that were looked at; for measuring what a line costs that was never read."""
    _OUT.clear()
