"""What is asked of a cook under way, in words: how fast it climbs, when it reaches a core, what another pit would make of it."""

from datetime import datetime, timedelta
from itertools import pairwise

from bot.wording import doneness, fire, meats, numbers, plans, smoked_fish, wraps
from bot.wording.language import decimal, say, say_n
from core.batch.assess import Assessment
from core.batch.events import Probe
from core.heat.curve import Curve
from core.plan.steps import TimeBand
from core.safety.history import printed_f
from core.units import Celsius, Hours

HOUR = timedelta(hours=1)
SLOW = 0.5  # of the pace that was expected: then the fire or the probe is asked about. Judgement
FALLEN_K: Celsius = 15.0  # of an example
OVER_K = 3.0  # above what was planned, so that it is another thing. Judgement
CRUMBLES_C = 98.0  # a core at which pulled and sliced alike fall apart. Common practice
HOT_PIT_C: Celsius = 135.0  # 275 °F, the top of the usual range. Common practice
NO_HURRY = timedelta(hours=12)  # between the last of the fire and the meal: a rest and a night to chill lie in it
LEAST_APART = timedelta(minutes=10)


def not_on(a: Assessment) -> str:
    """Nothing burns: what stands instead."""
    return say("It is not on the fire now. {next}", next=plans.coming(a) or plans.now(a)).strip()


def rate(a: Assessment, told: float | None = None) -> str:
    """How fast the core moves by its last two readings, and whether that is what is expected; `told` in K an hour."""
    if told is not None and a.ready is not None:
        return "\n".join(line for line in (_means(told, (a.now - HOUR, a.now), a), _pit(a)) if line)
    seen = a.batch.of_probe(Probe.CORE)
    if len(seen) < 2 or seen[-1].at - seen[-2].at < LEAST_APART:
        return say(
            "Two core readings, at least ten minutes apart, say how fast it moves. {next}", next=plans.coming(a)
        ).strip()
    before, last = seen[-2:]
    pace = (last.celsius - before.celsius) / ((last.at - before.at) / HOUR)
    lead = say(
        "{pace} an hour: from {first} at {at} to {second} at {at2}.",
        pace=_difference(pace, a),
        first=numbers.temperature(before.celsius, a.person),
        at=numbers.clock(before.at, a.person),
        second=numbers.temperature(last.celsius, a.person),
        at2=numbers.clock(last.at, a.person),
    )
    return "\n".join(line for line in (lead, _means(pace, (before.at, last.at), a), _pit(a)) if line)


def _means(pace: float, between: tuple[datetime, datetime], a: Assessment) -> str:
    """Whether a pace is usual: in the stall, where it is slower than expected, and otherwise."""
    if a.ready is None or a.cook is None or a.on_at is None:
        return ""
    ready = say("Ready {band}.", band=numbers.time_band(a.ready, a.person, a.now))
    if a.cook.stall.phase == "in":
        return say("That is the stall, and normal: the surface sweats the heat away. {ready}", ready=ready)
    hours = [(moment - a.on_at) / HOUR for moment in between]
    from_, to = (_middle(a.cook.curve, one) for one in hours)
    usual = (to - from_) / max(hours[1] - hours[0], 0.01)
    if pace < SLOW * usual:
        return say(
            "I expected about {usual} an hour: look at the fire, and whether the probe sits in the thick middle. {ready}",
            usual=_difference(usual, a),
            ready=ready,
        )
    return say("As expected. {ready}", ready=ready)


def _middle(line: Curve, hours: Hours) -> Celsius:
    """The likeliest core at an hour, straight between the points of the curve. [°C]"""
    points = list(zip(line.hours, line.p50, strict=True))
    for (h1, c1), (h2, c2) in pairwise(points):
        if h1 <= hours <= h2:
            return c1 + (c2 - c1) * (hours - h1) / max(h2 - h1, 1e-6)
    return points[-1][1]


def _pit(a: Assessment) -> str:
    last = a.batch.last(Probe.PIT)
    if last is None or a.batch.off_at is not None:
        return ""
    return say(
        "The pit last read {celsius}, set for {wanted}.",
        celsius=numbers.temperature(last.celsius, a.person),
        wanted=numbers.temperature(a.batch.setup.pit_c, a.person),
    )


def _difference(kelvin: float, a: Assessment) -> str:
    fahrenheit = a.person.units.temperature == "f"
    return f"{decimal(kelvin * (1.8 if fahrenheit else 1.0), 1)} °{'F' if fahrenheit else 'C'}"


