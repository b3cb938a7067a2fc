"""Where the meat is and for how long: no step is made of a change of place, and no core of the air in a fridge."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from bot.intents.intents import Change, Happened, Reading, StepDone, Unclear
from bot.intents.read import read
from core.batch.events import Probe
from tests.rooms.intents.shorthand import short
from tests.talk_lines import NOW, POUNDS, context

CORE_C = {"cooking": 64.4, "chilling": 25.6}  # read last


def _read(line: str, phase: str) -> list[Any]:
    return read(line, context(phase, POUNDS, last_core_c=CORE_C.get(phase)))


@pytest.mark.parametrize("line", ["vac packed, in the walk-in, 2c", "in the fridge, 38", "its 40, back in the fridge"])
def test_a_cold_number_beside_a_fridge_is_no_core(line: str) -> None:
    """A false core would end the watch over the chill: the air in there is offered beside the middle of the meat."""
    found = _read(line, "chilling")
    assert not [intent for intent in found if isinstance(intent, Reading)]
    asked = next(intent for intent in found if isinstance(intent, Unclear) and intent.why == "number")
    assert {option.temperatures[0].probe for option in asked.options} == {Probe.CORE, Probe.FRIDGE}


def test_the_meat_in_a_fridge_is_the_meat() -> None:
    """Who names the middle has read the middle."""
    assert short(_read("in the fridge, core 41", "chilling")).endswith("read core 41f")


@pytest.mark.parametrize(
    ("line", "phase", "expected"),
    [
        ("outta the ice into the fridge, its 68", "chilling", "ask & read core 68f"),
        ("its in the fridge on the rack now, sam took it out of the ice", "chilling", "set chill=rack"),
        ("ice has all melted and its still 76", "chilling", "ask & read core 76f"),
        ("put it in the freezer", "chilling", "ask"),
        ("it sat on the counter for an hour before the ice, forgot to say", "chilling", "happened left_out"),
        ("skip the reminder, well check it at 10", "chilling", "later @10:00"),
        ("out of pellets moving it to the oven at 275", "cooking", "set cooker=electric & set pit=135c"),
        ("dropped it on the ground while turning it", "cooking", "question"),
        ("running an hour behind", "cooking", "ask"),
        ("my little brother stuck his hands in the brine", "curing", "question"),
        ("i also turned the bag over last night at nine oclock", "curing", "done flip @21:00"),
        ("flipped it lol forgot yesterday tho", "curing", "done flip & missed flip"),
        ("cant flip till like 3", "curing", "later @15:00"),
        ("cancel the pastrami, dog got it", "curing", "cancel"),
        ("forget the whole thing, the dog got it", "curing", "cancel"),
        ("omg i used himalayan pink salt not the curing one", "curing", "happened wrong_salt"),
        ("power was out abt six hours", "curing", "happened power_cut"),
        ("i sleep from 9 to 15 after nights, dont ping me then", "none", "settings quiet"),
        ("turn off the flip reminders", "none", "settings flips"),
    ],
)
def test_what_is_told_of_a_place_or_an_hour(line: str, phase: str, expected: str) -> None:
    """One word («in the fridge», «forget», «on the ground») does not decide alone what a line means."""
    assert short(_read(line, phase)) == expected


def test_a_fridge_that_was_warm_since_a_time() -> None:
    """How long decides it; an hour that nobody can place is asked for."""
    reading, happened = _read("fridge 44 since yesterday noon", "curing")
    assert isinstance(reading, Reading)
    assert isinstance(happened, Happened)
    assert (reading.temperatures[0].at, happened.facts["hours"]) == (None, pytest.approx(20.5))  # it is 08:30
    assert short(_read("fridge 38 since yesterday noon", "curing")) == "read fridge 38f"


def test_out_of_the_cure_or_out_of_the_fridge() -> None:
    """Days before it is due «took it out» is asked about; with its place, or on the day, it is done."""
    early = context("curing", POUNDS, out_due=NOW + timedelta(days=5))
    (asked,) = read("took it out", early)
    assert isinstance(asked, Unclear)
    assert asked.options == (StepDone("out"),)
    assert read("took it out of the brine", early) == [StepDone("out")]
    assert read("took it out", replace(early, out_due=NOW + timedelta(hours=3))) == [StepDone("out")]


def test_how_it_lies_in_the_fridge_is_asked() -> None:
    """In its foil it cools far slower than on a rack: what was not said is not guessed."""
    (asked,) = _read("moved it to the fridge", "chilling")
    assert isinstance(asked, Unclear)
    assert asked.options == (Change({"chill": "rack"}), Change({"chill": "foil"}))


def test_quiet_hours_of_who_sleeps_by_day() -> None:
    """«from 9 to 15» is on a clock of 24 hours, «from 10 to 7» a night."""
    (by_day,), (by_night,) = (read(f"quiet from {hours}", context("none")) for hours in ("9 to 15", "10 to 7"))
    assert [by_day.changes["quiet_from"].hour, by_night.changes["quiet_from"].hour] == [9, 22]
