"""Which words a line must have so that a pattern can match it at all, read from the pattern itself.

A line is looked at in plain: every word as it stands, its digits as one 0, and whatever is no letter or digit as one
space. A pattern that matches a line matches no plain line without its own fixed letters; so these are what it needs.
What a pattern may leave out, or may be anything, is needed by nothing. Nothing here is typed by hand, and what is not
understood of a pattern asks for nothing: a need can be too small, and never too great.
"""

import re
from collections.abc import Callable, Iterable
from functools import lru_cache
from math import prod
from re import _constants as op  # type: ignore[attr-defined]
from re import _parser as parser  # type: ignore[attr-defined]
from typing import Any, Final, NamedTuple

Need = frozenset[str]  # parts of words of which a line must have one: " on " is a word, " smok" the beginning of one

BEGIN: Final = "^"  # before the first word of a line
END: Final = "$"  # behind its last
LEVELS: Final = 3  # needs of one pattern that are looked at, the rarest
_SIGNS: Final = "?%"  # words of their own
_MOST: Final = 48  # ways to write a stretch that are told apart
_MOST_WAYS: Final = 160  # words in the place of another that are
_WIDEST: Final = 12  # characters of a class that are
_LIKELY: Final = 0.95  # a need that so many lines meet is of no use
_OFTEN: Final = frozenset(("the", "a", "it", "is", "i", "in", "on", "at", "and", "to", "of", "for", "my", "how"))
_FLAGS: Final = re.UNICODE | re.DOTALL | re.VERBOSE  # under any other a letter may be another letter


class _Part(NamedTuple):
    """A part of a pattern: all that it may be, or how it may begin and end, and what is needed in between."""

    begins: frozenset[str]
    ends: frozenset[str]
    whole: bool = True
    needs: tuple[Need, ...] = ()


_EMPTY: Final = frozenset({""})
_NOTHING: Final = _Part(_EMPTY, _EMPTY)
_ANYTHING: Final = _Part(_EMPTY, _EMPTY, whole=False)


def needs(pattern: str, flags: int = 0) -> tuple[Need, ...]:
    """What a line must have for a pattern to match it: one of each need, the rarest first; nothing where any may do."""
    tree = parser.parse(pattern, flags)
    if tree.state.flags & ~_FLAGS:
        return ()
    chances = {need: _chance(need) for need in _closed(_sequence(tree))}
    found = [need for need, chance in chances.items() if chance < _LIKELY]
    return tuple(sorted(found, key=lambda need: (chances[need], sorted(need)))[:LEVELS])


@lru_cache(maxsize=512)
def _fold(code: int) -> str:
    """A character of a plain line: a letter as it is, any digit as 0, a few signs apart, all else as a space."""
    sign = chr(code)
    if sign.isdecimal():
        return "0"
    if sign in _SIGNS:
        return f" {sign} "
    return sign if sign.isalnum() or sign == "_" else " "


def _sequence(tree: Iterable[Any]) -> _Part:
    part, letters = _NOTHING, ""
    for code, given in tree:
        if code is op.LITERAL:
            letters += _fold(given)
            continue
        if letters:
            part, letters = _spelled(part, letters), ""
        read = _KINDS.get(code)
        part = _then(part, read(given) if read else _ANYTHING)
    return _spelled(part, letters) if letters else part


def _spelled(part: _Part, letters: str) -> _Part:
    """A part with letters behind it."""
    ends = frozenset([end + letters for end in part.ends])
    return _Part(ends if part.whole else part.begins, ends, part.whole, part.needs)


def _one_of(items: Iterable[tuple[Any, Any]]) -> _Part:
    """One of a class of characters, where they are few in plain."""
    found: set[str] = set()
    for code, given in items:
        if code is op.LITERAL:
            found.add(_fold(given))
        elif code is op.RANGE and given[1] - given[0] < 2 * _WIDEST:
            found.update(map(_fold, range(given[0], given[1] + 1)))
        elif code is op.CATEGORY and given in _CLASSES:
            found |= _CLASSES[given]
        else:
            return _ANYTHING
    return _exactly(found) if len(found) <= _WIDEST else _ANYTHING


def _exactly(ways: Iterable[str]) -> _Part:
    both = frozenset(ways)
    return _Part(both, both)


def _then(one: _Part, two: _Part) -> _Part:
    """Two parts, the one behind the other."""
    if one is _NOTHING or two is _NOTHING:
        return two if one is _NOTHING else one
    needed = one.needs + two.needs
    if len(one.ends) * len(two.begins) > _MOST:
        return _Part(one.begins, two.ends, False, needed + _asked(one.ends) + _asked(two.begins))
    met = frozenset([end + begin for end in one.ends for begin in two.begins])
    begins, ends = met if one.whole else one.begins, met if two.whole else two.ends
    inside = () if one.whole or two.whole else _asked(met)
    return _Part(begins, ends, one.whole and two.whole, needed + inside)


def _either(ways: list[_Part]) -> _Part:
    """One part or another."""
    begins = frozenset().union(*[way.begins for way in ways])
    ends = frozenset().union(*[way.ends for way in ways])
    few = len(begins) <= _MOST_WAYS and len(ends) <= _MOST_WAYS
    if few and all(way.whole for way in ways):
        return _Part(begins, begins)
    closed = [_closed(way) for way in ways]
    needed = (frozenset().union(*[min(each, key=_sum) for each in closed]),) if all(closed) else ()
    return _Part(begins, ends, False, needed) if few else _Part(_EMPTY, _EMPTY, False, needed)


