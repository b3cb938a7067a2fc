"""Temperature histories: readings in the order in which they were taken, and what they leave unproven between them.

The rules are printed in °F, so every limit is compared in °F (`printed_f`): 137 °F is 58.333 °C though the
table prints 58.4 °C. Between two readings nobody looked, so each rule takes the unsafe side of the two.
"""

from collections.abc import Sequence
from datetime import UTC, datetime, timedelta
from itertools import takewhile
from typing import Final, NamedTuple, TypeAlias

from core.errors import Missing, OutOfRange
from core.units import (
    SECONDS_PER_HOUR,
    Celsius,
    Fahrenheit,
    Hours,
    fahrenheit_from_celsius,
)

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
    if not COLDEST_READING <= celsius <= HOTTEST_READING:  # NaN is not within either
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


def last_at_or_above(limit_f: Fahrenheit, readings: Sequence[Reading]) -> Reading | None:
    """The last reading at or above a limit, None where there is none."""
    return next((r for r in reversed(readings) if printed_f(r.celsius) >= limit_f), None)


def first_at_or_above(limit_f: Fahrenheit, readings: Sequence[Reading]) -> Reading | None:
    """The first reading at or above a limit, None where there is none."""
    return next((r for r in readings if printed_f(r.celsius) >= limit_f), None)


def first_at_or_below(limit_f: Fahrenheit, readings: Sequence[Reading]) -> Reading | None:
    """The first reading at or below a limit, None where there is none."""
    return next((r for r in readings if printed_f(r.celsius) <= limit_f), None)


def lasting_above(limit_f: Fahrenheit, readings: Sequence[Reading]) -> tuple[Reading, ...]:
    """The readings from which on none is below a limit."""
    return tuple(takewhile(lambda r: printed_f(r.celsius) >= limit_f, reversed(readings)))[::-1]


def within(readings: Sequence[Reading], start: datetime | None, end: datetime | None) -> tuple[Reading, ...]:
    """The readings from `start` to `end`, both included; None leaves that side open."""
    return tuple(r for r in readings if (start is None or r.at >= start) and (end is None or r.at <= end))


def later(at: datetime, hours: Hours) -> datetime:
    """The time `hours` after `at`."""
    return at + timedelta(hours=hours)


def coldest_at_each_time(readings: Sequence[Reading]) -> tuple[Reading, ...]:
    """Of several spots read at once the coldest counts while the meat is heated."""
    return tuple({r.at: r for r in sorted(readings, reverse=True)}.values())[::-1]


def warmest_at_each_time(readings: Sequence[Reading]) -> tuple[Reading, ...]:
    """Of several spots read at once the warmest counts while it cools: the coldest says nothing of the centre."""
    return tuple({r.at: r for r in sorted(readings)}.values())


def until_cold(limit_f: Fahrenheit, readings: Sequence[Reading]) -> tuple[Reading, ...]:
    """The readings up to the first that is cold after a warm one; what comes later is storage or a reheat."""
    warm = False
    for place, reading in enumerate(readings):
        above = printed_f(reading.celsius) > limit_f
        if warm and not above:
            return tuple(readings[: place + 1])
        warm = above
    return tuple(readings)
