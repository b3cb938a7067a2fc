"""How long to soak in fresh water until the meat is as salty as wanted."""

from dataclasses import dataclass
from math import inf
from typing import Final

import numpy as np

from core.cure import diffusion
from core.cure.course import MEMBERS, Ensemble, Immersion, Way, ensemble, holds, inwards, way
from core.cure.diffusion import Array, Field, Stage, modes
from core.cure.penetration import Quantiles
from core.errors import OutOfRange
from core.meat.piece import Shape
from core.units import SECONDS_PER_DAY, SECONDS_PER_HOUR, Days, Fraction, Hours

LONGEST_SOAK: Final[Hours] = 48.0
STEP: Final[Hours] = 0.25


@dataclass(frozen=True)
class Soak:
    """`hours` until the mean salt of the raw meat is down to what is wanted: 0 where it is already, infinite where
    not within two days. `salt_before` and `salt_lowest` are the mean salt as it goes in and the least that this water
    can bring it to. [-]
    """

    hours: Quantiles
    salt_before: Quantiles
    salt_lowest: Fraction


def soak(immersion: Immersion, days: Days, wanted: Fraction, water_share: float = 2.0) -> Soak:
    """How long to soak after `days` of cure, in the fridge, in water that is not changed.

    Parameters
    ----------
    immersion
        The piece in its cure.
    days
        Days that it was in the cure. [d] > 0
    wanted
        Mean salt wanted in the raw meat. [-] 0 to 0.06
    water_share
        Fresh water for a kg of meat. [kg/kg] 0.2 to 20

    Raises
    ------
    OutOfRange
        A quantity is outside what is named above.
    """
    _check(days, wanted, water_share)
    along = way(immersion)
    members = ensemble(immersion, along)
    inside = _after_cure(immersion, along, members, days)
    shape, length = inwards(immersion.piece)
    pace = members.pace * (along.length / length) ** 2  # an injected piece gives its salt off by its own faces
    ratio = water_share * immersion.dose.counted_meat_kg / holds(immersion)
    hours = np.arange(0.0, LONGEST_SOAK + STEP / 2.0, STEP)
    salt = along.salt_mean * _means(shape, inside, pace, ratio, hours * SECONDS_PER_HOUR)
    reached = salt <= wanted
    needed = np.where(reached.any(axis=0), hours[np.argmax(reached, axis=0)], inf)
    lowest = float(np.median(salt[0])) / (1.0 + ratio)
    return Soak(_quantiles(needed), _quantiles(salt[0]), lowest)


def _after_cure(immersion: Immersion, along: Way, members: Ensemble, days: Days) -> Field:
    """Where the salt lies after the cure; in an injected piece it is taken as even."""
    if along.layer is not None:
        return Field(np.ones((MEMBERS, diffusion.CELLS)))
    stage = Stage(members.pace * days * SECONDS_PER_DAY, along.bath_ratio)
    return diffusion.run(along.shape, along.start(MEMBERS), stage)


def _means(shape: Shape, inside: Field, pace: Array, ratio: float, seconds: Array) -> Array:
    """Mean in the meat after each time in fresh water, one row a time."""
    water = modes(shape, ratio)
    amplitudes = inside.cells @ water.inward[:, : diffusion.CELLS].T  # the water starts empty
    carried = amplitudes * water.mean()
    slowest, rows = float(pace.min()), []
    for t in seconds:
        alive = water.gentle(slowest * t).rates  # they ascend; the rest has died
        rows.append((carried[:, : alive.size] * np.exp(-np.outer(pace * t, alive))).sum(axis=1))
    return np.array(rows)


def _quantiles(members: Array) -> Quantiles:
    low, middle, high = np.quantile(members, (0.1, 0.5, 0.9), method="inverted_cdf")  # no mean of a time and never
    return Quantiles(float(low), float(middle), float(high))


def _check(days: Days, wanted: Fraction, water_share: float) -> None:
    ranges = (
        ("days in the cure", days, 0.01, 366.0, "d"),
        ("salt", wanted, 0.0, 0.06, ""),
        ("water for a kg of meat", water_share, 0.2, 20.0, "kg"),
    )
    for name, value, low, high, unit in ranges:
        if not low <= value <= high:
            raise OutOfRange(name, value, low, high, unit)
