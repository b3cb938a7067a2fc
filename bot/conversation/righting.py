"""What was said put right: a corrected reading is doubted like any other, and says what it would have said."""

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

from bot.conversation import reading
from bot.conversation.understand import Understood, context_of
from bot.facts import facts
from bot.intents.clause import to_batch
from bot.intents.intents import Correct, Reading, StepDone, Temperature, Undo
from bot.intents.temperatures.lone import besides
from bot.intents.temperatures.plausible import Number, everything, meanings
from bot.measures import from_house
from bot.reply import Reply
from bot.wording import mends, unclear
from core.batch.assess import Change as Differs
from core.batch.doubts import RANGES
from core.batch.events import Done, Event, Probe, Read, What
from core.person import Person
from core.plan.steps import Kind, Step
from core.service import batches
from core.service import readings as taking
from core.service.turn import Turn
from core.units import Celsius

_BARE_HOURS = re.compile(  # «at 6 not 7», and no «6 pm», no «6:15», no day of the week
    r"^(?!.*(?:\d ?[ap]\.?m\b|\d[:.]\d\d|noon|midnight|night|morning|evening|day\b))"
    r".*(?:\b\d{1,2},? (?:and )?not (?:at )?\d{1,2}\b|\bnot (?:at )?\d{1,2},? (?:but )?(?:at )?\d{1,2}\b)"
)
LONG_AGO = timedelta(hours=12)  # a correction is of what was said just now, and of nothing of another day
MINUTES_AGO = timedelta(minutes=10)
PLAINLY = 3.0  # times as near to a number is the reading that it puts right
MOST = 3  # taps for one number


def doubted(turn: Turn, batch: str, event: Event, instead: tuple[Read, datetime]) -> Reply | None:
    """The question about a corrected reading that cannot be either; None where it may well be true."""
    a = batches.without(turn, batch, event.number)
    what, at = instead
    plain = [(what.probe, what.celsius, at)]
    doubt = taking.doubt(a, plain)
    if doubt is None:
        return None
    unit = turn.person.units.temperature
    typed = Temperature(round(from_house(what.celsius, unit), 1), unit)
    return reading.ask(turn, a, plain, doubt, typed, instead_of=event.number)


def taken_off(turn: Turn, batch: str, event: Event, intent: Correct) -> Reply | None:
    """«that was the fridge, not the meat», of what no fridge can read: off the meat, and its number is asked for.

    None where the number itself was put right, or the place is the same: then it is asked what is true.
    """
    was = event.what.probe if isinstance(event.what, Read) else None
    if intent.probe is None or intent.value is not None or was in (None, intent.probe):
        return None
    done = batches.correct(turn, batch, event.number, None)
    turn.ask(None)
    text = f"{mends.undone((event,), done)}\n{mends.not_there()}"
    return Reply(text, facts=facts(done.after) | {"answer_kind": "asked_back", "asked": "number"}, about=batch)


def just_read(turn: Turn, batch: str, meant: Celsius | None) -> Sequence[tuple[Event, Read]]:
    """The readings of the last message; of another place, told minutes before it, where a number is plainly of that.

    «151», «pit 260», «sorry 156»: the core.
    """
    last = batches.last_readings(turn, batch)
    places = {read.probe for _, read in last}
    others = [one for one in batches.readings(turn, batch) if one[1].probe not in places]
    if meant is None or not others or turn.now - others[-1][0].said_at > MINUTES_AGO:
        return last
    far = min(abs(read.celsius - meant) for _, read in last)
    return others[-1:] if PLAINLY * abs(others[-1][1].celsius - meant) < far else last


def nearest(found: Sequence[tuple[Event, Read]], meant: Celsius, person: Person) -> tuple[Event, Read]:
    """Of the readings of one message the one that a number puts right: that can be so warm, is its slip, is nearest."""

    def far(one: tuple[Event, Read]) -> tuple[bool, bool, float]:
        low, high = RANGES[one[1].probe]
        typed, put = (round(from_house(c, person.units.temperature)) for c in (one[1].celsius, meant))
        return not low <= meant <= high, not _slipped(str(typed), str(put)), abs(one[1].celsius - meant)

    return min(found, key=far)


def _slipped(typed: str, meant: str) -> bool:
    """Whether a number is another with its digits in another order, or with one of them lost or doubled."""
    short, long = sorted((typed, meant), key=len)
    if len(short) == len(long):
        return sorted(short) == sorted(long)
    return any(long[:at] + long[at + 1 :] == short for at in range(len(long)))


