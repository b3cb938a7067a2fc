"""Bare numbers as the grams that were to be weighed: each near its own, or the line stays. Invented amounts."""

from dataclasses import replace

import pytest

from bot.intents.weighed_out import weighed_out
from tests.talk_lines import POUNDS, context

PLANNED = (("cure", 5.7), ("salt", 47.8), ("sugar", 23.6))
WEAK = (("cure", 58.0), ("sugar", 23.6))  # a weak curing salt brings all of the salt


@pytest.mark.parametrize(
    ("said", "planned", "read"),
    [
        ("all weighed, 5.7 and 48 and 24", PLANNED, "all weighed, 5.7 g cure, 48 g salt, 24 g sugar"),
        ("5.7 48 24 done", PLANNED, "5.7 g cure, 48 g salt, 24 g sugar done"),
        ("weighed 5.7 cure and 24 sugar", PLANNED, "weighed 5.7 g cure, 24 g sugar"),
        ("weighed 58 and 24", WEAK, "weighed 58 g cure, 24 g sugar"),
    ],
)
def test_near_ones_are_grams(said: str, planned: tuple[tuple[str, float], ...], read: str) -> None:
    """Each by its name, or in the order of the plan."""
    assert weighed_out(said, replace(context("waiting", POUNDS), to_weigh=planned)) == read


@pytest.mark.parametrize(
    "said",
    [
        "weighed 12 and 48 and 24",  # twice the cure
        "weighed 48 and 5.7 and 24",  # another order
        "5.7",
        "5.7 48",
        "weighed 5.7",
        "fridge 38, weighed 5.7 and 48",
        "weighed 5.7 and 48 %",
        "weighed 6.25 cure",
        "5.7 lb and 48 mm",
    ],
)
def test_others_stay(said: str) -> None:
    """Nothing is guessed of a dose."""
    assert weighed_out(said, replace(context("waiting", POUNDS), to_weigh=PLANNED)) == said
    assert weighed_out(said, context("curing", POUNDS)) == said
