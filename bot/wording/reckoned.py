"""Reckoned from the record: how many it feeds, how the cooker runs, what to have at hand, how things stand, the last time."""

from datetime import timedelta
from statistics import fmean

from bot.wording import (
    doneness,
    doses,
    fire,
    fuel,
    habits,
    meats,
    numbers,
    plans,
    recalled,
    standing,
    steps,
    sums,
    sums_plate,
    tasks,
)
from bot.wording.language import say, say_n
from core.answers import amounts
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.batch.events import Probe, Sliced
from core.plan.steps import Kind, State
from core.units import Kilograms

AHEAD = 3  # steps whose things are named
IN_HAND = frozenset({Kind.FLIP, Kind.READING, Kind.REST, Kind.SERVE, Kind.DEBRIEF, Kind.USE_BY})


def feed(a: Assessment, people: int | None = None) -> str:
    """How many portions the piece gives, and whether that is enough for so many."""
    after = a.batch.weighed_after
    mass = a.batch.setup.mass
    if after is not None:
        count = amounts.Span(*(after * (1.0 - amounts.SLICED_AWAY) / portion for portion in reversed(amounts.PORTION)))
        left = amounts.Span(after, after, after)
    else:
        count, left = amounts.portions(mass, _left(a)), _cooked(a)
    said = sums.portions(mass, count, left, a.person)
    return (
        said
        if people is None
        else f"{_for_so_many(left.usual * (1.0 - amounts.SLICED_AWAY) / people, people, a)}\n{said}"
    )


def slices(a: Assessment) -> str:
    """How many usual slices the cooked piece gives."""
    left = a.batch.weighed_after or _cooked(a).usual
    return sums_plate.of_a_size(left, amounts.SLICE, left * (1.0 - amounts.SLICED_AWAY) / amounts.SLICE, a.person)


def _cooked(a: Assessment) -> amounts.Span:
    """What is expected to be left of the piece. [kg]"""
    return amounts.cooked(a.batch.setup.mass, _left(a))


def _left(a: Assessment) -> amounts.Left:
    return amounts.left_of(a.batch.setup.product, a.batch.setup.target_c >= meats.TENDER_FROM_C)


def feed_more(a: Assessment) -> str:
    """How many portions the piece gives, where so many more eat beside those who nobody counted."""
    return say("{portions}\nTell me how many eat in all, and I compare.", portions=feed(a))


def _for_so_many(each: Kilograms, people: int, a: Assessment) -> str:
    """What each of so many gets, against a usual portion."""
    little, usual, _ = amounts.PORTION
    grams = numbers.grams(each)
    if each >= usual:
        return say("Enough for {people}: about {grams} each.", people=people, grams=grams)
    if each >= little:
        return say("Just enough for {people}, with much beside it: about {grams} each.", people=people, grams=grams)
    return say(
        "Not enough for {people}: about {grams} each, where {usual} are usual.",
        people=people,
        grams=grams,
        usual=numbers.grams(usual),
    )


def cooker_runs(a: Assessment) -> str:
    """What past cooks taught of the cooker, and what the pit readings of this one say."""
    if meats.in_pot(a):
        return say(fire.POT)
    taught, today = habits.by_cooks(a), _today(a)
    if taught or today:
        return "\n".join(line for line in (taught, today) if line)
    return say(
        "I know nothing of your cooker yet: {cooker}, reckoned as such cookers run.\n"
        "Send core and pit while it cooks; each cook teaches me how far the meat is from what the pit probe says.",
        cooker=habits.NAMED.get(a.batch.setup.cooker, a.batch.setup.cooker),
    )


def _today(a: Assessment) -> str:
    seen = a.batch.of_probe(Probe.PIT)
    if not seen:
        return ""
    mean, wanted = fmean(r.celsius for r in seen), a.batch.setup.pit_c
    low, high = (numbers.temperature(edge(r.celsius for r in seen), a.person) for edge in (min, max))
    return say_n(
        "This time {n} pit reading: {mean}, set for {wanted}. {advice}",
        "This time {n} pit readings: {mean} on average ({low} to {high}), set for {wanted}. {advice}",
        len(seen),
        n=len(seen),
        mean=numbers.whole(mean, a.person),
        low=low,
        high=high,
        wanted=numbers.temperature(wanted, a.person),
        advice=fire.advice(a) if a.on_at and a.batch.off_at is None else "",
    ).strip()


def need(a: Assessment) -> str:
    """What to have at hand for what comes next."""
    phase = a.batch.phase
    if phase is Phase.WAITING:
        return "\n".join(
            (
                say("A scale that shows 0.1 g, a bag that holds it all, a tray, a thermometer for the fridge."),
                doses.dose(a) or say("And tell me the nitrite in percent on the packet."),
            )
        )
    if phase in (Phase.CURING, Phase.DRYING) and not meats.in_pot(a):
        return say(
            "For the fire: {fuel}, wood, lighters, a probe for the core and one at the grate.\n"
            "For after it: foil, ice or a cold rack, a second thermometer, a sharp knife. {next}",
            fuel=_lower(fuel.have(a)),
            next=plans.coming(a),
        )
    waiting = (
        [s for s in a.plan.steps if s.state in (State.DUE, State.AHEAD) and s.kind not in IN_HAND] if a.plan else []
    )
    todo = [
        say("{step}, {when}.", step=steps.name(s, a), when=numbers.when(s.due, a.person, a.now))
        for s in waiting[:AHEAD]
    ]
    return "\n".join([*todo, *(tasks.task(s, a).split("\n", 1)[0] for s in waiting[:AHEAD])]) or plans.now(a)


