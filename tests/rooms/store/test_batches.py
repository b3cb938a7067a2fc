from datetime import datetime, timedelta

import pytest
from sqlalchemy.exc import IntegrityError

from core.batch.events import Corrected, Done, Event, Probe, Read, Snoozed, Started
from core.errors import Gone
from core.store import batches, chats, outbox, people
from core.store.database import Database, Transaction

KNOWN = "abc12345"


def started(tx: Transaction, now: datetime, batch: str = KNOWN, chat: str = "garden") -> Event:
    batches.add(tx, batch, chat, "7", "flat", now)
    event = Event(1, now, now, "7", "update/1", Started("flat", {"cut": "brisket_flat", "mass": 3.2, "deadline": now}))
    batches.append(tx, batch, [event])
    return event


def read(number: int, now: datetime, message: str) -> Event:
    return Event(number, now, now, "7", message, Read(Probe.CORE, 70.0 + number))


def test_a_log_comes_back_in_order(database: Database, now: datetime) -> None:
    """What was appended, in several transactions, is the log; its times are UTC to the microsecond."""
    late = now + timedelta(hours=3, microseconds=7)
    with database.transaction() as tx:
        first = started(tx, now)
    with database.transaction() as tx:
        more = [
            Event(2, late, now, "8", "update/2", Snoozed("flip/1", late)),
            Event(3, late, now, "8", "update/2", Corrected(2, Done("flip/1", "fine"), late)),
        ]
        batches.append(tx, KNOWN, more)
    with database.reading() as tx:
        assert batches.events(tx, KNOWN) == (first, *more)


def test_a_repeated_message_adds_nothing(database: Database, now: datetime) -> None:
    """The same message in a later transaction leaves the log as it is, whatever numbers its events have now."""
    with database.transaction() as tx:
        started(tx, now)
        batches.append(tx, KNOWN, [read(2, now, "update/2"), read(3, now, "update/2")])
        log = batches.events(tx, KNOWN)
    with database.transaction() as tx:
        batches.append(tx, KNOWN, [read(4, now, "update/2"), read(5, now, "update/2"), read(6, now, "update/3")])
        assert batches.events(tx, KNOWN) == (*log, read(6, now, "update/3"))


def test_one_message_may_say_several_things_in_its_turn(database: Database, now: datetime) -> None:
    """Two appends of one message in one transaction both count."""
    with database.transaction() as tx:
        started(tx, now)
        batches.append(tx, KNOWN, [read(2, now, "update/2")])
        batches.append(tx, KNOWN, [read(3, now, "update/2")])
        assert [e.number for e in batches.events(tx, KNOWN)] == [1, 2, 3]


def test_what_nobody_said_in_a_message_is_never_a_repetition(database: Database, now: datetime) -> None:
    """Events without a message are all kept."""
    with database.transaction() as tx:
        started(tx, now)
        batches.append(tx, KNOWN, [read(2, now, "")])
    with database.transaction() as tx:
        batches.append(tx, KNOWN, [read(3, now, "")])
        assert [e.message for e in batches.events(tx, KNOWN)] == ["update/1", "", ""]


def test_two_events_cannot_have_one_number(database: Database, now: datetime) -> None:
    """A number is given once in a batch: the later turn breaks whole, and the log stays as it was."""
    with database.transaction() as tx:
        first = started(tx, now)
    with pytest.raises(IntegrityError), database.transaction() as tx:
        batches.append(tx, KNOWN, [read(2, now, "update/2"), read(1, now, "update/3")])
    with database.reading() as tx:
        assert batches.events(tx, KNOWN) == (first,)


def test_nothing_is_added_to_a_batch_that_is_not_there(database: Database, now: datetime) -> None:
    """An event of an unknown batch is refused; an unknown batch has no log."""
    with database.transaction() as tx, pytest.raises(Gone):
        batches.append(tx, "nowhere", [read(1, now, "update/1")])
    with database.reading() as tx:
        assert batches.events(tx, "nowhere") == ()
        assert batches.get(tx, "nowhere") is None


def test_a_time_without_a_zone_is_refused_at_the_door(database: Database, now: datetime) -> None:
    """A naive time is a mistake of ours and is told as such, and nothing is kept."""
    with pytest.raises(ValueError, match="without a zone"), database.transaction() as tx:
        batches.add(tx, KNOWN, "garden", "7", "flat", now.replace(tzinfo=None))
    with database.reading() as tx:
        assert batches.get(tx, KNOWN) is None


def test_open_batches_are_those_not_closed(database: Database, now: datetime) -> None:
    """A chat's open batches come in the order in which they began; a closed one stays with its person."""
    later = now + timedelta(days=2)
    with database.transaction() as tx:
        batches.add(tx, "second", "garden", "7", "point", later)
        batches.add(tx, "first", "garden", "8", "flat", now)
        batches.add(tx, "other", "shed", "7", "flat", now)
        assert [row.id for row in batches.open_in(tx, "garden")] == ["first", "second"]
        batches.close(tx, "second", later)
        batches.close(tx, "second", later + timedelta(days=9))
        assert [row.id for row in batches.open_in(tx, "garden")] == ["first"]
        assert batches.get(tx, "second") == batches.Row("second", "garden", "7", "point", later, later)
        assert [row.id for row in batches.of_person(tx, "7")] == ["other", "second"]


def test_ids_are_short_new_and_not_to_be_guessed(database: Database, now: datetime) -> None:
    """A thousand ids are a thousand different ones, of eight letters and digits, with no order in them."""
    with database.transaction() as tx:
        ids = [batches.new_id(tx) for _ in range(1000)]
    assert len(set(ids)) == 1000
    assert all(len(i) == 8 and set(i) <= set(batches.ALPHABET) for i in ids)
    assert len({i[0] for i in ids}) > 20
    assert ids != sorted(ids)


def test_a_moved_chat_keeps_everything(database: Database, now: datetime) -> None:
    """A group that got another id keeps its batches, its questions and what waits to be sent."""
    with database.transaction() as tx:
        started(tx, now, chat="old")
        people.ask(tx, "old", "7", {"slot": "cure"})
        outbox.put_reply(tx, "old", {"text": "hello"}, now)
        chats.moved(tx, "old", "new")
        assert [row.id for row in batches.open_in(tx, "new")] == [KNOWN]
        assert batches.open_in(tx, "old") == ()
        assert people.asked(tx, "new", "7") == {"slot": "cure"}
    assert [row.chat for row in outbox.claim(database, now, timedelta(minutes=1), 5, "me")] == ["new"]
