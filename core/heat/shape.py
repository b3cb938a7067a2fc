"""The one-dimensional body that stands for a piece of meat.

A flat is a brick, a roll a short cylinder. They heat by the product of the solutions of their sides
(Newman's rule; Incropera, section 5.6), so late in the process at the sum of the sides' rates. The body
that stands for one has two things in common with it: the surface for its volume, so that air and
evaporation reach as much of it; and the slowest rate, at the coefficient of the process, so that heat has
as far to go. At small coefficients it comes out a little thicker than the piece, since heat from the narrow
sides has farther to go; at large ones a little thinner, for the corners help.
"""

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from math import pi, sqrt
from typing import Final

from core.heat.conduction import Geometry, roots
from core.heat.properties import meat
from core.meat.piece import Piece, Shape
from core.units import Kilograms, Metres, WattsPerMetreKelvin, WattsPerSquareMetreKelvin

WIDTH_TO_LENGTH: Final = 0.58  # of a trimmed flat, 190 x 330 mm; judgement
MIDDLE_C: Final = 60.0  # properties are taken at the middle of the cook


@dataclass(frozen=True)
class Body:
    """The body that stands for a piece.

    `length` is its half thickness or radius [m]; `gather` the surface of all sides for each unit of the
    broad faces [-]; `area` the surface of the broad faces for a kilogram of meat [m2/kg].
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
    faces = 2.0 if geometry == "cylinder" else 1.0
    sides = _sides(piece, heat.density)
    surface = faces / half + sum(1.0 / side for side in sides)
    rate = _rate(geometry, half, film, heat.conductivity)
    rate += sum(_rate("slab", side, film, heat.conductivity) for side in sides)

    def too_slow(length: Metres) -> bool:
        return _rate(geometry, length, film * length * surface / faces, heat.conductivity) < rate

    length = _turning_point(too_slow, 1.5 * half)
    return Body(geometry, length, length * surface / faces, faces / (length * heat.density))


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


def _turning_point(too_slow: Callable[[Metres], bool], high: Metres) -> Metres:
    """The longest body that is not too slow, by bisection: a longer one is always slower."""
    low = 0.0
    for _ in range(40):
        middle = 0.5 * (low + high)
        if too_slow(middle):
            high = middle
        else:
            low = middle
    return 0.5 * (low + high)