def _lower(text: str) -> str:
    return text[:1].lower() + text[1:]


def where(a: Assessment) -> str:
    """Where a batch stands, in one line: the day and the end of its cure, or what was read last and when it is ready."""
    if a.batch.phase in (Phase.CURING, Phase.DRYING):
        return standing.day(a).replace("\n", " ")
    ready = say("Ready {when}.", when=numbers.time_band(a.ready, a.person, a.now)) if a.ready else ""
    return f"{_last_read(a)} {ready}".strip() if a.on_at else ""


def _last_read(a: Assessment) -> str:
    last = [r for probe in (Probe.CORE, Probe.PIT, Probe.FRIDGE) if (r := a.batch.last(probe)) is not None]
    read = ", ".join(recalled.one(r, a) for r in sorted(last, key=lambda r: r.at)[-2:])
    return say("Last read: {read}.", read=read) if read else ""


def catch_up(a: Assessment) -> str:
    """What it is, where it stands, what was read last, when it is ready, and what comes."""
    serve = say("The meal is {serve}.", serve=numbers.when(a.plan.serve, a.person, a.now)) if a.plan else ""
    lines = [
        f"{meats.what(a)}.",
        standing.day(a),
        _last_read(a),
        say("Ready {when}.", when=numbers.time_band(a.ready, a.person, a.now)) if a.ready else "",
        plans.now(a).split("\n", 1)[0],
        serve,
    ]
    return "\n".join(dict.fromkeys(line for line in lines if line))


def off(a: Assessment) -> str:
    """At what core it comes off, and how far it is from there by the last reading."""
    core = a.batch.last(Probe.CORE)
    lead = doneness.pull_asked(a)
    if core is None or a.on_at is None or a.batch.off_at is not None:
        return lead
    ready = say("ready {when}", when=numbers.time_band(a.ready, a.person, a.now)) if a.ready else ""
    return say(
        "{lead}\nLast core {celsius} at {at}: {ready}.",
        lead=lead,
        celsius=numbers.temperature(core.celsius, a.person),
        at=numbers.clock(core.at, a.person),
        ready=ready,
    )


def last_time(a: Assessment) -> str:
    """An earlier batch: what went in, how long, and what it came to."""
    into, out, on, off_at = (*(a.batch.done.get(k) for k in ("into_cure", "out", "meat_on")), a.batch.off_at)
    parts = [
        say("{what}, begun {when}.", what=meats.what(a), when=numbers.day(a.batch.started, a.person)),
        doses.dose_in(a),
        say("In the cure {span}.", span=numbers.span(out - into)) if into and out else "",
        say("On the fire {span}.", span=numbers.span(off_at - on)) if on and off_at else "",
        _looked_back(a),
    ]
    return "\n".join(part for part in parts if part)


def _seen(slice_: Sliced, a: Assessment) -> str:
    if slice_.grey is None:
        return say("Grey in the middle.")
    if slice_.pink:
        return say("Pink all through.")
    return say("Grey in the middle: {grey}.", grey=numbers.length(slice_.grey, a.person))


def _looked_back(a: Assessment) -> str:
    batch, told = a.batch, []
    if batch.weighed_after is not None:
        told.append(say("{share} of its weight was left.", share=numbers.share(batch.weighed_after / batch.setup.mass)))
    if batch.sliced is not None:
        told.append(_seen(batch.sliced, a))
    if batch.rated is not None:
        mark = batch.rated[1]
        told.append(say("You gave it {mark} of {of}.", mark=numbers.plain(mark.mark), of=numbers.plain(mark.of)))
    if batch.tasted is not None:
        told.append((say("Bland."), say("The salt was right."), say("Too salty."))[batch.tasted + 1])
    return " ".join(told)


def fire_hours(a: Assessment) -> str:
    """How long it is on the fire as planned: from when to when, with the band of the end."""
    on, off = (a.plan.step(kind.value) if a.plan else None for kind in (Kind.MEAT_ON, Kind.OFF))
    if on is None or off is None or a.on_at is not None:
        return standing.since(a)
    early, late = off.early or off.due, off.late or off.due
    return say(
        "About {hours} on the fire, {low} to {high}: on {on}, off {off} or so. The core decides, not the clock.",
        hours=numbers.span(_to_the_quarter(off.due - on.due)),
        low=numbers.span(_to_the_quarter(early - on.due)),
        high=numbers.span(_to_the_quarter(late - on.due)),
        on=numbers.when(on.due, a.person, a.now),
        off=numbers.when(numbers.quarter(off.due, up=True), a.person, a.now),
    )


def _to_the_quarter(span: timedelta) -> timedelta:
    return timedelta(minutes=15) * round(span / timedelta(minutes=15))
