"""A million reminders wait: what a claim costs, how late a reminder is, what waiting costs, how a storm goes out."""

import asyncio
import sqlite3
import statistics
import time
from collections.abc import Iterator
from contextlib import closing
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from sqlalchemy import insert
from sqlalchemy.dialects import sqlite

from bot.channels.telegram.pacer import Pacer
from core.reminders import delivery
from core.reminders.clock import Clock
from core.reminders.delivery import Postman
from core.store import due, outbox
from core.store.database import Database, open_database
from core.store.outbox import Row
from core.store.tables import outgoing
from tests.benchmark.simulated import inline, simulate
from tests.telegram.loopback_chats import Limits

WAITING = 1_000_000
A_BATCH = 25  # reminders of a week
LEASE = timedelta(minutes=2)
START = datetime(2027, 3, 1, 8, tzinfo=UTC)

pytestmark = pytest.mark.benchmark


def rows(first: int, count: int, due: datetime, gap: timedelta = timedelta(0)) -> list[dict[str, Any]]:
    """Reminders of as many chats as batches, due one after another."""
    return [
        {
            "batch": f"b{number // A_BATCH}", "chat": f"{number // A_BATCH}", "sort": "reminder", "step": f"s{number}",
            "kind": "flip", "urgency": "quiet", "made_at": START, "due_at": due + gap * (number - first),
            "free_at": due + gap * (number - first), "state": "waiting",
        }
        for number in range(first, first + count)
    ]  # fmt: skip


@pytest.fixture(scope="module")
def million(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Database]:
    """A store in which a million reminders wait for another year."""
    store = open_database(f"sqlite:///{tmp_path_factory.mktemp('scale') / 'million.db'}")
    later = datetime.now(UTC) + timedelta(days=365)
    with store.transaction() as tx:
        for first in range(0, WAITING, 50_000):
            tx.execute(insert(outgoing), rows(first, 50_000, later, timedelta(seconds=1)))
    yield store
    store.close()


def put(store: Database, first: int, count: int, due: datetime, gap: timedelta = timedelta(0)) -> None:
    with store.transaction() as tx:
        tx.execute(insert(outgoing), rows(first, count, due, gap))


def test_a_claim_beside_the_raw_driver(million: Database) -> None:
    """Claim and mark, a row a transaction, beside sqlite3 itself executing the same statements."""
    count, now = 400, datetime.now(UTC)
    micro = (now - datetime(1970, 1, 1, tzinfo=UTC)) // timedelta(microseconds=1)
    named = sqlite.dialect(paramstyle="named")
    take = due.taking(("reminder",), False).compile(dialect=named)
    mark = outbox._changing(("state", "sent_at", "channel_key")).compile(dialect=named)
    taking, marking = str(take).replace("(__[POSTCOMPILE_held])", "()"), str(mark)
    times: dict[str, list[float]] = {"raw": [], "ours": []}
    put(million, 2_000_000, 4 * count, now - timedelta(minutes=1))
    with closing(sqlite3.connect(million.url.database or "", isolation_level=None)) as raw:
        raw.execute("PRAGMA synchronous = FULL")
        for _ in range(2):
            began = time.perf_counter()
            for _ in range(count):
                raw.execute("BEGIN IMMEDIATE")
                values = {"at": micro, "lease_end": micro + 120_000_000, "claimer": "raw", "most": 1}
                found = raw.execute(taking, _named(taking, values, take.params)).fetchone()
                raw.execute("COMMIT")
                raw.execute("BEGIN IMMEDIATE")
                done = {"new_state": "sent", "new_sent_at": micro, "new_channel_key": "1", "row": found[0]}
                raw.execute(marking, _named(marking, done | {"claimer": "raw", "attempt": 1}, mark.params))
                raw.execute("COMMIT")
            times["raw"].append(time.perf_counter() - began)
            began = time.perf_counter()
            for _ in range(count):
                (row,) = outbox.claim(million, now, LEASE, 1, "me", ("reminder",))
                assert outbox.sent(million, row, row.due_at, "1")
            times["ours"].append(time.perf_counter() - began)
    raw_s, ours_s = min(times["raw"]), min(times["ours"])
    print(f"\nclaim and mark, 1,000,000 waiting: raw {raw_s / count * 1e3:.2f} ms, ours {ours_s / count * 1e3:.2f} ms, "
          f"speed {raw_s / ours_s:.2f} of the raw driver's")  # fmt: skip

    assert raw_s / ours_s >= 0.5


def _named(statement: str, values: dict[str, Any], constants: dict[str, Any]) -> dict[str, Any]:
    """The values by the names that the compiled statement gives them, beside the constants that it was built with."""
    return {name: value for name, value in {**constants, **values}.items() if f":{name}" in statement}


