"""A fire that burns again, and meat that goes on at the heat of its pit: no meal is moved, and no core is read."""

from dataclasses import replace

import pytest

from bot.intents.intents import Ask, Happened, MoveDeadline, Reading, Start, StepDone
from bot.intents.read import read
from core.batch.events import Probe
from tests.talk_lines import KILOS, POUNDS, context

FIRE = context("cooking", POUNDS)


@pytest.mark.parametrize(
    "text",
    ["relit 20 min later", "got it going again 20 min later", "20 min later relit", "lit it again about an hour later"],
)
def test_lit_again_after_a_while(text: str) -> None:
    """«relit 20 min later» moved the meal by twenty minutes; asked how long it was out, it is the answer."""
    (again,) = read(text, FIRE)
    assert isinstance(again, Ask)
    assert again.topic == "relit"
    (told,) = read(text, replace(FIRE, asked="happened_fire_out"))
    assert isinstance(told, Happened)
    assert told.facts["hours"] == pytest.approx(1.0 if "hour" in text else 1 / 3, abs=0.01)


@pytest.mark.parametrize("text", ["an hour later still 150", "half an hour later its back at 250"])
def test_what_was_later_moves_no_meal(text: str) -> None:
    """What was so a while later is told of the fire."""
    assert not any(isinstance(one, MoveDeadline) for one in read(text, FIRE))


@pytest.mark.parametrize("text", ["dinner an hour later", "1 hour later please", "guests come an hour later"])
def test_a_meal_is_moved_all_the_same(text: str) -> None:
    """A meal that is wanted later is moved."""
    assert any(isinstance(one, MoveDeadline) for one in read(text, FIRE))


@pytest.mark.parametrize("text", ["belly on at 200", "meat went on at 240", "put the brisket on at 225 f"])
def test_meat_goes_on_at_the_heat_of_its_pit(text: str) -> None:
    """«belly on at 200» was noted as a core of 200 °F."""
    found = read(text, context("drying", POUNDS))
    assert [one.step for one in found if isinstance(one, StepDone)] == ["meat_on"]
    assert [t.probe for one in found if isinstance(one, Reading) for t in one.temperatures] == [Probe.PIT]


def test_meat_on_at_an_hour() -> None:
    """An hour of the clock stays one."""
    (done,) = read("meat on at 7:20", context("drying", POUNDS))
    assert isinstance(done, StepDone)
    assert done.at is not None


@pytest.mark.parametrize("text", ["brennt wieder", "läuft wieder", "die glut glüht wieder", "nach 20 min wieder an"])
def test_it_burns_again_in_german(text: str) -> None:
    """«brennt wieder» was answered with the dose of the cure."""
    (again,) = read(text, replace(context("cooking", KILOS), language="de"))
    assert isinstance(again, Ask)
    assert again.topic == "relit"


@pytest.mark.parametrize("text", ["is jetzt in der lake", "ist jetzt im beutel", "schinken liegt in der lake"])
def test_it_lies_in_the_brine_in_german(text: str) -> None:
    """«is jetzt in der lake» was answered with the foam on a brine."""
    (done,) = read(text, replace(context("waiting", KILOS), language="de"))
    assert isinstance(done, StepDone)
    assert done.step == "into_cure"


def test_a_core_that_stands_is_no_meal() -> None:
    """«stuck at 150 for an hour now», of a piece that is half said, made a meal of ten to two."""
    half = replace(context("none", POUNDS), asked="mass", asked_of_start=True)
    assert not any(isinstance(one, Start) for one in read("stuck at 150 for an hour now", half))
