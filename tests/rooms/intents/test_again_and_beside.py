"""A piece as the last one or wished cold, the wood, what is still to come, and clauses that go on by themselves."""

import pytest

from bot.intents.again import LIKE_LAST
from bot.intents.cold_smoked import COLD_SMOKED
from bot.intents.intents import (
    Ask,
    Change,
    Choose,
    Correct,
    Question,
    Reading,
    Settings,
    Snooze,
    Start,
    StepDone,
    StepMissed,
    Unclear,
)
from bot.intents.read import read
from core.batch.events import Probe
from tests.rooms.intents.shorthand import short
from tests.talk_lines import POUNDS, context

CURE, RAW, FIRE, LATER = context("curing"), context("waiting"), context("cooking", last_core_c=65.5), context("stored")
TWO = context("cooking", POUNDS, batches=(("b2", "bacon"), ("b1", "flat")), batch="b1", last_core_c=65.5)


@pytest.mark.parametrize(
    ("text", "product"),
    [
        ("another bacon same as last time", "bacon"),
        ("repeat the last batch", None),
        ("do another ham", "ham"),
        ("bacon like last time", "bacon"),
        ("next one same as last", None),
        ("same as before for easter", None),
        ("lets do it again", None),
        ("my usual ham", "ham"),
        ("do the last one again please", None),
        ("pastrami again for sunday", "pastrami"),
        ("redo the last pastrami", "pastrami"),
    ],
)
def test_as_the_last_one(text: str, product: str | None) -> None:
    """However it is said, in any order, a weight or not."""
    (found,) = read(text, context("none"))
    assert isinstance(found, Start)
    assert LIKE_LAST in found.assumed
    assert found.said.get("product") == product


@pytest.mark.parametrize(
    "text", ["is it the same as last time?", "how do i make it like last time", "can i use the brine again"]
)
def test_a_question_begins_nothing(text: str) -> None:
    """Nor does a deed beside a batch."""
    assert read(text, context("none")) == [Question(text)]
    assert not any(isinstance(one, Start) for one in read("flip it again", CURE))


@pytest.mark.parametrize(
    "text", ["lox style salmon 2lb cold smoke", "cold smoked salmon 2 lb side", "can i cold smoke 2 lb salmon"]
)
def test_what_is_wished_cold_is_kept(text: str) -> None:
    """It is refused, and what was said of the piece is not lost."""
    (found,) = read(text, context("none", POUNDS))
    assert isinstance(found, Start)
    assert COLD_SMOKED in found.assumed
    assert found.said["product"] == "salmon"
    assert found.said["mass"] == pytest.approx(0.907, abs=0.001)


@pytest.mark.parametrize("text", ["cold smoke cheese", "can i cold smoke bacon", "make it cold smoked"])
def test_cold_smoke_without_a_piece_is_answered(text: str) -> None:
    """Nothing begins."""
    assert read(text, context("none")) == [Question(text)]


@pytest.mark.parametrize(
    ("text", "wood"),
    [
        ("using cherry wood", "cherry"),
        ("hickory", "hickory"),
        ("gonna use oak chunks not mesquite", "oak"),
        ("cherry and a bit of hickory", "cherry+hickory"),
        ("swap to apple", "apple"),
        ("smoking over post oak today", "oak"),
    ],
)
def test_the_wood_is_kept(text: str, wood: str) -> None:
    """No hour hangs on it, and it is what the cook will look up next time."""
    assert read(text, CURE) == [Change({"wood": wood})]


def test_wood_beside_something_else() -> None:
    """Neither is lost over the other; a question, a taste and a juice are no wood."""
    assert read("im going to use hickory and paper", CURE) == [Change({"wood": "hickory", "wrap": "paper"})]
    assert short(read("flipped it, will use apple wood", CURE)) == "done flip & set wood=apple"
    assert read("is cherry ok", CURE) == [Question("is cherry ok")]
    for text in ("tastes of apple", "apple juice spritz", "is oak or beech better"):
        assert not any(isinstance(one, Change) for one in read(text, FIRE))


@pytest.mark.parametrize(
    ("text", "step"),
    [
        ("meat in tomorrow", "into_cure"),
        ("put it in tomorrow morning", "into_cure"),
        ("in the bag later", "into_cure"),
        ("out of the cure tomorrow", "out"),
    ],
)
def test_what_is_still_to_come_is_not_done(text: str, step: str) -> None:
    """A deed of tomorrow is put off: it was noted as done, and the days counted from it."""
    (found,) = read(text, CURE if step == "out" else RAW)
    assert isinstance(found, Snooze)
    assert found.step == step