def reaches(a: Assessment, core: Celsius) -> str:
    """When the core will be there."""
    shown = numbers.temperature(core, a.person)
    last = a.batch.last(Probe.CORE)
    if a.cook is None or a.on_at is None or a.batch.off_at is not None:
        return not_on(a)
    if last is not None and last.celsius >= core:
        at = numbers.when(last.at, a.person, a.now)
        return say("It is there: {celsius} at {at}.", celsius=numbers.temperature(last.celsius, a.person), at=at)
    hours = [_first(a.cook.curve.hours, line, core) for line in (a.cook.curve.p90, a.cook.curve.p50, a.cook.curve.p10)]
    if any(one is None for one in hours):
        return say(
            "I cannot see {core} yet: at this pit it may not come. It is meant to come off at {target}.",
            core=shown,
            target=numbers.temperature(a.batch.setup.target_c, a.person),
        )
    times = [max(a.on_at + timedelta(hours=one or 0.0), a.now) for one in hours]
    band = numbers.time_band(TimeBand(*times), a.person, a.now)
    return f"{say('{core} {band}.', core=shown, band=band)}\n{wraps.stall(a)}".strip()


def _first(hours: tuple[Hours, ...], line: tuple[float, ...], core: Celsius) -> Hours | None:
    return next((hour for hour, celsius in zip(hours, line, strict=True) if celsius >= core), None)


def hotter(a: Assessment, pit: Celsius, ready: TimeBand | None) -> str:
    """What another pit from now on makes of the hour; nothing is changed."""
    shown = numbers.temperature(pit, a.person)
    if ready is None or a.ready is None:
        return not_on(a)
    change = say("Nothing is changed yet: once you have set it, type «pit {pit}».", pit=_typed(pit, a))
    return "\n".join(
        (
            say(
                "With the pit at {pit} from now on: ready {then}, instead of {now}.",
                pit=shown,
                then=numbers.time_band(ready, a.person, a.now),
                now=numbers.time_band(a.ready, a.person, a.now),
            ),
            *filter(None, (_moved(ready.p50 - a.ready.p50), _worth(a, pit))),
            change,
        )
    )


def _worth(a: Assessment, pit: Celsius) -> str:
    """What a hotter pit costs, and whether the meal wants it at all."""
    if pit <= a.batch.setup.pit_c or a.plan is None or a.ready is None:
        return ""
    lines = []
    if pit > HOT_PIT_C and not wraps.wrapped(a):
        lines.append(
            say(
                "So hot it dries the outside: up to {most} bare, hotter only in foil or paper.",
                most=numbers.both(HOT_PIT_C, a.person),
            )
        )
    if not a.plan.late and a.plan.serve - a.ready.p90 > NO_HURRY:
        lines.append(say("The meal is {serve}: it needs no hurry.", serve=numbers.when(a.plan.serve, a.person, a.now)))
    return " ".join(lines)


def _moved(by: timedelta) -> str:
    quarters = round(abs(by / HOUR) * 4) / 4
    if quarters == 0:
        return say("That moves it by less than a quarter of an hour.")
    if by < timedelta(0):
        return say("About {hours} sooner. The core that it has to reach stays.", hours=numbers.hours(quarters))
    return say("About {hours} later. The core that it has to reach stays.", hours=numbers.hours(quarters))


def _typed(pit: Celsius, a: Assessment) -> str:
    return f"{pit * 1.8 + 32:.0f} f" if a.person.units.temperature == "f" else f"{pit:.0f} c"


def by_hour(a: Assessment, wanted: datetime) -> str:
    """How likely it is ready on the fire by an hour."""
    if a.ready is None:
        return not_on(a)
    fields = {
        "at": numbers.when(wanted, a.person, a.now),
        "band": numbers.time_band(a.ready, a.person, a.now),
    }
    if wanted >= a.ready.p90:
        said = say("By {at} most likely, nine times in ten: ready {band}.", **fields)
    elif wanted >= a.ready.p50:
        said = say("By {at} rather yes than no: ready {band}.", **fields)
    elif wanted >= a.ready.p10:
        said = say("By {at} rather no than yes: ready {band}.", **fields)
    else:
        said = say("Not by {at}, fewer than one time in ten: ready {band}.", **fields)
    gain = wraps.fastest(a) if wanted < a.ready.p90 and not wraps.wrapped(a) else ""
    return f"{said}\n{gain}".strip()


