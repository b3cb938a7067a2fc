"""What a fried slice of the fresh cured meat tasted like, the brine that cools, and what is no thermometer."""

import pytest

from bot.intents.intents import Ask, MoveDeadline, Pause, Reading, StepDone, Temperature
from bot.intents.read import read
from core.batch.events import Probe
from tests.talk_lines import KILOS, context

OUT = context("drying")


@pytest.mark.parametrize(
    ("text", "detail"),
    [
        ("tastes fine", "tastes fine"),
        ("fried a piece and its good", "tastes fine"),
        ("rinsed, tastes alright", "tastes fine"),
        ("it tastes a bit sour", "tastes off"),
        ("rinsed and tastes off", "tastes off"),
        ("tastes bland", "tastes bland"),
    ],
)
def test_a_taste_belongs_to_the_rinse(text: str, detail: str) -> None:
    """Told with it or after it."""
    assert read(text, OUT) == [StepDone("rinse", detail=detail)]


@pytest.mark.parametrize("text", ["tastes salty", "tasted a slice, bit salty", "its way too salty"])
def test_too_salty_asks_for_the_soak(text: str) -> None:
    """How long it has to lie in water is computed."""
    found = read(text, OUT)[0]
    assert isinstance(found, Ask)
    assert found.topic == "soak"


def test_a_brine_that_is_made_is_what_cools() -> None:
    """A bare number, in the same line or later; before that it is asked about."""
    made = read("brine made, its 20 now", context("waiting", KILOS))
    assert made[-1] == Reading((Temperature(20.0, "c", Probe.BRINE),))
    assert not isinstance(read("its 4 now", context("waiting"))[0], Reading)


def test_meat_in_names_no_thermometer() -> None:
    """While it is open which number that was, a deed is a deed."""
    assert read("meat in", context("waiting", asked="probe", asked_value=4.0)) == [StepDone("into_cure")]


@pytest.mark.parametrize("text", ["guests can wait til 2", "they wont be here before 3", "dinner can wait till 7"])
def test_guests_who_wait_move_the_meal(text: str) -> None:
    """A step that can wait is put off, guests who can wait move the meal."""
    assert isinstance(read(text, context("cooking"))[0], MoveDeadline)


@pytest.mark.parametrize("text", ["im not home until 6", "wont be home til sunday"])
def test_not_at_home_is_away(text: str) -> None:
    """Quiet till then."""
    assert isinstance(read(text, context("curing"))[0], Pause)
