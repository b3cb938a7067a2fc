"""Laws of the reminders: who sleeps is let sleep, what is done is not asked for, and the same plan asks the same."""

from collections import Counter
from datetime import timedelta

from hypothesis import given
from hypothesis import strategies as st

from core.plan.case import Case
from core.plan.reminders import FLIP_AND_FRIDGE, Pause, Wanted, wanted
from core.plan.schedule import schedule
from core.plan.steps import Kind, Plan, State, Urgency
from tests.weeks import cases, did, later

HOUR = timedelta(hours=1)


def asked(case: Case) -> tuple[Wanted, ...]:
    return wanted(schedule(case), case.wall)


def curing(case: Case) -> Case:
    """The same batch once the meat is in the cure, at the hour that was planned."""
    for key in ("brine", "into_cure"):
        step = schedule(case).step(key)
        assert step is not None
        case = did(case, key, hours=max((step.due - case.now) / HOUR, 0.0))
    return case


def flips(plan: Plan) -> Counter[str]:
    return Counter(step.key[5:13] for step in plan.of_kind(Kind.FLIP))


@given(cases(deadlines=True))
def test_nobody_is_woken_for_what_can_wait(case: Case) -> None:
    """In every zone, at every clock change, only what is piercing comes in the quiet hours."""
    assert [w for w in asked(case) if w.urgency is not Urgency.PIERCING and case.wall.quiet(w.due_at)] == []


@given(cases())
def test_fire_and_chill_do_not_wait_for_the_morning(case: Case) -> None:
    """What is piercing is said at the time of its step, whatever the hour."""
    plan = schedule(case)
    due = {s.key: s.due for s in plan.steps if s.urgency is Urgency.PIERCING}
    first = [w for w in wanted(plan, case.wall) if w.urgency is Urgency.PIERCING and w.occurrence == 0]
    assert {w.step: w.due_at for w in first} == {w.step: due[w.step] for w in first}
    assert "light" in {w.step for w in first}
    lit = wanted(schedule(did(case, "light")), case.wall)
    assert {"meat_on", "off"} <= {w.step for w in lit}


@given(cases(deadlines=True))
def test_a_reminder_is_never_early(case: Case) -> None:
    """A reminder comes when its step is due, or later; the one repeat comes after the first."""
    plan = schedule(case)
    for first in wanted(plan, case.wall):
        step = plan.step(first.step)
        assert step is not None
        assert first.due_at >= step.due


@given(cases())
def test_each_reminder_is_wanted_once(case: Case) -> None:
    """Step, kind and occurrence name one reminder, and there is at most one repeat."""
    keys = [(w.step, w.kind, w.occurrence) for w in asked(case)]
    assert len(keys) == len(set(keys))
    assert {occurrence for _, _, occurrence in keys} <= {0, 1}


@given(cases())
def test_two_things_at_one_hour_are_one_message(case: Case) -> None:
    """A flip and a fridge reading at the same time are asked for together; no fridge reading is lost by it."""
    plan = schedule(curing(case))
    spoken = wanted(plan, case.wall)
    checks = {s.due for s in plan.of_kind(Kind.FRIDGE_CHECK) if s.state in (State.AHEAD, State.DUE)}
    said = {s.due for w in spoken if w.kind in (FLIP_AND_FRIDGE, Kind.FRIDGE_CHECK) and (s := plan.step(w.step))}
    assert said == checks
    quiet = [w.due_at for w in spoken if w.kind in (FLIP_AND_FRIDGE, Kind.FRIDGE_CHECK)]
    assert len(quiet) == len(checks)


@given(cases(), st.data())
def test_what_is_done_is_not_asked_for(case: Case, data: st.DataObject) -> None:
    """No reminder waits for a step that was done or passed over."""
    for key in ("brine", "into_cure", "out", "rinse", "dry"):
        step = schedule(case).step(key)
        assert step is not None
        case = did(case, key, hours=max((step.due - case.now) / HOUR, 0.0) + data.draw(st.floats(0.0, 8.0)))
        plan = schedule(case)
        waiting = {s.key for s in plan.steps if s.state in (State.AHEAD, State.DUE)}
        assert {w.step for w in wanted(plan, case.wall)} <= waiting
        assert key not in {w.step for w in wanted(plan, case.wall)}


@given(cases(), st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_reminders_converge(case: Case, early: float, late: float) -> None:
    """While nothing happens in the cure, deriving again later asks for the same things at the same times."""
    start = curing(case)
    (out,) = schedule(start).of_kind(Kind.OUT)
    span = (out.due - start.now) / HOUR
    sooner, after = (later(start, hours=share * span) for share in sorted((early, late)))
    ahead = [w for w in asked(sooner) if w.due_at > after.now]
    assert [w for w in asked(after) if w.due_at > after.now] == ahead


@given(cases())
def test_it_is_flipped_about_twice_a_day(case: Case) -> None:
    """In the cure the bag is flipped twice a local day, at the person's hours, and never more often."""
    plan = schedule(curing(case))
    (into,), (out,) = plan.of_kind(Kind.INTO_CURE), plan.of_kind(Kind.OUT)
    by_day = flips(plan)
    assert max(by_day.values(), default=0) <= 2
    assert abs(sum(by_day.values()) - 2 * (out.due - into.due) / timedelta(days=1)) <= 2.0
    whole = [day for day in by_day if f"{case.wall.day(into.due):%Y%m%d}" < day < f"{case.wall.day(out.due):%Y%m%d}"]
    assert all(by_day[day] == 2 for day in whole)


@given(cases(), st.floats(0.0, 200.0))
def test_a_pause_holds_back_what_can_wait(case: Case, hours: float) -> None:
    """While it lasts only fire, chill and safety speak; when it ends the rest does, none of it lost."""
    plan, until = schedule(case), case.now + timedelta(hours=hours)
    held = wanted(plan, case.wall, pause=Pause(until=until))
    free = wanted(plan, case.wall)
    assert [w for w in held if w.due_at < until and w.urgency is not Urgency.PIERCING] == []
    assert sorted((w.step, w.occurrence) for w in held) == sorted((w.step, w.occurrence) for w in free)
    rest = wanted(plan, case.wall, pause=Pause())
    assert rest == tuple(w for w in free if w.urgency is Urgency.PIERCING)
