"""core.safety.incidents, told: what each fact that was told, asked or left open makes of a mishap."""

import pytest

from core.safety.findings import Outcome, Rule, Status
from core.safety.incidents import judge_incident, needed
from core.safety.record import Incident
from core.safety.told import fresh_core, number, yes
from core.units import celsius_from_fahrenheit as c
from tests.records import at, brisket, history

SAFE, DOUBT, OUT = Outcome.SAFE, Outcome.CANNOT_SAY, Outcome.THROW_AWAY
ON_FIRE = {"off_at": None, "chill_started_at": None}


def _judged(what, facts, record=None, when=-100.0):
    found = judge_incident(Incident(what, at(when), facts), brisket() if record is None else record)
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("facts", "means", "detail"),
    [
        ({}, DOUBT, "unknown_time"),
        ({"hours": None}, OUT, "unknown_time"),
        ({"unknown": True}, OUT, "unknown_time"),
        ({"overnight": True}, OUT, "unknown_time"),
        ({"hours": 1.0}, SAFE, "in_time"),
        ({"hours": 1.5}, DOUBT, "not_asked"),
        ({"hours": 1.5, "room_c": None}, SAFE, "in_time"),
        ({"hours": 1.5, "room_c": c(89.0)}, SAFE, "in_time"),
        ({"hours": 1.5, "room_c": c(90.0)}, OUT, "too_long"),
        ({"hours": 3.0}, OUT, "too_long"),
        ({"hours": 9.0, "core_c": c(44.0)}, SAFE, "still_cool"),
        ({"hours": 9.0, "core_c": c(48.0)}, OUT, "too_long"),
    ],
)
def test_left_out_as_told(facts, means, detail):
    """Not asked is a doubt; asked and not known, or overnight, is thrown away; the room matters from one hour on."""
    found = _judged("left_out", facts)
    assert (found.means, found.detail) == (means, detail)


@pytest.mark.parametrize(
    ("facts", "means", "detail"),
    [
        ({}, DOUBT, "not_asked"),
        ({"hours": 3.0}, DOUBT, "not_asked"),
        ({"hours": 3.0, "door_shut": None}, OUT, "by_clock"),
        ({"hours": 3.0, "door_shut": False}, OUT, "by_clock"),
        ({"hours": 3.0, "door_shut": True}, SAFE, "in_time"),
        ({"hours": 1.5, "door_shut": False}, DOUBT, "not_asked"),
        ({"hours": 1.5, "door_shut": False, "room_c": None}, SAFE, "in_time"),
        ({"hours": 1.5, "door_shut": False, "room_c": c(95.0)}, OUT, "by_clock"),
        ({"hours": 60.0, "door_shut": True, "where": "freezer_full"}, DOUBT, "not_asked"),
        ({"hours": 60.0, "door_shut": True, "where": "freezer_full", "ice_crystals": None}, OUT, "by_clock"),
        ({"hours": 60.0, "door_shut": True, "where": "freezer_full", "ice_crystals": True}, SAFE, "still_cold"),
        ({"hours": 9.0, "core_c": c(40.0), "core_after_h": 1.0}, SAFE, "still_cold"),
        ({"hours": 9.0, "door_shut": False, "core_c": c(40.0), "core_after_h": 1.01}, OUT, "by_clock"),
        ({"hours": 9.0, "door_shut": False, "core_c": c(50.0), "core_after_h": 2.0}, OUT, "by_clock"),
        ({"hours": 9.0, "door_shut": False, "core_c": c(50.1), "core_after_h": 2.0}, OUT, "too_long"),
    ],
)
def test_a_power_cut_as_told(facts, means, detail):
    """A doubt only while the door, the room or the ice could still clear it; a cold core counts for an hour."""
    found = _judged("power_cut", facts)
    assert (found.means, found.detail) == (means, detail)


@pytest.mark.parametrize(
    ("facts", "changes", "detail", "value"),
    [
        ({"lost_fraction": 0.5}, {"wet": False}, "not_asked", 0.0),  # from the first day, if nobody saw it
        ({"lost_fraction": 0.5, "unnoticed_days": 0.5}, {"wet": False}, "partly_cured", 2.5),
        ({"lost_fraction": 0.5, "unnoticed_days": 9.0}, {"wet": False}, "unnoticed", 9.0),
        ({"lost_fraction": 0.5, "unnoticed_days": 4.0}, {"wet": False}, "no_fresh_dose", 0.0),  # not before it went in
        ({"unnoticed_days": 1.0}, {}, "not_asked", 2.0),
        ({"lost_fraction": None, "unnoticed_days": None}, {"put_in_cure_at": None}, "when", None),
    ],
)
def test_a_leak_as_told(facts, changes, detail, value):
    """Seen three days in: it began as long ago as the cook says, or with the cure; without a share it is asked."""
    found = _judged("leaked", facts, brisket(**changes), -24.0 * 4)
    assert (found.detail, found.value) == (detail, value)


