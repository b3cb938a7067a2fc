"""Temperature histories: readings in the order in which they were taken, and what they leave unproven between them.

The rules are printed in °F, so every limit is compared in °F (`printed_f`): 137 °F is 58.333 °C though the
table prints 58.4 °C. Between two readings nobody looked. `coldest_between` is the coldest that the core can
have been, since meat cannot change faster than `FASTEST_FALL` and `FASTEST_RISE`; so one reading more never
proves less (docs/science/safety.md).
"""

from collections.abc import Sequence
from datetime import UTC, datetime, timedelta
from math import isfinite
from typing import Final, NamedTuple, TypeAlias

from core.errors import Missing, OutOfRange
from core.units import (
    SECONDS_PER_HOUR,
    SECONDS_PER_MINUTE,
    Celsius,
    Fahrenheit,
    Hours,
    Seconds,
    fahrenheit_from_celsius,
)

# The core of a 35 to 45 mm piece from 63 °C: bare in a room it falls 0.26 °C/min, in a sealed pit at 121 °C it rises
# 0.4 (the chill tables and the conduction solver). Rounded up; thinner pieces want a modelled curve.
FASTEST_FALL: Final = 0.3  # °C per minute, JUDGEMENT
FASTEST_RISE: Final = 0.5  # °C per minute, JUDGEMENT

COLDEST_READING: Final = -90.0  # °C; no thermometer of a kitchen reads lower
HOTTEST_READING: Final = 600.0  # °C; nor higher
HOTTEST_CORE: Final = 105.0  # °C; wet meat boils at 100, salt and a probe's error add a little


class Reading(NamedTuple):
    """A temperature and when it was read: aware UTC, °C."""

    at: datetime
    celsius: Celsius


History: TypeAlias = Sequence[tuple[datetime, Celsius]]


def ordered(history: History) -> tuple[Reading, ...]:
    """The readings by the time at which they were taken, whatever the order in which they came.

    Raises
    ------
    Missing
        A time without a zone: nobody can say when that was.
    OutOfRange
        A temperature that no thermometer of a kitchen shows, or none at all (NaN).
    """
    return tuple(sorted(_checked(at, celsius) for at, celsius in history))


def _checked(at: datetime, celsius: Celsius) -> Reading:
    if at.tzinfo is None:
        raise Missing("time_zone")
    if not isfinite(celsius) or not COLDEST_READING <= celsius <= HOTTEST_READING:
        raise OutOfRange("temperature", celsius, COLDEST_READING, HOTTEST_READING, "°C")
    return Reading(at.astimezone(UTC), float(celsius))


def printed_f(celsius: Celsius) -> Fahrenheit:
    """The temperature in the unit in which the rules are printed. [°F]

    Rounded to a millionth of a degree, which undoes the noise of binary fractions and nothing else:
    a limit that was typed in °F and stored in °C is found again, exactly.
    """
    return round(fahrenheit_from_celsius(celsius), 6)


def hours_between(first: datetime, second: datetime) -> Hours:
    """Hours from `first` to `second`. [h]"""
    return (second - first).total_seconds() / SECONDS_PER_HOUR


def lower_of(first: Reading, second: Reading) -> Celsius:
    """The lower of two readings: all that a pair of readings shows. [°C]"""
    return min(first.celsius, second.celsius)


def coldest_between(first: Reading, second: Reading) -> Celsius:
    """The coldest that the core can have been between two readings. [°C]

    It falls as fast as it can from the first and rises as fast as it can to the second; with fall f and
    rise u over a span of t minutes the lines meet at (u T1 + f T2 - u f t) / (u + f).
    """
    minutes = (second.at - first.at).total_seconds() / SECONDS_PER_MINUTE
    fall, rise = FASTEST_FALL, FASTEST_RISE
    meet = (rise * first.celsius + fall * second.celsius - rise * fall * minutes) / (rise + fall)
    return min(meet, lower_of(first, second))


def longest_below(limit_f: Fahrenheit, first: Reading, second: Reading) -> Seconds:
    """The longest that the core can have been below a limit between two readings at or above it. [s]

    The time between them less what it takes to fall from the first to the limit and to rise from the
    limit to the second.
    """
    seconds = (second.at - first.at).total_seconds()
    return max(0.0, seconds - seconds_to_fall(limit_f, first) - _seconds_to_rise(limit_f, second))


def seconds_to_fall(limit_f: Fahrenheit, reading: Reading) -> Seconds:
    """The least time in which the core can fall from a reading to a limit. [s] 0 where it is there already"""
    return max(0.0, (printed_f(reading.celsius) - limit_f) / 1.8 / FASTEST_FALL * SECONDS_PER_MINUTE)


def _seconds_to_rise(limit_f: Fahrenheit, reading: Reading) -> Seconds:
    return max(0.0, (printed_f(reading.celsius) - limit_f) / 1.8 / FASTEST_RISE * SECONDS_PER_MINUTE)


def last_at_or_above(limit_f: Fahrenheit, readings: Sequence[Reading]) -> Reading | None:
    """The last reading at or above a limit, None where there is none."""
    return next((r for r in reversed(readings) if printed_f(r.celsius) >= limit_f), None)


def last_at_or_below(limit_f: Fahrenheit, readings: Sequence[Reading]) -> Reading | None:
    """The last reading at or below a limit, None where there is none."""
    return next((r for r in reversed(readings) if printed_f(r.celsius) <= limit_f), None)


def first_at_or_above(limit_f: Fahrenheit, readings: Sequence[Reading]) -> Reading | None:
    """The first reading at or above a limit, None where there is none."""
    return next((r for r in readings if printed_f(r.celsius) >= limit_f), None)


def first_at_or_below(limit_f: Fahrenheit, readings: Sequence[Reading]) -> Reading | None:
    """The first reading at or below a limit, None where there is none."""
    return next((r for r in readings if printed_f(r.celsius) <= limit_f), None)


def within(readings: Sequence[Reading], start: datetime | None, end: datetime | None) -> tuple[Reading, ...]:
    """The readings from `start` to `end`, both included; None leaves that side open."""
    return tuple(r for r in readings if (start is None or r.at >= start) and (end is None or r.at <= end))


def later(at: datetime, hours: Hours) -> datetime:
    """The time `hours` after `at`."""
    return at + timedelta(hours=hours)
