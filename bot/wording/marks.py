"""Words for a step that was done, left out, put off or forgotten."""

from collections.abc import Sequence
from datetime import datetime, timedelta

from bot.wording import (
    brines,
    cautions,
    cure_days,
    doneness,
    holding,
    lateness,
    numbers,
    plans,
    sooner,
    steps,
    tasks,
    turning,
)
from bot.wording.language import Words, later, say
from core.batch import in_time
from core.batch.assess import Assessment, Change
from core.batch.events import Probe
from core.errors import TooSoon
from core.plan.recipe import product
from core.plan.setup import by_the_clock
from core.plan.steps import Kind, Plan, Step
from core.units import celsius_from_fahrenheit

AN_HOUR = timedelta(hours=1)
OFF_THE_HOUR = 0.25  # of the hours that were planned for a strong brine: beyond that its salt is another
BRINE_COLD_C = celsius_from_fahrenheit(40.0)


def already(step: Step, a: Assessment) -> str:
    """Done twice is done once."""
    at = numbers.when(step.done_at, a.person, a.now) if step.done_at else ""
    return say("{name} was noted already, {at}. {coming}", name=steps.name(step, a), at=at, coming=plans.coming(a))


def meal_as_it_can_be(a: Assessment, refusal: TooSoon) -> str:
    """Gone on with although the meal that was wanted comes too soon: which one is planned instead."""
    wish, meal = (
        f"{numbers.day(at, a.person)} {numbers.clock(at, a.person)}" for at in (refusal.deadline, refusal.earliest)
    )
    return say("{wish} is too soon, so I plan the meal for {meal}.", wish=wish, meal=meal)


def needs_number(step: Step, a: Assessment) -> str:
    """Cold enough is a number, not a word."""
    if step.kind is not Kind.BRINE_CHECK:
        return say("I need the number. {task}", task=tasks.task(step, a))
    return say(
        "What does the brine read? The meat goes in at {limit} or colder. Type it like «brine 3 c» or «brine 38 f».",
        limit=numbers.both(4.4, a.person),
    )


def done(step: Step, change: Change, at: datetime, since: Assessment | None) -> str:
    """A step done, what it means, what moved `since` the batch stood so, and what comes next.

    None for a step that others follow in the same breath: it is told alone, and the last tells what moved.
    """
    a = change.after
    lead = was_done(step, a, at)
    special = _SPECIAL.get(step.kind)
    middle = special(a) if special else ""
    if since is None:
        return "\n".join(t for t in (lead, _came_out(step, change, at), middle) if t)
    moved = plans.moved(since.plan, a) if step.kind not in FOLLOWED else []
    return "\n".join(
        t
        for t in (
            lead,
            _came_out(step, change, at),
            middle,
            _keeps_raw(a, since.plan),
            *moved,
            *lateness.late(a, since.plan),
            plans.coming(a),
        )
        if t
    )


def _came_out(step: Step, change: Change, at: datetime) -> str:
    """That it came out of its cure was not said; its hour counts for the nitrite and the days, so it is told."""
    before = change.before.batch.done if change.before else {}
    if step.kind in (Kind.OUT, Kind.RINSE) or "out" in before or "out" not in change.after.batch.done:
        return ""
    clock = numbers.when(at, change.after.person, change.after.now)
    return say(
        "Out of the cure: I take {at} too. If it was earlier, type it, like «out of the cure at 7:30».", at=clock
    )


def was_done(step: Step, a: Assessment, at: datetime) -> str:
    """A step, and when it was done."""
    return say("{name}: done {at}.", name=steps.name(step, a), at=numbers.when(at, a.person, a.now))


FOLLOWED = frozenset({Kind.MEAT_ON, Kind.WRAP, Kind.OFF})  # their own words tell the new times


def _on(a: Assessment) -> str:
    if a.ready is None:
        return ""
    target = numbers.temperature(a.batch.setup.target_c, a.person)
    return say(
        "Ready {when}, at {target}. Readings narrow that.",
        when=numbers.time_band(a.ready, a.person, a.now),
        target=target,
    )


