"""Laws of the plan: what holds for every batch, zone, season and hour."""

from dataclasses import replace
from datetime import timedelta
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from core.plan.case import Case
from core.plan.schedule import ORDER, schedule
from core.plan.steps import Kind, Plan, State
from tests.weeks import cases, did, due_in, later, too_soon

# what is done by the cook's hands, one thing after the other; each ends before the next one begins
CHAIN = (
    Kind.BRINE,
    Kind.BRINE_CHECK,
    Kind.INTO_CURE,
    Kind.OUT,
    Kind.RINSE,
    Kind.DRY,
    Kind.MEAT_ON,
    Kind.OFF,
    Kind.SLICE,
    Kind.SERVE,
)
WORK = {Kind.BRINE, Kind.BRINE_CHECK, Kind.OUT, Kind.RINSE, Kind.MEAT_ON, Kind.OFF, Kind.SLICE}


def chain(plan: Plan) -> list:
    return [s for kind in CHAIN for s in plan.of_kind(kind)]


@given(cases())
def test_a_plan_is_in_order_and_in_utc(case: Case) -> None:
    """Steps come in the order of their times, and every time is aware UTC."""
    plan = schedule(case)
    assert [s.due for s in plan.steps] == sorted(s.due for s in plan.steps)
    assert {s.due.utcoffset() for s in plan.steps} == {timedelta(0)}


@given(cases(deadlines=True))
def test_a_plan_for_a_meal_never_overlaps(case: Case) -> None:
    """The work of the hands goes in the order of the week, and no task begins before the one before it has ended."""
    steps = chain(schedule(case))
    for before, after in pairwise(steps):
        ends = before.due + timedelta(minutes=before.minutes if before.kind in WORK else 0)
        assert ends <= after.due, (before.key, after.key)


@given(cases())
def test_a_plan_without_a_meal_never_overlaps(case: Case) -> None:
    """The same where the week is laid forwards from now."""
    steps = chain(schedule(case))
    for before, after in pairwise(steps):
        ends = before.due + timedelta(minutes=before.minutes if before.kind in WORK else 0)
        assert ends <= after.due, (before.key, after.key)


@given(cases(deadlines=True))
def test_the_cure_is_never_shorter_than_needed(case: Case) -> None:
    """Between going in and coming out lie at least the days of the 90 % point, whatever the deadline."""
    plan = schedule(case)
    (into,), (out,) = plan.of_kind(Kind.INTO_CURE), plan.of_kind(Kind.OUT)
    assert out.due - into.due >= timedelta(days=case.durations.cure.p90) - timedelta(milliseconds=1)


@given(cases(deadlines=True))
def test_a_meal_that_is_planned_is_on_time(case: Case) -> None:
    """A plan that is given before the work begins is ready when it was asked for; otherwise it is refused."""
    assert schedule(case).late == timedelta(0)


@given(cases(), st.floats(0.0, 0.99))
def test_the_earliest_that_a_refusal_names_works(case: Case, share: float) -> None:
    """ "Too soon" names a time, and asking for that time gives a plan that serves then."""
    refused = too_soon(case, share * case.durations.cure.p90)
    assert refused is not None
    assert refused.earliest > refused.deadline
    again = schedule(replace(case, setup=case.setup.change({"deadline": refused.earliest})))
    assert again.serve == refused.earliest


@given(cases())
def test_nothing_is_asked_for_before_the_batch_was_begun(case: Case) -> None:
    """A plan that is new has no step in the past."""
    assert min(s.due for s in schedule(case).steps) >= case.now


@given(cases())
def test_keys_are_unique(case: Case) -> None:
    """No two steps of a plan have the same key, so a button means one of them."""
    keys = [s.key for s in schedule(case).steps]
    assert len(keys) == len(set(keys))


@given(cases(), st.floats(0.0, 200.0))
def test_a_step_once_asked_for_keeps_its_time(case: Case, hours: float) -> None:
    """While nobody says anything, a step that has fallen due stays due from then on: it is not asked for anew."""
    before = schedule(case)
    for ahead in (0.2 * hours, hours):
        after = schedule(later(case, hours=ahead))
        due = {
            s.key: s.due for s in before.steps if s.state is State.DUE and s.kind not in (Kind.FLIP, Kind.FRIDGE_CHECK)
        }
        assert {key: s.due for key in due if (s := after.step(key))} == due
        before = after


@given(cases(), st.floats(25.0, 40.0), st.floats(0.0, 1.0))
def test_a_start_that_was_planned_stays_planned(case: Case, days: float, share: float) -> None:
    """While nobody says anything and its day has not come, the day of the start does not move."""
    case = due_in(case, days)
    planned = schedule(case).step("into_cure")
    assert planned is not None
    # a minute more than the thaw: plans are laid out in whole minutes
    before = timedelta(hours=max(24.0, case.durations.thaw if case.setup.frozen else 0.0), minutes=1)
    then = replace(case, now=max(case.now, case.now + share * (planned.due - before - case.now)))
    assert schedule(then).step("into_cure") == planned


@given(cases(), st.data())
def test_a_plan_holds_through_the_week(case: Case, data: st.DataObject) -> None:
    """Done on time, late or early: what was done stands, nothing before it is asked for, and the order stays."""
    todo = [s.key for s in schedule(case).steps if s.kind in CHAIN]
    for key in todo:
        step = schedule(case).step(key)
        assert step is not None
        wait = max((step.due - case.now) / timedelta(hours=1), 0.0) + data.draw(
            st.sampled_from([0.0, 0.0, 0.5, 7.0, 30.0])
        )
        case = did(case, key, hours=wait)
        plan = schedule(case)
        done = plan.step(key)
        assert done is not None
        assert (done.state, done.due, done.done_at) == (State.DONE, case.now, case.now) or done.done_at == case.now
        waiting = [s for s in chain(plan) if s.state in (State.DUE, State.AHEAD)]
        assert all(ORDER[s.kind] > ORDER[Kind(key)] for s in waiting)
        assert [s.due for s in waiting] == sorted(s.due for s in waiting)


@given(cases(), st.floats(1.0, 60.0))
def test_late_out_pushes_the_fire(case: Case, late: float) -> None:
    """Taken out late, the meat goes on no sooner than planned, and never before it was taken out."""
    planned = schedule(case)
    (into,), (out,) = planned.of_kind(Kind.INTO_CURE), planned.of_kind(Kind.OUT)
    inside = did(case, "into_cure", hours=(into.due - case.now) / timedelta(hours=1))
    delayed = did(inside, "out", hours=(out.due - inside.now) / timedelta(hours=1) + late)
    plan = schedule(delayed)
    (on,), (before,) = plan.of_kind(Kind.MEAT_ON), schedule(inside).of_kind(Kind.MEAT_ON)
    assert on.due > delayed.now
    assert on.due >= before.due
