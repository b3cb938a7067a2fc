"""Habits instead of hours: breakfast, bed, when people get up; units of one quantity; a share of nobody says what."""

from datetime import time
from typing import Any

import pytest

from bot.intents.intents import Change, Help, MoveDeadline, Pause, Settings, Unclear
from bot.intents.read import read
from core.person import Units
from tests.rooms.intents.shorthand import short
from tests.talk_lines import POUNDS, context, wall

CURE = context("curing", POUNDS)


@pytest.mark.parametrize(
    ("text", "changes"),
    [
        ("flips with breakfast", {"flip_hours": (time(8),)}),
        ("flips at breakfast and before bed", {"flip_hours": (time(8), time(21, 30))}),
        ("flip times at breakfast and before bed", {"flip_hours": (time(8), time(21, 30))}),
        ("flips when i get up and when i go to bed", {"flip_hours": (time(7, 30), time(21, 30))}),
        ("flips after breakfast and after dinner", {"flip_hours": (time(8), time(19))}),
        ("we get up at 6", {"quiet_to": time(6)}),
        ("i usually wake up at 5:30", {"quiet_to": time(5, 30)}),
        ("we go to bed at 11", {"quiet_from": time(23)}),
        ("i'm asleep from 10 to 6", {"quiet_from": time(22), "quiet_to": time(6)}),
        ("i sleep till 9", {"quiet_to": time(9)}),
        ("inches please", {"units": Units("lb", "in", "f")}),
        ("cm please", {"units": Units("lb", "mm", "f")}),
        ("in kg please", {"units": Units("kg", "in", "f")}),
        ("weights in kg but temps in f", {"units": Units("kg", "in", "f")}),
        ("in new york now", {"zone": "America/New_York"}),
        ("landed in denver", {"zone": "America/Denver"}),
        ("just arrived in chicago", {"zone": "America/Chicago"}),
        ("got to london safely", {"zone": "Europe/London"}),
        ("sprich englisch", {"language": "en"}),
        ("englisch bitte", {"language": "en"}),
    ],
)
def test_what_is_so_every_day(text: str, changes: dict[str, Any]) -> None:
    """Kept for the person, and no hour of the batch moves."""
    assert read(text, CURE) == [Settings(changes)]


@pytest.mark.parametrize(
    ("text", "changes"),
    [
        ("ounces n fahrenheit", {"units": Units("lb", "in", "f")}),
        (
            "sweden here so celsius n kg",
            {"jurisdiction": "EU", "zone": "Europe/Stockholm", "units": Units("kg", "in", "c")},
        ),
        ("im in denver, fridge runs 38", {"zone": "America/Denver", "fridge_c": 10 / 3}),
        ("texas, quiet after 9", {"zone": "America/Chicago", "quiet_from": time(21)}),
        ("pst", {"zone": "America/Los_Angeles"}),
        ("ontario canada", {"zone": "America/Toronto"}),
        ("my fridge is always 36", {"fridge_c": 20 / 9}),
        ("fridge runs at 3c", {"fridge_c": 3.0}),
        ("im at 7000 ft", {"altitude_m": 2133.6}),
        ("live at 1500 m here", {"altitude_m": 1500.0}),
        ("text me 7am to 9pm only", {"quiet_from": time(21), "quiet_to": time(7)}),
        ("only ping me between 8 and 22", {"quiet_from": time(22), "quiet_to": time(8)}),
        ("no pings b4 7 or after 10", {"quiet_from": time(22), "quiet_to": time(7)}),
        ("no texts after 9 or before 8", {"quiet_from": time(21), "quiet_to": time(8)}),
        ("pacific tz", {"zone": "America/Los_Angeles"}),
        ("dont bug me at work 9-5", {"quiet_from": time(9), "quiet_to": time(17)}),
        ("flips 8am n 9pm", {"flip_hours": (time(8), time(21))}),
        ("im in the uk use kilos", {"zone": "Europe/London", "jurisdiction": "UK", "units": Units("kg", "in", "f")}),
        ("mm not inches", {"units": Units("lb", "mm", "f")}),
        ("no buzzes overnite", {"quiet_from": time(22), "quiet_to": time(7)}),
        ("got a 0.01g scale", {"scale": True}),
        ("pocket scale here", {"scale": True}),
        ("kosher salt here", {"salt": "coarse"}),
        ("gas grill 3 burners", {"cooker": "gas"}),
        ("english pls", {"language": "en"}),
        ("remind me at 7am and 9pm", {"flip_hours": (time(7), time(21))}),
    ],
)
def test_what_is_told_before_anything_is_begun(text: str, changes: dict[str, Any]) -> None:
    """Settings in passing, several in a line too, and nothing beside them."""
    (said,) = read(text, context("none", POUNDS))
    assert isinstance(said, Settings)
    assert said.changes == {name: pytest.approx(v) if isinstance(v, float) else v for name, v in changes.items()}


