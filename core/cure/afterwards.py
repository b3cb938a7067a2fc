"""Out of the cure: a soak in fresh water, a rest sealed in the fridge, the cook. What each leaves of what came in.

Each stage is linear, so what the middle (or the mean) holds in the end is a weight for each mode of the cure. The
weights are carried back from the end to the cure, stage by stage and member by member: exact, and one sum a day.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np

from core.cure.diffusion import CELLS, Array, Modes, modes
from core.meat.piece import Shape
from core.units import Fraction, Seconds

SOAK_WATER: Final = 2.0  # kg of fresh water for a kg of meat, not changed: common practice


@dataclass(frozen=True)
class Stages:
    """The stages after a cure: `soak` and `alone` in seconds at the pace of the fridge, `ratio` the size of the soak's
    water relative to what the meat holds. Where there is no soak both of its numbers are 0.
    """

    shape: Shape
    alone: Seconds
    soak: Seconds = 0.0
    ratio: Fraction = 0.0

    @property
    def none(self) -> bool:
        """Whether nothing moves any more."""
        return self.alone == 0.0 and self.soak == 0.0


def middle(own: Modes, stages: Stages, pace: Array) -> Array:
    """What the middle holds in the end of each mode of the cure, one row a member; one for all where nothing moves."""
    return own.centre() if stages.none else _weights(own, stages, pace, modes(stages.shape, 0.0).centre())


def mean(own: Modes, stages: Stages, pace: Array) -> Array:
    """The same for the mean of the meat, which only a soak changes."""
    return own.mean() if stages.soak == 0.0 else _weights(own, stages, pace, modes(stages.shape, 0.0).mean())


def seen(amplitudes: Array, weights: Array) -> Array:
    """What amplitudes come to by weights that are alike for all, or one row a member."""
    alive = amplitudes.shape[1]
    if weights.ndim == 1:
        return np.asarray(amplitudes @ weights[:alive])
    return np.asarray(np.einsum("mr,mr->m", amplitudes, weights[:, :alive]))


def even_left(shape: Shape, bath_ratio: float, spent: Array) -> Array:
    """Share of an even content that the meat still holds on average after `spent` (D t / L²) in fresh water. [-]"""
    water = modes(shape, bath_ratio)
    alive = water.gentle(float(spent.min())).rates
    begun = water.inward[: alive.size, :CELLS].sum(axis=1) * water.mean()[: alive.size]
    return np.asarray(np.exp(-np.outer(spent, alive)) @ begun)


def _weights(own: Modes, stages: Stages, pace: Array, wanted: Array) -> Array:
    slowest = float(pace.min())
    alone = modes(stages.shape, 0.0).gentle(slowest * stages.alone)
    row = wanted[: alone.rates.size] * np.exp(-np.outer(pace * stages.alone, alone.rates))
    inward = alone.inward
    if stages.soak > 0.0:
        water = modes(stages.shape, stages.ratio).gentle(slowest * stages.soak)
        row = np.einsum("ma,as->ms", row, np.einsum("ac,cs->as", inward, water.outward[:CELLS]))
        row = row * np.exp(-np.outer(pace * stages.soak, water.rates))
        inward = water.inward[:, :CELLS]  # the water starts empty
    across = np.einsum("ac,cr->ar", inward, own.outward[:CELLS])  # einsum: too small to wake threads for
    return np.asarray(np.einsum("ma,ar->mr", row, across))
