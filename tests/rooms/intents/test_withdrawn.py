"""What was said first is not what counts: a second thought in one line, a reading off no meat, a thing taken back."""

from typing import Any

import pytest

from bot.intents.intents import Change, Correct, MoveDeadline, Reading, Unclear, Undo
from bot.intents.read import read
from bot.intents.rewriting.rethought import rethought
from core.batch.events import Probe
from tests.rooms.intents.shorthand import short
from tests.talk_lines import POUNDS, context, wall

CORE_C = {"cooking": 64.4, "chilling": 25.6}  # read last


def _read(line: str, phase: str) -> list[Any]:
    return read(line, context(phase, POUNDS, last_core_c=CORE_C.get(phase)))


@pytest.mark.parametrize(
    ("line", "kept"),
    [
        ("155 no wait 153", "153"),
        ("156 no 153", "153"),
        ("pit 250 core 156 no 153", "pit 250 core 153"),
        ("pastrami 7 lb 2 inches thick, no wait 8 lb", "pastrami 8 lb 2 inches thick"),
        ("dinner at 5pm no wait 6pm", "dinner at 6pm"),
        ("158, wait 20 min", "158, wait 20 min"),
        ("153 not 155", "153 not 155"),
        ("7 lb, no wait 2 inches", "7 lb, no wait 2 inches"),
        ("brisket flat 7 lb, actually 8 lb for saturday 1pm", "brisket flat 8 lb for saturday 1pm"),
        ("5 lb loin... no 6 lb, back bacon saturday", "6 lb loin, back bacon saturday"),
        ("2 kg pork belly, sorry 2.5 kg, bacon for sunday", "2.5 kg pork belly, bacon for sunday"),
        ("we have 2 trout... no sorry 4 whole trout about 300 g each", "4 whole trout about 300 g each"),
        ("4 lb chicken, make that 2 chickens 4 lb each, sunday", "2 chickens 4 lb each, sunday"),
        ("3 lb flat for sunday, no wait 2 flats", "3 lb flat for sunday, no wait 2 flats"),
        ("belly 2 kg, no bone, 40 mm", "belly 2 kg, no bone, 40 mm"),
        ("fridge 38 f, actually 2 flips done", "fridge 38 f, actually 2 flips done"),
    ],
)
def test_a_second_thought_takes_the_place_of_the_first(line: str, kept: str) -> None:
    """Only a number of the same kind makes room; no other number is lost."""
    assert rethought(line) == kept


@pytest.mark.parametrize(
    ("line", "phase", "meant"),
    [
        ("that 148 was the probe slipping, really 141", "cooking", Correct(value=141.0, was=148.0)),
        ("the 148 was the pit", "cooking", Correct(probe=Probe.PIT, was=148.0)),
        ("78 was the water not the meat", "chilling", Correct(was=78.0, gone=True)),
        ("that was the water not the meat", "chilling", Correct(gone=True)),
        ("i put 38 not 36", "curing", Correct(value=38.0, was=36.0)),
        ("i put 22 grams of the curing salt in, not what you said", "curing", Change({"put_in_cure": 0.022})),
        ("take back the last flip, that never happened", "curing", Undo(step="flip")),
        ("scrap last reading", "cooking", Undo(step="reading")),
        ("undo flip", "curing", Undo(step="flip")),
        ("prev was the pit", "cooking", Correct(probe=Probe.PIT)),
        ("my last reading was the fridge", "cooking", Correct(probe=Probe.FRIDGE)),
        ("the previous one was the surface", "chilling", Correct(gone=True)),
        ("flip was 6.30 not 7", "curing", Correct(at=wall(3, 1, 6, 30), step="flip")),
        ("the flip was at 7", "curing", Correct(at=wall(3, 1, 7), step="flip")),
        ("flipped at 6 not now", "curing", Correct(at=wall(3, 1, 6), step="flip")),
        ("12.30 not 1pm", "curing", MoveDeadline(to=wall(3, 6, 12, 30))),
        ("2pm not 1", "curing", MoveDeadline(to=wall(3, 6, 14))),
        ("38.5 not 39", "curing", Correct(value=38.5, was=39.0)),
        ("last reading was at 7", "cooking", Correct(at=wall(3, 1, 7))),
        ("change 150 to 155", "cooking", Correct(value=155.0, was=150.0)),
        ("pit 250 was wrong its 225", "cooking", Correct(value=225.0, was=250.0, probe=Probe.PIT)),
        ("i typed 7.5 its 5.7", "waiting", Correct(value=5.7, was=7.5)),
        ("typo 6 lb", "waiting", Change({"mass": pytest.approx(2.7216, abs=1e-4)})),
    ],
)
def test_what_was_wrong_is_found_by_what_it_was(line: str, phase: str, meant: object) -> None:
    """The number that is withdrawn is never read as a new one, degrees are no grams, and grams no degrees."""
    assert _read(line, phase) == [meant]


