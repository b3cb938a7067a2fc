"""core.safety.after: off the heat, hot for two hours, then by the cooling rules; on the limits and beside them."""

import pytest

from core.safety.after import after_findings, cooling_readings, hot_until
from core.safety.findings import Outcome, Rule
from core.safety.record import Incident
from tests.records import at, brisket, history

COOKED = ((0.0, 39.0), (1.0, 60.0), (3.0, 120.0), (4.0, 142.0), (6.0, 158.0), (10.0, 195.0))


@pytest.mark.parametrize(("last", "until"), [(140.0, 12.5), (139.9, 12.0), (141.0, 12.5)])
def test_two_hours_from_the_last_reading_at_140(last, until):
    """A reading of 140 °F itself still counts as hot."""
    record = brisket((*COOKED, (10.5, last)), now=at(10.6), chill_started_at=None)
    assert hot_until(record) == at(until)


def test_nothing_is_found_before_it_is_off():
    """The time of coming off lies ahead, or is not known: there is no chill to judge yet."""
    for off in (at(10.2), None):
        assert after_findings(brisket(COOKED, now=at(10.0), off_at=off, chill_started_at=None)) == ()
    assert after_findings(brisket(COOKED, now=at(10.2), off_at=at(10.2), chill_started_at=None)) != ()


@pytest.mark.parametrize(
    ("last", "now", "means"),
    [
        (195.0, 11.0, Outcome.SAFE),  # an hour ago it was hot: it may be eaten, or chilled
        (135.0, 10.5, Outcome.NOT_YET),  # never hot: the cooling is all there is to wait for
    ],
)
def test_an_open_cooling_is_no_reason_to_wait_while_it_is_hot(last, now, means):
    """Only what is open is set aside, and only while it is hot enough to be served."""
    core = ((0.0, 39.0), (2.0, 100.0), (10.0, last))
    record = brisket(core, now=at(now), off_at=at(10.05), chill_started_at=None)
    (cooling,) = [f for f in after_findings(record) if f.rule is Rule.COOLING]
    assert (cooling.means, cooling.advice) == (means, "")


def test_hot_at_the_last_look_is_140_itself():
    """The two hours speak from a last reading of 140 °F; below it the cooling rules do."""
    for last, spoken in ((140.0, True), (139.9, False)):
        record = brisket((*COOKED, (10.5, last)), now=at(10.6), chill_started_at=None)
        assert any(f.rule is Rule.TWO_HOURS for f in after_findings(record)) is spoken


def test_a_fridge_of_later_says_nothing_yet():
    """Kept cold from an hour that lies ahead: no fridge reading is judged for it."""
    warm = history((12.5, 60.0))
    ahead = brisket(now=at(17.0), fridge=warm, storage_started_at=at(20.0))
    assert not [f for f in after_findings(ahead) if f.rule is Rule.FRIDGE]


def _found(rule, record):
    return [f for f in after_findings(record) if f.rule is rule]


def test_two_hours_end_with_the_fridge():
    """Kept cold already, as the cook says, or never read hot: nothing to be eaten off the fire within two hours."""
    hot = {"core": history(*COOKED), "now": at(11.0), "chill_started_at": None}
    (found,) = _found(Rule.TWO_HOURS, brisket(**hot))
    assert (found.unit, found.readings) == ("h", history((10.0, 195.0)))
    assert not _found(Rule.TWO_HOURS, brisket(**hot, storage_started_at=at(10.5)))
    assert not _found(Rule.TWO_HOURS, brisket((), now=at(11.0), chill_started_at=None))
    (again,) = _found(Rule.TWO_HOURS, brisket((*COOKED, (10.5, 190.0)), now=at(11.0), chill_started_at=None))
    assert again.readings == history((10.5, 190.0))


def test_hot_again_is_no_repair_of_a_failed_cooling():
    """90 °F six hours after 130 °F is thrown away (FSIS Appendix B), also while it stands at 165 °F again."""
    record = brisket((*COOKED, (12.0, 130.0), (18.0, 90.0), (18.5, 165.0)), now=at(18.6), chill_started_at=None)
    (cooling,) = _found(Rule.COOLING, record)
    assert cooling.means is Outcome.THROW_AWAY


