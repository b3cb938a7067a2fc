"""From the first match to a steady pit, by how the fire is lit. Common practice, no source."""

from typing import Final

from core.errors import Gone
from core.heat.cooker import Cooker, Range
from core.units import Hours

# minutes until there are lit coals, and the share of the cooker's own time that the walls still take after that
LIGHTERS: Final[dict[str, tuple[Range, float]]] = {
    "cubes": (Range(0.0, 0.0), 1.0),  # the cooker's own time is counted from one or two cubes or starters
    "chimney": (Range(15.0, 20.0), 0.6),
    "torch": (Range(5.0, 8.0), 0.7),
    "wand": (Range(8.0, 12.0), 0.7),  # an electric lighter
}


def minutes(stove: Cooker, lighter: str = "cubes") -> Range:
    """Minutes from lighting to a steady pit, low and high; raises Gone for a way of lighting there is not.

    A cooker without coals takes its own time, however the rest of the yard is lit.
    """
    try:
        coals, share = LIGHTERS[lighter]
    except KeyError:
        raise Gone(f"lighter {lighter}") from None
    if stove.fuel != "charcoal":
        return stove.stable_minutes
    own = stove.stable_minutes
    return Range(coals.low + share * own.low, coals.high + share * own.high)


def hours(stove: Cooker, lighter: str = "cubes") -> Hours:
    """The slow end of it, which a plan counts with. [h]"""
    return minutes(stove, lighter).high / 60.0
