"""Answers that somebody called wrong: the question and the answer's name, without who asked."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final

from sqlalchemy import delete, select

from core.store.database import Transaction
from core.store.tables import wronged

KEPT_FOR: Final = timedelta(days=90)
LONGEST: Final = 300  # characters of a question


@dataclass(frozen=True)
class Wronged:
    """One of them; `question` is empty where it was not known any more."""

    at: datetime
    answer: str
    question: str


def put(tx: Transaction, at: datetime, answer: str, question: str) -> None:
    """Keep one for the keeper."""
    tx.execute(tx.insert(wronged).values(at=at, answer=answer, question=question[:LONGEST]))


def latest(tx: Transaction, count: int) -> tuple[Wronged, ...]:
    """The latest ones, the newest first."""
    rows = tx.execute(select(wronged).order_by(wronged.c.id.desc()).limit(count))
    return tuple(Wronged(row.at, row.answer, row.question) for row in rows)


def clear(tx: Transaction) -> int:
    """They are mended; how many they were."""
    return tx.execute(delete(wronged)).rowcount


def prune(tx: Transaction, now: datetime) -> int:
    """Forget those of 90 days ago; how many they were."""
    return tx.execute(delete(wronged).where(wronged.c.at < now - KEPT_FOR)).rowcount
