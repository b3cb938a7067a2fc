"""The scripted week of the docs over Telegram: the same words in the same order as in the terminal."""

from collections.abc import AsyncIterator
from datetime import UTC, datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from bot.channels.lines import Move, Press, Say, acts
from tests.talks.made_here import made_here
from tests.talks.player import Player
from tests.telegram.conftest import running
from tests.telegram.loopback import BotApi
from tests.telegram.real_house import RealHouse

WEEK = Path(__file__).parents[2] / "docs" / "week.chat"
ZONE = ZoneInfo("Europe/Vienna")
START = "2027-09-23T18:00"


@pytest.fixture
async def home(server: BotApi, tmp_path: Path) -> AsyncIterator[RealHouse]:
    """The real house at the door, with its clock and the phones' at the start of the week."""
    house = RealHouse(server, tmp_path)
    house.standing = datetime.fromisoformat(START).replace(tzinfo=ZONE).astimezone(UTC)
    with made_here():
        async with running(house.channel, house.channel.run_polling(house.open)):
            yield house
    house.close()


async def test_the_week_is_the_same_talk(server: BotApi, home: RealHouse, tmp_path: Path) -> None:
    """Every text of the week arrives over Telegram as it is said in the terminal, none more and none less."""
    lines = WEEK.read_text("utf-8").splitlines()
    player = Player(tmp_path / "terminal", START, ZONE.key)
    await player.play(*lines)
    player.restart()

    assert await over_telegram(server, home, lines) == [said["text"] for said in player.said]


async def test_who_answers_in_the_minute_of_the_reminder(server: BotApi, home: RealHouse, tmp_path: Path) -> None:
    """Each reminder is answered in the very minute in which it falls due: the two talks are the same one."""
    lines = ["3.2 kg brisket flat", "!6.25 %"]
    player = Player(tmp_path / "terminal", START, ZONE.key)
    await player.play(*lines)
    for _ in range(8):
        due = player.house().next_due()
        assert due is not None
        lines += [f"@{due.astimezone(ZONE):%Y-%m-%dT%H:%M} done"]
        await player.play(lines[-1])
    player.restart()

    assert await over_telegram(server, home, lines) == [said["text"] for said in player.said]


async def over_telegram(server: BotApi, home: RealHouse, lines: list[str]) -> list[str]:
    """The texts that come over Telegram when the lines of a script are said there."""
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
        await home.settled()
        await home.round()

    return [each.text for each in server.to(ida.chat)]
