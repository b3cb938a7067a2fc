"""Answers from the batch: why, is it safe, how much longer, what did I say. Each carries its rule and its source."""

from datetime import datetime

from bot.wording import (
    cautions,
    cooling,
    cure_days,
    doneness,
    doses,
    incidents,
    meats,
    numbers,
    plans,
    put_in,
    refusals,
    safety,
    standing,
    steps,
    wraps,
    yard,
)
from bot.wording.cited import cite
from bot.wording.language import decimal, say
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.batch.events import Probe
from core.errors import OverLimit
from core.plan.steps import Kind, State
from core.safety.findings import Outcome
from core.units import celsius_from_fahrenheit


def now(a: Assessment) -> str:
    """What to do now: in the chill how it stands, and what to do where it is too slow, comes before the next step."""
    counts = a.cooling.readings and a.cooling.readings[-1].celsius < celsius_from_fahrenheit(130.0)
    if "chill" not in a.batch.done or not counts or a.ledger.cooling is None:
        return plans.now(a)
    open_ = a.ledger.cooling.kind is Outcome.NOT_YET
    return f"{cooling.stands(a)}\n{plans.coming(a)}" if open_ else plans.now(a)


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
            return cure_days.why(a) or plans.now(a)


def _why_dose(a: Assessment) -> str:
    if a.dose is None:
        return plans.now(a)
    d, setup = a.dose, a.batch.setup
    if d.limit is None:
        return f"{doses.dose(a)}\n{cite(d.sources)}"
    milligrams = d.cure_kg * d.nitrite_fraction * 1e6
    base = say("meat plus the whole pickle") if setup.method == "brine" else say("green meat")
    pickup = (
        say(
            " By pick-up alone it would count as {nitrite_by_pickup}; that is shown, not used.",
            nitrite_by_pickup=numbers.ppm(d.nitrite_by_pickup),
        )
        if d.nitrite_by_pickup
        else ""
    )
    return say(
        "{cure} curing salt of {nitrite}, because I aim for {nitrite_ingoing} "
        "nitrite in {base}.\n{cure} at {nitrite} is {milligrams} mg of nitrite, in {milligrams2} kg. "
        "The limit is {max} ({jurisdiction}, {where}).{pickup}\n{cite}",
        cure=numbers.grams(d.cure_kg),
        nitrite=numbers.percent(d.nitrite_fraction),
        nitrite_ingoing=numbers.ppm(d.nitrite_ingoing),
        base=base,
        milligrams=f"{milligrams:.0f}",
        milligrams2=decimal(milligrams / d.nitrite_ingoing, 2),
        max=numbers.ppm(d.limit.max_mg_kg),
        jurisdiction=d.limit.jurisdiction,
        where=d.limit.where,
        pickup=pickup,
        cite=cite(d.sources),
    )


def _why_hours(a: Assessment) -> str:
    if a.cook is None:
        return say("There is no cook to compute yet.")
    c, person = a.cook, a.person
    if meats.in_pot(a):
        hold = a.hold_hours
        return say(
            "{p10} to {p90} h in the pot ({p50} in the middle),\nbecause heat creeps in from the water "
            "through {thickness} each way, and then it simmers {hold} more until a fork turns in it.\n"
            "The first is computed, the second common practice.\n{cite}",
            p10=decimal(c.ready.p10 + hold, 1),
            p90=decimal(c.ready.p90 + hold, 1),
            p50=decimal(c.ready.p50 + hold, 1),
            thickness=numbers.length(a.piece.thickness / 2, person),
            hold=numbers.hours(hold),
            cite=cite(c.sources[:1]),
        )
    return say(
        "{p10} to {p90} h from meat on ({p50} in the middle), because evaporation at the surface "
        "takes most of the heat, not the weight: {thickness} thick, pit {pit}, "
        "off at {target}. It loses {p102} to {p902} of its weight. "
        "Readings narrow the band.\n{cite}",
        p10=decimal(c.ready.p10, 1),
        p90=decimal(c.ready.p90, 1),
        p50=decimal(c.ready.p50, 1),
        thickness=numbers.length(a.piece.thickness, person),
        pit=numbers.temperature(a.batch.setup.pit_c, person),
        target=numbers.temperature(a.batch.setup.target_c, person),
        p102=numbers.share(c.loss.p10),
        p902=numbers.share(c.loss.p90),
        cite=cite(c.sources),
    )


def _why_chill(a: Assessment) -> str:
    forecast = cautions.chill_forecast(a)
    return say(
        "From 54 °C (130 °F) it has 1.5 h to 26 °C (80 °F) and 5 h more to 4 °C (40 °F), because spores survive the fire and wake "
        "in between. {forecast}\n{rule_of_cooling}",
        forecast=forecast,
        rule_of_cooling=cooling.rule_of_cooling(),
    )


