"""The words of a line, and which of all patterns they rule out: one bit a pattern, set where it cannot match."""

import re
from collections.abc import Iterator
from functools import reduce
from operator import and_
from threading import Lock
from typing import Final

from core.patterns.needed import BEGIN, END, LEVELS, Need

_WORD: Final = re.compile(r"\w+|[?%]")
_DIGITS: Final = re.compile(r"\d+")
_LINES: Final = 128  # lines and parts of lines that are remembered
_WORDS: Final = 2048


class Index:
    """For each part of a word the patterns that need it; a pattern may match where all of its needs are met.

    `lines` holds the last lines with the patterns that cannot match them, by their words or since they were tried. Of a
    pattern that is newer than what is remembered of a line nothing is ruled out, so that no thread need wait for it.
    """

    def __init__(self) -> None:
        self.lines: dict[str, int] = _Lines(self)
        self._count = 0
        self._asked: list[dict[str, int]] = [{} for _ in range(LEVELS)]
        self._free = [0] * LEVELS  # patterns with fewer needs
        self._words: dict[str, tuple[int, ...]] = {}
        self._longest = 0
        self._lock = Lock()

    def add(self, needs: tuple[Need, ...]) -> int:
        """Take in a pattern with what it needs; the bit that stands for it."""
        with self._lock:
            bit = 1 << self._count
            self._count += 1
            for level, asked in enumerate(self._asked):
                if level >= len(needs):
                    self._free[level] |= bit
                    continue
                for part in needs[level]:
                    asked[part] = asked.get(part, 0) | bit
                    self._longest = max(self._longest, len(part))
            self._words.clear()
            return bit

    def look(self, line: str) -> int:
        """The bits of the patterns that cannot match a line; remembered in `lines`."""
        with self._lock:
            met = list(self._free)
            for word in _parts(line):
                for level, bits in enumerate(self._words.get(word) or self._of_word(word)):
                    met[level] |= bits
            if len(self.lines) >= _LINES:
                self.lines.clear()
            self.lines[line] = found = ((1 << self._count) - 1) ^ reduce(and_, met)
            return found

    def _of_word(self, word: str) -> tuple[int, ...]:
        """The patterns that a word is of use to, by each of their needs."""
        plain = _DIGITS.sub("0", word)
        parts = {plain[a:b] for a in range(len(plain)) for b in range(a + 1, min(len(plain), a + self._longest) + 1)}
        found = tuple(_together(asked, parts) for asked in self._asked)
        if len(self._words) >= _WORDS:
            self._words.clear()
        self._words[word] = found
        return found


def _together(asked: dict[str, int], parts: set[str]) -> int:
    bits = 0
    for part in parts & asked.keys():
        bits |= asked[part]
    return bits


def _parts(line: str) -> Iterator[str]:
    """The words of a line as they stand, with what is beside them; the first and the last also as such."""
    words = _WORD.findall(line)
    for word in words:
        yield f" {word} "
    if words:
        yield f"{BEGIN}{words[0]} "
        yield f" {words[-1]}{END}"
    if len(words) == 1:
        yield f"{BEGIN}{words[0]}{END}"


class _Lines(dict[str, int]):
    """What was found in the last lines."""

    def __init__(self, index: Index) -> None:
        super().__init__()
        self._index = index

    def __missing__(self, line: str) -> int:
        return self._index.look(line)


INDEX: Final = Index()
