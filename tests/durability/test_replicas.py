"""Three replicas of the whole bot behind one webhook, on one PostgreSQL, killed or frozen at random moments.

Counted at the loopback Bot API and in the store. SALTBELL_KILLS says how often.
"""

import asyncio
import os
import random
import signal
import sys
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from sqlalchemy import func, select, update

from core.store.database import Database
from core.store.tables import outgoing, seen
from tests.postgres import cluster, unused_port
from tests.telegram.loopback import BotApi
from tests.telegram.loopback_chats import Person

ROOT = Path(__file__).parents[2]
KILLS = int(os.environ.get("SALTBELL_KILLS", "8"))
REPLICAS, TALKERS, PAUSE, AHEAD, FROZEN_FIRST = 3, 6, 0.05, 40, 0.2
PUBLIC, SECRET = "https://bot.example.org", "a-secret-of-the-allotment"

pytestmark = pytest.mark.durability


class Replica:
    """One process of the bot, begun again each time it was killed."""

    def __init__(self, server: BotApi, url: str) -> None:
        self.port = unused_port()
        self._environment = os.environ | {
            "PYTHONPATH": str(ROOT),
            "SALTBELL_TOKEN": server.token,
            "SALTBELL_CHAT_A_DAY": "0",  # a crowd of testers is no crowd of strangers
            "SALTBELL_NEW_CHATS_A_DAY": "0",
            "SALTBELL_API_URL": server.url,
            "SALTBELL_DATABASE": url,
            "SALTBELL_MODE": "webhook",
            "SALTBELL_WEBHOOK_URL": f"{PUBLIC}/saltbell",
            "SALTBELL_WEBHOOK_SECRET": SECRET,
            "SALTBELL_LISTEN": f"127.0.0.1:{self.port}",
            "SALTBELL_ZONE": "Europe/Vienna",
            "SALTBELL_LOG": "error",
        }
        self._running: asyncio.subprocess.Process | None = None

    async def begin(self) -> None:
        """A new process; returns once somebody listens."""
        command = sys.executable, "-m", "bot", "run"
        self._running = await asyncio.create_subprocess_exec(*command, env=self._environment, cwd=ROOT)
        async with asyncio.timeout(120):
            while True:
                try:
                    _, writer = await asyncio.open_connection("127.0.0.1", self.port)
                except OSError:
                    await asyncio.sleep(0.05)
                else:
                    writer.close()
                    return

    def send(self, signal_: signal.Signals) -> None:
        assert self._running is not None
        self._running.send_signal(signal_)

    async def kill(self) -> None:
        if self._running is not None and self._running.returncode is None:
            self._running.kill()
            await self._running.wait()


@asynccontextmanager
async def talking(server: BotApi, people: list[Person]) -> AsyncIterator[list[int]]:
    """People who say something all the time; the updates that came of it."""
    said: list[int] = []

    async def talk() -> None:
        while True:
            if len(server.pending) < AHEAD:
                said.append(random.choice(people).says("help"))
            await asyncio.sleep(PAUSE)

    task = asyncio.create_task(talk())
    try:
        yield said
    finally:
        task.cancel()
        await asyncio.wait({task})


def fall_due(store: Database, count: int) -> None:
    """Some of the reminders that wait for another day fall due now."""
    now = datetime.now(UTC)
    later = outgoing.c.sort == "reminder", outgoing.c.state == "waiting", outgoing.c.due_at > now + timedelta(hours=1)
    with store.transaction() as tx:
        some = select(outgoing.c.id).where(*later, outgoing.c.occurrence == 0).order_by(func.random()).limit(count)
        tx.execute(update(outgoing).where(outgoing.c.id.in_(some)).values(due_at=now, free_at=now))


def undone(store: Database) -> int:
    """What should have gone out by now, and has not."""
    with store.reading() as tx:
        live = outgoing.c.state.in_(["waiting", "sending"]), outgoing.c.due_at <= datetime.now(UTC)
        return int(tx.execute(select(func.count()).where(*live)).scalar_one())