@pytest.mark.parametrize(
    ("what", "facts", "advice", "missing", "unit"),
    [
        ("left_out", {"hours": 1.5}, "into_the_fridge_now", "", "h"),
        ("power_cut", {"hours": 3.0}, "read_the_core", "", "h"),
        ("leaked", {}, "", "", "d"),
        ("dosed_twice", {}, "throw_away_advised", "mg_kg", "mg/kg"),
    ],
)
def test_what_to_do_while_it_is_asked(what, facts, advice, missing, unit):
    """A doubt with its figures: the value against its limit, and the careful thing to do meanwhile."""
    found = _judged(what, facts, brisket(ingoing_mg_kg=150.0))
    assert (found.means, found.detail, found.advice) == (DOUBT, "not_asked", advice)
    assert (found.missing, found.unit, found.limit is None) == (missing, unit, False)


def test_over_the_limit_for_eaters_at_risk():
    """Over 200 mg/kg (21 CFR 172.170) with children or the weak at the table: thrown away, and said so."""
    found = _judged("dosed_twice", {"mg_kg": 201.0}, brisket(at_risk_eaters=True))
    assert (found.detail, found.advice, found.limit, found.unit) == ("over_at_risk", "throw_away", 200.0, "mg/kg")


def test_a_dose_that_nobody_knows():
    """No grams and none in the record: a doubt that names what is wanted."""
    found = _judged("dosed_twice", {}, brisket(ingoing_mg_kg=None))
    assert (found.means, found.unit, found.missing) == (DOUBT, "mg/kg", "mg_kg")
    assert found.advice == "throw_away_advised"


@pytest.mark.parametrize(
    ("earlier", "today"),
    [
        ("leak", "leaked"),
        ("doubled_cure", "dosed_twice"),
        ("fridge_door_open", "warm_fridge"),
        ("fridge_warm", "warm_fridge"),
        ("brine_warm", "warm_brine"),
    ],
)
def test_a_mishap_by_its_earlier_name(earlier, today):
    """Names of earlier records are judged, and asked after, as those of today."""
    assert _judged(earlier, {}) == _judged(today, {})
    record = brisket(at_risk_eaters=None)
    assert needed(Incident(earlier, at(-100.0)), record) == needed(Incident(today, at(-100.0)), record) != ()


@pytest.mark.parametrize(
    ("what", "facts", "changes", "wanted"),
    [
        ("warm_brine", {}, {}, ("hours", "room_c")),
        ("warm_brine", {"hours": 5.0}, {}, ("room_c",)),
        ("dosed_twice", {"mg_kg": 300.0, "unknown": True}, {}, ("at_risk_eaters",)),
        ("dosed_twice", {"mg_kg": 300.0}, {"at_risk_eaters": False}, ()),
        ("dosed_twice", {"mg_kg": 300.0}, {"at_risk_eaters": True}, ()),
        ("dosed_twice", {}, {"put_in_cure_at": None}, ()),
        ("power_cut", {"hours": None}, {}, ("core_c",)),
        ("power_cut", {"hours": 2.1}, {}, ("door_shut", "core_c")),
    ],
)
def test_only_what_can_still_change_it_is_asked(what, facts, changes, wanted):
    """Who eats is asked while it decides; a mix that no meat is in asks nothing; the room only up to two hours."""
    record = brisket(**{"ingoing_mg_kg": 150.0, "at_risk_eaters": None, **changes})
    assert needed(Incident(what, at(-100.0), facts), record) == wanted


def _fire(core, facts=None, now=9.0, out=3.0, **changes):
    """A fire that was out at 3 h; how it is judged, and what is asked."""
    told = Incident("fire_out", at(out), facts or {})
    record = brisket(core, now=at(now), incidents=(told,), **{**ON_FIRE, **changes})
    return _judged("fire_out", facts or {}, record, out), needed(told, record)


def test_a_fire_without_an_hour_of_going_on():
    """The last reading at 140 °F starts its clock; with neither nobody knows, and it is thrown away."""
    hot = ((2.0, 150.0), (3.5, 120.0), (4.0, 142.0), (5.0, 166.0))
    found, _ = _fire(hot, meat_on_at=None)
    assert (found.detail, found.value, found.means) == ("bring_through", 1.5, Outcome.EAT_NOW)
    unknown, _ = _fire(((3.5, 120.0),), meat_on_at=None)
    assert (unknown.detail, unknown.means) == ("unknown_time", OUT)


