"""A weak curing salt by the needle: it is nearly all the salt there is, so what is aimed at and pumped goes by that.

With 0.4 to 0.5 % of nitrite, as curing salt is sold in central Europe, the usual aim brings more salt than is wanted,
and a pickle of 10 % of the meat would not dissolve it. Judgement; the limits of the law hold in any case.
"""

from typing import Final

from core.cure import nitrite
from core.cure.contents import STRONGEST_CURE, WEAKEST_CURE
from core.cure.weighing import PICKLE_STRENGTH
from core.plan.setup import Setup, covered
from core.units import Fraction, MilligramsPerKilogram

LEAST: Final[MilligramsPerKilogram] = 120.0  # what is called cured holds at the least: floors of core/cure/limits.toml
MOST_PUMPED: Final[Fraction] = 0.20  # of the meat; more runs out. Common practice, no source
STEP: Final[Fraction] = 0.05


def aimed(target: MilligramsPerKilogram, setup: Setup) -> MilligramsPerKilogram:
    """The nitrite to aim at: no more than comes with the salt that is wanted, nor less than a cured product holds."""
    strength = _by_needle(setup)
    if strength is None:
        return target
    salt = setup.salt_fraction * (1.0 + setup.pump_fraction)  # for each kilogram of meat
    return min(target, max(nitrite.MILLIGRAMS * salt * strength / (1.0 - strength), LEAST))


def pumped(target: MilligramsPerKilogram, setup: Setup) -> Fraction:
    """The share of the meat that is pumped: as said, or so much that a usual pump pickle holds the curing salt."""
    strength = _by_needle(setup)
    share = setup.pump_fraction
    if strength is None or "pump_fraction" in setup.said:
        return share
    cure = nitrite.cure_for_dry(target, 1.0, strength)
    while cure > PICKLE_STRENGTH * share and share + STEP <= MOST_PUMPED:
        share += STEP
    return share


def _by_needle(setup: Setup) -> Fraction | None:
    """The strength of a curing salt that the needle alone brings in; None where not known, or all about it too.

    None too for what is no curing salt: the dose refuses it.
    """
    strength = None if setup.method != "inject" or covered(setup) else setup.cure_nitrite_fraction
    return strength if strength is not None and WEAKEST_CURE <= strength <= STRONGEST_CURE else None
