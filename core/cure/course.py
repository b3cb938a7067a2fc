"""The course of a cure over the days for an ensemble of pieces: what reaches the middle, and how sure that is.

The ensemble is not drawn but laid out (a rank-1 lattice), so the same input gives the same output. Its members differ
in how fast they cure (diffusivity and thickness together) and in how fast they use up nitrite.
"""

from dataclasses import dataclass, replace
from functools import lru_cache
from math import exp, hypot
from statistics import NormalDist
from typing import Final

import numpy as np

from core.cure import diffusion
from core.cure.afterwards import SOAK_WATER, Stages, even_left, mean, middle, seen
from core.cure.contents import Contents
from core.cure.diffusion import CELLS, Array, Field, Modes, modes
from core.cure.diffusivity import COLOUR_SET_C, LOSS_LOG_SD, mean_warming, nitrite_loss, tissue, warming
from core.errors import OutOfRange
from core.meat.piece import Piece, Shape
from core.units import (
    SECONDS_PER_DAY,
    SECONDS_PER_HOUR,
    Celsius,
    Fraction,
    Hours,
    Kilograms,
    Metres,
    MilligramsPerKilogram,
    Seconds,
)

MEMBERS: Final = 233  # neighbouring Fibonacci numbers make a good lattice; days are within 0.1 % of 987 members
LATTICE_STEP: Final = 144
SOLUTE_WATER: Final = 0.98  # share of the meat's water that salt can enter, judgement +-7 %
LASTING_MODES: Final = 24
NEEDLE_SPACING: Final[Metres] = 0.025
NEEDLE_LOG_SD: Final = 0.25  # pockets are uneven; judgement
HEATING_UP: Final[Hours] = 3.5  # to 65 °C in the middle of a flat in a cooker at 121 °C


@dataclass(frozen=True)
class Immersion:
    """A piece in its cure.

    `dose` is what was weighed out or put in. `diffusivity_log_shift` and `diffusivity_log_sd` are what the person's
    own slices say of ln(D / default D). `cook_hours` is the way up to 65 °C in the middle, during which nitrite goes
    on moving; `soak_hours` in fresh water and then `rest_hours` sealed, in the fridge, come between cure and fire.
    """

    piece: Piece
    dose: Contents
    fridge_c: Celsius = 3.0
    diffusivity_log_shift: float = 0.0
    diffusivity_log_sd: float = 0.35
    cook_hours: Hours = HEATING_UP
    soak_hours: Hours = 0.0
    rest_hours: Hours = 0.0


@dataclass(frozen=True)
class Way:
    """The way in: the shape that is solved, its length, the outside, and what the middle tends to.

    `length` is from the surface to the middle [m]; `bath_ratio` Crank's alpha, 0 for a sealed dose; `layer` the share
    of the length that an injected pickle fills, None for a dose at the surface. `nitrite` [mg/kg of meat] and `salt`
    [-] are those at rest; `salt_mean` counts salt that was rubbed on an injected piece too. `within` is what needles
    have put into all of a piece that lies in a cover brine, relative to rest. [-]
    """

    shape: Shape
    length: Metres
    length_log_sd: float
    bath_ratio: float
    layer: Fraction | None
    nitrite: MilligramsPerKilogram
    salt: Fraction
    salt_mean: Fraction
    within: Fraction = 0.0

    def start(self, members: int) -> Field:
        """What lies where when the cure begins, relative to what it tends to."""
        if self.bath_ratio > 0.0:
            return diffusion.in_brine(members, self.bath_ratio, self.within)
        if self.layer is None:
            return diffusion.at_surface(self.shape, members)
        return diffusion.in_layer(self.shape, members, self.layer)


@dataclass(frozen=True, eq=False)
class Ensemble:
    """The members: `pace` is D / L² at the fridge's temperature, `loss` the rate of using up nitrite. [s⁻¹]"""

    pace: Array
    loss: Array


@dataclass(frozen=True, eq=False)
class Course:
    """What the middle holds after each of `days`, one row a day, one column a member.

    `nitrite` is what is left of it after soak, rest and cook [mg/kg]; `ingoing` what has come in, nothing used up, as
    it comes out of the cure [mg/kg]; `salt_centre` and `salt_mean` are those of the raw meat, soaked and rested [-].
    """

    days: Array
    nitrite: Array
    ingoing: Array
    salt_centre: Array
    salt_mean: Array


