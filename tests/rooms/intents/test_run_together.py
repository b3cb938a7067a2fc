"""Statements that are run together, hours by the half, and the unit of a number that was asked about."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from bot.intents.context import Context
from bot.intents.intents import Choose
from bot.intents.read import read
from core.batch.events import Probe
from core.person import Units
from tests.rooms.intents.shorthand import short

HERE = Context(
    datetime(2027, 9, 26, 12, tzinfo=UTC),
    "America/Chicago",
    Units("lb", "in", "f"),
    phase="curing",
    batch="x",
    batches=(("x", "Flat"),),
    deadline=datetime(2027, 10, 2, 18, tzinfo=UTC),
)


@pytest.mark.parametrize(
    ("phase", "text", "parts"),
    [
        ("curing", "rolled it over its 37 in there n skip tonites im beat", ["done flip", "read fridge 37f", "skip"]),
        ("drying", "spice is on back in the fridge no cover", ["done rub", "done dry"]),
    ],
)
def test_each_statement_is_taken(phase: str, text: str, parts: list[str]) -> None:
    """As if a comma stood between them."""
    said = short(read(text, replace(HERE, phase=phase)))
    assert all(part in said for part in parts), said


@pytest.mark.parametrize(
    "text", ["didnt flip it when the fridge was 44", "i said 6.5 but its 6.4 lb", "not flipped fridge 38"]
)
def test_what_hangs_on_another_is_no_statement(text: str) -> None:
    """Nothing is done by it."""
    assert "done flip" not in short(read(text, HERE))


@pytest.mark.parametrize(("zone", "asked"), [("America/Chicago", False), ("Europe/Vienna", True)])
def test_half_past(zone: str, asked: bool) -> None:
    """«half one» is half past where nobody means the hour before it by it, and asked of all others."""
    assert (short(read("we eat at half one", replace(HERE, zone=zone))) == "ask") is asked


def test_a_unit_keeps_the_thermometer_that_was_offered() -> None:
    """«thats celsius», of a pit that was asked about, makes no core."""
    asked = replace(HERE, phase="cooking", asked="probe", asked_value=95.0, asked_probe=Probe.PIT)
    assert read("thats celsius", asked) == [Choose("probe", "pit/c")]
