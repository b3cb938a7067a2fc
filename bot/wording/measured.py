"""Reckoned for the batch in hand: its whole span, the time above a mark, the salt of a portion, its ice."""

from datetime import datetime
from math import ceil

from bot.wording import cooling, numbers, plans, recalled, standing, sums_hot
from bot.wording.language import decimal, say
from core.answers import amounts, mixing
from core.batch.assess import Assessment
from core.batch.events import Probe
from core.units import Celsius

HOT: Celsius = 60.0
READ_K = 0.05  # a mark that was typed in °F is found again in °C


def altogether(a: Assessment) -> str:
    """How long it takes from its start to the plate."""
    if a.plan is None:
        return plans.now(a)
    return say(
        "{span} in all: begun {start}, the meal {serve}.\n{since}",
        span=numbers.span(a.plan.serve - a.batch.started),
        start=numbers.when(a.batch.started, a.person, a.now),
        serve=numbers.when(a.plan.serve, a.person, a.now),
        since=standing.since(a),
    )


def above(a: Assessment, mark: Celsius) -> str:
    """Since when the core has been at a mark, by the readings."""
    seen = a.batch.of_probe(Probe.CORE)
    first = next((r for r in seen if r.celsius >= mark), None)
    shown = numbers.temperature(mark, a.person)
    if first is None:
        return say("No core of {mark} or more is read yet. {next}", mark=shown, next=plans.coming(a)).strip()
    since = [r for r in seen if r.at >= first.at]
    below = next((r for r in since if r.celsius < mark), None)
    end = below.at if below else a.now
    return _climbed(first.at, a) + say(
        "For {span} by the record: {first} was the first reading of {mark} or more, {below}.",
        first=recalled.one(first, a),
        mark=shown,
        span=numbers.span(end - first.at),
        below=say("till {reading}", reading=recalled.one(below, a))
        if below
        else say("and it has not been read below since"),
    )


def fell_to(a: Assessment, mark: Celsius) -> str:
    """Since when the core has been down at a mark, off the fire; "" where no reading shows it."""
    off = a.batch.off_at
    seen = [r for r in a.batch.of_probe(Probe.CORE) if off is not None and r.at >= off]
    low = next((r for r in seen if r.celsius <= mark + READ_K), None)
    if low is None:
        return ""
    before = [r for r in seen if r.at < low.at]
    said = say("{span} ago: {reading}.", span=numbers.span(a.now - low.at), reading=recalled.one(low, a))
    return f"{said} {say('Before it: {reading}.', reading=recalled.one(before[-1], a))}" if before else said


def _climbed(at: datetime, a: Assessment) -> str:
    """How long after it went on that was."""
    if a.on_at is None or at <= a.on_at:
        return ""
    return say("{span} after it went on.", span=numbers.span(at - a.on_at)) + "\n"


def portion_salt(a: Assessment) -> str:
    """Salt and sodium of a portion of this batch."""
    salt = amounts.salt_in_slice(amounts.PORTION[1], a.batch.setup.salt_fraction)
    return say(
        "Roughly {low} to {high} g of salt in a portion of 150 g, {sodium} to {most} mg of sodium: salted to {share} before the fire. "
        "An estimate, no analysis.",
        low=decimal(salt.low * 1000.0, 1),
        high=decimal(salt.high * 1000.0, 1),
        sodium=f"{amounts.sodium(salt.low) * 1e6:.0f}",
        most=f"{amounts.sodium(salt.high) * 1e6:.0f}",
        share=numbers.percent(a.batch.setup.salt_fraction),
    )


def ice(a: Assessment) -> str:
    """How much ice this piece takes."""
    found = mixing.ice(a.batch.setup.mass, HOT, a.batch.setup.mass)
    said = say(
        "At least {ice} kg of ice melt for {mass} and as much water; have twice that. {next}",
        ice=decimal(ceil(found * 10) / 10, 1),
        mass=numbers.mass(a.batch.setup.mass, a.person),
        next=plans.coming(a),
    )
    return f"{said}\n{cooling.stands(a)}".strip()


def rub(a: Assessment) -> str:
    """How much rub this piece takes."""
    said = sums_hot.per_kilo(a.batch.setup.mass, amounts.RUB, False, a.person)
    return f"{said}\n{plans.coming(a)}".strip()