def _wrapped(a: Assessment) -> str:
    """The new hours in the wrap, and how it is held till the knife where it is ready before that."""
    return "\n".join(line for line in (_on(a), holding.planned(a)) if line)


def _into(a: Assessment) -> str:
    out = a.plan.step("out") if a.plan else None
    if out is None:
        return ""
    cold = any(r.celsius <= BRINE_COLD_C for r in a.batch.of_probe(Probe.BRINE))
    unread = "" if a.batch.setup.method == "dry" or cold else say(_UNREAD, limit=numbers.both(4.4, a.person))
    due, days = numbers.when(out.due, a.person, a.now), numbers.lying(a.plan.cure_days if a.plan else 0)
    told = say("{unread}It comes out {due}, after {cure_days}.", unread=unread, due=due, cure_days=days)
    return "\n".join(line for line in (told, cure_days.too_long(a)) if line)


def _keeps_raw(a: Assessment, before: Plan | None) -> str:
    """Salt alone, and a fire that was planned for later than raw meat of its kind keeps for sure."""
    latest, on = in_time.raw_until(a), a.plan.step("meat_on") if a.plan else None
    was = before.step("meat_on") if before else None
    if latest is None or on is None or was is None or was.due <= latest or "meat_on" in a.batch.done:
        return ""
    keeps = say(
        "Without curing salt it keeps raw no longer for sure than {latest}.",
        latest=numbers.when(latest, a.person, a.now),
    )
    if on.due > latest:
        return keeps + " " + say("On the fire by then, sooner than planned, or I cannot call it safe.")
    sooner_meal = a.plan is not None and a.plan.wanted is not None and a.plan.serve < a.plan.wanted
    told = say("The fire comes before that, and the meal with it; «eat it cold» keeps the day of the meal.")
    return keeps + " " + (told if sooner_meal else say("The fire comes before that."))


def _out(a: Assessment) -> str:
    """Out of a cure too soon; out of a strong brine long after its hour, or before it: the salt that it took."""
    into, out, setup = a.batch.done.get("into_cure"), a.batch.done.get("out"), a.batch.setup
    if into is None or out is None or a.dose is None or not by_the_clock(setup):
        return sooner.out(a)
    hours, planned = (out - into) / timedelta(hours=1), product(setup.product).brining(setup)
    if planned is None or not hours > 0.1 or abs(hours - planned) <= OFF_THE_HOUR * planned:
        return ""
    return brines.taken(a, a.dose, hours)


def _chill(a: Assessment) -> str:
    """How long it will take; and to read it now, where the clock of the rule runs from a reading on the fire."""
    began, last = a.batch.done.get("chill"), a.batch.last(Probe.CORE)
    forecast = cautions.chill_forecast(a)
    if a.ledger.cooling is None or began is None or last is None or began - last.at < READ_AT_THE_CHILL:
        return forecast
    read = say(
        "Read the middle now and send it: until you do, the rule counts its hours from {when}, when it read {core}.",
        when=numbers.when(last.at, a.person, a.now),
        core=numbers.temperature(last.celsius, a.person),
    )
    return f"{read}\n{forecast}".strip()


READ_AT_THE_CHILL = timedelta(minutes=20)  # a reading so long before is none of its beginning
_UNREAD = later(
    "I have no brine reading of {limit} or colder: read it now, beside the meat, and reply with the number.\n"
)
_SPECIAL = {
    Kind.OUT: _out,
    Kind.MEAT_ON: _on,
    Kind.WRAP: _wrapped,
    Kind.OFF: doneness.off,
    Kind.INTO_CURE: _into,
    Kind.CHILL: _chill,
}


TASTED = Words(
    {
        "tastes fine": "Then it needs no soak.",
        "tastes salty": "Soak it in fresh cold water in the fridge; ask «how long to soak» and I work it out.",
        "tastes bland": "Salt the rub, or the slices at the table; no curing salt is added now.",
        "tastes off": "Eat none of it. Where the meat smells sour, rotten or like eggs too, throw it away, and when in doubt "
        "as well.\nA clean smell proves nothing: ask me «is it safe».",
    }
)


