"""Deeds that are denied, days that are put right, what is no step, and who has the flips for a while."""

from datetime import datetime

import pytest

from bot.intents.intents import Correct, Debrief, HandOver, Start, StepDone, Unclear, Undo
from bot.intents.read import read
from tests.rooms.intents.shorthand import short
from tests.talk_lines import context, wall


@pytest.mark.parametrize(
    ("text", "phase", "step"),
    [
        ("no wait i did not flip it", "curing", "flip"),
        ("wife says she didnt flip it", "curing", "flip"),
        ("i said flipped but i hadnt", "curing", "flip"),
        ("flipped was a lie", "curing", "flip"),
        ("he didnt actually turn it", "curing", "flip"),
        ("never dried it actually", "cooking", "dry"),
        ("actually we didnt rub it", "cooking", "rub"),
        ("sorry we never rinsed it", "drying", "rinse"),
        ("turns out nobody wrapped it, it wasnt wrapped", "cooking", "wrap"),
    ],
)
def test_a_deed_that_is_denied_is_taken_back(text: str, phase: str, step: str) -> None:
    """By its kind, whoever says it."""
    assert read(text, context(phase, last_core_c=65.0 if phase == "cooking" else None)) == [Undo(step=step)]


@pytest.mark.parametrize(
    ("text", "step"),
    [
        ("not lit yet actually", "light"),
        ("actually meat isnt on yet", "meat_on"),
        ("no it isnt off", "off"),
    ],
)
def test_what_hours_are_counted_from_is_asked_about(text: str, step: str) -> None:
    """Offered to tap: a cook is not undone by a word."""
    (asked,) = read(text, context("cooking", last_core_c=65.0))
    assert isinstance(asked, Unclear)
    assert asked.options == (Undo(step=step),)


@pytest.mark.parametrize("text", ["no not flipped yet", "sorry havent flipped it", "not flipped yet"])
def test_what_is_called_for_now_is_not_yet_done(text: str) -> None:
    """It takes back no flip of the day before."""
    assert not any(isinstance(intent, Undo) for intent in read(text, context("curing", due_step="flip/3")))


@pytest.mark.parametrize(
    "text", ["not gonna bother spritzing", "skipping the spritz", "no spritz today", "i didnt mop it", "no basting"]
)
def test_what_is_no_step_may_be_left_out(text: str) -> None:
    """Acknowledged; no step of the plan is left out by it."""
    (said,) = read(text, context("cooking", last_core_c=65.0))
    assert isinstance(said, Unclear)
    assert said.why == "extra_left_out"


@pytest.mark.parametrize(
    ("text", "step", "at"),
    [
        ("it went in saturday night not sunday", "into_cure", wall(2, 27, 20)),
        ("the meat went in last night, not this morning", "into_cure", wall(2, 28, 20)),
        ("cure started saturday evening not sunday", "into_cure", wall(2, 27, 19)),
        ("flipped it last night not this morning", "flip", wall(2, 28, 20)),
    ],
)
def test_a_day_that_is_put_right(text: str, step: str, at: datetime) -> None:
    """The step with the time that is right."""
    assert read(text, context("curing")) == [Correct(at=at, step=step)]


def test_a_day_without_its_hour_is_asked_about() -> None:
    """The days in the cure are counted from it; «wednesday not thursday» of a meal moves the meal."""
    (asked,) = read("meat went in sat not sun", context("curing"))
    assert isinstance(asked, Unclear)
    assert asked.why == "which_hour"
    assert short(read("we eat friday not saturday", context("curing"))) == "meal fri13:00"


@pytest.mark.parametrize(
    ("text", "who", "task", "until"),
    [
        ("flips this week are on my son", "son", "flips", wall(3, 8, 0)),
        ("the flips are on jo this weekend", "jo", "flips", wall(3, 8, 0)),
        ("my son will do the flip tonight", "son", "flips", wall(3, 2, 6)),
        ("my wife has the flips today", "wife", "flips", wall(3, 2, 0)),
        ("the flips are my sons job till friday", "son", "flips", wall(3, 5, 9)),
        ("dave takes over the fridge till friday", "dave", "flips", wall(3, 5, 9)),
    ],
)
def test_a_kind_of_task_for_a_while(text: str, who: str, task: str, until: datetime) -> None:
    """Who, what and until when, on the calendar."""
    (handed,) = read(text, context("curing"))
    assert isinstance(handed, HandOver)
    assert (handed.to, handed.task, handed.until) == (who, task, until)


