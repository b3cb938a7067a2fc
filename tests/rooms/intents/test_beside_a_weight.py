"""Figures beside a weight and a cure: what is of something else is no piece, and what went in counts by any unit."""

import pytest

from bot.intents.intents import Change, Happened, Start, Unclear
from bot.intents.read import read
from tests.talk_lines import POUNDS, context

NONE, RAW, CURE = (context(phase, POUNDS) for phase in ("none", "waiting", "curing"))


@pytest.mark.parametrize(
    "text",
    [
        "bacon salt 2.5, 3 kg belly",
        "bacon, fridge 4, 3 kg belly",
        "bacon thickness 2, 3 kg belly",
        "bacon for 6, 3 kg belly",
        "bacon grade 2, 3 kg belly",
        "table for 8, 3 kg belly bacon",
        "room 20, 3 kg belly bacon",
        "belly for 6 3 kg",
        "belly for sat 6, 3 kg",
        "belly for march 6, 3 kg",
    ],
)
def test_a_number_of_something_else_is_no_first_piece(text: str) -> None:
    """A dose hangs on the weight: 3 kg, and not what stands before its comma on top of it."""
    begun = next(one for one in read(text, NONE) if isinstance(one, Start))
    assert begun.said["mass"] == pytest.approx(3.0)
    assert not begun.pieces


@pytest.mark.parametrize("text", ["fridge 38, 2 kg not 1.2", "fridge 4, 2 kg", "brine is at 3, 2 kg"])
def test_nor_is_what_was_read(text: str) -> None:
    """«fridge 38, 2 kg» is no piece of 38 kg."""
    assert Change({"mass": 2.0}) in read(text, RAW)


def test_pieces_without_a_label_are_pieces() -> None:
    """«ham 3, 4 and 5 lb» are three, as they were."""
    (begun,) = read("ham 3, 4 and 5 lb", NONE)
    assert isinstance(begun, Start)
    assert len(begun.pieces) == 3


@pytest.mark.parametrize(
    ("text", "kilos"),
    [
        ("put in 12 oz of curing salt", 0.3402),
        ("i used 1 lb of curing salt", 0.4536),
        ("used 0.5 oz curing salt", 0.01417),
        ("put in half an ounce of pink salt", 0.01417),
        ("put in 12 g of curing salt", 0.012),
    ],
)
def test_what_went_in_counts_by_any_unit(text: str, kilos: float) -> None:
    """Twelve ounces are judged as what they are, and asked for no strength."""
    (found,) = read(text, CURE)
    assert isinstance(found, Change)
    assert found.changes["put_in_cure"] == pytest.approx(kilos, rel=1e-3)


@pytest.mark.parametrize("text", ["put in 2 tsp of curing salt", "i used 3 teaspoons of cure"])
def test_a_spoon_is_asked_for_its_grams(text: str) -> None:
    """It is no strength of a curing salt, and no dose by guess."""
    (found,) = read(text, CURE)
    assert isinstance(found, Unclear)
    assert found.why in ("grams", "spoons")


@pytest.mark.parametrize(
    "text",
    [
        "no curing salt in it",
        "there is no pink salt in the bag",
        "no cure went in it",
        "we never put the cure in",
        "i didnt add any curing salt",
        "i forgot the pink salt",
    ],
)
def test_meat_that_lies_there_without_its_cure(text: str) -> None:
    """It is no wish for plain salt, which would come too late."""
    (found,) = read(text, CURE)
    assert isinstance(found, Happened)
    assert found.what == "forgot_cure"


def test_before_it_is_in_that_is_a_wish() -> None:
    """«no curing salt in it» of a batch that is planned."""
    assert read("no curing salt in it", RAW) == [Change({"nitrite_target": 0.0})]


@pytest.mark.parametrize("text", ["0.625", "0.588", "0.625 %", "cure is 0.625 %"])
def test_a_slip_of_the_point_in_a_strength_is_asked_about(text: str) -> None:
    """By 0.625 % ten times as much would be weighed as by 6.25 %."""
    (found,) = read(text, context("waiting", POUNDS, asked="cure"))
    assert isinstance(found, Unclear)


@pytest.mark.parametrize(
    "text", ["my mom has cancer and will eat", "an uncle with a transplant is coming", "one guest is on dialysis"]
)
def test_who_is_weakened_is_at_risk(text: str) -> None:
    """Whoever names the illness and no age."""
    assert Change({"at_risk_eaters": True}) in read(text, CURE)


@pytest.mark.parametrize("told", ["fridge 45 f", "my fridge is 45", "fridge at 45", "fridge runs at 45"])
def test_a_fridge_that_is_told_with_what_is_begun(told: str) -> None:
    """It is where the cure would lie: as warm as that, it is refused and not taken for 3 °C."""
    begun = next(one for one in read(f"5 lb belly bacon, cure is 6.25 %, {told}", NONE) if isinstance(one, Start))
    assert begun.said["fridge_c"] == pytest.approx(7.22, abs=0.01)
