"""core.safety.cooling: readings against the rules, and the policy of docs/science/safety.md."""

import pytest

from core.errors import Missing, OutOfRange
from core.safety.cooling import judge_cooling, together
from core.safety.findings import Outcome, Status
from tests.records import at, history

NOW = at(48.0)


def _kind(*points, centre=None, ascorbate=None, now=NOW):
    return judge_cooling(history(*points), centre, ascorbate, now).kind


@pytest.mark.parametrize("centre", [None, 0.0, 60.0, 150.0])
@pytest.mark.parametrize(
    "points",
    [
        ((0.0, 140.0), (0.5, 130.0), (2.0, 80.0), (7.0, 40.0)),
        ((0.0, 140.0), (0.5, 135.0), (2.5, 70.0), (6.5, 41.0)),
    ],
)
def test_either_rule_makes_it_safe_cured_or_not(points, centre):
    """130-80-40 or 135-70-41 is enough, whatever the meat holds."""
    assert _kind(*points, centre=centre) is Outcome.SAFE


def test_in_the_15_h_row_only():
    """A centre of 100 mg/kg and 130 to 80 °F in 3 h: cannot say, and never safe without ascorbate."""
    slow = ((0.0, 130.0), (3.0, 80.0), (12.0, 45.0))
    assert _kind(*slow, centre=120.0) is Outcome.CANNOT_SAY
    assert _kind(*slow, centre=120.0, ascorbate=250.0) is Outcome.SAFE
    assert _kind(*slow, centre=60.0) is Outcome.THROW_AWAY
    assert _kind(*slow, centre=0.0, ascorbate=550.0) is Outcome.THROW_AWAY


def test_an_unknown_centre_is_never_safe():
    """Whether the row applies is not known: cannot say inside it, throw away outside."""
    assert _kind((0.0, 130.0), (3.0, 80.0), (12.0, 45.0)) is Outcome.CANNOT_SAY
    assert _kind((0.0, 130.0), (6.0, 90.0), (20.0, 45.0)) is Outcome.THROW_AWAY


def test_outside_every_row():
    """Over 5 h from 130 to 80 °F: throw away, cured or not."""
    assert _kind((0.0, 130.0), (6.0, 81.0), (7.0, 60.0), (9.0, 40.0), centre=150.0) is Outcome.THROW_AWAY


def test_120_80_55_alone_does_not_grant():
    """The policy grants two rules; this one is shown, and the answer is "cannot say"."""
    points = ((0.0, 130.0), (1.0, 120.0), (2.0, 80.0), (6.5, 55.0), (12.0, 40.0))
    found = judge_cooling(history(*points), 0.0, None, NOW)
    assert found.of("120-80-55").clock is Status.PASSED
    assert (found.kind, found.decided_by.rule.key) == (Outcome.CANNOT_SAY, "120-80-55")


def test_eight_pm_140_and_80_at_half_past_eleven():
    """3.5 h: fails the uncured rules, is inside the cured one; throw away if it is not cured in the middle."""
    points = ((0.0, 140.0), (3.5, 80.0))
    assert _kind(*points, centre=0.0, now=at(3.5)) is Outcome.THROW_AWAY
    assert _kind(*points, centre=120.0, now=at(3.5)) is Outcome.CANNOT_SAY
    open_row = judge_cooling(history(*points), 120.0, None, at(3.5)).of("130-80-45 cured 1999")
    assert [s.status for s in open_row.stages] == [Status.PASSED, Status.OPEN]


def test_while_it_runs():
    """Hot: not yet, with the deadline of the stage that runs out first under the first rule that is open."""
    found = judge_cooling(history((0.0, 140.0), (0.4, 131.0)), 0.0, None, at(1.0))
    assert found.kind is Outcome.NOT_YET
    assert found.decided_by.rule.key == "130-80-40"
    assert found.next_stage is not None
    assert (found.next_stage.stage.to_f, found.next_stage.deadline) == (80.0, at(1.9))
    assert found.deciding == history((0.4, 131.0))


