"""The temperature of the pit over a cook: read, set, or expected, with its uncertainty."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from core.heat.band import Array
from core.heat.cook import Cook, History, Seen
from core.heat.cooker import cooker
from core.units import Celsius, Seconds

MEMORY_S: Final = 2 * 3600.0  # pit readings of the last hours tell how well it holds. Judgement
TRUST: Final = 0.6  # share of the recent deviation that is expected to last. Judgement
NEAR_S: Final = 1800.0  # a reading vouches for the pit this long. Judgement
READ_SD: Final = 0.25  # share of the swing that is left where the pit was read


@dataclass(frozen=True, eq=False)
class Course:
    """The pit at each step: `celsius`, and the standard deviation of the whole course about it. [°C, K]"""

    step_s: Seconds
    celsius: Array
    spread: Array


def course(cook: Cook, history: History, step_s: Seconds, count: int) -> Course:
    """The pit from the time the meat goes on: between readings straight, after them towards the set point."""
    times = step_s * np.arange(count, dtype=np.float64)
    set_c = _set_points(cook, history, times)
    readings = _of_a_shut_lid(cook, history)
    if not readings:
        return Course(step_s, set_c, np.full(count, cooker(cook.cooker).pit_swing_sd))
    at = np.array([r.seconds for r in readings])
    off = np.array([r.celsius for r in readings]) - np.interp(at, times, set_c)
    deviation = np.interp(times, at, off)
    lasting = _lasting(at, off)
    after = times > at[-1]
    fade = np.exp(-(times[after] - at[-1]) / NEAR_S)
    deviation[after] = lasting + (off[-1] - lasting) * fade
    near = np.exp(-np.abs(times[:, None] - at[None, :]).min(axis=1) / (2 * NEAR_S))
    swing = cooker(cook.cooker).pit_swing_sd * (1.0 - (1.0 - READ_SD) * near)
    return Course(step_s, set_c + deviation, swing)


def _of_a_shut_lid(cook: Cook, history: History) -> tuple[Seen, ...]:
    """The pit readings but those taken while it came back from an opened lid: they tell of the lid, not of the fire."""
    back = 60.0 * cooker(cook.cooker).wait_minutes.high
    return tuple(r for r in history.of("pit") if not any(0.0 <= r.seconds - lid < back for lid in history.lids))


def _lasting(at: Array, off: Array) -> float:
    recent = np.exp(-(at[-1] - at) / MEMORY_S)
    return TRUST * float((recent * off).sum() / recent.sum())


def _set_points(cook: Cook, history: History, times: Array) -> Array:
    celsius = np.full(len(times), cook.pit_c)
    for moved in sorted(history.pit_sets, key=lambda p: p.seconds):
        celsius[times >= moved.seconds] = moved.celsius
    return celsius


def set_point(cook: Cook, history: History) -> Celsius:
    """The set point that stands at the end of the history. [°C]"""
    moved = max(history.pit_sets, key=lambda p: p.seconds, default=None)
    return moved.celsius if moved else cook.pit_c
