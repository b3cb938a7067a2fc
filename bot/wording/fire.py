"""Words for the fire: fuel for the hours, how to light it, and what the pit readings say, one small step at a time."""

from datetime import timedelta

from bot.wording import meats, numbers
from core.batch.assess import Assessment
from core.batch.material import fuel_of
from core.heat import lighting
from core.heat.cooker import cooker
from core.heat.fire import Fuel
from core.heat.vents import OPENINGS
from core.plan.steps import State
from core.units import Hours

LIGHTERS = {
    "cubes": "one or two lighter cubes",
    "chimney": "a chimney",
    "torch": "a gas torch",
    "wand": "an electric lighter",
}
POT = "It simmers on the stove: no fire to feed. Keep the water just moving, and the meat under it."
BREEZY = 4.0  # m/s


def advice(a: Assessment) -> str:
    """What the pit readings say; empty where the fire is as it should be."""
    if a.cook is None or (meats.in_pot(a) and a.cook.fire.state not in ("out", "dying")):
        return ""
    f = a.cook.fire
    off = abs(f.off_k) * (1.8 if a.person.units.temperature == "f" else 1.0)
    told = f"The pit is {off:.0f} {'°F' if a.person.units.temperature == 'f' else '°C'}"
    till = _till(a)
    match f.state:
        case "high" | "far_high":
            said = f"{told} high: {_less(a, f.vent, f.share)}, lid shut, and leave it{till}."
        case "low":
            said = f"{told} low: {_more(a, f.vent, f.share)} and leave it{till}."
        case "dying":
            said = _dying(a)
        case "out":
            said = "The fire looks out. Light it again now, or finish in an oven at 150 °C (300 °F). Tell me when it burns."
        case "wait":
            said = f"The pit is still coming back from the lid or the cold meat: leave the vents{till}."
        case "coming":
            said = f"{told} {'high' if f.off_k > 0 else 'low'} and on its way back by itself: leave the vents."
        case "settling":
            said = f"{told} {'high' if f.off_k > 0 else 'low'}, and the vent you moved needs its time: leave it{till}."
        case _:
            said = ""
    return " ".join(t for t in (said, _lid(a), _wind(a) if said else "") if t)


def _till(a: Assessment) -> str:
    """«till 05:45», so that nobody has to count."""
    judge = a.cook.fire.judge_s if a.cook else None
    low, high = a.cook.fire.wait_minutes if a.cook else (0.0, 0.0)
    if judge is None or a.on_at is None:
        return ""
    at = numbers.clock(a.on_at + timedelta(seconds=judge), a.person)
    return f" till {at}" if a.cook and a.cook.fire.direction == 0 else f" till {at} ({_minutes(low, high)})"


def _minutes(low: float, high: float) -> str:
    return f"{high:.0f} min" if low == high else f"{low:.0f} to {high:.0f} min"


def _less(a: Assessment, vent: str, share: float) -> str:
    kind = cooker(a.batch.setup.cooker).fuel
    return f"close the {_vent(vent)} by {_share(share)} of the gap" if kind == "charcoal" else "turn it down a little"


def _more(a: Assessment, vent: str, share: float) -> str:
    kind = cooker(a.batch.setup.cooker).fuel
    return f"open the {_vent(vent)} by {_share(share)} of the gap" if kind == "charcoal" else "turn it up a little"


def _dying(a: Assessment) -> str:
    match cooker(a.batch.setup.cooker).fuel:
        case "propane":
            return "The fire is dying: look at the flame and at what is left in the bottle."
        case "electricity":
            return "The heat is failing: look at the plug, the fuse and the dial."
        case _:
            return (
                "The fire is dying: look for ash over the air holes, fuel and vents.\nClear the holes with a rod, open both "
                "vents for 10 min, then read the pit again."
            )


def _vent(vent: str) -> str:
    return "vents" if vent == "both" else "lower vent"


def _share(share: float) -> str:
    return {0.25: "a quarter", 0.5: "half", 0.75: "three quarters"}.get(share, f"{share:.0%}")


def _lid(a: Assessment) -> str:
    if a.cook is None or not a.cook.fire.lid_often:
        return ""
    return "The lid was open three times within the hour: each time costs 5 to 15 min, so leave it shut."


def often(a: Assessment) -> str:
    """The same after a lid that was just told of, whatever was read since."""
    lids = [at for at, what in a.batch.incidents if what.what == "lid" and a.now - at <= timedelta(hours=1)]
    return " It was open three times within the hour: each time costs 5 to 15 min." if len(lids) >= OPENINGS else ""


def _wind(a: Assessment) -> str:
    if a.batch.setup.wind_m_s < BREEZY or cooker(a.batch.setup.cooker).fuel == "electricity":
        return ""
    return "In wind, turn the lower vent out of it: it works like opening one."


def asked(a: Assessment) -> str:
    """How the fire does, for whoever asks or worries."""
    if a.on_at is None:
        return lighting_asked(a)
    if not a.cook or a.cook.fire.state == "unknown":
        return (
            "Read the pit at the height of the meat and send it, like «pit 120»: two readings show which way it goes."
        )
    told = advice(a)
    pit = numbers.temperature(a.batch.setup.pit_c, a.person)
    steady = f"Leave the vents: by your last reading the pit holds its {pit}. Send another in 15 min if it moves."
    return told or steady


