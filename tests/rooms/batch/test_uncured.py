"""What does not count as cured keeps like leftovers: under the floor, in plain salt, or with the cure forgotten."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from core.batch.assess import assess
from core.batch.batch import Batch
from core.batch.cured import counts_as_cured, storage_of
from core.batch.events import Incident, Sliced
from core.batch.material import dose_of
from core.person import Person
from core.plan.recipe import product
from core.plan.setup import Setup

NOW = datetime(2027, 3, 1, 12, tzinfo=UTC)


def setup(name: str = "bacon", **said: object) -> Setup:
    return product(name).setup({"mass": 2.0, "cure_nitrite_fraction": 0.0625} | said)


@pytest.mark.parametrize("place", ["US", "CA", "EU", "UK"])
@pytest.mark.parametrize("name", ["pastrami", "bacon", "ham", "duck"])
def test_the_house_s_own_dose_counts_as_cured(name: str, place: str) -> None:
    """By its defaults each is over the floor: US 120 (handbook p. 12), Canada 100, else the cooling rule's 100."""
    made = setup(name, mass=0.5 if name == "duck" else 2.0)
    assert counts_as_cured(dose_of(made, place))
    assert storage_of(made, dose_of(made, place), 100.0) == product(name).storage


@pytest.mark.parametrize(("nitrite", "line"), [(120.0, "bacon"), (119.0, "leftovers"), (60.0, "leftovers")])
def test_under_the_floor_bacon_keeps_like_leftovers(nitrite: float, line: str) -> None:
    """Seven days are for bacon that is cured (FSIS chart); under 120 mg/kg it has the three of cooked meat."""
    made = setup(nitrite_target=nitrite)
    assert storage_of(made, dose_of(made, "US"), nitrite) == line


@pytest.mark.parametrize(("days", "line", "keeps"), [(5.0, "leftovers", 3), (9.0, "bacon", 7)])
def test_bacon_that_is_cured_at_its_rim_alone_keeps_like_leftovers(days: float, line: str, keeps: int) -> None:
    """The middle has to hold 100 mg/kg at the slow end of the band, for keeping too; then the chart has seven days."""
    made = setup(thickness=0.042, cure_days=days)
    ida = Person("ida", "Ida", zone="Europe/Vienna")
    into, out = NOW - timedelta(days=days), NOW
    bag = Batch("b", "bacon", made, into, done={"into_cure": into, "out": out, "off": out + timedelta(days=1)})
    found = assess(bag, ida, out + timedelta(days=1, hours=1))
    assert found.ledger.record.product_class == line
    assert found.plan is not None
    use_by = found.plan.step("use_by")
    assert use_by is not None
    assert (use_by.due.date() - (out + timedelta(days=1)).date()).days == keeps


@pytest.mark.parametrize(
    ("seen", "line"),
    [
        (None, "bacon"),
        (Sliced(0.0, 0.042), "bacon"),
        (Sliced(0.006, 0.042), "leftovers"),
        (Sliced(None), "leftovers"),  # seen, and nobody measured it
    ],
)
def test_a_middle_that_was_seen_grey_counts_as_uncured(seen: Sliced | None, line: str) -> None:
    """What the slice showed counts more than what was modelled: it keeps, and cools, by the stricter rules."""
    made = setup(thickness=0.042, cure_days=9.0)
    into = NOW - timedelta(days=9)
    done = {"into_cure": into, "out": NOW, "off": NOW + timedelta(days=1)}
    bag = Batch("b", "bacon", made, into, done=done, sliced=seen)
    record = assess(bag, Person("ida", "Ida", zone="Europe/Vienna"), NOW + timedelta(days=1, hours=1)).ledger.record
    assert record.product_class == line
    assert (record.cured_centre_mg_kg is None) is (line == "leftovers")


def test_plain_salt_keeps_like_leftovers_and_fish_by_its_own_line() -> None:
    """Without nitrite a ham is a roast; smoked fish has a line of its own."""
    roast = setup("ham", nitrite_target=0.0)
    assert storage_of(roast, dose_of(roast, "US"), None) == "leftovers"
    side = setup("salmon", mass=1.2)
    assert storage_of(side, dose_of(side, "EU"), None) == "salmon"


def test_a_cure_forgotten_in_the_bag_is_no_cure() -> None:
    """From then on nothing in the middle counts for cooling or keeping; before the meat was in, nothing was lost."""
    bag = Batch("b", "bacon", setup(cure_days=12.0), NOW, done={"into_cure": NOW})
    forgot = (NOW + timedelta(hours=30), Incident("forgot_cure", {}))
    ida = Person("ida", "Ida", zone="Europe/Vienna")
    later = NOW + timedelta(days=3)

    assert assess(bag, ida, later).ledger.record.product_class == "bacon"
    record = assess(replace(bag, incidents=(forgot,)), ida, later).ledger.record
    assert (record.product_class, record.cured_centre_mg_kg) == ("leftovers", None)
    early = (NOW - timedelta(hours=1), Incident("forgot_cure", {}))
    assert assess(replace(bag, incidents=(early,)), ida, later).ledger.record.product_class == "bacon"
