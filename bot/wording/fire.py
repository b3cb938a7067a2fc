"""Words for the fire: fuel for the hours, how to light it, and what the pit readings say, one small step at a time."""

from datetime import timedelta

from bot.wording import meats, numbers
from bot.wording.language import Words, later, say
from core.batch.assess import Assessment
from core.batch.events import Probe
from core.heat import lighting
from core.heat.cooker import cooker
from core.heat.vents import FAR_LOW_K, OPENINGS
from core.plan.steps import State

HOT_C = 60.0  # 140 °F; sources.FSIS_DANGER_ZONE
LIGHTERS = Words(
    {
        "cubes": "one or two lighter cubes",
        "chimney": "a chimney",
        "torch": "a gas torch",
        "wand": "an electric lighter",
    }
)
HOW_TO_LIGHT = Words(  # common practice, no source
    {
        "ceramic": "Light one or two small spots on top, lid open 8 to 12 min, and close the vents on the way up: a hot ceramic cools slowly.",
        "steel": "Light a few coals, lay them on the unlit ones, and close the vents on the way up: the fire should creep down slowly.",
        "kettle": "Lay a ring or a bank of unlit coals at one side, light a few at its end, and put the meat where there is none below it.",
        "offset": "Burn a bed of coals in the firebox first, vents wide, then add one preheated split or a handful at a time, about every "
        "45 min; never let it smoulder.",
    }
)
POT = later("It simmers on the stove: no fire to feed. Keep the water just moving, and the meat under it.")
BREEZY = 4.0  # m/s


def advice(a: Assessment) -> str:
    """What the pit readings say; empty where the fire is as it should be."""
    if a.cook is None or (meats.in_pot(a) and a.cook.fire.state not in ("out", "dying")):
        return ""
    f = a.cook.fire
    off = abs(f.off_k) * (1.8 if a.person.units.temperature == "f" else 1.0)
    told = say("The pit is {off} {more}", off=f"{off:.0f}", more="°F" if a.person.units.temperature == "f" else "°C")
    till = _till(a)
    match f.state:
        case "high" | "far_high":
            said = say(
                "{told} high: {less}, lid shut, and leave it{till}.",
                told=told,
                less=_less(a, f.vent, f.share),
                till=till,
            )
        case "low":
            said = _low(a, told)
        case "dying":
            said = dying(a)
        case "out":
            said = say(
                "The fire looks out. Light it again now, or finish in an oven at 150 °C (300 °F). Tell me when it burns."
            )
        case "wait" | "coming" | "settling":
            said = _left_alone(a, told, till)
        case _:
            said = ""
    return " ".join(t for t in (said, _lid(a), wind(a) if said else "") if t)


def _left_alone(a: Assessment, told: str, till: str) -> str:
    """Nothing is moved: the pit comes back by itself, or what was moved needs its time."""
    state = a.cook.fire.state if a.cook else ""
    more = say("high") if a.cook and a.cook.fire.off_k > 0 else say("low")
    if state == "wait" and not vented(a):
        return say("The pit is still coming back from the lid or the cold meat: leave the dial{till}.", till=till)
    if state == "wait":
        return say("The pit is still coming back from the lid or the cold meat: leave the vents{till}.", till=till)
    if not vented(a):
        return say(
            "{told} {more} and on its way back by itself: leave the dial{till}.", told=told, more=more, till=till
        )
    if state == "coming":
        return say("{told} {more} and on its way back by itself: leave the vents.", told=told, more=more)
    return say("{told} {more}, and the vent you moved needs its time: leave it{till}.", told=told, more=more, till=till)


def unread(a: Assessment) -> str:
    """A core was read, and not the pit that was failing when it was read last: so it is asked for."""
    pit = a.batch.last(Probe.PIT)
    if pit is None:
        return ""
    return say(
        "And the pit? At {at} it was {celsius} and failing: see to the fire, read it and send it.",
        at=numbers.clock(pit.at, a.person),
        celsius=numbers.temperature(pit.celsius, a.person),
    )