def safe(a: Assessment) -> str:
    """The verdict of the ledger, by rule; a dose over the limit is refused again, whoever asks, and a mix that is wrong."""
    over = refusals.say(a.refusal, a.person) if isinstance(a.refusal, OverLimit) else ""
    if "into_cure" not in a.batch.done:  # no meat lies in it, so the record does not judge it yet
        over = over or put_in.judged(a)
    if over and a.ledger.verdict.kind is Outcome.NOT_YET:
        return over  # no cooking through makes up for it
    return "\n".join(text for text in (over, safety.verdict(a)) if text)


def eta(a: Assessment) -> str:
    """How much longer."""
    if a.ready is not None and (there := doneness.there(a)):
        return there
    if a.ready is not None:
        return say(
            "Ready {when}, {left}.\n{stall}",
            when=numbers.time_band(a.ready, a.person, a.now),
            left=_left(a.ready.p50, a.now),
            stall=wraps.stall(a),
        ).strip()
    step = a.plan.next_step() if a.plan else None
    if step is None or a.plan is None:
        return plans.now(a)
    told = say("The meal is {serve}. {now}", serve=numbers.when(a.plan.serve, a.person, a.now), now=plans.now(a))
    out = standing.out(a).split("\n", 1)[0] if a.batch.phase is Phase.CURING else ""
    return "\n".join(line for line in (out, _cold_by(a), told, _hours_to_come(a)) if line)


def _cold_by(a: Assessment) -> str:
    """While it cools, by when it is cold by the plan; the number decides."""
    checks = [s for s in a.plan.of_kind(Kind.CHILL_CHECK) if s.state is not State.DONE] if a.plan else []
    if a.batch.phase is not Phase.CHILLING or not checks:
        return ""
    by = ", ".join(
        say("{step} {when}", step=steps.name(s, a), when=numbers.when(s.due, a.person, a.now)) for s in checks
    )
    return say("By the plan: {by}. The number decides, so read it.", by=by)


def _hours_to_come(a: Assessment) -> str:
    """From when to when it will cook by the plan; "" once it is on."""
    on, off = (a.plan.step(key) if a.plan else None for key in ("meat_on", "off"))
    if on is None or off is None or State.DONE in (on.state, off.state):
        return ""
    day = numbers.day(on.due, a.person)
    return say("{day}: {on}, {off}.", day=day, on=plans.line(on, a), off=plans.line(off, a))


def _left(ready: datetime, now: datetime) -> str:
    """How long it still takes, no finer than the time itself is known."""
    quarters = round((ready - now).total_seconds() / 900)
    return (
        say("so about {quarters} more", quarters=numbers.hours(quarters / 4))
        if quarters > 0
        else say("so any time now: probe it")
    )


def picture(a: Assessment, subject: str) -> str:
    """The sentence that says what a picture shows."""
    match subject:
        case "cook":
            return _cook_said(a)
        case "chill":
            stands = cooling.stands(a) if a.ledger.cooling else cautions.chill_forecast(a)
            return stands or say("The chill has not begun; the picture shows the rule that it will be held to.")
        case _:
            return _cure_said(a)


def _cook_said(a: Assessment) -> str:
    core = a.batch.last(Probe.CORE)
    last = (
        say(
            "Core {celsius} at {at}. ",
            celsius=numbers.temperature(core.celsius, a.person),
            at=numbers.clock(core.at, a.person),
        )
        if core and a.on_at
        else ""
    )
    if a.ready is not None:
        return say("{last}Ready {when}.", last=last, when=numbers.time_band(a.ready, a.person, a.now))
    if a.cook is None:
        return say("There is no cook yet.")
    if a.on_at is not None and a.batch.off_at is not None:
        return say("{last}It was on the fire for {span}.", last=last, span=numbers.span(a.batch.off_at - a.on_at))
    return say(
        "{last}From meat on it takes about {p50} h ({p10} to {p90}).",
        last=last,
        p50=decimal(a.cook.ready.p50, 1),
        p10=decimal(a.cook.ready.p10, 1),
        p90=decimal(a.cook.ready.p90, 1),
    )


def _cure_said(a: Assessment) -> str:
    after = a.after_cure()
    if a.plan is not None and meats.plain(a):
        return say("It is only salted, so there is no pink to show.")
    if after is None or a.plan is None:
        return say("There is no plan yet, so no cure to show.")
    return say(
        "When it comes out after {cure_days}, {probability_pink} of pieces like this are pink in the middle; "
        "salt in the middle {p50}, on average {p502}.",
        cure_days=numbers.days(a.plan.cure_days),
        probability_pink=numbers.chance(after.probability_pink),
        p50=numbers.percent(after.salt_centre.p50, 1),
        p502=numbers.percent(after.salt_mean.p50, 1),
    )


def incident(a: Assessment, what: str) -> str:
    """Something went wrong: the verdict first, the rule behind it, and what to do."""
    event = yard.EVENTS.get(what)
    return event(a) if event else incidents.incident(a, what)