def tasted(said: str, text: str) -> str:
    """What the taste of the rinsed meat asks for, after what was noted; a bad one comes first."""
    if said not in TASTED:
        return text
    noted, _, rest = text.partition("\n")
    lines = (TASTED[said], noted, rest) if said == "tastes off" else (noted, TASTED[said], rest)
    return "\n".join(line for line in lines if line)


def taste_noted(a: Assessment) -> str:
    """A taste told after the rinse, and what comes next."""
    return "\n".join((say("Noted with the rinse."), plans.coming(a)))


def missed(forgotten: Sequence[Step], change: Change) -> str:
    """Steps forgotten: what that means, without blame."""
    a, step = change.after, forgotten[0]
    harm = {
        Kind.FLIP: say("One missed flip does no harm."),
        Kind.FRIDGE_CHECK: say("Read it now if you can: the log is the only proof later."),
        Kind.READING: say("Send one now; the estimate goes on from there."),
    }.get(step.kind, say("The plan goes on from here."))
    times = ", ".join(
        say("{name} of {due}", name=steps.name(s, a), due=numbers.when(s.due, a.person, a.now)) for s in forgotten
    )
    return say("{times}: noted as missed. {harm} {coming}", times=times, harm=harm, coming=plans.coming(a))


def not_skipped(step: Step, a: Assessment) -> str:
    """What decides safety is not skipped."""
    return say(
        "«{name}» decides whether it is safe, so I keep asking.\n{task}",
        name=steps.name(step, a),
        task=tasks.task(step, a),
    )


def never_in(a: Assessment) -> str:
    """It is out of a cure that nobody said it went into: its days are counted from what is told now."""
    if a.batch.setup.nitrite_target == 0.0:
        return say(
            "When did it go into the salt? I have not heard that. Type it like «in the cure since 9 march 18:00»."
        )
    return say(
        "When did it go into the cure? I have not heard that, so I count no day of it and judge it as uncured. "
        "Type it like «in the cure since 9 march 18:00»."
    )


def no_batch_without(step: Step, a: Assessment) -> str:
    """What makes the batch is not left out."""
    return say(
        "Without «{name}» there is no batch, so it stays in the plan. To put it off, type «later»; to drop the batch, «cancel».",
        name=steps.name(step, a),
    )


def skipped(step: Step, change: Change) -> str:
    """A step left out."""
    a = change.after
    moved = plans.moved(change.before.plan if change.before else None, a)
    return "\n".join(t for t in (say("{name}: left out.", name=steps.name(step, a)), *moved, plans.coming(a)) if t)


def is_called(step: Step, a: Assessment, *, later: bool = False) -> str:
    """Who asks to be reminded of what lies ahead is: when; `later` asks for no hour, and may want another one."""
    due = numbers.when(step.due, a.person, a.now)
    said = say("{name}: I call you for it, {due}, at its hour and not before.", name=steps.name(step, a), due=due)
    if later:
        after = numbers.clock(step.due + AN_HOUR, a.person)
        return f"{said}\n" + say(
            "How long shall it wait beyond that? Type the hour, like «remind me at {hour}».", hour=after
        )
    return f"{said}\n{turning.flips_sooner(a)}".strip() if step.kind is Kind.FLIP else said


def snoozed(step: Step, change: Change, until: datetime) -> str:
    """A step put off."""
    a = change.after
    lead = say("{name}: put off until {until}.", name=steps.name(step, a), until=numbers.when(until, a.person, a.now))
    moved = [
        m
        for m in plans.moved(change.before.plan if change.before else None, a)
        if not m.startswith(steps.name(step, a))
    ]
    return "\n".join([lead, *moved, *lateness.late(a, change.before.plan if change.before else None)])


def none_called(a: Assessment) -> str:
    """Nothing is called for at the time for which it is to be left out."""
    return say("Nothing is called for then, so nothing is left out. {coming}", coming=plans.coming(a))
