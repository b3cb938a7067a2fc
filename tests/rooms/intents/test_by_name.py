"""Batches by their names and numbers, and what holds for a person when it is asked for."""

from dataclasses import replace
from datetime import datetime, time

import pytest

from bot.intents.called import by_meat, set_about
from bot.intents.context import Context
from bot.intents.intents import Ask, Cancel, Change, HandOver, Join, Reading, Settings, Snooze, StepDone
from bot.intents.meats import of_none
from bot.intents.read import read, said_too
from core.person import Units
from tests.talk_lines import KILOS, context, wall

NAMES = ("bacon", "flat", "flat 2")


def three() -> Context:
    """In the cure: a bacon and two flats, the second flat in hand."""
    named = tuple((name, name) for name in NAMES)
    return replace(context("curing", KILOS), batch="flat 2", batches=named)


@pytest.mark.parametrize(
    ("line", "steps"),
    [
        ("flat 1: flipped", ["flat flip"]),
        ("flat one is flipped", ["flat flip"]),
        ("the first flat is flipped", ["flat flip"]),
        ("the second flat is flipped", ["flat 2 flip"]),
        ("the other flat is flipped", ["flat flip"]),
        ("flat 2 is in", ["flat 2 into_cure"]),
        ("flat 2 is out", ["flat 2 out"]),
        ("bacon is rinsed", ["bacon rinse"]),
        ("flipped the flats", ["flat flip", "flat 2 flip"]),
        ("both flats are in", ["flat into_cure", "flat 2 into_cure"]),
        ("flat 2 flipped, same for the bacon", ["flat 2 flip", "bacon flip"]),
    ],
)
def test_a_step_is_of_the_batch_that_is_called_so(line: str, steps: list[str]) -> None:
    """By its number, in figures or words, as the other one, or several in the plural."""
    found = read(line, three())
    assert [f"{each.batch} {each.step}" for each in found if isinstance(each, StepDone)] == steps


@pytest.mark.parametrize(
    ("line", "batch"),
    [
        ("the bacon too", "bacon"),
        ("same for flat 2", "flat 2"),
        ("and the other flat as well", "flat"),
        ("bacon", None),
        ("the bacon too salty", None),
        ("is the bacon too salty", None),
        ("flipped the bacon too", None),
    ],
)
def test_a_batch_is_added_to_what_was_said(line: str, batch: str | None) -> None:
    """By its name and «too», with nothing else in the line."""
    assert said_too(line, three()) == batch


def test_a_number_behind_a_name_is_no_reading() -> None:
    """«flat 1 brine is 4 c» has one temperature, and «flat 1.5 kg» a weight."""
    (read_,) = read("flat 1 brine is 4 c", three())
    assert isinstance(read_, Reading)
    assert (read_.batch, [t.value for t in read_.temperatures]) == ("flat", [4.0])
    assert not any(isinstance(each, Ask) for each in read("flat 1.5 kg for saturday", three()))


@pytest.mark.parametrize(
    ("line", "topic", "batch"),
    [
        ("how's the bacon doing", "catch_up", "bacon"),
        ("what about the other flat?", "now", "flat"),
        ("bacon?", "now", "bacon"),
        ("plan for bacon", "plan", "bacon"),
        ("when is flat 2 ready", "eta", "flat 2"),
        ("rename flat 2 to sunday", "renamed", None),
        ("call it sunday flat", "renamed", None),
    ],
)
def test_a_name_asks_and_begins_nothing(line: str, topic: str, batch: str | None) -> None:
    """Of a batch that is under way a name alone is a question, and no second batch."""
    (found,) = read(line, three())
    assert isinstance(found, Ask)
    assert (found.topic, found.batch) == (topic, batch)


def test_a_named_batch_is_dropped() -> None:
    """«drop the bacon» means that one."""
    assert read("drop the bacon", three()) == [Cancel("bacon")]


@pytest.mark.parametrize(
    ("line", "named"),
    [
        ("brisket out of the cure", "flat out of the cure"),
        ("the brisket is flipped", "the flat is flipped"),
        ("flipped the brisket", "flipped the flat"),
        ("pastrami is at 155", "flat is at 155"),
        ("the beef is at 155", "the flat is at 155"),
        ("beef 152", "flat 152"),
        ("the pork is flipped", "the bacon is flipped"),
        ("brisket 158, belly flipped", "flat 158, bacon flipped"),
        ("the brisket flat is flipped", "the brisket flat is flipped"),
        ("the ham is flipped", "the ham is flipped"),
        ("another brisket, 3 kg", "another brisket, 3 kg"),
        ("a brisket for sunday", "a brisket for sunday"),
        ("corned beef 5 lb for sunday", "corned beef 5 lb for sunday"),
        ("is pork safe at 145", "is pork safe at 145"),
    ],
)
def test_a_batch_goes_by_its_meat(line: str, named: str) -> None:
    """The product, the cut and the animal name the one batch that is of it; a piece that is new is none of them."""
    assert by_meat(line, (("flat", "pastrami", "brisket_flat"), ("bacon", "bacon", "pork_belly"))) == named


