"""What is read once in a transaction: until it is written there, and never for the next one."""

from datetime import datetime

import pytest
from sqlalchemy import event, text

from core.batch.events import Event, Started
from core.person import Person
from core.store import batches, members, people
from core.store.database import Database, Transaction
from core.store.members import Member


def seen(tx: Transaction) -> tuple[object, ...]:
    """Everything that is read but once."""
    found = people.load(tx, "7")
    return (
        batches.get(tx, "ham1"),
        batches.open_in(tx, "garden"),
        batches.open_in(tx, "shed"),
        batches.events(tx, "ham1"),
        members.of_batch(tx, "ham1"),
        found.name if found else None,
    )


def test_every_write_is_seen_at_once(database: Database, now: datetime) -> None:
    """Whatever was read before in the transaction: after each write it is what a transaction of its own reads."""
    begun = Event(1, now, now, "7", "garden:1", Started("ham", {"product": "ham", "mass": 3.0}))
    writes = (
        lambda tx: batches.add(tx, "ham1", "garden", "7", "ham", now),
        lambda tx: batches.append(tx, "ham1", [begun]),
        lambda tx: people.save(tx, Person("7", name="Ada")),
        lambda tx: members.add(tx, Member("ham1", "shed", "8", now)),
        lambda tx: people.save(tx, Person("7", name="Ada Lind")),
        lambda tx: batches.chat_moved(tx, "garden", "-100"),
        lambda tx: batches.chat_moved(tx, "-100", "garden"),
        lambda tx: members.remove(tx, "ham1", "shed"),
        lambda tx: members.add(tx, Member("ham1", "loft", "8", now)),
        lambda tx: members.chat_moved(tx, "loft", "shed"),
        lambda tx: batches.close(tx, "ham1", now),
        lambda tx: people.forget(tx, "7"),
    )
    before: tuple[object, ...] = ()
    for number, write in enumerate(writes):
        with database.transaction() as tx:
            before = seen(tx)
            write(tx)
            after = seen(tx)
        with database.reading() as fresh:
            assert seen(fresh) == after, number
        assert after != before, number
    assert before[0] is not None


def test_the_same_is_read_but_once(database: Database, now: datetime) -> None:
    """On a file nobody else writes meanwhile; on a server somebody may, so there it is read anew."""
    with database.transaction() as tx:
        batches.add(tx, "ham1", "garden", "7", "ham", now)
    asked: list[str] = []
    event.listen(database.engine, "before_cursor_execute", lambda *of: asked.append(of[2]))
    with database.transaction() as tx:
        first, second = seen(tx), seen(tx)
    assert first == second
    assert len([one for one in asked if one.startswith("SELECT")]) == (6 if database.on_sqlite else 12)


@pytest.mark.slow
def test_what_another_replica_committed_counts(database: Database, now: datetime) -> None:
    """A turn that waited for its batch reads what was said of it meanwhile."""
    if database.on_sqlite:
        pytest.skip("one writer")
    with database.transaction() as tx:
        batches.add(tx, "ham1", "garden", "7", "ham", now)
    with database.transaction() as tx:
        assert batches.get(tx, "ham1") is not None
        with database.transaction() as other:
            other.execute(text("UPDATE batches SET name = 'leg'"))
        found = batches.get(tx, "ham1")
        assert found is not None
        assert found.name == "leg"