@pytest.mark.parametrize(
    ("line", "grams"),
    [
        ("oops 25 g cure went in the brine not what u said", 25.0),
        ("put 30 g of the pink stuff in by accident", 30.0),
        ("i accidentally used 25 g pink salt", 25.0),
        ("dumped 40g of the pink in by mistake", 40.0),
        ("we did 25 g of no 1 in the brine", 25.0),
        ("tipped in an ounce of cure", 28.35),
        ("my wife added 18 g of curing salt already", 18.0),
        ("so 12.6 g of cure #1 went in with the water", 12.6),
    ],
)
@pytest.mark.parametrize("phase", ["waiting", "curing"])
def test_curing_salt_that_went_in_is_weighed_against_the_limit(line: str, grams: float, phase: str) -> None:
    """However it is told, its one amount is what went in; no step of the meat is made of it."""
    assert _read(line, phase) == [Change({"put_in_cure": pytest.approx(grams / 1000, rel=1e-3)})]


@pytest.mark.parametrize(
    "line",
    ["i put another 5 g of cure in", "should i put 20 g cure in", "next time i would use 8 g of cure",
     "i got 50 g of pink salt at the store", "last time i used 8 g of cure", "the recipe says i put 20 g cure in",
     "i ate 2 g of cure that went on my plate", "forgot to put the 12 g of cure in"],
)  # fmt: skip
def test_what_is_asked_or_comes_on_top_is_no_dose_in_all(line: str) -> None:
    """Neither a wish nor a second helping is the amount that is in it."""
    assert not any(isinstance(one, Change) and "put_in_cure" in one.changes for one in _read(line, "curing"))


def test_a_strength_that_was_another_is_no_weight() -> None:
    """«used 5.88 not 6.25» is what the packet prints; 5.88 g would be told to be too weak, and topped up."""
    (asked,) = _read("wait i used 5.88 not 6.25", "curing")
    assert isinstance(asked, Unclear)
    assert asked.options == (Change({"cure_nitrite_fraction": pytest.approx(0.0588)}),)


@pytest.mark.parametrize(
    ("line", "phase", "expected"),
    [
        ("at 7 it was 133, 7:30 141", "cooking", "read core 133f, core 141f"),
        ("forgot to write it down, it was 104 at 7:30", "chilling", "read core 104f"),
        ("didnt log it but at 7:30 it was 104", "chilling", "read core 104f"),
        ("40 at 7:30", "chilling", "ask"),
    ],
)
def test_late_readings_correct_nothing(line: str, phase: str, expected: str) -> None:
    """A number with its hour is a reading of then, is not held against what was read last, and may still be asked."""
    found = _read(line, phase)
    assert short(found) == expected
    told = [t for intent in found if isinstance(intent, Reading) for t in intent.temperatures]
    assert all(t.at is not None for t in told)
