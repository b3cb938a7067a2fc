"""Many people at once: the whole bot with durable commits beside a bare echo, which answers in order as it comes.

Both poll the same loopback Bot API in the same run, one after the other; our pace is set so high that it limits
nothing. Goal of the project: at least half of the bare bot's ordered throughput. With 50 ms to the API it holds; with
none it does not, since a turn computes for 4 to 55 ms what an echo does not (`test_turns.py`): there the figures are
printed only. One of each kind is said before: what is loaded with the first question after a start is measured by
itself (`test_questions.py`). How late a single answer is, beside the echo's, is measured in `test_telegram.py`.
"""

import statistics
import time
from pathlib import Path

import pytest

from tests.benchmark.test_telegram import bot, echo, process
from tests.telegram.loopback import BotApi

PEOPLE = 12
MIXED = (
    "fridge 3 c",
    "what now",
    "help",
    "fridge 2 c",
    "48 mm",
    "plan",
    "fridge 4 c",
    "is it safe",
    "flip done",
    "undo",
)
FEW = 3  # of each kind

pytestmark = [pytest.mark.benchmark, pytest.mark.asyncio]


async def crowd(server: BotApi, begun: tuple[str, ...]) -> tuple[float, float]:
    """Messages a second until all are answered, and seconds to an answer where one speaks at a time (median)."""
    people = [server.person(f"P{number}") for number in range(PEOPLE)]
    for person in people:
        for line in (*begun, *(MIXED if person is people[0] else ())):
            count = len(server.to(person.chat))
            person.says(line)
            await server.reaches(person.chat, count + 1, 60)
    alone = []
    for person in people:
        count, began = len(server.to(person.chat)), time.monotonic()
        person.says(MIXED[0])
        await server.reaches(person.chat, count + 1, 60)
        alone.append(server.to(person.chat)[-1].at - began)
    counts = {person.chat: len(server.to(person.chat)) for person in people}
    said = [text for _ in range(FEW) for text in MIXED]
    began = time.monotonic()
    for text in said:
        for person in people:
            person.says(text)
    wanted = len(said) * PEOPLE
    await server.until(lambda: sum(len(server.to(p.chat)) - counts[p.chat] for p in people) >= wanted, 600)
    return wanted / (time.monotonic() - began), statistics.median(alone)


@pytest.mark.parametrize("latency", [0.0, 0.05])
async def test_throughput_beside_a_bare_echo(latency: float, tmp_path: Path) -> None:
    """Mixed messages of a dozen people, all of them waiting at once; and one at a time."""
    async with BotApi(latency) as server, process(server, *echo(server)):
        await server.until(lambda: server.count("getUpdates") > 0, 60)
        bare, bare_alone = await crowd(server, ())
    begun = ("3.2 kg brisket flat", "cure is 6.25 %")
    fast = bot(tmp_path, server) | {"SALTBELL_A_SECOND": "2000"}
    async with BotApi(latency) as server:
        fast |= {"SALTBELL_API_URL": server.url}
        async with process(server, "-m", "bot", "run", **fast):
            await server.until(lambda: server.count("getUpdates") > 0, 60)
            ours, ours_alone = await crowd(server, begun)
    print(f"\n{latency * 1e3:.0f} ms to the API: bare echo {bare:.0f} a second, the bot {ours:.0f}, {ours / bare:.2f}"
          f" times; an answer {bare_alone * 1e3:.1f} and {ours_alone * 1e3:.1f} ms")  # fmt: skip

    if latency:
        assert ours / bare >= 0.5
