"""The first reply of a chat is taken with the turn that makes it, the next with the mark of the one before."""

from collections.abc import Iterator
from contextlib import suppress
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import event

from core.errors import NotDelivered
from core.plan.reminders import Wanted
from core.plan.steps import Urgency
from core.reminders.delivery import Postman
from core.store import outbox
from core.store.database import Database, open_database
from core.store.outbox import Row

NOW = datetime(2027, 3, 1, 8, tzinfo=UTC)
LEASE = timedelta(minutes=2)
SECOND = timedelta(seconds=1)


class Street:
    """Where the postman goes; each trouble is that of one try."""

    def __init__(self) -> None:
        self.arrived: list[str] = []
        self.troubles: list[NotDelivered] = []

    def render(self, row: Row, _: datetime) -> str:
        said = row.body["text"] if row.body else row.step
        return f"{row.chat}: {said}{' again' if row.repeat else ''}"

    async def send(self, words: str) -> str:
        if self.troubles:
            raise self.troubles.pop()
        self.arrived.append(words)
        return str(len(self.arrived))


@pytest.fixture
def database(tmp_path: Path) -> Iterator[Database]:
    opened = open_database(f"sqlite:///{tmp_path / 'house.db'}")
    yield opened
    opened.close()


@pytest.fixture
def street() -> Street:
    return Street()


@pytest.fixture
def postman(database: Database, street: Street) -> Postman[str]:
    one = Postman(database, street.render, street.send, "me", LEASE)
    one.takes_along = True
    return one


def turn(postman: Postman[str], *said: str, chat: str = "garden", at: datetime = NOW) -> Row | None:
    """A turn that says something: what was taken along is handed over once it is kept."""
    with postman.database.transaction() as tx:
        for words in said:
            outbox.put_reply(tx, chat, {"text": words}, at)
        taken = postman.take_reply(tx, chat, at)
    if taken is not None:
        postman.hand(taken)
    return taken


def writes(database: Database) -> list[str]:
    """Filled with each transaction that takes the writer's place from now on."""
    begun: list[str] = []
    event.listen(database.engine, "before_cursor_execute", lambda *of: begun.append(of[2]) if "IMM" in of[2] else None)
    return begun


async def test_an_answer_is_kept_taken_and_marked_in_two_commits(
    database: Database, postman: Postman[str], street: Street
) -> None:
    """One for the turn, one for the mark: each costs a wait for the disk. A second answer is one more."""
    begun = writes(database)
    turn(postman, "hello")
    assert await postman.replies("garden", NOW) == 1
    assert len(begun) == 2
    turn(postman, "one", "two")
    assert await postman.replies("garden", NOW) == 2
    assert len(begun) == 5
    assert street.arrived == ["garden: hello", "garden: one", "garden: two"]
    assert not postman.busy
    assert await postman.next_due() is None


async def test_a_turn_that_breaks_takes_nothing(postman: Postman[str], street: Street) -> None:
    """What was not kept is neither sent nor held."""
    with suppress(RuntimeError), postman.database.transaction() as tx:
        outbox.put_reply(tx, "garden", {"text": "hello"}, NOW)
        assert postman.take_reply(tx, "garden", NOW) is not None
        raise RuntimeError
    assert not postman.busy
    assert await postman.replies("garden", NOW) == 0
    assert street.arrived == []


async def test_a_turn_takes_nothing_past_an_answer_that_waits(postman: Postman[str], street: Street) -> None:
    """While one is to be tried again or on its way, the next of its chat waits for it; another chat's does not."""
    street.troubles = [NotDelivered(after=5 * SECOND)]
    turn(postman, "one")
    await postman.replies("garden", NOW)
    assert turn(postman, "two", at=NOW + SECOND) is None
    assert turn(postman, "three", chat="shed", at=NOW + SECOND) is not None
    assert await postman.replies("garden", NOW + SECOND) == 0
    assert await postman.replies("shed", NOW + SECOND) == 1
    assert await postman.replies("garden", NOW + 10 * SECOND) == 2
    assert street.arrived == ["shed: three", "garden: one", "garden: two"]


async def test_what_a_dead_process_had_taken_along_comes_as_a_repeat(
    database: Database, postman: Postman[str], street: Street
) -> None:
    """It may have left: the next process says so, and says it once."""
    turn(postman, "one", "two")
    heir = Postman(database, street.render, street.send, "heir", LEASE)
    assert await heir.round(NOW + LEASE - SECOND) == 0
    assert await heir.round(NOW + LEASE) == 2
    assert street.arrived == ["garden: one again", "garden: two"]


async def test_where_others_write_too_the_next_is_looked_for_after_the_mark(
    postman: Postman[str], street: Street, monkeypatch: pytest.MonkeyPatch
) -> None:
    """An answer that another process commits while ours marks: it waits for no sweep."""
    monkeypatch.setattr(postman, "_alone", False)
    mark = postman._sent

    def marked_meanwhile(*of: Any) -> bool:
        out = mark(*of)
        if len(street.arrived) == 1:
            with postman.database.transaction() as tx:
                outbox.put_reply(tx, "garden", {"text": "two"}, NOW)
        return out

    monkeypatch.setattr(postman, "_sent", marked_meanwhile)
    turn(postman, "one")
    assert await postman.replies("garden", NOW) == 2
    assert street.arrived == ["garden: one", "garden: two"]


async def test_a_round_sends_what_is_in_hand(database: Database, postman: Postman[str], street: Street) -> None:
    """An errand that never ran loses nothing: the clock's next round takes it, and what else is due."""
    with database.transaction() as tx:
        wanted = [Wanted("flip", "flip", NOW, Urgency.QUIET)]
        outbox.reconcile(tx, "batch", "loft", wanted, NOW)
    turn(postman, "one", "two")
    turn(postman, "three", chat="shed")
    assert await postman.round(NOW) == 4
    assert sorted(street.arrived) == ["garden: one", "garden: two", "loft: flip", "shed: three"]
    assert not postman.busy
