"""How long a frozen piece takes to thaw through, and how long it keeps then. Never on the counter.

The charts print 24 h for 4 to 5 lb in the fridge, and 30 min a pound in cold water that is changed every half
hour; small packages by their own rows. The plan takes the longer end: a frozen core neither cures nor cooks.
"""

from dataclasses import dataclass
from typing import Final

from core.errors import OutOfRange
from core.safety.rows import number, rows
from core.sources import USDA_THAWING, Source
from core.units import KILOGRAMS_PER_POUND, Days, Hours, Kilograms

FRIDGE_LOW: Final = 24.0 / 5.0  # h per lb
FRIDGE_HIGH: Final = 24.0 / 4.0  # h per lb
WATER: Final = 0.5  # h per lb
SMALLEST: Final = 0.1  # kg
LARGEST: Final = 15.0  # kg
RED_MEAT_KEEPS: Final = 3.0  # d after the fridge, the shorter end
BIRD_KEEPS: Final = 1.0  # d; ground meat and fish the same


@dataclass(frozen=True)
class Thaw:
    """Hours to thaw through, at least and at most, and days it keeps raw after that (0: at once). [h, d]"""

    low: Hours
    high: Hours
    keeps: Days
    source: Source


def thaw(mass: Kilograms, where: str, bird: bool = False) -> Thaw:
    """Time to thaw through.

    Parameters
    ----------
    mass
        Frozen piece. [kg]  0.1 to 15
    where
        "fridge" at 40 °F or below, or "water", cold and changed every 30 min.
    bird
        A bird, ground meat or fish, which keeps one day and not three.

    Raises
    ------
    OutOfRange
        A mass that is no piece of meat.

    References
    ----------
    `sources.USDA_THAWING`.
    """
    if not SMALLEST <= mass <= LARGEST:
        raise OutOfRange("mass", mass, SMALLEST, LARGEST, "kg")
    pounds = mass / KILOGRAMS_PER_POUND
    if where == "water":
        return Thaw(WATER * pounds, max((WATER * pounds, *_package_hours(pounds))), 0.0, USDA_THAWING)
    keeps = BIRD_KEEPS if bird else RED_MEAT_KEEPS
    return Thaw(FRIDGE_LOW * pounds, FRIDGE_HIGH * pounds, keeps, USDA_THAWING)


def _package_hours(pounds: float) -> tuple[Hours, ...]:
    """The chart's longer time for a package of that weight in cold water; none for a heavier piece. [h]"""
    packages = [r for r in rows("thaw_times") if "package" in r["item"]]
    fitting = sorted(number(r, "time_max_h") for r in packages if pounds <= number(r, "weight_max_lb"))
    return tuple(fitting[:1])
