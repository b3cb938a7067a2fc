"""How long it lasted at most: the longest that the words allow; what may have lasted longer is asked for."""

from dataclasses import replace
from datetime import timedelta

import pytest

from bot.intents import lasting
from bot.intents.intents import Change, Happened, Reading, StepDone, Unclear
from bot.intents.read import read
from bot.measures import plain
from tests.talk_lines import KILOS, NOW, POUNDS, context

CURE = context("curing", POUNDS)
ASKED = context("curing", POUNDS, asked="happened_warm_fridge")


@pytest.mark.parametrize(
    ("words", "hours"),
    [
        ("this morning", (8.5,)),  # it is 08:30 of a Monday: midnight
        ("last night", (18.5,)),  # 14:00: an evening may begin so early
        ("yesterday", (32.5,)),
        ("saturday night", (42.5,)),
        ("yesterday noon", (20.5,)),
        ("7 am", (1.5,)),
        ("7", (1.5, 13.5)),  # of the morning, or of the evening
        ("yesterday at 7", (13.5, 25.5)),
        ("7 last night", (13.5,)),
        ("3 hours ago", (3.0,)),
        ("2 hours", (2.0,)),  # no two o'clock
        ("half an hour", (0.5,)),
        ("breakfast", ()),
        ("8:30 am", ()),  # that is now
    ],
)
def test_since_a_time(words: str, hours: tuple[float, ...]) -> None:
    """A part of the day is no hour, and an hour without its half of the day is two."""
    assert lasting.since(words, CURE) == pytest.approx(hours)


def test_an_hour_on_a_clock_of_24_hours() -> None:
    """Who tells degrees in °C writes «7:20» as it stands on the wall."""
    assert lasting.since("7:20", context("curing", KILOS)) == pytest.approx((1.1667,))


@pytest.mark.parametrize(("since", "hours"), [("this morning", 8.5), ("last night", 18.5), ("6 am", 2.5)])
def test_a_fridge_that_was_warm_since_a_part_of_the_day(since: str, hours: float) -> None:
    """«47 since this morning» was let go on at 09:30, since a morning was taken for eight o'clock."""
    reading, happened = read(f"fridge 47 since {since}", CURE)
    assert isinstance(reading, Reading)
    assert isinstance(happened, Happened)
    assert happened.facts["hours"] == pytest.approx(hours)


@pytest.mark.parametrize(
    ("told", "hours"), [("since 2 hours", 2.0), ("for 3 hrs", 3.0), ("for an hour or two", 2.0), ("for a day", 24.0)]
)
def test_a_fridge_that_was_warm_for_a_while(told: str, hours: float) -> None:
    """How long is told in the line, the longest that its words allow, and is not asked for again."""
    reading, happened = read(f"fridge 46 {told}", CURE)
    assert isinstance(reading, Reading)
    assert isinstance(happened, Happened)
    assert happened.facts["hours"] == pytest.approx(hours)


@pytest.mark.parametrize("told", ["for over 3 hours", "for ages", "all night"])
def test_a_fridge_that_was_warm_for_who_knows_how_long(told: str) -> None:
    """The reading is kept, and how long at most is asked."""
    assert not any(isinstance(intent, Happened) for intent in read(f"fridge 46 {told}", CURE))


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("ice bath since 20 mins", 20),
        ("ice since half an hour", 30),
        ("been in ice 20 min", 20),
        ("on ice 25 min", 25),
        ("in the ice bath for 10 min", 10),
        ("in the fridge since 20 min", 20),
    ],
)
def test_a_chill_that_goes_on(text: str, minutes: int) -> None:
    """It began so long ago: noted as of now, its clock would be late by that."""
    (done,) = read(text, context("resting", POUNDS))
    assert isinstance(done, StepDone)
    assert (done.step, done.at) == ("chill", NOW - timedelta(minutes=minutes))


def test_minutes_are_no_hour_that_is_to_come() -> None:
    """At 18:30 «since 20 mins» was asked about, as the 20:00 of today."""
    now = NOW + timedelta(hours=10)
    (done,) = read("ice bath since 20 mins", replace(context("chilling", POUNDS), now=now))
    assert isinstance(done, StepDone)
    assert done.at == now - timedelta(minutes=20)


@pytest.mark.parametrize("text", ["been in the brine 2 days", "its in the cure 5 days"])
def test_how_long_it_is_in_is_no_wish(text: str) -> None:
    """«been in the brine 2 days» made the cure one of two days."""
    assert not any(isinstance(intent, Change) for intent in read(text, CURE))


