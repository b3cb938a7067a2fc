"""What is read of all of the meat: a fork, «both», a spoon; and words that only look like an hour."""

from dataclasses import replace

import pytest

from bot.intents.cold_smoked import COLD_SMOKED
from bot.intents.dangers import PUT_IN
from bot.intents.intents import (
    Ask,
    Cancel,
    Choose,
    Happened,
    MoveDeadline,
    Pause,
    Reading,
    Snooze,
    Start,
    StepDone,
    Unclear,
)
from bot.intents.read import read
from core.batch.events import Probe
from tests.talk_lines import KILOS, POUNDS, context


@pytest.mark.parametrize(
    ("line", "value"),
    [
        ("fork goes in easy 197", 197.0),
        ("skewer slides in 201", 201.0),
        ("197 fork tender", 197.0),
        ("both at 152", 152.0),
        ("both are 152", 152.0),
        ("all at 152", 152.0),
    ],
)
def test_it_is_the_core(line: str, value: float) -> None:
    """No pit has a fork in it, and there is one pit."""
    found = read(line, context("cooking", POUNDS))
    assert [(t.value, t.probe) for one in found if isinstance(one, Reading) for t in one.temperatures] == [
        (value, Probe.CORE)
    ]


@pytest.mark.parametrize(
    ("line", "phase", "kind"),
    [
        ("fork wont go in 180", "cooking", Snooze),
        ("all at 152", "cooking", MoveDeadline),
        ("im out of cure", "curing", Pause),
    ],
)
def test_it_is_none_of_that(line: str, phase: str, kind: type) -> None:
    """A core that is no number of minutes and no hour of a meal, and a packet that is empty."""
    assert not any(isinstance(one, kind) for one in read(line, context(phase, POUNDS)))


@pytest.mark.parametrize("line", ["lox from 2 lb salmon", "cold cured salmon 2 lb", "cold smoked salmon 1 kg"])
@pytest.mark.parametrize("asked", [None, "confirm", "answered"])
def test_raw_fish_is_no_hot_plan(line: str, asked: str | None) -> None:
    """Whatever else is asked just then: what was wished cold is not planned hot without a word."""
    (found,) = read(line, replace(context("curing", POUNDS), asked=asked))
    assert isinstance(found, Start)
    assert COLD_SMOKED in found.assumed


@pytest.mark.parametrize(
    "line",
    [
        "kid pulled the bag out, it was on the counter since lunch",
        "found the bag on the counter, been there since this morning",
        "somebody took it out of the fridge and forgot it",
        "my wife left the fridge bag on the worktop overnight",
        "counter since 1pm",
        "was on the porch 3 hrs",
        "forgot to put it back in the fridge last night",
        "the kids had it out on the terrace all afternoon",
        "it stayed out",
    ],
)
def test_what_lay_out_of_the_cold_is_noted(line: str) -> None:
    """However it is told: it was warned of in general, noted nowhere, and «about 5 hours» put a step off."""
    assert [one.what for one in read(line, context("curing", POUNDS)) if isinstance(one, Happened)] == ["left_out"]


@pytest.mark.parametrize(
    ("line", "phase", "what"),
    [
        ("i put the meat in while the brine was still warm", "curing", "warm_brine"),
        ("meat went into warm brine", "curing", "warm_brine"),
        ("my husband also added the cure", "curing", "dosed_twice"),
        ("thawed it on the counter overnight before it went in", "curing", "left_out"),
        ("hung it in the garage overnight to dry", "drying", "left_out"),
        ("fire was out for two hours", "cooking", "fire_out"),
        ("power tripped, pellet grill off for an hour", "cooking", "fire_out"),
        ("forgot to put it in the fridge", "chilling", "left_out"),
        ("it was on the buffet from 1 to 6", "stored", "left_out"),
    ],
)
def test_a_mishap_is_noted_and_not_only_warned_of(line: str, phase: str, what: str) -> None:
    """What the rules of safety judge stands on the record."""
    assert what in [one.what for one in read(line, context(phase, POUNDS)) if isinstance(one, Happened)]


@pytest.mark.parametrize(
    "line", ["left my phone in the car", "i was out all day", "can i leave it on the counter tonight"]
)
def test_what_did_not_lie_out_is_not(line: str) -> None:
    """A telephone, the cook, and a wish."""
    assert not any(isinstance(one, Happened) for one in read(line, context("curing", POUNDS)))


@pytest.mark.parametrize(
    ("thick", "share"), [("1.5 in", "6.25 %"), ("1.5 in", "6.25"), ("2 in", "5.88 %"), ("2in", "6.25%")]
)
def test_a_thickness_before_a_strength_is_one(thick: str, share: str) -> None:
    """The «in» of an inch is none of a place."""
    (found,) = read(f"bacon 5 lb belly dry {thick} {share} for 12 march", context("none", POUNDS))
    assert isinstance(found, Start)
    assert found.said["thickness"] == pytest.approx(float(thick.rstrip(" in")) * 0.0254)
    assert ("cure_nitrite_fraction" in found.said) == ("%" in share)


