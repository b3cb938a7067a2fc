"""bot.intents.deviations: the answers of a deviation dialogue in many phrasings; none is a snooze or a reading."""

from dataclasses import replace

import pytest

from bot.intents.deviations import ASKED, SLOT
from bot.intents.intents import Happened, Reading, Snooze, StepDone
from bot.intents.read import read
from core.person import Units
from tests.rooms.intents.test_reading_lines import COOK, CURE

ANSWERS = {
    "power_cut": {
        "3 hours, door shut": {"hours": 3.0, "door_shut": True},
        "about three hours, it stayed closed": {"hours": 3.0, "door_shut": True},
        "it was off for 3 hours and the door stayed shut": {"hours": 3.0, "door_shut": True},
        "never opened it, 3 h": {"hours": 3.0, "door_shut": True},
        "nobody opened the door, 3-4 hours": {"hours": 4.0, "door_shut": True},
        "it wasn't opened at all": {"door_shut": True},
        "the door was not shut properly": {"door_shut": False},
        "half a day, we opened it twice": {"hours": 12.0, "door_shut": False},
        "more than 4 hours, shut": {"hours": None, "door_shut": True},
        "4+ hours": {"hours": None},
        "overnight, shut": {"hours": None, "door_shut": True},
        "from 22:00 to 6:00": {"hours": 8.0},
        "between 1 and 4 am": {"hours": 3.0},
        "it went off 5 hours ago": {"hours": 5.0},
        "back an hour ago, it was off 3 hours": {"hours": 3.0},
        "6 hours, opened, it was 95 f outside": {"hours": 6.0, "door_shut": False, "room_c": 35.0},
        "core 12 c": {"core_c": 12.0},
        "it is 12 degrees inside": {"core_c": 12.0},
        "12 c": {"core_c": 12.0},
        "freezer, half full, still frozen": {"where": "freezer_half", "ice_crystals": True},
        "the freezer was full, no ice left": {"where": "freezer_full", "ice_crystals": False},
        "shut": {"door_shut": True},
        "no idea": {"unknown": True},
    },
    "left_out": {
        "90 minutes, room 22 c": {"hours": 1.5, "room_c": 22.0},
        "two and a half hours at 25 c": {"hours": 2.5, "room_c": 25.0},
        "an hour and a half, kitchen was 24": {"hours": 1.5, "room_c": 24.0},
        "2 hours, it was 95 outside": {"hours": 2.0, "room_c": 35.0},
        "less than an hour": {"hours": 1.0},
        "over 2 hours": {"hours": None},
        "all night": {"hours": None},
        "1 h 30, core 8 c": {"hours": 1.5, "core_c": 8.0},
        "dont know": {"unknown": True},
    },
    "warm_fridge": {
        "5 hours, 44 f": {"hours": 5.0, "room_c": 6.67},
        "got to 9 c, 2 hours": {"hours": 2.0, "room_c": 9.0},
        "2 hours, it was 9 degrees": {"hours": 2.0, "room_c": 9.0},
        "9 c": {"room_c": 9.0},
        "fridge was 9 c": {"room_c": 9.0},
        "5 hours, fridge is 3 c now": {"hours": 5.0},
        "5 hours, 3 c": {"hours": 5.0},
        "a couple of hours": {"hours": 2.0},
        "couple hours": {"hours": 2.0},
        "an hour or two": {"hours": 2.0},
        "hour or two": {"hours": 2.0},
        "an hour, maybe three": {"hours": 3.0},
        "half an hour or an hour": {"hours": 1.0},
        "no more than 2 hours": {"hours": 2.0},
        "not more than an hour": {"hours": 1.0},
        "several hours": {"hours": None},
        "not sure": {"unknown": True},
    },
    "warm_brine": {
        "an hour, 10 degrees": {"hours": 1.0, "room_c": 10.0},
        "about an hour at 12 c": {"hours": 1.0, "room_c": 12.0},
        "1 h, brine was 12 c": {"hours": 1.0, "room_c": 12.0},
    },
    "leaked": {
        "half of it, 2 days": {"lost_fraction": 0.5, "unnoticed_days": 2.0},
        "a third, noticed this morning": {"lost_fraction": 0.33, "unnoticed_days": 1.0},
        "two thirds, since yesterday": {"lost_fraction": 0.67, "unnoticed_days": 2.0},
        "about a cup, since yesterday": {"lost_kg": 0.24, "unnoticed_days": 2.0},
        "half a litre, 12 hours": {"lost_kg": 0.5, "unnoticed_days": 0.5},
        "a few drops": {"lost_fraction": 0.05},
        "30 %, 1 day": {"lost_fraction": 0.3, "unnoticed_days": 1.0},
        "half a day": {"unnoticed_days": 0.5},
        "nearly all of it, a day and a half": {"lost_fraction": 0.9, "unnoticed_days": 1.5},
        "it's empty, no idea when": {"lost_fraction": 1.0, "unknown": True},
    },
    "dosed_twice": {
        "24 g": {"cure_kg": 0.024},
        "12 g twice": {"cure_kg": 0.024},
        "12 g and 14 g": {"cure_kg": 0.026},
        "24 grams in all": {"cure_kg": 0.024},
        "no clue": {"unknown": True},
    },
    "fire_out": {
        "30 min": {"hours": 0.5},
        "about 2 hours i guess": {"hours": 2.0},
        "at most an hour and a quarter": {"hours": 1.25},
        "core 58 c, 1 h": {"hours": 1.0, "core_c": 58.0},
        "i don't know": {"unknown": True},
    },
}  # fmt: skip
LINES = [(what, text, facts) for what, lines in ANSWERS.items() for text, facts in lines.items()]


