"""The same told in other words: an hour put right, who did it, what nobody calls for; asked about where it is open."""

from datetime import timedelta

import pytest

from bot.intents.intents import Change, Choose, Correct, HandOver, MoveDeadline, Reading, Snooze, StepDone, Unclear
from bot.intents.read import read
from core.batch.events import Probe
from core.units import KILOGRAMS_PER_POUND as LB
from tests.talk_lines import KILOS, context


@pytest.mark.parametrize(
    "text", ["sorry 66 was at noon", "the 66 was at 12", "66 was 20 min ago", "no, the 66 was at 12:00"]
)
def test_the_hour_of_a_reading(text: str) -> None:
    """Of the reading with that number, another hour, and no second reading."""
    (put_right,) = read(text, context("cooking", KILOS))
    assert isinstance(put_right, Correct)
    assert put_right.was == 66.0
    assert put_right.at is not None


@pytest.mark.parametrize(
    ("phase", "text", "why"),
    [
        ("cooking", "other way round", "swapped"),
        ("cooking", "i mixed up the probes", "swapped"),
        ("cooking", "swap those the probes were the wrong way round", "swapped"),
        ("curing", "sorry its the other way around", "swapped"),
        ("cooking", "stop asking for readings", "no_readings"),
        ("cooking", "dont ask me for the core temp anymore", "no_readings"),
        ("chilling", "quit pinging me for temps", "no_readings"),
        ("cooking", "remind me at 2 to spritz", "no_step"),
        ("curing", "remind me to buy wood on friday", "no_step"),
        ("cooking", "ping me in an hour to add wood", "no_step"),
        ("curing", "soaking it now", "soaking"),
        ("curing", "its soaking in the sink", "soaking"),
        ("curing", "move it", "move"),
        ("waiting", "half a bag of salt", "grams"),
        ("waiting", "2 cups of kosher salt", "grams"),
        ("chilling", "12 in the fridge", "number"),
    ],
)
def test_it_is_asked(phase: str, text: str, why: str) -> None:
    """Each is met with its own question or answer, and nothing is noted."""
    (asked,) = read(text, context(phase, KILOS))
    assert isinstance(asked, Unclear)
    assert asked.why == why


@pytest.mark.parametrize(
    "text", ["remind me to flip at 9", "remind me to take it out at 5", "ping me at 9 to check it"]
)
def test_a_step_is_called_for(text: str) -> None:
    """What is a step of the plan, or may be one, is called for."""
    (later,) = read(text, context("curing", KILOS))
    assert isinstance(later, Snooze)


@pytest.mark.parametrize("text", ["jess did the flip not me", "it was jess who flipped", "she turned it, not me"])
def test_another_one_did_it(text: str) -> None:
    """Whoever did it, it is done."""
    assert read(text, context("curing", KILOS)) == [StepDone("flip")]


def test_who_is_to_be_told_is_no_deed() -> None:
    """«text jo not me» hands it over, as before."""
    (handed,) = read("text jo not me", context("curing", KILOS))
    assert isinstance(handed, HandOver)


@pytest.mark.parametrize("text", ["still froze in the middle", "middle is still icy", "its still frozen inside"])
def test_ice_in_the_middle(text: str) -> None:
    """Raw meat with ice in it is frozen, while it waits."""
    assert read(text, context("waiting", KILOS)) == [Change({"frozen": True})]


def test_a_core_that_lies_in_the_fridge() -> None:
    """«21 in fridge now» while it chills is of the meat: no fridge reads so."""
    asked, read_ = read("21 in fridge now", context("chilling", KILOS))
    assert isinstance(asked, Unclear)
    assert asked.why == "chilled_on"
    assert isinstance(read_, Reading)
    assert read_.temperatures[0].probe is Probe.CORE


def test_the_weight_of_the_meat_in_hand() -> None:
    """«make it 3 lb of brisket» is a new weight of the brisket in hand, and no new batch."""
    here = context("waiting", KILOS)
    assert read("make it 3 lb", here) == [Change({"mass": pytest.approx(3 * LB)})]


@pytest.mark.parametrize("text", ["stimmt", "richtig", "passt so", "das stimmt"])
def test_germans_vouch_for_a_number(text: str) -> None:
    """A doubted reading stands by these words."""
    assert read(text, context("cooking", KILOS, asked="doubt", asked_value=92.0, language="de")) == [
        Choose("doubt", "keep")
    ]


def test_a_day_of_the_fire_is_asked_about() -> None:
    """«it goes on sunday instead»: the day of the fire or of the meal, offered."""
    (asked,) = read("it goes on sunday instead", context("curing", KILOS))
    assert isinstance(asked, Unclear | MoveDeadline)
    assert not isinstance(asked, MoveDeadline) or asked.by != timedelta(0)
