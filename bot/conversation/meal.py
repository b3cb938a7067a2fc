"""The meal moved: to when, whether it can be, and asked again where it cannot."""

from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

from bot.conversation.understand import Understood
from bot.facts import facts
from bot.intents.intents import MoveDeadline
from bot.intents.normal import normal
from bot.intents.questions import is_question
from bot.reply import Reply
from bot.wording import sooner
from core.batch.assess import Assessment, assess
from core.errors import Gone
from core.plan.hours import wall_of
from core.service import batches
from core.service.turn import Turn


def moved(a: Assessment, intent: MoveDeadline) -> dict[str, Any]:
    """What moving the meal makes of the setup: its time, and how it is eaten where that was told with it."""
    eaten = {"purpose": intent.eaten} if intent.eaten else {}
    return {"deadline": _deadline(a, intent.to, intent.by), **eaten}


def _deadline(a: Assessment, to: datetime | None, by: timedelta | None) -> datetime:
    """When the meal is to be: at a time, or by so much later than planned. Raises Gone without a plan."""
    if to is not None:
        return to
    base = a.batch.setup.deadline or (a.plan.serve if a.plan else None)
    if base is None or by is None:
        raise Gone("plan")
    if by % timedelta(days=1):
        return base + by
    wall = wall_of(a.person)  # whole days are meant on the calendar: lunch stays lunch over a clock change
    return wall.at(wall.day(base) + by, wall.clock(base).replace(tzinfo=None))


def only_asked(turn: Turn, meant: Understood, batch: str, wanted: datetime) -> Reply | None:
    """«can we eat a day earlier?» where it cannot be: that is said, and the plan stays."""
    a = batches.look(turn, batch)
    if a.plan is None or not is_question(normal(meant.message.text, turn.person.language)):
        return None
    then = assess(replace(a.batch, setup=replace(a.batch.setup, deadline=wanted)), a.person, turn.now)
    if then.plan is not None and then.plan.late < sooner.WORTH:
        return None
    body = facts(a) | {"answer_kind": "batch", "topic": "in_time"}
    return Reply(sooner.moved(a, then, wanted), facts=body, about=batch)


def ask_again(turn: Turn, a: Assessment, why: str) -> tuple[Reply, ...]:
    """A meal that cannot be: the plan stays as it is, and another day is asked for."""
    turn.ask({"slot": "deadline", "batch": a.batch.id})
    body = facts(a) | {"answer_kind": "asked_back", "asked": "deadline"}
    return (Reply(why, facts=body, about=a.batch.id),)
