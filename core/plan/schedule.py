"""The whole week as steps, laid out from the anchors. Pure: told the batch and the time, it derives everything."""

from collections.abc import Iterator, Mapping
from datetime import datetime, time, timedelta
from functools import lru_cache

from core.but import but
from core.plan.anchors import Anchors, anchors
from core.plan.case import Case
from core.plan.folding import any_sign, within
from core.plan.hours import Wall
from core.plan.in_and_out import dries_from, needed_days
from core.plan.setup import by_the_clock
from core.plan.steps import Kind, Plan, State, Step, Urgency

ORDER = {kind: place for place, kind in enumerate(Kind)}
ORDER[Kind.LIGHT] = ORDER[Kind.RUB]  # side by side: one that is done does not pass over the other
REPEATED = frozenset({Kind.FLIP, Kind.FRIDGE_CHECK, Kind.MID_CHECK, Kind.READING, Kind.CHILL_CHECK})
# the steps that the hour pushes on while they wait, and what must be done before their turn has come
TURN = {
    Kind.THAW: "",
    Kind.BRINE: "",
    Kind.BRINE_CHECK: "brine",
    Kind.INTO_CURE: "brine",
    Kind.RUB: "out",
    Kind.LIGHT: "out",
    Kind.MEAT_ON: "light",
}
FLIP_STALE = timedelta(hours=6)  # a flip this late is merged into the next one
FIRST_FLIP_AFTER = timedelta(hours=5)
LAST_FLIP_BEFORE = timedelta(hours=3)
STAGE_ONE = timedelta(hours=1.5)  # 130 to 80 °F, FSIS cooling option 1
WHOLE_COOLING = timedelta(hours=6.5)  # and on to 40 °F
ASK_FOR_READING = timedelta(hours=1)
AFTER_THE_FIRE = ("off", "rest", "chill", "slice", "serve")  # any of them says that it is off
READY_SOON = timedelta(minutes=10)  # from then on the probe is asked for, not a number
WARM_AGAIN = timedelta(hours=1)  # of the two that a fridge may be too warm
A_LATE_FIRE = timedelta(days=2)  # so long after its hour the fridge of meat that waits for it is still asked for


def schedule(case: Case) -> Plan:
    """The plan of a batch as it stands now; raises what `anchors` raises."""
    fixed, first = anchors(case), case.at_start()
    asked = _first_asked(first, anchors(first))
    last = _furthest(case)
    settled = (_settled(case, _asked(case, s, asked), last) for s in _steps(case, fixed))
    days = max(needed_days(case), (fixed.out - fixed.into_cure) / timedelta(days=1))
    steps = tuple(sorted(settled, key=lambda s: (s.due, ORDER[s.kind])))
    return Plan(steps, fixed.serve, case.setup.deadline, days)


def _first_asked(case: Case, fixed: Anchors) -> Mapping[str, datetime]:
    """When the steps whose turn comes by the hour were asked for first; none of them is a wait, a chill or a meal."""
    return {s.key: s.due for s in (*_cure_steps(case, fixed), *_fire_steps(case, fixed)) if s.kind in TURN}


def _steps(case: Case, fixed: Anchors) -> Iterator[Step]:
    yield from _cure_steps(case, fixed)
    yield from _wait_steps(case, fixed)
    yield from _fire_steps(case, fixed)
    yield from _cold_steps(case, fixed) if case.chilled else _hot_steps(fixed)
    yield from _meal_steps(case, fixed)


def _cure_steps(case: Case, fixed: Anchors) -> Iterator[Step]:
    if case.setup.frozen:
        yield Step("thaw", Kind.THAW, fixed.thaw, minutes=case.durations.thaw * 60)
    yield Step("brine", Kind.BRINE, fixed.brine, minutes=30)
    if case.needs_brine:
        yield Step("brine_check", Kind.BRINE_CHECK, fixed.into_cure - timedelta(minutes=15), minutes=5)
    yield Step("into_cure", Kind.INTO_CURE, fixed.into_cure, minutes=20)
    clock = Urgency.PIERCING if by_the_clock(case.setup) else Urgency.NORMAL
    yield Step("out", Kind.OUT, fixed.out, clock, minutes=10)
    yield Step("rinse", Kind.RINSE, fixed.out + timedelta(minutes=10), minutes=20)
    yield from _after_rinse(case, fixed)


