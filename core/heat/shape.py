"""The one-dimensional body that stands for a piece of meat.

A flat is a brick. Bricks and short cylinders cool by the product of the solutions of their sides
(Newman's rule; Incropera, section 5.6), so late in the process at the sum of the sides' rates. The
equivalent slab is the slab that cools at that rate at the Biot number of the process: between the
volume over the surface (Bi to 0) and the thickness with its corners (Bi to infinity).
"""

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
    """The equivalent body: `length` is its half thickness or radius. [m] `area` per kilogram of meat. [m2/kg]"""

    geometry: Geometry
    length: Metres
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
    sides = _sides(piece, heat.density)
    if piece.cut.shape is Shape.CYLINDER:
        rate = _rate("cylinder", half, film, heat.conductivity) + _rate("slab", sides[0], film, heat.conductivity)
        length = _same_rate("cylinder", rate, film, heat.conductivity)
        return Body("cylinder", length, 2 / (length * heat.density))
    rate = sum(_rate("slab", side, film, heat.conductivity) for side in (half, *sides))
    length = _same_rate("slab", rate, film, heat.conductivity)
    return Body("slab", length, 1 / (length * heat.density))


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


def _same_rate(geometry: Geometry, rate: float, film: float, conductivity: WattsPerMetreKelvin) -> Metres:
    low, high = 1e-3, 0.5
    for _ in range(50):
        middle = sqrt(low * high)
        if _rate(geometry, middle, film, conductivity) > rate:
            low = middle
        else:
            high = middle
    return sqrt(low * high)