class Doorstep:
    """Notes how late each arrived. [s]"""

    def __init__(self) -> None:
        self.late: list[float] = []

    def render(self, row: Row, now: datetime) -> Row:
        return row

    async def send(self, row: Row) -> str:
        self.late.append((datetime.now(UTC) - row.due_at).total_seconds())
        return "1"


async def test_lateness_with_a_million_waiting(million: Database) -> None:
    """Reminders a tenth of a second apart, by the real clock: how late each leaves."""
    count, door = 100, Doorstep()
    put(million, 3_000_000, count, datetime.now(UTC) + timedelta(seconds=1), timedelta(milliseconds=100))
    clock = Clock(lambda: datetime.now(UTC))
    task = asyncio.create_task(clock.run(Postman(million, door.render, door.send, "me")))
    async with asyncio.timeout(120):
        while len(door.late) < count:
            await asyncio.sleep(0.05)
    task.cancel()
    await asyncio.wait({task})
    late = sorted(door.late)
    p50, p99 = late[count // 2], late[int(count * 0.99) - 1]
    print(f"\nlateness with 1,000,000 waiting: p50 {p50 * 1e3:.1f} ms, p99 {p99 * 1e3:.1f} ms")

    assert p50 <= 0.020
    assert p99 <= 0.250


async def test_waiting_costs_nothing(million: Database) -> None:
    """Nothing due for 35 s, a sweep in them: what of a core it takes."""
    door = Doorstep()
    clock = Clock(lambda: datetime.now(UTC))
    task = asyncio.create_task(clock.run(Postman(million, door.render, door.send, "me")))
    await asyncio.sleep(2)
    cpu, wall = time.process_time(), time.monotonic()
    await asyncio.sleep(35)
    share = (time.process_time() - cpu) / (time.monotonic() - wall)
    task.cancel()
    await asyncio.wait({task})
    print(f"\nidle with 1,000,000 waiting: {share * 100:.2f} % of a core")

    assert share <= 0.01


class Api:
    """The Bot API by its published limits, in simulated time; an answer takes a while."""

    def __init__(self, now: Any, latency: float) -> None:
        self.limits, self.now, self.latency = Limits(), now, latency
        self.windows: dict[str, list[float]] = {}
        self.arrived: list[tuple[float, str]] = []
        self.refused = 0

    async def take(self, chat: str, what: str) -> None:
        await asyncio.sleep(self.latency / 2)
        for key, (most, seconds) in (("all", self.limits.overall), (chat, self.limits.chat)):
            window = self.windows.setdefault(key, [])
            window[:] = [at for at in window if at > self.now() - seconds]
            self.refused += len(window) >= most
            window.append(self.now())
        self.arrived.append((self.now(), what))
        await asyncio.sleep(self.latency / 2)


@pytest.mark.parametrize("latency", [0.02, 0.05, 0.2])
def test_a_storm_in_simulated_time(latency: float, monkeypatch: pytest.MonkeyPatch) -> None:
    """10,000 reminders fall due in one minute: no 429, each once, as fast as may be; replies overtake them."""
    monkeypatch.setattr(delivery.asyncio, "to_thread", inline)
    count, replies = 10_000, 200
    store = open_database("sqlite://")
    with store.transaction() as tx:
        due = rows(0, count, START, timedelta(seconds=60 / count))
        # four to each chat, far apart: a batch of all of them at once would wait for the chat's own limit
        tx.execute(insert(outgoing), [row | {"chat": f"{place % (count // 4)}"} for place, row in enumerate(due)])

    async def storm(now: Any) -> None:
        api, pacer, took = Api(now, latency), Pacer(time=now), list[float]()

        async def send(row: Row) -> str:
            async with pacer.turn(row.chat, urgent=False, of=row.id):
                await api.take(row.chat, row.id)
            return row.id

        async def talk() -> None:
            for number in range(replies):
                began = now()
                async with pacer.turn(f"talker {number}", urgent=True):
                    await api.take(f"talker {number}", "reply")
                took.append(now() - began)
                await asyncio.sleep(1.0 - latency)

        talking = asyncio.ensure_future(talk())
        postman: Postman[Row] = Postman(store, lambda row, _: row, send, "me")
        postman.marked = pacer.marked
        while (due := await postman.next_due()) is not None:
            await asyncio.sleep(max(0.001, (due - START).total_seconds() - now()))
            await postman.storm(lambda: START + timedelta(seconds=now()))
        await talking
        out = [what for _, what in api.arrived if what != "reply"]
        last = max(at for at, what in api.arrived if what != "reply")
        print(f"\nstorm of {count}, {latency * 1e3:.0f} ms to the API: {last:.0f} s, {count / last:.1f} a second, "
              f"{api.refused} refused; a reply takes {statistics.median(took) * 1e3:.0f} ms")  # fmt: skip
        assert api.refused == 0
        assert len(out) == len(set(out)) == count
        assert max(took) <= latency + 0.1
        assert last <= count / 26.0

    simulate(storm)
    store.close()
