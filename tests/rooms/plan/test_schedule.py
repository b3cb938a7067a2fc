"""The week as steps: what is asked for, when, and what is passed over."""

from dataclasses import replace
from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest

from core.errors import TooLong, TooSoon
from core.plan.case import Case
from core.plan.schedule import schedule
from core.plan.steps import Band, Kind, Plan, State, Step, TimeBand
from tests.weeks import MONDAY, USUAL, VIENNA, case, did, later

HOUR = timedelta(hours=1)
SUNDAY_LUNCH = datetime(2027, 3, 14, 13, 0, tzinfo=ZoneInfo("Europe/Vienna")).astimezone(UTC)


def the(plan: Plan, key: str) -> Step:
    """The step of a key, which the plan has."""
    step = plan.step(key)
    assert step is not None, key
    return step


def local(step: Step) -> str:
    """When a step is due, as the wall in Vienna shows it."""
    return f"{step.due.astimezone(VIENNA.tz):%a %d %H:%M}"


def done_in_time(known: Case, *keys: str) -> Case:
    """The same batch with these steps done one after the other when they were due."""
    for key in keys:
        step = the(schedule(known), key)
        known = did(known, key, hours=max((step.due - known.now) / HOUR, 0.0))
    return known


def state(known: Case, key: str) -> State:
    return the(schedule(known), key).state


def test_a_week_for_a_sunday_lunch() -> None:
    """3.2 kg on a Monday for lunch on the Sunday after next: there is no room to wait, and the fire is on Saturday."""
    plan = schedule(case(deadline=SUNDAY_LUNCH))
    keys = ("brine", "into_cure", "out", "rinse", "dry", "light", "rub", "meat_on", "off", "slice", "serve", "use_by")
    assert [local(the(plan, key)) for key in keys] == [
        "Mon 01 08:00", "Mon 01 20:00", "Fri 12 17:00", "Fri 12 17:10", "Fri 12 17:30", "Sat 13 06:00",
        "Sat 13 06:15", "Sat 13 07:00", "Sat 13 17:00", "Sun 14 11:00", "Sun 14 13:00", "Tue 16 12:00",
    ]  # fmt: skip
    assert plan.late == timedelta(0)


def test_without_a_meal_the_week_begins_now() -> None:
    """No date was said: the brine is made now, and the meal is the first lunch after everything that has to be."""
    plan = schedule(case())
    assert local(the(plan, "brine")) == "Mon 01 08:00"
    assert local(the(plan, "into_cure")) == "Mon 01 20:00"
    assert local(the(plan, "out")) == "Tue 09 17:00"
    assert plan.cure_days >= USUAL.cure.p90


def test_an_early_meal_is_cooked_the_day_before_the_day_before() -> None:
    """Breakfast at seven leaves no night for the cold to set: the fire is lit two days before."""
    breakfast = SUNDAY_LUNCH - timedelta(hours=6)
    assert local(the(schedule(case(deadline=breakfast)), "meat_on")).startswith("Fri 12")


def test_lighting_the_fire_does_not_pass_over_the_rub() -> None:
    """The fire is lit first and the meat rubbed while it settles: each waits until it is done itself."""
    lit = done_in_time(case(), "brine", "into_cure", "out", "light")
    assert state(lit, "rub") is State.AHEAD
    rubbed = did(case(now=lit.now), "rub")
    assert state(replace(lit, progress=rubbed.progress), "light") is not State.SKIPPED


def test_looking_back_does_not_pass_over_the_use_by_date() -> None:
    """Who has told how it was is still told when the rest has to go."""
    told = done_in_time(case(), "brine", "into_cure", "out", "light", "meat_on", "off", "chill", "slice", "debrief")
    assert state(told, "use_by") is State.AHEAD


def test_meat_waits_for_the_fire_and_the_rub() -> None:
    """Lit or rubbed late, the meat goes on once the fire has settled and the rub has rested."""
    ready = done_in_time(case(), "brine", "into_cure", "out")
    planned = the(schedule(ready), "meat_on")
    lit = did(ready, "light", hours=(planned.due - ready.now) / HOUR + 2)
    on = the(schedule(lit), "meat_on")
    assert on.due == lit.now + timedelta(hours=USUAL.lighting)
    rubbed = did(lit, "rub", hours=0.9)
    on = the(schedule(rubbed), "meat_on")
    assert on.due == rubbed.now + timedelta(minutes=30)


def test_a_late_chill_pushes_the_meal_by_a_day_where_no_date_was_said() -> None:
    """What was not asked for at an hour is served at the next usual one."""
    off = done_in_time(case(), "brine", "into_cure", "out", "light", "meat_on", "off")
    soon = schedule(off)
    late = replace(off, progress=replace(off.progress, cold_at=soon.serve - HOUR))
    assert schedule(late).serve == soon.serve + timedelta(days=1)


def test_a_meal_that_was_asked_for_is_late_by_as_much_as_it_is() -> None:
    """With a date, the plan says by how much it misses it, and moves nothing else of the meal."""
    off = done_in_time(case(deadline=SUNDAY_LUNCH), "brine", "into_cure", "out", "light", "meat_on", "off")
    late = replace(off, progress=replace(off.progress, cold_at=SUNDAY_LUNCH - HOUR))
    plan = schedule(late)
    assert plan.late == timedelta(hours=9)  # an hour, and the night that it sets, and two to slice
    assert plan.wanted == SUNDAY_LUNCH


