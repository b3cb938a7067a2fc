"""A week in which the clocks change: reminders keep the wall clock, none is lost, none comes twice, nobody is woken."""

from collections import Counter
from collections.abc import Iterator
from datetime import UTC, datetime, time, timedelta
from itertools import pairwise
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from tests.talks.player import Player
from tests.weeks import changes

ZONES = ("Europe/Vienna", "America/New_York", "Australia/Lord_Howe")
CHANGES = [(zone, change) for zone in ZONES for change in changes(zone)]
FLIPS = (time(8, 0), time(20, 0))
REPEAT = "Still open"


async def week(folder: Path, zone: str, start: datetime) -> tuple[list[dict[str, Any]], list[dict[str, Any]]]:
    """The plan as the meat went in, and every reminder of the days that follow while nobody answers."""
    player = Player(folder, f"{start:%Y-%m-%dT%H:%M}", zone)
    meal = start + timedelta(days=9)
    await player.play(f"3.2 kg brisket flat for {meal.day} {meal:%B} 13:00, 48 mm, cure 6.25 %", "+1h done")
    morning = start + timedelta(days=1)
    went_in = await player.play(f"@{morning:%Y-%m-%d}T09:00 brine 3 c", "meat into the cure")
    heard = await player.play(f"@{meal:%Y-%m-%d}T23:30")
    player.restart()
    return went_in[-1]["facts"]["plan"], [one for one in heard if one["kind"] != "reply"]


@pytest.mark.parametrize(("zone", "change"), CHANGES, ids=[f"{zone} {change:%b}" for zone, change in CHANGES])
async def test_a_week_over_a_clock_change(tmp_path: Path, zone: str, change: datetime) -> None:
    """Flips at eight and eight by the clock on the wall on both sides of the change, each once, and at its hour."""
    tz = ZoneInfo(zone)
    start = (change.astimezone(tz) - timedelta(days=4)).replace(hour=18, minute=0, tzinfo=None)
    plan, heard = await week(tmp_path, zone, start)
    before, after = (instant.astimezone(tz).utcoffset() for instant in (change - timedelta(days=3), change))
    assert before != after

    # the plan keeps the wall clock, every day twice but for the first morning and the last evening
    flips = [datetime.fromisoformat(s["due"]).astimezone(tz) for s in plan if s["step"].startswith("flip/")]
    assert {flip.time() for flip in flips} == set(FLIPS)
    assert flips == list(eights(flips[0], flips[-1]))
    assert flips[0] < change < flips[-1]
    by_step = {s["step"]: datetime.fromisoformat(s["due"]).astimezone(tz) for s in plan}
    assert by_step["out"].time() == time(17, 0)
    assert by_step["serve"].time() == time(13, 0)

    # each flip was called for once, at its minute; nothing quiet in the quiet hours
    called = [one for one in heard if one["facts"]["step"].startswith("flip/")]
    assert [datetime.fromisoformat(one["at"]) for one in called] == flips
    for one in called:
        assert time(7, 0) <= datetime.fromisoformat(one["at"]).time() < time(22, 0)

    # nothing was said twice, and all that was to be done by then was called for
    first = Counter(one["facts"]["step"] for one in heard if not one["text"].startswith(REPEAT))
    assert set(first.values()) == {1}
    assert {"mid_check", "out", "light"} <= first.keys()


def eights(first: datetime, last: datetime) -> Iterator[datetime]:
    """Eight in the morning and eight in the evening by the wall, from a first to a last one of them."""
    wall = first.replace(tzinfo=None)
    while (instant := wall.replace(tzinfo=first.tzinfo)) <= last:
        yield instant
        wall = datetime.combine(wall.date() + timedelta(wall.time() == FLIPS[1]), FLIPS[wall.time() == FLIPS[0]])


async def test_the_hours_between_two_flips_are_true_hours(tmp_path: Path) -> None:
    """Over the night of 28 March in Vienna there are eleven hours from one flip to the next, and twelve elsewhere."""
    _, heard = await week(tmp_path, "Europe/Vienna", datetime(2027, 3, 24, 18, 0))  # noqa: DTZ001 (a wall time)
    flips = [datetime.fromisoformat(one["at"]) for one in heard if one["facts"]["step"].startswith("flip/")]
    gaps = {
        later.date(): later.astimezone(UTC) - earlier.astimezone(UTC)
        for earlier, later in pairwise(flips)
        if later.hour == 8
    }

    assert gaps.pop(datetime(2027, 3, 28).date()) == timedelta(hours=11)  # noqa: DTZ001 (a wall time)
    assert set(gaps.values()) == {timedelta(hours=12)}
