"""A cold number beside a fridge that is named, once the meat is off the fire: the air in there, or the middle.

Whoever says «in the fridge, 2 c» may have read either; a false core would end the watch over the chill, so it is asked.
"""

from dataclasses import replace
from typing import Final

from bot.intents.context import FALLING, Context
from bot.intents.intents import Intent, Reading, Unclear
from bot.measures import to_house
from core import patterns as re
from core.batch.events import Probe

_PLACE: Final = re.compile(r"\b(?:fridge|refrigerator|freezer|chiller)\b")
_MEAT: Final = re.compile(
    r"\b(?:meat|core|middle|inside|internal|cent(?:re|er)|brisket|flat|probe|ham|belly|breast|thigh|fillet|temp)\b"
)
_DOUBTED: Final = re.compile(
    r"\b(?:might|may|could|maybe|perhaps|possibly|probably|not sure (?:if|whether)|i think)\b[^\d,;]{0,16}"
    r"\b(?:bath|water|ice|air|fat|fridge|outside|surface|skin|edge|bone)\b"
)
_AIR_C: Final = 15.0  # what the air of a fridge can read at most


def asked_where(intents: list[Intent], text: str, context: Context) -> list[Intent]:
    """The intents, with a core that may be the air of a fridge asked about, and air as warm as no fridge has it."""
    if context.phase in FALLING and _DOUBTED.search(text):
        return [_no_core(intent) or intent for intent in intents]
    if context.phase not in FALLING or not _PLACE.search(text) or _MEAT.search(text):
        return intents
    return [_asked(intent) or intent for intent in intents]


def _no_core(intent: Intent) -> Unclear | None:
    """«38 but that might be the bath»: what the cook doubts is no core."""
    core = isinstance(intent, Reading) and any(t.probe in (Probe.CORE, None) for t in intent.temperatures)
    return Unclear("surface", f"{intent.temperatures[0].value:g}") if core and isinstance(intent, Reading) else None


def _asked(intent: Intent) -> Unclear | None:
    if not isinstance(intent, Reading) or len(intent.temperatures) != 1:
        return None
    (one,) = intent.temperatures
    warm = to_house(one.value, one.unit or "c") > _AIR_C
    if one.probe is not (Probe.FRIDGE if warm else Probe.CORE):
        return None
    ways = (Reading((replace(one, probe=probe),)) for probe in (Probe.CORE, Probe.FRIDGE))
    return Unclear("number", f"{one.value:g}", tuple(ways))
