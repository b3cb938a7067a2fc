"""A meal that may move, and may not: one of every day, a bump either way, «dinner at 7 or 8»: asked, both to tap."""

from typing import Final

from bot.intents import spans, when
from bot.intents.context import Context
from bot.intents.intents import MoveDeadline, Unclear
from bot.intents.meal_words import AMOUNT, MEAL
from core import patterns as re

_EVERY_DAY: Final = re.compile(  # «i have breakfast at 7» is said of any day
    r"^(?:i|we) (?:(?P<so>usually|always|normally|mostly) )*(?:have|eat|get) (?:my |our )?"
    r"(?:breakfast|(?(so)(?:lunch|dinner|supper|tea)|breakfast))\b"
)
_EITHER_WAY: Final = re.compile(  # «bump lunch 45 min»: later as likely as earlier
    rf"^(?:(?:please|can we|lets|just) )*(?:bump|slide|nudge|shift) (?:it|{MEAL}) (?:by )?{AMOUNT}$"
)
_HOUR: Final = r"(?:1[0-2]|[1-9])(?:[:.][0-5]\d)?"
_TWO_HOURS: Final = re.compile(
    rf"^(?:(?:its|it is|its gonna be|think|i think|we|so|ok|the|our) )*(?:{MEAL}|tea|food|eat|eating|guests?|people"
    rf"|they)\b"
    rf"[a-z ]{{0,28}}?\b(?P<one>{_HOUR})(?: ?(?P<half>[ap]m))?,? or (?:maybe |even |perhaps |at "
    rf"|more like )*(?P<two>{_HOUR})"
    r"(?: ?(?P<late>[ap]m))?(?: (?:tonight|today|then|ish))*$"
)


def read_either(text: str, context: Context) -> Unclear | None:
    """What may be of the meal, and which of two ways is not told; None where nothing is open."""
    if _EVERY_DAY.match(text) and (said := when.meal(text, context)) and (said.day_said or said.hour_said):
        return Unclear("word", text[:60], (MoveDeadline(to=said.at),))
    if _EITHER_WAY.match(text) and (by := spans.span(text)):
        return Unclear("word", text[:60], (MoveDeadline(by=by), MoveDeadline(by=-by)))
    found = _TWO_HOURS.match(text)
    if found is None:
        return None
    half = found["half"] or found["late"] or ""
    both = (when.meal(f"at {found[name]} {half}".strip(), context) for name in ("one", "two"))
    return Unclear("word", text[:60], tuple(MoveDeadline(to=said.at) for said in both if said))
