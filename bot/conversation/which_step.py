"""Which step somebody means who names none, or takes one back: by what is open, and by what was noted just now."""

import re
from datetime import datetime, timedelta
from typing import Final

from bot.facts import facts
from bot.intents.intents import Snooze, StepDone, StepMissed, StepSkipped
from bot.reply import Reply
from bot.wording import marks
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.batch.events import Done, Missed, Probe
from core.plan.hours import wall_of
from core.plan.steps import Kind, State, Step
from core.service import batches, steps
from core.service.turn import Turn

FAR_FROM_IT: Final = timedelta(hours=6)  # «missed last night's» is not the flip of this morning
_BY_SOMEBODY: Final = re.compile(r"\b(?:already|did it|did that|has done it|schon)\b")  # and no bare «done»
AN_HOUR: Final = timedelta(hours=1)
A_DAY: Final = timedelta(days=1)
SOON: Final = timedelta(hours=3)  # a flip may be told so long before it is called for
NEEDS_NUMBER: Final = frozenset({Kind.BRINE_CHECK, Kind.FRIDGE_CHECK, Kind.READING, Kind.CHILL_CHECK})


_BRINE: Final = re.compile(r"\b(?:brine|pickle|(?:on|in|off) the (?:stove|hob)|boil\w*|simmer\w*|lake)\b")


_DRY: Final = re.compile(
    r"\b(?:rubbed (?:it |them |all )?(?:on|in(?!side)|over|all over)|rubbed (?:the )?(?:cure|salt|mix)"
    r"|dry (?:cured?|rub|brined?|salted)|massaged|sprinkled|trockengepökelt|eingerieben)\b"
)


def wet_or_dry(a: Assessment, step: Step, text: str) -> bool:
    """Whether somebody tells of a brine where a dry cure is to be weighed, or the reverse: its dose is another."""
    setup, said = a.batch.setup, text.lower()
    if a.batch.dosed is not None or step.kind not in (Kind.BRINE, Kind.INTO_CURE):
        return False
    if setup.method == "dry":
        weighs = step.kind is Kind.BRINE or setup.nitrite_target > 0.0  # plain salt holds nobody up
        return weighs and bool(_BRINE.search(said) or a.batch.last(Probe.BRINE))
    mixed = Kind.BRINE in a.batch.done
    return setup.method == "brine" and not mixed and not _BRINE.search(said) and bool(_DRY.search(said))


def none_then(a: Assessment, intent: StepSkipped, step: Step) -> tuple[Reply, ...]:
    """«not tonight», where the flip of tonight is done: the next one is none of tonight and is not left out for it."""
    if intent.at is None or abs(step.due - intent.at) <= FAR_FROM_IT:
        return ()
    return (Reply(marks.none_called(a), facts=facts(a), about=a.batch.id),)


def brine_said(a: Assessment, text: str) -> bool:
    """Whether a brine is spoken of beside a dry plan of which nobody told yet what went in."""
    return a.batch.setup.method == "dry" and a.batch.dosed is None and bool(_BRINE.search(text.lower()))


def noted_just_now(turn: Turn, a: Assessment, intent: StepDone | StepMissed | StepSkipped | Snooze) -> str:
    """The kind of step that was noted a while ago and of which it is now said that it is not done; "" where none is.

    «no didnt», and of a step by its name also «not flipped yet»; what is due now is meant before what was done.
    """
    plan, last = a.plan, next(reversed(batches.standing(turn, a.batch.id)), None)
    if plan is None or last is None or not isinstance(last.what, Done) or turn.now - last.said_at > steps.JUST_NOW:
        return ""
    kind = last.what.step.split("/")[0]
    match intent:
        case StepMissed(step=step, at=None, whole_day=False):
            untrue = step == kind or (step is None and kind == Kind.FLIP)  # never the start of the cure, unnamed
        case Snooze(step=step, until=None, by=None):
            untrue = step == kind
        case _:
            untrue = False
    return kind if untrue and all(s.state is not State.DUE for s in plan.steps if s.kind == kind) else ""


def missed_just_now(turn: Turn, a: Assessment, intent: StepDone | StepMissed | StepSkipped | Snooze) -> Step | None:
    """«forgot the morning ones, done now»: the step that the same message tells as missed, done late."""
    last = next(reversed(batches.standing(turn, a.batch.id)), None)
    if not isinstance(intent, StepDone) or last is None or not isinstance(last.what, Missed) or a.plan is None:
        return None
    return a.plan.step(last.what.steps[-1]) if last.said_at == turn.said.said_at else None


