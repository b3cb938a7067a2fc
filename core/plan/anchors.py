"""The times that everything else hangs on: into the cure, out, on the fire, off, cold, sliced, served.

With a meal date the week is laid backwards from it, and refused where it cannot be done; without one it is
laid forwards from now. What was done stands at the time when it was done, and pushes what comes after it.
The hours of the day that it aims for are common practice, no source.
"""

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from core.errors import TooLong, TooSoon
from core.plan.hours import Wall
from core.plan.progress import Progress
from core.plan.recipe import Product
from core.plan.setup import Setup
from core.plan.steps import Band, Durations, TimeBand
from core.units import Days, Hours

OUT_AT = time(17, 0)  # rinsed and on the rack before the evening
IN_AT = time(9, 0)
FIRE_NOT_BEFORE = time(6, 0)
OFF_BY_P50 = time(17, 0)
OFF_BY_P90 = time(20, 0)
MEAL_AT = time(13, 0)
LONGEST_CURE: Days = 21.0
SLACK_DAYS: Days = 2.0  # added where the calendar has room
START_AT_ONCE_WITHIN: Days = 4.0  # more room than this: start later, the meat keeps better uncut


@dataclass(frozen=True)
class Case:
    """Everything that one derivation of the plan is told."""

    setup: Setup
    product: Product
    durations: Durations
    progress: Progress
    wall: Wall
    now: datetime
    flip_hours: tuple[time, ...] = (time(8, 0), time(20, 0))

    @property
    def chilled(self) -> bool:
        """Whether the meat is chilled before it is sliced."""
        return self.product.purpose(self.setup.purpose).chilled

    @property
    def needs_brine(self) -> bool:
        """Whether there is a brine to be made and chilled."""
        return self.setup.method in ("brine", "inject")

    def done(self, key: str) -> datetime | None:
        """When a step was done, if it was."""
        return self.progress.done.get(key)


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
    """
    _check_length(case)
    earliest_in = _earliest_in(case)
    into = case.done("into_cure")
    if into is None and case.setup.deadline is not None:
        into = _start_for(case, case.setup.deadline, earliest_in)
    start = into or earliest_in
    return _forward(case, start, _cook_day(case, start))


def needed_days(case: Case) -> Days:
    """Days in the cure: the 90 % point, or longer where the cook asked for longer. [d]"""
    return max(case.durations.cure.p90, case.setup.cure_days or 0.0)


def _check_length(case: Case) -> None:
    days = needed_days(case)
    if days > LONGEST_CURE and not case.setup.long_cure_confirmed and case.done("into_cure") is None:
        raise TooLong(days, LONGEST_CURE)


def _earliest_in(case: Case) -> datetime:
    """The first moment at which meat and cure can meet, from where the batch stands now."""
    wait = case.product.hours.brine_chill if case.needs_brine else 1.0
    ready = (case.done("brine") or case.wall.awake(case.now)) + timedelta(hours=wait)
    if case.done("brine_check"):
        ready = case.now
    thawed = (case.done("thaw") or case.now) + timedelta(hours=case.durations.thaw if case.setup.frozen else 0.0)
    return case.wall.awake(max(ready, thawed, case.now))


def _start_for(case: Case, deadline: datetime, earliest_in: datetime) -> datetime:
    """When the meat goes in for a meal at `deadline`: at once, or later where there is much room."""
    out = _out_for(case, _on_for(case, deadline))
    latest_in = out - timedelta(days=needed_days(case))
    if earliest_in > latest_in:
        earliest = _forward(case, earliest_in, _cook_day(case, earliest_in, said=False)).serve
        raise TooSoon(deadline, earliest, case.durations.cure.p90)
    if latest_in - earliest_in <= timedelta(days=START_AT_ONCE_WITHIN):
        return earliest_in
    later = case.wall.last_at(IN_AT, latest_in - timedelta(days=SLACK_DAYS))
    return max(later, earliest_in)


def _cook_day(case: Case, start: datetime, *, said: bool = True) -> date:
    """The day of the fire: the one before a chilled meal, or the first that the cure allows."""
    wall = case.wall
    first_out = case.done("out") or wall.next_at(OUT_AT, start + timedelta(days=needed_days(case)))
    soonest = wall.day(first_out + timedelta(hours=case.product.hours.dry))
    if case.setup.deadline is None or not said:
        return soonest
    return max(wall.day(_on_for(case, case.setup.deadline)), soonest)


def _on_for(case: Case, deadline: datetime) -> datetime:
    """When the meat goes on for a meal at `deadline`."""
    if case.chilled:
        return _on_of_day(case, case.wall.day(deadline) - timedelta(days=1))
    return deadline - timedelta(hours=0.5 + _rest(case) + case.durations.cook.p90)


def _on_of_day(case: Case, day: date) -> datetime:
    """Early enough to be off by the evening, but no fire before six in the morning."""
    cook, wall = case.durations.cook, case.wall
    wish = min(
        wall.at(day, OFF_BY_P50) - timedelta(hours=cook.p50), wall.at(day, OFF_BY_P90) - timedelta(hours=cook.p90)
    )
    return max(wish, wall.at(day, FIRE_NOT_BEFORE) + timedelta(hours=case.durations.lighting))


def _out_for(case: Case, on: datetime) -> datetime:
    return case.wall.last_at(OUT_AT, on - timedelta(hours=case.product.hours.dry))


def _rest(case: Case) -> Hours:
    return max(0.75, min(case.durations.rest, case.product.hours.hold_longest))


def _forward(case: Case, into: datetime, cook_day: date) -> Anchors:
    """Every anchor from the day of the fire; what was done stands, and pushes the rest."""
    planned_on = _on_of_day(case, cook_day) if case.chilled or case.setup.deadline is None else None
    if planned_on is None:
        planned_on = max(_on_for(case, _meal(case, cook_day)), case.wall.at(cook_day, time(0, 0)))
    out = case.done("out") or max(_out_for(case, planned_on), into + timedelta(days=needed_days(case)))
    on = case.done("meat_on") or _not_past(case, max(planned_on, out + timedelta(hours=1.0)))
    light = case.done("light") or on - timedelta(hours=case.durations.lighting)
    return _afterwards(case, into, (out, light, on))


def _not_past(case: Case, on: datetime) -> datetime:
    """The same, pushed on where its hour has passed and the fire still has to be lit."""
    wait = 0.0 if case.done("light") else case.durations.lighting
    return max(on, case.now + timedelta(hours=wait)) if case.done("out") else on


def _meal(case: Case, cook_day: date) -> datetime:
    """The meal as it was said, or lunch of the next day, or the first meal that the fire allows."""
    if case.setup.deadline is not None and case.wall.day(case.setup.deadline) >= cook_day:
        return case.setup.deadline
    day = cook_day + timedelta(days=1) if case.chilled else cook_day
    return case.wall.at(day, MEAL_AT if case.chilled else time(18, 0))


def _afterwards(case: Case, into: datetime, fire: tuple[datetime, datetime, datetime]) -> Anchors:
    out, light, on = fire
    off = _off(case, on)
    chill = case.done("chill") or case.progress.at_60c or off.p50 + timedelta(hours=case.durations.rest)
    cold = case.progress.cold_at or chill + timedelta(hours=case.durations.chill)
    rested = off.p90 + timedelta(hours=_rest(case))
    free = cold + timedelta(hours=case.product.hours.set) if case.chilled else rested
    before = timedelta(hours=case.product.hours.slice_before_meal if case.chilled else 0.5)
    meal = _meal(case, case.wall.day(on))
    serve = max(meal, free + before)
    if case.chilled and serve > meal and case.setup.deadline is None:
        serve = case.wall.next_at(MEAL_AT, serve)
    brine = case.done("brine") or _brine_at(case, into)
    thaw = case.done("thaw") or min(brine, into) - timedelta(hours=case.durations.thaw)
    sliced = case.done("slice") or max(serve - before, free)
    return Anchors(thaw, brine, into, out, light, on, off, chill, cold, sliced, serve)


def _brine_at(case: Case, into: datetime) -> datetime:
    if not case.needs_brine:
        return into - timedelta(minutes=30)
    return max(
        case.wall.last_at(time(18, 0), into - timedelta(hours=case.product.hours.brine_chill)),
        min(case.wall.awake(case.now), into - timedelta(hours=case.product.hours.brine_chill)),
    )


def _off(case: Case, on: datetime) -> TimeBand:
    done = case.done("off")
    if done is not None:
        return TimeBand(done, done, done)
    if case.progress.ready is not None:
        return case.progress.ready
    cook: Band = case.durations.cook
    return TimeBand(*(on + timedelta(hours=h) for h in (cook.p10, cook.p50, cook.p90)))
