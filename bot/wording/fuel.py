"""Words for the fuel: how much to have, what of it burns, and what is reserve."""

from datetime import timedelta

from bot.wording import fire, meats, numbers
from bot.wording.language import decimal, say
from core.batch.assess import Assessment
from core.batch.material import fuel_of
from core.heat.fire import Fuel
from core.units import Hours

TAKEN_UP = timedelta(hours=3)  # so long smoke goes on, where it has some. Common practice
FED = frozenset({"kettle", "offset", "steel"})


def fuel_asked(a: Assessment) -> str:
    """How much fuel: for the whole cook, or from now to the slow end of the estimate."""
    if meats.in_pot(a):
        return say(fire.POT)
    hours = _hours_left(a)
    found = fuel_of(a.batch.setup, hours)
    setup = a.batch.setup
    low, high = _amount(found.burnt.p10 + found.warm_up, found, a), _amount(found.burnt.p90 + found.warm_up, found, a)
    reported = (
        say(
            " Cooks report {amount} to {amount2}, wind and lids included.",
            amount=_amount(found.practice.low, found, a),
            amount2=_amount(found.practice.high, found, a),
        )
        if found.practice.high > 0
        else ""
    )
    air = say(
        "{outside} outside, {air}", outside=numbers.temperature(setup.outside_c, a.person), air=_air(setup.wind_m_s)
    )
    return say(
        "{have} for {round}, to the slow end of the estimate.\n"
        "The heat balance burns {low} to {high} of it ({air}; say «it's windy» or «5 c outside»).{reported} "
        "What is not burnt keeps.\n{wood}",
        have=_have(found, a),
        round=numbers.hours(numbers.half(hours)),
        low=low,
        high=high,
        air=air,
        reported=reported,
        wood=_wood(found),
    )


def in_this_air(a: Assessment) -> str:
    """What the weather does to the fuel, for who has just told of it."""
    found = fuel_of(a.batch.setup, _hours_left(a))
    return say("{have}, to the slow end of the estimate. {wind}", have=_have(found, a), wind=fire.wind(a)).strip()


def have(a: Assessment) -> str:
    """What fuel to have for what is left of the cook."""
    return _have(fuel_of(a.batch.setup, _hours_left(a)), a)


def _air(wind_m_s: float) -> str:
    return say("windy") if wind_m_s > fire.BREEZY else say("a breeze") if wind_m_s > 0 else say("no wind")


def _hours_left(a: Assessment) -> Hours:
    if a.ready is not None:
        return max((a.ready.p90 - a.now) / timedelta(hours=1), 0.5)
    return a.cook.ready.p90 if a.cook else 12.0


def _have(found: Fuel, a: Assessment) -> str:
    load = _amount(found.load, found, a)
    match found.kind:
        case "propane":
            return say("Have {load} propane in the bottle", load=load)
        case "pellets":
            return say("Have {load} of dry wood pellets, in the hopper and beside it", load=load)
        case "electricity":
            return say("Count with {load}", load=load)
        case _ if _fed(a):
            return say("Have {load} charcoal at hand and feed it as it burns", load=load)
        case _:
            return say("Have {load} charcoal in it", load=load)


def _fed(a: Assessment) -> bool:
    """Whether no such cooker holds the fuel of a long cook at once: it is fed. Common practice, no source."""
    return a.batch.setup.cooker in FED


def to_fill(found: Fuel | None, a: Assessment) -> str:
    """With the call to light: what to fill in, and how much of it is reserve."""
    if found is None or meats.in_pot(a):
        return ""
    burns = _amount(found.burnt.p50 + found.warm_up, found, a)
    match found.kind:
        case "propane":
            return say(
                "Have {amount} propane in the bottle: it burns about {burns} if the air is still. ",
                amount=_amount(found.load, found, a),
                burns=burns,
            )
        case "pellets":
            return say(
                "Have {amount} of dry wood pellets: it burns about {burns} if the air is still, and the hopper is looked at "
                "every few hours. ",
                amount=_amount(found.load, found, a),
                burns=burns,
            )
        case "electricity":
            return say("It takes about {burns}. ", burns=burns)
        case _:
            wood = say(
                "{low} to {high} fist-size chunks of wood",
                low=f"{found.chunks.low:.0f}",
                high=f"{found.chunks.high:.0f}",
            )
            if _fed(a):
                return say(
                    "Have {amount} charcoal at hand and {wood}, and feed it as it burns: about {burns} if the air is still, "
                    "the rest is reserve. ",
                    amount=_amount(found.load, found, a),
                    wood=wood,
                    burns=burns,
                )
            return say(
                "Fill in {amount} charcoal and {wood}; it burns about {burns} if the air is still, "
                "the rest is reserve. ",
                amount=_amount(found.load, found, a),
                wood=wood,
                burns=burns,
            )


def _amount(amount: float, found: Fuel, a: Assessment) -> str:
    """«4.3 kg», «9.5 lb», «4.1 kWh»: fuel is not weighed to the gram."""
    if found.kind == "electricity":
        return f"{decimal(amount, 1)} kWh"
    return (
        numbers.mass(amount, a.person)
        if a.person.units.mass == "lb"
        else f"{decimal(amount, 1 if amount < 9.95 else 0)} kg"
    )


def another_chunk(a: Assessment) -> str:
    """Whether more wood still makes smoke, by how long it has been on."""
    if a.on_at is None:
        return say("Not before the meat is on: the chunks among the coals light in their turn.")
    on = a.now - a.on_at
    if on >= TAKEN_UP:
        return say(
            "No need: it has been on for {span}, and most of the smoke is taken up in the first 3 to 4 h.\n"
            "More turns it bitter; keep the fire clear.",
            span=numbers.span(on),
        )
    return say(
        "You may: it has been on for {span}, and smoke is taken up in the first 3 to 4 h.\n"
        "One dry chunk at a time, 3 to 5 in all, and wait for clear smoke.",
        span=numbers.span(on),
    )


def _wood(found: Fuel) -> str:
    if found.kind == "pellets":
        return say(
            "The pellets give the smoke: more of it on the lowest setting in the first hours, or by dry wood in a tube."
        )
    if found.kind != "charcoal":
        return say("Of wood 60 to 230 g in all, dry chips in a tray or a pouch of foil.")
    return say(
        "Of wood {low} to {high} fist-size chunks, buried from the middle outward and one near "
        "the top, so that each lights in its turn.",
        low=f"{found.chunks.low:.0f}",
        high=f"{found.chunks.high:.0f}",
    )
