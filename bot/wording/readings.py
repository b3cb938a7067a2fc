"""Words for a reading: what it says of the hours, and what to do now."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from bot.intents.intents import Ask
from bot.wording import (
    asking,
    cooling,
    doneness,
    fire,
    holding,
    incidents,
    lateness,
    numbers,
    plans,
    put_in,
    rises,
    safety,
    smoked_fish,
    wraps,
)
from bot.wording.language import Words, say
from core.batch.assess import Assessment, Change
from core.batch.batch import Phase, Reading
from core.batch.doubts import Doubted
from core.batch.events import Probe
from core.person import Person
from core.plan.steps import Kind, State, Step
from core.safety.fridge import MENDED_F
from core.units import Celsius, celsius_from_fahrenheit

PLACES = Words(
    {
        Probe.CORE: "core",
        Probe.PIT: "pit",
        Probe.FRIDGE: "fridge",
        Probe.BRINE: "brine",
        Probe.ROOM: "room",
    }
)
Plain = Sequence[tuple[Probe, Celsius, datetime]]
READ_BY = {
    Kind.BRINE_CHECK: Probe.BRINE,
    Kind.FRIDGE_CHECK: Probe.FRIDGE,
    Kind.READING: Probe.CORE,
    Kind.CHILL_CHECK: Probe.CORE,
}
JUST_READ = timedelta(minutes=10)  # what is called for now is not read anew after so little time


def shown(celsius: Celsius, person: Person) -> str:
    """A reading as the person reads it."""
    return numbers.temperature(celsius, person)


def typed(value: float, unit: str) -> str:
    """A reading as it was typed."""
    return f"{numbers.plain(value)} °{unit.upper()}"


def suggestion(doubt: Doubted, person: Person, unit: str) -> str | None:
    """What a doubted reading that was read in `unit` probably was; of the other one, as it was typed and as it is shown."""
    if doubt.suggested_probe and doubt.suggested is not None:
        return f"{shown(doubt.suggested, person)} {PLACES[Probe(doubt.suggested_probe)]}"
    if doubt.suggested_at is not None and doubt.suggested is not None:
        return say(
            "{celsius} at {clock}",
            celsius=shown(doubt.suggested, person),
            clock=numbers.clock(doubt.suggested_at, person),
        )
    if doubt.suggested is None:
        return None
    here = shown(doubt.suggested, person)
    if doubt.why != "unit" or unit != person.units.temperature:
        return here
    other = replace(person.units, temperature="c" if unit == "f" else "f")
    return f"{shown(doubt.suggested, replace(person, units=other))} ({here})"


def report(change: Change, plain: Plain, *, tender: bool = False) -> tuple[str, asking.Rows]:
    """What a reading says: the ready time or the rule first, then what was kept, then what to do."""
    a = change.after
    if a.ledger.thrown:
        return "\n".join((incidents.thrown(change), _kept(a, plain))), ()
    out = incidents.fire_out(a, frozenset(at for p, _, at in plain if p is Probe.CORE))
    lines = [out, _lead(a, plain, tender), _kept(a, plain)]
    if a.batch.phase is Phase.COOKING:
        lines += _cook(change, plain)
    lines += [line for line in plans.moved(change.before.plan if change.before else None, a) if _tell(a)]
    if a.batch.phase in COOK_PHASES:
        rows: asking.Rows = ((asking.button(say("Picture"), Ask("picture", batch=a.batch.id)),),)
    else:
        rows = asking.next_buttons(a)
        lines.append(plans.coming(a))
    return "\n".join(line for line in lines if line), rows


def judged(change: Change, plain: Plain) -> str:
    """What a reading says by itself, where something else is said of it already: the rule, or what the fire needs."""
    a = change.after
    if a.ledger.thrown:
        return incidents.thrown(change)
    lines = _cook(change, plain) if a.batch.phase is Phase.COOKING else [_lead(a, plain, tender=False)]
    return "\n".join(line for line in lines if line)


BEFORE_THE_FIRE = {
    Phase.WAITING: {Probe.CORE, Probe.PIT},
    Phase.CURING: {Probe.CORE, Probe.PIT},
    Phase.DRYING: {Probe.CORE},  # the pit is read while it comes up
}
WARM_C: Celsius = 25.0  # no raw meat of a batch is ever so warm
COOK_PHASES = frozenset({Phase.COOKING, Phase.RESTING, Phase.CHILLING})


def _tell(a: Assessment) -> bool:
    """Times that follow the ready time move with every reading; they are not news of their own."""
    return a.batch.phase not in COOK_PHASES


def _listed(plain: Plain, a: Assessment) -> str:
    return ", ".join(
        say("{places} {c} at {at}", places=PLACES[p], c=shown(c, a.person), at=numbers.clock(at, a.person))
        for p, c, at in plain
    )


def _kept(a: Assessment, plain: Plain) -> str:
    return say("Noted: {said}.", said=_listed(plain, a))


def with_the_answer(plain: Plain, a: Assessment) -> str:
    """What was read in the same line as a number that is doubted: it waits for the answer to that."""
    return say("Noted with the answer: {said}.", said=_listed(plain, a))


def counts(*, cooling: bool) -> str:
    """Several places of the meat were read at once."""
    if cooling:
        return say("Of the places that you read, the warmest counts while it cools.")
    return say("Of the places that you read, the coldest counts.")


def of_the_fridge(low: Celsius, high: Celsius, person: Person) -> str:
    """Several places of one fridge were read at once: how far they lie apart, and which counts."""
    return say(
        "Your fridge is {low} at one place and {high} at another: the warmest counts. Lay the meat where it is coldest.",
        low=shown(low, person),
        high=shown(high, person),
    )


def lid(value: float, unit: str) -> str:
    """A dial in the lid was read beside the grate."""
    return say("The grate counts, since the meat lies there: {lid} of the lid is not noted.", lid=typed(value, unit))


def _lead(a: Assessment, plain: Plain, tender: bool) -> str:
    probes = {probe for probe, _, _ in plain}
    if a.batch.phase is Phase.COOKING:
        return _ready(a, tender)
    if any(p in BEFORE_THE_FIRE.get(a.batch.phase, ()) and c > WARM_C for p, c, _ in plain):
        return say(
            "By my record the meat is not on the fire yet.\nIf it is, say when it went on, like «meat on at 7:20»; "
            "if that was a slip, «undo» takes it back."
        )
    if Probe.BRINE in probes:
        return _brine(a, plain)
    if Probe.FRIDGE in probes:
        return safety.fridge(a, next(c for p, c, _ in plain if p is Probe.FRIDGE))
    if a.batch.phase is Phase.RESTING and not a.chilled and Probe.CORE in probes:
        return holding.reading(a, next(c for p, c, _ in reversed(plain) if p is Probe.CORE))
    if a.batch.phase in (Phase.RESTING, Phase.CHILLING) and Probe.CORE in probes:
        return cooling.stands(a)
    return ""


def _brine(a: Assessment, plain: Plain) -> str:
    celsius = next(c for p, c, _ in plain if p is Probe.BRINE)
    limit = numbers.both(4.4, a.person)
    if "into_cure" in a.batch.done:
        if celsius <= celsius_from_fahrenheit(40.0):
            dry = say("This cure was planned dry: if it lies in water, type how much, like «2 l water».")
            fine = say("The brine is cold enough for the meat in it.")
            return f"{dry}\n{fine}" if a.batch.setup.method == "dry" else fine
        return say(
            "Too warm for the meat in it: cool it now, ice in a shut bag round it, and read it again within the hour.\n"
            "Above {limit} the two-hour rule counts.",
            limit=numbers.at_most(celsius_from_fahrenheit(MENDED_F), a.person),
        )
    if celsius <= celsius_from_fahrenheit(40.0):
        return put_in.told_wrong(a) or (
            say("The brine is cold enough: the meat can go in.")
            if "brine" in a.batch.done and a.dose is not None
            else say("That is cold enough for a brine.")
        )
    return say(
        "Too warm yet: the meat goes in at {limit} or colder. Ice in a shut bag helps; read it again in an hour.",
        limit=limit,
    )


def _ready(a: Assessment, tender: bool) -> str:
    target = shown(a.batch.setup.target_c, a.person)
    if tender:
        return say("Tender is better than a number: take it off, and say «off». Then let it rest.")
    if there := doneness.there(a):
        return there
    if a.ready is None:
        return ""
    return say("Ready {when}, at {target}.", when=numbers.time_band(a.ready, a.person, a.now), target=target)


def _cook(change: Change, plain: Plain) -> list[str]:
    """What the reading says beyond the hour; where the meal is near its limit, the wrap is told by that.

    What was told already, and what only another thermometer could tell, is not said again with every reading.
    """
    a, before = change.after, change.before
    state = "out" if _told_out(a) else a.cook.fire.state if a.cook else "unknown"
    by = wraps.deadline(a, soon=not lateness.late(a)) if state != "out" else ""
    stall = "" if state in ("out", "dying") or smoked_fish.at_floor(a) else wraps.stall(a)  # first the fire
    gain = "" if by or state == "out" else wraps.first_gain(a, before)
    lit = any(probe is Probe.PIT for probe, _, _ in plain)
    fired = "" if _told_out(a) else fire.advice(a) if lit else fire.unread(a) if state in ("out", "dying") else ""
    late = [] if by else lateness.late(a, before.plan if before else None)
    return [line for line in (rises.on_the_fire(a), stall, fired, by or gain, next_one(a), *late) if line]


def _told_out(a: Assessment) -> bool:
    """Whether the cook told of a dead fire, and no pit was read since."""
    out = [at for at, what in a.batch.incidents if what.what == "fire_out"]
    pit = a.batch.last(Probe.PIT)
    return bool(out) and (pit is None or pit.at <= out[-1])


def next_one(a: Assessment) -> str:
    """When the next reading would tell most."""
    step = a.plan.of_kind(Kind.READING)[-1] if a.plan and a.plan.of_kind(Kind.READING) else None
    return "" if step is None else say("Next reading about {due}.", due=numbers.clock(step.due, a.person))


def next_asked(a: Assessment) -> str:
    """When to read next, for whoever asks."""
    if a.on_at is None or a.batch.off_at is not None:
        return plans.now(a)
    step = a.plan.of_kind(Kind.READING)[-1] if a.plan and a.plan.of_kind(Kind.READING) else None
    if step is None or step.due <= a.now:
        return say("Read core and pit now, and send both, like {example}.", example=_example(a.person))
    return say(
        "{next_one} That is where it tells most; sooner does no harm, like {example}.",
        next_one=next_one(a),
        example=_example(a.person),
    )


def has_it(step: Step, a: Assessment) -> str:
    """«done» of a step that is a number which came already: that number, what it says, and what is next; else ""."""
    last = a.batch.last(READ_BY[step.kind])
    if last is None or (step.state is State.DUE and a.now - last.at > JUST_READ):
        return ""
    if step.kind is Kind.CHILL_CHECK:
        return in_the_chill(a)
    on_the_fire = step.kind is Kind.READING and a.batch.phase is Phase.COOKING
    return f"{_number(last, a)}\n{next_one(a) if on_the_fire else plans.coming(a)}".strip()


def in_the_chill(a: Assessment) -> str:
    """The number that came last in the chill, what it says, and what is next; "" before one came."""
    last, off = a.batch.last(Probe.CORE), a.batch.off_at
    if last is None or off is None or last.at < off or a.batch.phase is not Phase.CHILLING:
        return ""
    coming = "" if a.ledger.thrown else plans.coming(a)
    return "\n".join(line for line in (_number(last, a), cooling.stands(a), coming) if line)


def _number(last: Reading, a: Assessment) -> str:
    return say(
        "I have the number: {places} {c}, {at}.",
        places=PLACES[last.probe],
        c=shown(last.celsius, a.person),
        at=numbers.when(last.at, a.person, a.now),
    )


def _example(person: Person) -> str:
    return "158/245" if person.units.temperature == "f" else "70/120"


def probe_out(a: Assessment) -> str:
    """The probe came out of the meat: how to go on, and what becomes of what it read."""
    return say(
        "Push it back from the side into the middle of the thickest part, wait 10 min, then read it.\n"
        "What it read in the air says nothing of the meat: if you sent me that, «undo» takes it back."
    )
