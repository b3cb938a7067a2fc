"""Steps of a batch: which one is meant, and marking it done, left out, put off or forgotten."""

from collections.abc import Sequence
from datetime import datetime, timedelta
from typing import Final

from core.batch import material
from core.batch.assess import Assessment, Change
from core.batch.batch import Phase
from core.batch.events import Done, Event, Missed, Probe, Skipped, Snoozed, What
from core.batch.standing import effective
from core.errors import Gone
from core.plan.hours import wall_of
from core.plan.steps import Kind, Plan, State, Step
from core.safety.fridge import COLD_F
from core.safety.history import printed_f
from core.service import record, wishes
from core.service.turn import Turn
from core.store import batches, outbox, standing

EDIT = "#"  # between a message's name and the delivery that changed it
AHEAD_OF_TIME = timedelta(hours=3)  # a flip this much before its hour still is that flip
ALL_BUT_DUE = timedelta(minutes=30)
JUST_NOW = timedelta(hours=3)
_READ_BY: Final = {Kind.BRINE_CHECK: Probe.BRINE, Kind.FRIDGE_CHECK: Probe.FRIDGE}
_WARMED: Final = {Probe.FRIDGE: "warm_fridge", Probe.BRINE: "warm_brine"}
ASKED_LATELY: Final = timedelta(hours=6)
COOKS: Final = frozenset((Kind.LIGHT, Kind.MEAT_ON))
_ONCE = frozenset(Kind) - {Kind.FLIP, Kind.FRIDGE_CHECK, Kind.READING, Kind.CHILL_CHECK}


def find(turn: Turn, a: Assessment, meant: str | None, at: datetime, *, done: bool = True) -> Step:
    """The step that is meant by a key, a kind, or nothing; raises Gone where the plan has none.

    Of steps that come often, the one nearest to `at` that still waits, no more than a while before its hour. With
    nothing said, the one that is due or all but due, or whose hour is near the one that was told; else the one last
    called for, where it was done a while ago: done twice is once.
    `done` says that it is said to be done, and not left out or put off.
    """
    flipped = meant == Kind.FLIP and a.batch.phase is Phase.CURING
    # what was done counts, though nothing is planned
    if a.plan is None and meant is not None and (meant in _ONCE or flipped):
        return Step(meant, Kind(meant), at)
    plan = _plan(a)
    if meant is None:
        meant = _unnamed(turn, a, at, done)
    exact = plan.step(meant) if meant else None
    if exact is not None:
        return exact
    found = _nearest(plan, meant or "", at, done)
    early = done and turn.now - at > JUST_NOW and found.done_at is None and found.due - at > AHEAD_OF_TIME
    return Step(str(Kind.FLIP), Kind.FLIP, at) if early and found.kind is Kind.FLIP else found  # one more than planned


def _unnamed(turn: Turn, a: Assessment, at: datetime, done: bool) -> str:
    """The step that a bare «done», «did it at 6» or «later» means; raises Gone where none is."""
    plan = _plan(a)
    found = due_step(turn, a) or soon_step(a)
    if found is None and done:
        found = _about_then(plan, at, turn.now) or _called_lately(turn, a, at)
    if found is None:
        raise Gone("due")
    return _said_twice(plan, found, turn.now) if done else found


def _about_then(plan: Plan, at: datetime, now: datetime) -> str | None:
    """The step that waits and whose hour is near the one that was told; None where none was told, or none is near."""
    told = now - at > ALL_BUT_DUE
    near = [s for s in plan.steps if s.state in (State.DUE, State.AHEAD) and abs(s.due - at) <= AHEAD_OF_TIME]
    return min(near, key=lambda s: abs(s.due - at)).key if told and near else None


def _called_lately(turn: Turn, a: Assessment, at: datetime) -> str | None:
    """The step last called for in this chat, unless it was done long before `at`, or is met: then another is meant."""
    last = outbox.last_reminder(turn.tx, turn.said.chat)
    step = _plan(a).step(last.step) if last is not None and last.batch == a.batch.id and last.step else None
    if step is None or (step.done_at is not None and abs(at - step.done_at) > JUST_NOW):
        return None
    return None if step.kind is Kind.CHILL_CHECK else step.key


def _said_twice(plan: Plan, key: str, now: datetime) -> str:
    """The step as it is, or one of its kind that was done a while ago: «done» once more makes no second flip."""
    alike = [s for s in plan.steps if s.kind.value == key.split("/")[0] and s.done_at is not None]
    lately = [s for s in alike if s.done_at is not None and abs(now - s.done_at) < JUST_NOW]
    return lately[-1].key if lately else key


def _plan(a: Assessment) -> Plan:
    if a.plan is None:
        raise a.refusal or Gone("plan")
    return a.plan


