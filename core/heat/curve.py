"""A curve with its band, for pictures and for the lethality of the low side."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from core.heat.band import Array, quantile_rows
from core.units import Hours

READING_ERROR_K: Final = 1.0  # taken off the low curve: a home thermometer's error
MOST: Final = 120  # points of a curve


@dataclass(frozen=True)
class Curve:
    """Core temperature against the hours. [h, °C]

    `low` is the low side that lethality may be counted on: the 10 % curve less a thermometer's error.
    """

    hours: tuple[Hours, ...]
    p10: tuple[float, ...]
    p50: tuple[float, ...]
    p90: tuple[float, ...]
    low: tuple[float, ...]


def curve(hours: Array, core: Array, weights: Array) -> Curve:
    """The curve of the members (rows are times), thinned to at most 120 points."""
    keep = np.unique(np.linspace(0, len(hours) - 1, min(MOST, len(hours))).round().astype(int))
    p10, p50, p90 = quantile_rows(core[keep], weights, (0.1, 0.5, 0.9))
    return Curve(_floats(hours[keep]), _floats(p10), _floats(p50), _floats(p90), _floats(p10 - READING_ERROR_K))


def _floats(line: Array) -> tuple[float, ...]:
    return tuple(float(x) for x in line)
