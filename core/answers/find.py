"""Which entry answers a question: the likeness of its words to the ways in which each entry is asked for.

Words and runs of 3 to 5 letters are weighed by how rare they are over all phrasings (tf-idf), and the cosine of the
question with the best phrasing of an entry is its score. Letters forgive typos, words keep subjects apart. Offline and
in plain Python: some thousand phrasings answer in milliseconds.
"""

import math
import re
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from typing import Final

from core.answers.entries import ENGLISH, asked_in, entry
from core.answers.slang import alike, danger, empty, urgent

# tuned on questions kept apart from the phrasings (tests/published/answers)
SURE: Final = 0.52  # answered, where no other entry is nearly as near
CLEAR_BY: Final = 0.05
LIKELY: Final = 0.38  # from here on it is offered; and answered where it stands alone
ALONE_BY: Final = 0.13
OF_THE_WHOLE: Final = 0.3  # how much all phrasings and the answer together add to the best phrasing
OFFERED: Final = 3
GRAMS: Final = (3, 4, 5)
OF_WORDS: Final = 1.6  # a whole word counts so much more than a run of letters
OF_PAIRS: Final = 0.8  # «cold smoke» is another thing than smoke
LONGEST: Final = 300  # characters; a longer line is no question
APOSTROPHE: Final = "’"
QUOTE: Final = "'"
_WORD: Final = re.compile(r"[a-zäöüß0-9]+(?:'[a-z]+)?")


@dataclass(frozen=True)
class Found:
    """The entries nearest to a question, best first, each with its score from 0 to 1."""

    ranked: tuple[tuple[str, float], ...]

    @property
    def answer(self) -> str | None:
        """The entry that is surely meant, if one is."""
        (name, score), (_, second) = (*self.ranked, ("", 0.0), ("", 0.0))[:2]
        by = score - second
        if score >= LIKELY and entry(name).kind == "off_topic":
            return name  # what is likeliest no matter of the trade is declined, and nothing of the trade is offered
        return name if (score >= SURE and by >= CLEAR_BY) or (score >= LIKELY and by >= ALONE_BY) else None

    @property
    def perhaps(self) -> tuple[str, ...]:
        """The entries that may be meant."""
        likely = (name for name, score in self.ranked[:OFFERED] if score >= LIKELY)
        return tuple(name for name in likely if entry(name).kind != "off_topic")


def find(question: str, language: str = ENGLISH) -> Found:
    """The entries nearest to a question in a person's own words; English is understood in every language."""
    if grave := _grave(question):
        return Found(((grave, 1.0),))
    found = _nearest(question, language) if language != ENGLISH and asked_in(language) else Found(())
    return found if found.answer or found.perhaps else _nearest(question, ENGLISH)


def _nearest(question: str, language: str) -> Found:
    index = _index(language)
    vector = _unit(_features(question[:LONGEST]), index.rarity, index.unseen)
    scores: dict[str, float] = defaultdict(float)
    for feature, weight in vector.items():
        for phrasing, there in index.postings.get(feature, ()):
            scores[phrasing] += weight * there
    best: dict[str, float] = {}
    for phrasing, score in scores.items():
        name, _, which = phrasing.partition("#")
        best[name] = max(best.get(name, 0.0), score if which else 0.0)
    total = {name: score + OF_THE_WHOLE * scores.get(name, 0.0) for name, score in best.items()}
    return Found(tuple(sorted(total.items(), key=lambda one: (-one[1], one[0]))[: OFFERED + 1]))


def _grave(question: str) -> str | None:
    """The entry for an emergency or a danger that the words name, however the rest of the line is worded."""
    plain = f" {' '.join(_WORD.findall(question.lower().replace(APOSTROPHE, '').replace(QUOTE, '')))} "
    named = (name for name, cries in urgent().items() if any(f" {cry} " in plain for cry in cries))
    return next(named, None) or next((name for name, words in danger().items() if words.search(plain)), None)


@dataclass(frozen=True)
class _Index:
    rarity: Mapping[str, float]
    postings: Mapping[str, list[tuple[str, float]]]
    unseen: float


@cache
def _index(language: str) -> _Index:
    asks = asked_in(language)
    asked = {f"{name}#{n}": ask for name, those in asks.items() for n, ask in enumerate(those)}
    answers = {name: entry(name).short if language == ENGLISH else "" for name in asks}
    whole = {name: " ".join((*those, answers[name])) for name, those in asks.items()}
    features = {phrasing: _features(text) for phrasing, text in (asked | whole).items()}
    seen = Counter(feature for counts in features.values() for feature in counts)
    rarity = {feature: math.log((1 + len(asked)) / (1 + count)) + 1 for feature, count in seen.items()}
    unseen = math.log(1 + len(asked)) + 1
    postings: dict[str, list[tuple[str, float]]] = defaultdict(list)
    for phrasing, counts in features.items():
        for feature, weight in _unit(counts, rarity, unseen).items():
            postings[feature].append((phrasing, weight))
    return _Index(rarity, postings, unseen)


def _unit(counts: Mapping[str, float], rarity: Mapping[str, float], unseen: float) -> dict[str, float]:
    raw = {f: math.sqrt(count) * rarity.get(f, unseen) for f, count in counts.items()}
    length = math.sqrt(sum(value**2 for value in raw.values())) or 1.0
    return {f: value / length for f, value in raw.items()}


def _features(text: str) -> Mapping[str, float]:
    """Whole words and runs of letters, each with how much it counts."""
    found: dict[str, float] = defaultdict(float)
    words = list(_words(text))
    for one, other in pairwise(words):
        found[f"{one} {other}"] += OF_PAIRS
    for word in words:
        found[f"w:{word}"] += OF_WORDS
        for run in _runs(f"^{word}$"):
            found[run] += 1 / len(run)
    return found


def _runs(word: str) -> Iterator[str]:
    for size in GRAMS:
        yield from (word[start : start + size] for start in range(len(word) - size + 1))


def _words(text: str) -> Iterator[str]:
    """The words that carry the question, slang as the word of the trade."""
    words = [w.replace("'", "") for w in _WORD.findall(text.lower().replace("’", "'"))]
    kept = [alike().get(w, w) for w in words]
    yield from [w for w in kept if w not in empty()] or kept
