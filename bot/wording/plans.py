"""Words for a plan: the whole week once, and afterwards only what became different."""

from datetime import datetime, timedelta

from bot.wording import brines, cautions, holding, meats, numbers, refusals, steps
from core.batch.assess import Assessment
from core.batch.material import brining_of
from core.plan.recipe import product
from core.plan.reminders import UNSPOKEN
from core.plan.setup import by_the_clock
from core.plan.steps import Kind, Plan, State, Step

QUIET = frozenset({Kind.FLIP, Kind.FRIDGE_CHECK, Kind.READING, Kind.REST})
ESTIMATED = frozenset({Kind.WRAP, Kind.OFF, Kind.CHILL, Kind.CHILL_CHECK})
OF_THE_MEAL = frozenset({Kind.SLICE, Kind.SERVE})  # as it was wanted, or pushed on by an estimate
HALF_A_QUARTER = timedelta(minutes=7)
TOLD_WHEN_MOVED = frozenset(
    {Kind.BRINE, Kind.INTO_CURE, Kind.OUT, Kind.LIGHT, Kind.MEAT_ON, Kind.WRAP, Kind.OFF, Kind.CHILL, Kind.SLICE,
     Kind.SERVE, Kind.USE_BY}
)  # fmt: skip
WORTH_TELLING = timedelta(minutes=10)
METHODS = {
    "brine": "brine in a bag",
    "dry": "dry, everything in the bag",
    "inject": "injected, what salt is left rubbed on",
}
WRAPS = {"none": "no wrap", "paper": "paper", "foil": "foil"}
COOKERS = {"pot": "simmered in a pot"}
CHILLS = {
    "foil": "in foil in the fridge",
    "rack": "on a rack",
    "fan": "on a rack with a fan",
    "ice": "ice bath, then rack",
}


def whole(a: Assessment) -> str:
    """The plan from now to the meal: what to do next first, then the dose, the days, the week, what was assumed."""
    if a.plan is None:
        return f"{meats.what(a)}: no plan yet. {_why_none(a)}".strip()
    parts = [_first(a, a.plan), dose(a), days(a), _week(a, a.plan), holding.planned(a), assumed(a)]
    return "\n\n".join(p for p in parts if p)


def _why_none(a: Assessment) -> str:
    return "" if a.refusal is None else refusals.say(a.refusal, a.person)


def _first(a: Assessment, plan: Plan) -> str:
    step = plan.next_step()
    meal = _meal(a, plan)
    if step is None:
        return f"All done. {meats.what(a)}, meal {meal}."
    due = "now" if step.state is State.DUE else numbers.when(_shown(step, plan), a.person, a.now)
    return f"{steps.name(step, a)} {due}; meal {meal}.\n{meats.what(a)}."


def _meal(a: Assessment, plan: Plan) -> str:
    """When the meal is; one that comes later than it was wanted is never said too early."""
    late = plan.wanted is not None and plan.serve > plan.wanted
    return numbers.when(numbers.quarter(plan.serve, up=True) if late else plan.serve, a.person, a.now)


def dose(a: Assessment) -> str:
    """The dose in grams, its nitrite, the limit and where the limit stands."""
    d = a.dose
    if d is None:
        return ""
    if d.limit is None:
        return brines.salt_alone(d, a.batch.setup)
    strength = numbers.percent(a.batch.setup.cure_nitrite_fraction or 0.0)
    water = f"{d.water_kg:.2f} kg water, " if d.water_kg else ""
    low, high = d.teaspoons
    base = "meat and pickle" if a.batch.setup.method == "brine" else "green meat"
    beware = cautions.lines(c for c in d.cautions if c.key != "nitrite_weigh_exactly")  # the words above say so
    nitrate = f"Nitrate {numbers.ppm(d.nitrate_ingoing)} beside it. " if d.nitrate_ingoing else ""
    said = (
        f"Dose: {water}{numbers.grams(d.cure_kg)} curing salt of {strength}, {numbers.grams(d.salt_kg)} salt, "
        f"{numbers.grams(d.sugar_kg)} sugar. Weigh it: {low:.1f} to {high:.1f} level teaspoons is only a check on the scale.\n"
        f"Nitrite {numbers.ppm(d.nitrite_ingoing)} of {base}; limit {numbers.ppm(d.limit.max_mg_kg)} "
        f"({d.limit.jurisdiction}, {d.limit.where}{_memory(d.limit.status)}). {nitrate}Salt {numbers.percent(d.salt_fraction)}."
    )
    return "\n".join([said, *beware])


