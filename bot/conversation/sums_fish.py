"""Fish that was frozen before: whether that was cold enough for long enough, by the food code."""

from dataclasses import replace
from typing import Final

from bot import measures
from bot.conversation.sums_hot import Answer, setup_of
from bot.intents.frozen import frost
from bot.intents.sums.told import Told
from bot.wording import sums_fish
from core.batch.material import dose_of, piece_of, salt_taken
from core.safety.parasites import freezing
from core.service.turn import Turn

USUAL_KG: Final = 1.2  # a side of salmon. Common practice
HOURS: Final = (1.0, 2.0, 4.0)
SOURCES: Final = ("FOOD_CODE_PARASITES", "HOT_SMOKED_FISH")


def _frozen(turn: Turn, line: Told) -> Answer:
    """By both scales where nobody named one: a freezer's number is no matter to guess."""
    told = frost(line.text)
    if told.degrees is None or told.hours is None:
        return sums_fish.unknown(turn.person), SOURCES, {"enough": None}
    found = []
    for unit in (told.unit,) if told.unit else ("c", "f"):
        enough = freezing(measures.to_house(told.degrees, unit), told.hours).enough
        found.append((sums_fish.typed(told.degrees, unit, told.hours), enough))
    return sums_fish.worms(found, turn.person), SOURCES, {"enough": [enough for _, enough in found]}


def _hours(turn: Turn, line: Told) -> Answer:
    """The salt that fish takes in a strong brine, hour by hour; of a usual side where no size is told."""
    sized = line if line.length is not None or line.heaviest is not None else replace(line, heaviest=USUAL_KG)
    strength = next(iter(line.fractions))
    setup = setup_of(sized).change({"brine_strength": strength, "brine_hours": HOURS[1]})
    weighed = dose_of(setup, turn.person.jurisdiction)
    taken = [(hours, salt_taken(setup, weighed, hours)) for hours in HOURS]
    body = {"salt_fraction": taken[1][1].p50, "strength": strength}
    said = sums_fish.salted(strength, piece_of(setup).thickness, taken, turn.person)
    return said, ("HOT_SMOKED_FISH", "CRANK_1975"), body


SUMS = {"frozen_fish": _frozen, "fish_hours": _hours}
