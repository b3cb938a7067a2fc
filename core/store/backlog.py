"""How far behind the outbox is: what should have gone out and has not."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import func, select

from core.store.database import Transaction
from core.store.due import OPEN, OUT, SORTS


@dataclass(frozen=True)
class Backlog:
    """What is due at a moment and not yet sent. `oldest` is when the first of it was due, aware UTC."""

    replies: int
    reminders: int
    oldest: datetime | None


def backlog(tx: Transaction, now: datetime) -> Backlog:
    """What is due and not yet sent; what waits for its day costs nothing here, however much it is."""
    due = OUT.state.in_(OPEN), OUT.due_at <= now
    counts = [tx.execute(select(func.count()).where(OUT.sort == sort, *due)).scalar_one() for sort in SORTS]
    firsts = [tx.execute(select(func.min(OUT.due_at)).where(OUT.sort == sort, *due)).scalar() for sort in SORTS]
    return Backlog(counts[0], counts[1], min((at for at in firsts if at is not None), default=None))
