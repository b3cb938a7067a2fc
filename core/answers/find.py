"""Which entry answers a question: that of a danger first, then the likest, by thresholds tuned on kept questions."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from core.answers.dangers import grave
from core.answers.entries import ENGLISH, OF_BATCH, SUM, asked_in, asked_of_batch, entry, is_entry
from core.answers.likeness import nearest, says_something

# tuned by cross-validation over the phrasings and on questions kept apart from them (tests/published/answers)
LIKELY: Final = 0.09  # from here on an entry may be meant
CLEAR_BY: Final = 0.038  # answered, where it is so much likelier than the next
GUESSED_BY: Final = 0.01  # answered as a guess that is named as one; below that it is one among others,
LIKELY_ALIKE: Final = 0.18  # but from here on the first of those alike is what was meant every second time
LIKELY_OF_BATCH: Final = 0.145  # from here on a topic of the batch in hand
PLAINLY: Final = 0.23
FIRMLY: Final = 0.255  # against words that are narrow themselves
OURS_BY: Final = 0.09  # an entry, where a line speaks of «mine», «this one», «did we»
SAME_WORDS: Final = 0.45  # so like they are nearly the words of a phrasing,
TIE: Final = 0.045  # and an entry that is no more than so much ahead was written for those without a batch
FAR_BY: Final = 0.07  # a topic of another time than the batch's is so much less likely
OFFERED: Final = 3
SUM_BY: Final = 0.06  # figures speak for a sum: it answers, where an entry is no more than so much likelier
LIKELY_SUM: Final = 0.11  # a sum has fewer phrasings, which say all that it is asked for by
SURE_SUM: Final = 0.22  # of a sum that is asked for without a figure
OTHERS: Final = frozenset({f"{SUM}start", f"{SUM}other"})  # figures of a batch that begins, or of no trade of ours
NO_SUMS: Final = frozenset({*OTHERS, f"{SUM}told"})  # or that are told of a batch
LONGEST: Final = 300  # characters; a longer line is no question


@dataclass(frozen=True)
class Found:
    """The entries nearest to a question, best first, each with its score from 0 to 1."""

    ranked: tuple[tuple[str, float], ...]

    @property
    def answer(self) -> str | None:
        """The entry that is surely meant, if one is; what is likeliest no matter of the trade is declined at once."""
        (name, score), (_, second) = (*self.ranked, ("", 0.0), ("", 0.0))[:2]
        if score < LIKELY:
            return None
        return name if score - second >= CLEAR_BY or entry(name).kind == "off_topic" else None

    @property
    def guess(self) -> str | None:
        """The likeliest, where none is surely meant; none where a refusal is as likely and it would grant something."""
        (name, score), (_, second) = (*self.ranked, ("", 0.0), ("", 0.0))[:2]
        if not self.perhaps or self.answer or (score - second < GUESSED_BY and score < LIKELY_ALIKE):
            return None
        kinds = [entry(one).kind for one, likely in self.ranked[:OFFERED] if score - likely < CLEAR_BY]
        return name if kinds[0] == "refused" or "refused" not in kinds else None

    @property
    def perhaps(self) -> tuple[str, ...]:
        """The entries that may be meant; none where what is no matter of the trade is nearly as likely as the first."""
        if self.answer is None and self._elsewhere():
            return ()
        likely = (name for name, score in self.ranked[:OFFERED] if score >= LIKELY)
        return tuple(name for name in likely if entry(name).kind != "off_topic")

    def _elsewhere(self) -> bool:
        first = self.ranked[0][1] if self.ranked else 0.0
        return any(
            first - score < CLEAR_BY and entry(name).kind == "off_topic" for name, score in self.ranked[:OFFERED]
        )


def find(question: str, language: str = ENGLISH) -> Found:
    """The entries nearest to a question in a person's own words; English is understood in every language."""
    if name := grave(question):
        return Found(((name, 1.0),))
    if not says_something(question):
        return Found(())
    found = _nearest(question, language) if language != ENGLISH and asked_in(language) else Found(())
    return found if found.answer or found.perhaps else _nearest(question, ENGLISH)


