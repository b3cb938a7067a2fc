"""A piece of meat, as the cure and the heat need to know it.

The thickness decides the days and the hours; when nobody has measured it, it is estimated from the
mass of the cut with a wide band, and the plan says so.
"""

from dataclasses import dataclass
from enum import StrEnum
from math import exp

from core.errors import OutOfRange
from core.units import Fraction, Kilograms, Metres, MilligramsPerKilogram

MEASURED_LOG_SD = 0.05  # a ruler on soft meat; judgement
Z90 = 1.2815515655446004  # 90 % point of the normal distribution


class Species(StrEnum):
    """The animal, which decides the lethality table and the pigment to be cured."""

    BEEF = "beef"
    PORK = "pork"
    TURKEY = "turkey"
    CHICKEN = "chicken"
    DUCK = "duck"
    FISH = "fish"


class Shape(StrEnum):
    """The shape that stands for the piece in a one-dimensional computation."""

    SLAB = "slab"
    CYLINDER = "cylinder"


@dataclass(frozen=True)
class Composition:
    """Mass fractions of the raw cut. [-] They sum to 1 within rounding of the printed table."""

    water: Fraction
    protein: Fraction
    fat: Fraction
    ash: Fraction


@dataclass(frozen=True)
class Cut:
    """What is known of a cut before anybody measures it.

    Thickness in metres is `thickness_scale` x mass[kg]^(1/3): pieces of one cut are roughly alike in
    shape. `thickness_log_sd` is the standard deviation of its logarithm. `pink_from` is the nitrite at
    which the pigment of this species turns pink when cooked [mg/kg]. `portion` says that one piece is what one eats,
    so that more weight is more pieces.
    """

    name: str
    species: Species
    shape: Shape
    composition: Composition
    thickness_scale: float
    thickness_log_sd: float
    mass_low: Kilograms
    mass_high: Kilograms
    pink_from: MilligramsPerKilogram
    composition_source: str
    thickness_source: str
    portion: bool = False


@dataclass(frozen=True)
class Piece:
    """One piece of a cut.

    `thickness` is the thickest part [m]; `thickness_log_sd` the standard deviation of its logarithm.
    `sealed_faces` counts broad faces under fat or rind that salt hardly passes: 0 or 1. `intact` is
    false once it was injected, pierced, rolled or minced.
    """

    cut: Cut
    mass: Kilograms
    thickness: Metres
    thickness_log_sd: float
    measured: bool
    sealed_faces: int = 0
    skin_on: bool = False
    intact: bool = True

    @property
    def thickness_low(self) -> Metres:
        """10 % point of the thickness. [m]"""
        return self.thickness * exp(-Z90 * self.thickness_log_sd)

    @property
    def thickness_high(self) -> Metres:
        """90 % point of the thickness. [m]"""
        return self.thickness * exp(Z90 * self.thickness_log_sd)


def piece(
    cut: Cut,
    mass: Kilograms,
    thickness: Metres | None = None,
    *,
    sealed_faces: int = 0,
    skin_on: bool = False,
    intact: bool = True,
) -> Piece:
    """A piece of `cut`, its thickness measured or estimated from its mass.

    Parameters
    ----------
    cut
        The cut.
    mass
        Trimmed green mass. [kg] within the range of the cut
    thickness
        Thickest part as measured, or None to estimate it. [m] 5 mm to 250 mm

    Raises
    ------
    OutOfRange
        The mass is not one that this cut can have, or the thickness is not one that meat can have.
    """
    if not cut.mass_low <= mass <= cut.mass_high:
        raise OutOfRange("mass", mass, cut.mass_low, cut.mass_high, "kg", cut.name)
    if thickness is None:
        estimate = cut.thickness_scale * mass ** (1 / 3)
        return Piece(cut, mass, estimate, cut.thickness_log_sd, False, sealed_faces, skin_on, intact)
    if not 0.005 <= thickness <= 0.25:
        raise OutOfRange("thickness", thickness, 0.005, 0.25, "m")
    return Piece(cut, mass, thickness, MEASURED_LOG_SD, True, sealed_faces, skin_on, intact)
