"""Answers from the batch: why, is it safe, how much longer, what did I say. Each carries its rule and its source."""

from datetime import datetime

from bot.wording import cautions, fire, incidents, meats, numbers, plans, readings, safety, steps, wraps, yard
from core.batch.assess import Assessment
from core.batch.events import Probe
from core.sources import Source


def why(a: Assessment, about: str) -> str:
    """Why it is planned so: the days, the dose, the hours or the chill."""
    match about:
        case "dose":
            return _why_dose(a)
        case "hours":
            return _why_hours(a)
        case "chill":
            return _why_chill(a)
        case _:
            return _why_days(a)


def cite(sources: tuple[Source, ...] | list[Source]) -> str:
    """«Sources: …», each with its year and how well it is known."""
    return "Sources: " + "; ".join(f"{s.title} ({_known(s)})" for s in sources) + "."


def _known(source: Source) -> str:
    """«1975, memory», or the status alone where no year is printed."""
    return ", ".join(part for part in (source.year.strip("-"), source.status.lower()) if part)


def _why_days(a: Assessment) -> str:
    if a.plan is not None and meats.plain(a):
        return plans.days(a)
    if a.cure is None or a.plan is None:
        return plans.now(a)
    after = a.after_cure()
    person = a.person
    chance = (
        f" After {numbers.days(a.plan.cure_days)} nine in ten middles hold at least {after.nitrite_centre.p10:.0f} mg/kg nitrite."
        if after
        else ""
    )
    measured = "as you measured" if a.piece.measured else "as I guess from the weight"
    one_more = a.cure.after(a.plan.cure_days + 1).probability_pink
    learned = f" {plans.days(a)}" if a.person.learned.batches else ""
    return (
        f"{numbers.days(a.plan.cure_days)}, for {numbers.length(a.piece.thickness, person)} thick, {measured}, at {numbers.temperature(a.batch.setup.fridge_c, person)}.\n"
        "Salt and nitrite creep in from the faces, and twice the thickness takes four times as long. "
        f"The middle turns pink from {a.piece.cut.pink_from:.0f} mg/kg; half of such pieces are there after {a.cure.days_p50:.1f} days, "
        f"nine in ten after {a.cure.days_p90:.1f}.{chance} "
        f"Pink in the middle on the day it comes out: {numbers.chance(after.probability_pink if after else 0.0)}; one more day: {numbers.chance(one_more)}."
        f"{learned}\n{cite(a.cure.sources)}"
    )


def _why_dose(a: Assessment) -> str:
    if a.dose is None:
        return plans.now(a)
    d, setup = a.dose, a.batch.setup
    if d.limit is None:
        return f"{plans.dose(a)}\n{cite(d.sources)}"
    milligrams = d.cure_kg * d.nitrite_fraction * 1e6
    base = "meat plus the whole pickle" if setup.method == "brine" else "green meat"
    pickup = (
        f" By pick-up alone it would count as {numbers.ppm(d.nitrite_by_pickup)}; that is shown, not used."
        if d.nitrite_by_pickup
        else ""
    )
    return (
        f"{numbers.grams(d.cure_kg)} curing salt of {numbers.percent(d.nitrite_fraction)}, because I aim for {numbers.ppm(d.nitrite_ingoing)} "
        f"nitrite in {base}.\n{numbers.grams(d.cure_kg)} at {numbers.percent(d.nitrite_fraction)} is {milligrams:.0f} mg of nitrite, in {milligrams / d.nitrite_ingoing:.2f} kg. "
        f"The limit is {numbers.ppm(d.limit.max_mg_kg)} ({d.limit.jurisdiction}, {d.limit.where}).{pickup}\n{cite(d.sources)}"
    )


def _why_hours(a: Assessment) -> str:
    if a.cook is None:
        return "There is no cook to compute yet."
    c, person = a.cook, a.person
    if meats.in_pot(a):
        hold = a.hold_hours
        return (
            f"{c.ready.p10 + hold:.1f} to {c.ready.p90 + hold:.1f} h in the pot ({c.ready.p50 + hold:.1f} in the middle),\nbecause heat creeps in from the water "
            f"through {numbers.length(a.piece.thickness / 2, person)} each way, and then it simmers {numbers.hours(hold)} more until a fork turns in it.\n"
            f"The first is computed, the second common practice.\n{cite(c.sources[:1])}"
        )
    return (
        f"{c.ready.p10:.1f} to {c.ready.p90:.1f} h from meat on ({c.ready.p50:.1f} in the middle), because evaporation at the surface "
        f"takes most of the heat, not the weight: {numbers.length(a.piece.thickness, person)} thick, pit {numbers.temperature(a.batch.setup.pit_c, person)}, "
        f"off at {numbers.temperature(a.batch.setup.target_c, person)}. It loses {numbers.share(c.loss.p10)} to {numbers.share(c.loss.p90)} of its weight. "
        f"Readings narrow the band.\n{cite(c.sources)}"
    )


def _why_chill(a: Assessment) -> str:
    forecast = cautions.chill_forecast(a)
    return (
        "From 54 °C (130 °F) it has 1.5 h to 27 °C (80 °F) and 5 h more to 4 °C (40 °F), because spores survive the fire and wake "
        f"in between. {forecast}\n{safety.rule_of_cooling()}"
    )


