"""What no reader knew, offered by its likeness: what is meant is among the first three, and nothing by chance."""

import tomllib
from importlib import resources
from typing import get_args

import pytest

from bot.intents.buttons import carried
from bot.intents.context import Phase
from bot.intents.intents import Happened, Intent, Pause, Snooze, StepDone, StepSkipped
from bot.intents.likely import FILE, MOST, likely


@pytest.mark.parametrize(
    ("text", "phase", "meant"),
    [
        ("no bother missing tonights one", "curing", StepSkipped()),
        ("turned the small 1, other later", "curing", StepDone("flip")),
        ("stuck at work home round nine", "curing", Pause()),
        ("got kids in the bath, give me a bit", "curing", Snooze()),
        ("bundled in a beach towel", "cooking", StepDone("rest")),
        ("the fire has gone and died on us", "cooking", Happened("fire_out")),
        ("bag burst all over the shelf", "curing", Happened("leaked")),
    ],
)
def test_what_is_meant_is_offered(text: str, phase: str, meant: Intent) -> None:
    """Lines of other words than those of the file."""
    assert meant in likely(text, phase)


@pytest.mark.parametrize("text", ["wibble the frobnicator about", "its raining outside", "xyzzy", "", "42"])
def test_nothing_is_offered_by_chance(text: str) -> None:
    """What is like none of the ways offers nothing."""
    assert likely(text, "curing") == ()


def test_every_offer_fits_a_button_and_its_phase() -> None:
    """Each way offers its own thing in each of its phases, three at the most, and in no other phase."""
    frames = tomllib.loads(resources.files("bot.intents").joinpath(FILE).read_text("utf-8"))
    for frame in frames.values():
        assert set(frame["in"]) <= set(get_args(Phase))
        own = likely(frame["ways"][0], frame["in"][0])[0]
        for way in frame["ways"]:
            for phase in frame["in"]:
                offered = likely(way, phase)
                assert own in offered
                assert len(offered) <= MOST
                assert all(map(carried, offered))
        assert all(own not in likely(frame["ways"][0], phase) for phase in set(get_args(Phase)) - set(frame["in"]))
