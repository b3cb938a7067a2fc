"""The one-dimensional body that stands for a piece of meat.

A flat is a brick. Bricks and short cylinders cool by the product of the solutions of their sides
(Newman's rule; Incropera, section 5.6), so late in the process at the sum of the sides' rates. The
body that stands for a piece keeps the thickness, for the middle is as far from the broad faces as ever, and
takes so much more heat through them that it fades at the rate of the brick: at small Bi by the surface
over the volume, at large Bi by less, as it should.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import pi, sqrt, tan
from typing import Final

from core.heat.conduction import Geometry, bessel, roots
from core.heat.properties import meat
from core.meat.piece import Piece, Shape
from core.units import Kilograms, Metres, WattsPerMetreKelvin, WattsPerSquareMetreKelvin

WIDTH_TO_LENGTH: Final = 0.58  # of a trimmed flat, 190 x 330 mm; judgement
# The root past which more film hardly helps: a piece that fades faster by its sides is taken as a thinner one.
STEEPEST: Final[dict[Geometry, float]] = {"slab": 1.25, "cylinder": 1.9}
MIDDLE_C: Final = 60.0  # properties are taken at the middle of the cook


@dataclass(frozen=True)
class Body:
    """The body that stands for a piece.

    `length` is its half thickness or radius [m]; `gather` the heat that enters by all sides for each unit
    through the broad faces [-]; `area` the surface of the broad faces for a kilogram of meat [m2/kg].
    """

    geometry: Geometry
    length: Metres
    gather: float
    area: float


@lru_cache(maxsize=64)
def body(piece: Piece, film: WattsPerSquareMetreKelvin) -> Body:
    """The body that stands for the piece where heat passes its surface with that coefficient.

    Parameters
    ----------
    film
        Coefficient of the whole surface, radiation and evaporation included. [W/m2 K]
    """
    heat = meat(piece.cut.composition, MIDDLE_C)
    half = piece.thickness / 2
    geometry: Geometry = "cylinder" if piece.cut.shape is Shape.CYLINDER else "slab"
    ends = sum(_rate("slab", side, film, heat.conductivity) for side in _sides(piece, heat.density))
    pace = sqrt(_rate(geometry, half, film, heat.conductivity) + ends)
    length = min(half, STEEPEST[geometry] / pace)
    gather = _film(geometry, length, pace, heat.conductivity) / film
    faces = 2.0 if geometry == "cylinder" else 1.0
    return Body(geometry, length, gather, faces / (length * heat.density))


def brick_sides(mass: Kilograms, thickness: Metres, density: float) -> tuple[Metres, Metres]:
    """Width and length of a flat of that mass and thickness. [m]"""
    spread = mass / density / thickness
    length = sqrt(spread / WIDTH_TO_LENGTH)
    return WIDTH_TO_LENGTH * length, length


def _sides(piece: Piece, density: float) -> tuple[Metres, ...]:
    """Half of each further side, not under half the thickness: the thickest part is the thickest. [m]"""
    half = piece.thickness / 2
    if piece.cut.shape is Shape.CYLINDER:
        return (max(half, piece.mass / density / (pi * half**2) / 2),)
    width, length = brick_sides(piece.mass, piece.thickness, density)
    return max(half, width / 2), max(half, length / 2)


def _rate(geometry: Geometry, length: Metres, film: float, conductivity: WattsPerMetreKelvin) -> float:
    """The slowest rate of fading over the diffusivity: zeta1 squared over L squared. [1/m2]"""
    return (roots(geometry, film * length / conductivity, 1)[0] / length) ** 2


def _film(
    geometry: Geometry, length: Metres, pace: float, conductivity: WattsPerMetreKelvin
) -> WattsPerSquareMetreKelvin:
    """The coefficient at which the broad faces alone fade at `pace` squared: the characteristic equation backwards."""
    z = length * pace
    biot = z * tan(z) if geometry == "slab" else z * bessel(1, z) / bessel(0, z)
    return biot * conductivity / length
