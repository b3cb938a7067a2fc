"""How warm the meat was when it went on: told before or after, it begins the cook and stands in the record."""

from datetime import UTC, datetime, timedelta

import pytest

from core.batch.assess import assess
from core.batch.batch import fold
from core.batch.doubts import doubt
from core.batch.events import Done, Event, Probe, Read, Started, What
from core.batch.material import cook_of
from core.person import Person

ON = datetime(2027, 10, 1, 6, tzinfo=UTC)
HEDDA = Person("hedda", zone="UTC", zone_known=True, cure_nitrite_fraction=0.0625)
SETUP = {"product": "pastrami", "cut": "brisket_flat", "mass": 3.2, "thickness": 0.05, "cure_nitrite_fraction": 0.0625}
WEEK = (("brine", -240.0), ("into_cure", -239.0), ("out", -12.0), ("light", -1.0), ("meat_on", 0.0))


def events(*told: tuple[What, float]) -> list[Event]:
    """A week that was kept, and what was said round the time it went on. [h from then]"""
    said = [(Started("flat", SETUP), -241.0), *((Done(key), h) for key, h in WEEK), *told]
    at = [(ON + timedelta(hours=h), what) for what, h in said]
    return [Event(n, when, when, "hedda", f"m{n}", what) for n, (when, what) in enumerate(at, 1)]


@pytest.mark.parametrize("celsius", [3.0, 8.0, 14.0])
def test_the_cook_begins_as_warm_as_told(celsius: float) -> None:
    """A core of the minute before is the start of the cook."""
    assert cook_of(fold("b", events((Read(Probe.CORE, celsius), -1 / 60))), HEDDA).start_c == celsius


def test_warmer_meat_is_ready_sooner() -> None:
    """Ten degrees at the start save time."""
    cold, warm = (assess(fold("b", events((Read(Probe.CORE, c), -1 / 60))), HEDDA, ON).ready for c in (2.0, 12.0))
    assert cold is not None
    assert warm is not None
    assert warm.p50 < cold.p50


def test_raw_meat_of_before_is_no_slip_of_the_clock_and_hot_meat_is() -> None:
    """8 °C a minute before it went on is believed; 68 °C then is asked about."""
    a = assess(fold("b", events((Read(Probe.PIT, 121.0), 1.0))), HEDDA, ON + timedelta(hours=1))
    before = ON - timedelta(minutes=1)
    assert doubt(a, Probe.CORE, 8.0, before) is None
    assert doubt(a, Probe.CORE, 68.0, before) is not None


@pytest.mark.parametrize(
    ("celsius", "hours", "doubted"),
    [(10.0, 11.2, True), (40.0, 11.2, False), (10.0, 12.5, False), (24.0, 11.8, False)],
)
def test_a_core_told_late_is_held_against_what_was_read_after_it(celsius: float, hours: float, doubted: bool) -> None:
    """Meat that cools grows no warmer: 10 °C of an hour before 26 °C would end the watch over its chill."""
    told = ((Done("off"), 10.5), (Done("chill"), 10.6), (Read(Probe.CORE, 60.0), 11.0), (Read(Probe.CORE, 26.0), 12.0))
    a = assess(fold("b", events(*told)), HEDDA, ON + timedelta(hours=13))
    assert (doubt(a, Probe.CORE, celsius, ON + timedelta(hours=hours)) is not None) is doubted