def test_the_other_rule_takes_over():
    """130-80-40 is lost, 135-70-41 not yet: its own deadline is given."""
    found = judge_cooling(history((0.0, 136.0), (0.2, 129.0), (1.8, 81.0)), 0.0, None, at(1.85))
    assert (found.kind, found.decided_by.rule.key) == (Outcome.NOT_YET, "135-70-41")
    assert found.next_stage is not None
    assert (found.next_stage.stage.to_f, found.next_stage.deadline) == (70.0, at(2.0))


def test_the_second_stage():
    """After 80 °F in time the next limit is 40 °F, 5 h after the last reading at 80 °F or above."""
    found = judge_cooling(history((0.0, 130.0), (1.0, 90.0), (1.4, 79.0)), 0.0, None, at(2.0))
    assert found.next_stage is not None
    assert (found.next_stage.stage.to_f, found.next_stage.deadline) == (40.0, at(6.0))


def test_nobody_looked():
    """The deadline passed without a reading: it cannot be shown, and is not called failed."""
    found = judge_cooling(history((0.0, 140.0)), 0.0, None, at(5.0))
    assert (found.kind, found.of("130-80-40").status) == (Outcome.CANNOT_SAY, Status.UNKNOWN)


def test_a_late_reading_that_may_have_been_in_time():
    """41 °F after 5 h missed 80 °F even by the line; 60 °F after 1.6 h may have met it, and cannot be shown."""
    assert judge_cooling(history((0.0, 130.0), (5.0, 41.0)), 0.0, None, NOW).of("130-80-40").status is Status.FAILED
    near = judge_cooling(history((0.0, 130.0), (1.6, 60.0), (5.0, 40.0)), 0.0, None, NOW)
    assert near.of("130-80-40").stages[0].status is Status.UNKNOWN
    assert near.of("130-80-40").stages[0].hours_at_most == 1.6
    assert near.of("130-80-40").stages[0].hours_by_line == pytest.approx(1.6 * 50.0 / 70.0)


def test_heating_again_starts_no_new_clock():
    """Too slow to 80 °F, then heated to 165 °F and chilled fast: the first cooling still decides."""
    points = ((0.0, 130.0), (4.0, 85.0), (4.5, 165.0), (4.8, 129.0), (5.5, 79.0), (8.0, 39.0))
    assert _kind(*points, centre=0.0) is Outcome.THROW_AWAY
    again = ((0.0, 130.0), (4.0, 85.0), (4.5, 140.0), (5.0, 70.0), (5.5, 39.0))
    assert _kind(*again, centre=0.0) is Outcome.THROW_AWAY
    slowly = ((0.0, 150.0), (0.1, 129.0), (0.2, 135.0), (0.3, 141.0), (1.4, 79.0), (5.0, 39.0))
    assert _kind(*slowly, centre=0.0) is not Outcome.SAFE
    stirred = ((0.0, 136.0), (0.1, 129.0), (0.2, 139.9), (1.0, 79.0), (1.1, 69.0), (2.0, 39.0))
    assert _kind(*stirred, centre=0.0) is Outcome.SAFE


def test_the_reheat_of_the_next_day_is_no_cooling():
    """What was cold stays judged when it is warmed for the table."""
    points = ((0.0, 130.0), (1.0, 80.0), (4.0, 39.0), (30.0, 165.0))
    assert _kind(*points, centre=0.0) is Outcome.SAFE


def test_the_warmest_spot_counts():
    """Two spots at once: 78 and 84 °F at the limit is 84 °F."""
    points = ((0.0, 130.0), (1.5, 78.0), (1.5, 84.0), (2.0, 79.0), (5.0, 40.0))
    assert judge_cooling(history(*points), 0.0, None, NOW).of("130-80-40").status is not Status.PASSED