def _nearest(plan: Plan, kind: str, at: datetime, done: bool) -> Step:
    try:
        alike = plan.of_kind(Kind(kind.split("/")[0]))
    except ValueError:
        raise Gone(f"step {kind}") from None
    waiting = [s for s in alike if s.state in (State.DUE, State.AHEAD)] or list(alike)
    if not waiting:  # wrapped though no wrap was planned: what was done counts, planned or not
        return Step(kind.split("/")[0], Kind(kind.split("/")[0]), at)
    reached = [s for s in waiting if s.due <= at + AHEAD_OF_TIME]
    just_done = [s for s in alike if s.done_at is not None and abs(at - s.done_at) < JUST_NOW]
    if done and just_done and not reached:  # said twice, by one or by two: the next one is not done by that
        return just_done[-1]
    passed = [s for s in alike if s.state is not State.DONE and s.due <= at + AHEAD_OF_TIME]
    if done and not reached:  # said of a time that has gone by: one that was let pass, and none that is to come
        reached = passed
    return min(reached or waiting, key=lambda s: abs(s.due - at))


def due_step(turn: Turn, a: Assessment) -> str | None:
    """The step that was last called for and still waits, or the first that is due."""
    if a.plan is None:
        return None
    last = outbox.last_reminder(turn.tx, turn.said.chat)
    if last is not None and last.batch == a.batch.id and last.step:
        step = a.plan.step(last.step)
        if step is not None and step.state in (State.DUE, State.AHEAD):
            return step.key
    due = [s for s in a.plan.steps if s.state is State.DUE and s.kind is not Kind.FRIDGE_CHECK]
    return due[-1].key if due else None


def soon_step(a: Assessment) -> str | None:
    """The step that comes next, where it is due or all but due."""
    following = a.plan.next_step() if a.plan else None
    return following.key if following is not None and following.due <= a.now + ALL_BUT_DUE else None


def of_day(a: Assessment, at: datetime) -> list[str]:
    """The flips and fridge readings of the local day of a moment that were not done."""
    wall = wall_of(a.person)
    steps = _plan(a).steps
    quiet = (s for s in steps if s.kind in (Kind.FLIP, Kind.FRIDGE_CHECK) and s.state is not State.DONE)
    return [s.key for s in quiet if wall.day(s.due) == wall.day(at)]


BEFORE: Final = {  # what cannot have been done later than a step
    Kind.INTO_CURE: (Kind.BRINE,),
    Kind.OUT: (Kind.INTO_CURE,),
    Kind.MEAT_ON: (Kind.INTO_CURE, Kind.OUT, Kind.LIGHT),
    Kind.OFF: (Kind.OUT, Kind.MEAT_ON),
    Kind.CHILL: (Kind.MEAT_ON, Kind.OFF),
    Kind.SLICE: (Kind.MEAT_ON, Kind.OFF, Kind.CHILL),
}
DAY_AHEAD: Final = timedelta(days=2)  # what is out of its cure may well be cooked a day sooner
EARLY_OUT: Final = timedelta(days=1)  # before it a rinse or a soak is asked about: nobody takes it out by a slip
TOLD_LATE: Final = {Kind.BRINE: timedelta(hours=6)}  # that it is mixed is often told when the meat is in
COOKED: Final = frozenset({Kind.OFF, Kind.REST, Kind.CHILL, Kind.SLICE, Kind.SERVE})
AFTER_THE_CURE: Final = frozenset({Kind.RINSE, Kind.SOAK, Kind.DRY, Kind.RUB, Kind.MEAT_ON})


def done_later(a: Assessment, step: Step, at: datetime) -> tuple[str, datetime] | None:
    """What comes before a step in the week and was done later than `at`: then the time cannot be right."""
    known = ((kind, a.batch.done.get(kind)) for kind in BEFORE.get(step.kind, ()))
    none = timedelta(0)
    found = [(str(k), done_at) for k, done_at in known if done_at and done_at > at + TOLD_LATE.get(k, none)]
    return max(found, key=lambda one: one[1], default=None)


def is_out(a: Assessment, at: datetime) -> bool:
    """Whether it was out of its cure by then, so that nothing lay there to be turned."""
    out = a.batch.done.get("out")
    return out is not None and at > out


def out_due(a: Assessment) -> datetime | None:
    """When the plan has it out of the cure; None where there is no plan, or it is out."""
    out = a.plan.step("out") if a.plan else None
    return None if out is None or out.state is State.DONE or "into_cure" not in a.batch.done else out.due


