"""Words for a plan: the whole week once, and afterwards only what became different."""

from datetime import datetime, timedelta

from bot.wording import (
    chilling,
    cure_days,
    doses,
    habits,
    holding,
    lateness,
    meats,
    numbers,
    refusals,
    rises,
    smoked_fish,
    steps,
    tasks,
)
from bot.wording.language import Words, later, say
from core.batch.assess import Assessment
from core.plan.recipe import product
from core.plan.reminders import UNSPOKEN
from core.plan.setup import covered
from core.plan.steps import Kind, Plan, State, Step

QUIET = frozenset({Kind.FLIP, Kind.FRIDGE_CHECK, Kind.READING, Kind.REST})
ESTIMATED = frozenset({Kind.WRAP, Kind.OFF, Kind.CHILL, Kind.CHILL_CHECK})
OF_THE_MEAL = frozenset({Kind.SLICE, Kind.SERVE})  # as it was wanted, or pushed on by an estimate
HALF_A_QUARTER = timedelta(minutes=7)
TOLD_WHEN_MOVED = frozenset(
    {Kind.BRINE, Kind.INTO_CURE, Kind.OUT, Kind.LIGHT, Kind.MEAT_ON, Kind.WRAP, Kind.OFF, Kind.CHILL, Kind.SLICE,
     Kind.SERVE, Kind.USE_BY}
)  # fmt: skip
METHODS = Words(
    {
        "brine": "brine in a bag",
        "dry": "dry, everything in the bag",
        "inject": "injected, what salt is left rubbed on",
        "covered": "injected, and covered with the rest of the pickle",
    }
)
WRAPS = Words({"none": "no wrap", "paper": "wrapped in paper", "foil": "wrapped in foil"})
COOKERS = Words(
    {
        "pot": "simmered in a pot",
        "ceramic": "ceramic cooker",
        "steel": "steel cooker",
        "kettle": "kettle cooker",
        "offset": "offset cooker",
        "pellet": "pellet cooker",
        "gas": "gas cooker",
        "electric": "electric cooker",
    }
)
LAWS = Words({"US": "the US", "UK": "the UK", "EU": "the EU", "CA": "Canada"})
CHILLS = Words(
    {
        "foil": "in foil in the fridge",
        "rack": "on a rack",
        "fan": "on a rack with a fan",
        "ice": "ice bath, then rack",
    }
)


def whole(a: Assessment) -> str:
    """The plan from now to the meal: what to do next first, then the dose, the days, the week, what was assumed."""
    if a.plan is None:
        return say("{what}: no plan yet. {why_none}", what=meats.what(a), why_none=_why_none(a)).strip()
    parts = [_first(a, a.plan), doses.dose(a), cure_days.whole(a), _week(a, a.plan), holding.planned(a)]
    parts += [smoked_fish.planned(a), smoked_fish.cool_pit(a)]
    parts += [rises.planned(a), chilling.planned(a), habits.by_cooks(a), assumed(a)]
    return "\n\n".join(p for p in parts if p)


def _why_none(a: Assessment) -> str:
    return "" if a.refusal is None else refusals.say(a.refusal, a.person)


def _first(a: Assessment, plan: Plan) -> str:
    step = plan.next_step()
    meal = lateness.meal(a, plan)
    if step is None:
        return say("All done. {what}, meal {meal}.", what=meats.what(a), meal=meal)
    due = say("now") if step.state is State.DUE else numbers.when(_shown(step, plan), a.person, a.now)
    return say("{name} {due}; meal {meal}.\n{what}.", name=steps.name(step, a), due=due, meal=meal, what=meats.what(a))


def _week(a: Assessment, plan: Plan) -> str:
    lines, shown_day = [], ""
    for step in plan.steps:
        if step.kind in QUIET or step.state in (State.DONE, State.SKIPPED):
            continue
        day = numbers.day(step.due, a.person)
        lines += [] if day == shown_day else [day]
        shown_day = day
        lines.append(f"  {line(step, a)}")
    return "\n".join([*lines, _flips(a, plan)]).rstrip()


