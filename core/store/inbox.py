"""The inbox: which messages were taken already. Counted in the transaction of what they change."""

from datetime import datetime, timedelta
from typing import Final

from sqlalchemy import delete

from core.store.database import Transaction
from core.store.tables import seen

# a channel repeats an unconfirmed update for a day; the rest is for a restored backup
KEPT_FOR: Final = timedelta(days=30)


def first_time(tx: Transaction, key: str, at: datetime) -> bool:
    """Whether a message comes for the first time; from now on it does not."""
    new = tx.insert(seen).values(key=key, at=at).on_conflict_do_nothing().returning(seen.c.key)
    return tx.execute(new).first() is not None


def prune(tx: Transaction, now: datetime) -> int:
    """Forget the keys older than 30 days; how many they were."""
    return tx.execute(delete(seen).where(seen.c.at < now - KEPT_FOR)).rowcount
