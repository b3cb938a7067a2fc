"""core.safety.fridge: 40 °F, part of a day at 41 to 44.6 °F, the two-hour rule (docs/science/safety.md)."""

import pytest

from core.safety.findings import Outcome, Rule, Status
from core.safety.fridge import Window, judge_brine, judge_fridge, two_hour_limit, warm_spells
from core.safety.incidents import judge_incident
from core.safety.record import Incident
from core.units import celsius_from_fahrenheit
from tests.records import at, brisket, history

WEEK = Window(at(0.0), at(96.0), at(96.0))


def _fridge(*points, window=WEEK):
    found = judge_fridge(history(*points), window)
    return found.status, found.means


def _days(fahrenheit):
    return tuple((24.0 * day, fahrenheit) for day in range(5))


@pytest.mark.parametrize("fahrenheit", [33.0, 38.0, 40.0])
def test_cold_every_day(fahrenheit):
    """Read each day at 40 °F or below: met."""
    assert _fridge(*_days(fahrenheit)) == (Status.PASSED, Outcome.SAFE)


@pytest.mark.parametrize("fahrenheit", [40.1, 41.0, 44.0, 44.6])
def test_a_little_warm_for_part_of_a_day_is_mended(fahrenheit):
    """Up to 44.6 °F (7 °C), between two cold readings within a day: fix and go on."""
    found = judge_fridge(history((0.0, 38.0), (12.0, fahrenheit), (24.0, 39.0), (60.0, 38.0), (96.0, 38.0)), WEEK)
    assert (found.status, found.means, found.advice) == (Status.PASSED, Outcome.SAFE, "fridge_colder")
    assert (found.value, found.limit) == (24.0, 24.0)


def test_a_little_warm_for_an_unknown_time():
    """Over a day between the cold readings: nobody can say how long; the hours are asked for."""
    found = judge_fridge(history((0.0, 38.0), (12.0, 43.0), (24.5, 39.0), (60.0, 38.0), (96.0, 38.0)), WEEK)
    assert (found.status, found.means, found.missing) == (Status.UNKNOWN, Outcome.CANNOT_SAY, "hours_above_40f")


def test_a_little_warm_for_more_than_a_day():
    """Shown above 40 °F for over a day by two readings: more than part of a day, and the line is the line."""
    assert _fridge((0.0, 38.0), (10.0, 43.0), (34.5, 42.0), (50.0, 38.0), (96.0, 38.0)) == (
        Status.FAILED,
        Outcome.THROW_AWAY,
    )


@pytest.mark.parametrize(
    ("fahrenheit", "hours", "status"),
    [
        (44.7, 2.0, Status.PASSED),
        (44.7, 2.1, Status.UNKNOWN),
        (60.0, 2.0, Status.PASSED),
        (89.9, 2.0, Status.PASSED),
        (90.0, 1.0, Status.PASSED),
        (90.0, 1.1, Status.UNKNOWN),
    ],
)
def test_above_7_c_the_two_hour_rule(fahrenheit, hours, status):
    """Above 44.6 °F two hours from cold to cold, one at 90 °F and above; longer cannot be shown to be in time."""
    cold = ((0.0, 38.0), (46.0, 38.0), (46.0 + hours, 38.0), (60.0, 38.0), (96.0, 38.0))
    found = judge_fridge(history(*cold, (46.0 + hours / 2.0, fahrenheit)), WEEK)
    assert found.status is status
    assert found.means is (Outcome.SAFE if status is Status.PASSED else Outcome.CANNOT_SAY)


def test_shown_warm_for_longer():
    """Two readings above 44.6 °F more than two hours apart: throw away."""
    assert _fridge((0.0, 38.0), (46.0, 50.0), (48.1, 47.0), (49.0, 38.0), (96.0, 38.0)) == (
        Status.FAILED,
        Outcome.THROW_AWAY,
    )


def test_a_warm_spell_that_still_runs():
    """43 °F now, cold three hours ago: go on, mend it, and read it again within the day."""
    window = Window(at(0.0), None, at(27.0))
    found = judge_fridge(history((0.0, 38.0), (24.0, 38.0), (26.0, 43.0)), window)
    assert (found.status, found.means, found.missing) == (Status.OPEN, Outcome.SAFE, "fridge_reading")
    assert found.deadline == at(48.0)