def sum_meant(question: str, kinds: Collection[str], asks: bool = True, surely: bool = False) -> str | None:
    """The sum of those that can be meant which a question asks for, if it asks for one rather than for an entry.

    Parameters
    ----------
    kinds
        The sums that its figures allow.
    asks
        It is worded as a question, so that it tells of no batch.
    surely
        It brings no figure: only where it is clearly likelier than every entry.
    """
    named = {f"{SUM}{kind}" for kind in kinds}
    others = OTHERS if asks else NO_SUMS
    ranked = nearest(question[:LONGEST], ENGLISH, OFFERED + 1, named | others)
    best, score = next(((name, score) for name, score in ranked if name in named), ("", 0.0))
    least = SURE_SUM if surely else LIKELY_SUM
    likely = score >= least and all(score - one >= _lead(name, surely) for name, one in ranked if name not in named)
    return best.removeprefix(SUM) if likely else None


def begins(question: str) -> bool:
    """Whether a line is likelier one that begins a batch than one that any entry answers."""
    ranked = nearest(question[:LONGEST], ENGLISH, 1, {f"{SUM}start"})
    return bool(ranked) and ranked[0][0] == f"{SUM}start"


def _lead(rival: str, surely: bool) -> float:
    """How much likelier than a rival a sum has to be; figures speak for it, but not against a refusal or a start."""
    stands = rival in NO_SUMS or entry(rival).kind != "entry"
    return CLEAR_BY if surely else 0.0 if stands else -SUM_BY


def entry_likeness(question: str) -> float:
    """How like the likeliest entry a question is, from 0 to 1."""
    return next((score for _, score in nearest(question[:LONGEST], ENGLISH, 1)), 0.0)


def of_batch(
    question: str, ahead: float = 0.0, far: Collection[str] = (), ours: bool = False, least: float = LIKELY_OF_BATCH
) -> str | None:
    """The topic of a batch in hand that an English question is for; None where an entry is as likely.

    Parameters
    ----------
    ahead
        So much likelier than any entry it has to be.
    far
        Topics of another time than the batch's: they count less.
    ours
        It speaks of a batch of its own by a word, so entries count less.
    least
        So likely it has to be.
    """
    if grave(question) or not says_something(question):
        return None
    found = nearest(question[:LONGEST], ENGLISH, len(asked_of_batch()), asked_of_batch())
    scores = {name: score - (OURS_BY if ours and is_entry(name) else _far(name, far)) for name, score in found}
    name = _ours_first(scores)
    rival = max((score for one, score in scores.items() if is_entry(one)), default=0.0)
    ahead = -TIE if scores[name] >= SAME_WORDS else ahead
    if is_entry(name) or scores[name] < least or scores[name] - rival < ahead:
        return None
    return name.removeprefix(OF_BATCH)


def _ours_first(scores: Mapping[str, float]) -> str:
    """The likeliest name; where an entry is asked for in nearly the same words as a topic of the batch, the topic."""
    best = max(scores, key=lambda one: scores[one])
    topic = max((one for one in scores if not is_entry(one)), key=lambda one: scores[one], default=best)
    return topic if scores[topic] >= max(SAME_WORDS, scores[best] - TIE) else best


def _far(name: str, far: Collection[str]) -> float:
    return FAR_BY if name.removeprefix(OF_BATCH) in far else 0.0


@lru_cache(maxsize=64)  # «what now» and «plan» come again and again
def closer_than(
    topic: str, question: str, among: frozenset[str], far: frozenset[str] = frozenset(), least: float = PLAINLY
) -> str | None:
    """The likeliest of some topics of a batch, where it is plainly meant, and more so than the one it was taken for."""
    named = {OF_BATCH + one for one in (*among, topic)}
    found = nearest(question[:LONGEST], ENGLISH, len(asked_of_batch()), named)
    scores = {name.removeprefix(OF_BATCH): score - _far(name, far) for name, score in found if name in named}
    least = max(least, scores.pop(topic, 0.0))
    best = max(scores, key=lambda one: scores[one], default="")
    return best if scores.get(best, 0.0) >= least else None


def _nearest(question: str, language: str) -> Found:
    return Found(nearest(question[:LONGEST], language, OFFERED + 1))
