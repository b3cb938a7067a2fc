"""A time told of something else is no answer to how long it went wrong: «out of the soak 20 min ago» was one."""

import pytest

from bot.intents.intents import Happened
from bot.intents.read import read
from tests.talk_lines import POUNDS, context

ELSEWHERE = [
    "soaked it 30 min",
    "out of the soak 20 min ago",
    "took the belly out 20 min ago",
    "rinsed it an hour ago",
    "put it on the rack 1 hour ago",
    "i'll be back in an hour",
    "soak for 1 hour",
    "dried it 2 hours",
    "moved it to the other fridge 30 min ago",
    "shut the door 20 min ago",
    "turned the fridge down half an hour ago",
    "took 20 minutes to clean up",
    "its been in the cure 3 days",
    "fried a bit for 5 min",
    "rain for an hour now",
    "read it 10 min ago",
    "new bag 15 min ago",
    "45 min drive home now",
    "my wife closed it an hour ago",
    "salted it 1 hour",
    "wash it 2 min",
    "ice bath for 1 hour",
    "power came back an hour ago",
    "took it out an hour ago",
]
ANSWERS = [
    ("1 hour", 1.0),
    ("about 2 hours i think", 2.0),
    ("6 hours tops", 6.0),
    ("the last 30 min", 0.5),
    ("was only like 20 min", 1 / 3),
    ("no more than an hour", 1.0),
    ("since 7 am", 1.5),
    ("it was fine 3 hours ago", 3.0),
    ("started an hour ago", 1.0),
    ("kids had it open for 2 hours", 2.0),
    ("3 hours, it got to 45", 3.0),
    ("half an hour, and i turned it down", 0.5),
    ("maybe an hour or two", 2.0),
]


@pytest.mark.parametrize("asked", ["warm_fridge", "power_cut", "left_out", "warm_brine"])
@pytest.mark.parametrize("text", ELSEWHERE)
def test_told_of_something_else(text: str, asked: str) -> None:
    """Nothing is told of how long it went wrong."""
    found = read(text, context("curing", POUNDS, asked=f"happened_{asked}"))
    assert not any(isinstance(one, Happened) and one.facts.get("more") for one in found)


@pytest.mark.parametrize(("text", "hours"), ANSWERS)
def test_told_of_it(text: str, hours: float) -> None:
    """What answers it in whatever words is taken."""
    (found,) = read(text, context("curing", POUNDS, asked="happened_warm_fridge"))
    assert isinstance(found, Happened)
    assert found.facts["hours"] == pytest.approx(hours, abs=0.01)
