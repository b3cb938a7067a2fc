"""Words for when to take it off: by purpose, by feel before a number, and never under the floor of safety."""

from bot.wording import cooling, holding, meat_names, meats, numbers, plans, smoked_fish
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.events import Probe
from core.person import Person
from core.plan.recipe import product
from core.safety.done import FLOOR_F, REST_HOURS
from core.safety.history import printed_f
from core.units import Celsius

UNDER_K: Celsius = 4.0  # so far under its target, and what comes off is another product than was planned


def there(a: Assessment) -> str:
    """That the last core on the fire stands where it is to come off, and what to do now; nothing before that."""
    core = a.batch.last(Probe.CORE)
    if smoked_fish.at_floor(a):
        return smoked_fish.reached(a)
    return meats.reached(a) if core is not None and core.celsius >= a.batch.setup.target_c else ""


def pull_asked(a: Assessment) -> str:
    """At what core it comes off, for its purpose and for the others of the product, and the floor under all."""
    if a.batch.off_at is not None:
        when = numbers.when(a.batch.off_at, a.person, a.now)
        before = [r for r in a.batch.of_probe(Probe.CORE) if r.at <= a.batch.off_at]
        if not before:
            return say("It came off {when}.", when=when) + f" {plans.coming(a)}"
        core = numbers.temperature(before[-1].celsius, a.person)
        return say("It came off {when}, at a core of {core}.", when=when, core=core) + f" {plans.coming(a)}"
    made, setup = product(a.batch.setup.product), a.batch.setup
    own = say(
        "Take it off at about {target} in the middle: {purpose}.",
        target=numbers.temperature(setup.target_c, a.person),
        purpose=meats.purpose(a),
    )
    others = "; ".join(
        f"{meats.purpose_of(a, p.name)} {numbers.temperature(p.target_c, a.person)}"
        for p in made.purposes
        if p.name != setup.purpose
    )
    floor = say("Never under {limit}: that is the floor of safety.", limit=numbers.at_least(a.floor_c, a.person))
    rest = say("Otherwise: {others}.", others=others) if others else ""
    return "\n".join(line for line in (own, meats.done_at(a), rest, floor) if line)


def judged(core: Celsius, made: str, person: Person) -> str:
    """Whether a core is enough for a product of which no batch is begun yet: by the floor of safety alone."""
    of = product(made)
    cooked, shown = of.cooked_from_c or of.safety_floor_c, numbers.temperature(core, person)
    floor, what = numbers.at_least(cooked, person), meat_names.product_inside(made)
    if printed_f(core) < printed_f(cooked):
        return say(
            "Not at {core}: under {floor} {what} counts as raw. Leave it on, or finish it in an oven.",
            core=shown,
            floor=floor,
            what=what,
        )
    if of.cooked_from_c:
        return say(
            "{core}: from {floor} on it is cooked fish. As smoked fish it keeps only after {smoked} for 30 min.",
            core=shown,
            floor=floor,
            smoked=numbers.at_least(of.safety_floor_c, person),
        )
    enough = say(
        "{core} is enough for {what} if the coldest of three spots shows it: the floor is {floor}.",
        core=shown,
        what=what,
        floor=floor,
    )
    return (
        enough
        if printed_f(cooked) > FLOOR_F
        else "\n".join((enough, say("Then it rests {minutes} min.", minutes=numbers.plain(60 * REST_HOURS))))
    )


def run_asked(a: Assessment) -> str:
    """How hot the fire is meant to run, and how to have it otherwise."""
    hot = "250 f" if a.person.units.temperature == "f" else "120 c"
    return say("As planned: {pit}. Type another, like «pit {hot}», and the hours follow.", pit=plans.pit(a), hot=hot)


def tender(a: Assessment) -> str:
    """Probe-tender beats a number, but not the floor."""
    if a.on_at is None or a.batch.off_at is not None:
        return say("Good. Tender is what counts in the end.")
    core = a.batch.last(Probe.CORE)
    if a.below_floor:
        seen = (
            say("the last core I have is {celsius}", celsius=numbers.temperature(core.celsius, a.person))
            if core
            else say("I have no core yet")
        )
        return say(
            "Send me the core before it comes off: {seen}.\n"
            "However tender it is, under {limit} in the middle I cannot call it cooked.",
            seen=seen,
            limit=numbers.at_least(a.floor_c, a.person),
        )
    if a.batch.setup.target_c < meats.TENDER_FROM_C:
        return meats.done_at(a)
    return say("Tender is better than a number: take it off, and say «off». Then let it rest.")


def tough(a: Assessment) -> str:
    """Not tender yet: the number is reached, the meat is not."""
    if a.on_at is not None and a.batch.off_at is None and a.batch.setup.target_c < meats.TENDER_FROM_C:
        return meats.done_at(a)
    if a.on_at is None or a.batch.off_at is not None:
        return say(
            "Slice it thin and across the grain: that helps most. Next time it stays on until a probe slides in."
        )
    ready = (
        say(" I expect the target {when}.", when=numbers.time_band(a.ready, a.person, a.now))
        if a.ready and a.ready.p50 > a.now
        else ""
    )
    return say(
        "Then it stays on, whatever the number says: probe it again in 20 to 30 min.{ready}\nToo dry comes later than tender.",
        ready=ready,
    )


def off(a: Assessment) -> str:
    """After it came off: what is short of its floor or its target is said, then the rest or the hold."""
    core = a.batch.last(Probe.CORE)
    cooked_c = smoked_fish.cooked_c(a)
    if core is None or not any(printed_f(r.celsius) >= printed_f(cooked_c) for r in a.batch.of_probe(Probe.CORE)):
        return say(
            "The record does not show {limit} in the middle yet. "
            "Send a core reading; below it I cannot call it cooked.",
            limit=numbers.at_least(cooked_c, a.person),
        )
    short = smoked_fish.off(a) or short_of(a)
    if a.chilled:
        return say("{short}Let it rest, wrapped. {chill_from}", short=short, chill_from=cooling.chill_from(a.person))
    return say(
        "{short}Let it rest, wrapped. {till_the_knife}", short=short, till_the_knife=holding.till_the_knife(a)
    ).strip()


def short_of(a: Assessment) -> str:
    """How far the last core is from the one that was meant, where it is short of it."""
    core, target = a.batch.last(Probe.CORE), a.batch.setup.target_c
    if core is None or core.celsius >= target - UNDER_K:
        return ""
    return say(
        "The last core was {celsius}, and {target} was meant: "
        "if it is not as you want it, «undo» and put it back on.\n",
        celsius=numbers.temperature(core.celsius, a.person),
        target=numbers.temperature(target, a.person),
    )
