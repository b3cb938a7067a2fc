"""Worms of fish: the freezing that kills them, for fish that is eaten raw or cold-smoked. Hot smoking does it itself.

It kills no bacteria, and no spore of botulinum: what is frozen so is still raw fish.
"""

from dataclasses import dataclass
from typing import Final

from core.errors import OutOfRange
from core.fish_sources import FOOD_CODE_PARASITES
from core.source import Source
from core.units import Celsius, Hours

RULES: Final[tuple[tuple[Celsius, Hours], ...]] = ((-20.0, 168.0), (-35.0, 15.0))  # at or below, for at least
COLDEST: Final[Celsius] = -90.0
_EXACT: Final = 1e-6  # -4 °F is -20 °C to the last digit, and floats are not


@dataclass(frozen=True)
class Freezing:
    """Whether a freezing was enough. `rule` is the temperature and the hours that it met, None where it met none."""

    enough: bool
    rule: tuple[Celsius, Hours] | None
    source: Source


def freezing(celsius: Celsius, hours: Hours) -> Freezing:
    """Whether fish that was held so cold for so long is free of living worms.

    Parameters
    ----------
    celsius
        The warmest that the freezer was. [°C] -90 to 0
    hours
        From when the fish was in it; by the rule of -35 °C from when it was solid. [h]

    Raises
    ------
    OutOfRange
        A temperature at which nothing freezes, or that no freezer has.

    References
    ----------
    `fish_sources.FOOD_CODE_PARASITES`. Its third way, -35 °C until solid and 24 h at -20 °C, needs a plant's freezer.
    """
    if not COLDEST <= celsius <= 0.0:
        raise OutOfRange("freezer", celsius, COLDEST, 0.0, "°C")
    met = next(((c, h) for c, h in RULES if celsius <= c + _EXACT and hours >= h), None)
    return Freezing(met is not None, met, FOOD_CODE_PARASITES)
