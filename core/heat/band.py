"""A band: the 10 %, 50 % and 90 % points of an estimate, taken from members that carry weights."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]

POINTS = (0.1, 0.5, 0.9)


@dataclass(frozen=True)
class Band:
    """An estimate as its 10 %, 50 % and 90 % points, in the unit that the field which holds it names."""

    p10: float
    p50: float
    p90: float


def band(values: Array, weights: Array) -> Band:
    """The band of one number per member. The weights need not sum to one."""
    p10, p50, p90 = quantiles(values, weights, POINTS)
    return Band(float(p10), float(p50), float(p90))


def quantiles(values: Array, weights: Array, points: tuple[float, ...]) -> Array:
    """Weighted quantiles of one number per member.

    A member stands at the middle of its own weight (Hazen's plotting position); between two members the
    quantile is drawn straight. A quantile that falls among members at infinity is infinite.
    """
    order = np.argsort(values)
    ordered = values[order]
    share = weights[order]
    middle = (np.cumsum(share) - 0.5 * share) / share.sum()
    return np.array([_between(p, middle, ordered) for p in points])


def _between(point: float, middle: Array, ordered: Array) -> float:
    right = int(np.searchsorted(middle, point))
    if right == 0 or right == len(ordered):
        return float(ordered[min(right, len(ordered) - 1)])
    low, high = float(ordered[right - 1]), float(ordered[right])
    if low == high or np.isinf(high):
        return high
    part = (point - middle[right - 1]) / (middle[right] - middle[right - 1])
    return low + float(part) * (high - low)


def quantile_rows(rows: Array, weights: Array, points: tuple[float, ...]) -> Array:
    """Weighted quantiles of each row of a table (rows x members): one line a point. [points x rows]"""
    order = np.argsort(rows, axis=1)
    ordered = np.take_along_axis(rows, order, axis=1)
    share = weights[order]
    middle = (np.cumsum(share, axis=1) - 0.5 * share) / share.sum(axis=1, keepdims=True)
    return np.array([_rowwise(p, middle, ordered) for p in points])


def _rowwise(point: float, middle: Array, ordered: Array) -> Array:
    right = np.clip((middle < point).sum(axis=1), 1, middle.shape[1] - 1)
    row = np.arange(len(middle))
    left, above = middle[row, right - 1], middle[row, right]
    part = np.clip((point - left) / (above - left), 0.0, 1.0)
    low, high = ordered[row, right - 1], ordered[row, right]
    line: Array = low + part * (high - low)
    return line