def test_a_limit_is_over_only_when_no_reading_is_above_it_again():
    """79 °F and then 83 °F: the stage ends at the last crossing."""
    points = ((0.0, 130.0), (1.0, 79.0), (1.4, 83.0), (1.6, 78.0), (4.0, 40.0))
    assert judge_cooling(history(*points), 0.0, None, NOW).of("130-80-40").stages[0].status is not Status.PASSED


def test_meat_that_was_never_read_so_warm():
    """Cooked to 132 °F: the 135 °F clock starts at the reading before the warmest."""
    points = ((-0.5, 128.0), (0.0, 132.0), (1.0, 70.0), (3.0, 40.0))
    stage = judge_cooling(history(*points), 0.0, None, NOW).of("135-70-41").stages[0]
    assert stage.started == history((-0.5, 128.0))[0]


def test_no_reading_no_verdict():
    """An empty record cannot be judged."""
    found = judge_cooling((), 150.0, 300.0, NOW)
    assert (found.kind, found.deciding) == (Outcome.CANNOT_SAY, ())
    assert (found.stage.hours_at_most, found.stage.hours_by_line, found.stage.deadline) == (0.0, 0.0, None)


def test_bad_readings_are_refused():
    """As everywhere: no zone, no number."""
    with pytest.raises(OutOfRange):
        judge_cooling([(at(0.0), float("nan"))], None, None, NOW)
    with pytest.raises(Missing):
        judge_cooling([(at(0.0).replace(tzinfo=None), 60.0)], None, None, NOW)


def test_together():
    """Failed beats unknown beats open beats passed."""
    order = [Status.PASSED, Status.OPEN, Status.UNKNOWN, Status.FAILED]
    for i, status in enumerate(order):
        assert together(order[: i + 1]) is status
    assert together([]) is Status.PASSED


@pytest.mark.parametrize(
    ("points", "rule", "place", "hours"),
    [
        (((0.0, 120.0), (0.5, 80.0)), "120-80-55", 0, 0.5),  # less than an hour is said as it is
        (((-0.5, 128.0), (0.0, 132.0), (1.0, 70.0)), "135-70-41", 0, 1.5),  # rising to the warmest: from the first
        (((0.0, 132.0), (1.0, 70.0)), "135-70-41", 0, 1.0),  # the warmest is the first: no time before it
        (((0.0, 130.4), (1.0, 129.6), (2.0, 79.6)), "130-80-40", 0, 0.5 + 49.6 / 50.0),  # a fall of under a degree
        (((0.0, 130.0), (1.0, 100.0), (1.4, 90.0), (1.6, 70.0)), "130-80-40", 0, 1.5),  # over its last two readings
    ],
)
def test_hours_by_straight_lines(points, rule, place, hours):
    """From where the line passes the start to where it passes the limit, between the two readings about each."""
    stage = judge_cooling(history(*points), None, None, at(2.5)).of(rule).stages[place]
    assert stage.hours_by_line == pytest.approx(hours)


def test_never_so_warm_starts_one_reading_before_the_warmest():
    """Not two: the reading next to the warmest bounds it."""
    points = ((-1.0, 100.0), (-0.5, 128.0), (0.0, 129.0), (1.0, 70.0))
    stage = judge_cooling(history(*points), 0.0, None, NOW).of("130-80-40").stages[0]
    assert stage.started == history((-0.5, 128.0))[0]


@pytest.mark.parametrize(
    "before",
    [
        ((-1.0, 120.0), (-0.6, 150.0)),  # cold when it came off, as the probe was put in: no fall
        ((-0.8, 160.0), (-0.6, 150.0), (-0.4, 145.0)),  # it rests above 140 °F: no fall either
        ((-0.8, 141.0), (-0.6, 130.0), (-0.4, 141.0)),  # 130 °F itself is not below
    ],
)
def test_what_is_no_second_heating(before):
    """Only what was below 130 °F after it had been there, and is read at 140 °F again, was heated again."""
    points = (*before, (0.0, 130.0), (1.5, 80.0), (6.5, 40.0))
    assert _kind(*points, centre=0.0) is Outcome.SAFE
