"""What is in stays in: by the law of the place where it was weighed, whichever is told later."""

from datetime import timedelta
from typing import Any

import pytest

from core.batch.batch import Batch, fold
from core.batch.events import Assumed, Corrected, Done, Event, Sliced, Started, What
from core.batch.learn import learned_from
from core.batch.weighed import dose_in
from core.errors import OverLimit
from core.person import Learned, Person
from tests.weeks import MONDAY

PASTRAMI: dict[str, Any] = {"product": "pastrami", "cut": "brisket_flat", "mass": 3.4, "cure_nitrite_fraction": 0.0625}
SALMON: dict[str, Any] = {"product": "salmon", "cut": "salmon_side", "mass": 1.4, "cure_nitrite_fraction": 0.0625}
BY_US = Assumed({"law": "US"})


def batch(setup: dict[str, Any], *told: What) -> Batch:
    """A batch of which that was told, an hour apart."""
    lines = enumerate((Started("b", setup), *told), 1)
    return fold("b", [Event(n, at := MONDAY + timedelta(hours=n), at, "hedda", f"m{n}", what) for n, what in lines])


def test_every_gram_stays_and_the_limit_is_that_of_the_place() -> None:
    """Cure, salt, sugar and water as the US weighs them, held to the 120 of the EU."""
    here = dose_in(batch(PASTRAMI, Done("brine")), "US")
    there = dose_in(batch(PASTRAMI, Done("brine"), BY_US), "EU")
    assert (there.cure_kg, there.salt_kg, there.water_kg) == (here.cure_kg, here.salt_kg, here.water_kg)
    assert there.nitrite_ingoing == pytest.approx(150.0)
    assert there.limit is not None
    assert there.limit.jurisdiction == there.jurisdiction == "EU"
    assert there.limit.source in there.sources


def test_over_the_limit_of_the_place_is_known_and_not_refused() -> None:
    """180 mg/kg that are in: refused only where they are still to be weighed."""
    asked = PASTRAMI | {"nitrite_target": 180.0}
    assert dose_in(batch(asked, Done("brine"), BY_US), "EU").nitrite_ingoing == pytest.approx(180.0)
    with pytest.raises(OverLimit):
        dose_in(batch(asked), "EU")


def test_a_place_without_a_limit_leaves_that_of_the_other() -> None:
    """Nitrite in salmon, which the EU has none for: what is in is in, by the limit of the US."""
    found = dose_in(batch(SALMON | {"nitrite_target": 100.0}, Done("into_cure"), BY_US), "EU")
    assert found.limit is not None
    assert found.limit.jurisdiction == found.jurisdiction == "US"


def test_weighed_anew_it_is_by_the_law_of_that_place() -> None:
    """The first brine was taken back before the second was made, in another place."""
    again = batch(PASTRAMI, Done("brine"), BY_US, Corrected(2), Done("brine"))
    assert dose_in(again, "EU").nitrite_ingoing < 120.0


def test_a_slice_of_what_another_law_forbids_teaches_without_a_refusal() -> None:
    """A log from before the law was kept, read by who lives elsewhere now: it teaches nothing, and refuses nothing."""
    told = (Done("into_cure"), Done("out"), Sliced(0.01, None))
    asked = batch(PASTRAMI | {"nitrite_target": 180.0}, *told)
    assert learned_from(asked, Person("hedda", jurisdiction="EU"), Learned()) == Learned()