def _low(a: Assessment, told: str) -> str:
    """More air, and how to say so where it is meant to run as low as it holds."""
    if a.cook is None:
        return ""
    f = a.cook.fire
    said = say("{told} low: {more} and leave it{till}.", told=told, more=_more(a, f.vent, f.share), till=_till(a))
    return f"{said} {_wanted_so(a)}".strip()


def _wanted_so(a: Assessment) -> str:
    """How to say that the pit is meant to run as low as it holds; "" where it is only a little low."""
    pit = a.batch.last(Probe.PIT)
    if pit is None or a.cook is None or a.cook.fire.off_k >= -FAR_LOW_K:
        return ""
    return say("If you want it so, type «run it at {pit}».", pit=numbers.temperature(pit.celsius, a.person))


def _till(a: Assessment) -> str:
    """«till 05:45», so that nobody has to count."""
    judge = a.cook.fire.judge_s if a.cook else None
    low, high = a.cook.fire.wait_minutes if a.cook else (0.0, 0.0)
    if judge is None or a.on_at is None:
        return ""
    if a.on_at + timedelta(seconds=judge) <= a.now:  # a reading that came late: that hour is past
        return ""
    at = numbers.clock(a.on_at + timedelta(seconds=judge), a.person)
    return (
        say(" till {at}", at=at)
        if a.cook and a.cook.fire.direction == 0
        else say(" till {at} ({minutes})", at=at, minutes=_minutes(low, high))
    )


def _minutes(low: float, high: float) -> str:
    return f"{high:.0f} min" if low == high else say("{low} to {high} min", low=f"{low:.0f}", high=f"{high:.0f}")


def _less(a: Assessment, vent: str, share: float) -> str:
    kind = cooker(a.batch.setup.cooker).fuel
    return (
        say("close the {vent} by {share} of the gap", vent=_vent(vent), share=_share(share))
        if kind == "charcoal"
        else say("turn it down a little")
    )


def _more(a: Assessment, vent: str, share: float) -> str:
    kind = cooker(a.batch.setup.cooker).fuel
    return (
        say("open the {vent} by {share} of the gap", vent=_vent(vent), share=_share(share))
        if kind == "charcoal"
        else say("turn it up a little")
    )


def vented(a: Assessment) -> bool:
    """Whether its heat goes by vents, and by no dial."""
    return cooker(a.batch.setup.cooker).fuel == "charcoal"


def dying(a: Assessment) -> str:
    """What to look at when the heat fails, and whether the core is hot enough for that to do no harm."""
    core = a.batch.last(Probe.CORE)
    if core is None or core.celsius < HOT_C:
        return _looked_at(a)
    hot = say(
        "The core read {core} {span} ago: no harm while it stays at {limit} or above.",
        core=numbers.temperature(core.celsius, a.person),
        span=numbers.span(a.now - core.at),
        limit=numbers.both(HOT_C, a.person),
    )
    return f"{_looked_at(a)}\n{hot}"


def _looked_at(a: Assessment) -> str:
    """What to look at, by what is burnt."""
    match cooker(a.batch.setup.cooker).fuel:
        case "propane":
            return say("The fire is dying: look at the flame and at what is left in the bottle.")
        case "pellets":
            return say(
                "The fire is dying: look at the hopper, whether the pellets slide down, and at ash in the fire pot.\n"
                "Out and cold, empty the pot before you light it anew: a full one flares up."
            )
        case "electricity":
            return say("The heat is failing: look at the plug, the fuse and the dial.")
        case _:
            return say(
                "The fire is dying: look for ash over the air holes, fuel and vents.\nClear the holes with a rod, open both "
                "vents for 10 min, then read the pit again."
            )


def _vent(vent: str) -> str:
    return say("vents") if vent == "both" else say("lower vent")


def _share(share: float) -> str:
    return {0.25: say("a quarter"), 0.5: say("half"), 0.75: say("three quarters")}.get(share, f"{share:.0%}")


def _lid(a: Assessment) -> str:
    if a.cook is None or not a.cook.fire.lid_often:
        return ""
    return say("The lid was open three times within the hour: each time costs 5 to 15 min, so leave it shut.")


