"""Curing salt is never summed as if it were plain salt, nor is a share of salt taken for its strength."""

from pathlib import Path

import pytest

from bot.intents.sums.told import told
from tests.published.answers.asked import answered_by, asked

PLAIN = {"sum:salt_for", "sum:brine", "sum:equilibrium", "sum:topup", "sum:dilute", "sum:sugar"}
LINES = (
    "how much pink salt for 5 kg at 2.5%", "pink salt 2.5% of 3 kg", "curing salt 2% for 4 kg how much",
    "how many grams is 2 percent pink salt of 3kg", "how much nitrite salt for a 5% brine 3 l",
    "hw much pink salt for 2.2 kg dry", "20 litres brine 5% pink salt", "120 g curing salt in 2 l brine how strong",
)  # fmt: skip


def test_curing_salt_is_no_plain_salt(tmp_path: Path) -> None:
    """At the amount of plain salt it is more than ten times the limit; so such a question is one for the dose."""
    assert [answered_by(facts) for facts in asked(tmp_path, list(LINES)) if answered_by(facts) in PLAIN] == []


@pytest.mark.parametrize("line", LINES)
def test_a_share_of_salt_is_no_strength(line: str) -> None:
    """No curing salt is sold with 2 to 5 % nitrite unless its packet says nitrite: that share is what goes in."""
    assert told(line).strength is None


@pytest.mark.parametrize(
    ("line", "strength"),
    [("my cure says 0.5% nitrite need for 2kg", 0.005), ("cure 5.88 % for 3 kg", 0.0588), ("2 kg cure 6.25", 0.0625)],
)
def test_a_strength_that_is_told(line: str, strength: float) -> None:
    """By the packet's words, or by the size of those that are sold (USDA FSIS 1995: 6.25 %; common practice)."""
    assert told(line).strength == pytest.approx(strength)
