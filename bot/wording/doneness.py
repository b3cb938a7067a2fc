"""Words for when to take it off: by purpose, by feel before a number, and never under the floor of safety."""

from bot.wording import holding, meats, numbers, safety
from core.batch.assess import Assessment
from core.batch.events import Probe
from core.plan.recipe import product
from core.units import Celsius

UNDER_K: Celsius = 4.0  # so far under its target, and what comes off is another product than was planned


def pull_asked(a: Assessment) -> str:
    """At what core it comes off, for its purpose and for the others of the product, and the floor under all."""
    made, setup = product(a.batch.setup.product), a.batch.setup
    own = f"Take it off at about {numbers.temperature(setup.target_c, a.person)} in the middle: {meats.purpose(a)}."
    others = "; ".join(
        f"{meats.purpose_of(a, p.name)} {numbers.temperature(p.target_c, a.person)}"
        for p in made.purposes
        if p.name != setup.purpose
    )
    floor = f"Never under {numbers.both(a.floor_c, a.person)}: that is the floor of safety."
    rest = f"Otherwise: {others}." if others else ""
    return "\n".join(line for line in (own, meats.done_at(a), rest, floor) if line)


def tender(a: Assessment) -> str:
    """Probe-tender beats a number, but not the floor."""
    if a.on_at is None or a.batch.off_at is not None:
        return "Good. Tender is what counts in the end."
    core = a.batch.last(Probe.CORE)
    if a.below_floor:
        seen = (
            f"the last core I have is {numbers.temperature(core.celsius, a.person)}" if core else "I have no core yet"
        )
        return (
            f"Send me the core before it comes off: {seen}.\n"
            f"However tender it is, under {numbers.both(a.floor_c, a.person)} in the middle I cannot call it cooked."
        )
    if a.batch.setup.target_c < meats.TENDER_FROM_C:
        return meats.done_at(a)
    return "Tender is better than a number: take it off, and say «off». Then let it rest."


def tough(a: Assessment) -> str:
    """Not tender yet: the number is reached, the meat is not."""
    if a.on_at is not None and a.batch.off_at is None and a.batch.setup.target_c < meats.TENDER_FROM_C:
        return meats.done_at(a)
    if a.on_at is None or a.batch.off_at is not None:
        return "Slice it thin and across the grain: that helps most. Next time it stays on until a probe slides in."
    ready = (
        f" I expect the target {numbers.time_band(a.ready, a.person, a.now)}."
        if a.ready and a.ready.p50 > a.now
        else ""
    )
    return f"Then it stays on, whatever the number says: probe it again in 20 to 30 min.{ready}\nToo dry comes later than tender."


def off(a: Assessment) -> str:
    """After it came off: what is short of its floor or its target is said, then the rest or the hold."""
    core = a.batch.last(Probe.CORE)
    target = a.batch.setup.target_c
    if a.below_floor:
        return (
            f"The record does not show {numbers.both(a.floor_c, a.person)} in the middle yet. "
            "Send a core reading; below it I cannot call it cooked."
        )
    short = ""
    if core is not None and core.celsius < target - UNDER_K:
        short = (
            f"The last core was {numbers.temperature(core.celsius, a.person)}, and {numbers.temperature(target, a.person)} was meant: "
            "if it is not as you want it, «undo» and put it back on.\n"
        )
    if a.chilled:
        return f"{short}Let it rest, wrapped. {safety.chill_from(a.person)}"
    return f"{short}Let it rest, wrapped. {holding.till_the_knife(a)}".strip()
