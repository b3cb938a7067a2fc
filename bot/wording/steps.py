"""Words for each step of the week: its name in a plan, and what to do when it falls due."""

from bot.wording import fire, meats, numbers, safety
from core.batch.assess import Assessment
from core.cure.dose import Dose
from core.plan.recipe import product
from core.plan.steps import Kind, State, Step

NAMES = {
    Kind.THAW: "Thaw in the fridge",
    Kind.BRINE: "Make the brine",
    Kind.BRINE_CHECK: "Read the brine",
    Kind.INTO_CURE: "Meat into the cure",
    Kind.FLIP: "Flip the bag",
    Kind.FRIDGE_CHECK: "Read the fridge",
    Kind.MID_CHECK: "Look at the bag",
    Kind.OUT: "Out of the cure",
    Kind.RINSE: "Rinse and taste",
    Kind.SOAK: "Soak in fresh water",
    Kind.DRY: "Dry on a rack",
    Kind.RUB: "Rub, then rest",
    Kind.LIGHT: "Light the fire",
    Kind.MEAT_ON: "Meat on",
    Kind.READING: "Read core and pit",
    Kind.WRAP: "Wrap",
    Kind.OFF: "Off the fire",
    Kind.REST: "Rest",
    Kind.CHILL: "Start the chill",
    Kind.CHILL_CHECK: "Read the core in the chill",
    Kind.SLICE: "Slice",
    Kind.SERVE: "Meal",
    Kind.USE_BY: "Use by",
    Kind.DEBRIEF: "Look back",
}
DRY_NAME = "Weigh the cure"
SALT_NAME = "Weigh the salt"
POT_NAMES = {Kind.LIGHT: "Heat the water", Kind.MEAT_ON: "Meat into the pot", Kind.OFF: "Out of the pot"}
NEEDLES = {
    "ham_bone_in": ", first at the ball joint, at the shank and along the bone",
    "chicken_whole": " into breast, thighs and legs, from inside the skin",
}
STATES = {State.DONE: "done", State.SKIPPED: "left out", State.DUE: "due now", State.AHEAD: ""}


def name(step: Step, a: Assessment) -> str:
    """The step in a few words, as a plan lists it."""
    if step.kind is Kind.BRINE and a.batch.setup.method == "dry":
        return SALT_NAME if meats.plain(a) else DRY_NAME
    if meats.in_pot(a) and step.kind in POT_NAMES:
        return POT_NAMES[step.kind]
    if step.kind is Kind.CHILL_CHECK:
        corner = 26.7 if step.key.endswith("/27") else 4.4
        return f"Core at {numbers.both(corner, a.person)} or below"
    return NAMES[step.kind]


def name_of(key: str) -> str:
    """The name of a step from its key alone."""
    return NAMES[Kind(key.split("/")[0])]


def task(step: Step, a: Assessment) -> str:
    """What to do, the action first, and why or how where that is not plain."""
    writer = _TASKS.get(step.kind)
    return writer(step, a) if writer else f"{name(step, a)}."


def _brine(step: Step, a: Assessment) -> str:
    dose = a.dose
    if dose is None:
        return "Make the brine. I still need the strength printed on your curing salt before I can give grams."
    parts = _weighed(dose)
    if a.batch.setup.method == "dry":
        return f"{name(step, a)}: {parts}.\nAll of it onto the meat and into the bag, nothing left over; press the air out."
    if a.batch.setup.method == "inject":
        return _pickle(dose, a)
    return (
        f"Make the brine: {dose.water_kg:.2f} kg water, {parts}.\n"
        "Dissolve salt and sugar in a quarter of the water, hot; the rest of the water cold, or as ice. "
        f"{'' if meats.plain(a) else 'The curing salt goes in last, cold. '}Then into the fridge until it reads {numbers.both(4.4, a.person)} or less."
    )


def _weighed(dose: Dose) -> str:
    """«11.9 g curing salt (6.25 % nitrite), 96 g salt, 48 g sugar»; without the first where no nitrite goes in."""
    cure = f"{numbers.grams(dose.cure_kg)} curing salt ({numbers.percent(dose.nitrite_fraction)} nitrite), "
    return f"{cure if dose.cure_kg else ''}{numbers.grams(dose.salt_kg)} salt, {numbers.grams(dose.sugar_kg)} sugar"


def _pickle(dose: Dose, a: Assessment) -> str:
    """What is injected, and what no pickle of that size can carry and goes on from outside."""
    dissolved = dose.salt_kg - dose.rubbed_salt_kg
    share = numbers.percent(a.batch.setup.pump_fraction, 0)
    cure = f"{numbers.grams(dose.cure_kg)} curing salt ({numbers.percent(dose.nitrite_fraction)} nitrite), "
    return (
        f"Make the pickle to inject: {dose.water_kg * 1000:.0f} g water, {cure if dose.cure_kg else ''}"
        f"{numbers.grams(dissolved)} salt. It goes cold, at {numbers.both(4.4, a.person)} or less.\n"
        f"All of it is injected, {share} of the weight, a needle every 25 mm{NEEDLES.get(a.batch.setup.cut, ' from both faces')}. Weigh {numbers.grams(dose.rubbed_salt_kg)} "
        f"salt and {numbers.grams(dose.sugar_kg)} sugar apart: they are rubbed on afterwards."
    )


def _brine_check(step: Step, a: Assessment) -> str:
    return (
        f"Read the brine: the meat goes in at {numbers.both(4.4, a.person)} or colder. "
        "Reply with the number, like: brine 3" + (" c" if a.person.units.temperature == "c" else "8 f") + "."
    )


