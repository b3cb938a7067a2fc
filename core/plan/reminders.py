"""Which reminders a plan asks for, and when: derived, never stored by hand.

Quiet steps (flips, fridge checks) keep the quiet hours, but for an hour in them that somebody named; fire, chill and
safety break them. A step that matters and was not answered is asked about once more, and one that waits for another
to be confirmed is named with that one (`folding.py`). A flip and a fridge check at the same hour are one message; the
fridge that nobody read with it is asked for once more an hour after the flip. The hours of quiet and the one repeat
are common practice, no source.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from core.plan.hours import Wall
from core.plan.steps import Kind, Plan, State, Step, Urgency

AGAIN_AFTER = {Urgency.NORMAL: timedelta(hours=3), Urgency.PIERCING: timedelta(minutes=30)}
NOT_REPEATED = frozenset({Kind.FLIP, Kind.FRIDGE_CHECK, Kind.READING, Kind.SERVE, Kind.USE_BY, Kind.DEBRIEF})
READING_AGAIN = timedelta(hours=2)  # who does not answer is asked anew, and never sooner
READING_CALLS = 4  # then nobody is there
UNSPOKEN = frozenset({Kind.SERVE, Kind.REST})  # the answer to «off» says how to rest
FRIDGE_AFTER_FLIP = timedelta(hours=1)  # till the fridge that nobody read with the flip is asked for by itself
FLIP_AND_FRIDGE = "flip_and_fridge"


@dataclass(frozen=True)
class Wanted:
    """A reminder that should be waiting: `occurrence` 0 is the first, 1 the one repeat; a reading is asked for
    more often.

    `put_off` says that the person named the time, however soon after the last reminder. `chat` is the chat to which
    it goes; "" is that of the batch.
    """

    step: str
    kind: str
    due_at: datetime
    urgency: Urgency
    occurrence: int = 0
    put_off: bool = False
    chat: str = ""


@dataclass(frozen=True)
class Pause:
    """While what is not piercing is held back: from `since`, or now, to `until`, or for as long as it lasts."""

    since: datetime | None = None
    until: datetime | None = None

    def holds(self, due: datetime) -> bool:
        """Whether a reminder that is due then falls into it."""
        return (self.since is None or due >= self.since) and (self.until is None or due < self.until)


def wanted(plan: Plan, wall: Wall, *, pause: Pause | None = None, now: datetime | None = None) -> tuple[Wanted, ...]:
    """Every reminder that the plan asks for, in order of time.

    A `pause` holds back what is not piercing: to its end, or for as long as it lasts. A repeat whose time has
    gone by at `now` was said or comes too late: a step that falls due in the past is asked for once, not twice.
    """
    waiting = [s for s in plan.steps if s.state in (State.AHEAD, State.DUE) and s.kind not in UNSPOKEN]
    waiting = [s for s in waiting if not s.within or s.put_off]
    if pause and pause.until is None:
        waiting = [s for s in waiting if s.urgency is Urgency.PIERCING or not pause.holds(s.due)]
    merged = {s.due for s in waiting if s.kind is Kind.FLIP}
    turned = {s.due: s.done_at for s in plan.steps if s.kind is Kind.FLIP and s.state is State.DONE and s.done_at}
    found: list[Wanted] = []
    for step in waiting:
        if step.kind is Kind.FRIDGE_CHECK and step.due in merged:
            continue
        found.extend(_of_step(_after_flip(step, turned), _kind(step, waiting), wall, pause))
        if step.kind is Kind.READING:
            found.extend(_readings_again(step, plan))
    open_ones = (w for w in found if w.occurrence == 0 or now is None or w.due_at >= now)
    return tuple(sorted(open_ones, key=lambda w: (w.due_at, w.step)))


def _readings_again(step: Step, plan: Plan) -> Iterator[Wanted]:
    """A reading that does not come is asked for every two hours, while the meat is on by the slow end of its band."""
    off = plan.step("off")
    end = (off.late or off.due) if off else step.due
    for count in range(1, READING_CALLS):
        again = step.due + count * READING_AGAIN
        if again < end:
            yield Wanted(step.key, step.kind.value, again, step.urgency, count)


def _after_flip(step: Step, turned: dict[datetime, datetime]) -> Step:
    """A fridge check that was called for with its flip is asked for by itself only a while after that was done."""
    if step.kind is not Kind.FRIDGE_CHECK or step.due not in turned:
        return step
    return replace(step, due=max(step.due, turned[step.due] + FRIDGE_AFTER_FLIP))


def _kind(step: Step, waiting: list[Step]) -> str:
    with_fridge = any(s.kind is Kind.FRIDGE_CHECK and s.due == step.due for s in waiting)
    return FLIP_AND_FRIDGE if step.kind is Kind.FLIP and with_fridge else step.kind.value


def _of_step(step: Step, kind: str, wall: Wall, pause: Pause | None) -> Iterator[Wanted]:
    due = step.due
    if step.urgency is not Urgency.PIERCING:
        held = pause.until if pause and pause.until and pause.holds(due) else None
        due = due if step.put_off and held is None else wall.awake(held or due)
    yield Wanted(step.key, kind, due, step.urgency, put_off=step.put_off)
    if step.kind in NOT_REPEATED:
        return
    wait = AGAIN_AFTER.get(step.urgency)
    if wait is not None:
        again = due + wait
        yield Wanted(step.key, kind, again if step.urgency is Urgency.PIERCING else wall.awake(again), step.urgency, 1)