def line(step: Step, a: Assessment) -> str:
    """«07:00 Light the fire», with the band where the time is an estimate."""
    about = numbers.clock(step.due if a.plan is None else _shown(step, a.plan), a.person)
    if step.kind not in ESTIMATED or step.state is State.DUE:
        return f"{about} {steps.name(step, a)}"
    band = ""
    if step.early is not None and step.late is not None and step.early != step.late:
        early, late = numbers.quarter(step.early, up=False), numbers.quarter(step.late, up=True)
        band = say(
            " ({early} to {late})", early=numbers.clock(early, a.person), late=numbers.when_after(late, early, a.person)
        )
    return say("{about} or so {name}{band}", about=about, name=steps.name(step, a), band=band)


def _flips(a: Assessment, plan: Plan) -> str:
    flips = [s for s in plan.of_kind(Kind.FLIP) if s.state in (State.AHEAD, State.DUE)]
    if not flips:
        return ""
    clocks = say(" and ").join(f"{t:%H:%M}" for t in a.person.flip_hours)
    return say(
        "Flips at {clocks}, quietly, {len} in all; the fridge is read with the morning flip.",
        clocks=clocks,
        len=len(flips),
    )


def assumed(a: Assessment) -> str:
    """What nobody said, so that a tap can change it."""
    setup, said, person = a.batch.setup, a.batch.setup.said, a.person
    guesses = (
        ("thickness", _thick(a)),
        ("skin_on", say("its skin on") if setup.skin_on and not meats.whole_bird(a) else ""),
        ("method", method_line(a)),
        ("fridge_c", say("fridge {fridge}", fridge=numbers.temperature(setup.fridge_c, person))),
        ("pieces", say("{pieces} pieces", pieces=setup.pieces) if setup.pieces > 1 else ""),
        ("pit_c", pit(a)),
        ("cooker", COOKERS[setup.cooker]),
        ("purpose", purpose(a)),
        ("wrap", "" if meats.in_pot(a) or meats.never_wrapped(a) else WRAPS[setup.wrap]),
        ("chill", say("chill: {chills}", chills=CHILLS[setup.chill])),
        ("deadline", say("no meal date, so the soonest")),
    )
    open_ones = [words for field, words in guesses if words and field not in said]
    open_ones += _by_taste(a) + _by_law(a)
    return say("I assumed: {guesses}.", guesses="; ".join(open_ones)) if open_ones else ""


def _by_taste(a: Assessment) -> list[str]:
    setup, person = a.batch.setup, a.person
    if "salt_fraction" in setup.said or not person.learned.salt_shift:
        return []
    salt = numbers.percent(setup.salt_fraction)
    if person.learned.salt_shift < 0:
        return [say("salt {salt}, as you found the last too salty", salt=salt)]
    return [say("salt {salt}, as you found the last bland", salt=salt)]


def _by_law(a: Assessment) -> list[str]:
    law = LAWS[a.person.jurisdiction]
    told = say("nitrite by the law of {law} (say where you are, like «i'm in Germany»)", law=law)
    return [] if meats.plain(a) or a.batch.setup.law else [told]  # weighed by another it is no assumption any more


def _thick(a: Assessment) -> str:
    """What hangs on the thickness: the days where the cure creeps in, else the hours of the cook."""
    piece, person = a.piece, a.person
    thick, low, high = (numbers.length(m, person) for m in (piece.thickness, piece.thickness_low, piece.thickness_high))
    if meats.plain(a) or a.batch.setup.method == "inject":
        sentence = later("{thick} thick ({low} to {high}; measure it, it decides the hours)")
    else:
        sentence = later("{thick} thick ({low} to {high}; measure it, it decides the days)")
    return say(sentence, thick=thick, low=low, high=high)


def method(a: Assessment) -> str:
    """The way of the cure in a few words."""
    setup = a.batch.setup
    return METHODS["covered" if covered(setup) else setup.method]


def method_line(a: Assessment) -> str:
    """The way of the cure, and why where it is not the usual one."""
    if _hurried(a):
        return say("{method}, as a brine would be too slow for your date", method=method(a))
    return method(a)


def pit(a: Assessment) -> str:
    """How hot the pit, or the water of the pot, is meant to run."""
    heat = numbers.temperature(a.batch.setup.pit_c, a.person)
    return say("water {heat}", heat=heat) if meats.in_pot(a) else say("pit {heat}", heat=heat)


def purpose(a: Assessment) -> str:
    """How it will be eaten, and at how many degrees it comes off."""
    target = numbers.temperature(a.batch.setup.target_c, a.person)
    return say("{purpose}, off at {target}", purpose=meats.purpose(a), target=target)