def dose_in(a: Assessment) -> str:
    """What is in the cure, once it was weighed out: its nitrite by the meat that it went to."""
    d = a.dose
    if d is None or d.limit is None:
        return ""
    limit = f"limit {numbers.ppm(d.limit.max_mg_kg)} ({d.limit.jurisdiction}, {d.limit.where}{_memory(d.limit.status)})"
    return f"In it are {numbers.grams(d.cure_kg)} curing salt of {numbers.percent(d.nitrite_fraction)}: {numbers.ppm(d.nitrite_ingoing)} nitrite; {limit}."


def _memory(status: str) -> str:
    return ", from memory" if status == "MEMORY" else ""


def days(a: Assessment) -> str:
    """How long it stays in, and the band behind it."""
    if a.plan is not None and by_the_clock(a.batch.setup) and a.dose is not None:
        return brines.by_the_clock(a, brining_of(a.batch.setup, a.dose))
    if a.plan is not None and meats.plain(a):
        return (
            f"In the salt for {numbers.days(a.plan.cure_days)}: no nitrite goes in, so there is no middle to wait for."
        )
    if a.cure_days is None or a.plan is None:
        return ""
    band = a.cure_days
    learned = _learned(a)
    if a.batch.setup.method == "inject":
        return f"In the cure for {numbers.days(a.plan.cure_days)}: injected, the middle is reached within a day, and the colour wants its time.{learned}"
    least = product(a.batch.setup.product).least(a.batch.setup)
    evens = " It stays longer, so that salt and colour even out." if least > band.p90 + 1.0 else ""
    return (
        f"In the cure for {numbers.days(a.plan.cure_days)}. The middle turns pink after about {band.p50:.1f} days "
        f"({band.p10:.1f} to {band.p90:.1f}); nine in ten pieces like this are there by {numbers.days(band.p90)}.{evens}{learned}"
    )


def _learned(a: Assessment) -> str:
    shift = a.cure_shift_days
    if a.person.learned.batches == 0 or abs(shift) < 0.25:
        return ""
    pace = "slowly" if shift > 0 else "quickly"
    way = "more" if shift > 0 else "less"
    return f" By your slices your meat cures {pace}: {numbers.days(abs(shift))} {way} than usual."


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
        band = f" ({numbers.clock(early, a.person)} to {numbers.when_after(late, early, a.person)})"
    return f"{about} or so {steps.name(step, a)}{band}"


def _flips(a: Assessment, plan: Plan) -> str:
    flips = [s for s in plan.of_kind(Kind.FLIP) if s.state in (State.AHEAD, State.DUE)]
    if not flips:
        return ""
    clocks = " and ".join(f"{t:%H:%M}" for t in a.person.flip_hours)
    return f"Flips at {clocks}, quietly, {len(flips)} in all; the fridge is read with the morning flip."