def safe(a: Assessment) -> str:
    """The verdict of the ledger, by rule."""
    return safety.verdict(a)


def eta(a: Assessment) -> str:
    """How much longer."""
    if a.ready is not None:
        return f"Ready {numbers.time_band(a.ready, a.person, a.now)}, {_left(a.ready.p50, a.now)}.\n{wraps.stall(a)}".strip()
    step = a.plan.next_step() if a.plan else None
    if step is None or a.plan is None:
        return plans.now(a)
    return f"The meal is {numbers.when(a.plan.serve, a.person, a.now)}. {plans.now(a)}"


def _left(ready: datetime, now: datetime) -> str:
    """How long it still takes, no finer than the time itself is known."""
    quarters = round((ready - now).total_seconds() / 900)
    return f"so about {numbers.hours(quarters / 4)} more" if quarters > 0 else "so any time now: probe it"


def picture(a: Assessment, subject: str) -> str:
    """The sentence that says what a picture shows."""
    match subject:
        case "cook":
            return _cook_said(a)
        case "chill":
            forecast = cautions.chill_forecast(a)
            return forecast or "The chill has not begun; the picture shows the rule that it will be held to."
        case _:
            return _cure_said(a)


def _cook_said(a: Assessment) -> str:
    core = a.batch.last(Probe.CORE)
    last = (
        f"Core {numbers.temperature(core.celsius, a.person)} at {numbers.clock(core.at, a.person)}. "
        if core and a.on_at
        else ""
    )
    if a.ready is not None:
        return f"{last}Ready {numbers.time_band(a.ready, a.person, a.now)}."
    if a.cook is None:
        return "There is no cook yet."
    return f"{last}From meat on it takes about {a.cook.ready.p50:.1f} h ({a.cook.ready.p10:.1f} to {a.cook.ready.p90:.1f})."


def _cure_said(a: Assessment) -> str:
    after = a.after_cure()
    if a.plan is not None and meats.plain(a):
        return "It is only salted, so there is no pink to show."
    if after is None or a.plan is None:
        return "There is no plan yet, so no cure to show."
    return (
        f"When it comes out after {numbers.days(a.plan.cure_days)}, {numbers.chance(after.probability_pink)} of pieces like this are pink in the middle; "
        f"salt in the middle {numbers.percent(after.salt_centre.p50, 1)}, on average {numbers.percent(after.salt_mean.p50, 1)}."
    )


def of_log(a: Assessment, topic: str) -> str:
    """What was said and read before."""
    match topic:
        case "dose":
            return plans.dose(a) or "There is no dose yet: I need the nitrite in percent that your packet states."
        case "thickness":
            said = "you said" if a.piece.measured else "nobody measured; I guess"
            return f"{numbers.length(a.piece.thickness, a.person)}, {said} ({numbers.length(a.piece.thickness_low, a.person)} to {numbers.length(a.piece.thickness_high, a.person)})."
        case "pit":
            return _pit(a)
        case "relit":
            return _relit(a)
        case "yield":
            return _yield(a)
        case "cautions":
            return cautions.every(a)
        case _:
            return _log(a)


def _pit(a: Assessment) -> str:
    seen = a.batch.of_probe(Probe.PIT)[-5:]
    if not seen:
        return f"No pit readings yet; it is set for {numbers.temperature(a.batch.setup.pit_c, a.person)}."
    said = ", ".join(f"{numbers.clock(r.at, a.person)} {numbers.temperature(r.celsius, a.person)}" for r in seen)
    return f"The pit: {said}. {fire.advice(a)}".strip()


def _relit(a: Assessment) -> str:
    """The fire burns again: whether the meat may go on is told by its core."""
    example = "158/245" if a.person.units.temperature == "f" else "70/120"
    return (
        f"Good. Read core and pit now, and reply like {example}: the core tells whether it may go on.\n"
        "Then once more in 20 min; the pit climbs slowly on a new fire."
    )


def _yield(a: Assessment) -> str:
    after = a.batch.weighed_after
    if after is not None:
        return f"{numbers.share(after / a.batch.setup.mass)}: {numbers.mass(after, a.person)} of {numbers.mass(a.batch.setup.mass, a.person)}."
    if a.cook is None:
        return "Nothing is weighed yet."
    low, high = 1 - a.cook.loss.p90, 1 - a.cook.loss.p10
    return f"Not weighed yet; I expect {numbers.share(low)} to {numbers.share(high)} of {numbers.mass(a.batch.setup.mass, a.person)} to be left after the fire."


def _log(a: Assessment) -> str:
    lines = [f"{numbers.when(at, a.person, a.now)} {name}" for at, name in sorted(_events(a))[-12:]]
    return "The last of the log:\n" + "\n".join(lines) if lines else "Nothing is in the log yet."


def _events(a: Assessment) -> list[tuple[datetime, str]]:
    done = [(at, f"{steps.name_of(key)}: done") for key, at in a.batch.done.items()]
    read = [(r.at, f"{readings.PLACES[r.probe]} {numbers.temperature(r.celsius, a.person)}") for r in a.batch.readings]
    return [*done, *read]


def incident(a: Assessment, what: str) -> str:
    """Something went wrong: the verdict first, the rule behind it, and what to do."""
    event = yard.EVENTS.get(what)
    return event(a) if event else incidents.incident(a, what)
