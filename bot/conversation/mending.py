"""Changes and corrections: one event is added, the plan is derived again, and only the differences are told."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from bot.conversation import starting
from bot.conversation.understand import Understood
from bot.facts import facts
from bot.intents.intents import Change, Correct, MoveDeadline, Undo
from bot.measures import from_house, to_house
from bot.reply import Reply
from bot.wording import mends
from core.batch.assess import Assessment
from core.batch.events import Done, Event, Probe, Read, What
from core.errors import Gone
from core.person import Person
from core.plan.hours import wall_of
from core.service import batches, record
from core.service.turn import Turn

PERSONAL = frozenset({"cure_nitrite_fraction"})  # what a person has in the cupboard, not only in this batch


def change(turn: Turn, meant: Understood, intent: Change | MoveDeadline) -> Sequence[Reply]:
    """Something of the setup stated or changed."""
    batch = meant.of(intent.batch)
    match intent:
        case Change(changes):
            return _changed(turn, batch, changes)
        case MoveDeadline(to, by):
            a = batches.look(turn, batch)
            return _changed(turn, batch, {"deadline": _deadline(a, to, by)})


def _deadline(a: Assessment, to: datetime | None, by: timedelta | None) -> datetime:
    if to is not None:
        return to
    base = a.batch.setup.deadline or (a.plan.serve if a.plan else None)
    if base is None or by is None:
        raise Gone("plan")
    if by % timedelta(days=1):
        return base + by
    wall = wall_of(a.person)  # whole days are meant on the calendar: lunch stays lunch over a clock change
    return wall.at(wall.day(base) + by, wall.clock(base).replace(tzinfo=None))


def _changed(turn: Turn, batch: str, changes: dict[str, object]) -> Sequence[Reply]:
    for field in PERSONAL & changes.keys():
        turn.keep_person(**{field: changes[field]})
    done = batches.change(turn, batch, dict(changes))
    turn.ask(None)
    if done.after.plan is None:
        return starting.show(turn, done.after)
    if done.before is None or done.before.plan is None:
        return starting.show(turn, done.after)
    text = mends.changed(done, changes)
    return (Reply(text, facts=facts(done.after), about=batch),)


def correct(turn: Turn, meant: Understood, intent: Correct | Undo) -> Sequence[Reply]:
    """What was said is taken back, or something else stands in its place."""
    batch = meant.of(intent.batch)
    if isinstance(intent, Undo):
        events, done = batches.undo(turn, batch)
        return (Reply(mends.undone(events, done), facts=facts(done.after), about=batch),)
    if intent.to_batch is not None:
        return _to_other(turn, batch, intent.to_batch)
    event = _meant(turn, batch, intent)
    what, at = _instead(event, intent, turn.person)
    done = batches.correct(turn, batch, event.number, what, at=at)
    return (Reply(mends.corrected(event, what, at, done), facts=facts(done.after), about=batch),)


def _meant(turn: Turn, batch: str, intent: Correct) -> Event:
    """The event that a correction is about: the last reading, or the last thing said where only its time is wrong."""
    if intent.value is None and intent.unit is None and intent.probe is None:
        return batches.last_event(turn, batch)
    found = batches.last_readings(turn, batch)
    meant = _in_house(intent, turn.person)
    if meant is None:
        return found[0][0] if intent.probe is None else found[-1][0]
    return min(found, key=lambda one: abs(one[1].celsius - meant))[0]


def _in_house(intent: Correct, person: Person) -> float | None:
    """The number by which the wrong reading is found: what it was, else what it should be. [°C]"""
    number = intent.value if intent.was is None else intent.was
    return None if number is None else to_house(number, intent.unit or person.units.temperature)


def _instead(event: Event, intent: Correct, person: Person) -> tuple[What, datetime | None]:
    at = intent.at
    if intent.days_back:
        at = event.at - timedelta(days=intent.days_back)
    if not isinstance(event.what, Read):
        if at is None or not isinstance(event.what, Done):
            raise Gone("event")
        return event.what, at
    return _reading(event.what, intent, person), at


def _reading(was: Read, intent: Correct, person: Person) -> Read:
    probe = intent.probe or was.probe
    own = person.units.temperature
    unit = intent.unit or own
    if intent.value is not None:
        return Read(probe, to_house(intent.value, unit))
    if intent.unit is not None:  # the same number, in the other unit
        other = "f" if intent.unit == "c" else "c"
        return Read(probe, to_house(round(from_house(was.celsius, other), 1), intent.unit))
    return replace(was, probe=Probe(probe))


def _to_other(turn: Turn, batch: str, other: str) -> Sequence[Reply]:
    """«that was for the ham»: the last thing said moves from one batch to another."""
    event = batches.last_event(turn, batch)
    batches.correct(turn, batch, event.number, None)
    done = record.add(turn, other, [(event.what, event.at)])
    return (Reply(mends.moved_over(event, done.after), facts=facts(done.after), about=other),)
