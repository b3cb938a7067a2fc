"""Fish that was frozen before: whether that was cold enough for long enough, by the food code."""

from typing import Final

from bot import measures
from bot.conversation.sums_hot import Answer
from bot.intents.frozen import frost
from bot.intents.told import Told
from bot.wording import sums_fish
from core.safety.parasites import freezing
from core.service.turn import Turn

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


SUMS = {"frozen_fish": _frozen}
