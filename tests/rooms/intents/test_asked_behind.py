"""What is asked behind a remark marks nothing and moves nothing, and a core that is to come is read nowhere."""

from datetime import timedelta
from typing import Any

import pytest

from bot.intents.intents import Ask, MoveDeadline, Pause, Question, Reading, StepDone, Unclear
from bot.intents.read import read
from tests.talk_lines import MEAL, POUNDS, context

ON_THE_FIRE = {"last_core_c": 64.4, "last_pit_c": 121.0}


def _kinds(line: str, phase: str, **more: Any) -> list[type]:
    return [type(intent) for intent in read(line, context(phase, POUNDS, **more))]


@pytest.mark.parametrize(
    "line",
    [
        "head like a sieve, has this had its curing salt",
        "wont get to it til next week, is it grand in the bag til then",
        "the cousins now want it for friday night, can that be done",
        "my lad is taking this on from here, can he get the messages",
        "read me back everything ive logged on this",
        "my husband wants to know how the week is going to look from here on",
    ],
)
def test_what_is_asked_behind_a_remark_is_no_deed(line: str) -> None:
    """Nothing is marked, moved or silenced."""
    assert set(_kinds(line, "curing")) <= {Ask, Question}


@pytest.mark.parametrize(
    ("line", "kind"),
    [
        ("flipped it, fridge 37", StepDone),
        ("make it friday night", MoveDeadline),
        ("on holiday till monday", Pause),
        ("going to wales until sunday", Pause),
    ],
)
def test_what_is_told_still_counts(line: str, kind: type) -> None:
    """A deed, a meal that is moved and a holiday are told as before."""
    assert kind in _kinds(line, "curing", deadline=MEAL + timedelta(days=1))


@pytest.mark.parametrize(
    "line",
    [
        "it gets to 160 and then what",
        "once we see 190 is there something to do",
        "165 by about when",
        "how long til its at 160 for the foil",
    ],
)
def test_a_core_to_come_is_read_nowhere(line: str) -> None:
    """It is asked about."""
    assert _kinds(line, "cooking", **ON_THE_FIRE) == [Question]


@pytest.mark.parametrize("line", ["it got to 160", "core 160 now what", "hit 165"])
def test_a_core_that_is_there_is_read(line: str) -> None:
    """By what it says now."""
    assert Reading in _kinds(line, "cooking", **ON_THE_FIRE)


def test_a_choice_is_no_number() -> None:
    """«any point in going up to 300» asks, and reads nothing."""
    assert not {Reading, Unclear} & set(_kinds("any point in going up to 300", "cooking", **ON_THE_FIRE))
