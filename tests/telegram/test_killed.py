"""The whole bot, killed at random moments under `kill -9` while people talk: nothing lost, nothing kept twice.

Counted at the loopback Bot API and in the bot's own store. SALTBELL_KILLS says how often.
"""

import asyncio
import os
import random
import sqlite3
import sys
from collections import Counter
from pathlib import Path

import pytest

from tests.durability.cellar import ROOT, house, talking
from tests.durability.tally import Tally
from tests.telegram.loopback import BotApi

KILLS = int(os.environ.get("SALTBELL_KILLS", "6"))
TALKERS, PAUSE, AHEAD = 5, 0.02, 60
SECRET = "a-secret-of-the-allotment"

pytestmark = pytest.mark.durability


class Life:
    """The bot's process, started again each time it was killed. It polls, until `hook` has it called instead."""

    def __init__(self, server: BotApi, folder: Path) -> None:
        self._environment = house(server, str(folder / "killed.db"))
        self._server = server
        self._running: asyncio.subprocess.Process | None = None

    async def begin(self, answers: int = 3) -> None:
        """A new process; returns once it has given more than so many answers."""
        answered = len(self._server.sent)
        self._running = await asyncio.create_subprocess_exec(
            sys.executable, "-m", "bot", "run", env=self._environment, cwd=ROOT
        )
        await self._server.until(lambda: len(self._server.sent) > answered + answers, 120)

    async def kill(self) -> None:
        assert self._running is not None
        self._running.kill()
        await self._running.wait()

    def hook(self, port: int) -> None:
        """From now on it is called at a port of this machine."""
        self._environment |= {
            "SALTBELL_MODE": "webhook",
            "SALTBELL_WEBHOOK_URL": "https://bot.example.org/saltbell",
            "SALTBELL_WEBHOOK_SECRET": SECRET,
            "SALTBELL_LISTEN": f"127.0.0.1:{port}",
        }
        self._server.webhook.proxies["https://bot.example.org"] = (f"http://127.0.0.1:{port}",)


async def last_breath(server: BotApi) -> None:
    """Wait until what was sent before a kill has arrived: it lies in the line, and a busy machine reads it late."""
    quiet, calls = 0, -1
    while quiet < 10:
        quiet, calls = quiet + 1 if calls == len(server.calls) else 0, len(server.calls)
        await asyncio.sleep(0.01)


def kept(folder: Path) -> list[str]:
    """The keys of the messages that the house took."""
    store = sqlite3.connect(folder / "killed.db")
    try:
        return [key for (key,) in store.execute("SELECT key FROM seen")]
    finally:
        store.close()


def count(folder: Path, *states: str) -> int:
    """How many answers of the house are in one of these states; what arrived at the server says nothing of that."""
    store = sqlite3.connect(folder / "killed.db")
    try:
        found = dict(store.execute("SELECT state, count(*) FROM outgoing GROUP BY state").fetchall())
    finally:
        store.close()
    return sum(found.get(state, 0) for state in states)


def counted(server: BotApi, said: list[int], keys: list[str]) -> dict[str, int]:
    """How many messages were said, how many of those that the server need not bring again are not kept, or twice."""
    brought = {f"tg:{number}" for number in said} - {f"tg:{update['update_id']}" for update in server.pending}
    return {"messages": len(said), "lost": len(brought - set(keys)), "twice": len(keys) - len(set(keys))}


def spread(in_doubt: list[int]) -> dict[int, int]:
    """How many kills left how many answers in doubt."""
    return dict(sorted(Counter(in_doubt).items()))


@pytest.mark.parametrize("way", ["polling", "webhook"])
async def test_killed_while_people_talk(way: str, tmp_path: Path) -> None:
    """Every message is taken once and answered; at most one answer a kill is repeated, and it says so.

    In doubt is what left and is not marked: one message at a time, since so few talk (`pacer.FEW`). Where this machine
    stands still for over a second, a kill can find two, and words that are in no outbox count too: hence the sum.
    """
    async with BotApi() as server:
        life = Life(server, tmp_path)
        if way == "webhook":
            life.hook(await unused_port())
        people = [server.person(f"P{number}") for number in range(TALKERS)]
        in_doubt: list[int] = []
        tally = Tally(way, KILLS)
        async with talking(server, people, PAUSE, AHEAD) as said:
            for number in range(KILLS):
                await life.begin()
                await asyncio.sleep(random.uniform(0.0, 0.6))
                await life.kill()
                await last_breath(server)
                in_doubt.append(len(server.sent) - count(tmp_path, "sent") - sum(in_doubt))
                tally.after(number + 1, **counted(server, said, kept(tmp_path)), in_doubt=spread(in_doubt))
        await life.begin(answers=-1)  # nobody speaks any more
        await server.until(lambda: not server.pending and not count(tmp_path, "waiting", "sending"), 600)
        await life.kill()

        repeated = len(server.sent) - len(said)
        tally.after(KILLS, **counted(server, said, kept(tmp_path)), repeated=repeated, in_doubt=spread(in_doubt))
        assert sorted(kept(tmp_path)) == sorted(f"tg:{number}" for number in said)
        for person in people:
            sent = server.to(person.chat)
            wanted = sum(number in person.updates for number in said)
            assert len(sent) >= wanted
            # what goes out a second time is marked as a repeat
            assert sum("(Again" not in each.text for each in sent) <= wanted
        assert repeated <= KILLS
        assert len(said) >= 10 * KILLS


async def unused_port() -> int:
    listening = await asyncio.start_server(lambda *_: None, "127.0.0.1", 0)
    port = int(listening.sockets[0].getsockname()[1])
    listening.close()
    await listening.wait_closed()
    return port
