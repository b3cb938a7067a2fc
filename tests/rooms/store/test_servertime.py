"""One time for all replicas: the server's, counted on from by a clock that nobody sets."""

from collections.abc import Callable
from datetime import UTC, datetime, timedelta

import pytest

from core.store.database import Database, open_database
from core.store.servertime import Time, steady, wall

NOON = datetime(2027, 3, 1, 12, tzinfo=UTC)
MINUTE = timedelta(minutes=1)


class Count:
    """Seconds that go on when a test says so."""

    def __init__(self) -> None:
        self.seconds = 1000.0

    def __call__(self) -> float:
        return self.seconds


def told(count: Count, at: datetime, takes: float = 0.01) -> Callable[[], datetime]:
    """A server that tells this time, and whose answer takes so many seconds to be heard."""

    def ask() -> datetime:
        count.seconds += takes
        return at

    return ask


@pytest.mark.parametrize("off", [-MINUTE, MINUTE])
def test_the_server_s_time_holds(off: timedelta) -> None:
    """Whatever the own clock shows, and however it jumps: it is the server's time, and what was counted since."""
    count = Count()
    now = Time(lambda: NOON + off, count)
    assert now() == NOON + off

    now.go_by(told(count, NOON))

    assert now() == NOON
    count.seconds += 30
    assert now() == NOON + timedelta(seconds=30)


def test_an_answer_heard_late_is_passed_over() -> None:
    """Stopped for two minutes between question and answer: what was agreed before goes on, and nothing is set back."""
    count = Count()
    now = Time(wall, count)
    now.go_by(told(count, NOON))

    now.go_by(told(count, NOON + timedelta(seconds=1), takes=120.0))

    assert now() == NOON + timedelta(seconds=120)


def test_the_server_s_own_jump_is_followed() -> None:
    """All replicas go with it, be it forwards or back."""
    count = Count()
    now = Time(wall, count)
    now.go_by(told(count, NOON))

    now.go_by(told(count, NOON - MINUTE))

    assert now() == NOON - MINUTE


def test_a_file_has_the_machine_s_time() -> None:
    """Nobody else has it: there is nothing to agree on."""
    store = open_database("sqlite://")
    now = Time(lambda: NOON)
    now.agree(store)
    store.close()
    assert now() == NOON


@pytest.mark.slow
@pytest.mark.parametrize("off", [-MINUTE, MINUTE, timedelta(days=400)])
def test_a_clock_that_is_off_agrees_with_the_server(off: timedelta, server: str) -> None:
    """On a real server: never ahead of it, and behind by no more than the answer was under way."""
    store = Database(server)
    now = Time(lambda: wall() + off)
    began = steady()
    now.agree(store)
    under_way = timedelta(seconds=steady() - began + 0.001)
    before, told, after = store.time(), now(), store.time()
    store.close()
    assert before - under_way <= told <= after
