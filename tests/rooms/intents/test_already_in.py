"""A start that tells of meat in its cure already: the past day is no meal, and no second dose is called for."""

import pytest

from bot.intents.intents import Start
from bot.intents.read import read
from tests.talk_lines import POUNDS, context


@pytest.mark.parametrize(
    "line",
    [
        "3 kg belly has been in dry cure since sunday, cure is 6.25 %",
        "my brisket flat 7 lb went into the brine on sunday",
        "put a 5 lb pork loin in brine yesterday with pink salt 6.25 %",
        "7 lb brisket flat, went in the brine last night",
        "brisket flat 3 kg was put in the dry cure saturday night",
        "3 kg belly, dry cure, 6.25 %, 4 cm thick. its in the cure since sunday",
    ],
)
def test_since_when_it_lies_there_is_no_meal(line: str) -> None:
    """«went into the brine on sunday» was planned for the meal of the next Sunday, with a dose to be weighed."""
    (found,) = read(line, context("none", POUNDS))
    assert isinstance(found, Start)
    assert "already_in" in found.assumed
    assert "deadline" not in found.said


@pytest.mark.parametrize(
    "line", ["gonna put 5 lb pork loin in brine on friday", "7 lb brisket flat in brine for saturday"]
)
def test_a_day_to_come_is_none_since_when(line: str) -> None:
    """What is still to go in lies in no cure."""
    (found,) = read(line, context("none", POUNDS))
    assert isinstance(found, Start)
    assert "already_in" not in found.assumed
