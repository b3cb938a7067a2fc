"""What weeks of bacon, ham and loin were told with: the weights that went in, the smoke, and who had some of it."""

import pytest

from bot.intents.intents import Change, Settings, Start, Unclear
from bot.intents.read import read
from tests.rooms.intents.shorthand import short
from tests.talk_lines import KILOS, context

DRY = context("waiting", KILOS, dry=True, mass=2.3)
WET = context("waiting", KILOS, mass=2.3)


@pytest.mark.parametrize(
    ("text", "deeds", "put_in"),
    [
        ("rubbed it with 50g salt and 25 g sugar and 6 g cure. bagged", "done into_cure", "salt 50, sugar 25, cure 6"),
        ("weighed 6g cure 50 g salt 25 g sugar", "", "cure 6, salt 50, sugar 25"),
        ("in the bag with 6 g cure and 50 salt", "done into_cure", "cure 6, salt 50"),
        ("6g pink salt, 50g salt, 25g sugar all rubbed in", "done into_cure", "cure 6, salt 50, sugar 25"),
        ("cure 6 g, salt 50g, sugar 20 g all rubbed in", "done into_cure", "cure 6, salt 50, sugar 20"),
        ("meats in. 6 g cure, 50g salt", "done into_cure", "cure 6, salt 50"),
        ("put 6 g of the curing salt in the bag", "", "cure 6"),
        ("used 45 g salt 6 g cure 1 and 25 g brown sugar", "", "salt 45, cure 6, sugar 25"),
        ("rubbed it all over with 55 g of the curing salt", "done into_cure", "cure 55"),
        ("weighed the cure. 45 g salt and 25 g sugar", "done brine", "salt 45, sugar 25"),
        ("rubbed it with 50 g salt", "done into_cure", "salt 50, cure None"),
    ],
)
def test_every_weight_that_went_in_is_noted(text: str, deeds: str, put_in: str) -> None:
    """Each with its name, beside what was done; plain salt without a word of curing salt leaves that unknown."""
    found = read(text, DRY)
    told = [one for one in found if not isinstance(one, Change)]
    (change,) = (one for one in found if isinstance(one, Change))
    assert short(told) == deeds
    grams = {name.removeprefix("put_in_"): kg and round(1000 * kg) for name, kg in change.changes.items()}
    assert ", ".join(f"{name} {g}" for name, g in grams.items()) == put_in


def test_the_water_of_a_brine_is_told_with_its_salts() -> None:
    """«made the brine with 3 l water, 180 g salt and 40 g cure»: all three, and it is made."""
    found = read("made the brine with 3 l water, 180 g salt and 40 g cure", WET)
    assert short(found[:1]) == "done brine"
    assert found[1:] == [Change({"put_in_salt": 0.18, "put_in_cure": 0.04, "put_in_water": 3.0})]


@pytest.mark.parametrize("text", ["rubbed it with 1 tsp cure. bagged", "put 1 tsp of pink salt and 50 g salt in"])
def test_a_spoon_beside_a_deed_is_judged(text: str) -> None:
    """It is no weight, and not left unheard either."""
    assert any(isinstance(one, Unclear) and one.why == "spoons" for one in read(text, DRY))


@pytest.mark.parametrize(
    "text",
    [
        "should i put in 6 g cure and 50 g salt?",
        "will put 6 g cure and 50 g salt in",
        "put in another 20 g of salt",
        "put 6g cure on each",
        "i usually put 6 g cure in",
    ],
)
def test_what_is_asked_planned_or_unclear_is_not_noted(text: str) -> None:
    """No dose is taken from a question, a plan, a habit, or of each of several pieces."""
    assert not any(isinstance(one, Change) for one in read(text, DRY))


def test_all_that_was_not_taken_is_said() -> None:
    """«made brine w 1.3 l water and 70g of moon dust»: both weights, not the first alone."""
    (rest,) = (one for one in read("made brine with 30 g pepper and 70g of mustard", WET) if isinstance(one, Unclear))
    assert rest.text == "30 g pepper, 70g of mustard"


@pytest.mark.parametrize(
    "text",
    [
        "smell is fine bit slimy tho",
        "surface a bit slimy",
        "rinsed it not slimy anymore",
        "bag was slimy inside",
    ],
)
def test_slime_and_stench_are_never_a_step(text: str) -> None:
    """Told in passing, with a good smell, or as rinsed off: it is thrown away, and no look at the bag is done."""
    (said,) = read(text, context("curing", KILOS))
    assert isinstance(said, Unclear)
    assert said.why == "spoiled"


@pytest.mark.parametrize("text", ["not slimy", "smells good not slimy at all", "not slimy at all"])
def test_no_slime_is_no_alarm(text: str) -> None:
    """What is denied, or said of something else."""
    assert not any(isinstance(one, Unclear) and one.why == "spoiled" for one in read(text, context("curing", KILOS)))


@pytest.mark.parametrize(
    ("phase", "text", "meant"),
    [
        ("drying", "smoking at 90 c", "done meat_on & read pit 90c"),
        ("drying", "its smoking now", "done meat_on"),
        ("curing", "started smoking it", "done meat_on"),
        ("cooking", "smoking nicely at 90 c", "done meat_on & read pit 90c"),
        ("curing", "took it off", "done off"),
        ("waiting", "brine 4 so its in", "read brine 4c & done into_cure"),
        ("drying", "took it out, hanging in fridge", "done out & done dry"),
        ("drying", "its out the pot", "done off"),
        ("cooking", "66 off", "read core 66c & done off"),
        ("stored", "had some for lunch was salty", "done serve"),
        ("curing", "sliced it", "done slice"),
        ("stored", "gave next door a pack", "done serve"),
        ("stored", "kids had some for breakfast", "done serve"),
        ("stored", "sent a slab to my mum", "done serve"),
        ("stored", "fried a few rashers this morning", "done serve"),
    ],
)
def test_it_is_on_or_eaten(phase: str, text: str, meant: str) -> None:
    """The smoke, what comes after it, and who had some, however it is told."""
    assert short(read(text, context(phase, KILOS))) == meant


def test_whose_law_it_is_weighed_by_is_heard_in_a_greeting() -> None:
    """«canadian here», before what is begun; and another land of nearly the same name is no slip."""
    first, begun = read("canadian here, back bacon from pork loin 1.6kg 7cm, dry", context("none", KILOS))
    assert first == Settings({"jurisdiction": "CA"})
    assert isinstance(begun, Start)
    assert not any(isinstance(one, Settings) and one.changes for one in read("im in australia", context("none", KILOS)))