def test_of_two_readings_of_one_minute_the_warm_one_stands():
    """«it was 44, 39 now»: the cold one shows not when the warmth began, whichever of them is looked at first."""
    both = ((0.0, 38.0), (50.0, 39.0), (50.0, 44.0))
    assert _fridge(*both) == _fridge(*both[::-1]) == (Status.UNKNOWN, Outcome.CANNOT_SAY)
    brine = judge_brine(history(*both), WEEK)
    assert (brine.status, brine.missing) == (Status.UNKNOWN, "hours_above_40f")


def test_the_first_reading_is_warm():
    """Warm at the first look: it counts from when the meat went in."""
    (spell,) = warm_spells(history((30.0, 43.0), (31.0, 38.0)), WEEK)
    assert (spell.begins, spell.at_most, spell.at_least, spell.closed) == (at(0.0), 31.0, 0.0, True)


def test_the_worst_spell_decides():
    """A mended spell does not hide a long one."""
    assert _fridge((0.0, 38.0), (1.0, 43.0), (2.0, 38.0), (46.0, 50.0), (49.0, 50.0), (50.0, 38.0), (90.0, 38.0)) == (
        Status.FAILED,
        Outcome.THROW_AWAY,
    )


@pytest.mark.parametrize(
    ("points", "window", "status"),
    [
        ((), Window(at(0.0), None, at(24.0)), Status.OPEN),
        ((), Window(at(0.0), None, at(24.1)), Status.UNKNOWN),
        (((24.0, 38.0),), Window(at(0.0), None, at(84.0)), Status.PASSED),
        (((24.0, 38.0),), Window(at(0.0), None, at(84.1)), Status.UNKNOWN),
        (((60.1, 38.0),), Window(at(0.0), None, at(62.0)), Status.UNKNOWN),
        (((24.0, 38.0),), Window(at(0.0), at(96.0), at(200.0), vouched=True), Status.PASSED),
        ((), Window(at(0.0), at(96.0), at(96.0), vouched=True), Status.UNKNOWN),
    ],
)
def test_a_fridge_that_nobody_read(points, window, status):
    """A gap of over 60 h without a reading cannot be shown cold; the cook's word bridges gaps, not a total lack."""
    found = judge_fridge(history(*points), window)
    assert found.status is status
    assert found.means is (Outcome.CANNOT_SAY if status is Status.UNKNOWN else Outcome.SAFE)
    assert found.missing == ("" if status is Status.PASSED else "fridge_reading")


def test_the_word_of_the_cook_does_not_outweigh_a_reading():
    """Vouched cold, read at 50 °F twice: throw away."""
    window = Window(at(0.0), at(96.0), at(96.0), vouched=True)
    assert _fridge((0.0, 38.0), (46.0, 50.0), (49.0, 50.0), (50.0, 38.0), window=window)[1] is Outcome.THROW_AWAY


def test_readings_outside_the_window_do_not_count():
    """A fridge that was warm before the meat went in, or after it came out, says nothing of the cure."""
    assert _fridge((-5.0, 70.0), *_days(38.0), (97.0, 70.0)) == (Status.PASSED, Outcome.SAFE)


def test_brine():
    """A brine that nobody read is the fridge's matter; cold it passes; 41 to 60 °F for 2 to 4 h is a doubt."""
    assert judge_brine((), WEEK) is None
    for points, means in (
        (((0.0, 39.0), (10.0, 38.0)), Outcome.SAFE),
        (((0.0, 50.0), (2.0, 40.0)), Outcome.SAFE),
        (((0.0, 60.0), (3.0, 55.0), (4.0, 40.0)), Outcome.CANNOT_SAY),
        (((0.0, 60.1), (3.0, 55.0), (4.0, 40.0)), Outcome.THROW_AWAY),
        (((0.0, 60.0), (3.0, 55.0), (4.1, 40.0)), Outcome.THROW_AWAY),
        (((0.0, 50.0), (5.0, 40.0)), Outcome.CANNOT_SAY),
    ):
        found = judge_brine(history(*points), WEEK)
        assert found is not None
        assert found.means is means


def test_two_hours_or_one():
    """One hour from 90 °F up; not known is two."""
    assert two_hour_limit(None) == 2.0
    assert two_hour_limit(celsius_from_fahrenheit(89.9)) == 2.0
    assert two_hour_limit(celsius_from_fahrenheit(90.0)) == 1.0


