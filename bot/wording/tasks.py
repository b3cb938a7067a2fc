"""Words for a step that falls due: what to do, the action first, and why or how where that is not plain."""

from bot.wording import cautions, cooling, fuel, meats, numbers, pickles, steps
from bot.wording.language import Words, decimal, say
from core.batch.assess import Assessment
from core.cure.afterwards import SOAK_WATER
from core.plan.recipe import product
from core.plan.setup import by_the_clock
from core.plan.steps import Kind, Step, Urgency

WRAPPINGS = Words({"paper": "paper", "foil": "foil"})


def task(step: Step, a: Assessment) -> str:
    """What to do, the action first, and why or how where that is not plain."""
    writer = _TASKS.get(step.kind)
    return writer(step, a) if writer else f"{steps.name(step, a)}."


def _brine(step: Step, a: Assessment) -> str:
    dose = a.dose
    if dose is None:
        return say("Make the brine. I still need the strength printed on your curing salt before I can give grams.")
    parts = pickles.weighed(dose)
    if a.batch.setup.method == "dry":
        return say(
            "{name}: {parts}.\nAll of it onto the meat and into the bag, nothing left over; press the air out.",
            name=steps.name(step, a),
            parts=parts,
        )
    if a.batch.setup.method == "inject":
        return pickles.to_make(dose, a)
    if by_the_clock(a.batch.setup):
        return say(
            "Make the brine: {water} kg water, {parts}.\n"
            "Stir the salt into cold water until it is gone, with ice for a part of the water where the tap is warm. "
            "Into the fridge until it reads {limit} or less.",
            water=decimal(dose.water_kg, 2),
            parts=parts,
            limit=numbers.both(4.4, a.person),
        )
    return say(
        "Make the brine: {water} kg water, {parts}.\n"
        "Dissolve salt and sugar in a quarter of the water, hot; the rest of the water cold, or as ice. "
        "{more}Then into the fridge until it reads {limit} or less.",
        water=decimal(dose.water_kg, 2),
        parts=parts,
        more="" if meats.plain(a) else say("The curing salt goes in last, cold. "),
        limit=numbers.both(4.4, a.person),
    )


def _brine_check(step: Step, a: Assessment) -> str:
    return say(
        "Read the brine: the meat goes in at {limit} or colder. Reply with the number, like: {example}.",
        limit=numbers.both(4.4, a.person),
        example=say("brine 3 c") if a.person.units.temperature == "c" else say("brine 38 f"),
    )


def _into_cure(step: Step, a: Assessment) -> str:
    days = a.plan.cure_days if a.plan else 0.0
    if a.batch.setup.method == "inject":
        return pickles.to_inject(a, days)
    dry = say("with all of its salt") if meats.plain(a) else say("with all of its cure")
    how = say("with all of its brine") if a.batch.setup.method != "dry" else dry
    wait = (
        say("Once the brine reads {limit} or colder: meat", limit=numbers.both(4.4, a.person))
        if steps.brine_unread(a)
        else say("Meat")
    )
    return say(
        "{wait} into the bag {how}, air out.\n"
        "A tray under it, lowest shelf. Write today's date on it; it stays in for {days}.",
        wait=wait,
        how=how,
        days=numbers.lying(days),
    )


def _flip(step: Step, a: Assessment) -> str:
    return say("Flip the bag and press the liquid around the meat. Missing one does no harm.")


def _fridge(step: Step, a: Assessment) -> str:
    low, high = numbers.temperature(2.0, a.person), numbers.temperature(4.4, a.person)
    if step.urgency is Urgency.PIERCING:
        return say(
            "Read the fridge again: it was too warm, and more than two hours of that is too long.\n"
            "{low} to {high} is right. Else move the meat to a colder one, or onto ice, and tell me what that reads.",
            low=low,
            high=high,
        )
    return say(
        "Read the fridge, a thermometer in a glass of water beside the bag: {low} to {high} is right.",
        low=low,
        high=high,
    )


def _mid(step: Step, a: Assessment) -> str:
    return say(
        "Look at the bag: firmer than raw, smelling of spice and clean meat, no leak.\n"
        "Sour, slimy or gassy: stop, and tell me."
    )


def _out(step: Step, a: Assessment) -> str:
    return say("Take the meat out of the cure and pour the liquid away; it is not used twice.")


def _rinse(step: Step, a: Assessment) -> str:
    return say(
        "Rinse it cold for a minute, both faces, then fry a thin slice from a corner through and taste.\n"
        "Too salty: an hour in ice water in the fridge, then taste again."
    )


def _soak(step: Step, a: Assessment) -> str:
    return say(
        "Soak it in {water} of ice-cold fresh water, in the fridge, for {hours}. Say «soaked» when it is out.",
        water=numbers.mass(a.batch.setup.mass * SOAK_WATER, a.person),
        hours=numbers.hours(step.minutes / 60),
    )


def _even(step: Step, a: Assessment) -> str:
    return say(
        "Pat it dry and seal it in a bag, air out: {days} in the fridge, so that the salt evens out. Say «sealed».",
        days=numbers.days(step.minutes / 1440),
    )


def _dry(step: Step, a: Assessment) -> str:
    return say("Pat it dry and set it on a rack in the fridge, uncovered, until the surface is tacky.")


