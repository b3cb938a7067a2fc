"""core.safety.come_up: the clocks on the way up, falls of the core, hours in the danger band."""

import pytest

from core.safety.come_up import COME_UP, REACH_140, danger_hours, falls, judge_climb
from core.safety.findings import Status
from tests.records import at, history


def test_come_up_counts_from_the_last_cold_reading_to_the_first_warm_one():
    """50 to 130 °F, FSIS 2021: readings between do not shorten it."""
    judged = judge_climb(COME_UP, history((0.0, 39.0), (0.5, 50.0), (3.0, 120.0), (4.0, 131.0)), at(0.0), at(5.0))
    assert (judged.status, judged.started, judged.hours) == (Status.PASSED, at(0.5), 3.5)
    assert judged.deadline == at(6.5)
    assert judged.deciding == history((0.5, 50.0), (4.0, 131.0))


def test_without_a_cold_reading_it_counts_from_the_fire():
    """Nobody read it cold: the clock starts when the meat went on."""
    judged = judge_climb(COME_UP, history((1.0, 51.0), (6.0, 130.0)), at(0.0), at(7.0))
    assert (judged.status, judged.started, judged.hours) == (Status.PASSED, at(0.0), 6.0)


@pytest.mark.parametrize(
    ("points", "now", "status"),
    [
        (((0.0, 39.0),), 0.0, Status.OPEN),
        (((0.0, 39.0), (3.0, 100.0)), 6.0, Status.OPEN),
        (((0.0, 39.0), (3.0, 100.0)), 6.01, Status.UNKNOWN),
        (((0.0, 39.0), (6.0, 129.9)), 6.0, Status.OPEN),
        (((0.0, 39.0), (6.01, 129.9)), 7.0, Status.FAILED),
        (((0.0, 39.0), (6.0, 130.0)), 9.0, Status.PASSED),
        (((0.0, 39.0), (6.01, 130.0)), 9.0, Status.UNKNOWN),
        (((0.0, 39.0), (6.5, 100.0), (7.0, 130.0)), 9.0, Status.FAILED),
    ],
)
def test_come_up_statuses(points, now, status):
    """Open while time is left; failed where a late reading is cold; unknown where only a reading is wanting."""
    assert judge_climb(COME_UP, history(*points), at(0.0), at(now)).status is status


def test_reach_140_counts_from_the_fire():
    """4 h from going on to the first reading at 140 °F, also when the core stayed cold for a while."""
    cold_start = history((1.0, 39.0), (4.0, 140.0))
    assert judge_climb(REACH_140, cold_start, at(0.0), at(5.0)).status is Status.PASSED
    assert judge_climb(REACH_140, history((4.5, 139.0)), at(0.0), at(5.0)).status is Status.FAILED
    assert judge_climb(REACH_140, history((4.5, 140.0)), at(0.0), at(5.0)).status is Status.UNKNOWN


def test_nobody_said_when_it_went_on():
    """Without a cold reading and without a start there is no clock."""
    judged = judge_climb(COME_UP, history((1.0, 100.0)), None, at(2.0))
    assert (judged.status, judged.started, judged.deadline, judged.hours) == (Status.UNKNOWN, None, None, 0.0)


@pytest.mark.parametrize(
    ("points", "started", "deciding"),
    [
        (((1.0, 50.0), (4.0, 131.0)), 1.0, ((1.0, 50.0), (4.0, 131.0))),
        (((1.0, 50.1), (4.0, 131.0), (4.5, 140.0)), None, ((4.0, 131.0),)),
        (((1.0, 60.0), (1.2, 50.0), (1.5, 45.0)), None, ((1.5, 45.0),)),  # it was warm before: that is no beginning
        ((), None, ()),
    ],
)
def test_a_first_cold_reading_stands_for_when_it_went_on(points, started, deciding):
    """Nobody said when that was."""
    judged = judge_climb(COME_UP, history(*points), None, at(5.0))
    assert judged.started == (None if started is None else at(started))
    assert (judged.deciding, judged.ended is None) == (history(*deciding), len(deciding) < 1 or deciding[-1][1] < 130.0)


def test_140_f_is_reached_once():
    """The trade's 4 h are to the first reading at 140 °F: what is read in the stall after it takes nothing up again."""
    judged = judge_climb(REACH_140, history((3.9, 141.0), (4.5, 139.0), (5.0, 145.0)), at(0.0), at(6.0))
    assert (judged.status, judged.hours, judged.ended) == (Status.PASSED, 3.9, history((3.9, 141.0))[0])


def test_readings_before_the_fire_and_after_now_do_not_count():
    """What was read of the raw meat, and what is said of tomorrow, is left out."""
    judged = judge_climb(COME_UP, history((-2.0, 45.0), (3.0, 131.0), (9.0, 131.0)), at(0.0), at(2.0))
    assert (judged.status, judged.started) == (Status.OPEN, at(0.0))


def test_a_fall_is_measured_from_hot_to_hot():
    """From the last reading at 140 °F to the first at 140 °F again: nothing between is hoped for."""
    fell = falls(history((3.0, 139.0), (4.0, 151.0), (5.0, 125.0), (5.5, 129.0), (6.0, 145.0)), at(9.0))
    assert [(f.hot, f.lowest, f.again, f.hours) for f in fell] == [
        (*history((4.0, 151.0), (5.0, 125.0), (6.0, 145.0)), 2.0)
    ]


