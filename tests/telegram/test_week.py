"""The scripted week of the docs over Telegram: the same words in the same order as in the terminal."""

import asyncio
from collections.abc import AsyncIterator
from datetime import UTC, datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from bot.channels.lines import Move, Press, Say, acts
from tests.talks.player import Player
from tests.telegram.conftest import running
from tests.telegram.loopback import BotApi
from tests.telegram.real_house import RealHouse

WEEK = Path(__file__).parents[2] / "docs" / "week.chat"
ZONE = ZoneInfo("Europe/Vienna")
START = "2027-09-23T18:00"


@pytest.fixture
async def home(server: BotApi, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> AsyncIterator[RealHouse]:
    """The real house at the door, with its clock and the phones' at the start of the week."""
    house = RealHouse(server, tmp_path)
    house.standing = datetime.fromisoformat(START).replace(tzinfo=ZONE).astimezone(UTC)
    monkeypatch.setattr("tests.telegram.loopback_chats.time.time", lambda: house.now().timestamp())
    async with running(house.channel, house.channel.run_polling(house.open)):
        yield house
    house.close()


async def quiet(server: BotApi, home: RealHouse, chat: int) -> None:
    """Wait until the update was taken and nothing more is on its way to the chat."""
    await server.until(lambda: not server.pending)
    count = -1
    while home.built.postman.busy or count != len(server.to(chat)):
        count = len(server.to(chat))
        await asyncio.sleep(0.12)


async def test_the_week_is_the_same_talk(server: BotApi, home: RealHouse, tmp_path: Path) -> None:
    """Every text of the week arrives over Telegram as it is said in the terminal, none more and none less."""
    lines = WEEK.read_text("utf-8").splitlines()
    player = Player(tmp_path / "terminal", START, ZONE.key)
    expected = [said["text"] for said in await player.play(*lines)]
    player.restart()

    start = datetime.fromisoformat(START).replace(tzinfo=ZONE).astimezone(UTC)
    ida = server.person("you")
    for _, act in acts(lines, start, ZONE):
        match act:
            case Move(to):
                await home.move_to(to)
            case Say(text):
                ida.says(text)
            case Press(label):
                ida.taps(label)
        await quiet(server, home, ida.chat)
        await home.round()
        await quiet(server, home, ida.chat)

    assert [each.text for each in server.to(ida.chat)] == expected
