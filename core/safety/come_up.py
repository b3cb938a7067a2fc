"""The way up: how long the core was on its way through the danger band, and whether it stayed up.

Between two readings the unsafe side counts: an interval that touches the band counts whole, from the last reading
still cold (or when the meat went on) to the first reading that is warm enough. The 6 h from 50 to 130 °F are a total,
so a later reading below 130 °F takes the clock up again (FSIS Cooking Guideline of 2021, Come-Up-Time); 140 °F within
4 h of going on is the trade's line for birds and for meat that is neither intact nor cured to its middle.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import accumulate, pairwise
from typing import Final

from core.safety.findings import Status
from core.safety.history import (
    COLDEST_READING,
    History,
    Reading,
    first_at_or_above,
    hours_between,
    lasting_above,
    ordered,
    printed_f,
    within,
)
from core.units import Fahrenheit, Hours

DANGER_LOW_F: Final = 40.0
DANGER_HIGH_F: Final = 140.0
GROWS_BELOW_F: Final = 130.0


@dataclass(frozen=True)
class Climb:
    """A clock on the way up. [°F, °F, h]

    With `from_f` it counts all the time between the two, however often the core comes back; None counts from
    when the meat goes on to the first reading at `to_f`.
    """

    from_f: Fahrenheit | None
    to_f: Fahrenheit
    max_h: Hours

    def below(self, reading: Reading) -> bool:
        """Whether it is not yet warm enough."""
        return printed_f(reading.celsius) < self.to_f

    def cold(self, reading: Reading) -> bool:
        """Whether it is so cold that nothing counts yet."""
        return self.from_f is not None and printed_f(reading.celsius) <= self.from_f

    def counts(self, first: Reading, second: Reading) -> bool:
        """Whether the time between two readings touches the band: then all of it counts."""
        still_cold = self.cold(first) and self.cold(second)
        return not still_cold and (self.below(first) or self.below(second))


COME_UP: Final = Climb(50.0, 130.0, 6.0)  # sources.FSIS_COOKING_2021
REACH_140: Final = Climb(None, 140.0, 4.0)  # sources.COMMON_PRACTICE
_HOUR: Final = timedelta(hours=1)


@dataclass(frozen=True)
class ClimbJudgement:
    """How a clock on the way up stands. [h]

    `hours` is the longest that it can have been, up to now while open; `ended` is the reading from which on none
    was too cold.
    """

    climb: Climb
    status: Status
    started: datetime | None
    ended: Reading | None
    deadline: datetime | None
    hours: Hours
    deciding: tuple[Reading, ...] = ()


@dataclass(frozen=True)
class Fall:
    """A core that fell: its last reading at 140 °F, the lowest after it, and the first at 140 °F again. [h]

    `again` is None while it is still down; `hours` counts from the first to the last of these, or to now.
    """

    hot: Reading
    lowest: Reading
    again: Reading | None
    hours: Hours


@dataclass(frozen=True)
class DangerHours:
    """Hours between 40 and 140 °F in all: the most that it can have been, and by straight lines. [h]"""

    at_most: Hours
    by_line: Hours


def judge_climb(climb: Climb, history: History, meat_on: datetime | None, now: datetime) -> ClimbJudgement:
    """How a clock on the way up stands.

    Parameters
    ----------
    climb
        `COME_UP` or `REACH_140`.
    history
        Core readings of the cook. [aware datetime, °C]
    meat_on
        When the meat went on; None where nobody said.
    now
        The time at which it is asked. aware

    Raises
    ------
    Missing, OutOfRange
        A reading without a zone, or one that cannot be.
    """
    readings = _looked_at(climb, within(ordered(history), meat_on, now))
    start, warm = _start(climb, readings, meat_on), lasting_above(climb.to_f, readings)
    ended = warm[0] if warm else None
    if start is None:
        return ClimbJudgement(climb, Status.UNKNOWN, None, ended, None, 0.0, (ended,) if ended else readings[-1:])
    way = (start, *readings)
    spent = _spent(climb, way)
    open_still = timedelta() if ended else max(now - way[-1].at, timedelta())
    hours = (spent[-1] + open_still) / _HOUR
    late = next(
        (r for r, so_far in zip(way, spent, strict=True) if climb.below(r) and so_far / _HOUR > climb.max_h), None
    )
    set_out = next((first for first, second in pairwise(way) if climb.counts(first, second)), way[-1])
    return ClimbJudgement(
        climb=climb,
        status=Status.FAILED if late else _unless_late(climb, ended, hours),
        started=set_out.at,
        ended=ended,
        deadline=way[-1].at + climb.max_h * _HOUR - spent[-1],
        hours=hours,
        deciding=tuple(r for r in dict.fromkeys((set_out, late or ended or way[-1])) if r in readings),
    )


def _looked_at(climb: Climb, readings: tuple[Reading, ...]) -> tuple[Reading, ...]:
    """The readings that count: a clock from going on is over at the first that is warm enough."""
    reached = None if climb.from_f is not None else first_at_or_above(climb.to_f, readings)
    return readings if reached is None else readings[: readings.index(reached) + 1]


def _start(climb: Climb, readings: Sequence[Reading], meat_on: datetime | None) -> Reading | None:
    """It goes on cold; where nobody said when that was, a first reading that shows it cold will do."""
    if meat_on is not None:
        return Reading(meat_on, COLDEST_READING)
    return next((r for r in readings[:1] if climb.cold(r)), None)


def _spent(climb: Climb, way: Sequence[Reading]) -> tuple[timedelta, ...]:
    """The time in the band up to each reading."""
    counted = (second.at - first.at if climb.counts(first, second) else timedelta() for first, second in pairwise(way))
    return tuple(accumulate(counted, initial=timedelta()))


def _unless_late(climb: Climb, ended: Reading | None, hours: Hours) -> Status:
    """Where no reading past the limit was too cold: unknown where only a reading is wanting."""
    if hours > climb.max_h:
        return Status.UNKNOWN
    return Status.PASSED if ended else Status.OPEN


def falls(history: History, now: datetime) -> tuple[Fall, ...]:
    """The times at which a core that had been at 140 °F was read below 130 °F again, each as long as it can have been.

    From 130 °F up nothing that matters grows, and a core in the stall hovers about 140 °F: that is no fall.

    Parameters
    ----------
    history
        Core readings while the meat was on the fire, in any order. [aware datetime, °C]
    now
        When it is asked, or when it came off. aware

    Returns
    -------
    Each fall from its last reading at 140 °F to the first at 140 °F again, or to `now`. [h]
    """
    readings = ordered(history)
    hot = [r for r in readings if printed_f(r.celsius) >= DANGER_HIGH_F]
    spans: list[tuple[Reading, Reading | None]] = [*pairwise(hot), *((last, None) for last in hot[-1:])]
    return tuple(fall for first, again in spans if (fall := _fall(first, again, readings, now)) is not None)


def _fall(hot: Reading, again: Reading | None, readings: Sequence[Reading], now: datetime) -> Fall | None:
    end = again.at if again else now
    lowest = min((r for r in readings if hot.at < r.at <= end), key=lambda r: r.celsius, default=None)
    if lowest is None or printed_f(lowest.celsius) >= GROWS_BELOW_F:
        return None
    return Fall(hot, lowest, again, hours_between(hot.at, end))


def danger_hours(history: History) -> DangerHours:
    """Hours between 40 and 140 °F in all.

    Parameters
    ----------
    history
        Core readings, in any order. [aware datetime, °C]

    Returns
    -------
    At most: every interval between two readings that touches the band, whole. By line: the share of each
    straight line that lies in the band. [h]
    """
    at_most = by_line = 0.0
    for first, second in pairwise(ordered(history)):
        hours = hours_between(first.at, second.at)
        share = _share_inside(printed_f(first.celsius), printed_f(second.celsius))
        at_most += hours if share > 0 else 0.0
        by_line += hours * share
    return DangerHours(at_most, by_line)


def _share_inside(first_f: Fahrenheit, second_f: Fahrenheit) -> float:
    """Share of the straight line between two temperatures that lies in the band. [-]"""
    low, high = sorted((first_f, second_f))
    if low == high:
        return 1.0 if DANGER_LOW_F < low < DANGER_HIGH_F else 0.0
    return max(0.0, min(high, DANGER_HIGH_F) - max(low, DANGER_LOW_F)) / (high - low)