def states(store: Database) -> dict[str, int]:
    """How many of what fell due are in which state."""
    with store.reading() as tx:
        due = select(outgoing.c.state, func.count()).where(outgoing.c.due_at <= datetime.now(UTC))
        return dict(tx.execute(due.group_by(outgoing.c.state)).all())


async def begun(server: BotApi, people: list[Person]) -> list[int]:
    """Everybody has a batch, and with it reminders for a week; the updates that came of it."""
    begun: list[int] = []
    for person in people:
        begun.append(person.says("3.2 kg brisket flat"))
        await server.until(lambda who=person: any("6.25 %" in dict(each.buttons) for each in server.to(who.chat)))
        begun.append(person.taps("6.25 %"))
    await server.until(lambda: not server.pending)
    return begun


@dataclass
class Cellar:
    """The server, the store and the replicas on it."""

    server: BotApi
    store: Database
    replicas: list[Replica]


@pytest.fixture
async def cellar() -> AsyncIterator[Cellar]:
    """Three replicas that run; they are ended with the test."""
    async with BotApi() as server:
        with cluster() as url:
            async with running(server, url) as cellar:
                yield cellar


@asynccontextmanager
async def running(server: BotApi, url: str) -> AsyncIterator[Cellar]:
    cellar = Cellar(server, Database(url), [Replica(server, url) for _ in range(REPLICAS)])
    server.webhook.proxies[PUBLIC] = tuple(f"http://127.0.0.1:{each.port}" for each in cellar.replicas)
    server.webhook.hangs_up_after = 3.0
    try:
        for replica in cellar.replicas:
            await replica.begin()
        yield cellar
    finally:
        for replica in cellar.replicas:
            await replica.kill()
        cellar.store.close()


async def freeze(victim: Replica) -> None:
    """It stands still while the others go on, and then goes on itself for a moment."""
    victim.send(signal.SIGSTOP)
    await asyncio.sleep(random.uniform(0.5, 5.0))
    victim.send(signal.SIGCONT)
    await asyncio.sleep(random.uniform(0.0, 0.3))


async def test_replicas_are_killed_and_frozen(cellar: Cellar) -> None:
    """Every message is taken once and answered, every reminder goes out; little is repeated, and says so."""
    server, store, frozen = cellar.server, cellar.store, 0
    people = [server.person(f"P{number}") for number in range(TALKERS + KILLS // 12)]
    first = await begun(server, people)
    async with talking(server, people[:TALKERS]) as said:
        for _ in range(KILLS):
            fall_due(store, 1)
            victim = random.choice(cellar.replicas)
            await asyncio.sleep(random.uniform(0.0, 0.6))
            if random.random() < FROZEN_FIRST:
                frozen += 1
                await freeze(victim)
            await victim.kill()
            await victim.begin()
    await server.until(lambda: not server.pending, 600)
    await server.until(lambda: undone(store) == 0, 300)

    with store.reading() as tx:
        kept = tx.execute(select(seen.c.key)).scalars().all()
    found = states(store)
    repeats = len(server.sent) - found["sent"]
    print(f"\nPostgreSQL: {KILLS} kills, {frozen} frozen before; {len(said)} messages; {found}; {repeats} sent twice")
    # nothing lost, nothing taken twice
    assert sorted(kept) == sorted(f"tg:{number}" for number in first + said)
    # nothing given up, nothing forgotten
    assert set(found) <= {"sent", "withdrawn"}
    # what is in flight when a replica dies: a reply of each chat, and one reminder
    assert 0 <= repeats <= (KILLS + frozen) * (TALKERS + 1)
    # who was frozen with a message in hand does not know that it is the second
    assert sum("(Again" not in each.text for each in server.sent) <= found["sent"] + frozen