@pytest.mark.parametrize("text", ["fridge 38", "fridge is 41", "how high is 7000 ft", "kosher salt here?"])
def test_what_sets_nothing(text: str) -> None:
    """A reading stays one, and a question is none of it."""
    assert not any(isinstance(intent, Settings) for intent in read(text, context("none", POUNDS)))


@pytest.mark.parametrize(
    "text",
    ["i get up at 6 tomorrow", "im up at 6 tomorrow", "i went to bed at 11", "im up till 2", "going to bed at 11"],
)
def test_one_night_is_no_habit(text: str) -> None:
    """What is told of one day, or of yesterday, sets no hours."""
    assert not any(isinstance(intent, Settings) for intent in read(text, CURE))


@pytest.mark.parametrize("text", ["i have breakfast at 7", "we usually have dinner at 8"])
def test_a_meal_of_every_day_moves_none(text: str) -> None:
    """The meal of the batch is offered, and moves by a tap alone."""
    (asked,) = read(text, CURE)
    assert isinstance(asked, Unclear)
    assert [type(option) for option in asked.options] == [MoveDeadline]


@pytest.mark.parametrize("text", ["call me with breakfast", "remind me at breakfast", "ping me at breakfast please"])
def test_called_at_breakfast(text: str) -> None:
    """What is called for waits until then."""
    assert short(read(text, CURE)) == "later @09:00"


@pytest.mark.parametrize(
    ("text", "offered"),
    [
        ("my salt is 5.88 %", [{"cure_nitrite_fraction": 0.0588}]),
        ("salt 6.25%", [{"cure_nitrite_fraction": 0.0625}]),
        ("the salt says 6.25 percent", [{"cure_nitrite_fraction": 0.0625}]),
        ("used 10% like it says", [{"method": "inject"}]),
    ],
)
def test_a_share_of_what(text: str, offered: list[dict[str, Any]]) -> None:
    """Nobody salts meat by what a packet holds: no salt is changed by it, and what it can be is offered."""
    (asked,) = read(text, context("waiting", POUNDS))
    assert isinstance(asked, Unclear)
    assert [option.changes for option in asked.options if isinstance(option, Change)] == offered


@pytest.mark.parametrize("text", ["cure 6.25 % salt 2.5 %", "pink salt 6.25% and salt 2.5%", "6.25% cure, salt 2.5%"])
def test_two_shares_in_one_line(text: str) -> None:
    """Each by its own word."""
    assert read(text, context("waiting", POUNDS)) == [Change({"cure_nitrite_fraction": 0.0625, "salt_fraction": 0.025})]


@pytest.mark.parametrize("text", ["in the fridge now", "in ice now", "in bag now", "got in the bag", "in the cure now"])
def test_where_the_meat_is_sets_no_clock(text: str) -> None:
    """What is no place on the map is none of the person's."""
    assert not any(isinstance(intent, Settings) for intent in read(text, CURE))


@pytest.mark.parametrize(
    "text",
    [
        "no flips till wednesday",
        "nobody can flip till wednesday",
        "cant flip it till wed",
        "nobody home to flip until wed",
    ],
)
def test_nobody_who_can_flip_is_quiet(text: str) -> None:
    """A day without its hour: quiet until then, and nobody of that name takes over."""
    (pause,) = read(text, CURE)
    assert isinstance(pause, Pause)
    assert pause.until == wall(3, 3, 9)


@pytest.mark.parametrize("text", ["we leave for a week on sunday", "going away on sunday for a week"])
def test_away_for_a_week_from_a_day(text: str) -> None:
    """From that day on, for as long."""
    (pause,) = read(text, CURE)
    assert isinstance(pause, Pause)
    assert (pause.since, pause.until) == (wall(3, 7, 0), wall(3, 14, 0))


@pytest.mark.parametrize("text", ["what can i say", "what do i type here", "what could i ask you", "menu", "/help"])
def test_asked_for_help(text: str) -> None:
    """By the words for it, with or without a slash."""
    assert read(text, CURE) == [Help()]
