"""Sums in the short words of strangers, each by the sum that was read to be right. Invented, no source."""

from pathlib import Path

from tests.published.answers.asked import answered_by, asked, table

ROWS = table("asked_sums.csv")


def test_each_is_met_by_its_sum(tmp_path: Path) -> None:
    """No other sum, no batch begun, and nothing asked for that was said."""
    found = asked(tmp_path, [row["question"] for row in ROWS])
    by = [answered_by(facts) for facts in found]
    wrong = [(row["question"], name) for row, name in zip(ROWS, by, strict=True) if name != row["answered_by"]]
    assert wrong == []


def test_what_they_come_to(tmp_path: Path) -> None:
    """90 g at 5 % are 1.71 l (90 / 0.05 - 90); 60 for 5 kg is 4.21 for a plate of 150 g at 0.45 left (both derived)."""
    lines = ["90g salt how much water for 5% brine", "paid 60 for 5 kg packer whats that per plate"]
    water, price = asked(tmp_path, lines)
    assert abs(water["water_kg"] - 1.71) < 0.001
    assert abs(price["cooked"] - 12.0 / 0.45) < 0.05