def way(immersion: Immersion) -> Way:
    """The way in, by method, cut and faces."""
    piece, dose = immersion.piece, immersion.dose
    shape, length = inwards(piece)
    if dose.covered:
        return _covered(immersion, shape, length)
    if dose.method == "inject":
        return _injected(dose, length)
    ratio = dose.water_kg / holds(immersion) if dose.method == "brine" else 0.0
    in_meat = 1.0 / (dose.counted_meat_kg * (1.0 + ratio))
    salt = dose.all_salt_kg * in_meat
    return Way(shape, length, piece.thickness_log_sd, ratio, None, dose.nitrite_kg * 1e6 * in_meat, salt, salt)


def inwards(piece: Piece) -> tuple[Shape, Metres]:
    """The shape and the length from the surface to the middle. [m]

    A face under fat or rind is sealed: the whole thickness from one side, four times the time. A cylinder with a
    sealed face is taken as such a slab too, which is slower than the truth.
    """
    if piece.sealed_faces not in (0, 1):
        raise OutOfRange("sealed faces", piece.sealed_faces, 0, 1)
    if piece.sealed_faces == 1:
        return Shape.SLAB, piece.thickness
    return piece.cut.shape, piece.thickness / 2.0


def holds(immersion: Immersion) -> Kilograms:
    """Water of the meat that the solutes share with a bath. [kg]"""
    return immersion.dose.counted_meat_kg * immersion.piece.cut.composition.water * SOLUTE_WATER


def _injected(dose: Contents, length: Metres) -> Way:
    """Between two rows of needles: half their spacing to go, from the pickle that fills its share of the meat."""
    layer = dose.pump_fraction / (1.0 + dose.pump_fraction)
    rubbed = dose.rubbed_salt_kg / (dose.counted_meat_kg + dose.water_kg)
    half = min(NEEDLE_SPACING / 2.0, length)
    salt = dose.salt_fraction
    return Way(Shape.SLAB, half, NEEDLE_LOG_SD, 0.0, layer, dose.ingoing().nitrite, salt - rubbed, salt)


def _covered(immersion: Immersion, shape: Shape, length: Metres) -> Way:
    """From the cover brine as from any, into a piece that already holds what the needles put in.

    The needles' share is taken as even: half their spacing evens out within the two days that no cure goes under.
    """
    dose = immersion.dose
    pumped = dose.pumped_kg / dose.pickle_kg
    inside = dose.water_kg * pumped
    ratio = (dose.water_kg - inside) / (holds(immersion) + inside)
    in_meat = 1.0 / ((dose.counted_meat_kg + inside) * (1.0 + ratio))
    salt = dose.all_salt_kg * in_meat
    nitrite = dose.nitrite_kg * 1e6 * in_meat
    spread = immersion.piece.thickness_log_sd
    return Way(shape, length, spread, ratio, None, nitrite, salt, salt, pumped * (1.0 + ratio))


def ensemble(immersion: Immersion, along: Way) -> Ensemble:
    """The members of an immersion, laid out over ln(D / L²) and over the loss of nitrite."""
    kind = tissue(immersion.piece.cut.species)
    spread = hypot(kind.log_sd(immersion.diffusivity_log_sd), 2.0 * along.length_log_sd)
    diffusivity = kind.diffusivity * warming(immersion.fridge_c) * exp(immersion.diffusivity_log_shift)
    first, second = _lattice()
    return Ensemble(
        diffusivity / along.length**2 * np.exp(spread * first),
        nitrite_loss(immersion.fridge_c) * np.exp(LOSS_LOG_SD * second),
    )


def going_on(immersion: Immersion) -> Seconds:
    """Rest and cook, as seconds in the fridge that would move the solutes as far. [s]

    Heating evenly to 65 °C for 3.5 h counts as 0.42 day at 3 °C.
    """
    cook = mean_warming(immersion.fridge_c, COLOUR_SET_C) / warming(immersion.fridge_c)
    return (immersion.rest_hours + immersion.cook_hours * cook) * SECONDS_PER_HOUR


def course(immersion: Immersion, days: Array) -> Course:
    """The course of an immersion.

    Parameters
    ----------
    immersion
        The piece in its cure.
    days
        Ascending times since it went in. [d] > 0
    """
    along = way(immersion)
    members = ensemble(immersion, along)
    seconds = days * SECONDS_PER_DAY
    own = modes(along.shape, along.bath_ratio).gentle(float(members.pace.min() * seconds[0]))
    weights = (own.centre(), *_onward(own, immersion, along, members))
    waiting = (immersion.rest_hours + immersion.soak_hours) * SECONDS_PER_HOUR
    arrived, centre, average, left = _march(own, along, members, seconds, weights)
    return Course(
        days=days,
        nitrite=left * np.exp(-members.loss * waiting) * along.nitrite,
        ingoing=arrived * along.nitrite,
        salt_centre=centre * along.salt,
        salt_mean=average * along.salt_mean * _rim_left(immersion, along, members),
    )


