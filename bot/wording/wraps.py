"""Words for the stall and the wrap: when it comes and how long, what a wrap saves and costs, and until when it helps."""

from datetime import datetime, timedelta
from math import ceil, floor

from bot.intents.intents import Change
from bot.wording import asking, fire, meats, numbers
from bot.wording.language import Words, decimal, say
from core.batch.assess import Assessment
from core.batch.events import Probe
from core.batch.in_time import LIKELY_BARE, latest_wrap, off_by
from core.heat.ready import WrapGain
from core.heat.stall import Stall
from core.heat.wrap_by import WrapBy
from core.units import Celsius, Hours

COLOUR_SET_C: Celsius = 66.0  # 150 °F: under it a wrap takes the crust for little. Common practice
FORETOLD = 0.5  # so many of such cooks stall before it is worth a word. Judgement
SOON = timedelta(hours=2.5)
NEAR_C: Celsius = 55.0  # from here on the wrap is worth a thought
TELL_H: Hours = 4.0
CLIMBS_K_H = 4.0  # 7 °F an hour and more is no stall
NEARLY_K = 4.0  # short of the target: so little is left that a wrap is not worth the lid
COARSE_H: Hours = 3.0  # from here on the ends of a band are told to the hour
WRAPS = Words({"none": "Bare", "paper": "Paper", "foil": "Foil"})
CRUSTS = Words({"best": "the crust stays as it is", "good": "the crust stays good", "soft": "the crust turns soft"})


def stall(a: Assessment) -> str:
    """The stall told before it comes, and while it lasts."""
    if a.cook is None or a.on_at is None or meats.never_wrapped(a):  # of those nobody speaks so
        return ""
    s = a.cook.stall
    ahead = s.phase == "ahead" and s.likely >= FORETOLD and not _nearly(a)
    if ahead and s.begins is not None and s.lasts is not None:
        begins = a.on_at + timedelta(hours=s.begins.p50)
        return _comes(s, begins, a) if begins - a.now <= SOON else ""
    if s.phase == "in" and s.lasts is not None and not _climbs(a) and not _nearly(a):
        if not fire.vented(a):
            return say("This is the stall: the surface sweats the heat away. It ends; do not chase it with the dial.")
        return say("This is the stall: the surface sweats the heat away. It ends; do not chase it with the vents.")
    return ""


def _climbs(a: Assessment) -> bool:
    """Whether two cores within the hour rose too fast for a stall, whatever the estimate holds likely."""
    read = [r for r in a.batch.of_probe(Probe.CORE) if a.on_at is not None and r.at >= a.on_at][-2:]
    hours = (read[-1].at - read[0].at) / timedelta(hours=1) if read else 0.0
    return 0.0 < hours <= 1.0 and read[-1].celsius - read[0].celsius > CLIMBS_K_H * hours


def _nearly(a: Assessment) -> bool:
    """Whether the core has come to the target, or so near that nothing is worth changing."""
    core = a.batch.last(Probe.CORE)
    return core is not None and core.celsius >= a.batch.setup.target_c - NEARLY_K


def _comes(s: Stall, begins: datetime, a: Assessment) -> str:
    lasts = say("{p10} to {p90} h", p10=_low(s.lasts.p10), p90=_high(s.lasts.p90)) if s.lasts else say("a while")
    at = numbers.clock(numbers.quarter(begins, up=False), a.person)
    return say(
        "The stall comes about {at}: the core hardly climbs for {lasts} while the surface sweats. It ends by itself.",
        at=at,
        lasts=lasts,
    )


def in_which(a: Assessment) -> tuple[str, asking.Rows]:
    """A wrap of which nobody said what it is of: reckoned as foil, the other one tap away."""
    text = say("In foil or in paper? I reckon with foil; paper takes longer and keeps the crust.")
    names = ((say("Foil"), "foil"), (say("Paper"), "paper"))
    return text, (tuple(asking.button(name, Change({"wrap": kind}, a.batch.id)) for name, kind in names),)