def nothing_to_mend(turn: Turn, meant: Understood, batch: str, intent: Correct) -> Reply:
    """A correction of what nobody sent: what its number can be as a reading of now, to tap."""
    a = batches.look(turn, batch)
    context = context_of(turn, meant.message, None, a)
    number = None if intent.value is None else Number(intent.value, intent.unit, intent.probe)
    may_be = (meanings(number, context) or everything(number.value, context, number.unit)) if number else ()
    bare = number is not None and number.unit is None and number.probe is None
    sizes = [to_batch(one, batch) for one in besides(number.value, context)] if bare and number else []
    taps = unclear.taps([*(Reading((t,), batch=batch) for t in may_be[:MOST]), *sizes], turn.person)
    body = facts(a) | {"answer_kind": "asked_back", "asked": "number"}
    return Reply(unclear.nothing_to_mend(), buttons=taps, facts=body, about=batch)


def settle_doubt(turn: Turn, asked: dict[str, Any], answer: str) -> Sequence[Reply]:
    """The doubted correction kept, kept as suggested, or forgotten: then what was said first stands."""
    batch, number = asked["batch"], int(asked["instead_of"])
    event = next((e for e in batches.standing(turn, batch) if e.number == number), None)
    turn.ask(None)
    if answer == "drop" or event is None:
        a = batches.look(turn, batch)
        return (Reply(mends.as_it_was(event, a), facts=facts(a), about=batch),)
    ((probe, celsius, at),) = reading.waiting(asked)
    if answer == "suggested":
        probe, celsius = Probe(asked.get("suggested_probe") or probe), float(asked["suggested"] or celsius)
        at = asked.get("suggested_at") or at
    return put_right(turn, batch, event, Read(probe, celsius), at)


def put_right(turn: Turn, batch: str, event: Event, what: What, at: datetime | None) -> Sequence[Reply]:
    """Something else put in the place of an event; a reading then says what it would have said."""
    done = batches.correct(turn, batch, event.number, what, at=at)
    text = mends.corrected(event, what, at, done)
    if isinstance(what, Read):
        done = _check_put_right(turn, batch, event, done)
        return (reading.put_right(turn, done, (what.probe, what.celsius, at or event.at), text),)
    return (Reply(text, facts=facts(done.after), about=batch),)


def _check_put_right(turn: Turn, batch: str, event: Event, done: Differs) -> Differs:
    """After a reading put right the brine counts as read cold by the number that stands now, and by no other."""
    now = next((e.what for e in batches.standing(turn, batch) if e.number == event.number), None)
    cold = isinstance(now, Read) and now.probe is Probe.BRINE and now.celsius <= reading.BRINE_COLD_C
    checks = [e for e in batches.standing(turn, batch) if e.said_at == event.said_at and e.what == Done("brine_check")]
    if cold and not checks and "brine" in done.after.batch.done:
        return Differs(done.before, taking.take(turn, batch, [(Done("brine_check"), event.at)]).after)
    for check in () if cold else checks:
        done = Differs(done.before, batches.correct(turn, batch, check.number, None).after)
    return done


def long_ago(turn: Turn, batch: str, intent: Undo) -> Event | None:
    """The flip that would be taken back, where it was told so long ago that another one may be meant."""
    done = (e for e in batches.standing(turn, batch) if isinstance(e.what, Done) and e.what.step.startswith(Kind.FLIP))
    last = next(iter([*done][-1:]), None) if intent.step == Kind.FLIP else None
    return last if last is not None and turn.now - last.said_at > LONG_AGO else None


def sure_of_it(turn: Turn, batch: str, event: Event) -> Reply:
    """What was noted last of a step that is denied, with the tap that takes it back."""
    a = batches.look(turn, batch)
    text, rows = mends.done_then(Step(str(Kind.FLIP), Kind.FLIP, event.at, done_at=event.at), a)
    return Reply(text, buttons=rows, facts=facts(a) | {"answer_kind": "asked_back"}, about=batch)


def first_told(turn: Turn, meant: Understood, intent: Correct | Undo) -> StepDone | None:
    """«flipped at 9 not 8», where no flip was told yet: done at that hour, and no other deed is put right by it."""
    if not isinstance(intent, Correct) or intent.step is None or intent.at is None:
        return None
    standing = batches.standing(turn, meant.of(intent.batch))
    told = any(isinstance(e.what, Done) and e.what.step.partition("/")[0] == intent.step for e in standing)
    return None if told else StepDone(intent.step, intent.at, batch=intent.batch)


def in_that_half(intent: Correct, was: datetime, text: str, now: datetime) -> Correct:
    """«it went in at 6 not 7», of what was noted for the morning: in the half of the day of what it is to correct."""
    if intent.at is None or not _BARE_HOURS.search(text.lower()):
        return intent
    half = timedelta(hours=12)
    near = min((intent.at, intent.at - half, intent.at + half), key=lambda at: (at > now, abs(at - was)))
    return replace(intent, at=near)
