"""How people talk in a yard: where a thermometer lies, where meat rests, whom they leave the flips to."""

from datetime import time

import pytest

from bot.intents.intents import (
    Change,
    HandOver,
    Happened,
    MoveDeadline,
    Question,
    Reading,
    Settings,
    StepDone,
    StepMissed,
)
from bot.intents.read import read
from core.batch.events import Probe
from tests.talk_lines import POUNDS, context


def test_a_thermometer_in_the_brine_is_no_meat_in_it() -> None:
    """Only the brine is read; the meat waits for its cold."""
    (found,) = read("poked the thermometer in the brine its still 58", context("waiting", POUNDS))
    assert isinstance(found, Reading)
    assert [t.probe for t in found.temperatures] == [Probe.BRINE]


def test_beside_the_meat_is_the_fridge() -> None:
    """The warm morning and the cold night before it."""
    (found,) = read("48 beside the bag this mornin was 37 last nite", context("curing", POUNDS))
    assert isinstance(found, Reading)
    assert [(t.probe, t.value) for t in found.temperatures] == [(Probe.FRIDGE, 48.0), (Probe.FRIDGE, 37.0)]


def test_into_a_box_it_comes_off_and_rests() -> None:
    """With the core at which it came off."""
    found = read("pulled it at 203 bundled up in the old cooler with towels", context("cooking", POUNDS))
    assert [type(one) for one in found] == [Reading, StepDone, StepDone]


def test_what_rests_hot_was_not_left_out() -> None:
    """152 °F on the counter is a reading; two hours on the counter are meat that was left out."""
    assert isinstance(read("down to 152 sitting on the counter", context("resting", POUNDS))[0], Reading)
    assert isinstance(read("left it sitting on the counter for 2 hours", context("resting", POUNDS))[0], Happened)


@pytest.mark.parametrize(
    ("line", "phase", "kinds"),
    [
        ("slept through last nights turn sorry did it at 6 this morning", "curing", [StepMissed, StepDone]),
        ("flipped at 7, fridge 36 and can we eat at noon instead", "curing", [StepDone, Reading, MoveDeadline]),
        ("forget the foil im leavin it naked", "cooking", [Change]),
        ("fat is on fire down there, flames out the vent, gettin the hose", "cooking", [Question]),
        ("theres a good half cup of juice in the bag should i tip it", "curing", [Question]),
    ],
)
def test_what_is_told(line: str, phase: str, kinds: list[type]) -> None:
    """Deeds as deeds, a fire as a danger that nobody takes over, juice as no spoon of cure."""
    assert [type(one) for one in read(line, context(phase, POUNDS))] == kinds


def test_whom_the_flips_are_left_to() -> None:
    """By the name, and not as somebody called «boy»."""
    found = read("off to my sisters til sunday nite my lad rob is doin the flips", context("curing", POUNDS))
    assert [one.to for one in found if isinstance(one, HandOver)] == ["rob"]


@pytest.mark.parametrize(
    ("line", "changes"),
    [
        ("moved out to denver last month fix ur clock", {"zone": "America/Denver"}),
        ("no pings between ten at night and 8 pls i work early", {"quiet_from": time(22), "quiet_to": time(8)}),
    ],
)
def test_what_is_set(line: str, changes: dict[str, object]) -> None:
    """A clock that moved, and a night that is no working day."""
    (found,) = read(line, context("curing", POUNDS))
    assert isinstance(found, Settings)
    assert found.changes == changes
