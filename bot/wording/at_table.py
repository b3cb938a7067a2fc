"""What is asked before the meal: may it be cut now, may we eat tonight, how it is warmed, how long it was on the fire."""

from datetime import timedelta

from bot.wording import meats, numbers, plans, standing, talked_of
from bot.wording.language import say
from core.answers import amounts, mixing
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.plan.steps import Kind
from core.safety.storage import REHEAT_F
from core.units import Kilograms, celsius_from_fahrenheit


def slice_(a: Assessment) -> str:
    """Whether it may be cut now, when the plan has it, and how."""
    return "\n".join(line for line in (_cut_now(a), standing.of_step(Kind.SLICE, a), meats.carved(a)) if line)


def _cut_now(a: Assessment) -> str:
    if a.batch.phase in talked_of.RAW:
        return say("Not yet: it is raw.")
    if a.batch.phase is Phase.COOKING:
        return say("Not yet: it is on the fire.")
    if not a.chilled or "slice" in a.batch.done:
        return ""
    if talked_of.is_cold(a):
        return say("Yes, it is cold enough to cut; a night in the cold makes the slices cleaner.")
    return say(
        "Not yet: it is cut cold, at {limit} or below, and warm it falls apart.", limit=numbers.both(4.4, a.person)
    )


def tonight(a: Assessment) -> str:
    """Whether it may be eaten before its meal, once it is off the fire."""
    return f"{talked_of.eat_cold(a)}\n{standing.meal(a)}"


def cooked_for(a: Assessment) -> str:
    """How long it was on the fire, and between which hours."""
    on, off = a.on_at, a.batch.off_at
    if on is None or off is None:
        return standing.since(a)
    return say(
        "It was on the fire for {span}: on {on}, off {off}.",
        span=numbers.span(off - on),
        on=numbers.when(on, a.person, a.now),
        off=numbers.when(off, a.person, a.now),
    )


def warm_up(a: Assessment) -> str:
    """How the cold piece is warmed for the meal, for how long, and when that begins."""
    if a.plan is None or a.batch.off_at is None:
        return say("First it has to be smoked and cold. {next}", next=plans.coming(a)).strip()
    mass = _left(a)
    steam = mixing.steaming(mass)
    start = numbers.quarter(a.plan.serve - timedelta(hours=steam.high), up=False)
    return say(
        "Steam it whole until it is {safe} inside: {low} to {high} for {mass}, so from {start} for the meal {serve}.\n"
        "Or an oven, covered, with a little water under it. Slice it then; what is left over is heated once only.",
        safe=numbers.both(celsius_from_fahrenheit(REHEAT_F), a.person),
        low=numbers.hours(steam.low),
        high=numbers.hours(steam.high),
        mass=numbers.mass(mass, a.person),
        start=numbers.when(start, a.person, a.now),
        serve=numbers.when(a.plan.serve, a.person, a.now),
    )


def _left(a: Assessment) -> Kilograms:
    """What there is of it, as weighed or as such pieces come out."""
    setup = a.batch.setup
    of_raw = amounts.left_of(setup.product, setup.target_c >= meats.TENDER_FROM_C)
    return a.batch.weighed_after or amounts.cooked(setup.mass, of_raw).usual
