"""Reminders of a chat that stand at the same time, and how many it was sent: what one message can say."""

from collections.abc import Collection, Sequence
from datetime import datetime

from sqlalchemy import func, select, update

from core.store.database import Database, Transaction
from core.store.due import OUT
from core.store.outbox import Row, put_back, row_of
from core.store.tables import outgoing

PIERCING = "piercing"


def beside(tx: Transaction, row: Row, now: datetime) -> tuple[Row, ...]:
    """The other reminders of a row's chat that are due and wait, piercing ones left out, the longest due first."""
    same = OUT.chat == row.chat, OUT.sort == "reminder", OUT.state == "waiting", OUT.id != int(row.id)
    due = OUT.due_at <= now, OUT.urgency != PIERCING
    found = select(outgoing).where(*same, *due).order_by(OUT.due_at, OUT.id)
    return tuple(map(row_of, tx.execute(found).mappings()))


def said_since(tx: Transaction, chat: str, since: datetime) -> int:
    """How many messages of reminders a chat was sent from a moment on, piercing ones left out."""
    sent = OUT.chat == chat, OUT.sort == "reminder", OUT.state == "sent", OUT.sent_at >= since
    counted = select(func.count(func.distinct(OUT.channel_key))).where(*sent, OUT.urgency != PIERCING)
    return int(tx.execute(counted).scalar_one())


def hold(database: Database, row: Row, until: datetime) -> bool:
    """A claimed row waits until a moment, its repeat with it, and nothing else of its chat."""
    if not put_back(database, row, until, alone=True):
        return False
    of_it = OUT.batch == row.batch, OUT.chat == row.chat, OUT.step == row.step, OUT.occurrence > row.occurrence
    waiting = OUT.state == "waiting", OUT.free_at < until
    with database.transaction() as tx:
        tx.execute(update(outgoing).where(*of_it, *waiting).values(free_at=until))
    return True


def said_too(tx: Transaction, rows: Sequence[str], at: datetime, channel_key: str) -> None:
    """Rows that still waited were said in a message that went out."""
    waiting = OUT.id.in_([int(row) for row in rows]), OUT.state == "waiting"
    tx.execute(update(outgoing).where(*waiting).values(state="sent", sent_at=at, channel_key=channel_key))


def in_message(tx: Transaction, chat: str, channel_key: str) -> Collection[str]:
    """The batches that a message of ours spoke of."""
    found = select(OUT.batch).where(OUT.chat == chat, OUT.channel_key == channel_key, OUT.batch.is_not(None))
    return frozenset(tx.execute(found).scalars())
