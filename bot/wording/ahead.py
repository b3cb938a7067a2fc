"""Words for what comes after a step, and for a deed that was done at another hour than planned."""

from bot.wording import numbers, plans, standing, steps
from bot.wording.language import say
from core.batch.assess import Assessment
from core.plan.steps import Kind, State

MOST = 6  # steps that are listed
ON_THE_FIRE = frozenset({Kind.LIGHT, Kind.MEAT_ON})


def after(a: Assessment, kind: Kind) -> str:
    """The steps that come after one, in order, as many as are read at a glance."""
    found = a.plan.of_kind(kind) if a.plan else ()
    if a.plan is None or not found:
        return plans.now(a)
    later = sorted((s for s in a.plan.steps if s.due > found[0].due and s.kind is not Kind.FLIP), key=lambda s: s.due)
    open_ones = [s for s in later if s.state in (State.DUE, State.AHEAD)][:MOST]
    lines = "\n".join(f"{numbers.when(s.due, a.person, a.now)} {steps.name(s, a)}" for s in open_ones)
    return say("Then, in this order:\n{lines}", lines=lines) + f"\n{plans.coming(a)}" if lines else plans.now(a)


def as_planned(a: Assessment, kind: Kind) -> str:
    """That an hour more or less does no harm, what is noted of that step, and how another hour is told."""
    if kind in ON_THE_FIRE:
        lead = say("No harm: only the hour of being ready moves with it, and the core decides.")
    else:
        lead = say(
            "No harm: kept at {limit} or below, some hours more or less do not show.", limit=numbers.both(4.4, a.person)
        )
    noted = say("What follows counts from the hour that I have; if that is another, say the deed with its hour.")
    return "\n".join((lead, standing.of_step(kind, a), noted))
