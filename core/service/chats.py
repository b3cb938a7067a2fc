"""A chat that goes, moves or comes: what waits for it follows, and its batches are kept."""

from core.service.turn import Turn
from core.store import chats, outbox


def gone(turn: Turn) -> int:
    """Nobody listens there any more: what waits is given up, the batches stay; how many messages that were."""
    return outbox.chat_gone(turn.tx, turn.said.chat)


def back(turn: Turn) -> int:
    """It can be reached again: the reminders of its batches that are still ahead wait again; how many they were."""
    return outbox.chat_back(turn.tx, turn.said.chat, turn.now)


def moved(turn: Turn, to: str) -> None:
    """The chat has another id now: batches, open questions and whatever waits go along."""
    chats.moved(turn.tx, turn.said.chat, to)
