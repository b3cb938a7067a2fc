"""The way up: how long the core was on its way through the danger band, and whether it stayed up.

Between two readings the unsafe side counts: a clock starts at the last reading still cold (or when the meat
went on) and stops at the first reading that is warm enough. The 6 h from 50 to 130 °F are the FSIS Cooking
Guideline of 2021; 140 °F within 4 h of going on is the trade's line for meat that is not intact.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import pairwise
from typing import Final

from core.safety.findings import Status
from core.safety.history import (
    History,
    Reading,
    first_at_or_above,
    hours_between,
    last_at_or_below,
    later,
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
    """A clock on the way up. [°F, °F, h] `from_f` None starts it when the meat goes on."""

    from_f: Fahrenheit | None
    to_f: Fahrenheit
    max_h: Hours


COME_UP: Final = Climb(50.0, 130.0, 6.0)  # sources.FSIS_COOKING_2021
REACH_140: Final = Climb(None, 140.0, 4.0)  # sources.COMMON_PRACTICE


@dataclass(frozen=True)
class ClimbJudgement:
    """How a clock on the way up stands. [h] `hours` is the longest that it can have been, up to now while open."""

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
    readings = within(ordered(history), meat_on, now)
    ended = first_at_or_above(climb.to_f, readings)
    before = [r for r in readings if ended is None or r.at < ended.at]
    cold = None if climb.from_f is None else last_at_or_below(climb.from_f, before)
    started = cold.at if cold else meat_on
    deciding = tuple(r for r in (cold, ended or (before[-1] if before else None)) if r is not None)
    if started is None:
        return ClimbJudgement(climb, Status.UNKNOWN, None, ended, None, 0.0, deciding)
    hours = hours_between(started, ended.at if ended else max(now, started))
    status = _climb_status(climb, started, before, ended, hours)
    return ClimbJudgement(climb, status, started, ended, later(started, climb.max_h), hours, deciding)


def _climb_status(
    climb: Climb, started: datetime, before: Sequence[Reading], ended: Reading | None, hours: Hours
) -> Status:
    """Failed where a reading past the deadline was still too cold; unknown where only a reading is wanting."""
    if before and hours_between(started, before[-1].at) > climb.max_h:
        return Status.FAILED
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
