"""Crank's series for a stirred solution of limited volume and for a fixed dose at the surface: the solver's checks.

Lengths are in half thicknesses (radii), time is the Fourier number D t / L² [-]; `alpha` is the solute that the
bath holds over that which the meat holds at equal concentration. Concentrations are relative to the final one.

References
----------
`sources.CRANK_1975`: slab eqs 4.37 to 4.40, cylinder eq. 5.33; the equation numbers are from memory, the formulas were
derived again and agree with an independent computation (tests/published/cure/crank_slab_finite_bath.csv).
"""

from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from core.cure.diffusion import Array
from core.meat.piece import Shape

TERMS: Final = 60
_HALVINGS: Final = 60
_ANGLES: Final = 256


def slab_in_bath(alpha: float, fourier: float, place: float) -> float:
    """C/C∞ of a plane sheet in a stirred bath, at `place` from the middle (0) to the surface (1). [-]"""
    root = roots(Shape.SLAB, alpha)
    share = 2.0 * (1.0 + alpha) / (1.0 + alpha + alpha**2 * root**2)
    return float(1.0 + np.sum(share * np.exp(-(root**2) * fourier) * np.cos(root * place) / np.cos(root)))


def slab_taken_up(alpha: float, fourier: float) -> float:
    """M/M∞ of a plane sheet in a stirred bath. [-]"""
    root = roots(Shape.SLAB, alpha)
    share = 2.0 * alpha * (1.0 + alpha) / (1.0 + alpha + alpha**2 * root**2)
    return float(1.0 - np.sum(share * np.exp(-(root**2) * fourier)))


def cylinder_in_bath(alpha: float, fourier: float, place: float) -> float:
    """C/C∞ of a long cylinder in a stirred bath, at `place` from the axis (0) to the surface (1). [-]"""
    root = roots(Shape.CYLINDER, alpha)
    share = 4.0 * (1.0 + alpha) / (4.0 + 4.0 * alpha + alpha**2 * root**2)
    return float(1.0 + np.sum(share * np.exp(-(root**2) * fourier) * bessel(0, root * place) / bessel(0, root)))


def cylinder_taken_up(alpha: float, fourier: float) -> float:
    """M/M∞ of a long cylinder in a stirred bath. [-]"""
    root = roots(Shape.CYLINDER, alpha)
    share = 4.0 * alpha * (1.0 + alpha) / (4.0 + 4.0 * alpha + alpha**2 * root**2)
    return float(1.0 - np.sum(share * np.exp(-(root**2) * fourier)))


def bath_left(alpha: float, taken_up: float) -> float:
    """Bath concentration over that at the start, from M/M∞. [-]"""
    return 1.0 - taken_up / (1.0 + alpha)


def slab_surface_dose(fourier: float, place: float) -> float:
    """C/C∞ of a sealed plane sheet that got all its solute at the surface at once: the limit of no bath. [-]"""
    n = np.arange(1, TERMS + 1)
    return float(1.0 + 2.0 * np.sum((-1.0) ** n * np.exp(-((n * np.pi) ** 2) * fourier) * np.cos(n * np.pi * place)))


@lru_cache(maxsize=64)
def roots(shape: Shape, alpha: float) -> Array:
    """First roots of tan q = -alpha q (slab) or alpha q J0(q) + 2 J1(q) = 0 (cylinder), by halving. [-]"""
    n = np.arange(1, TERMS + 1, dtype=np.float64)
    low, high = ((n - 0.5) * np.pi, n * np.pi) if shape is Shape.SLAB else _between_bessel_zeros(n)
    for _ in range(_HALVINGS):
        middle = 0.5 * (low + high)
        same = np.sign(_characteristic(shape, alpha, middle)) == np.sign(_characteristic(shape, alpha, low))
        low, high = np.where(same, middle, low), np.where(same, high, middle)
    return np.asarray(0.5 * (low + high))


def bessel(order: int, x: Array) -> Array:
    """Bessel function J of order 0 or 1, by its integral: a trapezium is exact for a periodic function."""
    angle = (np.arange(_ANGLES) + 0.5) * np.pi / _ANGLES
    return np.asarray(np.cos(order * angle - np.multiply.outer(x, np.sin(angle))).mean(axis=-1))


def _characteristic(shape: Shape, alpha: float, q: Array) -> Array:
    if shape is Shape.SLAB:
        return np.asarray(np.sin(q) + alpha * q * np.cos(q))
    return np.asarray(alpha * q * bessel(0, q) + 2.0 * bessel(1, q))


def _between_bessel_zeros(n: NDArray[np.float64]) -> tuple[Array, Array]:
    """Brackets of the cylinder's roots: each lies between a zero of J0 and the next zero of J1 (McMahon's estimate)."""
    return (n - 0.25) * np.pi - 0.2, (n + 0.25) * np.pi + 0.02
