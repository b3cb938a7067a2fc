"""What the trade's own rule would say beside our days: it waits for even salt, and we wait for a pink middle.

The rules and where each disagrees: docs/science/curing.md, section 6. None of them decides anything here.
"""

from dataclasses import dataclass
from typing import Final

from core.cure.course import Immersion
from core.meat.piece import Piece, Shape, Species
from core.sources import COMMON_PRACTICE, EXTENSION_LEAFLETS, FARM_BULLETIN, Source
from core.units import KILOGRAMS_PER_POUND, METRES_PER_INCH, Days

DAYS_AN_INCH: Final = 7.0
DAYS_A_POUND: Final = 4.0  # the longer end of 3.5 to 4
FACES_A_DAY: Final = 0.25  # inch from each face
FACES_EXTRA: Final[Days] = 2.0
MM2_A_DAY: Final = 200.0
BELLY: Final[Days] = 15.0  # a belly of up to 10 lb
LOIN: Final[Days] = 21.0  # a loin, or a belly that is heavier
HEAVY_BELLY_LB: Final = 10.0


@dataclass(frozen=True)
class Thumb:
    """A rule of the trade: its days [d], the longer end of a range; what it counts by; where it stands."""

    days: Days
    by: str
    source: Source


def thumb(immersion: Immersion) -> Thumb | None:
    """The trade's rule for a piece in its cure.

    None for an injected one, whose days are the trade's already, and for birds: its rules were made for beef and pork,
    and nobody is sent to leave a raw bird for weeks.
    """
    piece, dose = immersion.piece, immersion.dose
    inches = piece.thickness / METRES_PER_INCH
    if dose.method == "inject" or piece.cut.species not in (Species.BEEF, Species.PORK):
        return None
    if dose.method == "dry":
        return Thumb(DAYS_AN_INCH * inches, "inch", EXTENSION_LEAFLETS)
    if piece.cut.species is not Species.PORK:
        return Thumb(inches / 2.0 / FACES_A_DAY + FACES_EXTRA, "faces", COMMON_PRACTICE)
    pounds = piece.mass / KILOGRAMS_PER_POUND
    if dose.product_class != "bacon":
        return Thumb(DAYS_A_POUND * pounds, "pound", FARM_BULLETIN)
    light = piece.cut.shape is Shape.SLAB and pounds <= HEAVY_BELLY_LB
    return Thumb(BELLY, "belly", FARM_BULLETIN) if light else Thumb(LOIN, "loin", FARM_BULLETIN)


def square_rule(piece: Piece) -> Days:
    """The trade's rule of the square: millimetres of thickness squared over 200, half of it for a round piece. [d]

    Common practice; it waits for even salt, and the cook's longer way is safe as long as it is cold.
    """
    days = (piece.thickness * 1000.0) ** 2 / MM2_A_DAY
    return days / 2.0 if piece.cut.shape is Shape.CYLINDER else days
