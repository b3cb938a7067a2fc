"""How often updates are asked for while turns run: soon for a single one, seldom while a crowd waits its turn."""

import asyncio
from collections.abc import AsyncIterator, Sequence
from contextlib import suppress
from typing import Any

import pytest

from bot.channels.telegram import polling
from bot.channels.telegram.account import BATCH, RawUpdate
from bot.channels.telegram.polling import CROWD, Poller


class Line:
    """An API with many messages waiting, and a house whose turns end when the test says so."""

    def __init__(self, waiting: int) -> None:
        self.waiting = waiting
        self.asked: list[int] = []
        self.turns: list[asyncio.Future[bool]] = []

    async def raw_updates(self, offset: int, _: int) -> Sequence[RawUpdate]:
        self.asked.append(offset)
        await asyncio.sleep(0)
        first = max(offset, 1)
        return [{"update_id": number} for number in range(first, min(first + BATCH, self.waiting + 1))]

    async def take(self, _: RawUpdate) -> "asyncio.Future[bool]":
        self.turns.append(asyncio.get_running_loop().create_future())
        return self.turns[-1]

    async def rests(self) -> int:
        """How often was asked by the time that nothing moves any more."""
        for _ in range(5 * BATCH):
            await asyncio.sleep(0)
        return len(self.asked)


@pytest.fixture
async def polled(monkeypatch: pytest.MonkeyPatch, request: pytest.FixtureRequest) -> AsyncIterator[Line]:
    """A line that is polled. No breath ends by itself."""
    monkeypatch.setattr(polling, "BREATH", 3600.0)
    monkeypatch.setattr(polling, "LONGEST_BREATH", 3600.0)
    line = Line(request.param)
    wire: Any = line
    running = asyncio.create_task(Poller(wire, line.take, 0).run())
    yield line
    running.cancel()
    with suppress(asyncio.CancelledError):
        await running


@pytest.mark.parametrize("polled", [3 * BATCH], indirect=True)
async def test_a_crowd_is_not_asked_for_again_until_half_of_it_is_served(polled: Line) -> None:
    """Before, an answer would bring little but what is known; then what comes next is fetched while the rest runs."""
    assert await polled.rests() == 1
    for turn in polled.turns[: BATCH - CROWD - 1]:
        turn.set_result(True)
    assert await polled.rests() == 1
    polled.turns[BATCH - CROWD - 1].set_result(True)
    await polled.rests()
    assert polled.asked == [0, BATCH - CROWD + 1]
    assert len(polled.turns) == 2 * BATCH - CROWD


@pytest.mark.parametrize("polled", [1], indirect=True)
async def test_what_is_kept_is_confirmed_at_once_where_nobody_waits(polled: Line) -> None:
    """The next question names what comes after it."""
    assert await polled.rests() == 1
    polled.waiting = 0
    polled.turns[0].set_result(True)
    assert await polled.rests() > 1
    assert polled.asked[:2] == [0, 2]
