"""Times as people say them, on Monday 1 March 2027 at 08:30 in Vienna, and across both changes of the clocks."""

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta

import pytest

from bot.intents import when
from bot.intents.clock import instant, last_at, next_at
from bot.intents.context import Context
from bot.intents.days import find_day
from bot.measures import plain
from tests.talk_lines import MEAL, NOW, ZONE, context, wall

START = context("none")
CURE = context("curing")


@pytest.mark.parametrize(
    ("text", "at"),
    [
        ("at 8", wall(3, 1, 8)),
        ("at 9", wall(2, 28, 21)),
        ("at 7:40", wall(3, 1, 7, 40)),
        ("at 730", wall(3, 1, 7, 30)),
        ("since 7pm", wall(2, 28, 19)),
        ("this morning", wall(3, 1, 8)),
        ("last night", wall(2, 28, 20)),
        ("last night at 11", wall(2, 28, 23)),
        ("yesterday", wall(2, 28, 12)),
        ("yesterday at 8pm", wall(2, 28, 20)),
        ("at noon", wall(2, 28, 12)),
        ("20 min ago", NOW - timedelta(minutes=20)),
        ("an hour ago", NOW - timedelta(hours=1)),
        ("half an hour ago", NOW - timedelta(minutes=30)),
        ("sunday", wall(2, 28, 12)),
        ("on saturday at 6pm", wall(2, 27, 18)),
    ],
)
def test_what_was_done_is_the_latest_past(text: str, at: datetime) -> None:
    """«did it at 8» is the last eight o'clock, never one to come."""
    said = when.past(plain(text), CURE)
    assert said is not None
    assert said.at == at


@pytest.mark.parametrize(
    ("text", "at"),
    [
        ("at 9", wall(3, 1, 9)),
        ("at 8", wall(3, 1, 20)),
        ("in 20 min", NOW + timedelta(minutes=20)),
        ("half an hour", NOW + timedelta(minutes=30)),
        ("1h30", NOW + timedelta(minutes=90)),
        ("a couple of hours", NOW + timedelta(hours=2)),
        ("tomorrow", wall(3, 2, 9)),
        ("tomorrow at 6", wall(3, 2, 18)),
        ("tonight", wall(3, 1, 20)),
        ("til 6", wall(3, 1, 18)),
        ("after lunch", wall(3, 1, 13)),
        ("until sunday", wall(3, 7, 9)),
    ],
)
def test_a_reminder_is_the_next_to_come(text: str, at: datetime) -> None:
    """«remind me at 9» is the next nine o'clock; a span counts from now."""
    said = when.future(plain(text), CURE)
    assert said is not None
    assert said.at == at


@pytest.mark.parametrize(
    ("text", "at", "hour_said"),
    [
        ("saturday 13:00", wall(3, 6, 13), True),
        ("sat 1pm", wall(3, 6, 13), True),
        ("saturday 13.30 uhr", wall(3, 6, 13, 30), True),
        ("dinner sunday", wall(3, 7, 18), False),
        ("sunday at 6", wall(3, 7, 18), True),
        ("breakfast on sunday at 8", wall(3, 7, 8), True),
        ("bacon for sunday at 9", wall(3, 7, 9), True),
        ("bacon for sunday at 5", wall(3, 7, 17), True),
        ("brisket for sunday at 9", wall(3, 7, 21), True),
        ("friday nite", wall(3, 5, 20), False),
        ("xmas day lunch", wall(12, 25, 13), False),
        ("st pats", wall(3, 17, 13), False),
        ("easter", wall(3, 28, 13), False),
        ("good friday", wall(3, 26, 13), False),
        ("thanksgiving", wall(11, 25, 13), False),
        ("2027-03-13 13:00", wall(3, 13, 13), True),
        ("13 march", wall(3, 13, 13), False),
        ("march 13th at 2", wall(3, 13, 14), True),
        ("13.3. 18 uhr", wall(3, 13, 18), True),
        ("3/13", wall(3, 13, 13), False),
        ("the 14th", wall(3, 14, 13), False),
        ("tomorrow", wall(3, 2, 13), False),
        ("in 10 days", wall(3, 11, 13), False),
        ("in two weeks at 1pm", wall(3, 15, 13), True),
        ("monday at 1", wall(3, 1, 13), True),
        ("monday 7am", wall(3, 8, 7), True),
        ("saturday week", wall(3, 13, 13), False),
    ],
)
def test_a_meal_is_the_nearest_to_come(text: str, at: datetime, hour_said: bool) -> None:
    """A day is the next of its name, an hour one at which people eat; a usual hour is marked as not said."""
    said = when.meal(plain(text), START)
    assert said is not None
    assert (said.at, said.hour_said) == (at, hour_said)


