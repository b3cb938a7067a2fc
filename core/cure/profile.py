"""Nitrite across a piece once it is cured and cooked, and how far in from a face it will be pink.

What a slice would show: the front stands where the nitrite that is left equals what turns the species pink.
"""

from statistics import NormalDist

import numpy as np

from core.cure import diffusion
from core.cure.course import Immersion, Way, after_cure, going_on, way
from core.cure.diffusion import CELLS, Array, Field, Stage
from core.cure.diffusivity import nitrite_loss, tissue, warming
from core.units import SECONDS_PER_DAY, Days, Metres

MEMBERS = 48


def profile(immersion: Immersion, along: Way, days: Days, shifts: Array) -> Array:
    """Nitrite from the middle outwards after cure and cook, one row a shift of ln D. [mg/kg]

    Parameters
    ----------
    along
        The way in, as `course.way` says it.
    days
        Days in the cure. [d] > 0
    shifts
        Shifts of ln(D / L²) from the default of the tissue. [-]
    """
    kind = tissue(immersion.piece.cut.species)
    pace = kind.diffusivity * warming(immersion.fridge_c) / along.length**2 * np.exp(shifts)
    seconds = days * SECONDS_PER_DAY
    loss = np.full(shifts.size, nitrite_loss(immersion.fridge_c) * seconds)
    cured = diffusion.run(along.shape, along.start(shifts.size), Stage(pace * seconds, along.bath_ratio, loss=loss))
    if immersion.soak_hours > 0.0:
        water = after_cure(immersion, along, 0.0)
        cured = diffusion.run(along.shape, Field(cured.cells), Stage(pace * water.soak, water.ratio, bath=0.0))
    cooked = diffusion.run(along.shape, cured, Stage(pace * going_on(immersion)))
    return np.asarray(cooked.cells * along.nitrite)


def front(immersion: Immersion, days: Days) -> tuple[Metres, Metres, Metres]:
    """How far in from a face it is pink: the 10, 50 and 90 % points, at most to the middle. [m]

    The spread is that of the person's diffusivity and of the piece's thickness.
    """
    along = way(immersion)
    if along.layer is not None or days <= 0.0:
        depth = immersion.piece.thickness / 2.0 if days > 0.0 else 0.0
        return depth, depth, depth
    known = tissue(immersion.piece.cut.species).log_sd(immersion.diffusivity_log_sd)
    spread = float(np.hypot(known, 2.0 * along.length_log_sd))
    deviates = np.array([NormalDist().inv_cdf((i + 0.5) / MEMBERS) for i in range(MEMBERS)])
    rows = profile(immersion, along, days, immersion.diffusivity_log_shift + spread * deviates)
    pink = (rows >= immersion.piece.cut.pink_from).sum(axis=1) / CELLS * along.length
    low, middle, high = np.quantile(pink, (0.1, 0.5, 0.9))
    return float(low), float(middle), float(high)
