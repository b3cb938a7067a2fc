"""Questions in other words than those that wrote the phrasings: invented, no source; they mended phrasings once."""

import csv
from collections import Counter
from pathlib import Path

import pytest

from core.answers.entries import entry
from core.answers.find import find

QUESTIONS = list(csv.DictReader((Path(__file__).parent / "tuned_questions.csv").read_text("utf-8").splitlines()))
OF_THE_TRADE = [row for row in QUESTIONS if row["expected"]]
DANGEROUS = [row for row in OF_THE_TRADE if entry(row["expected"]).kind == "refused"]
OFF_TOPIC = [row for row in QUESTIONS if not row["expected"]]
RIGHT = 0.85  # of those of the trade: answered by the entry meant, or offered it among three


def verdict(row: dict[str, str]) -> str:
    found = find(row["question"])
    if found.answer is not None:
        return "right" if found.answer == row["expected"] else "wrong"
    if row["expected"] in found.perhaps:
        return "offered"
    return "declined"


def test_most_are_answered_and_few_wrong() -> None:
    """Nine in ten are answered or offered; a wrong entry is rarer than one in twenty."""
    counts = Counter(verdict(row) for row in OF_THE_TRADE)
    assert counts["right"] + counts["offered"] >= RIGHT * len(OF_THE_TRADE), counts
    assert counts["wrong"] <= 0.05 * len(OF_THE_TRADE), counts


@pytest.mark.parametrize("row", OFF_TOPIC, ids=lambda row: row["question"])
def test_what_is_no_matter_of_the_trade_is_declined(row: dict[str, str]) -> None:
    """No entry of the trade answers it."""
    found = find(row["question"])
    assert found.answer is None or entry(found.answer).kind == "off_topic"


@pytest.mark.parametrize("row", DANGEROUS, ids=lambda row: row["question"])
def test_a_dangerous_wish_gets_no_other_answer(row: dict[str, str]) -> None:
    """A dangerous wish is refused, offered or declined, and never answered by an entry that grants something."""
    found = find(row["question"])
    assert found.answer is None or entry(found.answer).kind == "refused"
