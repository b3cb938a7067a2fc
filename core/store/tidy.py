"""Forget what nobody will ask for again, so that the store does not grow with every message."""

from datetime import datetime

from core.store import inbox, members, outbox, visits, wronged
from core.store.database import Database


def tidy(database: Database, now: datetime) -> None:
    """Forget the keys of messages, the replies and the strangers of 30 days ago; batches stay. Raises NotKept."""
    with database.transaction() as tx:
        inbox.prune(tx, now)
        members.prune(tx, now)
        outbox.prune(tx, now - inbox.KEPT_FOR)
        visits.prune(tx, now.date())
        wronged.prune(tx, now)
