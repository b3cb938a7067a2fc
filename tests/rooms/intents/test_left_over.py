"""What no reader took of a line is said back: a clause that tells a deed, a weight. A remark stays a remark."""

import pytest

from bot.intents.intents import Happened, StepDone, Unclear
from bot.intents.read import read
from tests.talk_lines import KILOS, context


@pytest.mark.parametrize(
    ("phase", "text", "left"),
    [
        ("curing", "turned it, drips a bit", Unclear("rest", "drips a bit", (Happened("leaked"),))),
        ("curing", "flipped and the bag had 2 cups of juice", Unclear("rest", "2 cups of juice")),
        (
            "cooking",
            "off the smoker n in a cooler w towels",
            Unclear("rest", "in a cooler with towels", (StepDone("rest"),)),
        ),
        ("none", "3.2kg flat wet cure w 1.6 litres water", Unclear("rest", "1.6 litres water")),
        ("resting", "cut up n in the fridge", Unclear("rest", "cut up", (StepDone("slice"),))),
    ],
)
def test_it_is_said_back(phase: str, text: str, left: Unclear) -> None:
    """Beside what was taken stands what was not, with what it is like."""
    taken, *rest = read(text, context(phase, KILOS))
    assert not isinstance(taken, Unclear)
    assert rest == [left]


@pytest.mark.parametrize(
    ("phase", "text"),
    [
        ("curing", "flipped it, my mother in law is here"),
        ("curing", "flipped and back in the fridge, thanks"),
        ("curing", "fridge was at 8, turned it down, now 4"),
        ("curing", "flipped, all good lol"),
        ("cooking", "68, its raining and the kids are screaming"),
        ("cooking", "core 68, neighbours are jealous"),
        ("curing", "the fridge thermometer reads 3"),
        ("curing", "its 48 mm not 50 mm"),
    ],
)
def test_a_remark_is_not(phase: str, text: str) -> None:
    """What is like no deed and measures nothing is let be."""
    assert not [one for one in read(text, context(phase, KILOS)) if isinstance(one, Unclear)]