def often(a: Assessment) -> str:
    """The same after a lid that was just told of, whatever was read since."""
    lids = [at for at, what in a.batch.incidents if what.what == "lid" and a.now - at <= timedelta(hours=1)]
    return (
        say(" It was open three times within the hour: each time costs 5 to 15 min.") if len(lids) >= OPENINGS else ""
    )


def wind(a: Assessment) -> str:
    """What the wind does to the vents; empty where it hardly blows."""
    if a.batch.setup.wind_m_s < BREEZY or cooker(a.batch.setup.cooker).fuel == "electricity":
        return ""
    if cooker(a.batch.setup.cooker).fuel == "propane":
        return say("In wind, stand it where the flame is sheltered, outdoors all the same, and look at the flame.")
    if cooker(a.batch.setup.cooker).fuel == "pellets":
        return say("In wind, stand it in the lee: it burns more pellets, so look at the hopper more often.")
    return say("In wind, turn the lower vent out of it: it works like opening one.")


def asked(a: Assessment) -> str:
    """How the fire does, for whoever asks or worries."""
    if a.on_at is None:
        return lighting_asked(a)
    if not a.cook or a.cook.fire.state == "unknown":
        return say(
            "Read the pit at the height of the meat and send it, like «pit 120»: two readings show which way it goes."
        )
    told = advice(a)
    pit = numbers.temperature(a.batch.setup.pit_c, a.person)
    steady = say(
        "Leave the vents: by your last reading the pit holds its {pit}. Send another in 15 min if it moves.", pit=pit
    )
    if not vented(a):
        steady = say("By your last reading the pit holds its {pit}. Send another in 15 min if it moves.", pit=pit)
    return told or steady


def lighting_asked(a: Assessment) -> str:
    """When to light, how long it takes by each way, and how."""
    if meats.in_pot(a):
        return say(POT)
    stove, own = cooker(a.batch.setup.cooker), a.batch.setup.lighter
    step = a.plan.step("light") if a.plan else None
    on = a.plan.step("meat_on") if a.plan else None
    if "light" in a.batch.done:
        return say(
            "It was lit {when}. {advice}",
            when=numbers.when(a.batch.done["light"], a.person, a.now),
            advice=_settles(a) if a.on_at is None else asked(a),
        )
    when = say("Light it as the plan says")
    if step is not None and on is not None and step.state in (State.DUE, State.AHEAD):
        due = say("now") if step.state is State.DUE else numbers.when(step.due, a.person, a.now)
        when = say(
            "Light it {due}, for meat on at {due2}; say «lit» once it burns",
            due=due,
            due2=numbers.clock(on.due, a.person),
        )
    if stove.fuel != "charcoal":
        return say(
            "{when}: it takes {minutes} to a steady pit.",
            when=when,
            minutes=_minutes(stove.stable_minutes.low, stove.stable_minutes.high),
        )
    ways = "; ".join(f"{words} {_range(lighting.minutes(stove, way))}" for way, words in LIGHTERS.items() if way != own)
    return say(
        "{when}.\nWith {lighters} it takes {range} to a steady pit.\n{how} "
        "Other ways: {ways}; say which you use, like «I light with a chimney».",
        when=when,
        how=HOW_TO_LIGHT.get(stove.name, HOW_TO_LIGHT["steel"]),
        lighters=LIGHTERS[own],
        range=_range(lighting.minutes(stove, own)),
        ways=ways,
    )


def _settles(a: Assessment) -> str:
    """How long a fire that was lit takes to a steady pit, before the meat is on it."""
    stove, on = cooker(a.batch.setup.cooker), a.plan.step("meat_on") if a.plan else None
    took = lighting.minutes(stove, a.batch.setup.lighter) if stove.fuel == "charcoal" else stove.stable_minutes
    steady = say("It takes {range} to a steady pit.", range=_minutes(took.low, took.high))
    return steady if on is None else f"{steady} " + say("Meat on {due}.", due=numbers.clock(on.due, a.person))


def _range(minutes: lighting.Range) -> str:
    return _minutes(minutes.low, minutes.high)