def test_tomorrow_beside_what_is_done() -> None:
    """What was read stays read, and who says goodbye has flipped."""
    assert short(read("brine 38, put it in tomorrow", context("waiting", POUNDS))) == "later @09:00 & read brine 38f"
    assert short(read("flipped, see you tomorrow", CURE)).startswith("done flip")
    assert short(read("flipped and will flip again tomorrow", CURE)) == "done flip & later @09:00"


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("not tonight, do it in the morning", "skip & later @08:00"),
        ("heading to bed, flip in the morning", "later @08:00"),
        ("skip tonight but remind me in the morning", "later @08:00"),
        ("flipped it this morning too but didnt say", "done flip @08:00"),
        ("flipped now and also last night", "done flip & done flip @20:00"),
        ("missed last nights flip, did it just now", "missed flip & done flip"),
    ],
)
def test_flips_of_another_hour(text: str, meant: str) -> None:
    """None of them moves the meal, and none is noted of now that was of then."""
    assert short(read(text, CURE)) == meant


@pytest.mark.parametrize("text", ["half thawed", "not thawed yet", "still thawing", "its partly frozen"])
def test_half_thawed_is_frozen(text: str) -> None:
    """The cure waits for what is thawed through."""
    assert read(text, RAW) == [Change({"frozen": True})]


def test_what_stands_before_an_answer_counts() -> None:
    """«1.75 in thick, cure is 6.25» is both; a weight denied beside the answer is put right with it."""
    asked = context("waiting", POUNDS, asked="cure", mass=3.4019)
    assert read("1.75 in thick, cure is 6.25", asked) == [
        Change({"cure_nitrite_fraction": 0.0625, "thickness": pytest.approx(0.04445)})
    ]
    assert read("6.25, also the flat is 7.2 not 7.5", asked) == [
        Change({"cure_nitrite_fraction": 0.0625, "mass": pytest.approx(3.2659, abs=0.001)})
    ]
    tapers = read("its the 6.25 stuff, flat tapers 2 to 1.5", asked)
    assert isinstance(tapers[-1], Unclear)
    assert tapers[-1].why == "thickest"


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("not the flat, the bacon", "b2"),
        ("bacon not flat", "b2"),
        ("no the bacon", "b2"),
        ("not bacon, flat", "b1"),
    ],
)
def test_the_batch_that_was_meant(text: str, meant: str) -> None:
    """The one that is named and not denied."""
    assert read(text, TWO) == [Correct(to_batch=meant)]


def test_two_batches_each_with_its_own_deed() -> None:
    """«too» at the end says nothing of the first; a weight put right begins no second batch; a name after its deed."""
    found = read("flat wrapped in foil and turned the bacon too", TWO)
    assert {one.batch: one.step for one in found if isinstance(one, StepDone)} == {"b1": "wrap", "b2": "flip"}
    (weight,) = read("bacon is 4.8 lb not 5", context("curing", POUNDS, batches=TWO.batches, batch="b2"))
    assert isinstance(weight, Change)
    assert short(read("jo takes the bacon", TWO)) == "hand jo"
    assert short(read("when is each ready", TWO)) == "ask eta"


@pytest.mark.parametrize(
    ("text", "here", "meant"),
    [
        ("oven at 275", FIRE, "read pit 275f"),
        ("its in the oven at 275", FIRE, "set cooker=electric & set pit=135c"),
        ("pit 275 from now on", FIRE, "set pit=135c"),
        ("gonna smoke at 225", CURE, "set pit=107c"),
        ("no foil this time", FIRE, "set wrap=none"),
        ("wife is on fire duty", FIRE, "hand wife"),
        ("taking ages", FIRE, "ask eta"),
        ("back in 30, its at 156", FIRE, "later 30m & read core 156f"),
        ("went out for 20 min its back at 250", FIRE, "happened fire_out & read pit 250f"),
        ("out tonight", CURE, "pause"),
        ("slicing it hot", RAW, "set purpose=hot"),
        ("hot off the smoker, not sliced cold", RAW, "set purpose=hot"),
        ("pastrami asap", context("none"), "start pastrami"),
        ("freezing half of it", LATER, "happened frozen"),
        ("in foil at 162 pit 255", FIRE, "done wrap & read core 162f, pit 255f"),
        ("going up to 275 to speed up", FIRE, "set pit=135c"),
        ("guests arrive 5 now", FIRE, "meal sat17:00"),
        ("its off, no guests", CURE, "set deadline=None"),
        ("tonights flip is off", CURE, "skip"),
        ("never got round to it this morning", CURE, "missed flip"),
        ("check it in the morning", RAW, "later @08:00"),
        ("hold everything til monday", CURE, "pause"),
        ("no wait saturday 3pm", CURE, "meal sat15:00"),
        ("cure on at 6", RAW, "done into_cure @06:00"),
        ("want it hot now", CURE, "set purpose=hot"),
        ("salt a bit less, 2%", RAW, "set salt=2%"),
        ("15g not 13", CURE, "set put_in_cure=15g"),
        ("its 36 sorry", CURE, "fix 36"),
        ("scrap the last", CURE, "undo"),
        ("set my time to eastern", context("none"), "settings zone"),
    ],
)
def test_said_in_other_words(text: str, here: object, meant: str) -> None:
    """Each as the same thing in its plain words."""
    assert short(read(text, here)) == meant  # type: ignore[arg-type]


