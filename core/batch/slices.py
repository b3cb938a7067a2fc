"""What a slice would show on a day, and how the middle fills over the days, for a picture."""

from dataclasses import dataclass

import numpy as np

from core.cure.course import course
from core.cure.penetration import Penetration
from core.cure.profile import front
from core.units import Days, Metres

POINTS = 24
Lines = tuple[tuple[float, ...], tuple[float, ...], tuple[float, ...]]


@dataclass(frozen=True)
class Filling:
    """The middle over the days: nitrite [mg/kg] and salt [-], each as its 10, 50 and 90 % lines."""

    days: tuple[Days, ...]
    nitrite: Lines
    salt: Lines


def course_of(cure: Penetration, days: Days) -> Filling:
    """How the middle fills until a little past `days`."""
    times = np.geomspace(0.1, 1.1 * days, POINTS)
    found = course(cure.immersion, times)
    return Filling(tuple(float(t) for t in times), _lines(found.nitrite), _lines(found.salt_centre))


def front_of(cure: Penetration, days: Days) -> tuple[Metres, Metres, Metres]:
    """How far in from a face it is pink after `days`: 10, 50 and 90 %. [m]"""
    return front(cure.immersion, days)


def _lines(members: "np.typing.NDArray[np.float64]") -> Lines:
    low, middle, high = np.quantile(np.maximum(members, 0.0), (0.1, 0.5, 0.9), axis=1)
    return tuple(map(float, low)), tuple(map(float, middle)), tuple(map(float, high))
