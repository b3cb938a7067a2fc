"""Lines that begin a batch: what is taken, what is assumed, what is asked."""

from typing import Any

import pytest

from bot.intents.intents import Ask, Change, Choose, Question, Start
from bot.intents.read import read
from core.units import KILOGRAMS_PER_POUND as LB
from tests.talk_lines import KILOS, MEAL, context, wall

NONE = context("none", KILOS)
FLAT = "brisket_flat"


def start(text: str) -> Start:
    """The start that a line is, with no batch under way."""
    (intent,) = read(text, NONE)
    assert isinstance(intent, Start), intent
    return intent


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("3.2 kg brisket flat for saturday 13:00", {"mass": 3.2, "cut": FLAT, "deadline": MEAL}),
        ("  3.2kg  BRISKET  flat ,, sat 13:00!!!", {"mass": 3.2, "cut": FLAT, "deadline": MEAL}),
        (  # a weekday, and nobody who sat on a pit
            "3.2 kg flat for sat 13:00, pit 121 c",
            {"mass": 3.2, "cut": FLAT, "deadline": MEAL, "pit_c": 121.0},
        ),
        ("flat for 6, 3.4 kg", {"mass": 3.4, "cut": FLAT}),  # guests, and no second piece of 6 kg
        ("flat for saturday 13:00, 3.2 kg", {"mass": 3.2, "cut": FLAT, "deadline": MEAL}),
        ("saturday 1pm 3.2 kg flat", {"mass": 3.2, "cut": FLAT, "deadline": MEAL}),
        ("three point two kilos brisket flat saturday one pm", {"mass": 3.2, "cut": FLAT, "deadline": MEAL}),
        ("3,2 kg Rinderbrust flat für Samstag 13 Uhr", {"mass": 3.2, "cut": FLAT, "deadline": MEAL}),
        ("can you plan 3.2 kg brisket flat for saturday 13:00?", {"mass": 3.2, "cut": FLAT, "deadline": MEAL}),
        ("/new 3.2 kg brisket flat", {"mass": 3.2, "cut": FLAT}),
        ("brisket flat 3.2 kg, no deadline", {"mass": 3.2, "cut": FLAT, "deadline": None}),
        ("7 lb 8 oz brisket flat", {"mass": 7.5 * LB, "cut": FLAT}),
        ("seven and a half pounds of brisket flat", {"mass": 7.5 * LB, "cut": FLAT}),
        ("3200g brisket flat", {"mass": 3.2, "cut": FLAT}),
        ("3kg flat yesterday", {"mass": 3.0, "cut": FLAT, "deadline": wall(2, 28, 13)}),
        ("3kg flat in two weeks at 1pm", {"mass": 3.0, "cut": FLAT, "deadline": wall(3, 15, 13)}),
        ("trimmed flat 3150 g 47mm sunday 13h",
         {"mass": 3.15, "cut": FLAT, "thickness": 0.047, "deadline": wall(3, 7, 13)}),
        ("flat 3.2kg 1 3/4 inch thick inject", {"mass": 3.2, "cut": FLAT, "thickness": 0.04445, "method": "inject"}),
        ("3.2 kg flat, 48 mm, fat cap on, frozen, cure 6.25 %, pit 110 c",
         {"mass": 3.2, "cut": FLAT, "thickness": 0.048, "sealed_faces": 1, "frozen": True,
          "cure_nitrite_fraction": 0.0625, "pit_c": 110.0}),
        ("pastrami 3kg flat, have cure at 0.5%",
         {"mass": 3.0, "product": "pastrami", "cut": FLAT, "cure_nitrite_fraction": 0.005}),
        ("3 kg flat on the kettle, pulled", {"mass": 3.0, "cut": FLAT, "cooker": "kettle", "purpose": "pulled"}),
        ("5 lb flat, grandma is eating", {"mass": 5 * LB, "cut": FLAT, "at_risk_eaters": True}),
        ("4 kg brisket point", {"mass": 4.0, "cut": "brisket_point"}),
        ("point not flat, 2 kg", {"mass": 2.0, "cut": "brisket_point"}),
        ("2x 1.8kg flat", {"mass": 3.6, "cut": FLAT}),
        ("1.8kg flat x 2", {"mass": 3.6, "cut": FLAT}),
        ("2 flats of 3 kg each", {"mass": 6.0, "cut": FLAT}),
        ("two flats, 3.1 kg and 2.4 kg", {"mass": 5.5, "cut": FLAT}),
        ("turkey breast 5lb", {"mass": 5 * LB, "product": "turkey"}),
        ("pork loin 2 kg canadian bacon", {"mass": 2.0, "product": "back_bacon"}),
        ("2.3kg pork belly dry", {"mass": 2.3, "product": "bacon", "method": "dry"}),
        ("8 kg ham, bone in", {"mass": 8.0, "product": "ham", "cut": "ham_bone_in"}),
        ("3 kg boneless ham", {"mass": 3.0, "product": "ham", "cut": "ham_boned"}),
        ("3 kg netted gammon", {"mass": 3.0, "product": "ham", "cut": "ham_boned"}),
        ("2 kg pastrami from round", {"mass": 2.0, "product": "pastrami", "cut": "beef_round"}),
        ("corned beef from a 1.8 kg chuck", {"mass": 1.8, "product": "corned_beef", "cut": "beef_chuck"}),
        ("2 kg chuck roast", {"mass": 2.0, "cut": "beef_chuck"}),
        ("jowl bacon 2 lb", {"mass": 2 * LB, "product": "jowl_bacon"}),
        ("2 kg bottom round", {"mass": 2.0, "cut": "beef_round"}),
        ("boneless pork shoulder 2 kg", {"mass": 2.0, "product": "shoulder", "cut": "pork_shoulder"}),
        ("picnic ham 8 lb bone in", {"mass": 8 * LB, "product": "shoulder", "cut": "shoulder_bone_in"}),
        ("buckboard bacon 2 kg", {"mass": 2.0, "product": "shoulder", "cut": "pork_shoulder"}),
        ("3 kg pork shoulder for pulled pork", {"mass": 3.0, "product": "shoulder", "purpose": "pulled"}),
        ("4 trout, 1.4 kg", {"mass": 1.4, "product": "trout", "pieces": 4}),
        ("2 duck breasts 700 g", {"mass": 0.7, "product": "duck", "cut": "duck_breast", "pieces": 2}),
        ("1.6 kg chicken without nitrite", {"mass": 1.6, "product": "chicken", "nitrite_target": 0.0}),
        ("5 kg turkey", {"mass": 5.0, "product": "whole_turkey"}),
        ("1 kg chicken thighs", {"mass": 1.0, "product": "chicken_legs"}),
        ("12 turkey drumsticks 9 lb", {"mass": 9 * LB, "product": "turkey_legs", "pieces": 12}),
        ("smoked chicken thighs, 12 of them, 4 lb", {"mass": 4 * LB, "product": "chicken_legs", "pieces": 12}),
        ("4 smoked pork chops, 2.5 lb", {"mass": 2.5 * LB, "product": "pork_chops", "pieces": 4}),
        ("2 ducks 4.4 kg", {"mass": 4.4, "product": "duck", "pieces": 2}),
        ("two geese 9 kg in all", {"mass": 9.0, "product": "goose", "pieces": 2}),
        ("2 duck breasts 700 g all in", {"mass": 0.7, "product": "duck", "cut": "duck_breast", "pieces": 2}),
        ("2 ham hocks 3 lb in all", {"mass": 3 * LB, "product": "hocks", "pieces": 2}),
        ("pastrami", {"product": "pastrami"}),
        ("i want to make pastrami", {"product": "pastrami"}),
        ("3.2kg", {"mass": 3.2}),
        ("new batch", {}),
    ],
)  # fmt: skip
def test_what_is_said_of_a_start(text: str, said: dict[str, Any]) -> None:
    """Everything that was stated is taken, in any order and any units, and nothing else."""
    found = start(text)
    assert found.said == {k: pytest.approx(v) if isinstance(v, float) else v for k, v in said.items()}
    assert found.unclear == ()


