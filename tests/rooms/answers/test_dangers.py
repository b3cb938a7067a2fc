"""Dangers in many words: each is known, whatever stands around it, and none hides what a cook tells of a batch."""

import csv
from datetime import UTC, datetime
from pathlib import Path

import pytest

from bot.intents.context import Context
from bot.intents.intents import Question
from bot.intents.read import read
from core.answers.dangers import grave

HERE = Path(__file__).parent
LINES = list(csv.DictReader((HERE / "dangers.csv").read_text("utf-8").splitlines(), delimiter=";"))  # invented
MESSAGES = [
    row
    for path in sorted((HERE.parent / "intents").glob("unseen*.csv"))
    for row in csv.DictReader(path.read_text("utf-8").splitlines(), delimiter=";")
]


def test_each_danger_is_known() -> None:
    """Poisoning, gas, fire, spoilt and warm meat, wild doses: the entry that refuses, warns or sends for help."""
    assert [(row["question"], grave(row["question"])) for row in LINES if grave(row["question"]) != row["entry"]] == []


def test_the_talk_of_a_batch_is_no_danger() -> None:
    """Of the messages that cooks send, only mishaps and questions have the words of a danger."""
    alarms = [row for row in MESSAGES if grave(row["line"]) and "happened" not in row["meant"]]
    assert [row["line"] for row in alarms if "question" not in row["meant"]] == []


@pytest.mark.parametrize("line", ["hang salami in my basement 65f no cure", "cold smoke bacon no cure 8 hrs at 80f"])
def test_a_danger_is_no_deed(line: str) -> None:
    """With a batch in the cure a dangerous wish marks no step and begins nothing: it is answered."""
    context = Context(datetime(2027, 9, 27, 17, tzinfo=UTC), zone="Europe/Vienna", phase="curing", batch="b")
    assert read(line, context) == [Question(line)]