def test_a_core_that_is_still_down_counts_to_now():
    """Not yet back: it counts up to now."""
    (fell,) = falls(history((4.0, 140.0), (5.0, 129.0)), at(7.0))
    assert (fell.again, fell.hours) == (None, 3.0)
    (at_the_moment,) = falls(history((4.0, 140.0), (5.0, 129.0)), at(5.0))
    assert at_the_moment.hours == 1.0


@pytest.mark.parametrize("lowest", [130.0, 139.9])
def test_the_stall_is_no_fall(lowest):
    """From 130 °F up nothing grows, and a core in the stall hovers about 140 °F."""
    assert falls(history((4.0, 141.0), (5.0, lowest), (8.0, 141.0)), at(9.0)) == ()


def test_the_way_up_is_no_fall():
    """Before the first reading at 140 °F there is nothing to fall from."""
    assert falls(history((1.0, 60.0), (3.0, 120.0)), at(4.0)) == ()


def test_two_falls():
    """Each fall stands alone."""
    core = history((1.0, 140.0), (2.0, 100.0), (3.0, 140.0), (4.0, 110.0), (5.0, 150.0))
    assert [f.hours for f in falls(core, at(6.0))] == [2.0, 2.0]


@pytest.mark.parametrize(
    ("points", "at_most", "by_line"),
    [
        (((0.0, 40.0), (2.0, 140.0)), 2.0, 2.0),
        (((0.0, 20.0), (2.0, 60.0)), 2.0, 1.0),
        (((0.0, 120.0), (1.0, 160.0)), 1.0, 0.5),
        (((0.0, 150.0), (1.0, 160.0)), 0.0, 0.0),
        (((0.0, 30.0), (1.0, 40.0)), 0.0, 0.0),
        (((0.0, 100.0), (1.0, 100.0)), 1.0, 1.0),
        (((0.0, 140.0), (1.0, 140.0)), 0.0, 0.0),
        (((0.0, 40.0), (1.0, 40.0)), 0.0, 0.0),
        (((0.0, 160.0), (4.0, 0.0)), 4.0, 2.5),
    ],
)
def test_hours_in_the_danger_band(points, at_most, by_line):
    """By straight lines, and at most: an interval that touches the band counts whole."""
    found = danger_hours(history(*points))
    assert (found.at_most, pytest.approx(found.by_line)) == (at_most, by_line)


@pytest.mark.parametrize(
    ("points", "hours", "status"),
    [
        (((4.0, 131.0), (5.0, 105.0), (9.0, 100.0), (11.0, 131.0), (12.0, 165.0)), 11.0, Status.FAILED),
        (((4.0, 131.0), (4.5, 131.0), (9.0, 60.0), (10.0, 131.0)), 9.5, Status.FAILED),  # 4 h, and 5.5 of the fall
        (
            ((4.0, 131.0), (4.5, 131.0), (9.0, 45.0), (10.0, 131.0)),
            9.5,
            Status.FAILED,
        ),  # a fall past 50 °F starts nothing
        (((4.0, 131.0), (8.0, 125.0), (14.0, 128.0), (16.0, 150.0)), 16.0, Status.FAILED),
        (((5.9, 131.0), (5.95, 112.0), (5.97, 118.0), (8.0, 141.0)), 8.0, Status.UNKNOWN),  # three spots of one look
        (((5.0, 131.0), (5.5, 129.9), (6.0, 130.0)), 6.0, Status.PASSED),
        (((5.0, 131.0), (5.5, 129.9), (6.01, 130.0)), 6.01, Status.UNKNOWN),
        (((5.0, 131.0), (7.0, 135.0), (7.5, 129.0), (8.0, 131.0)), 6.0, Status.PASSED),  # above 130 °F nothing counts
        (((5.0, 141.0), (6.5, 129.0), (7.0, 141.0)), 7.0, Status.FAILED),  # the fall from 140 °F comes to the way up
        (((4.0, 141.0), (5.0, 145.0), (5.5, 125.0), (6.5, 141.0)), 5.5, Status.PASSED),
    ],
)
def test_the_six_hours_are_a_total(points, hours, status):
    """All the time between 50 and 130 °F together is 6 h at most (FSIS-GD-2021, Revised Appendix A, Come-Up-Time)."""
    judged = judge_climb(COME_UP, history((0.0, 39.0), *points), at(0.0), at(17.0))
    assert (judged.status, judged.hours) == (status, pytest.approx(hours))


def test_what_decides_is_the_reading_that_was_too_cold_past_the_limit():
    """And not the one by which it was warm enough in the end."""
    core = history((0.0, 39.0), (5.0, 100.0), (6.5, 120.0), (7.0, 125.0), (8.0, 150.0))
    assert judge_climb(COME_UP, core, at(0.0), at(9.0)).deciding == (core[0], core[2])
    assert judge_climb(COME_UP, core[:2], at(0.0), at(5.5)).deciding == (core[0], core[1])
    assert judge_climb(COME_UP, core[:1], at(0.0), at(5.5)).deciding == core[:1]
