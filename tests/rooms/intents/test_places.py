"""A shared location is the zone of its place: cities by their coordinates, and the zone that the IANA database has."""

from datetime import UTC, datetime
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.intents.places import zones_at

NOW = datetime(2027, 9, 24, 7, 0, tzinfo=UTC)
# city, coordinates (degrees, from memory to a hundredth), zone by the IANA database
CITIES = (
    ("Vienna", "48.21,16.37", "Europe/Vienna"),
    ("Graz", "47.07,15.44", "Europe/Vienna"),
    ("London", "51.51,-0.13", "Europe/London"),
    ("Manchester", "53.48,-2.24", "Europe/London"),
    ("Dublin", "53.35,-6.26", "Europe/Dublin"),
    ("Chicago", "41.88,-87.63", "America/Chicago"),
    ("Denver", "39.74,-104.99", "America/Denver"),
    ("Toronto", "43.65,-79.38", "America/Toronto"),
    ("Halifax", "44.65,-63.57", "America/Halifax"),
    ("Vancouver", "49.28,-123.12", "America/Vancouver"),
    ("Sydney", "-33.87,151.21", "Australia/Sydney"),
    ("Tokyo", "35.68,139.69", "Asia/Tokyo"),
)


@pytest.mark.parametrize(("city", "shared", "zone"), CITIES, ids=lambda one: str(one).split(",")[0])
def test_a_city_is_in_its_zone(city: str, shared: str, zone: str) -> None:
    """The first that is offered shows the clock of the city."""
    assert zones_at(shared, NOW)[0] == zone


@given(st.floats(-90, 90), st.floats(-180, 180))
def test_everywhere_has_a_clock(latitude: float, longitude: float) -> None:
    """Any place on earth has one to three zones, of which no two show the same hour."""
    found = zones_at(f"{latitude:.6f},{longitude:.6f}", NOW)
    clocks = [NOW.astimezone(ZoneInfo(zone)).utcoffset() for zone in found]
    assert 1 <= len(found) <= 3
    assert len(clocks) == len(set(clocks))


@pytest.mark.parametrize("text", ["", "vienna", "91,0", "0,181", "1;2", "48.2"])
def test_what_is_no_location_has_none(text: str) -> None:
    """Other text, or coordinates that there are not."""
    assert zones_at(text, NOW) == ()