def test_a_meat_of_two_batches_names_neither() -> None:
    """«the brisket», where one is a flat and the other a point, is asked about."""
    both = (("flat", "pastrami", "brisket_flat"), ("point", "corned_beef", "brisket_point"))
    assert by_meat("the brisket is flipped", both) == "the brisket is flipped"
    assert by_meat("the pastrami is flipped", both) == "the flat is flipped"


def test_the_last_word_of_a_name_is_enough() -> None:
    """«beef in» is the one called «corned beef», where no other is beef; «flat» stays what may be «flat 2»."""
    both = (("corned beef", "corned_beef", "brisket_flat"), ("bacon", "bacon", "pork_belly"))
    assert by_meat("beef in", both) == "corned beef in"
    assert by_meat("corned beef in", both) == "corned beef in"
    two = (("flat", "pastrami", "brisket_flat"), ("flat 2", "pastrami", "brisket_flat"))
    assert by_meat("flat 2 in", two) == "flat 2 in"


@pytest.mark.parametrize(
    ("line", "heard"),
    [
        ("starting the corned beef early, brine is made", "corned beef: brine is made"),
        ("ok so im doing the beef now: salt is weighed", "corned beef: salt is weighed"),
        ("lets start with the bacon and rub is on", "bacon: rub is on"),
        ("starting a corned beef, brine is made", "starting a corned beef, brine is made"),
        ("starting the ham, brine is made", "starting the ham, brine is made"),
        ("starting the corned beef, 3 lb", "starting the corned beef, 3 lb"),
    ],
)
def test_the_piece_that_waits_is_set_about(line: str, heard: str) -> None:
    """«the» of one that waits begins no second one; with «a», a weight or another meat it may."""
    both = (("corned beef", "corned_beef", "brisket_flat"), ("bacon", "bacon", "pork_belly"))
    assert set_about(line, both) == heard


@pytest.mark.parametrize(
    ("line", "meat"),
    [
        ("the ham is flipped", "ham"),
        ("salmon: fridge 3", "salmon"),
        ("the belly is flipped", ""),
        ("pastrami flipped", ""),
        ("flipped", ""),
    ],
)
def test_a_meat_that_is_none_of_them_is_noticed(line: str, meat: str) -> None:
    """A ham beside a bacon and two flats is nobody's; a belly is the bacon, a pastrami a flat."""
    assert of_none(line, NAMES) == meat


@pytest.mark.parametrize(
    ("line", "changes"),
    [
        ("weights in pounds", {"units": Units("lb", "mm", "c")}),
        ("temps in fahrenheit", {"units": Units("kg", "mm", "f")}),
        ("thickness in inches", {"units": Units("kg", "in", "c")}),
        ("fahrenheit for temperatures please", {"units": Units("kg", "mm", "f")}),
        ("back in vienna", {"zone": "Europe/Vienna"}),
        ("home in berlin again", {"zone": "Europe/Berlin"}),
        ("no flips after 9pm", {"quiet_from": time(21)}),
        ("no flips before 9", {"quiet_to": time(9)}),
        ("i have a scale that shows 1 g", {"scale": True}),
        ("my scale broke", {"scale": False}),
    ],
)
def test_a_setting_by_words(line: str, changes: dict[str, object]) -> None:
    """Units of one quantity alone, a way home, hours in which nothing is to come, a scale that came or went."""
    assert read(line, context("curing", KILOS)) == [Settings(changes)]


@pytest.mark.parametrize(
    ("line", "about"),
    [
        ("what units do you use", "units"),
        ("what time is it for you", "zone"),
        ("what are my quiet hours", "quiet_from"),
        ("wake me for the fire", "quiet_from"),
        ("which law do you use", "jurisdiction"),
    ],
)
def test_a_setting_is_asked_for(line: str, about: str) -> None:
    """What holds is said, and nothing is put off or begun."""
    (found,) = read(line, context("curing"))
    assert isinstance(found, Ask)
    assert (found.topic, found.about) == ("settings", about)


@pytest.mark.parametrize("line", ["i'm off to lisbon tomorrow", "flying to chicago on friday"])
def test_a_journey_to_come_moves_no_clock(line: str) -> None:
    """Nothing rests and no clock is set before they are there."""
    (found,) = read(line, context("curing"))
    assert isinstance(found, Ask)
    assert found.topic == "journey"