def assumed(a: Assessment) -> str:
    """What nobody said, so that a tap can change it."""
    setup, said, person = a.batch.setup, a.batch.setup.said, a.person
    piece = a.piece
    low, high = numbers.length(piece.thickness_low, person), numbers.length(piece.thickness_high, person)
    guesses = (
        (
            "thickness",
            f"{numbers.length(piece.thickness, person)} thick ({low} to {high}; measure it, it decides the {_decided(a)})",
        ),
        (
            "method",
            METHODS[setup.method] + (", as a brine would be too slow for your date" if _hurried(a) else ""),
        ),
        ("fridge_c", f"fridge {numbers.temperature(setup.fridge_c, person)}"),
        ("pieces", f"{setup.pieces} pieces" if setup.pieces > 1 else ""),
        ("pit_c", f"{'water' if meats.in_pot(a) else 'pit'} {numbers.temperature(setup.pit_c, person)}"),
        ("cooker", COOKERS.get(setup.cooker, f"{setup.cooker} cooker")),
        ("purpose", f"{meats.purpose(a)}, off at {numbers.temperature(setup.target_c, person)}"),
        ("wrap", "" if meats.in_pot(a) or meats.fish(a) else WRAPS[setup.wrap]),
        ("chill", f"chill: {CHILLS[setup.chill]}"),
        ("deadline", "no meal date, so the soonest"),
    )
    open_ones = [words for field, words in guesses if words and field not in said]
    if "salt_fraction" not in said and person.learned.salt_shift:
        taste = "too salty" if person.learned.salt_shift < 0 else "bland"
        open_ones.append(f"salt {numbers.percent(setup.salt_fraction)}, as you found the last {taste}")
    if not meats.plain(a):
        open_ones.append(f"nitrite by the law of {person.jurisdiction} (say where you are, like «i'm in Germany»)")
    return "I assumed: " + "; ".join(open_ones) + "." if open_ones else ""


def _decided(a: Assessment) -> str:
    """What hangs on the thickness: the days where the cure creeps in, else the hours of the cook."""
    return "hours" if meats.plain(a) or a.batch.setup.method == "inject" else "days"


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
        if old is None or step.kind not in TOLD_WHEN_MOVED or not waiting or abs(step.due - old.due) < WORTH_TELLING:
            continue
        shown = (_shown(old, before), _shown(step, after.plan))
        was, now = (numbers.when(moment, after.person, after.now) for moment in shown)
        lines += [] if was == now else [f"{steps.name(step, after)}: {now} (was {was})"]
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
        return f"{lead} There is no plan now. {_why_none(after)}".strip()
    lines, gap = moved(before, after), "\n" if "\n" in lead else " "
    if before is None:
        return f"{lead}{gap}There is a plan again: meal {_meal(after, after.plan)}. Type «plan» to see it."
    if not lines:
        return f"{lead}{gap}The plan stays as it is."
    return "\n".join([f"{lead}{gap}What moves:", *lines, *late(after)])


def late(a: Assessment) -> list[str]:
    """Said where the meal cannot be had when it was wanted."""
    if a.plan is None or a.plan.late < WORTH_TELLING or a.plan.wanted is None:
        return []
    return [
        f"The meal was wanted {numbers.when(a.plan.wanted, a.person, a.now)}; safe and done it is {_meal(a, a.plan)}."
    ]


def _waiting(plan: Plan) -> list[Step]:
    """What is open and called for by itself, in order."""
    open_ones = (s for s in plan.steps if s.state in (State.DUE, State.AHEAD) and not s.within)
    return [s for s in open_ones if s.kind not in UNSPOKEN]


def now(a: Assessment) -> str:
    """What to do now, and what comes next."""
    if a.plan is None:
        return f"{meats.what(a)}: no plan yet. {_why_none(a)}".strip()
    waiting = _waiting(a.plan)
    due = [s for s in waiting if s.state is State.DUE]
    if due:
        first = steps.task(due[-1], a)
        rest = [f"Also open: {steps.name(s, a)}." for s in due[:-1][-2:]]
        return "\n".join([first, *rest])
    if not waiting:
        return "Nothing is open: enjoy it."
    step = waiting[0]
    return f"Nothing to do now. Next: {steps.name(step, a)}, {numbers.when(_shown(step, a.plan), a.person, a.now)}."


NEXT = ("Next: ", "Nothing is open.")  # how the last line begins that tells what comes


def coming(a: Assessment) -> str:
    """«Next: Flip the bag, tomorrow 08:00.»"""
    if a.plan is None:
        return ""
    waiting = _waiting(a.plan)
    if not waiting:
        return "Nothing is open."
    step = next((s for s in waiting if s.state is State.DUE), waiting[0])
    due = "now" if step.state is State.DUE else numbers.when(_shown(step, a.plan), a.person, a.now)
    return f"Next: {steps.name(step, a)}, {due}."
