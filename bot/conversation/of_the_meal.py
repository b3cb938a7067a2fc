"""«actually make it 6pm», while nothing is done or read yet: there is no other hour than that of the meal."""

from bot.intents import when
from bot.intents.context import Context
from bot.intents.intents import Correct, Intent, MoveDeadline
from bot.intents.normal import normal
from core.batch.assess import Assessment


def of_the_meal(intent: Intent, text: str, a: Assessment) -> Intent:
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
