"""Hurried lines of which a part was lost or taken otherwise, and what stands beside them and means the opposite."""

import pytest

from bot.intents.intents import (
    Ask,
    Change,
    Correct,
    HandOver,
    Intent,
    MoveDeadline,
    Pause,
    Reading,
    Settings,
    StepDone,
    Unclear,
)
from bot.intents.meats import meat
from bot.intents.normal import normal
from bot.intents.read import read
from core.batch.events import Probe
from tests.talk_lines import KILOS, POUNDS, context

CURE, FIRE = context("curing", POUNDS), context("cooking", POUNDS)
WAIT, CHILL = context("waiting", POUNDS), context("chilling", KILOS, language="de")


def kinds(found: list[Intent]) -> list[type[Intent]]:
    return [type(one) for one in found]


@pytest.mark.parametrize(
    "text",
    [
        "that 148 was by the fat its 139 in the middle",
        "the 148 was next to the bone, really 139 in the thick part",
    ],
)
def test_a_core_at_the_wrong_spot_is_put_right(text: str) -> None:
    """The number that was noted makes room."""
    assert read(text, FIRE) == [Correct(value=139.0, was=148.0)]


def test_a_pit_that_runs_is_read() -> None:
    """«running 245» is what it does, «run 245» what it shall do."""
    (reading,) = read("running 245", FIRE)
    assert isinstance(reading, Reading)
    assert reading.temperatures[0].probe is Probe.PIT
    assert kinds(read("run it at 245", FIRE)) == [Change]


@pytest.mark.parametrize(
    "text", ["dinner maybe 7 or 8 not sure yet", "supper at 7 or 8", "guests come at 7 or maybe 8"]
)
def test_of_two_hours_none_is_taken(text: str) -> None:
    """Both are there to tap."""
    (found,) = read(text, FIRE)
    assert isinstance(found, Unclear)
    assert kinds(list(found.options)) == [MoveDeadline, MoveDeadline]


@pytest.mark.parametrize("text", ["folks cant come til 3 tomorrow", "my inlaws wont be here before 3 tomorrow"])
def test_guests_by_any_name_move_the_meal(text: str) -> None:
    """Nobody goes away."""
    assert kinds(read(text, CURE)) == [MoveDeadline]


def test_a_dish_came_off_no_fire() -> None:
    """«pulled pork for tea» is a wish, «pulled the pork» a deed."""
    assert not any(isinstance(one, StepDone) for one in read("pulled pork for tea", FIRE))
    assert kinds(read("pulled the pork", FIRE)) == [StepDone]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("fridge 37 shut up til 8", [Reading, Pause]),
        ("flipped fridge 37 leave me be til 8", [StepDone, Reading, Pause]),
        ("off to my sisters back sunday nite dave next door does the flips", [Pause, HandOver]),
        ("turned it at 6 n again just now", [StepDone, StepDone]),
        ("theres gonna be 11 of us", [Ask]),
        ("celsius please im canadian", [Settings]),
    ],
)
def test_nothing_of_it_is_lost(text: str, said: list[type[Intent]]) -> None:
    """Each statement is heard."""
    found = read(text, CURE)
    assert sorted(one.__name__ for one in kinds(found)) == sorted(one.__name__ for one in said)


@pytest.mark.parametrize(
    "text", ["44 on the lil thermometer next to the milk", "44 beside the butter", "its 44 by the eggs"]
)
def test_what_lies_in_a_fridge_names_it(text: str) -> None:
    """A number beside the milk is the fridge's."""
    (reading,) = read(text, CURE)
    assert isinstance(reading, Reading)
    assert reading.temperatures[0].probe is Probe.FRIDGE


@pytest.mark.parametrize(
    "text",
    ["1.35 kg really after i cut the tail off", "actually 1.35 kg on the scale", "its 1.35 kg now ive trimmed it"],
)
def test_a_weight_after_the_knife(text: str) -> None:
    """It is weighed anew."""
    assert read(text, WAIT) == [Change({"mass": pytest.approx(1.35)})]


def test_plain_smoked_pork_is_no_cured_shoulder() -> None:
    """A shoulder without a cure is smoked and pulled; one that has its cure yet to come is cured."""
    assert meat("pork butt 8 lb no cure just smoke").product == "pulled_pork"
    assert meat("8 lb pork butt buckboard bacon, no cure yet").product == "shoulder"


def test_ice_that_was_added_is_no_coal() -> None:
    """«eis nachgelegt», with its reading and its meal."""
    assert normal("34 grad, eis nachgelegt", "de", celsius=True) == "34 c, added ice"
    assert normal("kohle nachgelegt", "de", celsius=True).endswith("added charcoal")


@pytest.mark.parametrize("text", ["27 grad inzwischen", "27 grad mittlerweile"])
def test_a_core_of_by_now(text: str) -> None:
    """It is read."""
    assert kinds(read(text, CHILL)) == [Reading]
