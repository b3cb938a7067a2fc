"""Two things that are each understood alone are both understood in one line, in either order, with comma or «and»."""

from itertools import permutations

import pytest

from bot.intents.composed import signs
from bot.intents.read import read
from tests.talk_lines import POUNDS, context

CURE = (
    "flipped", "fridge 38", "using cherry", "dinner moved to sunday", "its 2.2 in thick",
    "jo does the flips tomorrow", "bag leaks a bit", "no messages after 10pm", "wrap in paper", "weight is 7.2 lb",
    "two days longer in the cure", "my wife flipped it at 6",
)  # fmt: skip
FIRE = (
    "pit 245", "wrapped in foil", "dinner at 7", "jo has the fire till 3", "its windy", "fire went out", "using oak",
    "no messages after 10pm", "spritzed it",
)  # fmt: skip
RAW = (
    "its thawed", "2 in thick", "cure is 6.25 %", "make it dry", "eat it hot", "weight is 7.2 lb", "brine 38",
    "no sugar", "using hickory", "skin on", "jo takes over",
)  # fmt: skip
DONE = ("too salty", "fridge 38", "froze half of it", "dinner moved to sunday", "weighs 4.5 lb after")
FACTS = {"curing": CURE, "cooking": FIRE, "waiting": RAW, "stored": DONE}


@pytest.mark.parametrize("phase", FACTS)
def test_nothing_is_lost_over_what_stands_beside_it(phase: str) -> None:
    """Whichever reader takes the line, each of its clauses is heard."""
    fire = {"last_core_c": 65.5, "last_pit_c": 121.0, "target_c": 90.0} if phase == "cooking" else {}
    here = context(phase, POUNDS, batch="b1", batches=(("b1", "flat"),), mass=3.4, **fire)
    alone = {fact: set(signs(read(fact, here))) for fact in FACTS[phase]}
    lost = [
        line
        for one, two in permutations(FACTS[phase], 2)
        for line in (f"{one}, {two}", f"{one} and {two}")
        if not alone[one] | alone[two] <= set(signs(read(line, here)))
    ]
    assert lost == []


@pytest.mark.parametrize(
    "line",
    ["flip at 6 am and 9 pm", "the guests are late, 2 hours later", "its 37 n a half", "no rush, sunday is fine"],
)
def test_a_half_of_one_thing_is_no_second(line: str) -> None:
    """Where the halves are of one thing, it is one."""
    assert len(read(line, context("curing"))) == 1
