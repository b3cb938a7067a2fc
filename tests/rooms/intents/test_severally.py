"""Several meats in one line begin several batches, and no weight goes to the wrong one (invented lines, no source)."""

import pytest

from bot.intents.intents import Start
from bot.intents.read import read
from tests.talk_lines import context


def started(line: str) -> list[tuple[str, float | None]]:
    """Each meat of a line that begins, by its product or cut, with its weight."""
    (one,) = read(line, context("none"))
    assert isinstance(one, Start)
    return [(said.get("product") or said["cut"], said.get("mass")) for said in (one.said, *one.then)]


@pytest.mark.parametrize(
    ("line", "meats"),
    [
        ("bacon 3 kg belly, duck breast 700 g, sat 5pm", [("bacon", 3.0), ("duck", 0.7)]),
        ("2 kg brisket and 1.5 kg pork belly", [("brisket_flat", 2.0), ("bacon", 1.5)]),
        ("pastrami from 3 kg flat and a ham 6 kg", [("pastrami", 3.0), ("ham", 6.0)]),
        ("turkey breast and ham for thanksgiving", [("turkey", None), ("ham", None)]),
        ("pastrami and corned beef from a 6 kg brisket", [("pastrami", None), ("corned_beef", None)]),  # whose 6 kg?
        ("3.2 kg brisket flat and rub, for saturday", [("brisket_flat", 3.2)]),
    ],
)
def test_each_meat_has_its_own_weight(line: str, meats: list[tuple[str, float | None]]) -> None:
    assert started(line) == meats


def test_the_meal_is_that_of_all_and_a_size_that_of_one() -> None:
    (one,) = read("bacon 3 kg belly 40 mm thick, duck breast 700 g, sat 5pm", context("none"))
    assert isinstance(one, Start)
    assert one.said["thickness"] == pytest.approx(0.04)
    assert one.then[0] == {
        "product": "duck",
        "cut": "duck_breast",
        "mass": 0.7,
        "deadline": one.said["deadline"],
    }


def test_a_question_about_two_meats_begins_none() -> None:
    assert not any(isinstance(i, Start) for i in read("should i do bacon or ham", context("none")))
