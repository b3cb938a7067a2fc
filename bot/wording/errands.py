"""Words for somebody who steps out for some hours: what falls due meanwhile, and what may be left alone."""

from collections.abc import Sequence
from datetime import datetime, timedelta

from bot.wording import numbers, plans, steps, talked_of, turning
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.plan.steps import Step

LONGEST = timedelta(hours=12)  # beyond it somebody is away, and no more out for an errand


def out_for(a: Assessment, span: timedelta) -> str:
    """Whether it may be left for so long, and what is called for before then."""
    nothing = say("Nothing falls due in {span}. {next}", span=numbers.span(span), next=plans.coming(a)).strip()
    return f"{_leave(a)}\n{meanwhile(a, span) or nothing}"


def meanwhile(a: Assessment, span: timedelta) -> str:
    """What is called for before so long is over; "" where nothing is."""
    due = [s for s in plans.waiting(a.plan) if s.due <= a.now + span] if a.plan else []
    listed = "; ".join(f"{numbers.when(s.due, a.person, a.now)} {steps.name(s, a)}" for s in due)
    return say("Due meanwhile: {listed}.", listed=listed) if listed else ""


def _leave(a: Assessment) -> str:
    match a.batch.phase:
        case Phase.COOKING:
            return say(
                "The meat does not mind, a fire does: somebody stays with it. Read core and pit before you go and when you are back, lid shut."
            )
        case Phase.RESTING if "chill" not in a.batch.done:
            return say(
                "Wrapped in foil and towels in a shut, dry box it may be left, with a probe in it; on the counter not.\n"
                "Under {hot} the clock of the chill runs: read it when you are back.",
                hot=numbers.both(60.0, a.person),
            )
        case Phase.CHILLING | Phase.RESTING if not talked_of.is_cold(a):
            return say("Fill up the ice before you go, and read the core when you are back: its clock runs.")
        case _:
            return say("Go: in a fridge at {limit} or below it can be left.", limit=numbers.both(4.4, a.person))


def no_flip_on(a: Assessment, day: datetime) -> str:
    """Whether the flips of a day to come may be left out."""
    return say(
        "They may be left out on {day}: turn it before and after. What may not wait is the fridge: {limit} or below.",
        day=numbers.day(day, a.person),
        limit=numbers.both(4.4, a.person),
    )


def flip_at(a: Assessment, when: str) -> str:
    """A flip at another hour than the plan's."""
    return say(
        "{when} is as good: a flip some hours late or early does no harm. {next}", when=when, next=turning.flip_next(a)
    )


def due_between(a: Assessment, since: datetime, until: datetime) -> list[Step]:
    """What falls due between two times, each kind once."""
    waiting = plans.waiting(a.plan) if a.plan else ()
    there = sorted((s for s in waiting if since <= s.due < until), key=lambda s: s.due)
    return [s for n, s in enumerate(there) if all(s.kind is not before.kind for before in there[:n])]


def listed(a: Assessment, due: Sequence[Step]) -> str:
    """What falls due while somebody is away, a line each."""
    if not due:
        return say("Nothing falls due in that time.")
    lines = [f"{numbers.when(s.due, a.person, a.now)} {steps.name(s, a)}" for s in due]
    return say("Falls due meanwhile, each first time:\n{lines}", lines="\n".join(lines))


def wants_somebody(a: Assessment) -> str:
    """That more than flips falls due: somebody else does it, or the meal moves."""
    return say(
        "Flips may wait; the rest wants somebody, or another day for the meal. The fridge is read once a day, {limit} or below.\n"
        "«invite» gives it to somebody else, «a day later» moves the meal.",
        limit=numbers.both(4.4, a.person),
    )
