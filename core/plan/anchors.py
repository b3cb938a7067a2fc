"""The times that everything else hangs on: into the cure, out, on the fire, off, cold, sliced, served.

With a meal date the week is laid backwards from it, and refused where it cannot be done; without one it is
laid forwards from now. What was done stands at the time when it was done, and pushes what comes after it.
The hours of the day that it aims for are common practice, no source.
"""

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from core.but import but
from core.errors import TooLong, TooSoon
from core.plan import keeping
from core.plan.case import Case
from core.plan.hours import quarter, span
from core.plan.in_and_out import EVENING, LEAST_DRYING, OUT_AT, dries_from, in_by_day, needed_days, out_for
from core.plan.setup import by_the_clock
from core.plan.steps import Band, TimeBand
from core.units import Days, Hours

IN_AT = time(9, 0)
FIRE_NOT_BEFORE = time(6, 0)
OFF_BY_P50 = time(17, 0)
OFF_BY_P90 = time(20, 0)
MEAL_AT = time(13, 0)
BEFORE_HOT: Hours = 0.5  # sliced so long before the meal
TO_THE_SCALE = timedelta(minutes=30)  # what is not at hand yet is laid out
WEIGHED = timedelta(minutes=30)  # from weighing the salt to meat that lies in it
LONGEST_CURE: Days = 21.0
SLACK_DAYS: Days = 2.0  # added where the calendar has room
START_AT_ONCE_WITHIN: Days = 4.0  # more room than this: start later, the meat keeps better uncut


@dataclass(frozen=True)
class Anchors:
    """The times that everything else hangs on, aware UTC."""

    thaw: datetime
    brine: datetime
    into_cure: datetime
    out: datetime
    light: datetime
    on: datetime
    off: TimeBand
    chill: datetime
    cold: datetime
    slice: datetime
    serve: datetime


def anchors(case: Case) -> Anchors:
    """The anchors of a batch.

    Raises
    ------
    TooSoon
        A meal date was said, the meat is not in the cure yet, and no start from now on reaches it.
    TooLong
        The cure takes longer than is planned without the cook's confirmation.
    RawTooLong
        No nitrite goes in, and it would lie raw longer than the chart has it.
    """
    _check_length(case)
    keeping.check(case, span(needed_days(case) * 24 + case.setup.soak_hours + case.setup.rest_days * 24))
    earliest_in = _earliest_in(case)
    into = case.done("into_cure")
    if into is None and case.setup.deadline is not None:
        into = _start_for(case, case.setup.deadline, earliest_in)
    start = into or _without_a_meal(case, earliest_in)
    fixed = _forward(case, start, _cook_day(case, start))
    if case.done("into_cure") is None:
        keeping.check(case, fixed.on - fixed.into_cure)
    return fixed


def _without_a_meal(case: Case, start: datetime) -> datetime:
    """At once, but in salt alone no sooner than on the eve of its fire, and out of a strong brine by daylight."""
    if case.setup.nitrite_target == 0.0 and not by_the_clock(case.setup):
        on = _planned_on(case, start, _cook_day(case, start))
        return max(start, in_by_day(case, out_for(case, on) - span(needed_days(case) * 24), on))
    if not by_the_clock(case.setup):
        return start
    out = start + span(needed_days(case) * 24)
    return case.wall.awake(start + (case.wall.awake(out) - out))


def _check_length(case: Case) -> None:
    days = needed_days(case)
    if days > LONGEST_CURE and not case.setup.long_cure_confirmed and case.done("into_cure") is None:
        raise TooLong(days, LONGEST_CURE)


def _earliest_in(case: Case) -> datetime:
    """The first moment at which meat and cure can meet, from where the batch stands now."""
    begins = TO_THE_SCALE if case.done("brine") is None else timedelta(0)
    wait = case.brine_wait if case.needs_brine else (begins + WEIGHED) / timedelta(hours=1)
    ready = (case.done("brine") or case.wall.awake(case.now)) + span(wait)
    ready = case.done("brine_check") or ready
    thawed = (case.done("thaw") or case.now) + span(case.durations.thaw if case.setup.frozen else 0.0)
    return case.wall.awake(max(ready, quarter(thawed, up=True) if case.setup.frozen else thawed, case.now))


