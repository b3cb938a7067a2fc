"""What the readings teach: the members' parameters are moved until their cores pass through them.

An ensemble square-root smoother (Bishop, Etherton and Majumdar 2001, Monthly Weather Review 129:420; the
transform taken symmetric), applied twice with doubled error variance each time (multiple data
assimilation, Emerick and Reynolds 2013, Computers & Geosciences 55:3), since the model bends. No random
numbers: the same readings give the same answer.

The error of a reading is the thermometer's and the model's. The model's error hangs together over
hours, or a handful of readings would make the band too narrow.
"""

from dataclasses import replace
from functools import lru_cache
from typing import Final

import numpy as np

from core.heat.band import Array
from core.heat.cook import Cook, History, Seen
from core.heat.pit import course
from core.heat.prior import members, points
from core.heat.smoking import Change, simulate, wrappings

STEP_S: Final = 300.0
ROUNDS: Final = 2
ROOT_3: Final = 3.0**0.5
MOST: Final = 16  # readings that are used; more are thinned evenly, the last one kept
READING_SD: Final = 0.8  # thermometer and placement. [K] judgement
MODEL_SD: Final = 3.8  # of the model about a real cook. [K] TUNED for the coverage of the band on simulated cooks
MODEL_HOURS_S: Final = 4 * 3600.0  # how long that error keeps its sign. [s] TUNED like it


def fitted(cook: Cook, history: History) -> Array:
    """The members' points after the readings of the core. [parameters x members]

    The time that has passed since the last reading changes nothing here, so it is left out of what is remembered.
    """
    return _fitted(cook, replace(history, now_s=None)) if history.of("core") else points()


@lru_cache(maxsize=64)
def _fitted(cook: Cook, history: History) -> Array:
    z, readings = points(), used(history)
    for _ in range(ROUNDS):
        z = _moved(z, _predicted(cook, history, z, readings), readings)
    z.flags.writeable = False
    return z


def used(history: History) -> tuple[Seen, ...]:
    """The readings of the core that the fit takes: all, or evenly some of them."""
    readings = history.of("core")
    if len(readings) <= MOST:
        return readings
    chosen = np.unique(np.linspace(0, len(readings) - 1, MOST).round().astype(int))
    return tuple(readings[i] for i in chosen)


def _predicted(cook: Cook, history: History, z: Array, readings: tuple[Seen, ...]) -> Array:
    seconds = np.array([r.seconds for r in readings])
    pit = course(cook, history, STEP_S, int(seconds[-1] // STEP_S) + 3)
    changes: list[Change] = [*wrappings(history, STEP_S, slice(None))]
    return simulate(members(cook, z), pit, changes).at(seconds)


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


def discrepancy(seconds: Array, readings: tuple[Seen, ...]) -> Array:
    """What the misses of the readings say of the model's error at other times: its conditional mean (kriging).

    Weights of the misses. [times x readings]
    """
    at = np.array([r.seconds for r in readings])
    weights: Array = np.linalg.solve(_error(at), _together(at, seconds)).T.astype(np.float64)
    return weights


def _error(seconds: Array) -> Array:
    return _together(seconds, seconds) + READING_SD**2 * np.eye(len(seconds))


def _together(one: Array, other: Array) -> Array:
    """Covariance of the model's error between times: smooth over hours (Matern 3/2). [K2]"""
    apart: Array = np.abs(one[:, None] - other[None, :]) * (ROOT_3 / MODEL_HOURS_S)
    return MODEL_SD**2 * (1.0 + apart) * np.exp(-apart)
