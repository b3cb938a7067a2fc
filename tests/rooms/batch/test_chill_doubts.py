"""A core in the chill that fell faster than meat of its thickness can is doubted: it would end the watch over it."""

from datetime import timedelta

import pytest

from core.batch.assess import Assessment, assess
from core.batch.batch import fold
from core.batch.doubts import doubt
from core.batch.events import Done, Incident, Probe, Read, What
from tests.rooms.batch.test_start_temperature import HEDDA, ON, events


def chilling(*told: tuple[What, float], hours: float) -> Assessment:
    """A flat of 50 mm that came off after 10.5 h and lies in the ice since 10.6 h."""
    off = (Done("off"), 10.5), (Done("chill"), 10.6)
    return assess(fold("b", events(*off, *told)), HEDDA, ON + timedelta(hours=hours))


@pytest.mark.parametrize(("celsius", "minutes", "doubted"), [(60.0, 30, False), (4.0, 30, True), (4.0, 120, False)])
def test_the_last_core_on_the_fire_counts_where_none_was_read_since(
    celsius: float, minutes: int, doubted: bool
) -> None:
    """90 °C at 10.4 h, and off: 4 °C half an hour later is asked about, though nothing was read between."""
    hours = 10.4 + minutes / 60
    a = chilling((Read(Probe.CORE, 90.0), 10.4), hours=hours)
    assert (doubt(a, Probe.CORE, celsius, ON + timedelta(hours=hours)) is not None) is doubted


def test_small_steps_come_to_a_fall_too() -> None:
    """Each step less than another place of the meat makes, all of them together more than it can."""
    steps = tuple((Read(Probe.CORE, 60.0 - 7.0 * n), 11.0 + n / 60) for n in range(5))
    a = chilling(*steps, hours=11.2)
    assert doubt(a, Probe.CORE, 25.0, ON + timedelta(hours=11.1)) is not None


def test_layers_cool_as_layers() -> None:
    """Cut flat to 12 mm it may well be cold in half an hour."""
    told = ((Read(Probe.CORE, 60.0), 11.0), (Incident("cut", {"thickness": 0.012}), 11.0))
    assert doubt(chilling(told[0], hours=11.5), Probe.CORE, 5.0, ON + timedelta(hours=11.4)) is not None
    assert doubt(chilling(*told, hours=11.5), Probe.CORE, 5.0, ON + timedelta(hours=11.4)) is None


def test_nothing_is_doubted_before_it_came_off() -> None:
    """A fall on the fire is no chill: the readings of the cook have their own doubts."""
    a = chilling((Read(Probe.CORE, 90.0), 10.4), hours=11.0)
    assert doubt(a, Probe.CORE, 62.0, ON + timedelta(hours=10.45)) is None


@pytest.mark.parametrize(("celsius", "doubted"), [(14.0, False), (15.0, True), (39.0, True)])
def test_meat_in_the_chill_grows_no_warmer(celsius: float, doubted: bool) -> None:
    """39 °C half an hour after 6 °C is a probe in the air, or °F: kept, it would condemn meat that was cold in time."""
    a = chilling((Read(Probe.CORE, 60.0), 11.0), (Read(Probe.CORE, 6.0), 13.0), hours=13.5)
    assert (doubt(a, Probe.CORE, celsius, ON + timedelta(hours=13.5)) is not None) is doubted
