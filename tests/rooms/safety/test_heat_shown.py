"""core.safety.heat_shown: what shows that the fire burned, and what the cook says of it (docs/science/safety.md)."""

import pytest

from core.safety.heat_shown import cold_until, heat_again, hot_from, last_heat, said_hours
from core.safety.record import Incident
from tests.records import at, brisket, history

ON = at(0.0)
OUT = Incident("fire_out", at(3.0))


def _heat(core=(), pit=(), on=ON):
    found = last_heat(OUT, brisket(pit=history(*pit), meat_on_at=on), history(*core))
    return None if found is None else found.at


@pytest.mark.parametrize(
    ("pit", "when"),
    [
        (((0.0, 200.0),), at(0.0)),
        (((3.0, 200.0),), at(3.0)),
        (((-0.1, 250.0),), None),  # before the meat was on
        (((3.1, 250.0),), None),  # after it was found out
        (((1.0, 199.9),), None),
        (((1.0, 250.0), (2.0, 220.0), (2.5, 190.0)), at(2.0)),
        (((2.0, 220.0), (1.0, 250.0)), at(2.0)),
    ],
)
def test_a_hot_pit(pit, when):
    """Read at 200 °F or above, from going on to the moment at which it was found out: the last one."""
    assert _heat(pit=pit) == when


@pytest.mark.parametrize(
    ("meant_f", "from_f"),
    [(None, 200.0), (250.0, 200.0), (220.0, 200.0), (200.0, 180.0), (180.0, 160.0), (150.0, 160.0)],
)
def test_a_pit_that_is_meant_to_be_cool(meant_f, from_f):
    """Within 20 °F of what it is to hold, where that is under 200 °F; never below 160 °F."""
    record = brisket(pit_meant=() if meant_f is None else history((0.0, meant_f)))
    assert hot_from(record, at(2.0)) == pytest.approx(from_f)


@pytest.mark.parametrize(("hours", "from_f"), [(-1.0, 200.0), (0.0, 200.0), (2.9, 200.0), (3.0, 160.0), (5.0, 180.0)])
def test_a_pit_is_held_to_what_it_was_meant_to_hold_when_it_was_read(hours, from_f):
    """Set lower in the end, it makes no fire of a pit that had fallen before."""
    record = brisket(pit_meant=history((4.5, 200.0), (0.0, 250.0), (3.0, 180.0)))
    assert hot_from(record, at(hours)) == pytest.approx(from_f)


@pytest.mark.parametrize(
    ("core", "pit", "until"),
    [
        ((), (), None),
        ((), ((3.5, 159.9),), at(3.5)),
        ((), ((3.5, 160.0),), None),  # it warms the meat again
        ((), ((2.9, 90.0),), None),  # before the look
        ((), ((3.5, 90.0), (4.0, 150.0), (4.2, 210.0), (4.5, 90.0)), at(4.0)),
        (((3.5, 110.0),), (), at(3.5)),
        (((3.5, 110.1),), (), None),  # a probe moves so much in its hole
        (((3.5, 105.0), (4.0, 140.0), (4.5, 105.0)), (), at(3.5)),
        (((3.5, 105.0), (3.8, 109.0)), ((3.6, 210.0),), at(3.5)),
    ],
)
def test_a_fire_that_is_still_out_after_the_look(core, pit, until):
    """A pit under 160 °F or a core 2 °F under the look, before a hot pit or a core at 140 °F ends it."""
    record = brisket(pit=history(*pit), meat_on_at=ON, off_at=None, now=at(6.0))
    look = history((3.0, 112.0))[0]
    found = cold_until(look, record, history((1.0, 60.0), (3.0, 112.0), *core))
    assert (None if found is None else found.at) == until


def test_a_pit_that_is_cold_once_the_meat_is_off_says_nothing():
    """The time on the fire is over."""
    record = brisket(pit=history((4.0, 90.0)), meat_on_at=ON, off_at=at(3.5), now=at(6.0))
    assert cold_until(history((3.0, 112.0))[0], record, ()) is None


@pytest.mark.parametrize(
    ("pit", "when"),
    [((), None), (((2.9, 250.0),), None), (((3.2, 150.0), (3.5, 210.0), (4.0, 250.0)), at(3.5))],
)
def test_a_pit_that_is_hot_again(pit, when):
    """The first reading after it was found out that shows a fire."""
    found = heat_again(OUT, brisket(pit=history(*pit), meat_on_at=ON))
    assert (None if found is None else found.at) == when


@pytest.mark.parametrize(
    ("core", "when"),
    [
        (((0.5, 100.0), (1.0, 102.0)), at(0.5)),
        (((0.5, 100.0), (1.0, 101.9)), None),
        (((0.5, 100.0), (1.0, 90.0)), None),
        (((0.5, 60.0), (1.0, 70.0), (1.5, 80.0), (2.0, 80.5)), at(1.0)),
        (((0.5, 60.0),), None),
    ],
)
def test_a_core_that_rose(core, when):
    """By 2 °F from one reading to the next: the first of the two, of the last such pair."""
    assert _heat(core=core) == when


def test_the_later_of_both_signs_counts():
    """A pit at 2 h and a rise from 1 h; a rise from 2.5 h and a pit at 2 h."""
    assert _heat(((1.0, 60.0), (2.9, 80.0)), ((2.0, 250.0),)) == at(2.0)
    assert _heat(((2.5, 60.0), (2.9, 80.0)), ((2.0, 250.0),)) == at(2.5)


def test_nothing_is_shown_before_the_meat_is_on():
    """Without the time of going on there is no sign at all."""
    assert _heat(((1.0, 60.0), (2.0, 80.0)), ((2.0, 250.0),), on=None) is None


@pytest.mark.parametrize(
    ("own", "others", "hours"),
    [
        ({}, (), None),
        ({"hours": None}, (), None),
        ({"hours": 0.5}, (), 0.5),
        ({"hours": 0.5}, ((3.0, "fire_out", 1.5),), 1.5),
        ({"hours": 0.5}, ((4.0, "fire_out", 0.2),), 0.5),
        ({}, ((4.0, "fire_out", 0.2),), 0.2),
        ({}, ((2.9, "fire_out", 2.0),), None),  # of an earlier one
        ({}, ((4.0, "power_cut", 2.0),), None),
        ({}, ((4.0, "fire_out", None),), None),
    ],
)
def test_the_longest_that_was_said_counts(own, others, hours):
    """With this telling or a later one; what was told of something else, or before, is not about it."""
    told = tuple(Incident(what, at(when), {"hours": said}) for when, what, said in others)
    assert said_hours(Incident("fire_out", at(3.0), own), brisket(incidents=told)) == hours