@pytest.mark.parametrize(
    ("chill", "rule", "advice"),
    [
        (((12.0, 130.0), (15.0, 80.0), (24.0, 44.0)), "130-80-45 cured 1999", "reheat_165_today"),
        (((12.0, 130.0), (13.0, 120.0), (14.0, 80.0), (18.5, 55.0), (24.0, 40.0)), "120-80-55", ""),
    ],
)
def test_only_the_15_h_row_is_eaten_the_same_day_from_165(chill, rule, advice):
    """Cured, inside the row, its ascorbate not shown: 165 °F today. Another row that does not grant earns no advice."""
    centre = 120.0 if "cured" in rule else 0.0
    (found,) = _found(Rule.COOLING, brisket((*COOKED, *chill), now=at(25.0), cured_centre_mg_kg=centre))
    assert (found.means, found.detail, found.advice) == (Outcome.CANNOT_SAY, rule, advice)


def test_the_freezer_shows_no_cooling():
    """Frozen half chilled: open until its deadline, then it cannot be said. Nobody read how fast it fell."""
    half = {"core": history(*COOKED, (12.0, 130.0), (13.0, 80.0)), "frozen_at": at(13.5), "chill_started_at": at(11.0)}
    for now, means in ((18.0, Outcome.NOT_YET), (18.1, Outcome.CANNOT_SAY)):
        (found,) = _found(Rule.COOLING, brisket(now=at(now), **half))
        assert (found.means, found.missing) == (means, "cooling_reading")


def test_a_fridge_is_judged_while_something_is_kept_in_it():
    """Not before it is kept, not once it is frozen; a warm hour that the cook bounds counts from then on."""
    warm = {"core": history(*COOKED), "fridge": history((12.0, 44.0)), "now": at(12.5), "chill_started_at": at(11.0)}
    assert not _found(Rule.FRIDGE, brisket(**warm))
    kept = {**warm, "storage_started_at": at(11.0)}
    assert not _found(Rule.FRIDGE, brisket(**kept, frozen_at=at(12.1)))
    (found,) = _found(Rule.FRIDGE, brisket(**kept))
    assert found.value == 1.5
    told = Incident("warm_fridge", at(12.0), {"hours": 0.5})
    (bounded,) = _found(Rule.FRIDGE, brisket(**kept, incidents=(told,)))
    assert bounded.value == 1.0


HELD = history((0.0, 39.0), (1.0, 160.0), (1.5, 161.0))  # as smoked fish has to be
FISH = {"species": "fish", "product_class": "fish", "vacuum": True, "core": HELD, "chill_started_at": None}


@pytest.mark.parametrize(
    ("changes", "found"),
    [
        ({}, (Outcome.CANNOT_SAY, "fridge_reading")),
        ({"fridge": history((11.0, 38.0))}, (Outcome.SAFE, "")),
        ({"fridge": history((11.0, 38.1))}, (Outcome.CANNOT_SAY, "")),
        ({"storage_started_at": None}, None),
        ({"core": HELD[:2], "fridge": history((11.0, 38.0))}, (Outcome.CANNOT_SAY, "")),  # cooked, and not held
        ({"vacuum": False}, None),
        ({"species": "beef"}, None),
        ({"frozen_at": at(12.0)}, None),
    ],
)
def test_fish_without_air_wants_every_reading_at_38(changes, found):
    """Type E grows without air from 3.3 °C (38 °F) up. From memory: FDA Hazards Guide, chapter 13."""
    record = brisket(**{**FISH, "fridge": (), "storage_started_at": at(10.5), **changes})
    assert [(f.means, f.missing) for f in _found(Rule.VACUUM_FISH, record)] == ([] if found is None else [found])


def test_readings_of_a_cook_that_nobody_ended():
    """Without an hour of coming off each reading belongs to what may be the cooling."""
    assert cooling_readings(brisket(COOKED, off_at=None)) == history(*COOKED)
