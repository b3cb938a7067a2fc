"""The freezing that kills the worms of fish, by the code's own figures."""

import csv
from pathlib import Path

import pytest

from core.errors import OutOfRange
from core.safety.parasites import freezing
from core.units import celsius_from_fahrenheit

with (Path(__file__).parent / "parasite_freezing.csv").open(encoding="utf-8") as file:
    ROWS = list(csv.DictReader(file))


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['freezer_C']} °C {row['hours']} h")
def test_as_the_code_says(row: dict[str, str]) -> None:
    found = freezing(float(row["freezer_C"]), float(row["hours"]))
    assert found.enough is (row["enough"] == "yes")
    assert (found.rule is not None) is found.enough


@pytest.mark.parametrize(
    ("fahrenheit", "hours", "enough"),
    [(-4.0, 168.0, True), (-3.0, 1000.0, False), (-31.0, 15.0, True), (0.0, 8760.0, False)],
)
def test_in_fahrenheit_to_the_degree(fahrenheit: float, hours: float, enough: bool) -> None:
    """The code prints both scales, and both are its limits: no rounding makes -4 °F too warm, nor -3 °F cold enough."""
    assert freezing(celsius_from_fahrenheit(fahrenheit), hours).enough is enough


@pytest.mark.parametrize("celsius", [1.0, -91.0])
def test_what_no_freezer_is(celsius: float) -> None:
    with pytest.raises(OutOfRange, match="freezer"):
        freezing(celsius, 168.0)
