"""core.safety.history and rows: readings in order, in the unit of the rules; tables read and never guessed."""

from datetime import UTC, datetime, timedelta, timezone

import pytest

from core.errors import Missing, OutOfRange, Unreadable
from core.safety.history import (
    Reading,
    coldest_at_each_time,
    first_at_or_above,
    first_at_or_below,
    hours_between,
    last_at_or_above,
    lasting_above,
    later,
    ordered,
    printed_f,
    until_cold,
    warmest_at_each_time,
    within,
)
from core.safety.rows import number, optional_number, rows
from core.units import celsius_from_fahrenheit
from tests.records import at, history

FALL = history((0.0, 150.0), (1.0, 130.0), (2.0, 90.0), (3.0, 40.0), (4.0, 165.0))


def test_what_stayed_above_to_the_end():
    """From the first reading after the last one below: at the limit is not below it."""
    assert lasting_above(40.0, FALL) == FALL
    assert lasting_above(41.0, FALL) == FALL[4:]
    assert lasting_above(130.0, FALL[:2]) == FALL[:2]
    assert lasting_above(131.0, FALL[:2]) == ()


def test_order_of_arrival_does_not_matter():
    """Readings are sorted by when they were taken, whatever the zone they were said in."""
    vienna = timezone(timedelta(hours=1))
    late = (datetime(2027, 3, 6, 10, 30, tzinfo=vienna), 60.0)
    early = (datetime(2027, 3, 6, 9, tzinfo=UTC), 50.0)
    assert ordered([late, early]) == (Reading(early[0], 50.0), Reading(late[0].astimezone(UTC), 60.0))


def test_a_time_without_zone_is_no_time():
    """Nobody can say when 8 o'clock without a zone was."""
    with pytest.raises(Missing, match="time_zone"):
        ordered([(datetime(2027, 3, 6, 8), 60.0)])  # noqa: DTZ001


@pytest.mark.parametrize("celsius", [float("nan"), float("inf"), -90.01, 600.01])
def test_no_thermometer_shows_that(celsius):
    """NaN, infinity and what no thermometer shows are refused, not clamped."""
    with pytest.raises(OutOfRange) as refused:
        ordered([(at(0.0), celsius)])
    assert (refused.value.low, refused.value.high, refused.value.unit) == (-90.0, 600.0, "°C")


def test_the_ends_of_the_range_are_readings():
    """-90 and 600 °C can be read."""
    assert [r.celsius for r in ordered([(at(0.0), -90.0), (at(1.0), 600.0)])] == [-90.0, 600.0]


@pytest.mark.parametrize("fahrenheit", range(32, 213))
def test_every_whole_degree_is_found_again(fahrenheit):
    """A limit typed in °F and stored in °C compares equal to itself, at every whole degree."""
    assert printed_f(celsius_from_fahrenheit(float(fahrenheit))) == float(fahrenheit)


def test_first_and_last():
    """The four crossings of a limit, the limit itself included; None where there is none."""
    assert last_at_or_above(130.0, FALL[:4]) == FALL[1]
    assert first_at_or_above(151.0, FALL) == FALL[4]
    assert first_at_or_below(90.0, FALL) == FALL[2]
    assert last_at_or_above(166.0, FALL) is None
    assert first_at_or_above(166.0, FALL) is None
    assert first_at_or_below(39.0, FALL) is None


def test_within_includes_both_ends():
    """None leaves a side open."""
    assert within(FALL, at(1.0), at(3.0)) == FALL[1:4]
    assert within(FALL, None, at(1.0)) == FALL[:2]
    assert within(FALL, at(3.0), None) == FALL[3:]


def test_hours():
    """Hours there and back."""
    assert hours_between(at(1.0), later(at(1.0), 2.5)) == 2.5


def test_of_several_spots_at_once():
    """While it heats the coldest spot counts, while it cools the warmest."""
    spots = history((1.0, 150.0), (0.0, 140.0), (1.0, 145.0), (1.0, 148.0))
    assert coldest_at_each_time(ordered(spots)) == history((0.0, 140.0), (1.0, 145.0))
    assert warmest_at_each_time(ordered(spots)) == history((0.0, 140.0), (1.0, 150.0))


def test_until_cold_leaves_the_reheat_out():
    """Up to the first cold reading after a warm one; a cold start does not end it."""
    assert until_cold(40.0, FALL) == FALL[:4]
    assert until_cold(40.0, history((-1.0, 38.0), *((h, 150.0) for h in (0.0, 1.0)))) == history(
        (-1.0, 38.0), (0.0, 150.0), (1.0, 150.0)
    )
    assert until_cold(40.0, ()) == ()


def test_a_table_that_is_not_there():
    """A missing table is an error with the name of the file."""
    with pytest.raises(Unreadable) as missing:
        rows("no_such")
    assert missing.value.file == "no_such.csv"


def test_an_empty_cell_is_never_zero():
    """Zero seconds would mean "at once": an empty or garbled cell raises."""
    assert optional_number({"x": " "}, "x") is None
    assert number({"x": " 1.5 "}, "x") == 1.5
    for text in ("", "soon"):
        with pytest.raises(Unreadable):
            number({"x": text}, "x")


def test_a_limit_is_found_again_to_a_millionth():
    """Noise under half a millionth of a degree is undone, more is not: no limit is rounded to."""
    assert printed_f(celsius_from_fahrenheit(137.0 - 4e-7)) == 137.0
    assert printed_f(celsius_from_fahrenheit(137.0 - 6e-7)) < 137.0


@pytest.mark.parametrize(
    ("points", "kept"),
    [
        (((0.0, 38.0), (0.5, 39.0), (1.0, 40.0), (1.5, 39.5)), 4),  # never warm: nothing has ended
        (((0.0, 40.0), (1.0, 39.0), (2.0, 60.0)), 3),  # 40 °F itself is cold
        (((0.0, 60.0), (1.0, 40.0), (2.0, 39.0)), 2),
    ],
)
def test_only_a_fall_from_above_the_limit_ends_it(points, kept):
    """What stays cold goes on; the first reading at the limit after a warm one is the last."""
    assert until_cold(40.0, history(*points)) == history(*points[:kept])