def stall_asked(a: Assessment) -> str:
    """When the stall comes, at what core, how long it lasts, or how long it still will; and what ends it."""
    if a.cook is None or a.batch.off_at is not None:
        return say("The stall is behind you: it is off the fire.")
    s = a.cook.stall
    if s.begins is None or s.lasts is None or s.core is None:
        return say("I expect no stall to speak of: this piece is thin, or its surface is shut.")
    core = say("{p10} to {p90}", p10=numbers.whole(s.core.p10, a.person), p90=numbers.whole(s.core.p90, a.person))
    if a.on_at is None:
        return say(
            "It stalls {p10} to {p90} h after meat on, at a core of {core}, for {p102} to {p902} h.\n"
            "The surface sweats, and that takes the heat. It ends by itself, or under foil. {chance}",
            p10=_low(s.begins.p10),
            p90=_high(s.begins.p90),
            core=core,
            p102=_low(s.lasts.p10),
            p902=_high(s.lasts.p90),
            chance=_chance(s),
        )
    begins = a.on_at + timedelta(hours=s.begins.p50)
    match s.phase:
        case "ahead":
            return say(
                "{comes}\nIt comes at a core of {core}. {chance}\n{gain}",
                comes=_comes(s, begins, a),
                core=core,
                chance=_chance(s),
                gain=gain(a),
            ).strip()
        case "in":
            return f"{_goes_on(s, a)}\n{gain(a)}".strip()
        case _:
            return say("The stall is over. {ready}", ready=_ready(a))


def _goes_on(s: Stall, a: Assessment) -> str:
    """How much longer, from when it began and how long such stalls last."""
    if a.on_at is None or s.begins is None or s.lasts is None:
        return ""
    since = (a.now - a.on_at) / timedelta(hours=1) - s.begins.p50
    low, high = (max(hours - since, 0.0) for hours in (s.lasts.p10, s.lasts.p90))
    return say(
        "This is the stall. It goes on for {low} to {high} h more; do not chase it with the vents.",
        low=_low(low),
        high=_high(high),
    )


def _chance(s: Stall) -> str:
    return say("Of such cooks {likely} stall.", likely=numbers.chance(s.likely))


def _ready(a: Assessment) -> str:
    return say("Ready {when}.", when=numbers.time_band(a.ready, a.person, a.now)) if a.ready else ""


def gain(a: Assessment) -> str:
    """What wrapping now would save, where it would save something worth it."""
    if (
        a.cook is None
        or a.batch.setup.wrap != "none"
        or meats.never_wrapped(a)
        or a.cook.stall.phase not in ("ahead", "in")
    ):
        return ""
    foil = next((w for w in a.cook.wraps if w.kind == "foil"), None)
    if foil is None or a.batch.last(Probe.CORE) is None or _nearly(a) or foil.saves.p50 < 0.5:
        return ""
    return say(
        "Foil now would save {p10} to {p90} h and {kept} of weight, and cost the crust its bite; «wrapped in foil» tells me.",
        p10=_low(foil.saves.p10),
        p90=_high(foil.saves.p90),
        kept=_kept(foil, a),
    )


def first_gain(a: Assessment, before: Assessment | None) -> str:
    """What a wrap would save, told once the core nears the stall, and not again with every reading."""
    return "" if not _its_time(a) or (before is not None and _its_time(before)) else gain(a)


def _its_time(a: Assessment) -> bool:
    core = a.batch.last(Probe.CORE)
    return core is not None and core.celsius >= NEAR_C


def asked(a: Assessment) -> str:
    """Whether to wrap now: what each wrap saves and costs, and the latest hour for the meal."""
    if meats.in_pot(a):
        return say("No wrap under water: it does not stall there.")
    if a.on_at is None or a.cook is None:
        return say(
            "Not before it is on: wrap once the colour of the crust pleases you, at a core of about "
            "{colour_set} to {temperature}.\nI say what it saves once I have core readings.",
            colour_set=numbers.temperature(COLOUR_SET_C, a.person),
            temperature=numbers.temperature(74.0, a.person),
        )
    if a.batch.off_at is not None:
        return say("It is off the fire: wrap it for the rest.")
    if wrapped(a) or (a.batch.setup.wrap != "none" and a.cook.stall.phase == "over"):
        return say("It is wrapped. {ready}", ready=_ready(a))
    lines = [deadline(a) or _now_or_not(a), *(_way(w, a) for w in a.cook.wraps), _ready(a), _colour(a)]
    return "\n".join(line for line in lines if line)