def _rub(step: Step, a: Assessment) -> str:
    share = product(a.batch.setup.product).rub_g_per_kg
    amount = round(a.batch.setup.mass * share / 5.0) * 5  # to 5 g: no dose
    return say(
        "Rub it: about {amount} g ({share} g a kilo), without salt. Then let it rest for 30 min while the fire settles.",
        amount=amount,
        share=f"{share:.0f}",
    )


def _light(step: Step, a: Assessment) -> str:
    if meats.in_pot(a):
        return say(
            "Heat a pot of fresh water, enough to cover the meat, with the spices you like and no salt.\n"
            "It simmers at {pit}: bubbles rise, nothing boils hard.",
            pit=numbers.temperature(a.batch.setup.pit_c, a.person),
        )
    load = fuel.to_fill(a.fuel, a)
    lit = say(
        "Light the fire: the meat goes on in {minutes}.\n{load}Bring the pit to {pit} and wait for thin, clear smoke.",
        minutes=numbers.hours(step.minutes / 60),
        load=load,
        pit=numbers.temperature(a.batch.setup.pit_c, a.person),
    )
    return f"{lit}\n{cautions.WORDS['fat_under_the_bird']}" if meats.waterfowl(a) else lit


def _meat_on(step: Step, a: Assessment) -> str:
    if meats.in_pot(a):
        return say("Meat into the simmering water, covered by it, lid on a crack. Say «on» when it is in.")
    return say(
        "Meat on, {probed}. Say «on» when it is.\nThe pit will read low for half an hour; leave it.",
        probed=meats.probed(a),
    )


def _reading(step: Step, a: Assessment) -> str:
    celsius = a.person.units.temperature == "c"
    if meats.in_pot(a):
        return say("Read the core, and reply like {example}.", example="core 70" if celsius else "core 158")
    example = "70/120" if celsius else "158/245"
    return say("Read core and pit, and reply like {example}.", example=example)


def _wrap(step: Step, a: Assessment) -> str:
    return say(
        "Wrap it tight in {wrap}, once the colour of the crust pleases you. Say «wrapped».",
        wrap=WRAPPINGS.get(a.batch.setup.wrap, a.batch.setup.wrap),
    )


def _off(step: Step, a: Assessment) -> str:
    return meats.done_at(a)


def _rest(step: Step, a: Assessment) -> str:
    return (
        say("Let it rest, wrapped, and watch the core. {chill_from}", chill_from=cooling.chill_from(a.person))
        if _chilled(a)
        else say(
            "Let it rest, wrapped; keep the core at {limit} or above until you slice.",
            limit=numbers.both(60.0, a.person),
        )
    )


def _chill(step: Step, a: Assessment) -> str:
    way = {
        "ice": say("bag it and lay it in ice water, then on a rack in the fridge"),
        "fan": say("unwrapped on a rack in the fridge, in front of a fan"),
        "rack": say("unwrapped on a rack in the fridge, lowest shelf"),
        "foil": say("in its foil in the fridge"),
    }[a.batch.setup.chill]
    return say(
        "Start the chill at a core of {limit}: {way}.\n"
        "From {limit2} it has 1.5 h to reach {limit3}. "
        "Say «in the chill», with the core if you have it.",
        limit=numbers.both(60.0, a.person),
        way=way,
        limit2=numbers.both(54.4, a.person),
        limit3=numbers.at_most(26.7, a.person),
    )


def _chill_check(step: Step, a: Assessment) -> str:
    corner = 26.7 if step.key.endswith("/27") else 4.4
    return say(
        "Read the core: it should be at {limit} or colder by now. Reply with the number.",
        limit=numbers.at_most(corner, a.person),
    )


def _slice(step: Step, a: Assessment) -> str:
    return meats.carved(a)


def _use_by(step: Step, a: Assessment) -> str:
    return say("Today is the last day for what is in the fridge. Eat it, freeze it, or let it go.")


def _debrief(step: Step, a: Assessment) -> str:
    if meats.plain(a):
        return say(
            "How was it? Tell me the weight after, and whether it was too salty. The next plan starts from that."
        )
    return say(
        "How was it? Tell me what the slice showed («grey 12 mm in the middle of 48», or «pink all through»),\n"
        "the weight after, and whether it was too salty. The next plan starts from that."
    )


def _chilled(a: Assessment) -> bool:
    return a.chilled


_TASKS = {
    Kind.BRINE: _brine,
    Kind.BRINE_CHECK: _brine_check,
    Kind.INTO_CURE: _into_cure,
    Kind.FLIP: _flip,
    Kind.FRIDGE_CHECK: _fridge,
    Kind.MID_CHECK: _mid,
    Kind.OUT: _out,
    Kind.RINSE: _rinse,
    Kind.SOAK: _soak,
    Kind.EVEN: _even,
    Kind.DRY: _dry,
    Kind.RUB: _rub,
    Kind.LIGHT: _light,
    Kind.MEAT_ON: _meat_on,
    Kind.READING: _reading,
    Kind.WRAP: _wrap,
    Kind.OFF: _off,
    Kind.REST: _rest,
    Kind.CHILL: _chill,
    Kind.CHILL_CHECK: _chill_check,
    Kind.SLICE: _slice,
    Kind.USE_BY: _use_by,
    Kind.DEBRIEF: _debrief,
}