def test_every_dialogue_has_its_answers():
    """None is left out."""
    assert set(ANSWERS) == set(ASKED)


@pytest.mark.parametrize(("what", "text", "facts"), LINES, ids=[f"{what}: {text}" for what, text, _ in LINES])
def test_an_answer_is_taken_as_one(what, text, facts):
    """How long, how warm, how much, shut or open: a fact each, at the worst that was said."""
    (found,) = read(text, replace(COOK if what == "fire_out" else CURE, asked=SLOT + what))
    assert isinstance(found, Happened)
    assert found.what == what
    assert found.facts == pytest.approx({**facts, "more": True}, abs=0.005)


@pytest.mark.parametrize(
    ("what", "text", "kind"),
    [
        ("power_cut", "flip done", StepDone),
        ("power_cut", "in 20 min", Snooze),
        ("leaked", "remind me in 2 hours", Snooze),
        ("leaked", "later", Snooze),
        ("power_cut", "fridge 4 c", Reading),
        ("warm_fridge", "fridge 3 c", Reading),
        ("fire_out", "58 c", Reading),
        ("fire_out", "core 58 c", Reading),
    ],
)
def test_something_else_is_no_answer(what, text, kind):
    """A step, a snooze by its word, and a reading of now keep their meaning while a question is open."""
    (found,) = read(text, replace(COOK if what == "fire_out" else CURE, asked=SLOT + what))
    assert isinstance(found, kind)


@pytest.mark.parametrize(
    ("text", "what", "facts"),
    [
        ("power cut, 6 hours, door open", "power_cut", {"hours": 6.0, "door_shut": False}),
        ("power was off for 3 hours, fridge stayed shut", "power_cut", {"hours": 3.0, "door_shut": True}),
        ("no electricity for 5 hours but the door stayed closed", "power_cut", {"hours": 5.0, "door_shut": True}),
        ("left it on the counter for 3 hours at 25 c", "left_out", {"hours": 3.0, "room_c": 25.0}),
        ("the brisket sat in the kitchen for over an hour", "left_out", {"hours": None}),
        ("fridge door was open for 3 hours, got to 9 c", "warm_fridge", {"hours": 3.0, "room_c": 9.0}),
        ("i doubled the cure, 48 g in all", "dosed_twice", {"cure_kg": 0.048}),
    ],
)
def test_told_in_one_line(text, what, facts):
    """What went wrong with its facts beside it."""
    (found,) = read(text, CURE)
    assert isinstance(found, Happened)
    assert (found.what, found.facts) == (what, pytest.approx(facts, abs=0.005))


def test_a_bare_number_is_in_the_unit_of_the_person_where_a_kitchen_can_have_it():
    """75 is Fahrenheit whoever says it, 24 Celsius; a number that may be of ice in the one is taken by the other."""
    for unit, number, celsius in (("c", 24, 24.0), ("c", 75, 23.9), ("f", 75, 23.9), ("f", 24, 24.0)):
        asked = replace(CURE, units=Units(temperature=unit), asked=SLOT + "left_out")
        (found,) = read(f"1 hour, room is {number}", asked)
        assert isinstance(found, Happened)
        assert found.facts["room_c"] == pytest.approx(celsius, abs=0.05)