def test_the_chill_checks_stand_at_the_limits_of_the_rule() -> None:
    """FSIS cooling option 1: 130 to 80 °F in an hour and a half, on to 40 °F in five more; asked a little before."""
    warm = replace(USUAL, chill=20.0)
    plan = schedule(case(durations=warm))
    chill, first, last = (the(plan, key) for key in ("chill", "chill_check/27", "chill_check/4"))
    assert first.due - chill.due == timedelta(hours=1, minutes=15)
    assert last.due - chill.due == timedelta(hours=6, minutes=30)


def test_a_quick_chill_is_read_once() -> None:
    """Where it is cold before the first corner is due, one reading answers both."""
    plan = schedule(case(durations=replace(USUAL, chill=1.0)))
    assert [s.key for s in plan.of_kind(Kind.CHILL_CHECK)] == ["chill_check/4"]


def test_the_estimate_of_a_cook_moves_off_and_its_band() -> None:
    """Once the solver has readings, coming off follows its band, and the reading that it wants is asked for."""
    on = done_in_time(case(), "brine", "into_cure", "out", "light", "meat_on")
    ready = TimeBand(*(on.now + timedelta(hours=h) for h in (9, 11, 14)))
    told = replace(on, progress=replace(on.progress, ready=ready, next_reading=on.now + 3 * HOUR, readings=2))
    plan = schedule(told)
    off, reading = the(plan, "off"), the(plan, "reading/3")
    assert (off.early, off.due, off.late) == (ready.p10, ready.p50, ready.p90)
    assert reading.due == on.now + 3 * HOUR


def test_a_step_that_was_put_off_comes_then() -> None:
    """«Later» moves one step, and the order of the list with it."""
    until = MONDAY + timedelta(hours=3)
    put_off = replace(case(), progress=replace(case().progress, snoozed={"brine": until}))
    plan = schedule(put_off)
    brine = the(plan, "brine")
    assert (brine.due, brine.state) == (until, State.AHEAD)
    assert [s.due for s in plan.steps] == sorted(s.due for s in plan.steps)


def test_a_flip_that_is_hours_late_is_the_next_one() -> None:
    """A flip nobody answered for six hours is let go: the next one does."""
    inside = done_in_time(case(), "brine", "into_cure")
    flip = schedule(inside).of_kind(Kind.FLIP)[0]
    reached = later(inside, hours=(flip.due - inside.now) / HOUR)
    assert state(reached, flip.key) is State.DUE
    assert state(later(reached, hours=5.9), flip.key) is State.DUE
    assert state(later(reached, hours=6.1), flip.key) is State.SKIPPED


def test_a_flip_in_the_quiet_hours_comes_when_they_end() -> None:
    """Flips at six with quiet until seven are flips at seven, in the plan too."""
    early = replace(case(), flip_hours=(time(6, 0), time(20, 0)))
    inside = replace(done_in_time(early, "brine", "into_cure"), flip_hours=early.flip_hours)
    assert {local(s)[-5:] for s in schedule(inside).of_kind(Kind.FLIP)} == {"07:00", "20:00"}


def test_no_flips_where_the_person_wants_none() -> None:
    """Without flip hours nothing is flipped, and the fridge is still read."""
    plan = schedule(replace(case(), flip_hours=()))
    assert plan.of_kind(Kind.FLIP) == ()
    assert plan.of_kind(Kind.FRIDGE_CHECK) != ()


def test_too_soon_says_when() -> None:
    """A meal in three days for a cure of seven is refused with the first that works."""
    with pytest.raises(TooSoon) as refused:
        schedule(case(deadline=MONDAY + timedelta(days=3)))
    assert refused.value.cure_days_p90 == USUAL.cure.p90
    assert f"{refused.value.earliest.astimezone(VIENNA.tz):%a %d %H:%M}" == "Thu 11 13:00"


def test_a_promise_that_time_has_overtaken_is_late_and_not_refused() -> None:
    """A meal that could be had when it was said is still planned for when nobody acted: late, by how much."""
    asked = case(deadline=MONDAY + timedelta(days=11))
    slow = later(asked, hours=48)
    assert schedule(asked).late == timedelta(0)
    assert schedule(slow).late > timedelta(0)


def test_a_cure_past_the_longest_wants_a_word() -> None:
    """More than 21 days are planned only once the cook has confirmed them, or when the meat is in."""
    thick = replace(USUAL, cure=Band(15.0, 20.0, 26.0))
    with pytest.raises(TooLong) as refused:
        schedule(case(durations=thick))
    assert (refused.value.days, refused.value.limit_days) == (26.0, 21.0)
    assert schedule(case(durations=thick, long_cure_confirmed=True)).cure_days >= 26.0


def test_frozen_meat_thaws_first() -> None:
    """38 hours from Monday morning end in the night: the meat goes in on waking, and thawing begins 38 hours before."""
    plan = schedule(case(frozen=True, durations=replace(USUAL, thaw=38.0)))
    thaw, into = the(plan, "thaw"), the(plan, "into_cure")
    assert (local(thaw), local(into)) == ("Mon 01 17:00", "Wed 03 07:00")
