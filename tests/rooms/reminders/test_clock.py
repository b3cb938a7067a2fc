import asyncio
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import asynccontextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from sqlalchemy import select

from core.plan.reminders import Wanted
from core.plan.steps import Urgency
from core.reminders import clock as clocks
from core.reminders.clock import Clock, run
from core.reminders.delivery import Postman
from core.store import inbox, outbox
from core.store.database import Database, open_database
from core.store.outbox import Row
from core.store.tables import seen

MILLISECOND = timedelta(milliseconds=1)
LATE = timedelta(seconds=15)  # a busy machine may take its time, but the sweep comes after 30 s only


@pytest.fixture
def database(tmp_path: Path) -> Iterator[Database]:
    opened = open_database(f"sqlite:///{tmp_path / 'cellar.db'}")
    yield opened
    opened.close()


class Doorstep:
    """Notes when each step arrived."""

    def __init__(self, database: Database, now: Callable[[], datetime]) -> None:
        self.arrived: dict[str, datetime] = {}
        self.now = now
        self.bell = asyncio.Event()
        self.postman: Postman[str] = Postman(database, self.render, self.send, "me")

    def render(self, row: Row, now: datetime) -> str:
        return str(row.step)

    async def send(self, step: str) -> str:
        self.arrived[step] = self.now()
        self.bell.set()
        return step

    async def until(self, step: str) -> datetime:
        async with asyncio.timeout(60):
            while step not in self.arrived:
                await self.bell.wait()
                self.bell.clear()
        return self.arrived[step]


def real() -> datetime:
    return datetime.now(UTC)


def remind(database: Database, at: datetime, *steps: str) -> None:
    with database.transaction() as tx:
        wanted = [Wanted(step, "flip", at, Urgency.QUIET) for step in steps]
        outbox.reconcile(tx, "-".join(steps), "garden", wanted, at)


@asynccontextmanager
async def running(clock: Clock, postman: Postman[str]):  # type: ignore[no-untyped-def]
    task = asyncio.create_task(clock.run(postman))
    await asyncio.sleep(0.05)
    yield
    task.cancel()
    with pytest.raises(asyncio.CancelledError):
        await task


async def test_what_fell_due_while_we_were_away_goes_out_at_once(database: Database) -> None:
    """A night's outage loses no reminder: the first round comes before the first wait."""
    remind(database, real() - timedelta(hours=9), "late")
    door = Doorstep(database, real)
    async with running(Clock(real), door.postman):
        await door.until("late")


async def test_it_wakes_at_the_next_due_time(database: Database) -> None:
    """Two reminders ahead are sent each at its time, not before it and well under the sweep after it."""
    due = {"one": real() + 200 * MILLISECOND, "two": real() + 400 * MILLISECOND}
    for step, at in due.items():
        remind(database, at, step)
    door = Doorstep(database, real)
    async with running(Clock(real), door.postman):
        for step, at in due.items():
            assert timedelta(0) <= await door.until(step) - at < LATE


async def test_an_earlier_one_moves_the_alarm(database: Database) -> None:
    """A reminder that is put in later and due earlier is sent at its time, once any thread says so."""
    remind(database, real() + timedelta(hours=1), "tomorrow")
    clock = Clock(real)
    door = Doorstep(database, real)
    async with running(clock, door.postman):
        soon = real() + 200 * MILLISECOND
        remind(database, soon, "soon")
        thread = threading.Thread(target=clock.wake_at, args=(soon,))
        thread.start()
        thread.join()
        clock.wake_at(soon + timedelta(hours=2))  # a later one does not move it back
        assert timedelta(0) <= await door.until("soon") - soon < LATE
        assert "tomorrow" not in door.arrived


async def test_an_alarm_that_comes_late_is_not_skipped(database: Database) -> None:
    """The scheduler by itself drops an alarm that is a second late; when the machine was busy, ours still rings."""
    door = Doorstep(database, real)
    due = real() + 200 * MILLISECOND
    remind(database, due, "due")
    async with running(Clock(real), door.postman):
        time.sleep(1.5)  # the loop stands still
        await door.until("due")


async def test_it_can_be_rung_by_hand(database: Database) -> None:
    """After a turn a ring is enough: the round finds what is due and sets the next alarm."""
    clock = Clock(real)
    door = Doorstep(database, real)
    clock.ring()  # before it runs: nothing happens, nothing breaks
    clock.wake_at(real())
    async with running(clock, door.postman):
        soon = real() + 100 * MILLISECOND
        remind(database, soon, "soon")
        clock.ring()
        assert await door.until("soon") >= soon


async def test_a_turn_wakes_it_by_itself(database: Database) -> None:
    """Whoever delivers the replies of a turn need not think of the reminders that the turn put in."""
    door = Doorstep(database, real)
    async with running(Clock(real), door.postman):
        for deliver in (lambda: door.postman.replies("garden", real()), lambda: door.postman.round(real())):
            soon = real() + 100 * MILLISECOND
            remind(database, soon, f"soon {soon}")
            await deliver()
            assert await door.until(f"soon {soon}") >= soon


