"""A country changes its clocks while a batch is under way: with new zone data its hours stay those on the wall."""

import zoneinfo
from collections.abc import Iterator
from datetime import UTC, datetime, time, timedelta
from importlib.resources import files
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from sqlalchemy import text

from bot.assembly import Built, build, newcomer
from bot.reply import Message, Outgoing

ZONE = "Europe/Vienna"
MONDAY = datetime(2027, 3, 1, 15, tzinfo=UTC)


@pytest.fixture
def new_data(tmp_path: Path) -> Iterator[Path]:
    """Zone data in which Vienna has the time of Helsinki, an hour ahead; what is read meanwhile is forgotten."""
    before = zoneinfo.TZPATH
    place = tmp_path / "zones" / ZONE
    place.parent.mkdir(parents=True)
    place.write_bytes(files("tzdata").joinpath("zoneinfo", "Europe", "Helsinki").read_bytes())
    yield tmp_path / "zones"
    zoneinfo.reset_tzpath(before)
    ZoneInfo.clear_cache()


async def send(outgoing: Outgoing) -> str:
    return f"{outgoing.chat}:{outgoing.id}"


def says(house: Built, number: int, words: str, now: datetime) -> None:
    assert house.receive(Message(f"tg:{number}", "7", "7", "Ida", now, words), now)


def flips(house: Built) -> list[time]:
    """At which hours of UTC the flips wait."""
    with house.house.reading() as tx:
        due = tx.execute(text("SELECT due_at FROM outgoing WHERE state = 'waiting' AND kind = 'flip'")).scalars().all()
    return [(datetime(1970, 1, 1, tzinfo=UTC) + timedelta(microseconds=at)).time() for at in due]


def test_the_hours_on_the_wall_are_kept(new_data: Path, tmp_path: Path) -> None:
    """The process is begun anew with the data, and the next line about the batch puts every hour right."""
    url = f"sqlite:///{tmp_path / 'house.db'}"
    house = build(url, newcomer(ZONE), send)
    says(house, 1, "3.2 kg brisket flat, 6.25 % curing salt", MONDAY)
    says(house, 2, "it is in the brine", MONDAY + timedelta(hours=1))
    before = flips(house)
    house.close()

    zoneinfo.reset_tzpath([new_data])
    ZoneInfo.clear_cache()
    house = build(url, newcomer(ZONE), send)
    says(house, 3, "fridge 3 c", MONDAY + timedelta(hours=2))
    after = flips(house)
    house.close()

    assert len(before) == len(after) >= 4
    assert {at.hour for at in after} == {at.hour - 1 for at in before}
