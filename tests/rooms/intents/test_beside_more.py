"""What stands behind an answer, what was read beside something else, and how salty a slice was when it is denied."""

import pytest

from bot.intents.intents import Debrief, Reading, Settings, Unclear
from bot.intents.read import read
from tests.rooms.intents.shorthand import short
from tests.talk_lines import context, wall


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        (
            "6.25 btw its 2 1/4 in thick and i want it dry",
            "set cure=6.25% & set thickness=57mm & set method=dry",
        ),
        ("6.25, 2 in thick, dry", "set cure=6.25% & set thickness=51mm & set method=dry"),
        ("6.25 i think, and dinner is at 2", "set cure=6.25% & meal sat14:00"),
        ("6.25", "set cure=6.25%"),
    ],
)
def test_what_stands_behind_an_answer_is_kept(text: str, meant: str) -> None:
    """The strength that was asked for, and all that is said beside it."""
    assert short(read(text, context("waiting", asked="cure"))) == meant


@pytest.mark.parametrize(
    ("text", "salt"),
    [
        ("wasnt salty enough but otherwise perfect", -1),
        ("not quite salty enough", -1),
        ("hardly salty", 0),
        ("needed more salt", -1),
        ("lacked salt", -1),
        ("not enough salt", -1),
        ("isnt too salty", 0),
        ("it wasnt too salty", 0),
        ("not overly salty", 0),
        ("salt was right", 0),
        ("too salty", 1),
        ("a bit salty", 1),
    ],
)
def test_how_salty_it_was(text: str, salt: int) -> None:
    """What is denied counts: the next dose is learned from it."""
    assert read(text, context("stored")) == [Debrief(salt=salt)]


def test_milder_than_feared_or_than_wanted() -> None:
    """«wasnt that salty» may be either, and teaches nothing."""
    assert not any(isinstance(i, Debrief) and i.salt is not None for i in read("wasnt that salty", context("stored")))


@pytest.mark.parametrize("text", ["155 then 158 ten minutes later", "155 now 158 10 min later"])
def test_two_readings_a_while_apart(text: str) -> None:
    """Both are kept, the first of them so long ago; no meal moves."""
    (said,) = read(text, context("cooking", last_core_c=65.0))
    assert isinstance(said, Reading)
    first, last = said.temperatures
    assert (first.value, last.value) == (155.0, 158.0)
    assert first.at == wall(3, 1, 8, 20)


@pytest.mark.parametrize(
    ("text", "phase", "core", "meant"),
    [
        ("out of the ice 42 now in the fridge on a rack", "chilling", 20.0, "set chill=rack & ask"),
        ("moved it to the garage fridge reads 2c", "curing", None, "read fridge 2c"),
        ("put it in the other fridge its at 38", "curing", None, "read fridge 38f"),
        ("added more coal pit climbing 270", "cooking", 65.0, "ask & read pit 270f"),
        ("spilled a bit of the brine while pouring", "waiting", None, "happened leaked"),
        ("nope not flipping tonight im out", "curing", None, "skip"),
        ("off the fire 196", "cooking", 88.0, "read core 196f & done off"),
        ("off the smoker 203 soft", "cooking", 92.0, "read core 203f & done off"),
        ("internal 155 external 240", "cooking", 65.0, "read core 155f, pit 240f"),
        ("back bacon 2 kilo loin 3 weeks from now", "none", None, "start back_bacon 2kg mon"),
        ("two duck breasts", "none", None, "start duck"),
        ("3 kg flat on my pellet grill", "none", None, "start brisket_flat 3kg"),
        ("not turning it today", "curing", None, "skip"),
    ],
)
def test_what_was_read_or_left_out_in_one_breath(text: str, phase: str, core: float | None, meant: str) -> None:
    """The number and the deed each where it belongs."""
    assert short(read(text, context(phase, last_core_c=core))) == meant


def test_the_salt_goes_on_at_an_hour() -> None:
    """«salt on at 6» is a deed, and moves no meal."""
    assert short(read("salt on at 6", context("waiting", dry=True))) == "done into_cure @06:00"


def test_an_hour_in_place_of_that_of_the_meal() -> None:
    """Of a meal at eight «7 instead of 8» is plain; of another it is asked about."""
    assert short(read("make it 7 instead of 8", context("waiting", deadline=wall(3, 6, 20)))) == "meal sat19:00"
    assert short(read("make it 7 instead of 8", context("curing"))) == "ask"


@pytest.mark.parametrize("text", ["forgot sugar", "forgot to add the pepper", "left out the bay leaves"])
def test_what_carries_no_cure_may_be_forgotten(text: str) -> None:
    """Sugar and spice do no harm where they lack; the curing salt is another matter."""
    (said,) = read(text, context("waiting"))
    assert isinstance(said, Unclear)
    assert said.why == "forgot_extra"
    assert "happened forgot_cure" in short(read("forgot the cure", context("curing")))


def test_a_cooker_that_burns_pellets() -> None:
    """Told before a batch it is the person's own; of one that gives little smoke it is a question."""
    assert read("i have a pellet grill", context("none")) == [Settings({"cooker": "pellet"})]
    assert not any(isinstance(i, Settings) for i in read("my pellet smoker gives hardly any smoke", context("none")))
