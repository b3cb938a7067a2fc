"""core.safety.done: the floor and its rest, smoked fish, and what came off before it was done; on each limit."""

import pytest

from core.safety.cook import cook_readings
from core.safety.done import done_findings
from core.safety.findings import Outcome, Rule, Status
from tests.records import at, brisket, history

WAY = ((0.0, 39.0), (1.0, 60.0), (3.0, 120.0))
FISH = {"species": "fish", "product_class": "fish", "put_in_cure_at": None, "out_at": None}
MINUTE = 1.0 / 60.0


def _found(rule, points, now, off=None, **changes):
    changes = {"off_at": off if off is None else at(off), "chill_started_at": None, **changes}
    record = brisket(points, now=at(now), **changes)
    return [f for f in done_findings(record, cook_readings(record)) if f.rule is rule]


@pytest.mark.parametrize(
    ("changes", "rule", "core", "status"),
    [
        ({"species": "turkey"}, Rule.POULTRY_165, 165.0, Status.PASSED),
        ({"species": "turkey"}, Rule.POULTRY_165, 164.9, Status.OPEN),
        (FISH, Rule.DONENESS, 145.0, Status.PASSED),
        ({}, Rule.DONENESS, 145.0, Status.OPEN),
    ],
)
def test_only_meat_rests(changes, rule, core, status):
    """The chart prints three minutes of rest for whole meat, none for birds and fish (FSIS safe temperatures)."""
    (found,) = _found(rule, (*WAY, (5.0, core)), 5.0, **changes)
    assert found.status is status


@pytest.mark.parametrize(("colder_after", "status"), [(2.9, Status.OPEN), (3.0, Status.PASSED)])
def test_a_colder_spot_after_the_three_minutes_comes_too_late(colder_after, status):
    """145 °F, and a colder spot: within the rest it undoes it, at its end no more."""
    points = (*WAY, (5.0, 145.0), (5.0 + colder_after * MINUTE, 140.0))
    (found,) = _found(Rule.DONENESS, points, 5.1)
    assert found.status is status


def test_the_kill_asks_for_a_core():
    """While the table is not met a reading of the core is what is missing."""
    (found,) = _found(Rule.LETHALITY, (*WAY, (5.0, 140.0)), 5.1)
    assert (found.means, found.missing) == (Outcome.NOT_YET, "core_reading")


def test_what_came_off_done_by_the_chart_is_no_partial_cook():
    """150 °F once and three minutes of rest, off the fire: the chart is met though the table is not (145 °F, FSIS)."""
    assert not _found(Rule.PARTIAL_COOK, (*WAY, (5.0, 150.0)), 7.5, off=5.2)
    assert _found(Rule.PARTIAL_COOK, (*WAY, (5.0, 144.9)), 7.5, off=5.2)
    assert not _found(Rule.PARTIAL_COOK, (*WAY, (5.0, 144.9)), 7.5)


@pytest.mark.parametrize(
    ("product_class", "centre", "advice"),
    [
        ("bacon", 100.0, "raw_cook_before_eating"),
        ("bacon", 99.9, "throw_away"),
        ("bacon", None, "throw_away"),
        ("ham", 150.0, "throw_away"),
    ],
)
def test_only_cured_bacon_may_come_off_half_cooked(product_class, centre, advice):
    """Bacon with the rule's 100 mg/kg in its middle is cooked again before eating; nothing else is smoked half."""
    changes = {"product_class": product_class, "cured_centre_mg_kg": centre, "species": "pork"}
    (found,) = _found(Rule.PARTIAL_COOK, (*WAY, (4.5, 128.0), (5.0, 130.0)), 8.0, off=5.0, **changes)
    assert (found.advice, found.readings) == (advice, history((5.0, 130.0)))


@pytest.mark.parametrize(("read_at", "means"), [(4.2, Outcome.THROW_AWAY), (4.19, Outcome.CANNOT_SAY)])
def test_a_reading_of_the_last_hour_shows_how_far_it_got(read_at, means):
    """Read up to one hour before it came off (judgement): thrown away; earlier it says nothing of the end."""
    (found,) = _found(Rule.PARTIAL_COOK, (*WAY, (read_at, 130.0)), 8.0, off=5.2)
    assert found.means is means


@pytest.mark.parametrize(("apart", "hours"), [(45.0, 0.75), (45.1, 0.0)])
def test_readings_of_smoked_fish_vouch_for_three_quarters_of_an_hour(apart, hours):
    """160 °F twice: up to 45 min apart they show the hold between them (judgement), and the half hour is met."""
    points = ((0.0, 39.0), (1.0, 160.0), (1.0 + apart * MINUTE, 160.0))
    (found,) = _found(Rule.FISH_160, points, 2.0, **FISH)
    assert (found.value, found.status is Status.PASSED) == (pytest.approx(hours), hours > 0.0)


def test_the_hold_of_smoked_fish_begins_with_its_reading():
    """Read 160 °F at 1:00; the model vouches from then on, not from its next point."""
    low = history((1.25, 160.0), (1.5, 161.0))
    points = ((0.0, 39.0), (1.0, 160.0), (2.0, 160.0))
    (found,) = _found(Rule.FISH_160, points, 2.0, modelled_low=low, **FISH)
    assert found.value == 1.0
    (read,) = _found(Rule.FISH_160, points, 2.0, **FISH)
    assert read.status is Status.OPEN
