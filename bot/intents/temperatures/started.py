"""A core with its past: «start temp was 8 c», «it was 46 f when it went on», «been 145 for half an hour»."""

from dataclasses import replace
from datetime import timedelta
from typing import Final

from bot.intents.context import Context
from bot.intents.intents import Reading, Temperature
from bot.intents.spans import SPAN, span
from bot.intents.temperatures.readings import read_reading
from core import patterns as re
from core.batch.events import Probe

_NUMBER: Final = r"(?P<value>\d{1,2}(?:\.\d)?)(?: ?(?:°|deg(?:rees)?)? ?(?P<unit>[cf])\b)?"
_MEAT: Final = r"(?:it|its core|the core|core|(?:the )?(?:meat|brisket|flat|piece|belly|ham|bird))"
_STARTED: Final = tuple(
    re.compile(words)
    for words in (
        rf"^(?:the |my |its )?(?:start(?:ing)?|initial|raw)(?: core| meat)?(?: temp(?:erature)?)?"
        rf"(?: was| is| of| at)* {_NUMBER}$",
        rf"^{_MEAT} (?:was|read|had|stood at) {_NUMBER} (?:when|as|before) (?:it|i|we) "
        r"(?:went|put it|laid it|started)(?: on| in)?$",
        rf"^{_MEAT} (?:started|went on|went in)(?: cold| warm)? (?:at|with) {_NUMBER}$",
    )
)
_WARMEST_RAW_C: Final = 25.0  # a bare number up to here is °C, above it °F: raw meat is never so warm
JUST_BEFORE: Final = timedelta(minutes=1)


_HELD: Final = re.compile(
    r"^(?:(?:its|it|is|theyre|they|are|has|have|was|core|fish|fillets?|meat|now|all|both),? )*"
    r"(?:been|held|stayed|sat|holding|steady)(?: (?:at|above|over|round|around|steady|up))*"
    r" (?P<read>\d{2,3}(?:\.\d)?(?: ?°?[cf])?)(?: or (?:more|above|over|higher))?"
    rf",? (?:(?:for|now|the|last|past|good|a|at least|over|about|like|since) )*"
    rf"(?P<span>{SPAN.pattern})(?: now| already| ago)?$"
)
LONGEST_HELD: Final = timedelta(hours=2)  # one look before and one now vouch for no more. Judgement


def read_held(text: str, context: Context) -> Reading | None:
    """A core that has been the same for a while, on the fire: its reading of now, and that of then."""
    found = _HELD.match(text.strip(" .!")) if context.phase == "cooking" else None
    lasted = span(found["span"]) if found else None
    if found is None or lasted is None or lasted > LONGEST_HELD:
        return None
    now = read_reading(f"core {found['read']}", context)
    if not isinstance(now, Reading) or len(now.temperatures) != 1:
        return None
    return Reading((replace(now.temperatures[0], at=context.now - lasted), *now.temperatures))


def read_started(text: str, context: Context) -> Reading | None:
    """The core that the meat had when it went on, where a plain text tells it; None before there is a fire."""
    if context.phase not in ("drying", "cooking"):
        return None
    found = next((hit for words in _STARTED if (hit := words.match(text))), None)
    if found is None or (found["unit"] is None and context.phase == "drying" and "went on at" in text):
        return None
    value = float(found["value"])
    unit = found["unit"] or ("c" if value <= _WARMEST_RAW_C else "f")
    at = None if context.on_at is None else context.on_at - JUST_BEFORE
    return Reading((Temperature(value, unit, Probe.CORE, at=at),))