def at_core(a: Assessment, core: Celsius) -> str:
    """What to do when the core is at a mark."""
    if core >= a.batch.setup.target_c - 1.0 or a.batch.off_at is not None:
        return doneness.pull_asked(a)
    if core >= wraps.COLOUR_SET_C - 2.0 and not meats.in_pot(a):
        lead = say(
            "At {core} the crust is set: wrap it then, or leave it bare until about {target}.",
            core=numbers.temperature(core, a.person),
            target=numbers.temperature(a.batch.setup.target_c, a.person),
        )
        return f"{lead}\n{wraps.asked(a)}" if core >= wraps.COLOUR_SET_C else wraps.asked(a)
    return say(
        "At {core} nothing but to read it: lid shut, fire steady. It comes off at about {target}.\n{next}",
        core=numbers.temperature(core, a.person),
        target=numbers.temperature(a.batch.setup.target_c, a.person),
        next=plans.coming(a),
    ).strip()


def sure(a: Assessment) -> str:
    """How sure the hour, or the day, is, and what makes it surer."""
    if a.ready is not None:
        return say(
            "Eight such cooks in ten come between the ends of {band}; one in ten is sooner, one later.\n{rests}",
            band=numbers.time_band(a.ready, a.person, a.now),
            rests=_rests_on(a),
        )
    if a.cure is not None and a.plan is not None and a.batch.off_at is None:
        return say(
            "The days: half of such middles are pink after {half}, nine in ten after {most}; planned are {days}.\n"
            "The hour of the meal is a wish that the plan is laid for; the fire narrows it, once core readings come.",
            half=numbers.days(a.cure.days_p50),
            most=numbers.days(a.cure.days_p90),
            days=numbers.lying(a.plan.cure_days),
        )
    return say("The readings are as good as the probe: a degree or two. {next}", next=plans.coming(a)).strip()


def _rests_on(a: Assessment) -> str:
    cores = sum(r.at >= a.on_at for r in a.batch.of_probe(Probe.CORE)) if a.on_at else 0
    said = say_n("It rests on {n} core reading", "It rests on {n} core readings", cores, n=cores)
    return say(
        "{said}; the next one, in the middle of the stall or after it, narrows it most. {next}",
        said=said,
        next=plans.coming(a),
    ).strip()


def pull_at(a: Assessment, core: Celsius) -> str:
    """What it is if it comes off at a core: raw, cooked and firm, or as planned."""
    shown, target = numbers.temperature(core, a.person), a.batch.setup.target_c
    cooked = smoked_fish.cooked_c(a)
    if printed_f(core) < printed_f(cooked):
        return say(
            "Not at {core}: under {floor} it counts as raw. Leave it on, or finish it in an oven.",
            core=shown,
            floor=numbers.at_least(cooked, a.person),
        )
    if smoked_fish.at_floor(a) and printed_f(core) >= printed_f(a.floor_c):
        return smoked_fish.reached(a)
    if core > target + OVER_K:
        return say(
            "You may: it is past the {target} that was planned, and softer with each degree; past some {most} it crumbles.\n"
            "Probe it on the way, and say «off» when you take it.",
            target=numbers.temperature(target, a.person),
            most=numbers.both(CRUMBLES_C, a.person),
        )
    if core >= target - doneness.UNDER_K:
        shown_target = numbers.temperature(target, a.person)
        said = say(
            "{core} is near the {target} that was planned, so it may come off: say «off» when you take it.",
            core=shown,
            target=shown_target,
        )
        return f"{said}\n{meats.done_at(a)}"
    firm = say("firm, and to be sliced thin") if target >= meats.TENDER_FROM_C else say("less done than was meant")
    return say(
        "Not yet, for what was meant: at {core} it is cooked by the floor of {floor}, but {firm}.\n"
        "{target} was meant. {ready} Off early it has to be eaten hot, or chilled by the clock of the cooling.",
        core=shown,
        floor=numbers.at_least(cooked, a.person),
        firm=firm,
        target=numbers.temperature(target, a.person),
        ready=say("Ready {band}.", band=numbers.time_band(a.ready, a.person, a.now)) if a.ready else "",
    )


def pit_falls(a: Assessment) -> str:
    """A pit that is told to fall, whatever it last read."""
    if a.ready is None or meats.in_pot(a):
        return not_on(a)
    ask = say(
        "Send what it reads, like «pit {pit}», and I say how far to go.", pit=_typed(a.batch.setup.pit_c - FALLEN_K, a)
    )
    return f"{fire.dying(a)}\n{ask}"
