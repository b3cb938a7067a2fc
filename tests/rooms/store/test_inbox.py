from datetime import datetime, timedelta

import pytest

from core.store import inbox
from core.store.database import Database


def test_a_message_comes_for_the_first_time_once(database: Database, now: datetime) -> None:
    """The same key is news once, in one transaction or in two."""
    with database.transaction() as tx:
        assert inbox.first_time(tx, "update/1", now)
        assert not inbox.first_time(tx, "update/1", now)
    with database.transaction() as tx:
        assert not inbox.first_time(tx, "update/1", now)
        assert inbox.first_time(tx, "update/2", now)


def test_what_was_not_committed_did_not_come(database: Database, now: datetime) -> None:
    """A turn that breaks takes its key back with it: the channel's repetition is taken as news."""
    with pytest.raises(ZeroDivisionError), database.transaction() as tx:
        _ = inbox.first_time(tx, "update/1", now) / 0
    with database.transaction() as tx:
        assert inbox.first_time(tx, "update/1", now)


def test_old_keys_are_forgotten_and_young_ones_are_not(database: Database, now: datetime) -> None:
    """A key is kept for 30 days, which is far longer than a channel repeats itself."""
    with database.transaction() as tx:
        inbox.first_time(tx, "old", now - timedelta(days=30, seconds=1))
        inbox.first_time(tx, "young", now - timedelta(days=30))
        assert inbox.prune(tx, now) == 1
        assert inbox.first_time(tx, "old", now)
        assert not inbox.first_time(tx, "young", now)