def _start_for(case: Case, deadline: datetime, earliest_in: datetime) -> datetime:
    """When the meat goes in for a meal at `deadline`: at once, or later where there was much room at the start."""
    on = _on_for(case, deadline)
    latest_in = out_for(case, on) - span(needed_days(case) * 24)
    late = by_the_clock(case.setup) and latest_in < earliest_in
    if late and _soonest_on(case, earliest_in) <= max(on, _not_after(case, case.wall.day(on))):
        return earliest_in  # a short drying and a late fire are better than none
    on_the_eve = by_the_clock(case.setup) or case.setup.nitrite_target == 0.0  # salt alone keeps nothing for days
    if on_the_eve and latest_in >= earliest_in:  # fresh until then, in by daylight
        return max(in_by_day(case, latest_in, on), earliest_in)
    if _earliest_in(case.as_settled()) > latest_in and not case.done("out"):  # what was promised is late, not refused
        free = but(case, setup=but(case.setup, deadline=None))
        earliest = _forward(free, earliest_in, _cook_day(free, earliest_in)).serve
        raise TooSoon(deadline, earliest, needed_days(case))
    begun = case.done("brine") is not None  # what is mixed does not wait for a later day
    if begun or latest_in - _earliest_in(case.at_start()) <= timedelta(days=START_AT_ONCE_WITHIN):
        return earliest_in
    later = case.wall.last_at(IN_AT, latest_in - timedelta(days=SLACK_DAYS))
    return max(later, earliest_in)


def _cook_day(case: Case, start: datetime) -> date:
    """The day of the fire: the one that the meal asks for, or the first that cure and drying allow."""
    wall, soonest = case.wall, _soonest_on(case, start)
    day = wall.day(soonest)
    if _not_after(case, day) < soonest and (case.chilled or case.setup.deadline is None):
        day += timedelta(days=1)
    return day if case.setup.deadline is None else max(wall.day(_on_for(case, case.setup.deadline)), day)


def _soonest_on(case: Case, start: datetime) -> datetime:
    """The first moment for the fire: dried for its hours, or for one where it came out late."""
    out = case.done("out")
    if out is not None:
        return dries_from(case, out) + LEAST_DRYING
    cured = start + span(needed_days(case) * 24)
    if by_the_clock(case.setup):
        return dries_from(case, cured) + LEAST_DRYING
    if case.within_a_day or keeping.until(case):
        return dries_from(case, case.wall.awake(cured)) + LEAST_DRYING
    return dries_from(case, case.wall.next_at(OUT_AT, cured)) + span(case.product.hours.dry)


def _on_for(case: Case, deadline: datetime) -> datetime:
    """When the meat goes on for a meal at `deadline`."""
    if not case.chilled:  # no sooner than the slow end of the band asks for: what is ready early has to be held hot
        return quarter(
            deadline - span(BEFORE_HOT) - span(case.product.hours.least_rest) - span(case.durations.cook.p90)
        )
    after = _until_cold_meal(case)
    day = case.wall.day(deadline) - timedelta(days=1)
    while _on_of_day(case, day) + after > deadline:  # an early meal, or a slow chill
        day -= timedelta(days=1)
    return _same_day(case, deadline) or _on_of_day(case, day)


def _until_cold_meal(case: Case) -> timedelta:
    """From the fire to a meal that is eaten cold, at the middle of the cook's band."""
    times, hours = case.durations, case.product.hours
    parts = (times.cook.p50, times.rest, times.chill, hours.set, hours.slice_before_meal)
    return sum((span(part) for part in parts), timedelta(0))


def _latest_cold(case: Case, deadline: datetime) -> datetime:
    """The latest that it goes on for a meal that is eaten cold, by the slow end of the cook's band."""
    cook = case.durations.cook
    return quarter(deadline - _until_cold_meal(case) - span(cook.p90 - cook.p50))


def _same_day(case: Case, deadline: datetime) -> datetime | None:
    """On the fire on the day of the meal, where hours in a brine leave time for that and not for the day before."""
    if not by_the_clock(case.setup) or case.done("out"):
        return None
    latest = _latest_cold(case, deadline)
    day = case.wall.day(latest)
    soonest = _soonest_on(case, case.done("into_cure") or _earliest_in(case))
    return latest if _not_after(case, day - timedelta(days=1)) < soonest <= latest >= _dawn(case, day) else None


def _not_after(case: Case, day: date) -> datetime:
    """The latest that it goes on that day: fish that is brined on it may come off as late as nobody is woken."""
    usual, cook = _on_of_day(case, day), case.durations.cook
    if not by_the_clock(case.setup):
        return usual
    return max(usual, quarter(case.wall.at(day, case.wall.quiet_from) - span(cook.p90)))


def _on_of_day(case: Case, day: date) -> datetime:
    """Early enough to be off by the evening, but no fire before six in the morning."""
    cook, wall = case.durations.cook, case.wall
    wish = min(wall.at(day, OFF_BY_P50) - span(cook.p50), wall.at(day, OFF_BY_P90) - span(cook.p90))
    return max(quarter(wish), _dawn(case, day))


def _dawn(case: Case, day: date) -> datetime:
    """The first that it goes on that day: nobody lights a fire before six."""
    return quarter(case.wall.at(day, FIRE_NOT_BEFORE) + span(case.durations.lighting), up=True)


