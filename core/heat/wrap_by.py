"""Until when a wrap still brings the meat in time: the same members, wrapped at one time after the other.

A quarter of the members is run for each time, beside those that stay bare, from where the readings left them.
"""

from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import numpy as np

from core.heat.band import Array
from core.heat.cook import Cook, History, WrapKind
from core.heat.filter import STEP_S, fitted
from core.heat.pit import course
from core.heat.prior import members
from core.heat.ready import EVERY_WRAP, corrected, horizon_steps, pulls, reached
from core.heat.smoking import Change, Task, Wrapping, simulate, wrappings
from core.units import Hours

EVERY_H: Final = 0.5  # between two times that are tried
MOST: Final = 14
SURE: Final = 0.9
EVEN: Final = 0.5


@dataclass(frozen=True)
class WrapBy:
    """The latest wraps for meat that has to be ready at an hour. [h since the meat went on; shares 0 to 1]

    `sure` brings nine in ten in time, `even` every other one; None where no wrap from now on does. `bare` and `now` are
    the shares in time without a wrap and wrapped at once.
    """

    kind: WrapKind
    needed_h: Hours
    sure: Hours | None
    even: Hours | None
    bare: float
    now: float


@lru_cache(maxsize=32)
def wrap_by(cook: Cook, history: History, needed_h: Hours, kind: WrapKind = "foil") -> WrapBy:
    """Until when to wrap for a ready time, from what is known now.

    Parameters
    ----------
    needed_h
        When the meat has to be ready. [h since it went on]
    kind
        "foil" or "paper".
    """
    times = _times(history, needed_h)
    hours = _hours(cook, history, times, kind)
    shares = [float((row <= needed_h).mean()) for row in hours]
    bare, wrapped = shares[0], shares[1:]
    return WrapBy(kind, needed_h, _latest(times, wrapped, SURE), _latest(times, wrapped, EVEN), bare, wrapped[0])


def _times(history: History, needed_h: Hours) -> Array:
    """The times that are tried, now first, none behind the hour that is needed. [h]"""
    now_h = history.now / 3600.0
    count = int(np.clip((needed_h - now_h) / EVERY_H, 1, MOST))
    times: Array = now_h + EVERY_H * np.arange(count, dtype=np.float64)
    return times


def _hours(cook: Cook, history: History, times: Array, kind: WrapKind) -> list[Array]:
    """Hours to the target: bare, then wrapped at each of the times."""
    quarter = fitted(cook, history)[:, ::EVERY_WRAP]
    size, groups = quarter.shape[1], len(times) + 1
    changes: list[Change] = [*wrappings(history, STEP_S, slice(None)), *pulls(history)]
    changes += [
        Wrapping(round(hour * 3600.0 / STEP_S), slice(n * size, (n + 1) * size), kind)
        for n, hour in enumerate(times, start=1)
    ]
    columns = members(cook, np.tile(quarter, groups))
    least = int(times[-1] * 3600.0 // STEP_S) + 2
    pit = course(cook, history, STEP_S, horizon_steps(history))
    run = simulate(columns, pit, changes, Task(cook.target_c, size, least=least))  # until the bare ones are there
    hours = reached(corrected(run, history), cook.target_c)
    return [hours[n * size : (n + 1) * size] for n in range(groups)]


def _latest(times: Array, shares: list[float], wanted: float) -> Hours | None:
    """The last time up to which every wrap brings that share in time."""
    late = next((n for n, share in enumerate(shares) if share < wanted), len(shares))
    return float(times[late - 1]) if late else None
