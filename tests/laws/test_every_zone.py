"""Every clock change of every zone that the IANA database knows, in the year ahead of the tests."""

from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

from core.plan.hours import Wall
from tests.weeks import ZONES

YEAR = datetime(2027, 1, 1, tzinfo=UTC)
DAYS = 365
QUIET, AWAKE, FLIP = time(22), time(7), time(8, 30)
MOST = timedelta(hours=9)  # a night, and no clock change of the year adds more than two hours to it


def changes(tz: ZoneInfo) -> list[datetime]:
    """The days of the year in which the clocks of a zone change."""
    days = [YEAR + timedelta(days=n) for n in range(DAYS + 1)]
    offsets = [day.astimezone(tz).utcoffset() for day in days]
    return [day for day, old, new in zip(days, offsets, offsets[1:], strict=False) if old != new]


def test_every_change_of_every_zone() -> None:
    """Hour by hour through each: who sleeps is let sleep and no longer, and an hour of the morning stays that hour."""
    zones = {zone: changes(ZoneInfo(zone)) for zone in ZONES}
    assert sum(map(bool, zones.values())) >= 150  # over a third of the names change their clocks; all are walked
    for zone, days in zones.items():
        tz = ZoneInfo(zone)
        wall = Wall(tz, QUIET, AWAKE)
        for hour in range(-12, 37, 3):
            for day in days:
                moment = day + timedelta(hours=hour)
                awake = wall.awake(moment)
                assert not wall.quiet(awake), (zone, moment)
                assert timedelta(0) <= awake - moment <= MOST + timedelta(hours=2), (zone, moment)
        for day in days:
            for ahead in range(-1, 3):
                flip = wall.at(wall.day(day + timedelta(days=ahead)), FLIP)
                assert flip.astimezone(tz).time() == FLIP, (zone, flip)
