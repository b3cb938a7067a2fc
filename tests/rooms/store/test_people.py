from dataclasses import replace
from datetime import datetime, time
from pathlib import Path

from core.person import Learned, Person, Units
from core.store import people
from core.store.database import Database, open_database

HEDDA = Person("7", "Hedda", zone="Europe/Vienna", units=Units("lb", "in", "f"), flip_hours=(time(6, 30), time(19)))


def test_a_stranger_is_nobody(database: Database) -> None:
    """Somebody who never spoke is not known."""
    with database.transaction() as tx:
        assert people.load(tx, "7") is None


def test_a_person_is_kept_and_changed(database: Database) -> None:
    """The latest of what was saved is what is loaded, and nobody else changes."""
    learned = replace(HEDDA, learned=Learned(diffusivity_log_shift=0.2, batches=1))
    with database.transaction() as tx:
        people.save(tx, HEDDA)
        people.save(tx, Person("8"))
    with database.transaction() as tx:
        people.save(tx, learned)
    with database.reading() as tx:
        assert (people.load(tx, "7"), people.load(tx, "8")) == (learned, Person("8"))


def test_who_is_forgotten_is_nobody(database: Database) -> None:
    """Settings and open questions of one person go, in every chat; nobody else loses anything."""
    with database.transaction() as tx:
        people.save(tx, HEDDA)
        people.save(tx, Person("8"))
        for chat, person in (("a", "7"), ("b", "7"), ("a", "8")):
            people.ask(tx, chat, person, {"slot": "cure"})
        people.forget(tx, "7")
    with database.reading() as tx:
        assert (people.load(tx, "7"), people.load(tx, "8")) == (None, Person("8"))
        assert [people.asked(tx, chat, "7") for chat in "ab"] == [None, None]
        assert people.asked(tx, "a", "8") == {"slot": "cure"}


def test_a_question_waits_for_its_answer(database: Database, now: datetime) -> None:
    """What was asked, with the half intent, is kept for this person in this chat until it is answered."""
    question = {"slot": "cure", "start": {"cut": "brisket_flat", "deadline": now, "said": frozenset({"mass"})}}
    with database.transaction() as tx:
        people.ask(tx, "garden", "7", {"slot": "unit"})
        people.ask(tx, "garden", "7", question)
        assert people.asked(tx, "garden", "7") == question
        assert people.asked(tx, "garden", "8") is None
        assert people.asked(tx, "shed", "7") is None
        people.ask(tx, "garden", "7", None)
        assert people.asked(tx, "garden", "7") is None


def test_a_restart_forgets_no_question(tmp_path: Path, now: datetime) -> None:
    """The half-asked question is there after the program was ended and started again."""
    url = f"sqlite:///{tmp_path / 'cellar.db'}"
    first = open_database(url)
    with first.transaction() as tx:
        people.ask(tx, "garden", "7", {"slot": "cure", "at": now})
    first.close()
    second = open_database(url)
    with second.reading() as tx:
        assert people.asked(tx, "garden", "7") == {"slot": "cure", "at": now}
    second.close()


def test_a_question_moves_with_its_chat(database: Database) -> None:
    """When a chat gets another id, what was asked goes along; what was asked there already stands."""
    with database.transaction() as tx:
        people.ask(tx, "old", "7", {"slot": "cure"})
        people.ask(tx, "old", "8", {"slot": "unit"})
        people.ask(tx, "new", "8", {"slot": "later"})
        people.chat_moved(tx, "old", "new")
        assert people.asked(tx, "new", "7") == {"slot": "cure"}
        assert people.asked(tx, "new", "8") == {"slot": "later"}
        assert people.asked(tx, "old", "7") is None
