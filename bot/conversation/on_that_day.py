"""A piece that is half said: «13.5 lb, eat at 3» keeps the day of the meal that was named before it."""

from datetime import datetime
from typing import Any

from bot.conversation.half import adds_to
from bot.conversation.understand import Understood
from bot.intents import when
from bot.intents.context import Context
from bot.intents.intents import Start
from bot.intents.normal import normal
from core.service.turn import Turn


def kept(turn: Turn, meant: Understood, intent: Start) -> dict[str, Any]:
    """The meal on the day that was named before, where the line adds an hour and no day; else nothing."""
    was = ((meant.asked or {}).get("said") or {}).get("deadline")
    if not isinstance(was, datetime) or "deadline" not in intent.said or not adds_to(intent, meant.asked):
        return {}
    context = Context(now=meant.message.said_at, zone=turn.person.zone, units=turn.person.units, deadline=was)
    said = when.meal(normal(meant.message.text, turn.person.language), context)
    hour_alone = said is not None and said.hour_said and not said.day_said
    return {"deadline": said.at} if said is not None and hour_alone else {}
