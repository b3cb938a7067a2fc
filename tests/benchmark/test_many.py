"""Many batches at once: what a message costs among a hundred thousand, and how much memory ten thousand take.

The goals of the project: a message's cost is flat within 10 %; at most 160 MB with 10,000 batches under way.
"""

import asyncio
import os
import statistics
import sys
import time
from contextlib import suppress
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from bot.assembly import Built, build, newcomer
from bot.reply import Message, Outgoing
from tests.benchmark.many import fill, monday
from tests.benchmark.test_telegram import ROOT, bot
from tests.telegram.loopback import BotApi

SIZES = (10, 1_000, 100_000)
ROUNDS = 7
TALKERS = 10
LINES = ("fridge 3 c", "what now", "flip done", "undo", "how long does bacon keep", "plan")
SPEAKING = 200  # of the ten thousand: each their own batch, so that everything that is remembered fills up

pytestmark = [pytest.mark.benchmark, pytest.mark.asyncio]


async def round_of(built: Built, number: int, at: datetime) -> float:
    """Milliseconds of the processor for a message: taken, answered, sent and marked."""
    began, said = time.process_time(), 0
    for talker in range(TALKERS):
        chat = str(1_000 + talker)
        for line in LINES:
            key = f"{chat}:{100 + number * len(LINES) + said % len(LINES)}"
            assert built.receive(Message(key, chat, chat, "Ada", at, line, ref=key), at)
            await built.postman.replies(chat, at)
            said += 1
    return (time.process_time() - began) / said * 1e3


async def test_a_message_costs_the_same_among_many(tmp_path: Path) -> None:
    """The same messages of the same ten people, by turns in each of three stores, file and all."""

    async def send(_: Outgoing) -> str:
        return "1"

    houses: dict[int, Built] = {}
    for size in SIZES:
        url = f"sqlite:///{tmp_path / f'{size}.db'}"
        fill(url, size, monday())
        houses[size] = build(url, newcomer("Europe/Vienna"), send)
    cost: dict[int, list[float]] = {size: [] for size in SIZES}
    for number in range(ROUNDS):
        for size in SIZES:
            cost[size].append(await round_of(houses[size], number, monday() + timedelta(minutes=5 + number)))
    for built in houses.values():
        built.close()
    middle = {size: statistics.median(cost[size]) for size in SIZES}
    # beside one another in each round, so that what else the machine does at the time falls on both
    against = statistics.median(many / few for many, few in zip(cost[SIZES[-1]], cost[SIZES[0]], strict=True))
    told = ", ".join(f"{size}: {ms:.2f} ms" for size, ms in middle.items())
    print(f"\nprocessor a message, by batches in the store: {told}; {against:.2f} times; load {os.getloadavg()[0]:.1f}")

    assert against <= 1.10


async def test_memory_with_ten_thousand_batches(tmp_path: Path) -> None:
    """The process as it is run: at its first question, after hundreds spoke, each of a batch of their own, and after a
    picture, which is drawn by a process of its own."""
    url = f"sqlite:///{tmp_path / 'bench.db'}"
    async with BotApi() as server:
        people = [server.person(f"P{number}") for number in range(SPEAKING)]
        assert [person.chat for person in people] == list(range(people[0].chat, people[0].chat + SPEAKING))
        fill(url, 10_000, datetime.now(UTC), people[0].chat)
        env = os.environ | bot(tmp_path, server) | {"PYTHONPATH": str(ROOT), "SALTBELL_A_SECOND": "2000"}
        running = await asyncio.create_subprocess_exec(
            sys.executable, "-m", "bot", "run", env=env, cwd=ROOT, stderr=asyncio.subprocess.DEVNULL
        )
        try:
            await server.until(lambda: server.count("getUpdates") > 0, 60)
            await asyncio.sleep(2.0)
            sizes = [resident(running.pid)]
            for line in LINES:
                before = {person.chat: len(server.to(person.chat)) for person in people}
                for person in people:
                    person.says(line)
                await server.until(lambda before=before: all(len(server.to(c)) > n for c, n in before.items()), 300)
            sizes.append(resident(running.pid))
            count = len(server.to(people[0].chat))
            people[0].says("picture")
            beside = 0.0
            while len(server.to(people[0].chat)) <= count:
                beside = max(beside, largest_child(running.pid))
                await asyncio.sleep(0.01)
            sizes.append(resident(running.pid))
        finally:
            running.terminate()
            await running.wait()
    first, spoken, drawn = sizes
    print(f"\nresident with 10,000 batches: {first:.0f} MB at the start, {spoken:.0f} MB after {SPEAKING} people, "
          f"{drawn:.0f} MB after a picture, and {beside:.0f} MB for a second while it was drawn apart")  # fmt: skip

    assert beside > 0.0
    assert drawn <= 160.0


def largest_child(pid: int) -> float:
    """What the largest process that this one started holds in memory; none is left after its end. [MB]"""
    children = Path(f"/proc/{pid}/task").glob("*/children")
    sizes = []
    for child in (int(number) for each in children for number in each.read_text().split()):
        with suppress(FileNotFoundError, ProcessLookupError):
            if b"bot.apart" in Path(f"/proc/{child}/cmdline").read_bytes():  # till then a copy of the other
                sizes.append(resident(child))
    return max(sizes, default=0.0)


def resident(pid: int) -> float:
    """What a process holds in memory. [MB, of a million bytes]"""
    pages = int(Path(f"/proc/{pid}/statm").read_text().split()[1])
    return pages * os.sysconf("SC_PAGE_SIZE") / 1e6