@pytest.mark.parametrize(
    ("text", "pieces"),
    [
        ("2x 1.8kg flat", (1.8, 1.8)),
        ("1.8kg flat x 2", (1.8, 1.8)),
        ("2 flats of 3 kg each", (3.0, 3.0)),
        ("two flats, 3.1 kg and 2.4 kg", (3.1, 2.4)),
        ("3.1 kg flat", ()),
    ],
)
def test_several_pieces(text: str, pieces: tuple[float, ...]) -> None:
    """Several pieces are told one by one; the mass of the batch is their sum."""
    assert start(text).pieces == pieces


def test_a_weekend_is_one_of_two_days() -> None:
    """Neither is taken, and both are offered."""
    found = start("6 lb flat pastrami next weekend")
    assert found.said["meals"] == (wall(3, 6, 13), wall(3, 7, 13))
    assert start("6 lb flat, this weekend, dinner at 6").said["meals"] == (wall(3, 6, 18), wall(3, 7, 18))


@pytest.mark.parametrize("text", ["7 lb flat 2in 6.25% cure, sat 1pm", "flat 2in 7 lb", "7 lb flat 6.25% 2in"])
def test_an_inch_before_another_number(text: str) -> None:
    """«2in 6.25%» lost how thick it is: a share or a weight is no number of something that it lies in."""
    assert start(text).said["thickness"] == pytest.approx(0.0508)


