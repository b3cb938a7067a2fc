"""core.safety.heat: what the record says of the cook, and which clock runs until when."""

import pytest

from core.safety.findings import Outcome, Rule, Status
from core.safety.heat import heat_findings
from tests.records import at, brisket, history

ON_FIRE = {"off_at": None, "chill_started_at": None}


def _only(rule, record):
    (found,) = (f for f in heat_findings(record) if f.rule is rule)
    return found


def test_a_core_reading_is_a_cook():
    """Nobody said when it went on, but the core was read: it is not raw."""
    read = _only(Rule.DONENESS, brisket(((3.0, 120.0),), now=at(3.1), meat_on_at=None, **ON_FIRE))
    assert (read.missing, read.readings) == ("core_reading", history((3.0, 120.0)))
    raw = _only(Rule.DONENESS, brisket((), now=at(3.1), meat_on_at=None, **ON_FIRE))
    assert raw.missing == "cook_it"


def test_the_way_up_ends_when_it_comes_off():
    """Off after 4 h at 120 °F: four hours of the way up, however much later it is asked."""
    core = ((0.0, 39.0), (4.0, 120.0))
    assert _only(Rule.COME_UP, brisket(core, now=at(9.0), off_at=at(4.0), chill_started_at=None)).value == 4.0
    assert _only(Rule.COME_UP, brisket(core, now=at(5.0), **ON_FIRE)).value == 5.0
    assert _only(Rule.COME_UP, brisket(core, now=at(5.0), off_at=at(6.0), chill_started_at=None)).value == 5.0


def test_a_fall_shows_both_its_ends():
    """The last reading at 140 °F and the first at 140 °F again; while it is down, the lowest."""
    core = ((0.0, 39.0), (2.0, 135.0), (4.0, 151.0), (5.0, 120.0))
    down = _only(Rule.HELD_140, brisket(core, now=at(5.1), **ON_FIRE))
    assert down.readings == history((4.0, 151.0), (5.0, 120.0))
    back = _only(Rule.HELD_140, brisket((*core, (5.5, 142.0)), now=at(5.6), **ON_FIRE))
    assert back.readings == history((4.0, 151.0), (5.5, 142.0))


HAM = {"injected": True, "cured_centre_mg_kg": 150.0}


@pytest.mark.parametrize(("hours", "fahrenheit"), [(7.0, 135.0), (6.5, 132.0), (6.3, 131.0)])
def test_a_modelled_core_neither_starts_nor_stops_the_clock(hours, fahrenheit):
    """A lone late reading, and a low side of the model that is cold late and warm early: only readings count."""
    model = history((0.0, 38.0), (1.92, 48.7), (6.2, 130.7), (hours, 130.9))
    late = brisket(((hours, fahrenheit),), now=at(hours), **ON_FIRE, **HAM, modelled_low=model)
    found = _only(Rule.COME_UP, late)
    assert (found.status, found.means, found.value) == (Status.UNKNOWN, Outcome.CANNOT_SAY, hours)


def test_a_modelled_core_fails_nothing():
    """Cold by the model past the sixth hour, and by no reading: a doubt, and not thrown away."""
    model = history((0.0, 38.0), (6.5, 125.0), (7.0, 150.0))
    found = _only(Rule.COME_UP, brisket(((7.0, 160.0),), now=at(7.0), **ON_FIRE, **HAM, modelled_low=model))
    assert (found.status, found.means) == (Status.UNKNOWN, Outcome.CANNOT_SAY)


@pytest.mark.parametrize(
    ("changes", "clocks"),
    [
        ({**HAM, "cured_centre_mg_kg": 100.0}, {Rule.COME_UP}),
        ({**HAM, "cured_centre_mg_kg": 99.9}, {Rule.COME_UP, Rule.REACH_140}),
        ({**HAM, "cured_centre_mg_kg": None}, {Rule.COME_UP, Rule.REACH_140}),
        ({"intact": False, "cured_centre_mg_kg": 100.0}, {Rule.COME_UP}),
        ({"intact": False, "cured_centre_mg_kg": 99.9}, {Rule.COME_UP, Rule.REACH_140}),
        ({"species": "turkey", "cured_centre_mg_kg": 150.0}, {Rule.COME_UP, Rule.REACH_140}),
        ({"cured_centre_mg_kg": None}, {Rule.COME_UP}),
    ],
)
def test_which_clocks_run_on_the_way_up(changes, clocks):
    """The 6 h (FSIS 2021) for all; the 4 h (PRACTICE) for birds, and for opened meat not cured to its middle."""
    found = heat_findings(brisket(((0.0, 39.0), (1.0, 60.0)), now=at(1.1), **ON_FIRE, **changes))
    assert {f.rule for f in found} & {Rule.COME_UP, Rule.REACH_140} == clocks


@pytest.mark.parametrize(("celsius", "hours", "means"), [(54.0, 6.1, Outcome.THROW_AWAY), (55.0, 6.0, Outcome.SAFE)])
def test_the_degree_that_is_told_is_past_the_line(celsius, hours, means):
    """54 °C are 129.2 °F and not there yet; 55 °C, which is what is told, are."""
    core = ((0.0, 39.0), (5.9, 32.0 + 1.8 * celsius), (hours, 32.0 + 1.8 * celsius))
    assert _only(Rule.COME_UP, brisket(core, now=at(6.2), **ON_FIRE, **HAM)).means is means


@pytest.mark.parametrize(
    ("core", "climb", "fall"),
    [
        (((5.5, 141.0), (5.6, 129.0), (5.8, 141.0)), Status.PASSED, Outcome.NOT_YET),  # a colder spot within the 6 h
        (((5.5, 141.0), (5.6, 129.0), (6.2, 141.0)), Status.UNKNOWN, Outcome.NOT_YET),
        (((5.5, 141.0), (6.1, 129.0), (6.2, 141.0)), Status.FAILED, Outcome.NOT_YET),
        (((5.0, 141.0), (5.1, 109.0), (5.2, 141.0)), Status.PASSED, Outcome.THROW_AWAY),  # under 110 °F
        (((3.0, 141.0), (3.5, 129.0), (5.1, 141.0)), Status.PASSED, Outcome.THROW_AWAY),  # over 2 h
    ],
)
def test_of_cured_meat_a_fall_counts_for_the_six_hours_and_has_the_grid_beside_them(core, climb, fall):
    """It is brought to 165 °F; without cure more than 4 h between 40 and 140 °F in all would be too long."""
    cured = brisket(((0.0, 39.0), *core), now=at(6.3), **ON_FIRE, **HAM)
    assert _only(Rule.COME_UP, cured).status is climb
    assert _only(Rule.HELD_140, cured).means is fall
    uncured = brisket(((0.0, 39.0), *core), now=at(6.3), **ON_FIRE, injected=True, cured_centre_mg_kg=None)
    assert _only(Rule.HELD_140, uncured).means is Outcome.THROW_AWAY


@pytest.mark.parametrize(("celsius", "status"), [(71.0, Status.OPEN), (72.0, Status.PASSED)])
def test_the_degree_that_is_told_of_smoked_fish_is_past_its_line(celsius, status):
    """71 °C are 159.8 °F: the half hour at 160 °F (PNW 238) is told as 72 °C."""
    core = ((0.0, 39.0), *((hours, 32.0 + 1.8 * celsius) for hours in (1.5, 1.75, 2.0)))
    fish = brisket(core, now=at(2.1), **ON_FIRE, species="fish", product_class="fish", cured_centre_mg_kg=None)
    assert _only(Rule.FISH_160, fish).status is status