def probe_asked(a: Assessment) -> Probe | None:
    """The thermometer of brine or fridge that was called for lately and was not read since."""
    due = (s for s in (a.plan.steps if a.plan else ()) if s.state is State.DUE and a.now - s.due <= ASKED_LATELY)
    called = next((_READ_BY[step.kind] for step in due if step.kind in _READ_BY), None)
    warm = [probe for probe, what in _WARMED.items() if _is_read_again(a, probe, what)]
    return called or (warm[0] if len(warm) == 1 else None)


def _is_read_again(a: Assessment, probe: Probe, what: str) -> bool:
    """Whether the fridge, or the brine about the meat, was read or told to be too warm lately: it is read again."""
    if probe is Probe.BRINE and ("into_cure" not in a.batch.done or "out" in a.batch.done):
        return False
    last = a.batch.last(probe)
    told = max((at for at, incident in a.batch.incidents if incident.what == what), default=None)
    warm = None if last is None or printed_f(last.celsius) <= COLD_F else last.at
    if told is not None and (last is None or last.at < told):
        warm = told
    return warm is not None and a.now - warm <= ASKED_LATELY


def is_in_for_long(a: Assessment, kind: str, at: datetime) -> bool:
    """Whether a step after the cure is told of while the plan has the meat in it for a good while yet.

    What comes off a fire was out of its cure whatever the plan has, and nobody said when.
    """
    due = out_due(a)
    if due is None:
        return False
    return kind in COOKED or (kind in AFTER_THE_CURE and min(due, _cured_by(a) or due) - at > EARLY_OUT)


def _cured_by(a: Assessment) -> datetime | None:
    """When it has had the days that it needs, where the plan leaves it in for longer: for a later fire."""
    setup, into = a.batch.setup, a.batch.done.get("into_cure")
    days = material.in_the_cure(setup, a.cure, a.dose)
    if into is None or days is None:
        return None
    return into + timedelta(days=max(days.p90, setup.cure_days or 0.0))


def is_lit_early(a: Assessment, step: Step) -> bool:
    """Whether a fire is told of days before the plan has one: it may burn for something else."""
    soon = EARLY_OUT if "out" not in a.batch.done else DAY_AHEAD
    return step.kind is Kind.LIGHT and step.state is not State.DONE and step.due - a.now > soon


def done(turn: Turn, batch_id: str, step: Step, at: datetime, detail: str = "") -> Change:
    """A step was done; done twice is done once. What is rinsed came out of its cure, though nobody said so.

    Whoever cooks sooner than the house had put it off to may eat at the hour that was wished.
    """
    happened: list[tuple[What, datetime]] = [(Done(step.key, detail), at)]
    if step.kind in AFTER_THE_CURE:
        known = look(turn, batch_id).batch.done
        happened += [(Done("out"), at)] if "into_cure" in known and "out" not in known else []
    noted = mark(turn, batch_id, happened)
    return wishes.taken_up(turn, noted) if step.kind in COOKS else noted


def look(turn: Turn, batch_id: str) -> Assessment:
    """The batch as it stands in this turn."""
    return record.look(turn.tx, batch_id, turn.now)


def skipped(turn: Turn, batch_id: str, step: Step) -> Change:
    """A step is left out on purpose."""
    return mark(turn, batch_id, [(Skipped(step.key), turn.now)])


def missed(turn: Turn, batch_id: str, keys: Sequence[str], at: datetime) -> Change:
    """Steps were forgotten."""
    return mark(turn, batch_id, [(Missed(tuple(keys)), at)])


def snoozed(turn: Turn, batch_id: str, step: Step, until: datetime) -> Change:
    """A step is put off until a time."""
    return mark(turn, batch_id, [(Snoozed(step.key, until), turn.now)])


def mark(turn: Turn, batch_id: str, happened: Sequence[tuple[What, datetime]]) -> Change:
    """Several things that happened at once."""
    return record.add(turn, batch_id, happened)


def said_in(turn: Turn, batch_id: str, message: str) -> tuple[Event, ...]:
    """What was taken from one message of the channel, its earlier edits included, as it stands in the log."""
    standing = effective(batches.events(turn.tx, batch_id))
    return tuple(e for e in standing if e.message.split(EDIT)[0] == message)


def batch_of_message(turn: Turn, channel_key: str) -> str | None:
    """The batch that a message of ours was about."""
    found = standing.in_message(turn.tx, turn.said.chat, channel_key)
    return min(found) if len(found) == 1 else None  # one that spoke of several tells none


def step_of_message(turn: Turn, batch_id: str, channel_key: str) -> str | None:
    """The step of a batch that a reminder of ours called for."""
    row = outbox.find_by_channel_key(turn.tx, turn.said.chat, channel_key)
    return row.step if row and row.batch == batch_id else None


def batch_last_spoken_of(turn: Turn) -> str | None:
    """The batch of the latest reminder or reply in this chat."""
    return outbox.last_about(turn.tx, turn.said.chat)
