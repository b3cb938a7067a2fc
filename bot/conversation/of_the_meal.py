"""The meal that is meant where its day is not said: «guests here at 2», «actually make it 6pm»."""

from datetime import datetime

from bot.intents import when
from bot.intents.context import Context
from bot.intents.intents import Correct, Intent, MoveDeadline
from bot.intents.normal import normal
from core.batch.assess import Assessment


def in_mind(a: Assessment) -> datetime | None:
    """The meal as it is planned; on the day for which it was wanted that one, though the plan is a day late by now."""
    wanted = a.batch.setup.deadline
    if a.plan is None or wanted is None:
        return wanted
    today, day, planned = (at.astimezone(a.person.tz).date() for at in (a.now, wanted, a.plan.serve))
    return wanted if day == today < planned else a.plan.serve


def put_right(intent: Intent, text: str, a: Assessment) -> Intent:
    """A correction of an hour alone as that of the meal, where the batch has a meal and no other hour."""
    hour_alone = (
        isinstance(intent, Correct) and intent.at is not None and intent == Correct(at=intent.at, batch=intent.batch)
    )
    deadline = a.batch.setup.deadline
    if not hour_alone or deadline is None or a.batch.done or a.batch.readings:
        return intent
    context = Context(now=a.now, zone=a.person.zone, units=a.person.units, deadline=deadline)
    said = when.meal(normal(text, a.person.language), context)
    return MoveDeadline(to=said.at, batch=intent.batch) if said else intent