def _hurried(a: Assessment) -> bool:
    """Whether the dry cure was assumed for a near date, where the product would have been brined."""
    usual = product(a.batch.setup.product).defaults_of(a.batch.setup.cut).get("method", "brine")
    return a.batch.setup.method == "dry" and usual != "dry"


def moved(before: Plan | None, after: Assessment) -> list[str]:
    """What became different, a line each; nothing that stayed."""
    if before is None or after.plan is None:
        return []
    known = {s.key: s for s in before.steps}
    lines = []
    for step in after.plan.steps:
        old = known.get(step.key)
        waiting = step.state in (State.AHEAD, State.DUE)
        if (
            old is None
            or step.kind not in TOLD_WHEN_MOVED
            or not waiting
            or abs(step.due - old.due) < lateness.WORTH_TELLING
        ):
            continue
        shown = (_shown(old, before), _shown(step, after.plan))
        was, now = (numbers.when(moment, after.person, after.now) for moment in shown)
        lines += (
            [] if was == now else [say("{name}: {now} (was {was})", name=steps.name(step, after), now=now, was=was)]
        )
    return lines


def _shown(step: Step, plan: Plan) -> datetime:
    """When a step is due, to the quarter hour where that is an estimate; a meal that comes late is never said early."""
    if step.kind in ESTIMATED and step.state is State.AHEAD:
        return numbers.quarter(step.due + HALF_A_QUARTER, up=False)
    late = step.kind in OF_THE_MEAL and plan.wanted is not None and plan.serve > plan.wanted
    return numbers.quarter(step.due, up=True) if late else step.due


def changed(before: Plan | None, after: Assessment, lead: str) -> str:
    """A change acknowledged, with only the differences behind it, or with what now stands in the way of a plan."""
    if after.plan is None:
        return say("{lead} There is no plan now.\n{why_none}", lead=lead, why_none=_why_none(after)).strip()
    lines, gap = moved(before, after), "\n" if "\n" in lead else " "
    if before is None:
        return say(
            "{lead}{gap}There is a plan again: meal {meal}. Type «plan» to see it.",
            lead=lead,
            gap=gap,
            meal=lateness.meal(after, after.plan),
        )
    if not lines:
        kept = say("{lead}{gap}The plan stays as it is.", lead=lead, gap=gap)
        return "\n".join([kept, *(lateness.late(after) if before.wanted != after.plan.wanted else ())])
    if after.on_at is not None and holding.till(before) != holding.till(after.plan):
        lines += [words for words in [holding.planned(after)] if words]
    return "\n".join([say("{lead}{gap}What moves:", lead=lead, gap=gap), *lines, *lateness.late(after)])


def waiting(plan: Plan) -> list[Step]:
    """What is open and called for by itself, in order."""
    open_ones = (s for s in plan.steps if s.state in (State.DUE, State.AHEAD) and not s.within)
    return [s for s in open_ones if s.kind not in UNSPOKEN]


def now(a: Assessment) -> str:
    """What to do now, and what comes next."""
    if a.plan is None:
        return say("{what}: no plan yet. {why_none}", what=meats.what(a), why_none=_why_none(a)).strip()
    found = waiting(a.plan)
    due = [s for s in found if s.state is State.DUE]
    if due:
        first = tasks.task(due[-1], a)
        rest = [say("Also open: {name}.", name=steps.name(s, a)) for s in due[:-1][-2:]]
        return "\n".join([first, *rest])
    if not found:
        return say("Nothing is open: enjoy it.")
    step = found[0]
    return say(
        "Nothing to do now. Next: {name}, {shown}.",
        name=steps.name(step, a),
        shown=numbers.when(_shown(step, a.plan), a.person, a.now),
    )


def leads() -> tuple[str, str]:
    """How the last line begins that tells what comes."""
    return say("Next: {name}, {due}.").partition("{")[0], say("Nothing is open.")


def coming(a: Assessment) -> str:
    """«Next: Flip the bag, tomorrow 08:00.»"""
    if a.plan is None:
        return ""
    found = waiting(a.plan)
    if not found:
        return say("Nothing is open.")
    step = next((s for s in found if s.state is State.DUE), found[0])
    due = say("now") if step.state is State.DUE else numbers.when(_shown(step, a.plan), a.person, a.now)
    return say("Next: {name}, {due}.", name=steps.name(step, a), due=due)
