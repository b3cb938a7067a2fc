"""What a slice and a taste teach: this person's own diffusivity, by Bayes, and their own salt.

A slice shows how far the pink came. On a grid of ln(D / default D) the model says how far it should have come. The
spread of the piece, of its thickness and of the threshold is taken into account, so one slice moves the default and
does not replace it.

`Learned.diffusivity_log_sd` is the spread of the next piece: what is unknown of the person, and PIECE_LOG_SD by which
pieces of one person differ and which no number of slices removes.
"""

from dataclasses import replace
from math import hypot, sqrt
from statistics import NormalDist
from typing import Final

import numpy as np

from core.cure.course import Immersion, Way, way
from core.cure.diffusion import CELLS, Array
from core.cure.diffusivity import LOSS_LOG_SD, nitrite_loss, tissue
from core.cure.penetration import PINK_LOG_SD, normal_cdf
from core.cure.profile import profile
from core.errors import OutOfRange
from core.person import Learned
from core.units import SECONDS_PER_DAY, Days, Fraction, Metres

PIECE_LOG_SD: Final = 0.15  # judgement: half of the published spread is between animals and muscles of one kind
RULER: Final[Metres] = 0.003  # how well the edge of the pink is seen; judgement
GREY_THROUGH: Final = 0.97  # grey to the rim is no slow cure but none at all: nothing to learn from
SALT_STEP: Final[Fraction] = 0.0025  # common practice: change salt by a quarter of a per cent at a time
SALT_FURTHEST: Final[Fraction] = 0.0075
GRID: Final = 41
REACH: Final = 4.0  # standard deviations each way
NUISANCE: Final = 5


def from_slice(learned: Learned, immersion: Immersion, days: Days, grey: Metres, of: Metres | None = None) -> Learned:
    """What a slice says of the diffusivity.

    Parameters
    ----------
    learned
        What was known of this person.
    immersion
        The piece and its cure as they were; its own log shift and log sd are not looked at.
    days
        Days that it was in the cure. [d] > 0
    grey
        Width of the grey in the middle (or at the sealed face), 0 when it is pink all through. [m]
    of
        Thickness of the slice that it was seen in; cooked meat has shrunk. None: the thickness before. [m]

    Returns
    -------
    The same with `diffusivity_log_shift` and `diffusivity_log_sd` updated. `batches` is left to the caller.
    Unchanged for an injected piece and for one that is grey to the rim.

    Raises
    ------
    OutOfRange
        The grey is wider than the slice, or the days are none.
    """
    thickness = immersion.piece.thickness if of is None else of
    _check(days, grey, thickness)
    along = way(immersion)
    seen = grey / thickness
    if along.layer is not None or seen >= GREY_THROUGH:
        return learned
    person_sd = sqrt(max(learned.diffusivity_log_sd**2 - PIECE_LOG_SD**2, 1e-6))
    deviates = np.linspace(-REACH, REACH, GRID)
    grid = learned.diffusivity_log_shift + person_sd * deviates
    weight = np.exp(-0.5 * deviates**2) * _likelihood(immersion, along, days, seen, RULER / thickness, grid)
    weight /= weight.sum()
    shift = float(weight @ grid)
    spread = sqrt(float(weight @ (grid - shift) ** 2))
    return replace(learned, diffusivity_log_shift=shift, diffusivity_log_sd=hypot(spread, PIECE_LOG_SD))


def from_taste(learned: Learned, salt: int) -> Learned:
    """What a taste says of the salt: -1 bland, 0 right, +1 too salty. Moves the wanted salt by a step."""
    moved = learned.salt_shift - SALT_STEP * salt
    return replace(learned, salt_shift=min(max(moved, -SALT_FURTHEST), SALT_FURTHEST))


def _likelihood(immersion: Immersion, along: Way, days: Days, seen: Fraction, ruler: Fraction, grid: Array) -> Array:
    """How likely the slice is at each point of the grid, averaged over pieces that differ.

    The front stands where the nitrite equals the threshold; its density is that of the threshold times the slope of
    ln c. Pink all through says only that the middle is above the threshold.
    """
    spread = hypot(PIECE_LOG_SD, tissue(immersion.piece.cut.species).extra_log_sd, 2.0 * along.length_log_sd)
    paces = (grid[:, None] + spread * _deviates()).ravel()
    level = np.log(np.maximum(profile(immersion, along, days, paces), 1e-9) / immersion.piece.cut.pink_from)
    loss = nitrite_loss(immersion.fridge_c) * days * SECONDS_PER_DAY * LOSS_LOG_SD
    sd = hypot(PINK_LOG_SD, loss)
    if seen == 0.0:
        chance = normal_cdf((1.125 * level[:, 0] - 0.125 * level[:, 1]) / sd)
    else:
        here, slope = _at(level, seen)
        width = np.hypot(sd, slope * ruler)
        chance = slope * np.exp(-0.5 * (here / width) ** 2) / width
    return np.asarray(chance.reshape(grid.size, NUISANCE).mean(axis=1))


def _at(level: Array, place: Fraction) -> tuple[Array, Array]:
    """ln c and its slope at a place between the middle (0) and the surface (1)."""
    cell = min(max(int(place * CELLS - 0.5), 1), CELLS - 3)
    part = place * CELLS - 0.5 - cell
    here = level[:, cell] + part * (level[:, cell + 1] - level[:, cell])
    slope = (level[:, cell + 2] - level[:, cell - 1]) * CELLS / 3.0
    return here, np.maximum(slope, 1e-6)


def _deviates() -> Array:
    """Normal deviates in the middle of equal shares."""
    return np.array([NormalDist().inv_cdf((i + 0.5) / NUISANCE) for i in range(NUISANCE)])


def _check(days: Days, grey: Metres, of: Metres) -> None:
    ranges = (
        ("days in the cure", days, 0.01, 366.0, "d"),
        ("slice", of, 0.005, 0.25, "m"),
        ("grey", grey, 0.0, of, "m"),
    )
    for name, value, low, high, unit in ranges:
        if not low <= value <= high:
            raise OutOfRange(name, value, low, high, unit)
