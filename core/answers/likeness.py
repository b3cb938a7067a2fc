"""How like a question is to the ways in which each entry is asked for: words and runs of letters, weighed by rarity.

Whole words, pairs of words and runs of 3 to 5 letters count the more, the rarer they are over all phrasings (tf-idf,
cosine). Letters forgive typos, words keep subjects apart, and a word counts both as it was typed and as the word of the
trade that it means. The likeness to an entry is that to its five nearest phrasings on the average, plus that to all
of its words together; and the less of what a question says stands in any phrasing of the entry, the less it is.
Offline and in plain Python.
"""

import math
import re
from array import array
from collections import defaultdict
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from itertools import chain, pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from core.answers.entries import ENGLISH, asked_beside, asked_in, entry, is_entry
from core.answers.figures import folded
from core.answers.loading import Once
from core.answers.slang import alike, begun, empty, gathered, meant, stem

GRAMS: Final = (3, 4, 5)
NEAREST: Final = 5  # phrasings of an entry that are averaged
OF_THE_WHOLE: Final = 3.0  # how much more all phrasings and the answer together say
AT_ONCE: Final = 24  # names whose phrasings are averaged in one go
_NONE: Final = np.zeros(0, np.int32)
SAME: Final = 0.95  # a phrasing itself, as a keeper adds one
OF_WORDS: Final = 1.6  # a whole word counts so much more than a run of letters
OF_TYPED: Final = 0.8  # the word as it was typed, where the trade has another
OF_PAIRS: Final = 0.8  # «cold smoke» is another thing than smoke
EMPTY, WORD = "e:", "v:"  # before a word that says little, and before one that carries the question
OF_EMPTY: Final = 0.4  # «can i», «how do» say a little
_WORD: Final = re.compile(r"[a-zäöüß0-9]+")
_APOSTROPHES: Final = str.maketrans({"'": "", "’": ""})


@dataclass(frozen=True)
class Index:
    """All phrasings, name by name, and after them the words of each name together.

    `sizes` is how many phrasings each of the `entries` has.
    `keys` are the hashes of all features in their order. The feature of number n stands in the `rows` from `starts[n]`
    to `starts[n + 1]`, with the `weights` there.
    """

    entries: tuple[str, ...]
    sizes: NDArray[np.int64]
    keys: NDArray[np.int64]
    rarity: NDArray[np.float64]
    unseen: float
    rows: NDArray[np.int32]
    weights: NDArray[np.float32]
    starts: NDArray[np.int64]
    height: int


@dataclass(frozen=True)
class Near:
    """A question beside an index: its cosines with the phrasings, and with all words of each name together; and how
    much of what it says is said of each name at all: the root of the share of the weight."""

    phrasings: NDArray[np.float64]
    wholes: NDArray[np.float64]
    shares: NDArray[np.float64]


def says_something(question: str) -> bool:
    """Whether any word of a line carries a question; «ok then» has none, nor has «is it safe» without its what."""
    words = _WORD.findall(question.lower().translate(_APOSTROPHES))
    return any(word not in empty() and alike().get(word, word) != "safe" for word in words)


