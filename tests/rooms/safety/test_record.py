"""core.safety.record: what a bare record says, which clocks count for it, and which readings a core can have."""

import pytest

from core.safety.history import HOTTEST_CORE, Reading
from core.safety.record import Incident, Record
from tests.records import at, brisket


def test_a_bare_record():
    """Species and hour alone: a whole roast in air, of which nothing else is known."""
    bare = Record("beef", at(0.0))
    assert (bare.product_class, bare.vacuum, bare.whole, bare.delicate) == ("roast", False, True, False)
    assert (bare.nitrite_limit_mg_kg, bare.at_risk_eaters, bare.possible_core) == (200.0, None, ())


@pytest.mark.parametrize(
    ("changes", "delicate"),
    [
        ({}, False),
        ({"species": "turkey"}, True),
        ({"species": "duck"}, True),
        ({"species": "fish"}, False),
        ({"intact": False}, True),
        ({"injected": True}, True),
    ],
)
def test_where_the_shorter_clocks_count(changes, delicate):
    """Birds, whole or not, and any meat whose middle was reached."""
    assert brisket(**changes).delicate is delicate


def test_which_readings_a_core_can_have():
    """Up to 105 °C and up to now; hotter ones are kept aside, those of tomorrow say nothing yet."""
    readings = [
        Reading(at(h), celsius) for h, celsius in ((1.0, 60.0), (2.0, HOTTEST_CORE), (3.0, 105.1), (4.0, 106.0))
    ]
    for now, possible, impossible in ((1.5, 1, 0), (2.0, 2, 0), (3.0, 2, 1), (4.0, 2, 2)):
        record = brisket(core=readings, now=at(now))
        assert (len(record.possible_core), len(record.impossible_core)) == (possible, impossible)


def test_the_cooks_word_of_this_moment_counts():
    """Said now; what is said of later, of something else, or without hours, does not."""
    told = [
        Incident("warm_fridge", at(5.0), {"hours": 1}),
        Incident("warm_fridge", at(5.1), {"hours": 1.0}),
        Incident("warm_brine", at(4.0), {"hours": 1.0}),
        Incident("warm_fridge", at(4.0), {"hours": None}),
    ]
    assert brisket(now=at(5.0), incidents=tuple(told)).said_cold("warm_fridge") == (at(4.0),)