def wrapped(a: Assessment) -> bool:
    """Whether it lies in a wrap now."""
    return "wrap" in a.batch.done and not any(what.what == "unwrapped" for _, what in a.batch.incidents)


def fastest(a: Assessment) -> str:
    """What the wrap that saves most would bring now; nothing where none is any use."""
    bare = a.cook is None or meats.in_pot(a) or not a.cook.wraps
    return "" if bare or a.cook is None else _way(a.cook.wraps[-1], a)


def _now_or_not(a: Assessment) -> str:
    return say("No need to wrap: time is not short. Bare gives the best crust, foil the surest hour.")


def _way(w: WrapGain, a: Assessment) -> str:
    name = WRAPS[w.kind]
    return say(
        "{name} now saves {p10} to {p90} h and about {kept} of weight; {crusts}.",
        name=name,
        p10=_low(w.saves.p10),
        p90=_high(w.saves.p90),
        kept=_kept(w, a),
        crusts=CRUSTS[w.crust],
    )


def _kept(w: WrapGain, a: Assessment) -> str:
    """The weight that a wrap keeps, of all pieces."""
    return numbers.mass(max(w.weight_kept, 0.0) * a.batch.setup.mass, a.person)


def _low(hours: Hours) -> str:
    """The short end of a band, to the half hour and from 3 h on to the hour, downwards."""
    step = 0.5 if hours < COARSE_H else 1.0
    return decimal(floor(max(hours, 0.0) / step) * step, 1).removesuffix(".0").removesuffix(",0")


def _high(hours: Hours) -> str:
    """The long end of it, upwards."""
    step = 0.5 if hours < COARSE_H else 1.0
    return decimal(ceil(max(hours, 0.0) / step) * step, 1).removesuffix(".0").removesuffix(",0")


def _colour(a: Assessment) -> str:
    core = a.batch.last(Probe.CORE)
    if core is None or core.celsius >= COLOUR_SET_C:
        return ""
    return say(
        "At {celsius} the crust has not set: wait for {colour_set} if the hour allows.",
        celsius=numbers.temperature(core.celsius, a.person),
        colour_set=numbers.temperature(COLOUR_SET_C, a.person),
    )


def deadline(a: Assessment, *, soon: bool = False) -> str:
    """«To eat at 18:00: wrap by 14:10», or that not even a wrap brings it there; empty where it is in time bare.

    With `soon` it is not told hours ahead, when every reading still moves it.
    """
    found, needed = latest_wrap(a), off_by(a)
    if found is None or needed is None or a.batch.setup.deadline is None or a.on_at is None or meats.never_wrapped(a):
        return ""
    meal = numbers.when(a.batch.setup.deadline, a.person, a.now)
    if found.bare >= LIKELY_BARE:
        return ""
    if found.sure is not None:
        if soon and found.sure - (a.now - a.on_at) / timedelta(hours=1) > TELL_H:
            return ""
        return say(
            "To eat {at}: wrap in foil by {clock}, then nine in ten such cooks are in time.{bare}",
            at=_at(meal),
            clock=_clock(a, found.sure),
            bare=_bare(found),
        )
    if needed <= a.now:
        return ""
    if found.now > 0.1:
        return say(
            "To eat {at}: wrap in foil now; {now} of such cooks are in time then, {bare} bare.",
            at=_at(meal),
            now=numbers.chance(found.now),
            bare=numbers.chance(found.bare),
        )
    return say(
        "Not even foil now brings it in time for {meal}: it should be off by {needed}. "
        "Move the meal, like «dinner at 20:00»; do not take it off under its target.",
        meal=meal,
        needed=numbers.when(needed, a.person, a.now),
    )


def _at(meal: str) -> str:
    return say("at {meal}", meal=meal) if meal[:1].isdigit() else meal


def _clock(a: Assessment, hours: Hours) -> str:
    at = (a.on_at or a.now) + timedelta(hours=hours)
    return numbers.clock(numbers.quarter(at, up=False) if at - a.now > timedelta(minutes=15) else at, a.person)


def _bare(found: WrapBy) -> str:
    return say(" Bare {bare} are.", bare=numbers.chance(found.bare))