@pytest.mark.parametrize(
    ("said", "status"),
    [
        ((), Status.UNKNOWN),
        ((at(-2.0),), Status.PASSED),  # cold until an hour before it was read at 48 °F, cold again half an hour later
        ((at(-2.6),), Status.UNKNOWN),
        ((at(-0.9),), Status.UNKNOWN),  # no word outweighs what was read an hour before now
        ((at(-30.0), at(-2.0)), Status.PASSED),
    ],
)
def test_the_cooks_word_bounds_a_warm_spell(said, status):
    """«Warm for an hour at most» counts from there; a reading that says otherwise outweighs it."""
    read = history((-26.0, 38.0), (-1.0, 48.0), (-0.5, 38.0))
    found = judge_fridge(read, Window(at(-26.0), None, at(0.0), said_cold=said))
    assert (found.rule, found.status) == (Rule.FRIDGE, status)


def test_the_word_of_the_cook_is_in_the_record():
    """The hours that were told of a warm fridge count back from when they were told."""
    told = (
        Incident("warm_fridge", at(-1.0), {"hours": 1.0}),
        Incident("warm_fridge", at(-3.0), {"hours": None}),
        Incident("warm_brine", at(-5.0), {"hours": 2.0}),
        Incident("warm_fridge", at(30.0), {"hours": 2.0}),
    )
    record = brisket(now=at(0.0), incidents=told)
    assert record.said_cold("warm_fridge") == (at(-2.0),)
    assert record.said_cold("warm_brine") == (at(-7.0),)


@pytest.mark.parametrize(("hours", "case", "means"), [(3.0, "two_hours", "throw_away"), (0.9, "two_hours", "safe")])
def test_what_was_read_while_it_was_warm_counts_with_what_was_told(hours, case, means):
    """Told 43 °F, read 48 °F an hour before: the two-hour rule; a reading from before the hours told is left out."""
    read = history((-50.5, 48.0), (-52.0, 38.0), (-70.0, 60.0))
    told = Incident("warm_fridge", at(-50.0), {"hours": hours, "room_c": celsius_from_fahrenheit(43.0)})
    found = judge_incident(told, brisket(fridge=read))
    assert (found.detail, found.means.value) == (case, means)


def test_what_still_runs_is_shown_before_what_is_over():
    """A long spell at 43 °F that was mended, and a short one at 43 °F that nobody has seen end: the second is open."""
    points = ((0.0, 38.0), (10.0, 43.0), (20.0, 38.0), (90.0, 38.0), (92.0, 43.0))
    assert _fridge(*points, window=Window(at(0.0), None, at(93.0))) == (Status.OPEN, Outcome.SAFE)


def test_warm_for_the_limit_itself_is_not_shown_to_be_longer():
    """46 °F read twice, 2 h apart: the two hours are reached and not passed; a minute more is thrown away."""
    for hours, status in ((2.0, Status.UNKNOWN), (2.02, Status.FAILED)):
        warm = history((0.0, 38.0), (10.0, 46.0), (10.0 + hours, 46.0), (13.0, 38.0))
        assert judge_fridge(warm, Window(at(0.0), at(14.0), at(14.0))).status is status


def test_of_two_mended_spells_the_longer_is_shown_first_or_last():
    """Two hours and five, both mended (44 °F for part of a day): the finding is about the five."""
    two, five = ((9.0, 38.0), (10.0, 44.0), (11.0, 38.0)), ((29.0, 38.0), (30.0, 44.0), (34.0, 38.0))
    late = tuple((h + 40.0, f) for h, f in two)
    for points in ((*two, *five), (*five, *late)):
        found = judge_fridge(history((0.0, 38.0), *points), Window(at(0.0), at(60.0), at(60.0)))
        assert (found.value, found.readings) == (5.0, history((30.0, 44.0)))


def test_a_cold_brine_shows_its_last_reading():
    """Of three readings the last."""
    found = judge_brine(history((1.0, 39.0), (2.0, 38.0), (3.0, 37.0)), Window(at(0.0), at(4.0), at(4.0)))
    assert found is not None
    assert found.readings == history((3.0, 37.0))


def test_cold_by_the_cooks_word_up_to_the_reading_itself():
    """«It was cold until I looked»: the hours count from the warm reading."""
    window = Window(at(0.0), at(12.0), at(12.0), said_cold=(at(10.0),))
    assert judge_fridge(history((0.0, 38.0), (10.0, 44.0)), window).value == 2.0
