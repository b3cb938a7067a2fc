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
    longest_below,
    ordered,
    printed_f,
    seconds_to_fall,
    within,
)
from core.units import SECONDS_PER_HOUR, Fahrenheit, Hours

DANGER_LOW_F: Final = 40.0
DANGER_HIGH_F: Final = 140.0


@dataclass(frozen=True)
class Climb:
    """A clock on the way up. [°F, °F, h] `from_f` None starts it when the meat goes on."""

    from_f: Fahrenheit | None
    to_f: Fahrenheit
    max_h: Hours


COME_UP: Final = Climb(50.0, 130.0, 6.0)  # sources.FSIS_COOKING_2021
REACH_140: Final = Climb(None, 140.0, 4.0)  # common practice; sources.FSIS_SMOKING for the danger band


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
class Gap:
    """Two readings at or above 140 °F, and the longest that the core can have been below it between them. [h]

    `fell` says that a reading between them was below; `second` is None where the gap is still open.
    """

    first: Reading
    second: Reading | None
    hours_below: Hours
    fell: bool


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


def gaps_above_140(history: History, now: datetime | None = None) -> tuple[Gap, ...]:
    """The gaps between readings at or above 140 °F, from the first on; with `now` also the one that is open.

    A gap is as long as the core can have been below 140 °F in it, whether a reading shows it or not.
    """
    readings = ordered(history)
    hot = [r for r in readings if printed_f(r.celsius) >= DANGER_HIGH_F]
    found = [_gap(first, second, readings) for first, second in pairwise(hot)]
    if hot and now is not None and now > hot[-1].at:
        below = hours_between(hot[-1].at, now) - seconds_to_fall(DANGER_HIGH_F, hot[-1]) / SECONDS_PER_HOUR
        found.append(Gap(hot[-1], None, max(0.0, below), any(r.at > hot[-1].at for r in readings)))
    return tuple(found)


def _gap(first: Reading, second: Reading, readings: Sequence[Reading]) -> Gap:
    below = longest_below(DANGER_HIGH_F, first, second) / SECONDS_PER_HOUR
    return Gap(first, second, below, any(first.at < r.at < second.at for r in readings))


def danger_hours(history: History) -> DangerHours:
    """Hours between 40 and 140 °F in all. At most: every interval that touches the band, whole. [h]"""
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
