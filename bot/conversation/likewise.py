"""«the bacon too»: what was just said of one batch is said of another."""

import re
from datetime import timedelta
from typing import Final

from bot.intents.context import Context
from bot.intents.intents import Intent, Reading, StepDone, Temperature
from bot.intents.normal import normal
from bot.intents.read import said_too
from core.batch.events import Done, Event, Probe, Read
from core.service import batches
from core.service.turn import Turn

_ME_TOO: Final = re.compile(r"^(?:me too|me as ?well|(?:so )?did i|i did (?:too|as ?well)|same here)$")
JUST_SAID: Final = timedelta(minutes=30)


def likewise(turn: Turn, text: str, context: Context) -> tuple[Intent, ...]:
    """The steps and the fridge of the last message of who speaks, for the batch that a line adds; none for what else
    was said there, since a core or a brine is not that of another piece. «me too»: the steps that another told."""
    if _ME_TOO.match(normal(text, turn.person.language)):
        named, theirs = batches.just_said_by_another(turn, JUST_SAID)
        return tuple(said for event in theirs if isinstance(said := _of(event, named), StepDone))
    batch = said_too(text, context)
    said = (batches.just_said(turn, batch, JUST_SAID) or _done_by_another(turn, batch)) if batch else ()
    meant = [_of(event, batch) for event in said if not (isinstance(event.what, Done) and "_check" in event.what.step)]
    return tuple(intent for intent in meant if intent) if all(meant) else ()


def _done_by_another(turn: Turn, batch: str) -> tuple[Event, ...]:
    """The steps that somebody else has just told of another batch: «did mine too»."""
    named, theirs = batches.just_said_by_another(turn, JUST_SAID)
    return () if named == batch else tuple(event for event in theirs if isinstance(event.what, Done))


def _of(event: Event, batch: str | None) -> Intent | None:
    at = event.at if event.at != event.said_at else None
    match event.what:
        case Done(step, detail):
            return StepDone(step.partition("/")[0], at, detail, batch=batch)
        case Read(Probe.FRIDGE, celsius):
            return Reading((Temperature(celsius, "c", Probe.FRIDGE, at),), batch=batch)
        case _:
            return None
