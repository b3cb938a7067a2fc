"""The clock on the kitchen wall: local hours, quiet hours, and the next morning, across clock changes.

Everything is aware UTC outside this file. Local wall time is made and taken apart only here; a local time
that does not exist is moved forward by the gap, one that comes twice is the first of the two.
"""

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from functools import lru_cache
from math import ceil
from zoneinfo import ZoneInfo

from core.person import Person
from core.units import Hours


@lru_cache(maxsize=1024)
def span(hours: Hours) -> timedelta:
    """A span in whole minutes, rounded up: a plan speaks in minutes, and its sums are exact."""
    return timedelta(minutes=ceil(hours * 60))


QUARTER = 900  # s; a fire is not planned to the minute


def quarter(moment: datetime, *, up: bool = False) -> datetime:
    """The quarter hour before a moment, or with `up` the one after it; one that stands on a quarter stays."""
    seconds = moment.timestamp()
    whole = -(-seconds // QUARTER) if up else seconds // QUARTER
    return datetime.fromtimestamp(whole * QUARTER, tz=moment.tzinfo)


@dataclass(frozen=True)
class Wall:
    """The wall clock of one person: their zone and their quiet hours."""

    tz: ZoneInfo
    quiet_from: time
    quiet_to: time

    def day(self, moment: datetime) -> date:
        """The local date of a moment."""
        return moment.astimezone(self.tz).date()

    def clock(self, moment: datetime) -> time:
        """The local time of day of a moment."""
        return moment.astimezone(self.tz).time()

    def at(self, day: date, clock: time) -> datetime:
        """The moment of a local date and time of day; a time in the gap of a clock change is moved past it."""
        local = datetime.combine(day, clock, tzinfo=self.tz)
        # a round trip through UTC turns a time that does not exist into the one the clocks jump to
        return local.astimezone(UTC)

    def quiet(self, moment: datetime) -> bool:
        """Whether a moment lies in the quiet hours."""
        clock = self.clock(moment)
        if self.quiet_from <= self.quiet_to:
            return self.quiet_from <= clock < self.quiet_to
        return clock >= self.quiet_from or clock < self.quiet_to

    def awake(self, moment: datetime) -> datetime:
        """The moment itself, or the end of the quiet hours that it lies in."""
        if not self.quiet(moment):
            return moment
        day = self.day(moment)
        # both of an hour that comes twice, so that a night in autumn ends where it ends
        days = [day + timedelta(days=n) for n in range(3)]  # the clocks may jump over a short morning
        ends = [self.at(d, self.quiet_to.replace(fold=fold)) for d in days for fold in (0, 1)]
        return min(end for end in ends if end > moment and not self.quiet(end))

    def next_at(self, clock: time, after: datetime) -> datetime:
        """The first time that the wall shows `clock` at or after a moment."""
        today = self.at(self.day(after), clock)
        return today if today >= after else self.at(self.day(after) + timedelta(days=1), clock)

    def last_at(self, clock: time, before: datetime) -> datetime:
        """The last time that the wall showed `clock` at or before a moment."""
        today = self.at(self.day(before), clock)
        return today if today <= before else self.at(self.day(before) - timedelta(days=1), clock)


def wall_of(person: Person) -> Wall:
    """The wall clock of a person."""
    return Wall(person.tz, person.quiet_from, person.quiet_to)
