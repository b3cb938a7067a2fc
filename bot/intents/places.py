"""A shared location into the names of the time zones that it may lie in, the nearest first.

By the principal place of each zone and its coordinates in `zone1970.tab` of the IANA time zone database, which comes
with the package tzdata; distances on a sphere. Near a border the nearest place may lie on the other side of it, so
that the next ones with another clock are offered too.
"""

from collections.abc import Iterator
from datetime import datetime
from functools import cache
from importlib.resources import files
from math import asin, cos, radians, sin, sqrt
from typing import Final
from zoneinfo import ZoneInfo

from core import patterns as re

EARTH_KM: Final = 6371.0  # mean radius
NEAR: Final = 2.5  # times as far as the nearest place: what lies further is no neighbour
OFFERED: Final = 2
_SHARED: Final = re.compile(r"^(?P<latitude>-?\d{1,2}(?:\.\d{1,12})?),(?P<longitude>-?\d{1,3}(?:\.\d{1,12})?)$")
# ISO 6709: ±DDMM±DDDMM, or with seconds
_COORDINATES: Final = re.compile(r"([+-])(\d{2})(\d\d)(\d\d)?([+-])(\d{3})(\d\d)(\d\d)?")


def zones_at(shared: str, now: datetime) -> tuple[str, ...]:
    """The zone of the nearest place, then up to two near ones whose clock shows another hour; none for no location.

    Parameters
    ----------
    shared
        «latitude,longitude» in degrees.
    now
        Aware; decides which clocks differ.
    """
    found = _SHARED.match(shared.strip())
    if found is None:
        return ()
    here = (float(found["latitude"]), float(found["longitude"]))
    if abs(here[0]) > 90 or abs(here[1]) > 180:
        return ()
    ordered = sorted((_kilometres(here, place), name) for name, place in _places())
    nearest, first = ordered[0]
    shown = {_clock(first, now)}
    out = [first]
    for far, name in ordered[1:]:
        if far > NEAR * nearest or len(out) > OFFERED:
            break
        if _clock(name, now) not in shown:
            shown.add(_clock(name, now))
            out.append(name)
    return tuple(out)


def _clock(zone: str, now: datetime) -> object:
    return now.astimezone(ZoneInfo(zone)).utcoffset()


def _kilometres(one: tuple[float, float], two: tuple[float, float]) -> float:
    """Along the great circle, by the haversine."""
    north, south = radians(one[0]), radians(two[0])
    across = sin((south - north) / 2) ** 2
    across += cos(north) * cos(south) * sin(radians(two[1] - one[1]) / 2) ** 2
    return 2 * EARTH_KM * asin(min(1.0, sqrt(across)))


@cache
def _places() -> tuple[tuple[str, tuple[float, float]], ...]:
    table = files("tzdata").joinpath("zoneinfo", "zone1970.tab").read_text("utf-8")
    return tuple(_rows(table))


def _rows(table: str) -> Iterator[tuple[str, tuple[float, float]]]:
    for line in table.splitlines():
        if line and not line.startswith("#"):
            _, coordinates, name, *_ = line.split("\t")
            (parts,) = _COORDINATES.findall(coordinates)
            yield name, (_degrees(*parts[:4]), _degrees(*parts[4:]))


def _degrees(sign: str, degrees: str, minutes: str, seconds: str) -> float:
    value = int(degrees) + int(minutes) / 60 + int(seconds or 0) / 3600
    return -value if sign == "-" else value