@pytest.mark.parametrize("line", ["smoker on", "smokers on", "smokers going", "grill on now", "the smoker is on"])
def test_the_fire_is_lit_without_its_verb(line: str) -> None:
    """As it is typed on a phone."""
    assert [one.step for one in read(line, context("drying", POUNDS)) if isinstance(one, StepDone)] == ["light"]


@pytest.mark.parametrize("line", ["out of brine", "its out of brine now", "took it out of brine", "taken out of bag"])
def test_it_is_out_without_an_article(line: str) -> None:
    """As it is typed on a phone."""
    assert [one.step for one in read(line, context("curing", POUNDS)) if isinstance(one, StepDone)] == ["out"]


@pytest.mark.parametrize(
    "line",
    [
        "i used 2 tablespoons of the pink stuff on each",
        "put in 2 teaspoons of curing salt",
        "used a tablespoon of pink salt by mistake",
        "i put in tbsp instead of tsp",
        "put in 3 g of cure on each",
    ],
)
def test_a_spoon_is_no_scale_and_an_each_no_sum(line: str) -> None:
    """It is judged by what a spoon may weigh, and never noted as a dose."""
    (found,) = read(line, context("curing", POUNDS))
    assert isinstance(found, Unclear)
    assert found.why in PUT_IN


@pytest.mark.parametrize("line", ["smells a bit funky", "bit of a funky smell", "theres a weird smell"])
def test_a_smell_that_is_off_is_asked_about(line: str) -> None:
    """Whatever word is found for it."""
    assert [one.why for one in read(line, context("curing", POUNDS)) if isinstance(one, Unclear)] == ["smell"]


@pytest.mark.parametrize("line", ["wrap it?", "wrap?"])
def test_a_bare_wrap_with_its_mark_is_asked(line: str) -> None:
    """It was answered that nothing was noted."""
    assert [one.topic for one in read(line, context("cooking", POUNDS)) if isinstance(one, Ask)] == ["wrap"]


@pytest.mark.parametrize(
    "line", ["leftovers in fridge at 9", "rest in the fridge at 9", "leftovers went in the fridge"]
)
def test_what_is_left_goes_into_the_fridge_at_an_hour(line: str) -> None:
    """No fridge reads nine of them."""
    found = read(line, context("resting", POUNDS))
    assert not any(isinstance(one, Reading) for one in found)
    assert [one.step for one in found if isinstance(one, StepDone)] == ["chill"]


@pytest.mark.parametrize("line", ["forget the bacon we tossed it", "binned the bacon", "threw it in the bin"])
def test_what_was_thrown_away_is_given_up(line: str) -> None:
    """By its name too."""
    assert [type(one) for one in read(line, context("curing", POUNDS))] == [Cancel]


@pytest.mark.parametrize("line", ["tossed it in the brine", "threw the meat on the grill"])
def test_what_was_thrown_somewhere_goes_on(line: str) -> None:
    """It offered to drop the batch."""
    assert not any(isinstance(one, Cancel) for one in read(line, context("waiting", POUNDS)))


def test_a_stall_with_its_hours_is_a_reading() -> None:
    """«in 2 hrs» is how long it stood, and no time to come."""
    (found,) = read("151 hasnt moved in 2 hrs", context("cooking", POUNDS))
    assert isinstance(found, Reading)


def test_a_cure_of_equal_salt_with_its_thickness_begins_a_batch() -> None:
    """It was taken for the question how many days."""
    (found,) = read("pork belly 5.5 lb bacon equilibrium 1.5in", context("none", POUNDS))
    assert isinstance(found, Start)


@pytest.mark.parametrize(
    "line",
    [
        "das fleisch lag seit mittag auf der anrichte, hat die kleine rausgelegt",
        "stand die ganze nacht auf der küchenplatte",
        "hab vergessen es in den kühlschrank zu legen",
        "lag auf dem balkon",
        "stand in der garage",
    ],
)
def test_what_lay_out_in_german_is_noted(line: str) -> None:
    """The first put the meat on the fire."""
    found = read(line, replace(context("curing", KILOS), language="de"))
    assert [one.what for one in found if isinstance(one, Happened)] == ["left_out"]
    assert not any(isinstance(one, StepDone) for one in found)


def test_in_the_fridge_answers_no_hot_core() -> None:
    """«What is 30?» of who counts in °C, and an hour later it lies in the fridge."""
    asked = replace(context("chilling", KILOS), asked="probe", asked_value=30.0)
    assert not any(isinstance(one, Choose) for one in read("in the fridge", asked))
