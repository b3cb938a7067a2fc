"""A store that keeps nothing: nobody is told «done», everybody is told once, and nothing that was said is lost."""

import sqlite3
from collections.abc import AsyncIterator, Callable, Iterator
from contextlib import asynccontextmanager, contextmanager
from pathlib import Path

import pytest
from sqlalchemy import event

from bot.channels.telegram import polling as polling_room
from bot.channels.telegram.intake import House
from bot.keeper.alarm import Alarm
from tests.telegram.conftest import running
from tests.telegram.loopback import BotApi
from tests.telegram.real_house import RealHouse

Trouble = Callable[[RealHouse], object]


@contextmanager
def connections_say(home: RealHouse, wrong: str, right: str) -> Iterator[None]:
    """Every connection to the store is told so much when it is taken, and the opposite afterwards."""
    said = [wrong]

    def taken(connection: sqlite3.Connection, *_: object) -> None:
        connection.execute(said[0])

    event.listen(home.built.house.engine, "checkout", taken)
    yield
    said[0] = right


@asynccontextmanager
async def talking(server: BotApi, home: RealHouse) -> AsyncIterator[None]:
    """The house behind its door, with the alarm that speaks past the store."""

    async def open_house() -> House:
        return House(Alarm(home.channel.send, None).receiving(home.built.receive), home.deliver)

    async with running(home.channel, home.channel.run_polling(open_house)):
        yield
    home.close()


@pytest.mark.parametrize(
    ("wrong", "right"),
    [
        ("PRAGMA query_only = 1", "PRAGMA query_only = 0"),  # a disk that was mounted anew, read-only
        ("PRAGMA max_page_count = 1", "PRAGMA max_page_count = 1000000"),  # a disk on which no page more has room
    ],
)
async def test_nothing_is_done_that_is_not_kept(
    wrong: str, right: str, server: BotApi, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A batch is begun while nothing can be kept: no plan, one word that it is not kept; with room again the plan."""
    monkeypatch.setattr(polling_room, "FIRST_BACK_OFF", 0.05)
    monkeypatch.setattr(polling_room, "LONGEST_BACK_OFF", 0.05)
    monkeypatch.setattr(polling_room, "LONGEST_BREATH", 0.05)
    home, ida = RealHouse(server, tmp_path), server.person("Ida")
    async with talking(server, home):
        ida.says("3.2 kg brisket flat")
        await server.reaches(ida.chat, 1)
        await home.settled()
        with connections_say(home, wrong, right):
            ida.taps("6.25 %")
            await server.reaches(ida.chat, 2)
            await server.until(lambda: server.count("getUpdates") > 8)
            meanwhile = [each.text for each in server.to(ida.chat)[1:]]
        await server.until(lambda: any("Dose:" in each.text for each in server.to(ida.chat)))
        await home.settled()

    assert len(meanwhile) == 1
    assert meanwhile[0].startswith("Not kept yet")
    assert sum("Dose:" in each.text for each in server.to(ida.chat)) == 1
