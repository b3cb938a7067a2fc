"""Conduction by the textbook: the series for slab, cylinder and sphere, the checks of the solver.

Incropera et al., ch. 5 (eqs 5.42, 5.50, 5.51 and their characteristic equations); bricks and short
cylinders by the product rule (section 5.6). X is the place from the middle (0) to the surface (1), Fo =
alpha t / L2, Bi = h L / k with L the half thickness or the radius.
"""

from functools import lru_cache
from math import cos, pi, sin
from typing import Final, Literal

import numpy as np

Geometry = Literal["slab", "cylinder", "sphere"]

TERMS: Final = 60
_ANGLES: Final = (np.arange(160) + 0.5) * pi / 160
_SINES: Final = np.sin(_ANGLES)


def bessel(order: int, x: float) -> float:
    """J0 or J1 by Bessel's integral; the midpoint rule converges exponentially, here up to x = 200. [-]"""
    return float(np.mean(np.cos(order * _ANGLES - x * _SINES)))


@lru_cache(maxsize=512)
def roots(geometry: Geometry, biot: float, count: int = TERMS) -> tuple[float, ...]:
    """The first roots of the characteristic equation, one in each half period, by bisection. [-]"""
    return tuple(_root(geometry, biot, n) for n in range(count))


def temperature(geometry: Geometry, biot: float, fourier: float, place: float) -> float:
    """What is left of the difference to the surroundings at a place: 1 at first, 0 at last. [-]"""
    return sum(
        _weight(geometry, z) * float(np.exp(-z * z * fourier)) * _shape(geometry, z * place)
        for z in roots(geometry, biot)
    )


def heat_given(geometry: Geometry, biot: float, fourier: float) -> float:
    """Share of the heat that has passed by then: 1 less the mean of the temperature. [-]"""
    left = sum(
        _weight(geometry, z) * float(np.exp(-z * z * fourier)) * _mean(geometry, z) for z in roots(geometry, biot)
    )
    return 1.0 - left


def first_weight(geometry: Geometry, biot: float) -> float:
    """C1 of the one-term solution at the middle. [-]"""
    return _weight(geometry, roots(geometry, biot, 1)[0])


def _root(geometry: Geometry, biot: float, number: int) -> float:
    # the sphere's roots begin at n pi, the others' at the zeros of their own flux function
    low, high = number * pi, (number + 1) * pi
    if geometry == "cylinder":
        low, high = _j1_zero(number), _j1_zero(number + 1)
    sign = 1.0 if _characteristic(geometry, low + 1e-12, biot) > 0 else -1.0
    while low < (middle := 0.5 * (low + high)) < high:  # until no number lies between
        if sign * _characteristic(geometry, middle, biot) > 0:
            low = middle
        else:
            high = middle
    return middle


def _characteristic(geometry: Geometry, z: float, biot: float) -> float:
    if geometry == "slab":
        return z * sin(z) - biot * cos(z)
    if geometry == "cylinder":
        return z * bessel(1, z) - biot * bessel(0, z)
    return (1.0 - biot) * sin(z) - z * cos(z)


@lru_cache(maxsize=256)
def _j1_zero(number: int) -> float:
    if number == 0:
        return 0.0
    low, high = (number - 0.25) * pi + 0.0, (number + 0.75) * pi
    low = max(low, 3.0)
    sign = 1.0 if bessel(1, low) > 0 else -1.0
    for _ in range(80):
        middle = 0.5 * (low + high)
        if sign * bessel(1, middle) > 0:
            low = middle
        else:
            high = middle
    return 0.5 * (low + high)


def _weight(geometry: Geometry, z: float) -> float:
    if geometry == "slab":
        return 4 * sin(z) / (2 * z + sin(2 * z))
    if geometry == "cylinder":
        first, zeroth = bessel(1, z), bessel(0, z)
        return 2 / z * first / (zeroth * zeroth + first * first)
    return 4 * (sin(z) - z * cos(z)) / (2 * z - sin(2 * z))


def _shape(geometry: Geometry, x: float) -> float:
    if geometry == "slab":
        return cos(x)
    if geometry == "cylinder":
        return bessel(0, x)
    return sin(x) / x if x > 1e-9 else 1.0


def _mean(geometry: Geometry, z: float) -> float:
    if geometry == "slab":
        return sin(z) / z
    if geometry == "cylinder":
        return 2 * bessel(1, z) / z
    return 3 * (sin(z) - z * cos(z)) / z**3
