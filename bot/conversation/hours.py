"""An hour that was taken and may have been the other one of the day: the other is one tap away."""

from dataclasses import replace
from datetime import datetime, time
from typing import Final

from bot.conversation.understand import Understood
from bot.intents.clock import instant, last_at, next_at, wall_of
from bot.intents.hours import find_clock
from bot.intents.intents import Intent, MoveDeadline, Pause, Snooze, Start, StepDone
from bot.intents.normal import normal
from bot.reply import Reply
from bot.wording import asking, numbers
from bot.wording.language import say
from core.errors import Gone
from core.service import batches
from core.service.turn import Turn

MEALS: Final = range(7, 23)  # hours at which people sit down; nobody is asked about a dinner at five in the morning
ASKED: Final = frozenset({"answer_kind", "refused", "asked", "noted_before"})


def with_the_other(turn: Turn, meant: Understood, intent: Intent, reply: Reply) -> Reply:
    """The reply with a tap for the other hour, where an hour was said without its half of the day."""
    if meant.message.pressed is not None or reply.about is None or ASKED & reply.facts.keys():
        return reply
    said = find_clock(normal(meant.message.text, turn.person.language))
    if said is None or said.half or len(said.times()) < 2:
        return reply
    if said.written and turn.person.units.temperature == "c":  # «8:00» on a clock of 24 hours stands as written
        return reply
    taken = _taken(intent)
    if taken is None or wall_of(taken, turn.person.zone).hour % 12 != said.hour % 12:
        return reply
    other = _other(turn, intent, taken)
    if other is None:
        return reply
    now = turn.now
    label = say("No, {name}", name=numbers.when(other, turn.person, now))
    return replace(reply, buttons=(*reply.buttons, (asking.button(label, _as(intent, reply, other)),)))


def _taken(intent: Intent) -> datetime | None:
    match intent:
        case StepDone(at=at, also_previous=False):
            return at
        case Snooze(until=until):
            return until
        case MoveDeadline(to=to) | Pause(until=to):
            return to
        case Start(said=said) if "deadline_hour" not in intent.assumed:
            return said.get("deadline")
        case _:
            return None


def _other(turn: Turn, intent: Intent, taken: datetime) -> datetime | None:
    """The same hour of the other half of the day, where that makes sense: done before, put off or eaten after now."""
    zone, wall = turn.person.zone, wall_of(taken, turn.person.zone)
    clock = time((wall.hour + 12) % 24, wall.minute)
    match intent:
        case StepDone():
            return _since_it_began(turn, intent, last_at(clock, turn.now, zone).at)
        case Snooze():
            return next_at(clock, turn.now, zone).at
        case Pause(since=since):
            other = instant(wall.date(), clock, zone).at
            return other if other > (since or turn.now) else None
        case _:
            other = instant(wall.date(), clock, zone).at
            return other if clock.hour in MEALS and other > turn.now else None


def _since_it_began(turn: Turn, intent: StepDone, at: datetime) -> datetime | None:
    """Nothing of a batch was done before there was one."""
    try:
        begun = min(batches.look(turn, row.id).batch.started for row in batches.open_here(turn))
    except (Gone, ValueError):
        return None
    return at if at >= begun else None


def _as(intent: Intent, reply: Reply, other: datetime) -> Intent:
    about = reply.about
    match intent:
        case StepDone(step=step, detail=detail):
            return StepDone(str(reply.facts.get("step") or step or ""), other, detail, batch=about)
        case Snooze(step=step):
            return Snooze(until=other, step=str(reply.facts.get("step") or step or "") or None, batch=about)
        case Pause():
            return Pause(other, batch=about)
        case _:
            return MoveDeadline(to=other, batch=about)
