"""How it smells, asked of a smell that may be either: the worse of what is said counts."""

import pytest

from bot.intents.feels import how_it_smells


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("more on the sour side", "spoiled"),
        ("like eggs i think", "spoiled"),
        ("spicy but a bit sour", "spoiled"),
        ("not good", "spoiled"),
        ("not too sour", "spoiled"),
        ("bad eggs", "spoiled"),
        ("just spicy", "clean_smell"),
        ("like spice, not sour at all", "clean_smell"),
        ("not rotten, just smoky", "clean_smell"),
        ("put the meat in", None),
        ("fridge ok", None),
        ("flipped", None),
    ],
)
def test_the_worse_of_what_a_nose_says_counts(text: str, what: str | None) -> None:
    assert how_it_smells(text) == what