def moves(turn: Turn, following: Step, intent: StepDone | StepMissed | StepSkipped | Snooze, said: str) -> bool:
    """«remind me at 9», «skip tonight», «she did it already», said before the flip of 20:00: that one is meant."""
    match intent:
        case StepSkipped():
            return following.kind is Kind.FLIP and following.due - turn.now <= SOON
        case Snooze(until=until, by=by):
            to = until or (turn.now + by if by else turn.now)
            soon_flip = following.kind is Kind.FLIP and following.due - turn.now <= SOON
            since = turn.now if soon_flip else following.due
            return since < to < max(following.due, turn.now) + (A_DAY if soon_flip else FAR_FROM_IT)
        case StepDone(step=None):  # noted in error a flip does no harm
            told = _BY_SOMEBODY.search(said.lower()) is not None
            return told and following.kind is Kind.FLIP and following.due - turn.now <= SOON
        case _:
            return False


def deed(a: Assessment, intent: StepDone, step: Step) -> Step:
    """A bare «done» beside a reading that is called for: the deed that is open too, since a number would be typed."""
    if intent.step is not None or step.kind not in NEEDS_NUMBER or a.plan is None:
        return step
    soon = [s for s in a.plan.of_kind(Kind.FLIP) if s.state is State.AHEAD and s.due - a.now <= SOON]
    open_ = [s for s in a.plan.steps if s.state is State.DUE and s.kind not in NEEDS_NUMBER]
    others = [s for s in open_[::-1] if s.kind is not Kind.FLIP]  # of two flips the nearer is meant
    return next(iter((*others, *soon, *open_[::-1])), step)


def of_that_day(turn: Turn, a: Assessment, intent: StepDone | StepMissed | StepSkipped | Snooze) -> Step | None:
    """«did it fri»: the step that was noted on that day, whatever its hour; None where none was."""
    if not isinstance(intent, StepDone) or not intent.some_time or intent.at is None or a.plan is None:
        return None
    wall, alike = wall_of(turn.person), [s for s in a.plan.steps if s.key.startswith(intent.step or "")]
    noted = [s for s in alike if s.done_at is not None and wall.day(s.done_at) == wall.day(intent.at)]
    return noted[-1] if noted else None


def on_its_day(until: datetime | None, step: Step, a: Assessment) -> datetime | None:
    """«wake me at 6 for the fire», days before it: at that hour of its own day; None where that is no hour of it."""
    begins = step.kind in (Kind.THAW, Kind.BRINE, Kind.BRINE_CHECK, Kind.INTO_CURE)  # whenever somebody likes
    if until is None or begins or step.state is not State.AHEAD or step.due - until <= FAR_FROM_IT:
        return until
    wall = wall_of(a.person)
    there = until + (wall.day(step.due) - wall.day(until))
    return there if step.due - SOON <= there <= step.due + AN_HOUR else None


def another_flip_by(until: datetime, step: Step, a: Assessment) -> bool:
    """Whether a flip that is put off so long falls together with one after it."""
    flips = a.plan.of_kind(Kind.FLIP) if a.plan and step.kind is Kind.FLIP else ()
    return any(step.due < flip.due <= until <= flip.due + SOON for flip in flips)


def of_a_number(a: Assessment, missed: StepMissed) -> Step | None:
    """The next reading of the kind that was forgotten; None where none is to come, or where it is no reading.

    «forgot about it», in the chill, is of its core: nothing else decides there.
    """
    meant = missed.step or (str(Kind.CHILL_CHECK) if a.batch.phase is Phase.CHILLING else None)
    alike = [s for s in a.plan.steps if s.kind == meant and s.kind in NEEDS_NUMBER] if a.plan else []
    return next((s for s in alike if s.state in (State.DUE, State.AHEAD)), None)


def noted_then(a: Assessment, missed: StepMissed) -> Step | None:
    """The step that is said to be missed and was noted as done about then, or on that day; None where none was."""
    if missed.at is None or a.plan is None:
        return None
    wall, day = wall_of(a.person), wall_of(a.person).day(missed.at)
    alike = [(s, s.done_at) for s in a.plan.steps if s.key.startswith(missed.step or "") and s.done_at is not None]
    near = [
        (abs(at - missed.at), s.key, s)
        for s, at in alike
        if abs(at - missed.at) <= FAR_FROM_IT or (missed.whole_day and wall.day(at) == day)
    ]
    return min(near)[2] if near else None
