"""Replicas of the whole bot behind one webhook, on one PostgreSQL, and people who talk to them."""

import asyncio
import os
import random
import signal
import sys
import tempfile
from collections.abc import AsyncIterator, Sequence
from contextlib import asynccontextmanager
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from sqlalchemy import ColumnElement, func, select, update

from core.store.database import Database
from core.store.tables import outgoing
from tests.postgres import unused_port
from tests.telegram.loopback import BotApi
from tests.telegram.loopback_chats import Person

ROOT = Path(__file__).parents[2]
PAUSE, AHEAD = 0.05, 40
PUBLIC, SECRET = "https://bot.example.org", "a-secret-of-the-allotment"


def house(server: BotApi, database: str) -> dict[str, str]:
    """The environment of a bot that talks to the server and keeps what it is told there.

    Its bytecode is kept from one life to the next, whatever ours does: else each start would compile all of it again.
    """
    return os.environ | {
        "PYTHONPATH": str(ROOT),
        "PYTHONDONTWRITEBYTECODE": "",
        "PYTHONPYCACHEPREFIX": str(Path(tempfile.gettempdir()) / "saltbell-bytecode"),
        "SALTBELL_TOKEN": server.token,
        "SALTBELL_CHAT_A_DAY": "0",  # a crowd of testers is no crowd of strangers
        "SALTBELL_NEW_CHATS_A_DAY": "0",
        "SALTBELL_API_URL": server.url,
        "SALTBELL_DATABASE": database,
    }


class Replica:
    """One process of the bot, begun again each time it was killed; its clock is `off` by so many seconds."""

    def __init__(self, server: BotApi, url: str, off: float = 0.0) -> None:
        self.port = unused_port()
        self._program = ("bot",) if off == 0 else ("tests.durability.off_by", str(off))
        self._environment = house(server, url) | {
            "SALTBELL_MODE": "webhook",
            "SALTBELL_WEBHOOK_URL": f"{PUBLIC}/saltbell",
            "SALTBELL_WEBHOOK_SECRET": SECRET,
            "SALTBELL_LISTEN": f"127.0.0.1:{self.port}",
            "SALTBELL_ZONE": at_noon(),  # what can wait would wait for the morning
            "SALTBELL_LOG": "error",
        }
        self._running: asyncio.subprocess.Process | None = None

    async def begin(self) -> None:
        """A new process; returns once somebody listens."""
        command = sys.executable, "-m", *self._program, "run"
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

    @property
    def pid(self) -> int:
        """Its number on this machine."""
        assert self._running is not None
        return self._running.pid

    def send(self, signal_: signal.Signals) -> None:
        assert self._running is not None
        self._running.send_signal(signal_)

    async def kill(self) -> None:
        if self._running is not None and self._running.returncode is None:
            self._running.kill()
            await self._running.wait()


@asynccontextmanager
async def talking(
    server: BotApi, people: list[Person], pause: float = PAUSE, ahead: int = AHEAD
) -> AsyncIterator[list[int]]:
    """People who say something all the time; the updates that came of it."""
    said: list[int] = []

    async def talk() -> None:
        while True:
            if len(server.pending) < ahead:  # people wait for answers too
                said.append(random.choice(people).says("help"))
            await asyncio.sleep(pause)

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


def _due() -> tuple[ColumnElement[bool], ...]:
    """What fell due and is not put off: the sixth message of a day to a chat waits for the evening, no try so long."""
    now = datetime.now(UTC)
    return outgoing.c.due_at <= now, outgoing.c.free_at <= now + timedelta(hours=1)


def undone(store: Database) -> int:
    """What should have gone out by now, and has not."""
    with store.reading() as tx:
        live = select(func.count()).where(outgoing.c.state.in_(["waiting", "sending"]), *_due())
        return int(tx.execute(live).scalar_one())


def states(store: Database) -> dict[str, int]:
    """How many of what fell due are in which state."""
    with store.reading() as tx:
        due = select(outgoing.c.state, func.count()).where(*_due())
        return dict(tx.execute(due.group_by(outgoing.c.state)).all())


def at_noon() -> str:
    """A zone in which it is about noon just now."""
    behind = datetime.now(UTC).hour - 12
    return f"Etc/GMT{behind:+d}" if behind else "Etc/GMT"


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


@asynccontextmanager
async def running(server: BotApi, url: str, off: Sequence[float]) -> AsyncIterator[Cellar]:
    """So many replicas as there are clocks, each off by so many seconds; they are ended with the block."""
    cellar = Cellar(server, Database(url), [Replica(server, url, each) for each in off])
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