def _into_cure(step: Step, a: Assessment) -> str:
    days = a.plan.cure_days if a.plan else 0.0
    if a.batch.setup.method == "inject":
        return (
            "Inject all of the pickle, then rub on the salt and sugar that are left.\n"
            f"Into the bag, air out, lowest shelf. Write today's date on it; it stays in for {numbers.days(days)}."
        )
    dry = "with all of its salt" if meats.plain(a) else "with all of its cure"
    how = "with all of its brine" if a.batch.setup.method != "dry" else dry
    wait = f"Once the brine reads {numbers.both(4.4, a.person)} or colder: meat" if brine_unread(a) else "Meat"
    return (
        f"{wait} into the bag {how}, air out.\n"
        f"A tray under it, lowest shelf. Write today's date on it; it stays in for {numbers.days(days)}."
    )


def brine_unread(a: Assessment) -> bool:
    """Whether the brine still has to be read cold enough before the meat may go in."""
    check = a.plan.step("brine_check") if a.plan else None
    return check is not None and check.state in (State.DUE, State.AHEAD)


def _flip(step: Step, a: Assessment) -> str:
    return "Flip the bag and press the liquid around the meat. Missing one does no harm."


def _fridge(step: Step, a: Assessment) -> str:
    low, high = numbers.temperature(2.0, a.person), numbers.temperature(4.4, a.person)
    return f"Read the fridge, a thermometer in a glass of water beside the bag: {low} to {high} is right."


def _mid(step: Step, a: Assessment) -> str:
    return (
        "Look at the bag: firmer than raw, smelling of spice and clean meat, no leak.\n"
        "Sour, slimy or gassy: stop, and tell me."
    )


def _out(step: Step, a: Assessment) -> str:
    return "Take the meat out of the cure and pour the liquid away; it is not used twice."


def _rinse(step: Step, a: Assessment) -> str:
    return (
        "Rinse it cold for a minute, both faces, then fry a thin slice from a corner through and taste.\n"
        "Too salty: an hour in ice water in the fridge, then taste again."
    )


def _dry(step: Step, a: Assessment) -> str:
    return "Pat it dry and set it on a rack in the fridge, uncovered, until the surface is tacky."


def _rub(step: Step, a: Assessment) -> str:
    share = product(a.batch.setup.product).rub_g_per_kg
    amount = round(a.batch.setup.mass * share / 5.0) * 5  # to 5 g: no dose
    return f"Rub it: about {amount} g ({share:.0f} g a kilo), without salt. Then let it rest for 30 min while the fire settles."


def _light(step: Step, a: Assessment) -> str:
    if meats.in_pot(a):
        return (
            "Heat a pot of fresh water, enough to cover the meat, with the spices you like and no salt.\n"
            f"It simmers at {numbers.temperature(a.batch.setup.pit_c, a.person)}: bubbles rise, nothing boils hard."
        )
    load = fire.to_fill(a.fuel, a)
    return (
        f"Light the fire: the meat goes on in {numbers.hours(step.minutes / 60)}.\n{load}"
        f"Bring the pit to {numbers.temperature(a.batch.setup.pit_c, a.person)} and wait for thin, clear smoke."
    )


def _meat_on(step: Step, a: Assessment) -> str:
    if meats.in_pot(a):
        return "Meat into the simmering water, covered by it, lid on a crack. Say «on» when it is in."
    return f"Meat on, {meats.probed(a)}. Say «on» when it is.\nThe pit will read low for half an hour; leave it."


def _reading(step: Step, a: Assessment) -> str:
    example = "70/120" if a.person.units.temperature == "c" else "158/245"
    return f"Read core and pit, and reply like {example}."


def _wrap(step: Step, a: Assessment) -> str:
    return f"Wrap it tight in {a.batch.setup.wrap}, once the colour of the crust pleases you. Say «wrapped»."


def _off(step: Step, a: Assessment) -> str:
    return meats.done_at(a)


def _rest(step: Step, a: Assessment) -> str:
    return (
        f"Let it rest, wrapped, and watch the core. {safety.chill_from(a.person)}"
        if _chilled(a)
        else f"Let it rest, wrapped; keep the core at {numbers.both(60.0, a.person)} or above until you slice."
    )


def _chill(step: Step, a: Assessment) -> str:
    way = {
        "ice": "bag it and lay it in ice water, then on a rack in the fridge",
        "fan": "unwrapped on a rack in the fridge, in front of a fan",
        "rack": "unwrapped on a rack in the fridge, lowest shelf",
        "foil": "in its foil in the fridge",
    }[a.batch.setup.chill]
    return (
        f"Start the chill at a core of {numbers.both(60.0, a.person)}: {way}.\n"
        f"From {numbers.both(54.4, a.person)} it has 1.5 h to reach {numbers.both(26.7, a.person)}. "
        "Say «in the chill», with the core if you have it."
    )


def _chill_check(step: Step, a: Assessment) -> str:
    corner = 26.7 if step.key.endswith("/27") else 4.4
    return f"Read the core: it should be at {numbers.both(corner, a.person)} or colder by now. Reply with the number."


def _slice(step: Step, a: Assessment) -> str:
    return meats.carved(a)


def _use_by(step: Step, a: Assessment) -> str:
    return "Today is the last day for what is in the fridge. Eat it, freeze it, or let it go."


def _debrief(step: Step, a: Assessment) -> str:
    return (
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
