"""How hot the pit shall run and when to take it off, as they are wished for in passing."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from bot.intents.changes import read_change
from bot.intents.context import Context
from bot.intents.fields import stated
from bot.intents.intents import Change, Reading, Settings, Unclear
from bot.intents.read import read
from core.batch.events import Probe
from tests.talk_lines import context

WAITING = Context(datetime(2027, 9, 18, 18, tzinfo=UTC), phase="waiting")

COOKING = context("cooking")


@pytest.mark.parametrize(
    ("said", "celsius"),
    [
        ("pulled pit 110", 110.0),
        ("2.3 kg pork shoulder pulled pit 225 for saturday", 107.2),
        ("hot slices, smoker at 250", 121.1),
        ("pit 120 c", 120.0),
    ],
)
def test_a_pit_without_its_unit_is_taken_where_one_fits(said: str, celsius: float) -> None:
    """110 can only be °C of a pit, 225 only °F."""
    assert stated(said).fields["pit_c"] == pytest.approx(celsius, abs=0.06)


@pytest.mark.parametrize("said", ["pulled pit 180", "pit 20 min late", "pit 5", "pit 110:30", "the pit 12 kg"])
def test_what_may_be_either_or_none_is_no_pit(said: str) -> None:
    """180 is a pit in °F and a roast in °C; minutes, masses and hours are no pit."""
    assert "pit_c" not in stated(said).fields


@pytest.mark.parametrize(
    ("said", "celsius"),
    [
        ("take it off at 150 f", 65.6),
        ("take it off at 93", 93.0),
        ("off at 203", 95.0),
        ("pull the meat off at 95 c", 95.0),
        ("please take it to 190", 87.8),
    ],
)
def test_when_to_take_it_off_is_a_target(said: str, celsius: float) -> None:
    """«Take it off at» and «off at» name the core, in the unit that fits."""
    (change,) = read_change(said, WAITING)
    assert isinstance(change, Change)
    assert change.changes["target_c"] == pytest.approx(celsius, abs=0.06)


def test_off_at_an_hour_is_no_target() -> None:
    """«off at 17» is an hour."""
    assert not any("target_c" in getattr(found, "changes", {}) for found in read_change("off at 17", WAITING))


def test_meat_and_pit_named_the_wrong_way_round_are_asked_about() -> None:
    """«core 250 pit 125» in °F: no core is so warm, so the other way round is offered."""
    (asked,) = read("core 250 pit 125", replace(COOKING, last_core_c=43.0, last_pit_c=121.0))
    assert isinstance(asked, Unclear)
    assert asked.why == "pair"
    (option,) = asked.options
    assert isinstance(option, Reading)
    assert {(t.probe, t.value, t.unit) for t in option.temperatures} == {
        (Probe.CORE, 125.0, "f"),
        (Probe.PIT, 250.0, "f"),
    }


@pytest.mark.parametrize(
    ("said", "metres"),
    [
        ("we are at 1500 m", 1500.0),
        ("we live at 5000 ft", 1524.0),
        ("altitude 800 m", 800.0),
        ("elevation is 1 m", None),
    ],
)
def test_how_high_the_yard_lies_is_a_setting(said: str, metres: float | None) -> None:
    """Metres or feet; one metre is no height to speak of."""
    found = [
        i.changes["altitude_m"] for i in read(said, WAITING) if isinstance(i, Settings) and "altitude_m" in i.changes
    ]
    assert found == ([] if metres is None else [pytest.approx(metres)])