def _forward(case: Case, into: datetime, cook_day: date) -> Anchors:
    """Every anchor from the day of the fire; what was done stands, and pushes the rest."""
    planned_on = _while_it_keeps(case, _planned_on(case, into, cook_day))
    cured = into + span(needed_days(case) * 24)
    planned_out = cured if by_the_clock(case.setup) else max(out_for(case, planned_on), case.wall.awake(cured))
    out = case.done("out") or planned_out
    on = case.done("meat_on") or _not_past(case, max(planned_on, dries_from(case, out) + LEAST_DRYING))
    light = case.done("light") or quarter(on - span(case.durations.lighting))
    return _afterwards(case, into, (out, light, on))


def _while_it_keeps(case: Case, on: datetime) -> datetime:
    """The same, or sooner for meat that lies in salt alone since too long before it: by day, while it keeps raw."""
    latest, into = keeping.until(case), case.done("into_cure")
    if latest is None or into is None or on <= latest:
        return on
    day, soonest = case.wall.day(latest), _soonest_on(case, into)
    if latest < _dawn(case, day):
        day -= timedelta(days=1)
    return max(min(latest, max(_on_of_day(case, day), soonest)), soonest)


def _planned_on(case: Case, into: datetime, cook_day: date) -> datetime:
    """When it goes on for its meal, on the day of the fire."""
    usual, deadline = _on_of_day(case, cook_day), case.setup.deadline
    if deadline is None:
        return usual
    wished, soonest = _on_for(case, _meal(case, cook_day)), _soonest_on(case, into)
    if not case.chilled:
        return max(wished, soonest)
    if case.wall.day(wished) == cook_day:
        return wished
    # on a later day than it asked for: as early there as the meal still wants it, or as can be
    return min(usual, max(_latest_cold(case, deadline), _dawn(case, cook_day), quarter(soonest, up=True)))


def _not_past(case: Case, on: datetime) -> datetime:
    """The same, pushed on by a fire that was lit or a rub that was put on late, and by the hour that it is."""
    lit, rubbed = case.done("light"), case.done("rub")
    burn, rest = span(case.durations.lighting), span(case.product.hours.rub_rest)
    on = max([on, *([lit + burn] if lit else []), *([rubbed + rest] if rubbed else [])])
    if case.done("out"):
        on = max(on, case.now + (timedelta(0) if lit else burn))
    return on if lit else quarter(on, up=True)


def _meal(case: Case, cook_day: date) -> datetime:
    """The meal as it was said, or lunch of the next day, or the first meal that the fire allows."""
    if case.setup.deadline is not None and case.wall.day(case.setup.deadline) >= cook_day:
        return case.setup.deadline
    day = cook_day + timedelta(days=1) if case.chilled else cook_day
    return case.wall.at(day, MEAL_AT if case.chilled else time(18, 0))


def _afterwards(case: Case, into: datetime, fire: tuple[datetime, datetime, datetime]) -> Anchors:
    out, light, on = fire
    off = _off(case, on)
    chill = case.done("chill") or case.progress.at_60c or off.p50 + span(case.durations.rest)
    cold = case.progress.cold_at or chill + span(case.durations.chill)
    rested = off.p90 + span(case.product.hours.least_rest)
    free = cold + span(case.product.hours.set) if case.chilled else rested
    before = span(case.product.hours.slice_before_meal if case.chilled else BEFORE_HOT)
    meal = _meal(case, case.wall.day(on))
    if keeping.cannot_wait(case, rested, meal):
        meal = quarter(rested + before, up=True)
    serve = max(meal, free + before)
    if serve > meal and case.setup.deadline is None:
        serve = case.wall.next_at(MEAL_AT, serve) if case.chilled else quarter(serve, up=True)
    brine = case.done("brine") or _brine_at(case, into)
    thaw = case.done("thaw") or _thaw_at(case, into)
    sliced = case.done("slice") or max(serve - before, free)
    return Anchors(thaw, brine, into, out, light, on, off, chill, cold, sliced, serve)


def _thaw_at(case: Case, into: datetime) -> datetime:
    """As late as it thaws in time, and in the evening before where that would be in the quiet hours."""
    exact = into - span(case.durations.thaw)
    latest = max(quarter(exact), min(exact, case.at_start().now))  # rounded down it may lie before the batch was begun
    if not case.wall.quiet(latest):
        return latest
    return max(case.wall.last_at(EVENING, latest), min(case.wall.awake(case.at_start().now), latest))


def _brine_at(case: Case, into: datetime) -> datetime:
    if not case.needs_brine:
        return into - WEIGHED
    latest = into - span(case.brine_wait)
    return max(case.wall.last_at(time(18, 0), latest), min(case.wall.awake(case.at_start().now), latest))


def _off(case: Case, on: datetime) -> TimeBand:
    done = case.done("off")
    if done is not None:
        return TimeBand(done, done, done)
    if case.progress.ready is not None:
        return case.progress.ready
    cook: Band = case.durations.cook
    return TimeBand(*(on + span(h) for h in (cook.p10, cook.p50, cook.p90)))