def nearest(question: str, language: str, most: int, beside: Collection[str] = ()) -> tuple[tuple[str, float], ...]:
    """The entries nearest to a question, and what is asked for `beside` them, best first, each with its likeness.

    Only names are looked at whose single nearest phrasing is near enough: no average of several is over it.
    """
    index, (near, bounds) = _index(language), _likenesses(question, language)
    places, others = _places(language)
    asked = np.sort(np.append(places, np.array([others[name] for name in beside if name in others], np.int64)))
    found = list[tuple[str, float]]()
    for some in np.array_split(asked[np.argsort(-bounds[asked], kind="stable")], max(len(asked) // AT_ONCE, 1)):
        if len(found) >= most and bounds[some[0]] < found[most - 1][1]:
            break
        each = _together(near, index, some).tolist()
        found += zip((index.entries[n] for n in some.tolist()), each, strict=True)
        found.sort(key=lambda one: (-one[1], one[0]))
    return tuple(found[:most])


@lru_cache(maxsize=4)  # a line is asked for a sum, for a topic of the batch and for an entry
def _likenesses(question: str, language: str) -> tuple[Near, NDArray[np.float64]]:
    """How near a question is to every row, and what its likeness to each name is at most."""
    near = _nearness(_features(question, language), _index(language))
    return near, _at_most(near, _index(language))


@cache
def _places(language: str) -> tuple[NDArray[np.int64], Mapping[str, int]]:
    """Where the entries stand among the names of an index, and where each of the others does."""
    names = _index(language).entries
    entries = [place for place, name in enumerate(names) if is_entry(name)]
    return np.array(entries, np.int64), {name: n for n, name in enumerate(names) if not is_entry(name)}


def likenesses(text: str, language: str, index: Index) -> dict[str, float]:
    """How like a text is to each name of an index, from 0 to 1."""
    near = _nearness(_features(text, language), index)
    every = np.arange(len(index.entries))
    return dict(zip(index.entries, _together(near, index, every).tolist(), strict=True))


def _nearness(asked: Mapping[str, float], index: Index) -> Near:
    """How near a question is to every row."""
    hashes = np.fromiter(map(hash, asked), np.int64, len(asked))
    counted = np.sqrt(np.fromiter(asked.values(), np.float64, len(asked)))
    places = np.minimum(np.searchsorted(index.keys, hashes), len(index.keys) - 1)
    known = index.keys[places] == hashes
    weights = counted * np.where(known, index.rarity[places], index.unseen)
    starts, ends = index.starts[places[known]], index.starts[places[known] + 1]
    spans = [slice(*span) for span in zip(starts.tolist(), ends.tolist(), strict=True)]
    rows = np.concatenate([index.rows[span] for span in spans] or [_NONE])
    said = np.concatenate([index.weights[span] for span in spans] or [_NONE.astype(np.float32)])
    each, names = np.repeat(weights[known], ends - starts), len(index.entries)
    cosines = np.bincount(rows, each * said, index.height) / (math.sqrt(float(np.square(weights).sum())) or 1.0)
    shares = np.bincount(rows, each, index.height)[-names:] / (float(weights.sum()) or 1.0)
    return Near(cosines[:-names], cosines[-names:], np.sqrt(shares))


def _at_most(near: Near, index: Index) -> NDArray[np.float64]:
    """What the likeness to each name is at most: that to its nearest phrasing, with all of its words together."""
    best = np.maximum.reduceat(near.phrasings, np.cumsum(index.sizes) - index.sizes)
    together: NDArray[np.float64] = near.shares * (best + OF_THE_WHOLE * near.wholes) / (1.0 + OF_THE_WHOLE)
    return np.where(best >= SAME, np.maximum(best, together), together)


def _together(near: Near, index: Index, names: NDArray[np.int64]) -> NDArray[np.float64]:
    """The few nearest phrasings of some names on the average with all of their words together; a phrasing itself alone.

    `names` are numbers of entries. Of shape (names,).
    """
    ends = np.cumsum(index.sizes)
    nearest = np.zeros((len(names), NEAREST))
    for row, (end, size) in enumerate(zip(ends[names].tolist(), index.sizes[names].tolist(), strict=True)):
        best = np.sort(near.phrasings[end - size : end])[: -NEAREST - 1 : -1]
        nearest[row, : len(best)] = best
    mean = nearest.sum(axis=1) / np.minimum(index.sizes[names], NEAREST)
    together: NDArray[np.float64] = (
        near.shares[names] * (mean + OF_THE_WHOLE * near.wholes[names]) / (1.0 + OF_THE_WHOLE)
    )
    return np.where(nearest[:, 0] >= SAME, nearest[:, 0], together)


@Once
def _index(language: str) -> Index:
    asks = {**asked_in(language), **(asked_beside() if language == ENGLISH else {})}
    shorts = [entry(name).short if language == ENGLISH and is_entry(name) else "" for name in asks]
    return indexed(asks, shorts, language)


def indexed(asks: Mapping[str, tuple[str, ...]], shorts: Sequence[str], language: str) -> Index:
    """The index of the phrasings of each name; `shorts` are further words of each, in the same order.

    A feature is kept by its hash alone: a hundred thousand words and runs of letters as text would be 20 MB.
    """
    parts = _Parts(language)
    for those, short in zip(asks.values(), shorts, strict=True):
        parts.add([_words(ask) for ask in those], _words(short))
    keys, every, row, counted = parts.features()
    starts = np.flatnonzero(np.concatenate(([True], every[1:] != every[:-1], [True])))
    each = np.array([len(those) for those in asks.values()], np.int64)
    height = int(each.sum()) + len(each)
    unseen = math.log(1 + each.sum()) + 1
    rarity = unseen - np.log1p(np.add.reduceat(row < each.sum(), starts[:-1], dtype=np.int32))
    weight = np.sqrt(counted) * np.repeat(rarity, np.diff(starts))
    weight /= np.sqrt(np.bincount(row, weight**2, height))[row]
    return Index(tuple(asks), each, keys, rarity, unseen, row, weight.astype(np.float32), starts, height)


class _Parts:
    """The parts of all phrasings, each by its number, and behind them those of the words of each name together.

    The features of a part are made once, however many texts have it: a word stands in hundreds of phrasings.
    """

    def __init__(self, language: str) -> None:
        self._language = language
        self._numbers: dict[str, int] = {}
        self._said, self._lengths = (array("i"), array("i")), (array("i"), array("i"))

    def add(self, phrasings: Sequence[list[str]], short: list[str]) -> None:
        """The words of the phrasings of one name, and its further words."""
        for words in phrasings:
            self._add(words, 0)
        self._add([*chain(*phrasings), *short], 1)

    def _add(self, words: list[str], kind: int) -> None:
        parts, numbers = _parts(words, self._language), self._numbers
        self._said[kind].extend([numbers.setdefault(part, len(numbers)) for part in parts])
        self._lengths[kind].append(len(parts))

    def features(self) -> tuple[NDArray[np.int64], NDArray[np.int32], NDArray[np.int32], NDArray[np.float32]]:
        """The hashes of all features in their order; and of each place, in the order of the features, which feature it
        is by its number, in which text, and how much it counts there."""
        hashes, counts, sizes = array("q"), array("f"), array("i")
        for part in self._numbers:
            features = _of_a_part(part, self._language)
            hashes.extend([hash(name) for name, _ in features])
            counts.extend([much for _, much in features])
            sizes.append(len(features))
        said, lengths = (np.frombuffer(one + other, np.int32) for one, other in (self._said, self._lengths))
        places, many = _spread(said, np.frombuffer(sizes, np.int32))
        keys, numbers = np.unique(np.frombuffer(hashes, np.int64), return_inverse=True)
        text = np.repeat(np.repeat(np.arange(len(lengths), dtype=np.int32), lengths), many)
        return keys, *_in_their_order(numbers.astype(np.int32)[places], text, np.frombuffer(counts, np.float32)[places])


def _spread(said: NDArray[np.int32], sizes: NDArray[np.int32]) -> tuple[NDArray[np.int32], NDArray[np.int32]]:
    """Where the features of each part that is said stand among those of all parts, and how many they are."""
    many = sizes[said]
    begin = (np.cumsum(sizes) - sizes)[said] - (np.cumsum(many) - many)
    places = np.repeat(begin.astype(np.int32), many)
    places += np.arange(len(places), dtype=np.int32)
    return places, many


def _in_their_order(
    numbers: NDArray[np.int32], rows: NDArray[np.int32], counted: NDArray[np.float32]
) -> tuple[NDArray[np.int32], NDArray[np.int32], NDArray[np.float32]]:
    """Features by their numbers and rows; what a row has twice stands there once and counts twice."""
    order = _order(numbers)
    numbers, rows, counted = numbers[order], rows[order], counted[order]
    del order
    first = np.flatnonzero(np.concatenate(([True], (numbers[1:] != numbers[:-1]) | (rows[1:] != rows[:-1]))))
    return numbers[first], rows[first], np.add.reduceat(counted, first)


def _order(numbers: NDArray[np.int32]) -> NDArray[np.int32]:
    """The stable order of numbers that are not negative, by their halves: of 16 bits numpy sorts in one pass."""
    low = np.argsort((numbers & 0xFFFF).astype(np.uint16), kind="stable")
    high = np.argsort((numbers[low] >> 16).astype(np.uint16), kind="stable")
    return low[high].astype(np.int32)


def _features(text: str, language: str) -> Mapping[str, float]:
    """Words, pairs of words and runs of letters, each with how much it counts."""
    found: dict[str, float] = defaultdict(float)
    for part in _parts(_words(text), language):
        for feature, counts in _of_a_part(part, language):
            found[feature] += counts
    return found


def _words(text: str) -> list[str]:
    """The words of a text without its run-up, its figures as words of their kind, several as one word of the trade."""
    return _WORD.findall(gathered(begun(folded(text.lower().translate(_APOSTROPHES)))))


def _parts(words: Sequence[str], language: str) -> list[str]:
    """The words behind `WORD`, pairs of them, and those that say little behind `EMPTY`."""
    little = empty()
    carrying = [word for word in words if word not in little] or words
    pairs = [f"{one} {other}" for one, other in pairwise([meant(word, language) for word in carrying])]
    return [*(EMPTY + word for word in sorted(little.intersection(words))), *pairs, *(WORD + word for word in carrying)]


def _of_a_part(part: str, language: str) -> tuple[tuple[str, float], ...]:
    if not part.startswith(WORD):
        return ((part, OF_EMPTY if part.startswith(EMPTY) else OF_PAIRS),)
    return _of_a_word(part.removeprefix(WORD), language)


@lru_cache(512)
def _of_a_word(word: str, language: str) -> tuple[tuple[str, float], ...]:
    typed, subject = stem(word, language), meant(word, language)
    whole = ((f"w:{subject}", OF_WORDS), *(((f"t:{typed}", OF_TYPED),) if typed != subject else ()))
    return (*whole, *((run, 1 / len(run)) for run in _runs(f"^{typed}$")))


def _runs(word: str) -> Iterator[str]:
    for size in GRAMS:
        yield from (word[start : start + size] for start in range(len(word) - size + 1))
