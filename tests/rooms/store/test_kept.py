"""What is kept of a person: all of it, and nothing of anybody else."""

from datetime import datetime, timedelta

import pytest

from core.batch.events import Done, Event, Handed, Started, Tasted, What
from core.person import Person
from core.store import batches, kept, members, outbox, people
from core.store.database import Database, Transaction

SETUP = {"product": "pastrami", "cut": "brisket_flat", "mass": 3.2}


def said(tx: Transaction, batch: str, at: datetime, *whats: tuple[str, What]) -> None:
    known = len(batches.events(tx, batch))
    batches.append(
        tx, batch, [Event(known + n, at, at, by, f"{batch}-{known + n}", w) for n, (by, w) in enumerate(whats, 1)]
    )


@pytest.fixture
def family(database: Database, now: datetime) -> Database:
    """Marta has a batch of her own and one with Bo, in a group; Bo has one in which Marta tasted."""
    with database.transaction() as tx:
        for key, name in (("marta", "Marta"), ("bo", "Bo")):
            people.save(tx, Person(key, name, zone="Europe/Vienna"))
            people.ask(tx, "group", key, {"slot": "mass", "said": {"of": name}})
        for key, chat, owner in (("own", "marta", "marta"), ("shared", "group", "marta"), ("his", "group", "bo")):
            batches.add(tx, key, chat, owner, key, now)
            said(tx, key, now, (owner, Started(key, SETUP)))
        said(tx, "shared", now, ("bo", Done("brine", "secret of Bo")), ("marta", Done("into_cure")))
        said(tx, "his", now, ("bo", Done("out", "secret of Bo")), ("marta", Tasted(1)))
        outbox.put_reply(tx, "marta", {"text": "of her own"}, now, batch="own")
        outbox.put_reply(tx, "marta", {"text": "Bo made the brine"}, now, batch="shared")
        outbox.put_reply(tx, "marta", {"text": "Bo again"}, now)
        outbox.put_reply(tx, "group", {"text": "to all"}, now, batch="shared")
        outbox.put_reply(tx, "bo", {"text": "to Bo"}, now)
    return database


def of(database: Database, person: str) -> kept.Kept:
    with database.reading() as tx:
        return kept.of_person(tx, person)


def test_all_that_is_hers_is_in_it(family: Database) -> None:
    """Settings, the open question, both her batches with what she said, and her words in his."""
    found = of(family, "marta")
    assert found.person is not None
    assert (found.person.name, found.person.zone) == ("Marta", "Europe/Vienna")
    assert found.questions == (("group", {"slot": "mass", "said": {"of": "Marta"}}),)
    assert [(one.id, one.batch is not None, len(one.said), one.by_others) for one in found.batches] == [
        ("own", True, 1, 0),
        ("shared", True, 2, 1),
        ("his", False, 1, 2),
    ]


def test_nothing_of_anybody_else_is_in_it(family: Database) -> None:
    """No word of Bo's, not quoted either, no message of another chat, and no number of his."""
    found = of(family, "marta")
    assert all(event.by == "marta" for one in found.batches for event in one.said)
    assert [None if m.body is None else m.body["text"] for m in found.messages] == ["of her own", None, None]
    assert "Bo" not in repr(found)
    assert "'bo'" not in repr(found)


def test_whom_something_was_handed_to_has_no_number_in_it(family: Database, now: datetime) -> None:
    """That she handed the fire to Bo is hers; his number and his chat are not."""
    with family.transaction() as tx:
        said(tx, "own", now, ("marta", Handed("fire", now, "bo", "him", "bo-chat")))
    (handed,) = [e.what for one in of(family, "marta").batches for e in one.said if isinstance(e.what, Handed)]
    assert handed == Handed("fire", now, "", "him", "")


def test_a_batch_that_somebody_has_with_her_is_not_hers_alone(database: Database, now: datetime) -> None:
    """Though they have not said a word: what the bot said of them is not given; nor is it of what she joined."""
    with database.transaction() as tx:
        batches.add(tx, "own", "marta", "marta", "own", now)
        said(tx, "own", now, ("marta", Started("own", SETUP)))
        members.add(tx, members.Member("own", "bo", "bo", now))
        outbox.put_reply(tx, "marta", {"text": "Bo is in now"}, now, batch="own")
        outbox.put_reply(tx, "bo", {"text": "Marta began it"}, now)
    assert [m.body for m in of(database, "marta").messages] == [None]
    assert [m.body for m in of(database, "bo").messages] == [None]
    assert [one.batch for one in of(database, "bo").shared] == ["own"]


def test_the_log_forgets_the_name_of_who_took_something_over(family: Database, now: datetime) -> None:
    """What was taken stays under the number; the name of another stays."""
    with family.transaction() as tx:
        fire, flips = Handed("fire", now, "bo", "Bo", "bo"), Handed("flips", now, "marta", "Marta", "marta")
        said(tx, "shared", now, ("marta", fire), ("marta", flips))
        batches.unname(tx, "bo")
        handed = [e.what for e in batches.events(tx, "shared") if isinstance(e.what, Handed)]
    assert [(one.person, one.name) for one in handed] == [("bo", ""), ("marta", "Marta")]


def test_who_shares_nothing_has_every_word(database: Database, now: datetime) -> None:
    """What was said to somebody who cooks alone is theirs, whatever it was about."""
    with database.transaction() as tx:
        batches.add(tx, "own", "marta", "marta", "own", now)
        said(tx, "own", now, ("marta", Started("own", SETUP)))
        outbox.put_reply(tx, "marta", {"text": "hello"}, now - timedelta(days=1))
        outbox.put_reply(tx, "marta", {"text": "of her own"}, now, batch="own")
    assert [m.body for m in of(database, "marta").messages] == [{"text": "hello"}, {"text": "of her own"}]


def test_after_forgetting_only_the_log_is_left(family: Database) -> None:
    """Neither settings nor questions; what she said of batches stays, by her number, as the page says."""
    with family.transaction() as tx:
        people.forget(tx, "marta")
    found = of(family, "marta")
    assert (found.person, found.questions) == (None, ())
    assert [len(one.said) for one in found.batches] == [1, 2, 1]


def test_of_a_stranger_nothing_is_kept(family: Database) -> None:
    """Nobody known, nothing there."""
    found = of(family, "eve")
    assert (found.person, found.questions, found.batches, found.messages) == (None, (), (), ())