@pytest.mark.parametrize("text", ["flips are on track", "flips are on hold", "the flips are on the plan"])
def test_flips_that_are_on_nobody(text: str) -> None:
    """No name, no hand-over."""
    assert not any(isinstance(intent, HandOver) for intent in read(text, context("curing")))


@pytest.mark.parametrize(
    ("text", "phase", "core", "why"),
    [
        ("took it out", "curing", None, "took_out"),
        ("pulled it", "curing", None, "took_out"),
        ("took it out", "cooking", 65.0, "off_early"),
        ("took it out", "chilling", 30.0, "out_of_ice"),
        ("took it out", "chilling", 4.0, "out_to_eat"),
    ],
)
def test_taken_out_of_what(text: str, phase: str, core: float | None, why: str) -> None:
    """Where it lies is known; whether for good, or how it lies now, is asked."""
    where = context(phase, last_core_c=core, target_c=95.0, out_due=wall(3, 5, 17))
    (asked,) = read(text, where)
    assert isinstance(asked, Unclear)
    assert asked.why == why


def test_taken_out_when_it_is_done() -> None:
    """Near the core at which it shall come off nothing speaks against it."""
    assert read("took it out", context("cooking", last_core_c=94.0, target_c=95.0)) == [StepDone("off")]


@pytest.mark.parametrize(
    ("text", "value", "was"),
    [
        ("it was 147 the 150 was wrong", 147.0, 150.0),
        ("the 150 was wrong it was 147", 147.0, 150.0),
        ("that 150 was a typo, 147", 147.0, 150.0),
        ("i meant the pit was 260", 260.0, None),
        ("i meant the pit is at 260", 260.0, None),
    ],
)
def test_a_number_that_is_put_right(text: str, value: float, was: float | None) -> None:
    """Whichever of the two is named first, and with its place."""
    (fix,) = read(text, context("cooking", last_core_c=65.0, last_pit_c=121.0))
    assert isinstance(fix, Correct)
    assert (fix.value, fix.was) == (value, was)


@pytest.mark.parametrize(
    "text",
    ["guests late, 2 not 1", "guests running late 2 not 1", "people coming at 2 not 1", "family arriving at 2 not 1"],
)
def test_guests_have_an_hour_and_no_temperature(text: str) -> None:
    """The meal moves; no flip and no reading is put right."""
    assert short(read(text, context("curing"))) == "meal sat14:00"


@pytest.mark.parametrize(
    ("text", "phase", "why"),
    [
        ("bit pink inside", "cooking", "pink"),
        ("still pink in the middle", "cooking", "pink"),
        ("a bit red near the bone", "resting", "pink"),
        ("used the other salt", "waiting", "other_salt"),
        ("oops i took the different cure", "curing", "other_salt"),
        ("put it in", "cooking", "put_in"),
        ("its in now", "chilling", "put_in"),
    ],
)
def test_a_remark_without_what_decides(text: str, phase: str, why: str) -> None:
    """Asked about, and nothing noted."""
    (asked,) = read(text, context(phase, last_core_c=65.0 if phase == "cooking" else None))
    assert isinstance(asked, Unclear)
    assert asked.why == why


@pytest.mark.parametrize("text", ["used kosher instead of curing salt", "put in sea salt instead of the cure"])
def test_salt_in_place_of_the_cure(text: str) -> None:
    """No nitrite went in."""
    assert "happened wrong_salt" in short(read(text, context("curing")))


@pytest.mark.parametrize(
    ("text", "rated"),
    [
        ("8/10", (8.0, 10.0)),
        ("7 out of 10", (7.0, 10.0)),
        ("4 stars", (4.0, 5.0)),
        ("8.5/10 really", (8.5, 10.0)),
        ("10 of 10", (10.0, 10.0)),
    ],
)
def test_a_mark_is_kept(text: str, rated: tuple[float, float]) -> None:
    """With of how many it is; no number of it is a temperature."""
    assert read(text, context("stored")) == [Debrief(rated=rated)]


def test_a_mark_beside_the_meal() -> None:
    """Both are kept."""
    assert read("we ate it, 9/10", context("stored")) == [StepDone("serve"), Debrief(rated=(9.0, 10.0))]


@pytest.mark.parametrize("text", ["3 kg belly bacon rock hard from the freezer", "6 lb flat just out of the freezer"])
def test_a_piece_from_the_freezer_is_frozen(text: str) -> None:
    """However it is told, it thaws first."""
    (start,) = read(text, context("none"))
    assert isinstance(start, Start)
    assert start.said["frozen"] is True
