"""A strong brine by the clock: how long until the meat holds the salt that is wanted, long before it is even.

The brine would oversalt the meat if it stayed; it is taken out when its mean is right, and evens out afterwards. So no
nitrite is dosed this way: what went in depends on the minute, and nobody can weigh it.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np

from core.cure.course import Immersion, course, way
from core.cure.penetration import Quantiles
from core.errors import OutOfRange
from core.units import Fraction, Hours

SHORTEST_H: Final = 0.1
LONGEST_H: Final = 96.0
POINTS: Final = 48
MOST_OF_EQUILIBRIUM: Final = 0.9  # nearer than this it is an equilibrium brine, and the clock says nothing


@dataclass(frozen=True)
class Brining:
    """`hours` until the mean salt is what is wanted, and the salt that it would tend to if it stayed. [h, -]"""

    hours: Quantiles
    salt_in_the_end: Fraction


def salted(immersion: Immersion, hours: Hours) -> Quantiles:
    """Mean salt of the raw meat after so many hours in a strong brine. [-]"""
    salt = course(immersion, np.array([hours / 24.0])).salt_mean[0]
    low, middle, high = (float(q) for q in np.quantile(salt, (0.1, 0.5, 0.9)))
    return Quantiles(low, middle, high)


def brining(immersion: Immersion, wanted: Fraction) -> Brining:
    """How long a piece lies in a strong brine.

    Parameters
    ----------
    immersion
        The piece in its brine, whose contents hold more salt than is wanted.
    wanted
        Mean salt of the raw meat. [-] 0.005 to 0.06

    Raises
    ------
    OutOfRange
        So much salt is more than nine tenths of what the brine brings in the end, or it takes more than four days.
    """
    end = way(immersion).salt
    if not 0.005 <= wanted <= min(0.06, MOST_OF_EQUILIBRIUM * end):
        raise OutOfRange("salt wanted from this brine", wanted, 0.005, min(0.06, MOST_OF_EQUILIBRIUM * end))
    times = np.geomspace(SHORTEST_H, LONGEST_H, POINTS)
    salt = course(immersion, times / 24.0).salt_mean
    hours = [float(np.exp(np.interp(wanted, member, np.log(times)))) for member in salt.T]
    low, middle, high = (float(q) for q in np.quantile(hours, (0.1, 0.5, 0.9)))
    if middle >= 0.99 * LONGEST_H:
        raise OutOfRange("hours in the brine", middle, SHORTEST_H, LONGEST_H, "h")
    return Brining(Quantiles(low, middle, high), end)
