"""A bird over a fire that is too low for it: its middle lies warm for too long before it is hot."""

from typing import Final

from bot.wording import sums_birds
from core.heat.cook import Cook
from core.heat.ready import forecast
from core.meat.piece import Piece, Species
from core.person import Person
from core.safety.come_up import REACH_140
from core.units import Celsius, celsius_from_fahrenheit

BIRDS: Final = frozenset({Species.TURKEY, Species.CHICKEN, Species.DUCK})
HIGH_PIT_C: Final[Celsius] = 135.0  # 275 °F; what the trade runs for birds. Common practice


def too_low(meat: Piece, pit: Celsius, person: Person) -> str:
    """What is said first of a bird that may take longer to 140 °F than it has; "" where it passes in time."""
    if meat.cut.species not in BIRDS or pit >= HIGH_PIT_C - 0.5:
        return ""
    mark = celsius_from_fahrenheit(REACH_140.to_f)
    hours = forecast(Cook(meat, person.cooker, pit, target_c=mark)).ready.p90
    if hours <= REACH_140.max_h:
        return ""
    return sums_birds.too_low((pit, HIGH_PIT_C, mark), (hours, REACH_140.max_h), person)
