"""The whole bot beside a bare python-telegram-bot echo on the same loopback Bot API, in the same run.

Goals of the project: time to the first getUpdates at most 1.6 times the echo's; the reply to a reading at most 25 ms
over the echo's at the median; a plan at most 60 ms over.
"""

import asyncio
import os
import statistics
import sys
import time
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

import pytest

from tests.telegram.loopback import BotApi

ROOT = Path(__file__).parents[2]
ROUNDS = 5
MESSAGES = 25

pytestmark = [pytest.mark.benchmark, pytest.mark.asyncio]


@asynccontextmanager
async def process(server: BotApi, *command: str, **environment: str) -> AsyncIterator[float]:
    """A bot as a process of its own; when it was started."""
    env = os.environ | environment | {"PYTHONPATH": str(ROOT)}
    began = time.monotonic()
    running = await asyncio.create_subprocess_exec(
        sys.executable, *command, env=env, cwd=ROOT, stderr=asyncio.subprocess.DEVNULL
    )
    try:
        yield began
    finally:
        running.terminate()
        await running.wait()


def echo(server: BotApi) -> tuple[str, ...]:
    return ("tests/telegram/bare_echo.py", server.url, server.token)


def bot(folder: Path, server: BotApi) -> dict[str, str]:
    return {
        "SALTBELL_TOKEN": server.token,
        "SALTBELL_CHAT_A_DAY": "0",  # a crowd of testers is no crowd of strangers
        "SALTBELL_NEW_CHATS_A_DAY": "0",
        "SALTBELL_API_URL": server.url,
        "SALTBELL_DATABASE": str(folder / "bench.db"),
        "SALTBELL_ZONE": "Europe/Vienna",
    }


async def first_question(folder: Path | None) -> float:
    """Seconds from the start of the process to its first getUpdates."""
    async with BotApi() as server:
        command = echo(server) if folder is None else ("-m", "bot", "run")
        async with process(server, *command, **(bot(folder, server) if folder else {})) as began:
            await server.until(lambda: server.count("getUpdates") > 0, 20)
            at = next(at for name, _, at in server.calls if name == "getUpdates")
            return at - began


async def answer_times(server: BotApi, texts: list[str]) -> list[float]:
    """Seconds from an update being there to its answer reaching the chat, one after another."""
    ida, taken = server.person("Ida"), []
    for text in texts:
        count = len(server.to(ida.chat))
        began = time.monotonic()
        ida.says(text)
        await server.reaches(ida.chat, count + 1, 20)
        taken.append(server.to(ida.chat)[-1].at - began)
        await asyncio.sleep(0.05)
    return taken


async def test_the_first_question_is_asked_early(tmp_path: Path) -> None:
    """Time to the first getUpdates, alternating, median of each."""
    await first_question(tmp_path)  # a database that exists, as at every start but the first
    pairs = [(await first_question(None), await first_question(tmp_path)) for _ in range(ROUNDS)]
    bare, ours = (statistics.median(column) for column in zip(*pairs, strict=True))
    print(f"\nfirst getUpdates: bare echo {bare * 1e3:.0f} ms, the bot {ours * 1e3:.0f} ms, ratio {ours / bare:.2f}")

    assert ours / bare <= 1.6


async def test_answers_come_soon_after_the_echo_s(tmp_path: Path) -> None:
    """A reading and a plan, beside the echo of the same words."""
    readings = [f"fridge {2 + n % 3} c" for n in range(MESSAGES)]
    async with BotApi() as server, process(server, *echo(server)):
        await server.until(lambda: server.count("getUpdates") > 0, 20)
        bare = statistics.median(await answer_times(server, readings))
    async with BotApi() as server, process(server, "-m", "bot", "run", **bot(tmp_path, server)):
        await server.until(lambda: server.count("getUpdates") > 0, 20)
        await answer_times(server, ["3.2 kg brisket flat", "cure is 6.25 %"])
        reading = statistics.median(await answer_times(server, readings))
        plan = statistics.median(await answer_times(server, [f"{44 + n} mm" for n in range(10)]))
    over = f"a reading {(reading - bare) * 1e3:+.1f} ms, a plan {(plan - bare) * 1e3:+.1f} ms"
    print(f"\nanswer p50: echo {bare * 1e3:.1f} ms; {over}")

    assert reading - bare <= 0.025
    assert plan - bare <= 0.060
