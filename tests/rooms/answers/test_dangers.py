"""Dangers in many words: each is known, whatever stands around it, and none hides what a cook tells of a batch."""

import csv
from datetime import UTC, datetime
from pathlib import Path

import pytest

from bot.intents.context import Context
from bot.intents.intents import Ask, Question
from bot.intents.read import read
from core.answers.dangers import abroad, grave
from core.answers.entries import asked_in

HERE = Path(__file__).parent
LINES = list(csv.DictReader((HERE / "dangers.csv").read_text("utf-8").splitlines(), delimiter=";"))  # invented
GERMAN = list(csv.DictReader((HERE / "dangers_de.csv").read_text("utf-8").splitlines(), delimiter=";"))  # invented
TOLD = list(csv.DictReader((HERE.parent / "intents" / "german.csv").read_text("utf-8").splitlines(), delimiter=";"))
MESSAGES = [
    row
    for path in sorted((HERE.parent / "intents").glob("unseen*.csv"))
    for row in csv.DictReader(path.read_text("utf-8").splitlines(), delimiter=";")
]


def test_each_danger_is_known() -> None:
    """Poisoning, gas, fire, spoilt and warm meat, wild doses: the entry that refuses, warns or sends for help."""
    assert [(row["question"], grave(row["question"])) for row in LINES if grave(row["question"]) != row["entry"]] == []


def test_each_danger_is_known_in_german() -> None:
    """With umlauts or without them, and though every other word were English."""
    wrong = [(row["question"], grave(row["question"])) for row in GERMAN if grave(row["question"]) != row["entry"]]
    assert wrong == []
    written_out = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "ß": "ss"})
    assert all(grave(row["question"].translate(written_out)) == row["entry"] for row in GERMAN)


def test_the_german_talk_of_a_batch_is_no_danger() -> None:
    """Of what a German week is told in, only mishaps have the words of a danger; and nothing English has them."""
    told = [row for row in TOLD if (row["phase"] not in ("none",)) and abroad(row["line"])]
    mishaps = ("pökel", "lippen", "draußen", "strom", "aus", "über nacht")
    assert [row["line"] for row in told if not any(word in row["line"] for word in mishaps)] == []
    assert [row["line"] for row in MESSAGES if abroad(row["line"])] == []
    assert [
        (name, ask) for name, asks in asked_in("en").items() for ask in asks if abroad(ask) not in (None, name)
    ] == []


@pytest.mark.parametrize("phase", ["none", "waiting", "curing", "cooking", "chilling"])
def test_a_german_emergency_is_heard_wherever_a_batch_stands(phase: str) -> None:
    """Help is called for at once, or the question is answered as that of an emergency; nothing is marked as done."""
    calls = [row["question"] for row in GERMAN if row["entry"] in ("poison", "co-symptoms", "sick", "pet-salt")]
    for line in calls:
        context = Context(datetime(2027, 9, 27, 17, tzinfo=UTC), zone="Europe/Vienna", language="de", phase=phase)
        (found,) = read(line, context)
        assert isinstance(found, Question) or (isinstance(found, Ask) and found.topic == "poison"), line


def test_the_talk_of_a_batch_is_no_danger() -> None:
    """Of the messages that cooks send, only mishaps and questions have the words of a danger."""
    alarms = [row for row in MESSAGES if grave(row["line"]) and "happened" not in row["meant"]]
    assert [row["line"] for row in alarms if "question" not in row["meant"]] == []


@pytest.mark.parametrize("line", ["hang salami in my basement 65f no cure", "cold smoke bacon no cure 8 hrs at 80f"])
def test_a_danger_is_no_deed(line: str) -> None:
    """With a batch in the cure a dangerous wish marks no step and begins nothing: it is answered."""
    context = Context(datetime(2027, 9, 27, 17, tzinfo=UTC), zone="Europe/Vienna", phase="curing", batch="b")
    assert read(line, context) == [Question(line)]