def _after_rinse(case: Case, fixed: Anchors) -> Iterator[Step]:
    """A soak and a sealed rest where they were asked for, and the drying."""
    setup, rinsed = case.setup, fixed.out + timedelta(minutes=30)
    dry = dries_from(case, fixed.out) + timedelta(minutes=30)
    if setup.soak_hours:
        yield Step("soak", Kind.SOAK, rinsed, Urgency.PIERCING, minutes=setup.soak_hours * 60)
    if setup.rest_days:
        sealed = case.done("even") or dry - timedelta(days=setup.rest_days)
        yield Step("even", Kind.EVEN, sealed, minutes=setup.rest_days * 1440)
    if case.dry_hours:
        yield Step("dry", Kind.DRY, dry, minutes=case.dry_hours * 60)


def _wait_steps(case: Case, fixed: Anchors) -> tuple[Step, ...]:
    curing = _while_it_cures(case.wall, (fixed.into_cure, fixed.out), case.flip_hours)
    return (*curing, *_while_it_rests(case, fixed), *_while_it_is_warm(case))


def _while_it_rests(case: Case, fixed: Anchors) -> Iterator[Step]:
    """The fridge is read every morning of a sealed rest too, and from a day of drying on: there are no flips then.

    A fire that nobody tells of may not burn: the mornings behind it are asked for too, until it does.
    """
    sealed = dries_from(case, fixed.out) if case.setup.rest_days else fixed.out
    may_wait = case.done("out") is not None and not any_sign(case)
    fire = fixed.light + (A_LATE_FIRE if may_wait else timedelta(0))
    day = case.wall.day(fixed.out)
    while (day := day + timedelta(days=1)) <= case.wall.day(max(sealed, fire)):
        check = case.wall.awake(case.wall.at(day, case.flip_hours[0] if case.flip_hours else time(8, 0)))
        if day <= case.wall.day(sealed) or fixed.out + timedelta(days=1) < check < fire:
            yield Step(f"fridge_check/{day:%Y%m%d}", Kind.FRIDGE_CHECK, check, Urgency.QUIET, minutes=1)


def _while_it_is_warm(case: Case) -> Iterator[Step]:
    """A fridge that was read too warm is read again before its two hours are over, by night too."""
    if at := case.progress.warm_at:
        yield Step(f"fridge_check/{at:%Y%m%d%H%M}", Kind.FRIDGE_CHECK, at + WARM_AGAIN, Urgency.PIERCING, minutes=1)


@lru_cache(maxsize=64)  # they hang on the time at which it is in the cure, and on no other
def _while_it_cures(wall: Wall, between: tuple[datetime, datetime], hours: tuple[time, ...]) -> tuple[Step, ...]:
    """Flips at the person's hours, or once they wake, and a fridge reading with the first, so one may be missed."""
    into, out = between
    first, last = into + FIRST_FLIP_AFTER, out - LAST_FLIP_BEFORE
    day, found = wall.day(into), list[Step]()
    while wall.at(day, time(0, 0)) <= last:
        for place, clock in enumerate(hours):
            due = wall.awake(wall.at(day, clock))
            if first <= due <= last:
                found.append(Step(f"flip/{day:%Y%m%d}{chr(97 + place)}", Kind.FLIP, due, Urgency.QUIET, minutes=2))
        check = wall.awake(wall.at(day, hours[0] if hours else time(8, 0)))
        if first <= check <= last:
            found.append(Step(f"fridge_check/{day:%Y%m%d}", Kind.FRIDGE_CHECK, check, Urgency.QUIET, minutes=1))
        day += timedelta(days=1)
    if out - into >= timedelta(days=4):
        half = wall.next_at(time(18, 0), into + (out - into) / 2)
        found.append(Step("mid_check", Kind.MID_CHECK, half, minutes=5))
    return tuple(found)


def _fire_steps(case: Case, fixed: Anchors) -> Iterator[Step]:
    rub = fixed.on - timedelta(hours=case.product.hours.rub_rest, minutes=15)
    if case.product.rub_g_per_kg:
        yield Step("rub", Kind.RUB, rub, Urgency.PIERCING, minutes=case.product.hours.rub_rest * 60)
    yield Step("light", Kind.LIGHT, fixed.light, Urgency.PIERCING, minutes=case.durations.lighting * 60)
    yield Step("meat_on", Kind.MEAT_ON, fixed.on, Urgency.PIERCING, minutes=5)
    on_the_fire = case.done("meat_on") and not any(map(case.done, AFTER_THE_FIRE))
    if on_the_fire and fixed.off.p50 - case.now > READY_SOON:
        asked = case.progress.next_reading or fixed.on + ASK_FOR_READING
        yield Step(f"reading/{case.progress.readings + 1}", Kind.READING, asked, Urgency.PIERCING, minutes=1)
    if case.setup.wrap != "none":
        wrap = case.progress.wrap_at or fixed.on + (fixed.off.p50 - fixed.on) * 0.55
        yield Step("wrap", Kind.WRAP, wrap, Urgency.PIERCING, minutes=5)
    yield Step(
        "off", Kind.OFF, fixed.off.p50, Urgency.PIERCING, early=fixed.off.p10, late=fixed.off.p90, minutes=5
    )  # fmt: skip
    yield Step("rest", Kind.REST, fixed.off.p50 + timedelta(minutes=5), Urgency.PIERCING)


