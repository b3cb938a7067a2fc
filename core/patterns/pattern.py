"""A pattern that is tried where its words are, and rules of which only those are looked at that may fit."""

import re
from collections.abc import Callable, Iterable, Iterator
from functools import cached_property
from typing import Final, Generic, TypeVar

from core.patterns.line import INDEX
from core.patterns.needed import needs

T = TypeVar("T")
_SEEN: Final = INDEX.lines


class Pattern:
    """A regular expression; what it finds is what `re` would find. It is built when it is first tried in earnest."""

    def __init__(self, pattern: str, flags: int = 0) -> None:
        self.pattern: Final = pattern
        self.flags = flags
        self.bit: Final = INDEX.add(needs(pattern, flags))

    @cached_property
    def tried(self) -> re.Pattern[str]:
        """The pattern as it is tried, whatever the words of a line."""
        return re.compile(self.pattern, self.flags)

    def search(self, text: str, place: int = 0) -> re.Match[str] | None:
        """The first place where it matches."""
        return self.tried.search(text, place) if _SEEN[text] & self.bit else None

    def match(self, text: str, place: int = 0) -> re.Match[str] | None:
        """Whether it matches from a place on."""
        return self.tried.match(text, place) if _SEEN[text] & self.bit else None

    def fullmatch(self, text: str) -> re.Match[str] | None:
        """Whether it matches all of a text."""
        return self.tried.fullmatch(text) if _SEEN[text] & self.bit else None

    def sub(self, put: str | Callable[[re.Match[str]], str], text: str, count: int = 0) -> str:
        """A text with what matches written anew."""
        return self.tried.sub(put, text, count) if _SEEN[text] & self.bit else text

    def subn(self, put: str | Callable[[re.Match[str]], str], text: str, count: int = 0) -> tuple[str, int]:
        """The same, and how many there were."""
        return self.tried.subn(put, text, count) if _SEEN[text] & self.bit else (text, 0)

    def split(self, text: str, most: int = 0) -> list[str]:
        """The parts of a text between what matches."""
        return self.tried.split(text, most) if _SEEN[text] & self.bit else [text]

    def findall(self, text: str) -> list[str]:
        """All that matches, as `re` gives it."""
        return self.tried.findall(text) if _SEEN[text] & self.bit else []

    def finditer(self, text: str) -> Iterator[re.Match[str]]:
        """Every match."""
        return self.tried.finditer(text) if _SEEN[text] & self.bit else iter(())


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
        bits, found = _SEEN[text] & self._all, []
        while bits:
            lowest = bits & -bits
            found += self._places[lowest]
            bits ^= lowest
        return sorted(found)


def forget() -> None:
    """Forget the lines that were looked at; for measuring what a line costs that was never read."""
    _SEEN.clear()
