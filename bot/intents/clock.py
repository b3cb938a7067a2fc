"""Wall time and the one time line: local times that come twice or never, and days counted on the calendar.

Arithmetic is done in UTC; a wall time is turned into UTC once, here.
"""

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo


@dataclass(frozen=True)
class Instant:
    """A wall time as a point on the time line.

    `exists` is false where the clocks jump over the wall time: `at` is then moved forward by the jump. `twice` is
    true where the clocks are set back and it comes two times: `at` is then the first.
    """

    at: datetime
    exists: bool = True
    twice: bool = False


def instant(day: date, clock: time, zone: str) -> Instant:
    """The instant at which the clocks of `zone` show that day and time."""
    wall = datetime.combine(day, clock)
    first = wall.replace(tzinfo=ZoneInfo(zone), fold=0).astimezone(UTC)
    second = wall.replace(tzinfo=ZoneInfo(zone), fold=1).astimezone(UTC)
    exists = wall_of(first, zone) == wall
    return Instant(first, exists, exists and first != second)


def wall_of(at: datetime, zone: str) -> datetime:
    """The naive wall time of an instant."""
    return at.astimezone(ZoneInfo(zone)).replace(tzinfo=None)


def came_twice(at: datetime, now: datetime, zone: str) -> bool:
    """Whether the clocks of `zone` had shown the wall time of an instant two times by now, having been set back."""
    wall = wall_of(at, zone).replace(tzinfo=ZoneInfo(zone))
    first, second = (wall.replace(fold=fold).astimezone(UTC) for fold in (0, 1))
    return first < second <= now


def next_at(clock: time, after: datetime, zone: str) -> Instant:
    """The first time after `after` at which the clocks show `clock`."""
    day = wall_of(after, zone).date()
    here = instant(day, clock, zone)
    return here if here.at > after else instant(day + timedelta(days=1), clock, zone)


def last_at(clock: time, before: datetime, zone: str) -> Instant:
    """The last time not after `before` at which the clocks showed `clock`."""
    day = wall_of(before, zone).date()
    here = instant(day, clock, zone)
    return here if here.at <= before else instant(day - timedelta(days=1), clock, zone)
