"""The inbox: which messages were taken already. Counted in the transaction of what they change."""

from datetime import datetime, timedelta
from functools import cache
from typing import Final

from sqlalchemy import bindparam, delete
from sqlalchemy.sql.dml import ReturningInsert

from core.store.database import Transaction, inserting
from core.store.tables import seen

# a channel repeats an unconfirmed update for a day; the rest is for a restored backup
KEPT_FOR: Final = timedelta(days=30)


def first_time(tx: Transaction, key: str, at: datetime) -> bool:
    """Whether a message comes for the first time; from now on it does not."""
    return tx.execute(_taking(on_server=tx.on_server), {"key": key, "at": at}).scalar() is not None


@cache
def _taking(*, on_server: bool) -> ReturningInsert[str]:
    new = inserting(seen, on_server=on_server).values(key=bindparam("key"), at=bindparam("at"))
    return new.on_conflict_do_nothing().returning(seen.c.key)


def prune(tx: Transaction, now: datetime) -> int:
    """Forget the keys older than 30 days; how many they were."""
    return tx.execute(delete(seen).where(seen.c.at < now - KEPT_FOR)).rowcount