def test_how_hot_it_is_cooked() -> None:
    """«cook 275» tells the pit; «smoke 12 trout» how many."""
    assert start("whole chicken 4 lb sun lunch cook 275").said["pit_c"] == pytest.approx(135.0)
    assert "pit_c" not in start("smoke 12 trout 300g each").said


@pytest.mark.parametrize(
    ("text", "day"),
    [("corned beef 4lb flat 17th", 17), ("5 lb belly bacon 20th dinner", 20), ("2nd belly, 5 lb", None)],
)
def test_a_day_by_its_number(text: str, day: int | None) -> None:
    """«17th» behind the meat is a date, and «2nd» none."""
    meal = start(text).said.get("deadline")
    assert (meal.day if meal else None) == day


@pytest.mark.parametrize(
    ("text", "unclear"),
    [
        ("7.5", ("unit:7.5",)),
        ("7.5 brisket flat", ("unit:7.5",)),
        ("brisket flat 3.2 for saturday 13:00", ("unit:3.2",)),
        ("flat 3200", ("mass:3200",)),
        ("0 kg brisket flat", ("mass:0 kg",)),
        ("-3 kg brisket flat", ("mass:-3 kg",)),
        ("minus 3 kg brisket flat", ("mass:-3 kg",)),
        ("900 kg brisket flat", ("mass:900 kg",)),
        ("3-4 kg brisket flat", ("mass:3-4 kg",)),
        ("brisket flat 3.1kg for me, 2.4kg for dad", ("mass:3.1kg for me, 2.4kg",)),
        ("two kilos of moon", ("meat:moon",)),
        ("start 3 kg zebra", ("meat:zebra",)),
        ("3 kg flat with cure #1", ("strength:cure #1",)),
        ("3 kg flat, pink salt is 6.25", ("strength:pink salt is 6.25",)),
        ("3 kg flat, cure is 62.5%", ("percent:62.5%",)),
        ("3 kg flat 2 to 3 in thick", ("thickness:2 to 3 in",)),
        ("3 kg flat for 3/4", ("deadline:3/4",)),
        ("3 kg flat for sat 6", ("deadline:sat 6",)),
        ("3 kg flat for next weekend", ("deadline:next weekend",)),
        ("3 kg flat saturday half 7", ("deadline:half 7",)),
        ("14 lb packer", ("cut:packer",)),
        ("12lb brisket", ("cut:whole brisket",)),
        ("3 kg flat and point", ("cut:flat and point",)),
        ("3 kg flat on my campfire", ("cooker:campfire",)),
    ],
)
def test_what_is_asked_of_a_start(text: str, unclear: tuple[str, ...]) -> None:
    """What cannot be taken is named with its words, and its field is left out: never a guess."""
    found = start(text)
    assert found.unclear == unclear
    slot = unclear[0].partition(":")[0]
    field = {"unit": "mass", "strength": "cure_nitrite_fraction", "percent": "cure_nitrite_fraction"}.get(slot, slot)
    assert field not in found.said


@pytest.mark.parametrize(
    ("text", "assumed"),
    [
        ("3 kg flat for saturday", ("deadline_hour",)),
        ("3 kg flat next saturday 13:00", ("deadline_next",)),
        ("3 kg brisket", ("cut",)),
        ("3 kg flat for 2027-03-28 02:30", ("deadline_shifted",)),
        ("3 kg flat for 2027-10-31 02:30", ("deadline_twice",)),
    ],
)
def test_what_is_assumed_in_a_start(text: str, assumed: tuple[str, ...]) -> None:
    """What was completed by a usual value is told, so that it can be changed."""
    assert start(text).assumed == assumed


@pytest.mark.parametrize(
    "text",
    [
        "rub for 3.4kg",
        "diet plan to lose 10 kg",
        "scale only shows 1g need 4.3",
        "6 kg packer how many portions",
        "138 for 20 min brisket",
        "my uncle once ruined a 3 kg brisket by leaving it in his old rusty truck",
    ],
)
def test_what_is_no_start(text: str) -> None:
    """A mass or a meat in a question or a story begins nothing."""
    (found,) = read(text, NONE)
    assert isinstance(found, Question) or (isinstance(found, Ask) and found.topic in ("sum", "dose_for"))


