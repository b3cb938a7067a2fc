"""How many days a piece needs until its middle cures pink, what it holds on any day, and what would change that.

The advice is the time by which 90 % of pieces like this one are pink in the middle after the cook. Pink is one
nitric oxide for a heme, the species' onset of Heaton et al. (`sources.HEATON_2000`), with log-sd 0.25.
"""

from dataclasses import dataclass
from functools import cached_property, lru_cache
from math import ceil, inf, isfinite, log
from statistics import NormalDist
from typing import Final

import numpy as np

from core.cure.course import Course, Immersion, course, ensemble, way
from core.cure.diffusion import Array
from core.errors import OutOfRange
from core.safety.record import CURED_FROM
from core.sources import CRANK_1975, CURE_CASE, HANSEN_2008, HEATON_2000, NORDIN_1969, SPRINGER_2015, Source
from core.units import SECONDS_PER_DAY, Days, Fraction

PINK_LOG_SD: Final = 0.25
FLOOR_DAYS: Final[Days] = (
    2.0  # colour itself wants 12 to 24 h in the cold, and no bag is cold and mixed from minute one
)
HALF_DAY: Final[Days] = 0.5
EVEN: Final[Fraction] = 0.9
POINTS: Final = 60
SHORTEST_FOURIER: Final = 0.004  # nothing is in the middle yet
LONGEST_FOURIER: Final = 4.0  # as even as it will be
SOURCES: Final[tuple[Source, ...]] = (CRANK_1975, SPRINGER_2015, HANSEN_2008, HEATON_2000, NORDIN_1969, CURE_CASE)


@dataclass(frozen=True)
class Quantiles:
    """An estimate as its 10 %, 50 % and 90 % points."""

    p10: float
    p50: float
    p90: float


@dataclass(frozen=True)
class After:
    """What a number of days leaves in the piece.

    `nitrite_centre` is what is left in the middle after the cook and decides the colour [mg/kg]; `ingoing_centre`
    what has come in there by the end of the cure, as a regulator counts [mg/kg]; salt is that of the raw meat [-].
    """

    days: Days
    nitrite_centre: Quantiles
    ingoing_centre: Quantiles
    salt_mean: Quantiles
    salt_centre: Quantiles
    probability_pink: float

    @property
    def counts_as_cured(self) -> bool:
        """Whether even the slow end of the band holds the 100 mg/kg ingoing of the cooling rule in the middle."""
        return self.ingoing_centre.p10 >= CURED_FROM


@dataclass(frozen=True)
class Penetration:
    """Days until the middle will be pink: of the pieces like this one 10, 50 and 90 % are by then.

    Infinite where it never happens: too little nitrite, or used up faster than it arrives.
    """

    immersion: Immersion
    days_p10: Days
    days_p50: Days
    days_p90: Days
    sources: tuple[Source, ...] = SOURCES

    @property
    def advice(self) -> Days:
        """Days to plan: the 90 % point, up to the next half day, two at the least. [d] Infinite where never."""
        if not isfinite(self.days_p90):
            return inf
        return max(ceil(self.days_p90 / HALF_DAY) * HALF_DAY, FLOOR_DAYS)

    def after(self, days: Days) -> After:
        """What `days` in the cure leave in the piece; raises OutOfRange for no days and for more than a year."""
        if not 0.0 < days <= 366.0:
            raise OutOfRange("days in the cure", days, 0.0, 366.0, "d")
        return _after(self.immersion, days)

    def probability_pink(self, days: Days) -> float:
        """Share of pieces like this one whose middle is pink after `days`. [-]"""
        return self.after(days).probability_pink

    @cached_property
    def cured_days(self) -> Days:
        """Days until the middle counts as cured for the cooling rule at 90 % confidence. [d] Infinite where never."""
        times = course(self.immersion, _days(self.immersion))
        return _first(times.days, (times.ingoing >= CURED_FROM).mean(axis=1), 0.9)

    @cached_property
    def even_days(self) -> Days:
        """Days until the middle holds 90 % of its final salt, for the middle piece. [d] It is not needed for pink."""
        times = course(self.immersion, _days(self.immersion))
        share = times.salt_centre / way(self.immersion).salt
        return _first(times.days, (share >= EVEN).mean(axis=1), 0.5)


def penetration(immersion: Immersion) -> Penetration:
    """Days until the middle is pink.

    Parameters
    ----------
    immersion
        The piece in its cure.

    Returns
    -------
    The 10, 50 and 90 % days. [d]

    Raises
    ------
    OutOfRange
        More than one broad face is sealed.
    """
    times = course(immersion, _days(immersion))
    pink = _pink(immersion, times)
    early, middle, late = (_first(times.days, pink, share) for share in (0.1, 0.5, 0.9))
    return Penetration(immersion, early, middle, late)


def _days(immersion: Immersion) -> Array:
    """Times from too early to even, for the middle member of the ensemble. [d]"""
    along = way(immersion)
    pace = float(np.median(ensemble(immersion, along).pace)) * SECONDS_PER_DAY
    return np.geomspace(SHORTEST_FOURIER / pace, LONGEST_FOURIER / pace, POINTS)


def _pink(immersion: Immersion, times: Course) -> Array:
    """Share of pieces that are pink at each time, the spread of the threshold taken in exactly."""
    above = np.log(np.maximum(times.nitrite, 1e-12) / immersion.piece.cut.pink_from) / PINK_LOG_SD
    return np.asarray(normal_cdf(above).mean(axis=1))


@lru_cache(maxsize=256)
def _after(immersion: Immersion, days: Days) -> After:
    times = course(immersion, np.geomspace(min(0.1, days / 2), days, 14))
    return After(
        days=float(times.days[-1]),
        nitrite_centre=_quantiles(times.nitrite[-1]),
        ingoing_centre=_quantiles(times.ingoing[-1]),
        salt_mean=_quantiles(times.salt_mean[-1]),
        salt_centre=_quantiles(times.salt_centre[-1]),
        probability_pink=float(_pink(immersion, times)[-1]),
    )


def _quantiles(members: Array) -> Quantiles:
    low, middle, high = np.quantile(np.maximum(members, 0.0), (0.1, 0.5, 0.9))
    return Quantiles(float(low), float(middle), float(high))


def _first(days: Array, shares: Array, wanted: Fraction) -> Days:
    """The first time at which a share is reached; between two times the normal deviate runs evenly with ln t."""
    reached = np.flatnonzero(shares >= wanted)
    if reached.size == 0:
        return inf
    at = int(reached[0])
    if at == 0:
        return float(days[0])
    normal = NormalDist()
    below, above, target = (
        normal.inv_cdf(min(max(p, 1e-9), 1.0 - 1e-9)) for p in (float(shares[at - 1]), float(shares[at]), wanted)
    )
    part = (target - below) / (above - below)
    return float(np.exp(log(days[at - 1]) + part * log(days[at] / days[at - 1])))


def normal_cdf(z: Array) -> Array:
    """Normal distribution function to 1e-7 (Abramowitz and Stegun 26.2.17, from memory; a test has the exact one)."""
    t = 1.0 / (1.0 + 0.2316419 * np.abs(z))
    poly = t * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))))
    tail = np.exp(-0.5 * z * z) / np.sqrt(2.0 * np.pi) * poly
    return np.asarray(np.where(z >= 0.0, 1.0 - tail, tail))
