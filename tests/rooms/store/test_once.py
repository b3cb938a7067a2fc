"""What is read once in a transaction: until it is written there, and never for the next one."""

from collections.abc import Callable
from datetime import datetime

import pytest
from sqlalchemy import event, text

from core.batch.events import Event, Started
from core.person import Person
from core.store import batches, members, people
from core.store.database import Database, Transaction
from core.store.members import Member

READS: tuple[Callable[[Transaction], object], ...] = (
    lambda tx: batches.get(tx, "ham1"),
    lambda tx: batches.open_in(tx, "garden"),
    lambda tx: batches.open_in(tx, "shed"),
    lambda tx: batches.events(tx, "ham1"),
    lambda tx: members.of_batch(tx, "ham1"),
    lambda tx: people.asked(tx, "garden", "7"),
    lambda tx: people.asked(tx, "shed", "7"),
    lambda tx: people.load(tx, "7"),
)


def seen(tx: Transaction, step: int = 1) -> list[object]:
    """Everything that is read but once, read from the first on or from the last; what one read tells of another is
    told either way."""
    return [read(tx) for read in READS[::step]][::step]


@pytest.mark.parametrize("step", [1, -1])
def test_every_write_is_seen_at_once(step: int, database: Database, now: datetime) -> None:
    """Whatever was read before in the transaction: after each write it is what a transaction of its own reads."""
    begun = Event(1, now, now, "7", "garden:1", Started("ham", {"product": "ham", "mass": 3.0}))
    writes = (
        lambda tx: batches.add(tx, "ham1", "garden", "7", "ham", now),
        lambda tx: batches.append(tx, "ham1", [begun]),
        lambda tx: people.save(tx, Person("7", name="Ada")),
        lambda tx: people.ask(tx, "garden", "7", {"slot": "zone"}),
        lambda tx: people.ask(tx, "garden", "7", {"slot": "mass"}),
        lambda tx: people.ask(tx, "garden", "7", None),
        lambda tx: people.ask(tx, "shed", "7", {"slot": "zone"}),
        lambda tx: people.chat_moved(tx, "shed", "garden"),
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
    before: list[object] = []
    for number, write in enumerate(writes):
        with database.transaction() as tx:
            before = seen(tx, step)
            write(tx)
            after = seen(tx, step)
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
    assert len([one for one in asked if one.startswith("SELECT")]) == (8 if database.on_sqlite else 16)


def test_a_batch_that_is_under_way_in_the_chat_is_not_asked_for_again(database: Database, now: datetime) -> None:
    """Its row came with those of the chat."""
    with database.transaction() as tx:
        batches.add(tx, "ham1", "garden", "7", "ham", now)
    asked: list[str] = []
    event.listen(database.engine, "before_cursor_execute", lambda *of: asked.append(of[2]))
    with database.transaction() as tx:
        (ham,) = batches.open_in(tx, "garden")
        assert batches.get(tx, "ham1") == ham
    assert len([one for one in asked if one.startswith("SELECT")]) == (1 if database.on_sqlite else 2)


def test_what_was_not_asked_needs_no_answer_in_the_store(database: Database) -> None:
    """No question is taken back where none stands."""
    asked: list[str] = []
    event.listen(database.engine, "before_cursor_execute", lambda *of: asked.append(of[2]))
    with database.transaction() as tx:
        assert people.asked(tx, "garden", "7") is None
        people.ask(tx, "garden", "7", None)
    assert not [one for one in asked if one.startswith("DELETE")]


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
