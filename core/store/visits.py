"""How often a chat was spoken in on its last day, and whether it was let in: what the door of the bot goes by."""

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

from sqlalchemy import case, delete, func, select, true, update

from core.store.database import Transaction
from core.store.tables import visits

KEPT_FOR: Final = timedelta(days=30)  # for chats that were not let in
MINE: Final = visits.c


@dataclass(frozen=True)
class Visit:
    """A chat on a day: its messages so far, and whether the first of them was the first ever."""

    messages: int
    new: bool


def count(tx: Transaction, chat: str, day: date) -> Visit:
    """Count one message of a chat on a day. UTC"""
    today = day.isoformat()
    fresh = tx.insert(visits).values(chat=chat, first_day=today, day=today, messages=1, admitted=False)
    again = {"messages": case((MINE.day == today, MINE.messages + 1), else_=1), "day": today}
    found = tx.execute(
        fresh.on_conflict_do_update(index_elements=["chat"], set_=again).returning(MINE.messages, MINE.first_day)
    ).one()
    return Visit(found.messages, found.messages == 1 and found.first_day == today)


def new_on(tx: Transaction, day: date) -> int:
    """How many chats came for the first time on a day."""
    return int(tx.execute(select(func.count()).where(MINE.first_day == day.isoformat())).scalar_one())


def drop(tx: Transaction, chat: str) -> None:
    """The chat was not taken in: it was never here."""
    tx.execute(delete(visits).where(MINE.chat == chat))


def admit(tx: Transaction, chat: str) -> None:
    """From now on this chat is let in."""
    tx.execute(update(visits).where(MINE.chat == chat).values(admitted=True))


def admitted(tx: Transaction, *chats: str) -> bool:
    """Whether one of these chats was let in; a person's own chat has their number."""
    return (
        tx.execute(select(MINE.chat).where(MINE.chat.in_(chats), MINE.admitted == true()).limit(1)).first() is not None
    )


def of_chat(tx: Transaction, chat: str) -> tuple[str, int, bool] | None:
    """The last day of a chat, its messages on it, and whether it was let in; None where nothing is kept."""
    found = tx.execute(select(MINE.day, MINE.messages, MINE.admitted).where(MINE.chat == chat)).first()
    return None if found is None else (found.day, found.messages, found.admitted)


def forget(tx: Transaction, person_id: str) -> None:
    """Who is forgotten is a stranger again; the count of the day stays, or it could be begun anew at will."""
    tx.execute(update(visits).where(MINE.chat == person_id).values(admitted=False))


def chat_moved(tx: Transaction, old: str, new: str) -> None:
    """The chat has another id now; what is kept of the new one already stands."""
    known = select(MINE.chat).where(MINE.chat == new)
    if tx.execute(known).first() is None:
        tx.execute(update(visits).where(MINE.chat == old).values(chat=new))


def prune(tx: Transaction, today: date) -> int:
    """Forget chats that were not let in and have been silent for 30 days; how many they were."""
    before = (today - KEPT_FOR).isoformat()
    return tx.execute(delete(visits).where(MINE.day < before, MINE.admitted != true())).rowcount