@pytest.mark.parametrize(("looked", "detail"), [(2.0, "on_its_way"), (2.01, "unknown_loss")])
def test_two_hours_from_going_on_are_short_whatever_happened(looked, detail):
    """Read 60 °F two hours after going on: it cannot have been without heat for longer."""
    found, _ = _fire(((looked, 60.0),), now=looked, out=1.5)
    assert found.detail == detail


def test_a_fire_that_was_out_for_half_an_hour():
    """From the last reading at 140 °F to the look: half an hour, no hour is added."""
    found, _ = _fire(((2.0, 150.0), (2.75, 145.0), (3.25, 130.0)), now=3.3)
    assert found.value == 0.5


def test_a_reading_of_the_very_moment_is_the_look():
    """Said at three, read at three: that is the core it was found at."""
    found, _ = _fire(((3.0, 60.0),), now=3.0, facts={"hours": 0.5})
    assert (found.detail, found.readings) == ("on_its_way", history((3.0, 60.0)))


def test_too_long_without_heat_though_it_read_140_in_time():
    """At 141 °F 3.9 h after going on, but without heat for longer than two: that is what decided."""
    pit = history((1.0, 250.0))
    found, _ = _fire(((3.9, 141.0),), now=5.0, pit=pit, species="turkey")
    assert (found.detail, found.means) == ("too_long", OUT)


def test_nobody_knows_is_said_once():
    """Asked how long and not known: nothing more is asked; a core nobody can read is thrown away, a good one stands."""
    lost, asked = _fire(((3.5, 125.0),), {"hours": None}, now=3.6)
    assert (lost.detail, asked) == ("unknown_loss", ())
    unread, _ = _fire(((2.0, 150.0),), {"unknown": True}, now=3.5)
    assert (unread.means, unread.advice) == (OUT, "throw_away")
    read, _ = _fire(((2.5, 150.0), (3.5, 145.0)), {"unknown": True}, now=3.6)
    assert (read.means, read.status) == (SAFE, Status.PASSED)


@pytest.mark.parametrize(
    ("facts", "detail", "means"),
    [
        ({"hours": 1.0}, "two_hours", SAFE),
        ({"hours": 1.01}, "two_hours", DOUBT),
        ({"hours": 24.0}, "two_hours", DOUBT),
        ({"hours": 24.1}, "two_hours", OUT),
        ({"hours": 24.0, "room_c": None}, "two_hours", OUT),
        ({"hours": 24.0, "room_c": c(44.6)}, "mended", SAFE),
        ({"hours": 24.0, "room_c": c(45.0)}, "two_hours", OUT),
        ({"room_c": c(46.0)}, "two_hours", DOUBT),
        ({"hours": None}, "two_hours", DOUBT),
        ({"hours": None, "room_c": None}, "two_hours", OUT),
    ],
)
def test_a_warm_brine_as_told(facts, detail, means):
    """Up to 44.6 °F part of a day is mended; how warm it was is asked where it can decide. One hour is safe anyway."""
    found = _judged("warm_brine", facts)
    assert (found.rule, found.detail, found.means, found.unit) == (Rule.WARM_BRINE, detail, means, "h")


def test_what_was_read_in_those_hours_counts():
    """41 °F and more in the hours before it was told; 40 °F itself is cold, an older reading is another story."""
    for reading, detail in (((-101.0, 44.0), "mended"), ((-101.0, 40.0), "two_hours"), ((-103.1, 44.0), "two_hours")):
        record = brisket(fridge=history(reading))
        assert _judged("warm_fridge", {"hours": 3.0}, record).detail == detail
    warm = brisket(fridge=history((-101.0, 46.0)))
    assert _judged("warm_fridge", {"hours": 3.0}, warm).means is OUT
    at_once = brisket(fridge=history((-100.5, 44.0)))
    assert _judged("warm_fridge", {}, at_once).detail == "two_hours"


@pytest.mark.parametrize(
    ("told", "as_number", "as_word"), [(2, 2.0, None), (2.5, 2.5, None), (True, None, True), ("two", None, None)]
)
def test_a_fact_is_a_number_or_a_yes(told, as_number, as_word):
    """A yes is no 1, and a word is neither."""
    incident = Incident("power_cut", at(0.0), {"x": told})
    assert (number(incident, "x"), yes(incident, "x")) == (as_number, as_word)


@pytest.mark.parametrize(
    ("core", "after", "fresh"),
    [(50.0, 1.0, True), (50.0, 1.1, False), (50.1, 1.1, True), (50.0, None, True), (None, 2.0, False)],
)
def test_a_core_told_late(core, after, fresh):
    """Up to an hour after (judgement); later only one above 50 °F says something."""
    facts = {"core_c": None if core is None else c(core), "core_after_h": after}
    assert (fresh_core(Incident("power_cut", at(0.0), facts)) is not None) is fresh