def _cold_steps(case: Case, fixed: Anchors) -> Iterator[Step]:
    """The chill clock starts at 60 °C; the checks are asked for at the limits of the cooling rule."""
    below = case.progress.from_54c or fixed.chill
    yield Step("chill", Kind.CHILL, fixed.chill, Urgency.PIERCING, minutes=10)
    first, last = below + STAGE_ONE - timedelta(minutes=15), min(below + WHOLE_COOLING, fixed.cold)
    if first < last:  # otherwise the one reading answers both
        yield Step("chill_check/27", Kind.CHILL_CHECK, first, Urgency.PIERCING)
    yield Step("chill_check/4", Kind.CHILL_CHECK, last, Urgency.PIERCING)
    yield Step("slice", Kind.SLICE, fixed.slice, minutes=30)


def _hot_steps(fixed: Anchors) -> Iterator[Step]:
    yield Step("slice", Kind.SLICE, fixed.slice, Urgency.PIERCING, minutes=30)


def _meal_steps(case: Case, fixed: Anchors) -> Iterator[Step]:
    cooked = case.wall.day(fixed.off.p50)  # keeping counts from the heat: a slow chill adds nothing
    yield Step("serve", Kind.SERVE, fixed.serve)
    yield Step("use_by", Kind.USE_BY, case.wall.at(cooked + timedelta(days=case.durations.keep_days), time(12, 0)))
    yield Step("debrief", Kind.DEBRIEF, case.wall.awake(fixed.serve + timedelta(hours=4)))


def _asked(case: Case, step: Step, asked: Mapping[str, datetime]) -> Step:
    """A step whose turn has come keeps the time at which it was first asked for; only what follows it is pushed.

    Otherwise it would fall due anew whenever the plan is derived, and be asked for again and again.
    """
    waits_for = TURN.get(step.kind)
    first = asked.get(step.key, step.due)
    if waits_for is None or first > case.now or not (waits_for == "" or case.done(waits_for)):
        return step
    return but(step, due=min(step.due, first))


def _furthest(case: Case) -> int:
    """The place in the week of the furthest step that was done."""
    done = [Kind(key.split("/")[0]) for key in case.progress.done]
    return max((ORDER[kind] for kind in done if kind not in REPEATED), default=-1)


def _settled(case: Case, step: Step, furthest: int) -> Step:
    """The step with its state: done, skipped, put off, passed over by a later one, due or ahead."""
    done_at = case.done(step.key)
    if done_at is not None:
        return but(step, state=State.DONE, done_at=done_at)
    cooled = step.kind is Kind.CHILL_CHECK and step.key.split("/")[1] in case.progress.cooled
    passed = (ORDER[step.kind] < furthest and not _goes_on(case, step, furthest)) or _stale(case, step)
    if step.key in case.progress.skipped or passed or cooled:
        return but(step, state=State.SKIPPED)
    step = _put_off(case, step)
    return but(step, within=within(case, step), state=State.DUE if step.due <= case.now else State.AHEAD)


def _goes_on(case: Case, step: Step, furthest: int) -> bool:
    """What no later step passes over: readings on the fire, the fridge while it dries, a thaw beside its brine."""
    if step.kind is Kind.THAW:
        return furthest < ORDER[Kind.INTO_CURE]
    out = case.done("out")
    rests = step.kind is Kind.FRIDGE_CHECK and out is not None and step.due > out and not any_sign(case)
    return step.kind is Kind.READING or rests


def _stale(case: Case, step: Step) -> bool:
    due = max(step.due, case.progress.snoozed.get(step.key, step.due))
    return step.kind in (Kind.FLIP, Kind.FRIDGE_CHECK) and case.now - due > FLIP_STALE


def _put_off(case: Case, step: Step) -> Step:
    until = case.progress.snoozed.get(step.key)
    return step if until is None or until < step.due else but(step, due=until, put_off=True)
