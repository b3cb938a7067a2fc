"""The facts that decide what went wrong, as the answer to the question for them: how long, how warm, the door."""

import re
from collections.abc import Callable
from functools import partial
from typing import Any, Final

from bot import measures
from bot.intents import when
from bot.intents.context import Context
from bot.intents.intents import Happened, Intent

SLOT: Final = "happened_"
ASKED: Final = ("power_cut", "left_out", "warm_fridge", "warm_brine", "fire_out")
_CORE: Final = re.compile(r"\b(?:core|middle|meat|inside|internal)\b")
_PLACE: Final = re.compile(r"\b(?:room|counter|kitchen|outside|outdoors|air|garage|fridge|brine)\b")
_SHUT: Final = re.compile(r"\b(?:shut|closed|kept shut|stayed shut)\b")
_OPEN: Final = re.compile(r"\b(?:open|opened|ajar|not shut|not closed|wasnt (?:shut|closed))\b")
_UNKNOWN: Final = re.compile(r"\b(?:no idea|dont know|unknown|not sure|nobody knows|cant say|who knows)\b")
_OTHER: Final = re.compile(r"\b(?:later|snooze|remind|in|at|done|safe|meal|ready|ago)\b|\?")


def _facts(what: str, text: str, context: Context) -> Intent | None:
    """The facts of a line; None for a line about something else."""
    if _OTHER.search(text):
        return None
    lasted, warm = when.span(text), measures.of_kind(text, "temperature")
    facts: dict[str, Any] = {}
    if lasted is not None:
        facts["hours"] = round(lasted.total_seconds() / 3600, 4)
    elif _UNKNOWN.search(text):
        facts["hours"] = None
    if what == "power_cut" and (_OPEN.search(text) or _SHUT.search(text)):
        facts["door_shut"] = not _OPEN.search(text)
    if len(warm) == 1 and (facts or _PLACE.search(text)):
        facts["core_c" if what in ("power_cut", "fire_out") or _CORE.search(text) else "room_c"] = warm[0].value
    return Happened(what, {**facts, "more": True}) if facts else None


DEVIATION_READERS: Final[dict[str, Callable[[str, Context], Intent | None]]] = {
    SLOT + what: partial(_facts, what) for what in ASKED
}