def test_an_hour_without_its_half_of_the_day_is_asked_about() -> None:
    """The reading is kept, and how long asks; said again as the answer, it is asked which of the two."""
    (reading,) = read("fridge 47 since 7", CURE)
    assert isinstance(reading, Reading)
    for answer in ("since 7", "no idea, at 7 it was 38"):
        (found,) = read(answer, ASKED)
        assert isinstance(found, Unclear)
        assert found.why == "since"
    (sure,) = read("since 7 am", ASKED)
    assert isinstance(sure, Happened)
    assert sure.facts["hours"] == pytest.approx(1.5)


@pytest.mark.parametrize(
    "text",
    [
        "left the bag out for more than 2 hours, fridge is 38 now",
        "fridge went up to 47 for over an hour, 38 again now",
        "power was off for over 3 hours door shut, its back on, fridge 39 now",
        "left the bag out for at least an hour, fridge 38 now",
    ],
)
def test_longer_than_so_many_hours_is_no_number_of_hours(text: str) -> None:
    """They were counted as the most: two hours and more were two, and within the rule."""
    happened = next(one for one in read(text, CURE) if isinstance(one, Happened))
    assert happened.facts.get("hours") is None


def test_a_leak_that_lasted_longer_than_told() -> None:
    """«over 5 days» are not five: how long nobody saw it is not known then."""
    (found,) = read("a third, over 5 days", context("curing", POUNDS, asked="happened_leaked"))
    assert isinstance(found, Happened)
    assert found.facts["unnoticed_days"] is None
    (spilt,) = read("a third, all over the shelf, 1 day", context("curing", POUNDS, asked="happened_leaked"))
    assert isinstance(spilt, Happened)
    assert spilt.facts["unnoticed_days"] == pytest.approx(1.0)


@pytest.mark.parametrize("ago", ["2 h 20 min ago", "2h20 ago", "2h 20m ago", "2 hours and 20 minutes ago"])
def test_hours_and_minutes_ago_are_both_counted(ago: str) -> None:
    """«core 80 f 2 h 20 min ago» was kept as of 20 minutes ago."""
    for line in (f"core 80 f {ago}", f"{ago} core was 80 f"):
        (found,) = read(line, context("chilling", POUNDS, last_core_c=60.0))
        assert isinstance(found, Reading)
        at = found.temperatures[0].at
        assert at is not None
        assert (NOW - at).total_seconds() == pytest.approx(140 * 60)


@pytest.mark.parametrize(
    ("line", "minutes"),
    [
        ("kern 27 vor 50 min", 50),
        ("vor 50 min kern 27", 50),
        ("kern 27 vor 2 std", 120),
        ("kern 27 vor 2 stunden 20 minuten", 140),
        ("vor 2 h 20 min kern 27", 140),
    ],
)
def test_how_long_ago_in_short_german(line: str, minutes: int) -> None:
    """«vor 50 min» is as long ago as «vor 50 minuten»."""
    (found,) = read(line, replace(context("chilling", KILOS, last_core_c=60.0), language="de"))
    assert isinstance(found, Reading)
    at = found.temperatures[0].at
    assert at is not None
    assert (NOW - at).total_seconds() == pytest.approx(minutes * 60)


@pytest.mark.parametrize(
    ("text", "hours"),
    [
        ("2 days and 3 hours", 51.0),
        ("2 hours yesterday and 1 hour today", 3.0),
        ("an hour and then another 2 hours", 3.0),
        ("1 hour and 30 min", 1.5),
        ("an hour or two", 2.0),
        ("between 2 hours and 3 hours", 3.0),
        ("2 hours twice", None),
        ("an hour, three times", None),
        ("an hour plus", None),
    ],
)
def test_what_lasted_again_adds_up(text: str, hours: float | None) -> None:
    """«2 days and 3 hours» were two days and three minutes, and an hour on each of two days was one."""
    assert lasting.told(plain(text), CURE)["hours"] == (None if hours is None else pytest.approx(hours))


@pytest.mark.parametrize("text", ["since yesterday 4pm until 6 today", "from 4pm yesterday to 6", "friday 2pm until 4"])
def test_from_another_day_on_it_is_no_matter_of_hours(text: str) -> None:
    """It is 08:30: by the hours of the clock alone they were two or fourteen, of a day and more."""
    assert lasting.told(text, CURE).get("hours", 24.0) > 14.0
