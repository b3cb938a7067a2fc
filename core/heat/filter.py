"""What the readings teach: the members' parameters are moved until their cores pass through them.

An ensemble square-root smoother (Bishop, Etherton and Majumdar 2001, Monthly Weather Review 129:420; the
transform taken symmetric), applied twice with doubled error variance each time (multiple data
assimilation, Emerick and Reynolds 2013, Computers & Geosciences 55:3), since the model bends. No random
numbers: the same readings give the same answer.

The error of a reading is the thermometer's and the model's. The model's error hangs together over
hours, or a handful of readings would make the band too narrow.
"""

from typing import Final

import numpy as np

from core.heat.band import Array
from core.heat.cook import Cook, History, Seen
from core.heat.pit import course
from core.heat.prior import members, points
from core.heat.smoking import Change, simulate, wrappings
from core.units import Seconds

STEP_S: Final = 240.0
ROUNDS: Final = 2
MOST: Final = 16  # readings that are used; more are thinned evenly, the last one kept
READING_SD: Final = 1.2  # thermometer and placement. [K] judgement
MODEL_SD: Final = 2.0  # of the model about a real cook. [K] TUNED for the coverage of the band on simulated cooks
MODEL_HOURS_S: Final = 2 * 3600.0  # how long that error keeps its sign. [s] judgement


def fitted(cook: Cook, history: History) -> Array:
    """The members' points after the readings of the core. [parameters x members]"""
    z = points()
    readings = used(history)
    if not readings:
        return z
    for _ in range(ROUNDS):
        z = _moved(z, _predicted(cook, history, z, readings), readings)
    return z


def used(history: History) -> tuple[Seen, ...]:
    """The readings of the core that the fit takes: all, or evenly some of them."""
    readings = history.of("core")
    if len(readings) <= MOST:
        return readings
    chosen = np.unique(np.linspace(0, len(readings) - 1, MOST).round().astype(int))
    return tuple(readings[i] for i in chosen)


def at_times(core: Array, seconds: Array, step_s: Seconds) -> Array:
    """Rows of a run between its steps. [times x members]"""
    where = np.clip(seconds / step_s, 0.0, len(core) - 1.0)
    low = np.minimum(where.astype(int), len(core) - 2)
    part = (where - low)[:, None]
    rows: Array = (1.0 - part) * core[low] + part * core[low + 1]
    return rows


def _predicted(cook: Cook, history: History, z: Array, readings: tuple[Seen, ...]) -> Array:
    seconds = np.array([r.seconds for r in readings])
    pit = course(cook, history, STEP_S, int(seconds[-1] // STEP_S) + 3)
    changes: list[Change] = [*wrappings(history, STEP_S, slice(None))]
    return at_times(simulate(members(cook, z), pit, changes).core, seconds, STEP_S)


def _moved(z: Array, predicted: Array, readings: tuple[Seen, ...]) -> Array:
    seen = np.array([r.celsius for r in readings])
    root = np.linalg.cholesky(ROUNDS * _error(np.array([r.seconds for r in readings])))
    mean = predicted.mean(axis=1)
    count = z.shape[1] - 1
    spread = np.linalg.solve(root, (predicted - mean[:, None]) / np.sqrt(count))
    miss = np.linalg.solve(root, seen - mean)
    left, size, right = np.linalg.svd(spread, full_matrices=False)
    centre = z.mean(axis=1, keepdims=True)
    apart = z - centre
    push = right.T @ (size / (1.0 + size**2) * (left.T @ miss)) / np.sqrt(count)
    shrink = (1.0 / np.sqrt(1.0 + size**2) - 1.0)[:, None] * right
    moved: Array = centre + (apart @ push)[:, None] + apart + (apart @ right.T) @ shrink
    return np.clip(moved, -4.0, 4.0)


def _error(seconds: Array) -> Array:
    apart = np.abs(seconds[:, None] - seconds[None, :])
    model: Array = MODEL_SD**2 * np.exp(-apart / MODEL_HOURS_S)
    return model + READING_SD**2 * np.eye(len(seconds))
