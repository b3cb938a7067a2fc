"""Words for changes and corrections: what stands now, and only the differences."""

from collections.abc import Sequence
from datetime import datetime
from typing import Any

from bot.intents.intents import Undo
from bot.wording import (
    asking,
    cautions,
    doses,
    freezer,
    fuel,
    incidents,
    marks,
    numbers,
    options,
    plans,
    pumped,
    put_in,
    refusals,
    smoked_fish,
    steps,
    wraps,
)
from bot.wording.language import Words, say
from bot.wording.readings import PLACES
from bot.wording.values import FIELDS, value
from core.batch.assess import Assessment, Change
from core.batch.events import (
    Changed,
    Corrected,
    Done,
    Event,
    Incident,
    Missed,
    Paused,
    Rated,
    Read,
    Resumed,
    Skipped,
    Sliced,
    Snoozed,
    Tasted,
    Took,
    Weighed,
    What,
)
from core.meat.piece import Species
from core.plan.recipe import product
from core.plan.setup import by_the_clock
from core.plan.steps import Step
from core.units import Days

OF_THE_DOSE = frozenset({"mass", "nitrite_target", "salt_fraction"})  # once it is weighed these change no gram
OF_THE_BRINE = frozenset({"brine_strength", "brine_hours", "salt_fraction", "thickness", "mass", "skin_on", "method"})


def changed(change: Change, changes: dict[str, Any]) -> str:
    """A change acknowledged: the new value, the dose where it moved, and the steps that moved."""
    a = change.after
    weighed = any(name.startswith("put_in_") for name in changes) or (
        bool(changes.keys() & OF_THE_DOSE) and a.batch.dosed is not None
    )
    said = ", ".join(
        f"{FIELDS.get(field, field.replace('_', ' '))} {value(field, v, a)}".strip()
        for field, v in changes.items()
        if (field != "method" or not changes.get("cover_share")) and not (field == "put_in_cure" and v is None)
    )
    lead = _with_its_rule(say("Noted: {said}.", said=said), changes, a)
    before = change.before
    if a.ledger.thrown and before is not None and not before.ledger.thrown:
        return f"{incidents.thrown(change)}\n{lead}"
    if "deadline" in changes and changes["deadline"] is None:
        lead = f"{lead}\n{say('When shall it be instead? Type the day, like «saturday 13:00»; until then I plan the soonest.')}"
    if "deadline" in changes and (by := wraps.deadline(a)):
        lead = f"{lead}\n{by}"
    if _as_wished(before, a) and "deadline" not in changes:
        at = numbers.when(a.batch.setup.deadline, a.person, a.now) if a.batch.setup.deadline else ""
        lead = f"{lead}\n{say('Now the meal can be had as you wanted it, {at}: so it is planned.', at=at)}"
    if changes.keys() & {"wind_m_s", "outside_c"}:
        lead = f"{lead}\n{fuel.in_this_air(a)}"
    if before is not None and before.batch.setup.method != a.batch.setup.method and "method" not in changes:
        lead = say("{lead}\nThe way of the cure changes with it: {method}.", lead=lead, method=plans.method_line(a))
    if before is not None and changes.keys() & {"product", "cut"}:
        lead = "\n".join(p for p in (lead, _cooked_otherwise(before, a)) if p)
    if weighed:
        told = (put_in.judged(a), lead, doses.dose_in(a), *put_in.beside_plan(a), pumped.otherwise(a, changes))
        lead = "\n".join(p for p in told if p)
    elif before is not None and _dose_differs(before, a):
        lead = f"{lead}\n{doses.dose(a)}"
    if by_the_clock(a.batch.setup) and changes.keys() & OF_THE_BRINE:
        lead = f"{lead}\n{doses.days(a)}".strip()
    elif before is not None and before.cure_days != a.cure_days and a.cure_days is not None:
        lead = f"{lead}\n{doses.days(a)}"
    elif changes.keys() & {"soak_hours", "rest_days"}:
        lead = f"{lead}\n{doses.afterwards(a)}".strip()
    return plans.changed(before.plan if before else None, a, lead)


def _with_its_rule(lead: str, changes: dict[str, Any], a: Assessment) -> str:
    """What is noted, with the rule that the new value brings with it."""
    if "target_c" in changes and (as_cooked := smoked_fish.planned(a)):
        lead = f"{lead}\n{as_cooked}"
    if changes.keys() & {"pit_c", "target_c"} and (cool := smoked_fish.cool_pit(a)):
        lead = f"{lead}\n{cool}"
    if changes.get("vacuum") and a.piece.cut.species is Species.FISH:
        lead = f"{lead}\n{freezer.without_air(a)}"
    if changes.get("at_risk_eaters"):
        lead = f"{lead}\n{cautions.WORDS['at_risk_reheat']}"
    if changes.get("cure_days"):
        lead = f"{lead}\n{_too_short(a, changes['cure_days'])}".strip()
    return lead


def _as_wished(before: Assessment | None, after: Assessment) -> bool:
    """Whether the meal that the house had put off is back at the hour that was said."""
    was, now = before.batch.setup if before else None, after.batch.setup
    return was is not None and was.deadline != now.deadline and "deadline" in now.said - was.said


def _too_short(a: Assessment, asked: Days) -> str:
    """Said where the cook wants fewer days than it takes: it stays in for those."""
    if a.cure is None or a.plan is None:
        return ""
    if asked >= max(a.cure.advice, product(a.batch.setup.product).least(a.batch.setup)):
        return ""
    return say(
        "That is too short for the middle, so it stays in for {days}; «why these days» shows the sum.",
        days=numbers.days(a.plan.cure_days),
    )


