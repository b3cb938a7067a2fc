"""The meal that is meant where its day is not said: «guests here at 2», «actually make it 6pm»."""

from datetime import datetime, timedelta
from typing import Final

from bot.intents import when
from bot.intents.context import Context
from bot.intents.intents import Correct, Intent, MoveDeadline
from bot.intents.meal_hours import stays
from bot.intents.normal import normal
from bot.reply import Message
from core.batch.assess import Assessment
from core.batch.events import Changed, Event, Started
from core.service import batches
from core.service.turn import Turn

JUST_NOW: Final = timedelta(hours=3)


def in_mind(a: Assessment) -> datetime | None:
    """The meal as it is planned; on the day for which it was wanted that one, though the plan is a day late by now."""
    wanted = a.batch.setup.deadline
    if a.plan is None or wanted is None:
        return a.plan.serve if a.plan else wanted
    today, day, planned = (at.astimezone(a.person.tz).date() for at in (a.now, wanted, a.plan.serve))
    return wanted if day == today < planned else a.plan.serve


def kept(turn: Turn, intent: Intent, message: Message) -> tuple[str, ...]:
    """«no wait keep it saturday»: of several batches those whose meal is, or was, on that day of the week.

    Of these it is the one that was moved off it just now.
    """
    if not isinstance(intent, MoveDeadline) or not stays(normal(message.text, turn.person.language)):
        return ()
    day = intent.to.astimezone(turn.person.tz).weekday()
    those = {row.id: _days(turn, row.id) for row in batches.open_here(turn)}
    fits = tuple(key for key, days in those.items() if day in days)
    moved = tuple(key for key in fits if those[key][-1] != day and _last(turn, key) >= turn.now - JUST_NOW)
    return moved if len(moved) == 1 else fits


def _days(turn: Turn, batch: str) -> list[int]:
    """The days of the week on which the meal of a batch was planned, in the order in which they were said."""
    said = [_said(event) for event in batches.standing(turn, batch)]
    return [at.astimezone(turn.person.tz).weekday() for at in said if at]


def _last(turn: Turn, batch: str) -> datetime:
    return max(event.said_at for event in batches.standing(turn, batch) if _said(event))


def _said(event: Event) -> datetime | None:
    what = event.what
    said = what.setup if isinstance(what, Started) else what.changes if isinstance(what, Changed) else {}
    return said.get("deadline")


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