@pytest.mark.parametrize(
    ("text", "at"),
    [
        ("15:00", wall(3, 6, 15)),
        ("at 3", wall(3, 6, 15)),
        ("at 12.30", wall(3, 6, 12, 30)),
        ("sunday", wall(3, 7, 13)),
        ("friday", wall(3, 5, 13)),
        ("sunday at 6", wall(3, 7, 18)),
        ("tomorrow", wall(3, 2, 13)),
    ],
)
def test_a_moved_meal_keeps_what_is_not_said(text: str, at: datetime) -> None:
    """A new hour keeps the day, a new day keeps the hour, and is the one nearest to the old."""
    said = when.meal(plain(text), CURE)
    assert said is not None
    assert said.at == at


def test_what_may_be_two_days_is_left_open() -> None:
    """`3/4` may be March or April: both are told; `sat 5` and «next weekend» are no time at all yet."""
    said = when.meal("3/4", START)
    assert said is not None
    assert {said.at, *said.others} == {wall(3, 4, 13), wall(4, 3, 13)}
    assert when.open_hour("sat 5", START) == "sat 5"
    assert when.open_hour("sat 5pm", START) == ""


def test_an_hour_that_does_not_exist_is_moved_and_told() -> None:
    """28 March 2027, 02:30 is jumped over in Vienna (EU summer time, 2000/84/EC): 03:30 stands in its place."""
    said = when.meal("2027-03-28 02:30", START)
    assert said is not None
    assert (said.at, said.exists, said.twice) == (datetime(2027, 3, 28, 1, 30, tzinfo=UTC), False, False)


def test_an_hour_that_comes_twice_is_the_first_and_told() -> None:
    """31 October 2027, 02:30 comes two times in Vienna: the first is taken."""
    said = when.meal("2027-10-31 02:30", START)
    assert said is not None
    assert (said.at, said.exists, said.twice) == (datetime(2027, 10, 31, 0, 30, tzinfo=UTC), True, True)


def test_days_are_counted_on_the_calendar() -> None:
    """The next eight o'clock over the night of the change is 23 real hours off, not 24."""
    evening = instant(date(2027, 3, 27), time(20), ZONE).at
    assert next_at(time(20), evening, ZONE).at - evening == timedelta(hours=23)
    assert last_at(time(20), evening, ZONE).at == evening


def test_a_weekday_said_at_night_is_of_the_persons_day() -> None:
    """23:30 in Chicago is the day after in UTC: «tomorrow» counts from the person's day."""
    late = Context(now=datetime(2027, 3, 2, 5, 30, tzinfo=UTC), zone="America/Chicago")
    said = when.meal("tomorrow", late)
    assert said is not None
    assert said.at == datetime(2027, 3, 2, 19, 0, tzinfo=UTC)


def test_a_past_day_is_kept_for_the_core_to_refuse() -> None:
    """A deadline in the past is read as it was said."""
    said = when.meal("yesterday 13:00", replace(START, deadline=None))
    assert said is not None
    assert said.at == wall(2, 28, 13) < NOW < MEAL


@pytest.mark.parametrize("text", ["31 february", "32.1.", "99/99", "the 40th", "0.0."])
def test_dates_that_are_none(text: str) -> None:
    """A day that no calendar has is no day."""
    assert find_day(text, date(2027, 3, 1)) is None