@pytest.mark.parametrize(
    "line", ["back in the fridge", "back in an hour", "going to bed tomorrow early", "what law says 200 ppm"]
)
def test_what_only_sounds_like_it(line: str) -> None:
    """A fridge is no city, a bed no journey, and a law with a figure no setting."""
    found = read(line, context("curing"))
    assert not any(isinstance(each, Settings) for each in found)
    assert not any(isinstance(each, Ask) and each.topic in ("journey", "settings") for each in found)


def test_who_weighs_is_said_in_a_word() -> None:
    """«i'll dose» takes the weighing over; «i've got it» is a nod, and nobody's name."""
    assert read("i'll dose", context("curing")) == [HandOver("me", None, "cure")]
    assert not any(isinstance(each, HandOver) for each in read("i've got it", context("curing")))
    assert read("who doses", context("curing"))[0] == Ask("who", text="who doses")


@pytest.mark.parametrize(
    ("line", "at"),
    [
        ("bo has the fire from monday 7:00", wall(3, 8, 7)),  # it is monday, half past eight
        ("bo has the fire from tomorrow 7:00", wall(3, 2, 7)),
        ("bo has the fire until 9", None),
        ("bo has the fire", None),
    ],
)
def test_a_fire_is_handed_over_from_an_hour_to_come(line: str, at: datetime | None) -> None:
    """A weekday whose hour has gone by is that of next week, and an end is no beginning."""
    (handed,) = read(line, context("curing"))
    assert isinstance(handed, HandOver)
    assert (handed.to, handed.at, handed.task) == ("bo", at, "fire")


@pytest.mark.parametrize(
    ("line", "until"),
    [
        ("my son is watching it til 4", wall(3, 1, 16)),
        ("dave has the fire until 5pm", wall(3, 1, 17)),
        ("bob is minding the smoker for the next 2 hours", wall(3, 1, 10, 30)),
        ("ask bo to watch the fire for an hour", wall(3, 1, 9, 30)),
        ("bo has the fire", None),
    ],
)
def test_a_hand_over_ends_when_it_is_told(line: str, until: datetime | None) -> None:
    """And a while that it lasts is not when it begins."""
    (handed,) = read(line, context("curing"))
    assert isinstance(handed, HandOver)
    assert (handed.at, handed.until) == (None, until)


@pytest.mark.parametrize("line", ["join", "join wrong12345"])
def test_an_invitation_with_a_slip_is_one(line: str) -> None:
    """It opens nothing, and is told so; «join us for dinner» is none."""
    assert read(line, context("none")) == [Join("")]
    assert not any(isinstance(each, Join) for each in read("join us for dinner", context("none")))


@pytest.mark.parametrize("line", ["cancel the flat", "drop the brisket please", "scrap the ham"])
def test_a_batch_is_dropped_by_its_meat(line: str) -> None:
    """With one under way, and with none, «cancel the flat» changes no cut."""
    assert read(line, context("curing")) == read(line, context("none")) == [Cancel()]


@pytest.mark.parametrize("line", ["my dog ate the point", "the point is dry", "lovely flat", "delete the flat reading"])
def test_a_cut_that_is_only_mentioned_changes_none(line: str) -> None:
    """The cut is changed by a line that says nothing else."""
    assert not any(isinstance(each, Change) for each in read(line, context("curing")))


def test_a_step_ahead_is_asked_for_without_an_hour() -> None:
    """«remind me to light the fire» names no hour: it is called for when it is due."""
    assert read("remind me to light the fire", context("curing")) == [Snooze(step="light")]


@pytest.mark.parametrize(
    ("line", "who", "task"),
    [
        ("bo can you do the flips till tuesday", "bo", "flips"),
        ("can bo do the flips", "bo", "flips"),
        ("ask bo to watch the fire", "bo", "fire"),
        ("could my wife take the fire", "wife", "fire"),
        ("i've got it now", "me", "all"),
        ("my turn now", "me", "all"),
        ("im on it now", "me", "all"),
    ],
)
def test_somebody_is_asked_to_take_it(line: str, who: str, task: str) -> None:
    """Asked or said, it is handed over; nothing is asked of the bot, of nobody or of a thing."""
    (handed,) = read(line, context("curing"))
    assert isinstance(handed, HandOver)
    assert (handed.to, handed.at, handed.task) == (who, None, task)
    for other in ("can you flip it", "bot can you take the fire", "would paper do it", "can it take the fire"):
        assert not any(isinstance(each, HandOver) for each in read(other, context("curing")))