def _repeated(given: tuple[int, Any, Iterable[Any]]) -> _Part:
    """A part some times over, or left out."""
    least, most, part = given[0], given[1], _sequence(given[2])
    if most == 0:
        return _NOTHING
    once = most == 1 or (part.whole and part.begins in ({"0"}, {" "}))  # digits in a row are one 0
    if not least:
        return _Part(part.begins | _EMPTY, part.ends | _EMPTY, part.whole and once)
    if once or not part.whole:
        return _Part(part.begins, part.ends, part.whole and once, part.needs)
    return _Part(part.begins, part.ends, False, part.needs + _asked(part.begins))


def _group(given: tuple[Any, int, int, Iterable[Any]]) -> _Part:
    return _ANYTHING if given[1] or given[2] else _sequence(given[3])  # its own flags: not looked into


def _ahead(given: tuple[int, Iterable[Any]]) -> _Part:
    """What looks on or back, and takes nothing."""
    return _Part(_EMPTY, _EMPTY, True, _closed(_sequence(given[1])))


def _closed(part: _Part) -> tuple[Need, ...]:
    """All that is needed of a part whose sides may stand beside anything."""
    return part.needs + _asked(part.begins) + (() if part.whole else _asked(part.ends))


_KINDS: Final[dict[Any, Callable[[Any], _Part]]] = {  # of what is not named here, anything may be the case
    op.IN: _one_of,
    op.BRANCH: lambda given: _either([_sequence(way) for way in given[1]]),
    op.SUBPATTERN: _group,
    op.ATOMIC_GROUP: _sequence,
    op.MAX_REPEAT: _repeated,
    op.MIN_REPEAT: _repeated,
    op.POSSESSIVE_REPEAT: _repeated,
    op.AT: lambda given: _SIDES.get(given, _NOTHING),
    op.ASSERT: _ahead,
    op.ASSERT_NOT: lambda _: _NOTHING,
}
_SIDES: Final[dict[Any, _Part]] = {
    op.AT_BEGINNING: _exactly({BEGIN}), op.AT_BEGINNING_STRING: _exactly({BEGIN}), op.AT_END: _exactly({END}),
    op.AT_END_STRING: _exactly({END}), op.AT_BOUNDARY: _exactly({" "}),
}  # fmt: skip
_CLASSES: Final[dict[Any, set[str]]] = {
    op.CATEGORY_DIGIT: {"0"}, op.CATEGORY_SPACE: {" "}, op.CATEGORY_NOT_WORD: {" ", *(f" {sign} " for sign in _SIGNS)},
}  # fmt: skip


def _asked(ways: frozenset[str]) -> tuple[Need, ...]:
    """Of each way to write a stretch the rarest of its words, and the next; nothing where one way has no word."""
    if "" in ways or " " in ways:
        return ()
    words = [_words(way) for way in ways]
    if not all(words):
        return ()
    first = frozenset([each[0] for each in words])
    return (first, frozenset([each[1] for each in words])) if all(len(each) > 1 for each in words) else (first,)


def _words(stretch: str) -> list[str]:
    """The parts of words in a stretch, with a space at each side where a word must begin or end there; rarest first."""
    if BEGIN in stretch[1:] or END in stretch[:-1]:  # an edge within: it was one of several ways, or means no more
        stretch = stretch[:1].replace(END, " ") + stretch[1:-1].translate(_NO_EDGE) + stretch[-1:].replace(BEGIN, " ")
    if stretch[:1] == BEGIN:
        stretch = BEGIN + stretch[1:].lstrip()
    if stretch[-1:] == END:
        stretch = stretch[:-1].rstrip() + END
    while "00" in stretch:
        stretch = stretch.replace("00", "0")
    words, last = [], stretch.count(" ")
    for n, part in enumerate(stretch.split(" ")):
        if part and part not in _EDGES:
            before, behind = "" if n == 0 or part[0] == BEGIN else " ", "" if n == last or part[-1] == END else " "
            words.append(f"{before}{part}{behind}")
    return sorted(words, key=_chance_of) if len(words) > 1 else words


_NO_EDGE: Final = str.maketrans({BEGIN: " ", END: " "})
_EDGES: Final = (BEGIN, END, BEGIN + END)


def _chance(need: Iterable[str]) -> float:
    """How many of all lines meet a need, roughly: its words are counted but for those that hold another of them."""
    fewest: list[str] = []
    for word in sorted(need, key=len):
        if not any(other in word for other in fewest):
            fewest.append(word)
    return 1.0 - prod(1.0 - _chance_of(word) for word in fewest)


def _sum(need: Need) -> float:
    return sum(map(_chance_of, need))


@lru_cache(maxsize=4096)
def _chance_of(word: str) -> float:
    """How many lines have a word, roughly: half as many with each letter more, and with each side that is told."""
    letters = word.strip(f" {BEGIN}{END}")
    if letters == "0":
        return 0.7 - 0.1 * (len(word) - 1)
    edges = len(word) - len(letters) + 2 * (BEGIN in word) + 2 * (END in word)
    return min(0.5, 2.0 ** (1 - len(letters) - edges) * (4.0 if letters in _OFTEN else 1.0))
