"""What the ready time is held against: a pound's hours, a straight line, and a regression that knows the finer model.

The regression is a floor for what such readings can tell: it has seen hundreds of other cooks of the very model
that draws the trials, each with its readings and its true end, and fits a quadratic ridge to those of them that
are still on the fire at the same hour.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from tests.laws.heat.ready_trial import SHARES, Trial, known

Array = NDArray[np.float64]

POUND_KG = 0.45359237
RULE_H_LB = 1.5  # at 225 to 250 °F; common practice, no source, and mostly told as 1 to 1.5
LOOKS = (0.25, 0.5, 0.75, 1.0)  # shares of the time so far at which the core is looked up
RIDGE = 3.0

Misses = dict[float, float]  # share of the cook: median error as share of its length


def by_the_pound(cooks: Sequence[Trial], hours_lb: float = RULE_H_LB) -> Misses:
    """So many hours a pound, whatever is read."""
    return dict.fromkeys(SHARES, _median(cooks, [hours_lb * t.cook.piece.mass / POUND_KG for t in cooks]))


def best_pound(cooks: Sequence[Trial]) -> float:
    """The hours a pound that fit these very cooks best, which no cook could know. [h/lb]"""
    return float(np.median([t.ready * POUND_KG / t.cook.piece.mass for t in cooks]))


def by_a_line(cooks: Sequence[Trial], shares: Sequence[float] = SHARES) -> Misses:
    """A straight line through the last two readings of the core; never, where it does not rise."""
    return {share: _median(cooks, [_line(t, share) for t in cooks]) for share in shares}


def _line(trial: Trial, share: float) -> float:
    core = known(trial, share).of("core")
    if len(core) < 2 or core[-1].celsius <= core[-2].celsius:
        return np.inf
    pace = (core[-1].celsius - core[-2].celsius) / (core[-1].seconds - core[-2].seconds)
    return (core[-1].seconds + (trial.cook.target_c - core[-1].celsius) / pace) / 3600.0


def by_regression(taught: Sequence[Trial], cooks: Sequence[Trial], shares: Sequence[float] = SHARES) -> Misses:
    """The floor: at each hour fitted anew on the taught cooks that are still on the fire then."""
    return {share: _median(cooks, [_fitted(taught, t, share * t.ready) for t in cooks]) for share in shares}


def _fitted(taught: Sequence[Trial], asked: Trial, hour: float) -> float:
    going = [t for t in taught if t.ready > hour]
    rows = np.array([_features(t, hour) for t in [*going, asked]])
    spread = rows[:-1].std(axis=0)
    rows = _quadratic((rows - rows[:-1].mean(axis=0)) / np.where(spread > 0, spread, 1.0))
    left = np.log([t.ready - hour for t in going])
    square = rows[:-1].T @ rows[:-1] + RIDGE * np.eye(rows.shape[1])
    weights = np.linalg.solve(square, rows[:-1].T @ (left - left.mean()))
    return hour + float(np.exp(left.mean() + rows[-1] @ weights))


def _features(trial: Trial, hour: float) -> Array:
    cook = trial.cook
    seen = [s for s in trial.seen if s.seconds <= hour * 3600.0]
    core = [(0.0, cook.start_c), *((s.seconds, s.celsius) for s in seen if s.probe == "core")]
    pit = [s.celsius for s in seen if s.probe == "pit"] or [cook.pit_c]
    measured = float(cook.piece.measured)
    looks = np.interp([hour * 3600.0 * share for share in LOOKS], *zip(*core, strict=True))
    plain = [cook.piece.mass, measured, measured * cook.piece.thickness, cook.pit_c, cook.target_c]
    return np.array([*plain, float(np.mean(pit)), hour - core[-1][0] / 3600.0, *looks])


def _quadratic(rows: Array) -> Array:
    first, second = np.triu_indices(rows.shape[1])
    return np.hstack([np.ones((len(rows), 1)), rows, rows[:, first] * rows[:, second]])


def _median(cooks: Sequence[Trial], told: Sequence[float]) -> float:
    true = np.array([t.ready for t in cooks])
    return float(np.median(np.abs(np.array(told) - true) / true))