def test_a_start_beside_another_batch() -> None:
    """A meat with a mass begins a second batch; a mass said of the first one changes it."""
    (intent,) = read("bacon 2 kg", context("curing"))
    assert intent == Start({"mass": 2.0, "product": "bacon"})
    assert not isinstance(read("the flat is actually 3.1 kg", context("curing"))[0], Start)
    assert read("plan", NONE) == [Ask("plan", text="plan")]


@pytest.mark.parametrize(
    "text", ["cure 6.25", "its 6.25", "the packet says 6.25", "it's the 6.25 one", "pink salt 6.25", "6.25 i think"]
)
def test_the_strength_that_was_asked_for_may_stand_among_small_words(text: str) -> None:
    """Said as one says it: the number is the answer."""
    assert read(text, context("none", asked="cure")) == [Change({"cure_nitrite_fraction": 0.0625})]


def test_a_size_that_was_asked_for_may_stand_among_small_words() -> None:
    """With its unit, or in the one that fits."""
    thickness = read("about 2 inches i think", context("waiting", asked="thickness"))
    assert thickness == [Change({"thickness": pytest.approx(0.0508)})]
    assert read("it weighs 3.2 kg", context("none", asked="mass", asked_of_start=True)) == [Choose("mass", 3.2)]


def test_what_is_known_beside_what_is_not() -> None:
    """Asked for the strength: a thickness or a weight that is told instead is taken, and no strength is guessed."""
    asked = context("waiting", asked="cure")
    assert read("dunno about two and a half inches", asked) == [Change({"thickness": pytest.approx(0.0635)})]
    assert read("wait it was 5 lb 10 oz", asked) == [Change({"mass": pytest.approx(5.625 * LB)})]


@pytest.mark.parametrize(
    ("text", "changes"),
    [
        ("no curing salt, just a normal brine", {"nitrite_target": 0.0, "method": "brine"}),
        ("i dont use curing salt", {"nitrite_target": 0.0}),
        ("just salt", {"nitrite_target": 0.0}),
        ("none", {"nitrite_target": 0.0}),
    ],
)
def test_no_curing_salt_where_its_strength_is_asked(text: str, changes: dict[str, object]) -> None:
    """Salted and not cured; another kind of curing salt, and too much of it, are no such words."""
    assert read(text, context("waiting", asked="cure")) == [Change(changes)]


@pytest.mark.parametrize("text", ["i dont want to use too much", "not using cure #2", "normal brine"])
def test_curing_salt_is_not_left_out_by_a_slip(text: str) -> None:
    """What does not say that there is none leaves the question open."""
    (found,) = read(text, context("waiting", asked="cure"))
    assert "nitrite_target" not in getattr(found, "changes", {})


@pytest.mark.parametrize(
    ("text", "pounds"),
    [
        ("7.5 lb flat trimmed to 6.8, sat 1pm", 6.8),
        ("flat was 7.5 lb, 6.8 trimmed, for sat 1pm", 6.8),
        ("pastrami flat 7.5 lb, trimmed down to 6.8 lbs", 6.8),
        ("half a 14 lb brisket flat, sat 1pm", 7.0),
        ("9 lb flat trimmed to about 7 1/2, sat 1pm", 7.5),
        ("10 lb brisket flat, 8.2 after trimming, sat 1pm", 8.2),
        ("got a 9 lb brisket flat trimmed down to 7 1/2 lb pastrami sat 1pm", 7.5),
        ("7.5 lb flat, trimmed 0.7 lb off, sat 1pm", None),
    ],
)
def test_what_was_cut_away_is_not_dosed_for(text: str, pounds: float | None) -> None:
    """The weight is that of what goes into the cure; where it has to be reckoned, it is asked for."""
    (start,) = read(text, context("none"))
    assert isinstance(start, Start)
    assert start.said.get("mass") == (None if pounds is None else pytest.approx(pounds * LB))


def test_a_mixed_number_is_no_date() -> None:
    """«2 1/4 thick»: a thickness, and the meal is the Saturday."""
    (start,) = read("5 pound point end, 2 1/4 thick, serve sat night", context("none"))
    assert isinstance(start, Start)
    assert start.said["thickness"] == pytest.approx(2.25 * 0.0254)
    assert "meals" not in start.said
