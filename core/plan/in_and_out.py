"""When meat goes into its cure by day, comes out of it, and dries: from the fire backwards, and by what was done."""

from datetime import datetime, time, timedelta

from core.plan.case import Case
from core.plan.hours import span
from core.plan.setup import by_the_clock
from core.units import Days, Hours

EVENING = time(20, 0)
OUT_AT = time(17, 0)  # rinsed and on the rack before the evening
TO_SPARE: Hours = 1.0  # of the raw hours of the chart, for who is late
LEAST_DRYING = timedelta(hours=1.0)  # where it came out late; a tacky surface takes a night


def needed_days(case: Case) -> Days:
    """Days in the cure: the 90 % point, or longer where the cook asked for longer. [d]"""
    return max(case.durations.cure.p90, case.setup.cure_days or 0.0)


def dries_from(case: Case, out: datetime) -> datetime:
    """When it is set to dry: out of the cure, soaked and rested sealed where that was asked for and not left out."""
    setup, skipped = case.setup, case.progress.skipped
    soaked = case.done("soak") or out + span(0.0 if "soak" in skipped else setup.soak_hours)
    return (case.done("even") or soaked) + span(0.0 if "even" in skipped else setup.rest_days * 24)


def out_for(case: Case, on: datetime) -> datetime:
    """When it comes out: in the evening before, or where its brine takes hours, on the day of the fire itself."""
    waits = case.dry_hours + case.setup.soak_hours + case.setup.rest_days * 24
    out = on - span(waits)
    if case.within_a_day or by_the_clock(case.setup):
        return _out_by_daylight(case, out, on)
    return case.wall.last_at(OUT_AT, out)


def _out_by_daylight(case: Case, out: datetime, on: datetime) -> datetime:
    """What would come out in the night: in the morning, where it still dries until the fire, or in the evening."""
    morning = case.wall.awake(out)
    if dries_from(case, morning) + LEAST_DRYING <= on:
        return morning
    evening, within = case.wall.last_at(EVENING, out), case.product.raw_within(case.setup)
    if within is None or not case.within_a_day:
        return evening
    return max(evening, min(out, on - span(within - TO_SPARE - needed_days(case) * 24)))  # not a day before the fire


def in_by_day(case: Case, into: datetime, on: datetime) -> datetime:
    """What would go into its salt in the night: in the evening before, or in the morning where it keeps a day alone."""
    morning = case.wall.awake(into)
    in_time = dries_from(case, morning + span(needed_days(case) * 24)) + LEAST_DRYING <= on
    late_enough = not case.wall.quiet(into) or (case.within_a_day and in_time)
    return morning if late_enough else case.wall.last_at(EVENING, into)
