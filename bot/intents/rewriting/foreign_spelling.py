"""Words of another language as they were meant: «kuhlschrank» with its umlaut, «gewnedet» as the key it is.

Only a word of the tongue's own file is put in the place of one that was typed, and only where no other is as near; no
number is touched.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from bot.intents.rewriting.slips import lexicon, one_slip
from bot.intents.rewriting.spoken_german import WRITTEN_OUT
from core import patterns as re

_WORD: Final = re.compile(r"[^\W\d_]+")
_SHORTEST: Final = 6  # letters; shorter words are one slip away from too many others
_SHORTEST_BARE: Final = 6  # letters; «fur» for «für» may be anything
_BARE: Final = str.maketrans({"ä": "a", "ö": "o", "ü": "u", "ß": "ss"})


@dataclass(frozen=True)
class Spelling:
    """The words that decide, those that only look like them, and the words behind each poorer way of writing."""

    keys: tuple[str, ...]
    known: frozenset[str]
    marked: Mapping[str, str]

    def mended(self, text: str) -> str:
        """A plain line with the words that were meant."""
        return _WORD.sub(lambda found: self._meant(found[0]), text)

    def _meant(self, typed: str) -> str:
        word = self.marked.get(typed, typed)
        if len(word) < _SHORTEST or word in self.known:
            return word
        near = [key for key in self.keys if key[0] == word[0] and one_slip(word, key)]
        return near[0] if len(near) == 1 else word


def spelling(keys: Iterable[str], known: Iterable[str]) -> Spelling:
    """How the words of a tongue are mended.

    Parameters
    ----------
    keys
        Phrases whose words decide what a line means.
    known
        Words that are right as they stand, though a key is one slip away.
    """
    words = sorted({word for key in keys for word in _WORD.findall(key)})
    right = frozenset((*words, *known, *lexicon().known))
    poorer = {poor: word for word in (*words, *known) for poor in _poorer(word) if poor not in right}
    return Spelling(tuple(word for word in words if len(word) >= _SHORTEST), right, poorer)


def _poorer(word: str) -> Iterator[str]:
    """A word without its marks, as it is typed where the keys for them are missing."""
    yield word.translate(WRITTEN_OUT)
    if len(word) >= _SHORTEST_BARE:
        yield word.translate(_BARE)
