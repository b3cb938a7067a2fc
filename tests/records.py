"""Records and histories for the tests of core.safety: hours and °F in, as the rules are printed."""

import csv
from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

from core.safety.history import Reading
from core.safety.record import Record
from core.units import celsius_from_fahrenheit

START = datetime(2027, 3, 6, 8, tzinfo=UTC)  # the meat goes on
PUBLISHED = Path(__file__).parent / "published" / "safety"


def at(hours: float) -> datetime:
    """A time, in hours after the meat went on."""
    return START + timedelta(hours=hours)


def history(*points: tuple[float, float]) -> tuple[Reading, ...]:
    """Readings from (hours, °F)."""
    return tuple(Reading(at(hours), celsius_from_fahrenheit(fahrenheit)) for hours, fahrenheit in points)


def held(fahrenheit: float, seconds: float) -> tuple[Reading, ...]:
    """Two readings of one temperature, so many seconds apart."""
    return history((0.0, fahrenheit), (seconds / 3600.0, fahrenheit))


def table(name: str) -> list[dict[str, str]]:
    """The rows of a published table, as it was copied into the tests."""
    return list(csv.DictReader((PUBLISHED / f"{name}.csv").read_text(encoding="utf-8").splitlines()))


COLD_WEEK = history(*((-24.0 * day, 38.0) for day in range(8)))
COOK = ((0.0, 39.0), (1.0, 60.0), (3.0, 120.0), (4.0, 142.0), (6.0, 158.0), (10.0, 195.0))
CHILL = ((11.0, 140.0), (11.5, 130.0), (12.5, 80.0), (16.0, 40.0))

BRISKET = Record(
    species="beef",
    now=at(17.0),
    product_class="pastrami",
    ingoing_mg_kg=150.0,
    cured_centre_mg_kg=30.0,
    at_risk_eaters=False,
    core=history(*COOK, *CHILL),
    fridge=COLD_WEEK,
    put_in_cure_at=at(-24.0 * 7),
    out_at=at(-13.0),
    meat_on_at=at(0.0),
    off_at=at(10.2),
    chill_started_at=at(11.0),
)


def brisket(points: Sequence[tuple[float, float]] | None = None, /, **changes: object) -> Record:
    """The brisket of the harvest supper, with other core readings (hours, °F) and whatever else is different."""
    other = {} if points is None else {"core": history(*points)}
    return replace(BRISKET, **{**other, **changes})  # type: ignore[arg-type]
