"""Answers that were called wrong: kept for the keeper of the bot, who reads and clears them."""

from typing import Final

from core.service.turn import House, Turn
from core.store import wronged
from core.store.wronged import Wronged

SHOWN: Final = 20

__all__ = ["SHOWN", "Wronged", "clear", "keep", "latest"]


def keep(turn: Turn, answer: str, question: str) -> None:
    """Keep an answer that somebody called wrong, with the question as it was typed."""
    wronged.put(turn.tx, turn.now, answer, question)


def latest(house: House) -> tuple[Wronged, ...]:
    """The latest of them, the newest first. Raises NotKept."""
    with house.reading() as tx:
        return wronged.latest(tx, SHOWN)


def clear(house: House) -> int:
    """They are mended: none is kept any more; how many they were. Raises NotKept."""
    with house.transaction() as tx:
        return wronged.clear(tx)