def fuel_asked(a: Assessment) -> str:
    """How much fuel: for the whole cook, or from now to the slow end of the estimate."""
    if meats.in_pot(a):
        return POT
    hours = _hours_left(a)
    found = fuel_of(a.batch.setup, hours)
    setup = a.batch.setup
    low, high = _amount(found.burnt.p10 + found.warm_up, found, a), _amount(found.burnt.p90 + found.warm_up, found, a)
    reported = (
        f" Cooks report {_amount(found.practice.low, found, a)} to {_amount(found.practice.high, found, a)}, wind and lids included."
        if found.practice.high > 0
        else ""
    )
    air = f"{numbers.temperature(setup.outside_c, a.person)} outside, {_air(setup.wind_m_s)}"
    return (
        f"{_have(found, a)} for {numbers.hours(round(hours * 2) / 2)}, to the slow end of the estimate.\n"
        f"The heat balance burns {low} to {high} of it ({air}; say «it's windy» or «5 c outside»).{reported} "
        f"What is not burnt keeps.\n{_wood(found)}"
    )


def in_this_air(a: Assessment) -> str:
    """What the weather does to the fuel, for who has just told of it."""
    found = fuel_of(a.batch.setup, _hours_left(a))
    return f"{_have(found, a)}, to the slow end of the estimate. {_wind(a)}".strip()


def _air(wind_m_s: float) -> str:
    return "windy" if wind_m_s > BREEZY else "a breeze" if wind_m_s > 0 else "no wind"


def _hours_left(a: Assessment) -> Hours:
    if a.ready is not None:
        return max((a.ready.p90 - a.now) / timedelta(hours=1), 0.5)
    return a.cook.ready.p90 if a.cook else 12.0


def _have(found: Fuel, a: Assessment) -> str:
    load = _amount(found.load, found, a)
    match found.kind:
        case "propane":
            return f"Have {load} propane in the bottle"
        case "electricity":
            return f"Count with {load}"
        case _:
            return f"Have {load} charcoal in it"


def to_fill(found: Fuel | None, a: Assessment) -> str:
    """With the call to light: what to fill in, and how much of it is reserve."""
    if found is None or meats.in_pot(a):
        return ""
    burns = _amount(found.burnt.p50 + found.warm_up, found, a)
    match found.kind:
        case "propane":
            return f"Have {_amount(found.load, found, a)} propane in the bottle: it burns about {burns} if the air is still. "
        case "electricity":
            return f"It takes about {burns}. "
        case _:
            wood = f"{found.chunks.low:.0f} to {found.chunks.high:.0f} fist-size chunks of wood"
            return (
                f"Fill in {_amount(found.load, found, a)} charcoal and {wood}; it burns about {burns} if the air is still, "
                "the rest is reserve. "
            )


def _amount(amount: float, found: Fuel, a: Assessment) -> str:
    """«4.3 kg», «9.5 lb», «4.1 kWh»: fuel is not weighed to the gram."""
    if found.kind == "electricity":
        return f"{amount:.1f} kWh"
    return numbers.mass(amount, a.person) if a.person.units.mass == "lb" else f"{amount:.1f} kg"


def _wood(found: Fuel) -> str:
    if found.kind != "charcoal":
        return "Of wood 60 to 230 g in all, dry chips in a tray or a pouch of foil."
    return (
        f"Of wood {found.chunks.low:.0f} to {found.chunks.high:.0f} fist-size chunks, buried from the middle outward and one near "
        "the top, so that each lights in its turn."
    )


def lighting_asked(a: Assessment) -> str:
    """When to light, how long it takes by each way, and how."""
    if meats.in_pot(a):
        return POT
    stove, own = cooker(a.batch.setup.cooker), a.batch.setup.lighter
    step = a.plan.step("light") if a.plan else None
    on = a.plan.step("meat_on") if a.plan else None
    when = "Light it as the plan says"
    if step is not None and on is not None and step.state in (State.DUE, State.AHEAD):
        due = "now" if step.state is State.DUE else numbers.when(step.due, a.person, a.now)
        when = f"Light it {due}, for meat on at {numbers.clock(on.due, a.person)}"
    if stove.fuel != "charcoal":
        return f"{when}: it takes {_minutes(stove.stable_minutes.low, stove.stable_minutes.high)} to a steady pit."
    ways = "; ".join(f"{words} {_range(lighting.minutes(stove, way))}" for way, words in LIGHTERS.items() if way != own)
    return (
        f"{when}.\nWith {LIGHTERS[own]} it takes {_range(lighting.minutes(stove, own))} to a steady pit.\n"
        f"Light one or two small spots on top, lid open 8 to 12 min, and close the vents on the way up: a hot ceramic cools slowly. "
        f"Other ways: {ways}; say which you use, like «I light with a chimney»."
    )


def _range(minutes: lighting.Range) -> str:
    return _minutes(minutes.low, minutes.high)