async def test_it_tidies_up_once_a_day(database: Database) -> None:
    """Old keys are forgotten at the start and a day later, and not with every round."""
    ahead = timedelta(0)

    def now() -> datetime:
        return real() + ahead

    def keys() -> int:
        with database.reading() as tx:
            return sum(1 for _ in tx.execute(select(seen)))

    clock = Clock(now)
    door = Doorstep(database, now)
    with database.transaction() as tx:
        inbox.first_time(tx, "old", real() - timedelta(days=31))
        inbox.first_time(tx, "young", real() - timedelta(days=29, hours=12))
    async with running(clock, door.postman):
        while keys() == 2:
            await asyncio.sleep(0.01)
        ahead = timedelta(hours=23)
        clock.ring()
        await asyncio.sleep(0.1)
        assert keys() == 1
        ahead = timedelta(hours=24, minutes=1)
        clock.ring()
        while keys() == 1:
            await asyncio.sleep(0.01)


async def test_the_sweep_finds_what_nobody_told(database: Database, monkeypatch: pytest.MonkeyPatch) -> None:
    """Another replica's reminder is found by the sweep, which is 30 s unless a test is in a hurry."""
    assert clocks.SWEEP_SECONDS == 30
    monkeypatch.setattr(clocks, "SWEEP_SECONDS", 0.2)
    door = Doorstep(database, real)
    async with running(Clock(real), door.postman):
        remind(database, real(), "untold")
        await door.until("untold")


async def test_a_broken_round_does_not_stop_the_clock(
    database: Database, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    """Whatever went wrong in a round, it is logged and the clock goes on a moment later."""
    monkeypatch.setattr(clocks, "SNAG", 50 * MILLISECOND)
    door = Doorstep(database, real)
    claim, broken = outbox.claim, iter([True, True])

    def sometimes(*arguments: object) -> list[Row]:
        if next(broken, False):
            raise OSError("no more potatoes")
        return claim(*arguments)  # type: ignore[arg-type]

    monkeypatch.setattr(outbox, "claim", sometimes)
    remind(database, real(), "due")
    async with running(Clock(real), door.postman):
        await door.until("due")
    assert caplog.text.count("a delivery round broke off") == 2


async def test_a_jump_forwards_finds_what_it_jumped_over(database: Database, monkeypatch: pytest.MonkeyPatch) -> None:
    """The machine slept for a night, or its clock was behind: the next sweep sends what fell due in between."""
    monkeypatch.setattr(clocks, "SWEEP_SECONDS", 0.2)
    ahead = [timedelta(0)]
    door = Doorstep(database, lambda: real() + ahead[0])
    remind(database, real() + timedelta(hours=8), "at night")
    async with running(Clock(door.now), door.postman):
        ahead[0] = timedelta(hours=9)
        await door.until("at night")


async def test_a_jump_back_holds_no_try_up(database: Database, monkeypatch: pytest.MonkeyPatch) -> None:
    """The clock was an hour ahead, and a try failed: set right it is tried at once; the plan is kept."""
    monkeypatch.setattr(clocks, "SWEEP_SECONDS", 0.2)
    ahead = [timedelta(hours=1)]
    door = Doorstep(database, lambda: real() + ahead[0])
    remind(database, real(), "failed")
    remind(database, real() + timedelta(hours=3), "planned")
    with database.transaction() as tx:
        outbox.put_reply(tx, "cellar", {"text": "hello"}, door.now() + timedelta(seconds=5))
    for row in outbox.claim(database, door.now(), timedelta(minutes=2), 1, "me"):
        outbox.put_back(database, row, door.now() + timedelta(minutes=5))
    async with running(Clock(door.now), door.postman):
        assert door.arrived == {}
        ahead[0] = timedelta(0)
        await door.until("failed")
        await door.until("None")  # the reply, which has no step
    assert "planned" not in door.arrived


async def test_it_follows_the_clock_it_was_given(database: Database) -> None:
    """With a clock that is a year ahead, what is due by that clock goes out when that clock says so."""

    def ahead() -> datetime:
        return real() + timedelta(days=365)

    due = ahead() + 200 * MILLISECOND
    remind(database, due, "next year")
    door = Doorstep(database, ahead)
    async with running(Clock(ahead), door.postman):
        assert timedelta(0) <= await door.until("next year") - due < LATE


async def test_waiting_costs_nothing(database: Database) -> None:
    """With nothing due the clock sleeps: in half a second it asks the store no second time."""
    remind(database, real() + timedelta(hours=1), "later")
    asked = 0
    door = Doorstep(database, real)
    next_due = door.postman.next_due

    async def count() -> datetime | None:
        nonlocal asked
        asked += 1
        return await next_due()

    door.postman.next_due = count  # type: ignore[method-assign]
    async with running(Clock(real), door.postman):
        before = time.process_time()
        await asyncio.sleep(0.5)
        assert time.process_time() - before < 0.1
    assert asked == 1


async def test_run_is_all_that_a_program_needs(database: Database) -> None:
    """`run` delivers until it is cancelled."""
    remind(database, real(), "due")
    door = Doorstep(database, real)
    task = asyncio.create_task(run(door.postman, real))
    await door.until("due")
    task.cancel()
    with pytest.raises(asyncio.CancelledError):
        await task


def test_the_scheduler_is_loaded_when_the_clock_starts() -> None:
    """A terminal that plays a script never loads APScheduler."""
    ask = "import sys; import core.reminders.clock; print('apscheduler' in sys.modules)"
    run_ = subprocess.run([sys.executable, "-c", ask], capture_output=True, text=True)
    assert run_.stdout.strip() == "False", run_.stderr
