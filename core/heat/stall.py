"""The stall: when it comes, whether the meat is in it, how long it lasts.

A core is said to stall while it climbs slower than 3.5 K an hour between 55 and 82 °C. Cooks speak of a
stall from about 60 to 77 °C (140 to 170 °F); the bounds are wider so that a cool one counts.
"""

from dataclasses import dataclass
from typing import Final, Literal

import numpy as np

from core.heat.band import Array, Band, quantiles
from core.units import Celsius, Hours, Seconds

SLOW_K_H: Final = 3.5
LOW_C: Final = 55.0
HIGH_C: Final = 82.0
SHORTEST_H: Final = 0.75  # shorter ones are not felt as a stall

Phase = Literal["ahead", "in", "over", "none"]


@dataclass(frozen=True)
class Stall:
    """Where the cook stands to its stall.

    `likely` is the share of members that stall at all. `begins` and `lasts` are bands over those that do,
    in hours since the meat went on and in hours; None where hardly any does.
    """

    phase: Phase
    likely: float
    begins: Band | None
    lasts: Band | None
    core: Band | None


def until_done(core: Array, target_c: Celsius) -> Array:
    """The members' cores as far as their target: what is off the fire by then stalls for nobody. [°C]"""
    return np.where(np.maximum.accumulate(core, axis=0) >= target_c, np.maximum(core, HIGH_C), core)


def stall(core: Array, step_s: Seconds, now_h: Hours, wrapped: bool) -> Stall:
    """The stall of the members' cores (rows are steps), as seen from `now_h`.

    A wrap ends the stall: what is still slow under foil is called by its time, not by this name.
    """
    begins, ends, at = _spells(core, step_s)
    lasting = (ends - begins) >= SHORTEST_H
    likely = float(lasting.mean())
    if likely < 0.25:
        return Stall("none", likely, None, None, None)
    begins, ends, at = begins[lasting], ends[lasting], at[lasting]
    phase = "over" if wrapped else _phase(begins, ends, now_h)
    return Stall(phase, likely, _band(begins), _band(ends - begins), _band(at))


def _spells(core: Array, step_s: Seconds) -> tuple[Array, Array, Array]:
    """First and last slow hour of each member, and its core when it begins. [h, h, °C]"""
    reach = max(1, round(900.0 / step_s))
    slope = np.zeros_like(core)
    slope[reach:-reach] = (core[2 * reach :] - core[: -2 * reach]) / (2 * reach * step_s / 3600.0)
    slow = (slope < SLOW_K_H) & (core > LOW_C) & (core < HIGH_C)
    slow[:reach] = slow[-reach:] = False
    first = slow.argmax(axis=0)
    last = len(core) - 1 - slow[::-1].argmax(axis=0)
    none = ~slow.any(axis=0)
    first[none], last[none] = 0, 0
    hours = step_s / 3600.0
    return first * hours, last * hours, core[first, np.arange(core.shape[1])]


def _phase(begins: Array, ends: Array, now_h: Hours) -> Phase:
    if now_h < float(np.median(begins)):
        return "ahead"
    return "in" if now_h < float(np.median(ends)) else "over"


def _band(values: Array) -> Band:
    low, middle, high = quantiles(values, np.ones(len(values)), (0.1, 0.5, 0.9))
    return Band(float(low), float(middle), float(high))
