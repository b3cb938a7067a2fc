"""Changes and corrections: one event is added, the plan is derived again, and only the differences are told."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

from bot.conversation import (
    as_planned,
    meal,
    moving,
    pumped,
    reading,
    righting,
    spoons,
    starting,
    told_of_setup,
    undecided,
    water,
)
from bot.conversation.understand import Understood
from bot.facts import facts
from bot.intents.intents import Change, Correct, MoveDeadline, Start, Undo
from bot.intents.withdrawn import READING
from bot.measures import from_house, to_house
from bot.reply import Reply
from bot.wording import mends, put_in, refusals, safety, settings, unclear
from core.batch.assess import Assessment
from core.batch.assess import Change as Differs
from core.batch.events import Changed, Done, Event, Probe, Read, What
from core.errors import Gone
from core.person import Person
from core.service import batches
from core.service.turn import Turn

SIZES = frozenset({"kg", "lb", "mm", "cm", "in"})
OTHER_UNIT = {"kg": "lb", "lb": "kg"}
SAME_READING_K = 0.6  # a number said again is the one that was kept, rounding included
PACKET = frozenset({"cure_nitrite_fraction", "cure_nitrate_fraction"})
PERSONAL = frozenset({"cure_nitrite_fraction"})  # what a person has in the cupboard, not only in this batch


def change(turn: Turn, meant: Understood, intent: Change | MoveDeadline) -> Sequence[Reply]:
    """Something of the setup stated or changed."""
    if isinstance(intent, Change) and intent.changes.keys() == PERSONAL and not (intent.batch or meant.batch):
        starting.keep_packet(turn, intent.changes)
        return (Reply(settings.changed(turn.person, intent.changes, turn.now)),)
    batch = meant.of(intent.batch)
    match intent:
        case Change(changes):
            a = batches.look(turn, batch)
            if dry := water.no_bath(a, changes):
                others = {name: value for name, value in changes.items() if name not in water.SAID}
                return (*(_changed(turn, batch, spoons.without_silence(a, others)) if others else ()), dry)
            changes = pumped.other_way(a, changes)
            if back := undecided.eaters(turn, batch, changes) or pumped.refused(a, changes):
                return (back,)
            wanted = pumped.settled(a, water.settled(a, spoons.without_silence(a, _longer(a, changes))))
        case MoveDeadline():
            wanted = meal.moved(batches.look(turn, batch), intent)
    deadline = wanted.get("deadline")
    if deadline and (unfit := refusals.unfit_date(turn.person, deadline, turn.now)):
        return meal.ask_again(turn, batches.look(turn, batch), unfit)
    if deadline and isinstance(intent, MoveDeadline) and (answered := meal.only_asked(turn, meant, batch, deadline)):
        return (answered,)
    replies = _changed(turn, batch, wanted)
    assumed = intent.assumed if isinstance(intent, MoveDeadline) else ()
    return tuple(starting.as_taken(turn, reply, assumed) for reply in replies)


def _longer(a: Assessment, changes: dict[str, Any]) -> dict[str, Any]:
    """«two days longer»: counted from what is planned."""
    wanted = dict(changes)
    more = wanted.pop("cure_days_more", None)
    if more is None:
        return wanted
    if a.plan is None:
        raise Gone("plan")
    return {**wanted, "cure_days": round(a.plan.cure_days + more, 1)}


def _changed(turn: Turn, batch: str, changes: dict[str, object]) -> Sequence[Reply]:
    done = batches.change(turn, batch, dict(changes))
    turn.ask(None)
    packet = {"cure_nitrate_fraction": done.after.batch.setup.cure_nitrate_fraction, **changes}
    if not changes.keys() & PACKET:
        return _told(turn, done, changes)
    starting.keep_packet(turn, packet)
    return (*_told(turn, done, changes), *starting.dosed_too(turn, batch, packet))


def _told(turn: Turn, done: Differs, changes: dict[str, object]) -> Sequence[Reply]:
    """What a change made of a batch: its plan, why there is none, or what moves."""
    had_plan = done.before is not None and done.before.plan is not None
    if done.after.plan is None or not had_plan:
        return (*as_planned.show(turn, done.after, had_plan=had_plan), *as_planned.never_told(done))
    unsaid, rows = put_in.of_cure_unsaid(done.after, changes)
    text = f"{mends.changed(done, changes)}\n{unsaid}".rstrip()
    if done.before is not None and done.before.ledger.thrown and done.after.ledger.thrown:
        text = f"{safety.still_thrown(done.after)}\n{text}"  # a plan that moves is no sign that it may be eaten
    return (Reply(text, buttons=rows, facts=facts(done.after), about=done.after.batch.id),)


def _undone(turn: Turn, batch: str, intent: Undo) -> Sequence[Reply]:
    """The last step of a kind, or the last message: of each batch that it spoke of, where none was named."""
    if intent.step:
        try:
            taken = (batches.undo_last(turn, batch, intent.step),)
        except Gone:
            if intent.step == READING:
                raise
            a = batches.look(turn, batch)
            return (Reply(mends.never_noted(intent.step, a), facts=facts(a), about=batch),)
    else:
        taken = (batches.undo(turn, batch),) if intent.batch else batches.undo_everywhere(turn, batch)
    for events, _ in taken:
        _out_of_the_cupboard(turn, events)
    return [Reply(mends.undone(events, d), facts=facts(d.after), about=d.after.batch.id) for events, d in taken]


def correct(turn: Turn, meant: Understood, intent: Correct | Undo) -> Sequence[Reply]:
    """What was said is taken back, or something else stands in its place."""
    if isinstance(intent, Correct) and intent.unit in SIZES:
        return _in_other_unit(turn, meant, intent)
    batch = meant.of(intent.batch)
    if isinstance(intent, Undo):
        told_long_ago = meant.message.pressed is None and righting.long_ago(turn, batch, intent)
        return (righting.sure_of_it(turn, batch, told_long_ago),) if told_long_ago else _undone(turn, batch, intent)
    if intent.to_batch == "":
        return moving.wrong_batch(turn, batch)
    if intent.to_batch is not None:
        return moving.to_other(turn, batch, intent.to_batch)
    asked = meant.asked or {}
    if asked.get("slot") == "doubt" and asked["batch"] == batch and _of_reading(intent):
        turn.ask(None)
        if asked.get("instead_of") is None:
            return reading.mended(turn, asked, intent)
    if not _of_reading(intent):
        return _at_another_time(turn, meant, batch, intent)
    if (last := told_of_setup.just_told(turn, batch, intent)) is not None:
        return _changed(turn, batch, dict(last)) if last else (righting.nothing_to_mend(turn, meant, batch, intent),)
    if not batches.readings(turn, batch) and (told := told_of_setup.by_its_number(turn, batch, intent)):
        return _changed(turn, batch, told)
    event = _meant(turn, batch, _in_its_unit(turn, batch, intent))
    intent = _in_its_unit(turn, batch, intent) if intent.value is not None else intent
    if event is not None and intent.gone:
        done = batches.correct(turn, batch, event.number, None)
        return (Reply(mends.undone((event,), done), facts=facts(done.after), about=batch),)
    if event is None and (told := told_of_setup.by_its_number(turn, batch, intent)):
        return _changed(turn, batch, told)
    if event is None:
        return (righting.nothing_to_mend(turn, meant, batch, intent),)
    what, at = _instead(event, intent, turn.person)
    if isinstance(what, Read):
        doubted = righting.doubted(turn, batch, event, (what, at or event.at))
        if doubted is not None:
            return (righting.taken_off(turn, batch, event, intent) or doubted,)
    return righting.put_right(turn, batch, event, what, at)


def _in_other_unit(turn: Turn, meant: Understood, intent: Correct) -> Sequence[Reply]:
    """«lbs not kg»: the same number in the other unit, of a start that is half said or of the batch in hand."""
    unit = intent.unit or "kg"
    half = (meant.asked or {}).get("said") or {}
    field = "mass" if unit in ("kg", "lb") else "thickness"
    kept = half.get(field) if half else getattr(batches.look(turn, meant.of(intent.batch)).batch.setup, field)
    was = intent.unit_was or OTHER_UNIT.get(unit)
    if (
        kept is None
        or was is None
        or (not half and intent.unit_was is None and told_of_setup.is_weighed(turn, meant.of(intent.batch)))
    ):
        return (Reply(unclear.which_size(), facts={"answer_kind": "asked_back", "asked": field}),)
    if told_of_setup.decimals(from_house(kept, unit)) < told_of_setup.decimals(
        from_house(kept, was)
    ):  # nobody types 3.4019: it is so already
        text = unclear.so_already(from_house(kept, unit), unit)
        return (Reply(text, facts={"answer_kind": "asked_back", "asked": field}),)
    value = to_house(round(from_house(kept, was), 2), unit)
    if half:
        return starting.start(turn, meant, Start({field: value}))
    return _changed(turn, meant.of(intent.batch), {field: value})


def _out_of_the_cupboard(turn: Turn, events: Sequence[Event]) -> None:
    """A strength that was taken back is not dosed by in the next batch either: it is asked for again."""
    for event in events:
        if isinstance(event.what, Changed) and event.by == turn.person.id:
            for field in PERSONAL & event.what.changes.keys():
                turn.keep_person(**{field: None})


def done_at(turn: Turn, batch: str, key: str, at: datetime) -> Sequence[Reply]:
    """A step that was done already, said again with its hour: then that is when it was."""
    said = [e for e in batches.standing(turn, batch) if isinstance(e.what, Done) and e.what.step == key]
    return righting.put_right(turn, batch, said[-1], said[-1].what, at)


def _at_another_time(turn: Turn, meant: Understood, batch: str, intent: Correct) -> Sequence[Reply]:
    """«that was yesterday's», «that was at nine»: whatever the last message said was so then.

    A check that a reading answered goes with it, so the check of the day itself is open again.
    """
    of_message = _said_together(turn, batch, intent)
    if not of_message:
        return (righting.nothing_to_mend(turn, meant, batch, intent),)
    intent = righting.in_that_half(intent, of_message[0].at, meant.message.text, turn.now)
    if intent.was is not None:  # «the 140 was at 5»: of that reading, and of nothing else that was said
        named = _meant(turn, batch, intent)
        if named is None:
            return (righting.nothing_to_mend(turn, meant, batch, intent),)
        of_message = [named]
    event = next((e for e in of_message if isinstance(e.what, Read)), of_message[0])
    what, at = _instead(event, intent, turn.person)
    if isinstance(what, Read):
        doubted = righting.doubted(turn, batch, event, (what, at or event.at))
        if doubted is not None:
            return (doubted,)
    for other in of_message:
        if other.number != event.number and isinstance(other.what, Read):
            batches.correct(turn, batch, other.number, None, at=_time(other, intent))
        elif other.number != event.number and intent.days_back:
            batches.correct(turn, batch, other.number, None)
    return righting.put_right(turn, batch, event, what, at)


def _said_together(turn: Turn, batch: str, intent: Correct) -> list[Event]:
    """The step that a correction names, as it was last done; where it names none, all that the last message said."""
    last, standing = batches.last_event(turn, batch), batches.standing(turn, batch)
    named = [e for e in standing if isinstance(e.what, Done) and e.what.step.split("/")[0] == intent.step]
    return named[-1:] if intent.step else [e for e in standing if e.message == last.message]


def _time(event: Event, intent: Correct) -> datetime | None:
    return event.at - timedelta(days=intent.days_back) if intent.days_back else intent.at


def _of_reading(intent: Correct) -> bool:
    """Whether it is the number, the unit or the place that was wrong, and not only the time."""
    return intent.gone or any(said is not None for said in (intent.value, intent.unit, intent.probe))


def _meant(turn: Turn, batch: str, intent: Correct) -> Event | None:
    """The reading that a correction is about; None where none of the last hours is, or none had the wrong number."""
    meant = _in_house(intent, turn.person)
    told = batches.readings(turn, batch)[::-1]
    told = righting.just_read(turn, batch, None if intent.probe else meant) if told and intent.was is None else told
    found = [one for one in told if turn.now - one[0].said_at <= righting.LONG_AGO]
    if not found or meant is None:
        return _unnamed(found, intent)
    event, read = righting.nearest(found, meant, turn.person)
    return None if intent.was is not None and abs(read.celsius - meant) > SAME_READING_K else event


def _unnamed(found: Sequence[tuple[Event, Read]], intent: Correct) -> Event | None:
    """The core that was none; or the one reading of another place, where that place was not read in the same breath."""
    if intent.gone:
        return next((e for e, read in found if read.probe is Probe.CORE), None)
    if any(read.probe is intent.probe for _, read in found):
        return None
    return found[0][0] if found else None


def _in_its_unit(turn: Turn, batch: str, intent: Correct) -> Correct:
    """«39 not 38», after «fridge 38 f» of who counts in °C: in the unit in which that number was read."""
    if intent.was is None or intent.unit is not None:
        return intent
    read = [what.celsius for _, what in batches.readings(turn, batch)[-1:] and batches.last_readings(turn, batch)]
    own = turn.person.units.temperature
    both = (own, "c" if own == "f" else "f")
    fits = (unit for unit in both if any(abs(c - to_house(intent.was, unit)) <= SAME_READING_K for c in read))
    return replace(intent, unit=next(fits, None))


def _in_house(intent: Correct, person: Person) -> float | None:
    """The number by which the wrong reading is found: what it was, else what it should be. [°C]"""
    number = intent.value if intent.was is None else intent.was
    return None if number is None else to_house(number, intent.unit or person.units.temperature)


def _instead(event: Event, intent: Correct, person: Person) -> tuple[What, datetime | None]:
    at = _time(event, intent)
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
