"""Words for finished meat that goes into the freezer and comes out again: the days it keeps, and its quality there."""

from datetime import datetime, timedelta

from bot.wording import numbers, safety
from bot.wording.language import say
from core.batch.assess import Assessment
from core.meat.piece import Species
from core.plan.steps import Kind
from core.safety.after import use_by_of
from core.safety.done import held_as_smoked
from core.safety.findings import Outcome, Rule
from core.units import celsius_from_fahrenheit

MONTH = timedelta(days=30)


def frozen(a: Assessment) -> str:
    """It lies in the freezer: how long it is good there, and what that does to its days in the fridge."""
    at, told = next((at, what) for at, what in reversed(a.batch.incidents) if what.what == "frozen")
    shown = _not_shown_safe(a)
    if shown and a.ledger.verdict.kind is not Outcome.CANNOT_SAY:
        return shown
    parts = [shown, _lead(a, at, bool(told.facts.get("all"))), _best(a, at), _air(a), _cooling(a)]
    return "\n".join(part for part in parts if part)


def thawed(a: Assessment) -> str:
    """It is out again: the rest of its days, which are counted from the heat."""
    dates = use_by_of(a.ledger.record)
    if dates is None:
        return say("Noted: thawed.")
    return _not_shown_safe(a) or say(
        "Noted: thawed. Keep it in the fridge, and use it by {when}: the days before the freezer count, and so does the thaw.",
        when=_by(a, dates.at),
    )


def without_air(a: Assessment) -> str:
    """Smoked fish packed without air: what a plant measures and a kitchen cannot, and what is done instead."""
    dates = use_by_of(a.ledger.record)
    if not held_as_smoked(a.ledger.record):
        return say(
            "Not this one: {smoked} for 30 min are not shown, and botulism needs no air. Open the pack, or freeze it now.",
            smoked=numbers.at_least(celsius_from_fahrenheit(160.0), a.person),
        )
    by = say(" and eat it by {when}", when=_by(a, dates.at)) if dates else ""
    return say(
        "Botulism needs no air: plants hold 3.5 % salt in the water of such fish and test it, which no kitchen can. "
        "Freeze it, or read the fridge every day{by}.",
        by=by,
    )


def _not_shown_safe(a: Assessment) -> str:
    """The verdict where it is to be thrown away, eaten at once, or cannot be shown safe: ice mends none of it."""
    found = a.ledger.verdict
    if found.kind in (Outcome.SAFE, Outcome.NOT_YET):
        return ""
    spent = found.deciding.rule is Rule.USE_BY
    lead = (
        say("Freezing repairs nothing: its days were spent in the fridge.")
        if spent
        else say("Freezing repairs nothing.")
    )
    return "\n".join([safety.VERDICTS[found.kind], lead, safety.finding(found.deciding, a)])


def _by(a: Assessment, at: datetime) -> str:
    """The day of the use-by: that of the plan, which is never the later one."""
    step = a.plan.step(Kind.USE_BY.value) if a.plan else None
    return numbers.day(at if step is None else min(at, step.due), a.person)


def _lead(a: Assessment, at: datetime, whole: bool) -> str:
    dates = use_by_of(a.ledger.record)
    if dates is None:
        return say("Noted: frozen.")
    if not whole:
        return say(
            "Noted: a part of it is frozen. What stays in the fridge: use it by {when}.",
            when=_by(a, dates.at),
        )
    return say(
        "Noted: all of it is frozen, so its date waits. {left} of the fridge are left for it: they run on from the thaw.",
        left=numbers.days(numbers.half_down(max((dates.at - at) / timedelta(days=1), 0.0))),
    )


def _best(a: Assessment, at: datetime) -> str:
    dates = use_by_of(a.ledger.record)
    months = dates.keeping.freezer_months if dates else None
    if months is None:
        return ""
    return say(
        "Best by {when} at {cold} or below; later it is dry, not dangerous. Flat, tight, with the date on it.",
        when=numbers.day(at + months * MONTH, a.person),
        cold=numbers.both(celsius_from_fahrenheit(0.0), a.person),
    )


def _air(a: Assessment) -> str:
    fish = a.piece.cut.species is Species.FISH
    return say("Packed without air, open it before it thaws, and thaw it in the fridge.") if fish else ""


def _cooling(a: Assessment) -> str:
    """The cooling is judged by its readings, whether it is frozen afterwards or not."""
    open_ = [f for f in a.ledger.verdict.because if f.rule is Rule.COOLING and f.missing]
    return safety.missing(open_, a) if open_ else ""
