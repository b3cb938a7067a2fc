"""Which steps are named with the one before them, until somebody says that one is done.

Nobody is called to take off a fire what may never have been put on one. What a cook does not confirm is called
for once and once more; what comes after it is named in that call, and called for by itself as soon as there is a
sign that the work has gone on. Any sign will do: a step that was ticked or left out, a reading of core or pit. Once
there is one, what decides safety is called for whatever else was left unsaid. Common practice, no source.
"""

from core.plan.case import Case
from core.plan.steps import Kind, Step

COOKING = ("rub", "meat_on", "wrap", "off", "chill", "slice")
AFTER_OUT = frozenset({Kind.RINSE, Kind.SOAK, Kind.EVEN, Kind.DRY})
OF_THE_FIRE = frozenset(
    {Kind.RUB, Kind.MEAT_ON, Kind.WRAP, Kind.OFF, Kind.CHILL, Kind.CHILL_CHECK, Kind.SLICE, Kind.DEBRIEF}
)


def within(case: Case, step: Step) -> str:
    """The key of the step with which this one is named; empty where it is called for by itself."""
    if step.kind in AFTER_OUT:
        return _after_out(case, step)
    if step.kind not in OF_THE_FIRE:
        return ""
    if not any_sign(case):
        return "light"
    if step.kind is Kind.WRAP and not _on(case):
        return "meat_on"
    if step.kind is Kind.CHILL_CHECK and not _over(case, "off", "chill") and case.progress.from_54c is None:
        return "chill"
    return ""


def any_sign(case: Case) -> bool:
    """Whether anything says that there is a fire."""
    return case.progress.fire_seen or _over(case, "light", *COOKING)


def _after_out(case: Case, step: Step) -> str:
    if not _over(case, "out"):
        return "out"
    waits = case.setup.soak_hours or case.setup.rest_days  # then it dries hours or days after the rinse
    return "rinse" if step.kind is Kind.DRY and not waits and not _over(case, "rinse") else ""


def _on(case: Case) -> bool:
    return case.progress.fire_seen or _over(case, "meat_on", "wrap")


def _over(case: Case, *keys: str) -> bool:
    """Whether one of these steps was done or left out."""
    return any(case.done(key) or key in case.progress.skipped for key in keys)
