"""A flip that is left out for a reason is left out, and two days that somebody minds it are one span."""

import pytest

from bot.intents.intents import HandOver, StepSkipped
from bot.intents.read import read
from tests.talk_lines import context

CURE = context("curing")


@pytest.mark.parametrize(
    "text", ["skip tonights im out", "skip tonights flip im out", "skip tonight im at work", "skip tonights, im away"]
)
def test_the_reason_makes_no_pause_of_it(text: str) -> None:
    """Out for an evening: that flip, and no more."""
    assert [type(one) for one in read(text, CURE)] == [StepSkipped]


@pytest.mark.parametrize("text", ["neighbour will turn it tues and weds", "mum does the flips tuesday and wednesday"])
def test_two_days_are_one_span(text: str) -> None:
    """Nothing of it is the meal."""
    (told,) = read(text, CURE)
    assert isinstance(told, HandOver)
    assert told.at
    assert told.until
    assert (told.until - told.at).days == 2
