"""Steps done, left out, put off or forgotten; what went wrong; and what the slice showed in the end."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

from bot.conversation import as_planned, households, mending, out_of_turn, undecided, which_step
from bot.conversation.understand import Understood
from bot.conversation.which_step import FAR_FROM_IT, NEEDS_NUMBER
from bot.facts import facts, step_facts
from bot.intents.deviations import SLOT
from bot.intents.intents import Debrief, Happened, Snooze, StepDone, StepMissed, StepSkipped
from bot.reply import Reply
from bot.wording import (
    answers,
    asking,
    cooling,
    debriefs,
    incidents,
    last_resort,
    marks,
    mends,
    put_in,
    readings,
    turning,
    wraps,
)
from core.batch.assess import Assessment, Change
from core.batch.batch import Phase
from core.batch.events import Probe, Rated, Sliced, Tasted, Took, Weighed
from core.batch.ways import alternatives
from core.batch.weighed import is_told
from core.errors import Gone, TooSoon, UnknownCure
from core.plan.hours import wall_of
from core.plan.steps import Kind, State, Step, Urgency
from core.service import batches, learning, steps, wishes
from core.service.turn import Turn

USUAL_SNOOZE = timedelta(minutes=30)
A_MINUTE = timedelta(minutes=1)
HALF_AN_HOUR = timedelta(minutes=30)
BY_ITSELF = NEEDS_NUMBER | {Kind.DEBRIEF, Kind.USE_BY}  # no «done» is said of it
EARLIER_TOO = {  # what is said to be done long before its hour, by the phase
    Phase.COOKING: (Kind.WRAP, Kind.OFF), Phase.RESTING: (Kind.CHILL,), Phase.CHILLING: (Kind.SLICE, Kind.SERVE),
    Phase.STORED: (Kind.SERVE,),
}  # fmt: skip
MOST = 2  # taps under one question
LONGEST_WORDS = 200  # characters that are kept of what was said beside a mark
SAFETY_STEPS = frozenset({Kind.BRINE_CHECK, Kind.CHILL, Kind.CHILL_CHECK, Kind.OFF})
DOSED = frozenset({Kind.BRINE, Kind.INTO_CURE, Kind.FLIP})
THE_BATCH_ITSELF = frozenset({Kind.BRINE, Kind.INTO_CURE, Kind.OUT, Kind.MEAT_ON})


def mark(turn: Turn, meant: Understood, intent: StepDone | StepMissed | StepSkipped | Snooze) -> Sequence[Reply]:
    """A step marked, and what comes next."""
    a = batches.look(turn, meant.of(intent.batch))
    if isinstance(a.refusal, TooSoon) and isinstance(intent, StepDone) and intent.step != Kind.THAW:
        return _gone_on_with(turn, meant, intent, a.refusal)
    at = getattr(intent, "at", None) or meant.message.said_at
    if meant.message.pressed is None and (untrue := which_step.noted_just_now(turn, a, intent)):
        events, change = batches.undo_last(turn, a.batch.id, untrue)
        return (Reply(mends.undone(events, change), facts=facts(change.after), about=a.batch.id),)
    called = isinstance(intent, StepMissed) and intent.step is None  # «damn, forgot»: what was called for last
    noted = which_step.of_that_day(turn, a, intent)
    try:
        step = noted or steps.find(turn, a, intent.step, at, done=isinstance(intent, StepDone) or called)
    except Gone:
        if isinstance(intent, StepMissed):
            return _missed(turn, a, (), intent)
        following = a.plan.next_step() if a.plan and intent.step is None else None
        if following is None:
            raise
        late = which_step.missed_just_now(turn, a, intent)
        if late is None and not which_step.moves(turn, following, intent, meant.message.text):
            return (_nothing_due(a, following, intent),)
        step = late or following
    match intent:
        case StepDone():
            return _done(turn, meant, which_step.deed(a, intent, step), intent, at)
        case StepMissed():
            return _missed(turn, a, _not_done(a, intent, step, at), intent)
        case StepSkipped():
            return which_step.none_then(a, intent, step) or _skipped(turn, a, step)
        case Snooze():
            return _put_off(turn, a, step, intent)


def _put_off(turn: Turn, a: Assessment, step: Step, intent: Snooze) -> Sequence[Reply]:
    """«later»: until what was said, or in half an hour, and no quiet step in the night."""
    until, named = which_step.on_its_day(intent.until, step, a), intent.until is not None or intent.by is not None
    if intent.until is not None and until is None:
        return (Reply(marks.is_called(step, a), facts=facts(a) | step_facts(step), about=a.batch.id),)
    if until is not None and which_step.another_flip_by(until, step, a):
        return _skipped(turn, a, step)  # «remind me tomorrow»
    soonest = turn.now + (intent.by or USUAL_SNOOZE)  # «later today» is no minute that has gone by
    if not named and step.state is State.AHEAD and step.due > soonest:
        return (Reply(marks.is_called(step, a, later=True), facts=facts(a) | step_facts(step), about=a.batch.id),)
    if not named and step.urgency is not Urgency.PIERCING:
        morning = wall_of(a.person).awake(soonest)
        if step.kind is Kind.FLIP and morning > soonest:
            return _skipped(turn, a, step)  # nobody named an hour of the night: the morning has a flip of its own
        soonest = morning
    return _snoozed(turn, a, step, until if until and until > turn.now else soonest)


def _nothing_due(a: Assessment, following: Step, intent: StepDone | StepMissed | StepSkipped | Snooze) -> Reply:
    """«done» or «later» where nothing was called for: what may be done is asked, or what comes is called."""
    if isinstance(intent, Snooze):
        later = intent.until is None and intent.by is None
        return Reply(
            marks.is_called(following, a, later=later), facts=facts(a) | step_facts(following), about=a.batch.id
        )
    ahead = [s for s in a.plan.steps if s.state is State.AHEAD and s.kind not in BY_ITSELF] if a.plan else []
    may_be = [s for s in ahead if s.due - a.now <= steps.AHEAD_OF_TIME or s.kind in EARLIER_TOO.get(a.batch.phase, ())]
    if not (isinstance(intent, StepDone) and may_be):
        raise Gone("due")
    text, rows = last_resort.nothing_due(may_be[:MOST], following, a)
    return Reply(text, buttons=rows, facts=facts(a) | {"answer_kind": "asked_back"}, about=a.batch.id)


def _gone_on_with(turn: Turn, meant: Understood, intent: StepDone, refusal: TooSoon) -> Sequence[Reply]:
    """Who goes on with a batch whose meal comes too soon takes the earliest that it can have: so it is planned."""
    a = batches.look(turn, meant.of(intent.batch))
    strong = next((way for way in alternatives(a) if way.name == "strong" and way.in_time), None)
    if strong is not None and intent.step == Kind.BRINE and "method" not in a.batch.setup.said:
        a = batches.change(turn, a.batch.id, dict(strong.changes)).after  # who mixes a brine has chosen it
        first, *rest = mark(turn, meant, intent)
        return (replace(first, text="\n".join((first.text, put_in.strong_taken(a)))), *rest)
    a = wishes.put_off(turn, a.batch.id, refusal.earliest).after
    try:
        first, *rest = as_planned.show(turn, a) if isinstance(a.refusal, TooSoon) else mark(turn, meant, intent)
    except Gone:  # nothing of the new plan is meant by it: then the plan is the answer
        first, *rest = as_planned.show(turn, a)
    return (replace(first, text="\n".join((marks.meal_as_it_can_be(a, refusal), first.text))), *rest)


def _done(turn: Turn, meant: Understood, step: Step, intent: StepDone, at: datetime) -> Sequence[Reply]:
    a = batches.look(turn, meant.of(intent.batch))
    if step.state is State.DONE and step.done_at is not None:
        if told := _at_another_hour(turn, a, step, intent):
            return told
        if intent.detail in marks.TASTED:
            change = steps.done(turn, a.batch.id, step, step.done_at, intent.detail)
            return (_marked(change, step, marks.tasted(intent.detail, marks.taste_noted(change.after))),)
        noted = "\n".join(t for t in (marks.already(step, a), households.before(turn, a, step)) if t)
        text = (readings.in_the_chill(a) if intent.step is None else "") or noted
        body = facts(a) | step_facts(step) | {"noted_before": True}
        return (Reply(text, facts=body, about=a.batch.id),)
    if step.kind in NEEDS_NUMBER:
        text = readings.has_it(step, a) or marks.needs_number(step, a)
        return (Reply(text, facts=facts(a) | step_facts(step), about=a.batch.id),)
    if asked := out_of_turn.asked(meant, a, step, at):
        return asked
    change = steps.done(turn, a.batch.id, step, min(at, turn.now), intent.detail)
    if intent.also_previous:
        change = _previous(turn, change, step)
    since = None if meant.goes_on else meant.began or a  # what moves is said of all of them at once
    said = marks.tasted(intent.detail, marks.done(step, change, min(at, turn.now), since))
    eats = step.kind in (Kind.SLICE, Kind.SERVE) and not meant.goes_on  # «sliced and eaten»: told once
    if eats and (beside := cooling.beside_the_meal(change.after, intent.detail)):
        noted, _, rest = said.partition("\n")
        said = "\n".join(line for line in (noted, beside, rest) if line)
    never_in = step.kind in (Kind.OUT, *steps.AFTER_THE_CURE) and "into_cure" not in change.after.batch.done
    marked = _marked(change, step, f"{said}\n{marks.never_in(change.after)}" if never_in else said)
    if step.kind in DOSED and not meant.goes_on and isinstance(change.after.refusal, UnknownCure):  # it has no dose
        text, rows = asking.cure(a.batch.id)
        turn.ask({"slot": "cure", "batch": a.batch.id})
        return (replace(marked, text=f"{marked.text}\n{text}", buttons=rows),)
    if step.kind is Kind.WRAP and a.batch.setup.wrap == "none" and not intent.detail:
        text, rows = wraps.in_which(change.after)
        return (replace(marked, text=f"{marked.text}\n{text}", buttons=rows),)
    eaten = step.kind is Kind.SERVE
    return (_looked_back_at(turn, change.after, marked) if eaten else out_of_turn.beside(meant, a, step, marked),)


def _at_another_hour(turn: Turn, a: Assessment, step: Step, intent: StepDone) -> Sequence[Reply]:
    """A step that was done already, told with another hour: so it was then, unless it cannot have been."""
    apart = HALF_AN_HOUR if step.kind is Kind.FLIP else A_MINUTE  # «last night» is no other hour than 20:05
    if intent.at is None or step.done_at is None or intent.some_time or abs(intent.at - step.done_at) < apart:
        return ()
    if before := steps.done_later(a, step, intent.at):
        return out_of_turn.too_soon(a, step, intent.at, before)
    return mending.done_at(turn, a.batch.id, step.key, min(intent.at, turn.now))


def _looked_back_at(turn: Turn, a: Assessment, reply: Reply) -> Reply:
    """The first of the three questions of the end, asked once it is eaten; of what is to be thrown away none is."""
    question = debriefs.next_question(a)
    if question is None or a.ledger.thrown:
        return reply
    turn.ask(question)
    text, rows = debriefs.asked(a)
    return replace(reply, text=f"{reply.text}\n{text}", buttons=rows)


def off_before(turn: Turn, batch_id: str) -> None:
    """It came off and nobody said so: the last reading on the fire is the earliest, and the careful, time for it."""
    a = batches.look(turn, batch_id)
    last = a.batch.last(Probe.CORE)
    step = steps.find(turn, a, "off", turn.now)
    steps.done(turn, batch_id, step, last.at if last else turn.now)


def _previous(turn: Turn, change: Change, step: Step) -> Change:
    """«and last night too»: the one before, of the same kind, if it was left open."""
    plan = change.after.plan
    alike = [s for s in plan.of_kind(step.kind) if s.due < step.due] if plan else []
    earlier = alike[-1] if alike else None
    if earlier is None or earlier.state is State.DONE:
        return change
    return steps.done(turn, change.after.batch.id, earlier, earlier.due)


def _not_done(a: Assessment, intent: StepMissed, step: Step, at: datetime) -> list[str]:
    """The steps that were missed: of the day and the kind that were named; none where that one was noted as done."""
    if intent.whole_day:
        return [key for key in steps.of_day(a, at) if intent.step is None or key.startswith(intent.step)]
    ahead = intent.at is None and step.state is State.AHEAD  # what has not been called for was not missed
    if ahead or (intent.step is None and step.state is State.DONE):
        return []
    if intent.at is None or abs(step.due - at) <= FAR_FROM_IT:
        return [step.key]
    alike = a.plan.of_kind(step.kind) if a.plan else []
    near = [s for s in alike if s.state is not State.DONE and abs(s.due - at) <= FAR_FROM_IT]
    return [min(near, key=lambda s: abs(s.due - at)).key] if near else []


def _missed(turn: Turn, a: Assessment, keys: Sequence[str], intent: StepMissed) -> Sequence[Reply]:
    named = [step for key in keys if a.plan is not None and (step := a.plan.step(key)) is not None]
    if not named:
        if unread := which_step.of_a_number(a, intent):  # a reading is made good at once
            return (Reply(marks.needs_number(unread, a), facts=facts(a) | step_facts(unread), about=a.batch.id),)
        step = which_step.noted_then(a, intent)
        text, rows = mends.done_then(step, a) if step else (turning.none_missed(a), ())
        return (Reply(text, buttons=rows, facts=facts(a), about=a.batch.id),)
    change = steps.missed(turn, a.batch.id, keys, turn.now)
    return (_marked(change, named[0], marks.missed(named, change)),)


def _skipped(turn: Turn, a: Assessment, step: Step) -> Sequence[Reply]:
    if step.kind in SAFETY_STEPS | THE_BATCH_ITSELF:
        text = marks.not_skipped(step, a) if step.kind in SAFETY_STEPS else marks.no_batch_without(step, a)
        return (Reply(text, facts=facts(a) | step_facts(step), about=a.batch.id),)
    change = steps.skipped(turn, a.batch.id, step)
    return (_marked(change, step, marks.skipped(step, change)),)


def _snoozed(turn: Turn, a: Assessment, step: Step, until: datetime) -> Sequence[Reply]:
    change = steps.snoozed(turn, a.batch.id, step, until)
    return (_marked(change, step, marks.snoozed(step, change, until)),)


def _marked(change: Change, step: Step, text: str) -> Reply:
    after = change.after
    if after.ledger.thrown:  # whatever is done with it, that comes first, and nothing comes next
        text = "\n".join((incidents.thrown(change, step.kind), text.partition("\n")[0]))
        return Reply(text, facts=facts(after) | step_facts(step), about=after.batch.id)
    text = f"{put_in.told_wrong(after)}\n{text}".lstrip() if step.kind is Kind.INTO_CURE else text  # not heeded before
    told, rows = change.before is None or is_told(change.before.batch), asking.next_buttons(after)
    if told and not is_told(after.batch):
        unknown, taps = put_in.never_told(after)
        text, rows = f"{text}\n{unknown}", (*taps, *rows)
    return Reply(text, buttons=rows, facts=facts(after) | step_facts(step), about=after.batch.id)


def note(turn: Turn, meant: Understood, intent: Happened | Debrief) -> Sequence[Reply]:
    """What went wrong, or what the slice showed."""
    batch = meant.of(intent.batch)
    match intent:
        case Happened(what, _, at):
            change = learning.happened(turn, batch, what, _aged(intent, meant), at or meant.message.said_at)
            question, rows, slot = undecided.decides(change.after, what)
            if slot or str((meant.asked or {}).get("slot")).startswith(SLOT):
                turn.ask({"slot": slot, "batch": batch} if slot else None)
            text = "\n".join(t for t in (answers.incident(change.after, what), question) if t)
            return (Reply(text, buttons=rows, facts=facts(change.after) | {"happened": what}, about=batch),)
        case Debrief():
            change = learning.debrief(turn, batch, _looked_back(intent, meant.message.text))
            text, rows = debriefs.thanks(change, turn.person)
            turn.ask(debriefs.next_question(change.after))
            return (Reply(text, buttons=rows, facts=facts(change.after), about=batch),)


def _looked_back(intent: Debrief, typed: str) -> list[Weighed | Sliced | Tasted | Took | Rated]:
    told: list[Weighed | Sliced | Tasted | Took | Rated] = []
    told += [] if intent.mass is None else [Weighed(intent.mass)]
    told += [] if intent.grey is None and not intent.unmeasured else [Sliced(intent.grey, intent.of)]
    told += [] if intent.salt is None else [Tasted(intent.salt)]
    told += [] if intent.rated is None else [Rated(*intent.rated, typed[:LONGEST_WORDS])]
    return told + ([] if intent.hours is None else [Took(intent.hours)])


def _aged(intent: Happened, meant: Understood) -> dict[str, Any]:
    """What was told, with how long after it happened its core was read [h]; an answer to a reading begins anew."""
    anew = {"more"} if (meant.asked or {}).get("anew") else set()
    told = {name: value for name, value in intent.facts.items() if name not in anew}
    if intent.at is None or intent.facts.get("core_c") is None:
        return told
    return {**told, "core_after_h": (meant.message.said_at - intent.at) / timedelta(hours=1)}
