"""Freezing as it is told: raw fish that was frozen before, finished meat that is, and what is neither."""

import pytest

from bot.intents.frozen import frost
from bot.intents.intents import Ask, Happened, Intent, Start
from bot.intents.read import read
from tests.talk_lines import KILOS, context


def meant(text: str, phase: str) -> Intent:
    found = read(text, context(phase, KILOS))
    assert len(found) == 1, found
    return found[0]


@pytest.mark.parametrize(
    ("text", "degrees", "unit", "hours"),
    [
        ("froze the fillets for a week at -20", -20.0, "", 168.0),
        ("i froze the salmon at -18 c for a month", -18.0, "c", 720.0),
        ("the fish was frozen at -4 f for 7 days", -4.0, "f", 168.0),
        ("salmon was kept frozen at -35c for 15 hours", -35.0, "c", 15.0),
        ("fish frozen overnight at minus 20", -20.0, "", 8.0),
        ("fillets frozen 5 to 7 days at -20", -20.0, "", 120.0),  # of a range the lower end
        ("salmon frozen for 3 weeks at 0 f", 0.0, "f", 504.0),
        ("froze the trout for 10 days", None, "", 240.0),
    ],
)
@pytest.mark.parametrize("phase", ["none", "waiting"])
def test_how_cold_and_how_long(text: str, degrees: float | None, unit: str, hours: float, phase: str) -> None:
    """Asked of the code, never of a recipe; nothing of it changes a batch."""
    found = meant(text, phase)
    assert isinstance(found, Ask)
    assert found.about == "frozen_fish"
    told = frost(found.text.lower().replace("minus ", "-"))
    assert (told.degrees, told.unit, told.hours) == (degrees, unit, hours)


@pytest.mark.parametrize(
    ("text", "whole"),
    [
        ("froze it", True),
        ("froze all of it", True),
        ("everything is in the freezer", True),
        ("froze half of it", False),
        ("put half in the freezer", False),
        ("froze the rest", False),
        ("froze two packs", False),
        ("the other half is frozen", False),
    ],
)
def test_finished_meat_goes_into_the_freezer(text: str, whole: bool) -> None:
    """Whatever may be a part leaves the date of what is in the fridge standing."""
    found = meant(text, "stored")
    assert isinstance(found, Happened)
    assert (found.what, found.facts) == ("frozen", {"all": whole})


@pytest.mark.parametrize("text", ["thawed it", "took it out of the freezer", "its defrosted"])
def test_and_comes_out_again(text: str) -> None:
    found = meant(text, "stored")
    assert isinstance(found, Happened)
    assert found.what == "thawed"


@pytest.mark.parametrize(
    ("text", "phase"),
    [
        ("put it in the freezer to cool", "chilling"),  # a way to chill
        ("put it in the freezer", "chilling"),
        ("can i freeze it", "stored"),
        ("will freeze half tomorrow", "stored"),
        ("dont freeze it", "stored"),
        ("it froze in the cure", "curing"),
        ("froze the ham for a week at -20", "waiting"),
    ],
)
def test_what_is_not_frozen_meat(text: str, phase: str) -> None:
    for found in read(text, context(phase, KILOS)):
        assert not isinstance(found, Happened) or found.what != "frozen"
        assert not isinstance(found, Ask) or found.about != "frozen_fish"


@pytest.mark.parametrize("phase", ["none", "stored"])
def test_a_batch_of_frozen_fish_begins(phase: str) -> None:
    found = meant("2 kg salmon for saturday, frozen for a week at -20", phase)
    assert isinstance(found, Start)
    assert found.said["frozen"] is True
