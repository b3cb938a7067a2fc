"""Words for what comes after a step, and for a deed that was done at another hour than planned."""

from bot.wording import doneness, numbers, plans, standing, steps
from bot.wording.language import say
from core.batch.assess import Assessment
from core.plan.steps import Kind, State

MOST = 6  # steps that are listed
BESIDE = frozenset({Kind.FLIP, Kind.FRIDGE_CHECK, Kind.READING})
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


def how_cooked(a: Assessment) -> str:
    """How it is cooked, from the fire to the table: how hot, until what core, and the steps with their hours."""
    lead = f"{plans.pit(a)}. {doneness.pull_asked(a)}"
    found = next((s for kind in (Kind.LIGHT, Kind.MEAT_ON) for s in (a.plan.of_kind(kind) if a.plan else ())), None)
    if a.plan is None or found is None or a.batch.off_at is not None:
        return doneness.pull_asked(a)
    later = sorted((s for s in a.plan.steps if s.due >= found.due and s.kind not in BESIDE), key=lambda s: s.due)
    lines = "\n".join(
        f"{numbers.when(numbers.quarter(s.due, up=True), a.person, a.now)} {steps.name(s, a)}" for s in later[:MOST]
    )
    return say("As planned, {how}\n{lines}", how=lead, lines=lines) + f"\n{plans.coming(a)}"


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
