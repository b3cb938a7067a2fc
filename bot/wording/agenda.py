"""What stands on one day, in the order of the clock, of one batch or of several."""

from collections.abc import Sequence
from datetime import date, datetime

from bot.wording import batches as several
from bot.wording import language, plans
from bot.wording.language import say
from bot.wording.standing import WAY
from core.batch.assess import Assessment
from core.plan.steps import State, Step


def of_day(found: Sequence[Assessment], day: date) -> str:
    """The steps of a day that are not done, each with its batch where there are several; else what comes first."""
    here = sorted(((step.due, a, step) for a in found for step in _steps(a, day)), key=lambda one: one[0])
    named = language.day(datetime.combine(day, datetime.min.time()))
    if not here:
        soonest = min(found, key=several.due)
        coming = plans.coming(soonest)
        return say("Nothing stands on {day}.", day=named) + (
            f" {several.with_name(soonest.batch.name, coming)}" if coming and len(found) > 1 else f" {coming}".rstrip()
        )
    lines = (f"  {_line(a, step, len(found) > 1)}" for _, a, step in here)
    return "\n".join([f"{named}:", *lines, say("Nothing more that day.")])


def _steps(a: Assessment, day: date) -> list[Step]:
    """Those of that day, and today those that are open since before."""
    today = a.now.astimezone(a.person.tz).date()
    steps = (
        [s for s in a.plan.steps if s.state in (State.DUE, State.AHEAD) and (not s.within or s.kind in WAY)]
        if a.plan
        else []
    )
    return [s for s in steps if (s.due.astimezone(a.person.tz).date() == day) or (day == today and s.due <= a.now)]


def _line(a: Assessment, step: Step, several_here: bool) -> str:
    line = plans.line(step, a)
    return say("{line} ({batch})", line=line, batch=a.batch.name) if several_here else line