def after_cure(immersion: Immersion, along: Way, alone: Seconds) -> Stages:
    """Soak and what follows it; an injected piece gives nothing off between its needles. [s]"""
    soak = immersion.soak_hours * SECONDS_PER_HOUR if along.layer is None else 0.0
    ratio = SOAK_WATER * immersion.dose.counted_meat_kg / holds(immersion) if soak else 0.0
    return Stages(along.shape, alone, soak, ratio)


def _rim_left(immersion: Immersion, along: Way, members: Ensemble) -> Array | float:
    """Share of its mean salt that a soak leaves an injected piece, which gives it off by its own faces alone. [-]"""
    if along.layer is None or immersion.soak_hours == 0.0:
        return 1.0
    shape, length = inwards(immersion.piece)
    spent = members.pace * (along.length / length) ** 2 * immersion.soak_hours * SECONDS_PER_HOUR
    return even_left(shape, SOAK_WATER * immersion.dose.counted_meat_kg / holds(immersion), spent)


def _onward(own: Modes, immersion: Immersion, along: Way, members: Ensemble) -> tuple[Array, Array, Array]:
    """What salt in the middle, salt in the mean and nitrite in the cooked middle hold of each mode in the end."""
    raw = after_cure(immersion, along, immersion.rest_hours * SECONDS_PER_HOUR)
    cooked = replace(raw, alone=going_on(immersion))
    salt = (middle(own, raw, members.pace), mean(own, raw, members.pace))
    return (*salt, middle(own, cooked, members.pace))


def _march(
    own: Modes, along: Way, members: Ensemble, seconds: Array, weights: tuple[Array, Array, Array, Array]
) -> tuple[Array, ...]:
    """What each weight sees of the modes, relative to rest, one row a time: the last with loss, the others without.

    The modes step from time to time. Those that have died are left behind on the way, but for LASTING_MODES that the
    loss keeps alive where meat meets bath.
    """
    start = along.start(1)
    cells = start.cells[0] if start.bath is None else np.append(start.cells[0], start.bath[0])
    free = lossy = np.tile(own.inward @ cells, (MEMBERS, 1))
    slowest, rows = float(members.pace.min()), []
    for moment, step in zip(seconds, np.diff(seconds, prepend=0.0), strict=True):
        own = own.gentle(slowest * moment, LASTING_MODES)
        alive = own.rates.size  # rates ascend, so the gentle ones come first
        exponent = np.outer(members.pace * step, own.rates) + (members.loss * step)[:, None]
        decay = np.exp(-exponent)
        free = free[:, :alive] * decay * np.exp(members.loss * step)[:, None]
        lossy = _lose(own, lossy[:, :alive], members.loss * step, exponent, decay)
        rows.append((*(seen(free, w) for w in weights[:-1]), seen(lossy, weights[-1])))
    return tuple(np.array(rows).transpose(1, 0, 2))


def _lose(own: Modes, amplitudes: Array, lost: Array, exponent: Array, decay: Array) -> Array:
    """One step of the modes with nitrite used up in the meat and not in the bath.

    With y the amplitudes, u = o y the bath and i the way from the bath into the modes,

        dy/dt = -(pace rate + k) y + k i u(t)

    which is solved exactly for a bath that runs evenly over the step (exponential trapezium). The new u stands on both
    sides and is one number a member.

    Parameters
    ----------
    lost
        k times the step, for each member. [-]
    exponent, decay
        (pace rate + k) times the step, for each member and mode, and e to the minus that. [-]
    """
    if own.bath_ratio == 0.0:
        return np.asarray(amplitudes * decay)
    into, out = own.inward[:, CELLS], own.bath
    whole = (1.0 - decay) / exponent
    late = (1.0 - whole) / exponent
    feed = lost[:, None] * into
    known = amplitudes * decay + (amplitudes @ out)[:, None] * feed * (whole - late)
    feed = feed * late
    bath = (known @ out) / (1.0 - feed @ out)
    return np.asarray(known + bath[:, None] * feed)


@lru_cache(maxsize=1)
def _lattice() -> tuple[Array, Array]:
    """A rank-1 lattice in two dimensions, as normal deviates."""
    normal = NormalDist()
    first = [(i + 0.5) / MEMBERS for i in range(MEMBERS)]
    second = [(i * LATTICE_STEP % MEMBERS + 0.5) / MEMBERS for i in range(MEMBERS)]
    return np.array([normal.inv_cdf(p) for p in first]), np.array([normal.inv_cdf(p) for p in second])
