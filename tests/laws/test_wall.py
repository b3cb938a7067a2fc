"""Laws of the wall clock: in every zone there is, across every clock change, somebody who sleeps is let sleep."""

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.plan.hours import Wall
from tests.weeks import ZONES, changing, clocks, moments, walls

CHANGE_MINUTES = 120  # the longest clock change of a year there is, at Troll
DAY = timedelta(days=1)
LONGEST_CHANGE = timedelta(hours=24)  # a zone that moves across the date line skips or repeats a day


@st.composite
def any_walls(draw: st.DrawFn) -> Wall:
    """Any zone and any quiet hours, those that nobody would keep among them; where both are one there are none."""
    return Wall(ZoneInfo(draw(st.sampled_from(ZONES))), draw(clocks()), draw(clocks()))


@st.composite
def nights(draw: st.DrawFn) -> tuple[Wall, datetime]:
    """Any wall at any time; half of them near a clock change, with quiet hours that begin or end in it."""
    if draw(st.booleans()):
        return draw(any_walls()), draw(moments())
    zone, moment = draw(changing())
    near = st.integers(0, 16).map(lambda n: (n * 15 // 60, n * 15 % 60))
    ends = st.one_of(near.map(lambda p: time(*p)), clocks())
    return Wall(ZoneInfo(zone), draw(ends), draw(ends)), moment


def exists(wall: Wall, day: date, clock: time) -> bool:
    """Whether a local time is shown by the wall: it survives the way through UTC and back (PEP 495)."""
    local = datetime.combine(day, clock)
    return local.replace(tzinfo=wall.tz).astimezone(UTC).astimezone(wall.tz).replace(tzinfo=None, fold=0) == local


@given(nights())
def test_awake_is_never_quiet(night: tuple[Wall, datetime]) -> None:
    """Whatever the hour, the zone and the season, the time that is waited for lies outside the quiet hours."""
    wall, moment = night
    assert not wall.quiet(wall.awake(moment))


@given(nights())
def test_awake_waits_no_longer_than_it_must(night: tuple[Wall, datetime]) -> None:
    """Outside the quiet hours nothing is moved; inside, to their end: past it only by as much as the clocks change."""
    wall, moment = night
    awake = wall.awake(moment)
    assert awake >= moment
    if not wall.quiet(moment):
        assert awake == moment
    minutes = range(0, int((awake - moment) / timedelta(minutes=1)), 5)
    assert sum(5 for m in minutes if not wall.quiet(moment + timedelta(minutes=m))) <= CHANGE_MINUTES


@given(walls(), st.tuples(moments(), moments()))
def test_awake_keeps_the_order(wall: Wall, pair: tuple[datetime, datetime]) -> None:
    """What was due first is said first, or at the same time."""
    first, second = sorted(pair)
    assert wall.awake(first) <= wall.awake(second)


@given(any_walls(), clocks(), moments())
def test_next_and_last_stand_on_their_side(wall: Wall, clock: time, moment: datetime) -> None:
    """The next time that the wall shows an hour is not before, the last not after, and neither is far."""
    following, past = wall.next_at(clock, moment), wall.last_at(clock, moment)
    assert past <= moment <= following
    assert following - moment <= DAY + LONGEST_CHANGE
    assert moment - past <= DAY + LONGEST_CHANGE


@given(any_walls(), clocks(), moments())
def test_an_hour_of_a_day_is_that_hour(wall: Wall, clock: time, moment: datetime) -> None:
    """The moment of a local time shows that time on the wall, unless the clocks jump over it; then a later one."""
    day = wall.day(moment)
    at = wall.at(day, clock)
    assert at.tzinfo is UTC
    shown = (wall.day(at), wall.clock(at).replace(fold=0))
    assert (shown == (day, clock)) if exists(wall, day, clock) else (shown > (day, clock))


VIENNA = ZoneInfo("Europe/Vienna")


@pytest.mark.parametrize(
    ("day", "clock", "utc"),
    [
        # EU Directive 2000/84/EC: the clocks change at 01:00 UTC on the last Sundays of March and October
        (date(2027, 3, 28), time(2, 30), "01:30"),  # does not exist: 03:30 CEST
        (date(2027, 3, 28), time(3, 30), "01:30"),
        (date(2027, 10, 31), time(2, 30), "00:30"),  # comes twice: the first, CEST
        (date(2027, 10, 31), time(3, 30), "02:30"),
    ],
)
def test_the_clock_changes_of_one_zone(day: date, clock: time, utc: str) -> None:
    """A local time in the gap is moved past it; one that comes twice is the first of the two."""
    assert f"{Wall(VIENNA, time(22), time(7)).at(day, clock):%H:%M}" == utc


def test_quiet_hours_that_end_in_the_double_hour() -> None:
    """In the second 02:10 of an autumn night, with quiet until 02:30, one waits for the second 02:30, not for a day."""
    wall = Wall(VIENNA, time(22), time(2, 30))
    second = datetime(2027, 10, 31, 1, 10, tzinfo=UTC)
    assert f"{second.astimezone(VIENNA):%H:%M %Z}" == "02:10 CET"
    assert wall.awake(second) == datetime(2027, 10, 31, 1, 30, tzinfo=UTC)


def test_a_night_with_a_clock_change_is_as_long_as_it_is() -> None:
    """From ten to seven are eight hours in spring and ten in autumn."""
    wall = Wall(VIENNA, time(22), time(7))
    for month, day, hours in ((3, 27, 8), (10, 30, 10), (6, 1, 9)):
        evening = wall.at(date(2027, month, day), time(22))
        assert wall.awake(evening) - evening == timedelta(hours=hours)
