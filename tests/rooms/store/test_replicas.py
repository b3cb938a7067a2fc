"""Several processes on one PostgreSQL: turns of a chat one after another, no row in two hands, the dead are noticed."""

import threading
from collections.abc import Iterator
from datetime import datetime, timedelta

import pytest

from core.errors import NotKept
from core.plan.reminders import Wanted
from core.plan.steps import Urgency
from core.store import outbox
from core.store.database import Database, open_database
from core.store.roll import Roll
from tests.rooms.store.conftest import empty

LEASE = timedelta(minutes=2)
PATIENCE = 60.0

pytestmark = pytest.mark.slow


@pytest.fixture
def pair(server: str) -> Iterator[tuple[Database, Database]]:
    """Two replicas on one store."""
    empty(Database(server))
    both = open_database(server), open_database(server)
    yield both
    for each in both:
        each.close()


def test_turns_of_a_chat_wait_for_one_another(pair: tuple[Database, Database], now: datetime) -> None:
    """While one replica is in a turn of a chat, the other's turn of that chat waits; its reply comes second."""
    ida, otto = pair
    in_turn = threading.Event()
    ended: list[str] = []

    def second() -> None:
        in_turn.wait(PATIENCE)
        with otto.transaction() as tx:
            tx.take_turns("garden", "otto")
            ended.append("second")
            outbox.put_reply(tx, "garden", {"text": "second"}, now)

    thread = threading.Thread(target=second)
    thread.start()
    with ida.transaction() as tx:
        tx.take_turns("garden", "ida")
        in_turn.set()
        thread.join(0.3)
        ended.append("first")
        outbox.put_reply(tx, "garden", {"text": "first"}, now)
    thread.join(PATIENCE)
    assert ended == ["first", "second"]
    assert [row.body for row in outbox.claim(ida, now, LEASE, 10, "ida")] == [{"text": "first"}]


def test_turns_of_other_chats_do_not_wait(pair: tuple[Database, Database]) -> None:
    """Two chats go on side by side, over replicas too."""
    ida, otto = pair
    with ida.transaction() as one, otto.transaction() as other:
        one.take_turns("garden", "ida")
        other.take_turns("cellar", "otto")


def test_a_turn_that_waits_too_long_is_not_kept(server: str, pair: tuple[Database, Database]) -> None:
    """Behind a replica that stands still a turn is given up and comes again: nothing hangs for ever."""
    impatient = Database(server, busy_seconds=0.1)
    with pair[0].transaction() as tx:
        tx.take_turns("garden", "ida")
        with pytest.raises(NotKept, match="lock timeout"), impatient.transaction() as late:
            late.take_turns("garden", "otto")
    impatient.close()


def test_what_is_in_a_hand_is_not_moved_into_another(pair: tuple[Database, Database], now: datetime) -> None:
    """A turn that moves a reminder while another replica claims it: it goes out by one of the two, never by both."""
    ida, otto = pair
    for round_ in range(20):
        batch, due = f"batch{round_}", now + timedelta(hours=round_)

        def wish(at: datetime, batch: str = batch) -> None:
            with ida.transaction() as tx:
                outbox.reconcile(tx, batch, "garden", [Wanted("flip", "flip", at, Urgency.QUIET)], at)

        wish(due)
        taken: list[outbox.Row] = []
        claiming = threading.Thread(
            target=lambda at=due, into=taken: into.extend(outbox.claim(otto, at, LEASE, 1, "otto"))
        )
        claiming.start()
        wish(due)
        claiming.join(PATIENCE)
        taken += outbox.claim(otto, due, LEASE, 1, "otto")
        assert len(taken) == 1
        assert outbox.sent(otto, taken[0], due, "1")


def test_the_dead_are_noticed_and_the_living_are_not(pair: tuple[Database, Database], now: datetime) -> None:
    """What a living replica has in hand is left to it; the moment it is gone, another takes it as a repeat."""
    ida, otto = pair
    with ida.transaction() as tx:
        outbox.put_reply(tx, "garden", {"text": "hello"}, now)
    his, hers = Roll(otto, "otto"), Roll(ida, "ida")
    assert (his.call(), hers.call()) == (0, 0)
    assert len(outbox.claim(otto, now, LEASE, 1, "otto")) == 1

    assert hers.call() == 0
    his.leave()  # the server hangs up for a process that died, too
    assert hers.call() == 1
    assert [row.repeat for row in outbox.claim(ida, now, LEASE, 1, "ida")] == [True]
    hers.leave()
