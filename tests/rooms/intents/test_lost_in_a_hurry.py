"""Hurried lines of which a part was lost or taken otherwise, and what stands beside them and means the opposite."""

import pytest

from bot.intents.intents import (
    Ask,
    Change,
    Correct,
    Debrief,
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


@pytest.mark.parametrize(
    ("text", "product"),
    [
        ("9 lb bone in pork loin smoked like ham", "back_bacon"),
        ("3 lb cod loin hot smoked", "other_fish"),
        ("bresaola from a 2 lb eye of round", "sausage"),
        ("4 lb loin for canadian bacon", "back_bacon"),
        ("a ham for easter", "ham"),
    ],
)
def test_what_it_is_and_not_what_it_is_like(text: str, product: str) -> None:
    """A cod has a loin too, and a loin may be smoked like a ham."""
    assert meat(text).product == product


def test_what_is_going_to_be_done_is_no_deed() -> None:
    """«gonna light it at 8 not quarter to 7» lights nothing this morning."""
    found = read("gonna light it at 8 not quarter to 7", context("drying"))
    assert not any(isinstance(one, StepDone | Correct) for one in found)


@pytest.mark.parametrize("text", ["fed 9 of us 1.2 lb left in the fridge", "1.2 lb left", "2 lb of leftovers"])
def test_what_was_not_eaten_is_no_yield(text: str) -> None:
    """What is left over is no weight after the cook; «4.1 lb left» of seven is."""
    eaten = context("stored", POUNDS, mass=3.2)
    assert not any(isinstance(one, Debrief) for one in read(text, eaten))
    assert any(isinstance(one, Debrief) for one in read("4.1 lb left", eaten))


@pytest.mark.parametrize(
    "text",
    ["kids left the fridge open all afternoon says 47", "power was off from 2 til 5 last night fridge is 41 now"],
)
def test_what_a_fridge_reads_beside_what_befell_it(text: str) -> None:
    """Both are heard."""
    assert sorted(one.__name__ for one in kinds(read(text, CURE))) == ["Happened", "Reading"]


def test_a_comma_behind_a_comma() -> None:
    """«4,5, gewendet» is four and a half degrees."""
    assert normal("kühlschrank 4,5, gewendet", "de", celsius=True) == "fridge 4.5, flipped"


@pytest.mark.parametrize(
    "text", ["wrapped at 158 in foil 20 min ago now 163", "lid thermometer says 290 grate says 255"]
)
def test_a_second_number_is_not_asked_about(text: str) -> None:
    """It is the core of now, or the lid's, which does not count."""
    found = read(text, FIRE)
    assert any(isinstance(one, Reading) for one in found)
    assert not any(isinstance(one, Unclear) for one in found)


def test_a_strength_and_a_country() -> None:
    """Neither is lost."""
    found = read("0.5% nitrite and im in germany", context("waiting", asked="cure"))
    assert kinds(found)[-1] is Settings
    assert len(found) == 2


def test_what_rests_until_an_hour_did_not_rest_since_it() -> None:
    """«til 8» is to come."""
    found = read("resting in the oven at 150 til 8", context("resting"))
    assert all(one.at is None for one in found if isinstance(one, StepDone))


def test_out_of_the_cure_is_no_meal() -> None:
    """«out friday 3pm not thursday» moves no meal; «dinner friday 3pm not thursday» does."""
    assert not any(isinstance(one, MoveDeadline) for one in read("out friday 3pm not thursday", CURE))
    assert kinds(read("dinner friday 3pm not thursday", CURE)) == [MoveDeadline]


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("dinner on thanksgiving", (11, 25)),
        ("dinner on thanksgiving eve", (11, 24)),
        ("dinner is the day after thanksgiving", (11, 26)),
        ("dinner on labor day", (9, 6)),
        ("dinner on memorial day", (5, 31)),
        ("dinner the day before christmas", (12, 24)),
    ],
)
def test_the_days_about_a_feast(text: str, day: tuple[int, int]) -> None:
    """By the calendar of 2027."""
    (move,) = read(text, FIRE)
    assert isinstance(move, MoveDeadline)
    assert move.to is not None
    assert (move.to.month, move.to.day) == day


@pytest.mark.parametrize(
    ("text", "changes"),
    [
        ("gonna pull at 190 not 195", {"target_c": pytest.approx(87.78, abs=0.01)}),
        ("is 2.5 inch thick not 1.5", {"thickness": pytest.approx(0.0635)}),
        ("12.6 lb it was btw", {"mass": pytest.approx(5.715, abs=0.001)}),
    ],
)
def test_figures_that_are_put_right_in_passing(text: str, changes: dict[str, object]) -> None:
    """Each is changed."""
    assert read(text, FIRE if "pull" in text else CURE) == [Change(changes)]


@pytest.mark.parametrize(
    "text",
    ["fridge died overnight its 52 in there now", "fridge 36 tonite 38 this mornin", "fridge 36 now 38 this morning"],
)
def test_a_fridge_that_is_read_beside_its_night(text: str) -> None:
    """No number of it is lost, and none is of a brine."""
    read_ = [t for one in read(text, CURE) if isinstance(one, Reading) for t in one.temperatures]
    assert read_
    assert {t.probe for t in read_} == {Probe.FRIDGE}


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("waage sagt 3,35 kg", "it weighs 3.35 kg"),
        ("wir sind 7", "now 7 people coming"),
        ("liegt jetzt im kühlschrank mit 12 grad", "its in the fridge at 12"),
    ],
)
def test_short_german(text: str, plain: str) -> None:
    """In the words that the readers know."""
    assert normal(text, "de", celsius=True) == plain
