"""Words for a deed that was done at another hour than planned."""

from bot.wording import numbers, standing
from bot.wording.language import say
from core.batch.assess import Assessment
from core.plan.steps import Kind

ON_THE_FIRE = frozenset({Kind.LIGHT, Kind.MEAT_ON})


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
