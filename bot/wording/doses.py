"""Words for the dose, its nitrite and its limit, and for the days in the cure."""

from dataclasses import replace

from bot.wording import brines, cautions, meats, numbers, pickles, spoons
from bot.wording.language import decimal, say
from core.batch.assess import Assessment
from core.batch.material import brining_of
from core.batch.weighed import is_told, most_in
from core.cure.penetration import Penetration
from core.plan.recipe import product
from core.plan.setup import by_the_clock
from core.units import Days


def dose(a: Assessment) -> str:
    """The dose in grams, its nitrite, the limit and where the limit stands."""
    d = a.dose
    if d is None:
        return ""
    if d.limit is None:
        return brines.salt_alone(d, a.batch.setup)
    strength = numbers.percent(a.batch.setup.cure_nitrite_fraction or 0.0)
    water = say("{water} kg water, ", water=decimal(d.water_kg, 2)) if d.water_kg else ""
    low, high = d.teaspoons
    base = say("meat and pickle") if a.batch.setup.method == "brine" or d.covered else say("green meat")
    beware = cautions.lines(c for c in d.cautions if c.key != "nitrite_weigh_exactly")  # the words above say so
    nitrate = (
        say("Nitrate {nitrate_ingoing} beside it. ", nitrate_ingoing=numbers.ppm(d.nitrate_ingoing))
        if d.nitrate_ingoing
        else ""
    )
    said = say(
        "Dose: {water}{cure} curing salt of {strength}, {salt} salt, "
        "{sugar} sugar.\nWeigh it: {low} to {high} level teaspoons is only a check on the scale.\n"
        "Nitrite {nitrite_ingoing} of {base}; limit {max} "
        "({jurisdiction}, {where}{memory}). {nitrate}Salt {salt2}.",
        water=water,
        cure=numbers.grams(d.cure_kg),
        strength=strength,
        salt=numbers.grams(d.salt_kg),
        sugar=numbers.grams(d.sugar_kg),
        low=decimal(low, 1),
        high=decimal(high, 1),
        nitrite_ingoing=numbers.ppm(d.nitrite_ingoing),
        base=base,
        max=numbers.ppm(d.limit.max_mg_kg),
        jurisdiction=d.limit.jurisdiction,
        where=d.limit.where,
        memory=_memory(d.limit.status),
        nitrate=nitrate,
        salt2=numbers.percent(d.salt_fraction),
    )
    by_needle = [pickles.parted(a)] if d.covered else []
    by_spoon = [line] if (line := spoons.without_scale(a)) else []
    return "\n".join([said, *by_needle, *by_spoon, *beware])


def dose_in(a: Assessment) -> str:
    """What is in the cure, once it was weighed out: its nitrite by the meat that it went to."""
    d = a.dose
    if d is None or d.limit is None or not is_told(a.batch):
        return ""
    most = most_in(a.batch, d)
    spooned = say("{cure} to {cure2}", cure=numbers.grams(d.cure_kg), cure2=numbers.grams_up(most.cure_kg))
    limit = say(
        "limit {max} ({jurisdiction}, {where}{memory})",
        max=numbers.ppm(d.limit.max_mg_kg),
        jurisdiction=d.limit.jurisdiction,
        where=d.limit.where,
        memory=_memory(d.limit.status),
    )
    return say(
        "In it are {cure} curing salt of {nitrite}: {nitrite_ingoing} nitrite; {limit}. Salt {share} in all.",
        share=numbers.percent(d.salt_fraction, 2),
        cure=numbers.grams(d.cure_kg) if most is d else spooned,
        nitrite=numbers.percent(d.nitrite_fraction),
        nitrite_ingoing=numbers.ppm_between(d.nitrite_ingoing, most.nitrite_ingoing),
        limit=limit,
    )


def _memory(status: str) -> str:
    return say(", from memory") if status == "MEMORY" else ""


def days(a: Assessment) -> str:
    """How long it stays in, and the band behind it; what a soak and a sealed rest make of the salt."""
    return "\n".join(line for line in (_in_the_cure(a), afterwards(a)) if line)


def afterwards(a: Assessment) -> str:
    """The salt as it goes onto the fire, soaked and rested, beside what it would be without."""
    setup = a.batch.setup
    after = a.after_cure()
    if not (setup.soak_hours or setup.rest_days) or a.cure is None or a.plan is None or after is None:
        return ""
    plain = Penetration(replace(a.cure.immersion, soak_hours=0.0, rest_hours=0.0), 0.0, 0.0, 0.0).after(
        a.plan.cure_days
    )
    return say(
        "Afterwards the salt is {mean} on average and {centre} in the middle, instead of {mean2} and {centre2}.",
        mean=numbers.percent(after.salt_mean.p50),
        centre=numbers.percent(after.salt_centre.p50),
        mean2=numbers.percent(plain.salt_mean.p50),
        centre2=numbers.percent(plain.salt_centre.p50),
    )


def _in_the_cure(a: Assessment) -> str:
    if a.plan is not None and by_the_clock(a.batch.setup) and a.dose is not None:
        hours = product(a.batch.setup.product).brining(a.batch.setup)
        if hours is not None:
            return brines.for_hours(a, a.dose, hours)
        return brines.by_the_clock(a, brining_of(a.batch.setup, a.dose))
    if a.plan is not None and meats.plain(a):
        return say(
            "In the salt for {cure_days}: no nitrite goes in, so there is no middle to wait for.",
            cure_days=numbers.lying(a.plan.cure_days),
        )
    if a.cure_days is None or a.plan is None:
        return ""
    band = a.cure_days
    slices = _longer_than_wished(a, a.plan.cure_days) + learned(a)
    if a.batch.setup.method == "inject":
        said = say(
            "In the cure for {cure_days}: injected, the middle is reached within a day, and the colour wants its time.{learned}",
            cure_days=numbers.days(a.plan.cure_days),
            learned=slices,
        )
        return f"{said}\n{pickles.creeping_in(a)}".rstrip()
    least = product(a.batch.setup.product).least(a.batch.setup)
    evens = say(" It stays longer, so that salt and colour even out.") if least > band.p90 + 1.0 else ""
    return say(
        "In the cure for {cure_days}. The middle turns pink after about {p50} "
        "({p10} to {p90}); nine in ten pieces like this are there by {p902}.{evens}{learned}",
        cure_days=numbers.days(a.plan.cure_days),
        p50=numbers.days(band.p50),
        p10=numbers.plain(numbers.half_down(band.p10)),
        p90=numbers.plain(numbers.half_up(band.p90)),
        p902=numbers.days(band.p90),
        evens=evens,
        learned=slices,
    )


def _longer_than_wished(a: Assessment, planned: Days) -> str:
    """What is said where the cook wants it out sooner than any plan takes it out."""
    setup = a.batch.setup
    wished = min(setup.cure_days or planned, (setup.salting_hours or planned * 24.0) / 24.0)
    if planned < wished + 0.5:
        return ""
    return say(" You asked for {wished}; I plan no cure as short as that.", wished=numbers.lying(wished))


def learned(a: Assessment) -> str:
    """How many days the person's own slices add or take, after a blank; nothing where they say nothing."""
    shift = a.cure_shift_days
    if a.person.learned.batches == 0 or abs(shift) < 0.25:
        return ""
    days_more = numbers.days(abs(shift))
    if shift > 0:
        return say(" By your slices your meat cures slowly: {days} more than usual.", days=days_more)
    return say(" By your slices your meat cures quickly: {days} less than usual.", days=days_more)