def test_what_was_eaten_and_how_it_tasted() -> None:
    """«finished, it was too salty» is both."""
    assert short(read("finished, it was too salty but tender", LATER)) == "done serve & debrief"
    assert short(read("all done thats a wrap, was great", LATER)) == "done serve"


def test_a_brine_that_is_still_warm() -> None:
    """While it cools «still warm» is said of it, and of no fridge."""
    here = context("waiting", brine_made=True)
    for text in ("still warm", "not cold enough yet", "its still too hot"):
        assert [one.topic for one in read(text, here) if isinstance(one, Ask)] == ["why_cold"]


def test_a_spoon_is_no_dose_in_any_phase() -> None:
    """«half a cup» is asked for what it is and by weight."""
    for here in (context("waiting", asked="cure"), CURE):
        (found,) = read("half a cup", here)
        assert isinstance(found, Unclear)
        assert found.why == "spoons"


def test_a_reading_of_another_place_has_its_name_alone() -> None:
    """«pit not meat» puts the place right."""
    assert read("pit not meat", FIRE) == [Correct(probe=Probe.PIT)]
    assert not any(isinstance(one, Reading | StepMissed) for one in read("fridge not brine", CURE))


@pytest.mark.parametrize("text", ["cut it in half, 3.5 and 4 lb", "its two pieces 3.5 and 4 lb"])
def test_each_weight_is_that_of_a_piece(text: str) -> None:
    """The dose goes by all of it: it was taken for a piece of four pounds."""
    (found,) = read(text, context("waiting", POUNDS, mass=3.4019))
    assert isinstance(found, Change)
    assert found.changes["mass"] == pytest.approx(3.4019, abs=0.001)
    assert found.changes["pieces"] == 2
    assert found.changes["heaviest"] == pytest.approx(1.8144, abs=0.001)


def test_two_units_beside_a_place_are_both_set() -> None:
    """«we use celsius and kilos, vienna»: the one did not outlast the other."""
    (found,) = read("we use celsius and kilos, vienna", context("none", POUNDS))
    assert isinstance(found, Settings)
    assert (found.changes["units"].mass, found.changes["units"].temperature) == ("kg", "c")


def test_the_hour_of_a_flip_that_was_never_told() -> None:
    """«that flip was at 6» puts no other deed to that hour."""
    (found,) = read("that flip was at 6", CURE)
    assert isinstance(found, Correct)
    assert found.step == "flip"


@pytest.mark.parametrize("text", ["why does it matter", "how do i find out", "does it matter"])
def test_asked_back_of_the_strength(text: str) -> None:
    """It is about what was asked."""
    assert read(text, context("waiting", asked="cure")) == [Choose("cure", "unknown")]


def test_each_product_with_its_cut() -> None:
    """«pastrami and bacon, 7 lb flat and 5 lb belly» is two pieces, and no four."""
    (found,) = read("pastrami and bacon, 7 lb flat and 5 lb belly", context("none", POUNDS))
    assert isinstance(found, Start)
    assert (found.said["product"], found.said["mass"]) == ("pastrami", pytest.approx(3.175, abs=0.001))
    assert [one["product"] for one in found.then] == ["bacon"]
    assert found.then[0]["mass"] == pytest.approx(2.268, abs=0.001)


@pytest.mark.parametrize(
    "text", ["flat 7.5 lb bought today, pastrami for sat 1pm", "starting a 7.5 lb flat today, sat 1pm"]
)
def test_the_day_it_was_bought_is_no_meal(text: str) -> None:
    """It was refused, as a meal that had gone by."""
    found = read(text, context("none", POUNDS))
    assert isinstance(found[-1], Start)
    assert short(found).endswith("sat13:00")


def test_what_is_known_beside_an_unknown_strength() -> None:
    """«no idea, its 1.75 thick» keeps the thickness."""
    found = read("not sure about the cure, its 1.75 thick", context("waiting", POUNDS, asked="cure"))
    assert found == [Change({"thickness": pytest.approx(0.04445)}), Choose("cure", "unknown")]


def test_another_batch_is_read_by_its_own_phase() -> None:
    """«flat 158» beside the bacon in hand is a core."""
    here = context(
        "curing",
        POUNDS,
        batch="b2",
        batches=(("b2", "bacon"), ("b1", "flat")),
        elsewhere=(("b1", "cooking", 65.5, 121.0),),
    )
    found = read("bacon flipped and fridge 38, flat 158", here)
    core = [one for one in found if isinstance(one, Reading) and one.batch == "b1"]
    assert [one.temperatures[0].probe for one in core] == [Probe.CORE]


def test_a_brine_in_the_fridge_is_no_meat_in_it() -> None:
    """«brine made and in fridge» cools; who minds it for an hour leaves nothing silent; leftovers are no yield."""
    raw = read("brine made and in fridge", context("waiting", POUNDS))
    assert [one.step for one in raw if isinstance(one, StepDone)] == ["brine"]
    assert short(read("going out for an hour, son watches it", FIRE)) == "hand son"
    assert "debrief" not in short(read("sliced it, 2 lb left in the freezer", LATER))