def effects(change: Change) -> list[str]:
    """What a setting changed in a batch: its dose, its plan, or why there is none any more."""
    a, before = change.after, change.before
    lines = []
    if before is not None and a.batch.setup.law and before.person.jurisdiction != a.person.jurisdiction:
        lines.append(put_in.by_another_law(a))
    elif before is not None and _dose_differs(before, a) and a.dose is not None:
        lines.append(doses.dose(a))
    refused = "" if a.refusal is None else refusals.say(a.refusal, a.person)
    told = "" if before is None or before.refusal is None else refusals.say(before.refusal, a.person)
    lines += [refused] if refused and refused != told else []
    return lines + plans.moved(before.plan if before else None, a)


def _cooked_otherwise(before: Assessment, after: Assessment) -> str:
    """How it is cooked from now on, where another product or cut is cooked in another way."""
    was, now = before.batch.setup, after.batch.setup
    if (was.cooker, was.pit_c, was.purpose, was.target_c) == (now.cooker, now.pit_c, now.purpose, now.target_c):
        return ""
    how = "; ".join((plans.pit(after), plans.COOKERS[now.cooker], plans.purpose(after)))
    return say("It is cooked otherwise, too: {how}.", how=how)


def _dose_differs(before: Assessment, after: Assessment) -> bool:
    was, now = before.dose, after.dose
    if was is None or now is None:
        return was is not now
    apart = ((was.cure_kg, now.cure_kg, 5e-5), (was.salt_kg, now.salt_kg, 5e-4), (was.sugar_kg, now.sugar_kg, 1e-3))
    return any(abs(one - two) > least for one, two, least in apart)


INCIDENTS = Words(
    {
        "fire_out": "fire out",
        "power_cut": "power cut",
        "warm_fridge": "warm fridge",
        "warm_brine": "warm brine",
        "left_out": "left out",
        "leaked": "leaked",
        "dosed_twice": "dosed twice",
        "spoiled": "gone off",
        "cure_as_salt": "cure as salt",
        "cure_in_rub": "cure in rub",
        "forgot_cure": "forgot cure",
        "wrong_salt": "wrong salt",
        "lid": "lid",
        "flare": "flare",
        "unwrapped": "unwrapped",
        "cut": "cut to cool",
        "frozen": "into the freezer",
        "thawed": "out of the freezer",
    }
)


def name(what: What, a: Assessment) -> str:
    """What an event was, in a few words."""
    match what:
        case Read(probe, celsius):
            return f"{PLACES[probe]} {numbers.temperature(celsius, a.person)}"
        case Done(step) | Skipped(step) | Snoozed(step):
            return f"«{steps.called(step, a)}»"
        case Changed(changes, _):
            return ", ".join(f"{FIELDS.get(k, k)} {value(k, v, a)}".strip() for k, v in changes.items())
        case Missed():
            return say("a missed step")
        case Sliced() | Tasted() | Weighed() | Took() | Rated():
            return say("what you said of the slice")
        case Incident(kind):
            return INCIDENTS.get(kind, kind.replace("_", " "))
        case Corrected():
            return say("the correction")
        case Paused():
            return say("the pause")
        case Resumed():
            return say("carrying on")
        case _:
            return say("the last thing")


def undone(events: tuple[Event, ...], change: Change) -> str:
    """A message taken back."""
    a = change.after
    names = ", ".join(dict.fromkeys(name(e.what, a) for e in events))
    lead = say("Taken back: {names} of {at}.", names=names, at=numbers.when(events[-1].at, a.person, a.now))
    return plans.changed(change.before.plan if change.before else None, a, lead) + ready(a)


def not_there() -> str:
    """A reading that was of another place, and cannot be one there: the true one is asked for."""
    return say(
        "It cannot have read that there, so nothing stands in its place.\n"
        "Send the number with its place, like «fridge 38 f» or «core 158»."
    )


def done_then(step: Step, a: Assessment) -> tuple[str, asking.Rows]:
    """What is said to be missed and was noted as done, with the tap that takes it back."""
    back = Undo(a.batch.id, step.key.split("/")[0])
    return marks.already(step, a), ((asking.button(options.label(back, a.person), back),),)


def never_noted(step: str, a: Assessment) -> str:
    """A step that is taken back, and was never noted."""
    return say(
        "{name} is not noted as done, so there is nothing to take back. {coming}",
        name=steps.name_of(step),
        coming=plans.coming(a),
    )


def corrected(event: Event, what: What, at: datetime | None, change: Change) -> str:
    """Something else stands in its place."""
    a = change.after
    when = f", {numbers.when(at, a.person, a.now)}" if at is not None else ""
    lead = say(
        "Corrected: {name}{when}, instead of {name2}, {at}.",
        name=name(what, a),
        when=when,
        name2=name(event.what, a),
        at=numbers.when(event.at, a.person, a.now),
    )
    return plans.changed(change.before.plan if change.before else None, a, lead) + ready(a)


def as_it_was(event: Event | None, a: Assessment) -> str:
    """A correction that was none: what was said first stands."""
    if event is None:
        return say("Forgotten. Send the reading again when you have it.")
    return say(
        "Forgotten: it stays {name}, {at}.", name=name(event.what, a), at=numbers.when(event.at, a.person, a.now)
    )


def ready(a: Assessment) -> str:
    """The ready time of a cook under way, as it stands after a correction."""
    return say("\nReady {when}.", when=numbers.time_band(a.ready, a.person, a.now)) if a.ready is not None else ""


def moved_over(events: Sequence[Event], a: Assessment) -> str:
    """The last thing said belongs to another batch."""
    said = ", ".join(name(event.what, a) for event in events)
    return say("Moved to «{name}»: {said}. Nothing of it is left on the other.", name=a.batch.name, said=said)
