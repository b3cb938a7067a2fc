"""«back at 3», of somebody who reads in °C: the fridge that was too warm, or whoever will be home at that hour."""

from typing import Final

from bot.intents.context import IN_THE_COLD, Context
from bot.intents.intents import Reading, Temperature
from core import patterns as re
from core.batch.events import Probe

_BACK_ALONE: Final = re.compile(r"(?:(?:ok|so|and|now|all) )*back (?:at|to) (?P<n>[0-8](?:\.\d)?)(?: now| again)*")


def fridge_is_back(text: str, context: Context) -> Reading | None:
    """What the fridge would read, to be offered; None where the number can be none, or is no hour either."""
    found = _BACK_ALONE.fullmatch(text.strip(" .!"))
    if found is None or context.phase not in IN_THE_COLD or context.units.temperature != "c":
        return None
    return Reading((Temperature(float(found["n"]), "c", Probe.FRIDGE),))
