"""Words for somebody who steps out for some hours: what falls due meanwhile, and what may be left alone."""

from datetime import timedelta

from bot.wording import numbers, plans, standing, steps, talked_of
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.batch import Phase

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
        case Phase.CHILLING | Phase.RESTING if not talked_of.is_cold(a):
            return say("Fill up the ice before you go, and read the core when you are back: its clock runs.")
        case _:
            return say("Go: in a fridge at {limit} or below it can be left.", limit=numbers.both(4.4, a.person))


def flip_at(a: Assessment, when: str) -> str:
    """A flip at another hour than the plan's."""
    return say(
        "{when} is as good: a flip some hours late or early does no harm. {next}", when=when, next=standing.flip_next(a)
    )
