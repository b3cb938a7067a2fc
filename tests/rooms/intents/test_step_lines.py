"""Answers to reminders: done, when, with what; later, skipped, forgotten; and what went wrong."""

from datetime import timedelta

import pytest

from bot.intents.context import Context
from bot.intents.intents import (
    Debrief,
    HandOver,
    Happened,
    Intent,
    MoveDeadline,
    Pause,
    Reading,
    Resume,
    Snooze,
    StepDone,
    StepMissed,
    StepSkipped,
    Temperature,
    Unclear,
)
from bot.intents.read import read
from core.batch.events import Probe
from tests.talk_lines import NOW, context, wall

CURE = context("curing", due_step="flip/3")
COOK = context("cooking", last_core_c=62.0, last_pit_c=121.0)
REST = context("resting", last_core_c=60.0)
STORED = context("stored")


@pytest.mark.parametrize(
    "text",
    [
        "done",
        "Done.",
        "did it",
        "yep",
        "yes",
        "all done",
        "finished",
        "did both",
        "wife did it",
        "👍",
        "👍🏽",
        "✅",
        "fertig",
    ],
)
def test_done_in_a_word(text: str) -> None:
    """A word or a thumb closes what was called for."""
    assert read(text, CURE) == [StepDone()]


@pytest.mark.parametrize(
    ("text", "where", "done"),
    [
        ("flipped", CURE, StepDone("flip")),
        ("I flipped it!!", CURE, StepDone("flip")),
        ("fliped", CURE, StepDone("flip")),
        ("turned it over", CURE, StepDone("flip")),
        ("flip done", CURE, StepDone("flip")),
        ("done flipping", CURE, StepDone("flip")),
        ("finished mixing", CURE, StepDone("brine")),
        ("gewendet", CURE, StepDone("flip")),
        ("flipped at 8", CURE, StepDone("flip", wall(3, 1, 8))),
        ("did it at 8", CURE, StepDone(None, wall(3, 1, 8))),
        ("done 7:40", CURE, StepDone(None, wall(3, 1, 7, 40))),
        ("flipped 20 mins ago", CURE, StepDone("flip", NOW - timedelta(minutes=20))),
        ("flipped this morning", CURE, StepDone("flip", wall(3, 1, 8))),
        ("flipped last night", CURE, StepDone("flip", wall(2, 28, 20))),
        ("yeah flipped it last night too", CURE, StepDone("flip", also_previous=True)),
        ("made the brine", context("waiting"), StepDone("brine")),
        ("in the fridge now", context("waiting"), StepDone("into_cure")),
        ("its in the bag", context("waiting"), StepDone("into_cure")),
        ("took it out of the brine", CURE, StepDone("out")),
        ("rinsed, tastes fine", CURE, StepDone("rinse", detail="tastes fine")),
        ("flipped both times today", CURE, StepDone("flip", also_previous=True)),
        ("kids did the flip", CURE, StepDone("flip")),
        ("i put it in at 9 last night", CURE, StepDone("into_cure", wall(2, 28, 21))),
        ("rubbed", context("drying"), StepDone("rub")),
        ("lit it at 6:30", context("drying"), StepDone("light", wall(3, 1, 6, 30))),
        ("fire is lit", context("drying"), StepDone("light")),
        ("meat's on", context("drying"), StepDone("meat_on")),
        ("put it on at 7", context("drying"), StepDone("meat_on", wall(3, 1, 7))),
        ("wrapped it in paper", COOK, StepDone("wrap", detail="paper")),
        ("took it off", COOK, StepDone("off")),
        ("resting", COOK, StepDone("rest")),
        ("in the ice bath", REST, StepDone("chill", detail="ice")),
        ("in the fridge now", REST, StepDone("chill", detail="fridge")),
        ("sliced it thin", context("chilling"), StepDone("slice")),
        ("we ate it", STORED, StepDone("serve")),
    ],
)
def test_a_deed_in_words(text: str, where: Context, done: StepDone) -> None:
    """What was done, at its hour, with what it was done."""
    assert read(text, where)[0] == done


@pytest.mark.parametrize(
    ("text", "intents"),
    [
        ("wrapped in foil at 162", [StepDone("wrap", detail="foil"), Reading((Temperature(162, "f", Probe.CORE),))]),
        ("pulled at 203", [Reading((Temperature(203, "f", Probe.CORE),)), StepDone("off")]),
        ("off at 203 soft", [Reading((Temperature(203, "f", Probe.CORE),)), StepDone("off")]),
        (
            "probe tender 203 taking it off",
            [Reading((Temperature(203, "f", Probe.CORE),), tender=True), StepDone("off")],
        ),
        ("sliced n eaten", [StepDone("slice"), StepDone("serve")]),
        ("turkey on 250", [StepDone("meat_on"), Reading((Temperature(250, "f", Probe.PIT),))]),
        ("wrapped and core 162", [StepDone("wrap"), Reading((Temperature(162, "f", Probe.CORE),))]),
    ],
)
def test_a_deed_with_more(text: str, intents: list[Intent]) -> None:
    """The core that was said with a deed is kept; two deeds are two."""
    assert read(text, COOK) == intents


@pytest.mark.parametrize(
    "text", ["flipped the bag around 7", "turned it over about 7", "turned the bags about 7", "flipped it at 7"]
)
def test_an_hour_beside_the_bag_is_no_reading(text: str) -> None:
    """The bag is what was turned, and the number its hour: no fridge is read by it."""
    (done,) = read(text, CURE)
    assert isinstance(done, StepDone)
    assert done.step == "flip"
    assert done.at is not None


def test_a_core_in_an_unsaid_unit_is_asked() -> None:
    """«wrapped at 72» by one who thinks in °F is 72 °C or a slip: the deed stands, the number is asked."""
    done, asked = read("wrapped in foil at 72", COOK)
    assert done == StepDone("wrap", detail="foil")
    assert isinstance(asked, Unclear)


@pytest.mark.parametrize(
    ("text", "snooze"),
    [
        ("later", Snooze()),
        ("not yet", Snooze()),
        ("ok 20 mins", Snooze(by=timedelta(minutes=20))),
        ("in an hour", Snooze(by=timedelta(hours=1))),
        ("half an hour", Snooze(by=timedelta(minutes=30))),
        ("give me 20", Snooze(by=timedelta(minutes=20))),
        ("remind me at 9", Snooze(until=wall(3, 1, 9))),
        ("remind me tomorrow morning", Snooze(until=wall(3, 2, 8))),
        ("ill do it after lunch", Snooze(until=wall(3, 1, 13))),
        ("flip it at 9", Snooze(until=wall(3, 1, 9), step="flip")),
        ("will flip at 9", Snooze(until=wall(3, 1, 9), step="flip")),
        ("havent flipped yet", Snooze(step="flip")),
        ("in 20 minuten", Snooze(by=timedelta(minutes=20))),
    ],
)
def test_a_step_put_off(text: str, snooze: Snooze) -> None:
    """Later, in a while, at an hour to come: never taken for done."""
    assert read(text, CURE) == [snooze]


@pytest.mark.parametrize(
    ("text", "missed"),
    [
        ("forgot this morning", StepMissed(at=wall(3, 1, 8))),
        ("forgot it", StepMissed()),
        ("missed the flip last night", StepMissed("flip", wall(2, 28, 20))),
        ("didnt flip", StepMissed("flip")),
        ("dont count sunday i was away", StepMissed(at=wall(2, 28, 12), whole_day=True)),
        ("heute morgen vergessen", StepMissed(at=wall(3, 1, 8))),
    ],
)
def test_a_step_forgotten(text: str, missed: StepMissed) -> None:
    """What was forgotten is told, with the time that is meant."""
    assert read(text, CURE) == [missed]


def test_skipped_and_open_words() -> None:
    """«skip» leaves a step out; «ok» and «no» after a reminder are asked about."""
    assert read("skip that one", CURE) == [StepSkipped()]
    assert read("skip the flip", CURE) == [StepSkipped("flip")]
    assert read("ok", CURE) == [Unclear("word", "ok", (StepDone(), Snooze()))]
    assert read("no", CURE) == [Unclear("word", "no", (Snooze(), StepMissed(), StepSkipped()))]


@pytest.mark.parametrize(
    ("text", "where", "happened"),
    [
        ("fire went out at 2", COOK, Happened("fire_out", at=wall(3, 1, 2))),
        ("ran out of charcoal", COOK, Happened("fire_out")),
        ("power cut for 3 hours", CURE, Happened("power_cut", {"hours": 3.0})),
        ("fridge door was left open all night", CURE, Happened("warm_fridge", {"overnight": True, "hours": None})),
        ("left it on the counter for 2 hours", CURE, Happened("left_out", {"hours": 2.0})),
        ("bag leaked", CURE, Happened("leaked")),
        ("i doubled the cure", CURE, Happened("dosed_twice")),
        ("added 6 g more cure", CURE, Happened("dosed_twice")),  # not all that is in it
        ("i put in another 5g of curing salt", CURE, Happened("dosed_twice")),
        ("forgot the cure", CURE, Happened("forgot_cure")),
        ("used table salt instead of cure", CURE, Happened("wrong_salt", {"salt": "no_cure"})),
    ],
)
def test_what_went_wrong(text: str, where: Context, happened: Happened) -> None:
    """A mishap is an incident with what was said of it; it is never a step, a start or a reading."""
    assert read(text, where) == [happened]


@pytest.mark.parametrize(
    ("text", "debrief"),
    [
        ("1.9 kg after", Debrief(mass=1.9)),
        ("1.9kg", Debrief(mass=1.9)),
        ("weighs 1.9 kg now", Debrief(mass=1.9)),
        ("grey 12 mm in the middle of 48", Debrief(grey=0.012, of=0.048)),
        ("12mm grey", Debrief(grey=0.012)),
        ("pink all through", Debrief(grey=0.0)),
        ("no grey at all", Debrief(grey=0.0)),
        ("too salty", Debrief(salt=1)),
        ("bland", Debrief(salt=-1)),
        ("salt was perfect", Debrief(salt=0)),
        ("came out 1.9kg, pink all through, bit salty", Debrief(mass=1.9, grey=0.0, salt=1)),
        ("the middle is still grey", Debrief(unmeasured=True)),
        ("came out 1.9kg, grey stripe inside", Debrief(mass=1.9, unmeasured=True)),
        ("one is pink all through, the other has a grey middle", Debrief(unmeasured=True)),
    ],
)
def test_what_the_slice_showed(text: str, debrief: Debrief) -> None:
    """Weight after, grey in the middle, salt, in one line or several."""
    assert read(text, STORED) == [debrief]


def test_a_grey_middle_of_raw_meat_that_was_cut_to_look() -> None:
    """It is kept though nobody measured it; a grey that nobody cut to see is no middle."""
    assert read("cut a corner, the middle is still grey", CURE) == [Debrief(unmeasured=True)]
    assert read("the middle is grey?", STORED) != [Debrief(unmeasured=True)]


def test_pauses_and_hands() -> None:
    """A talk is paused until an hour, taken up again, or handed to somebody."""
    assert read("going out til 6", CURE) == [Pause(wall(3, 1, 18))]
    assert read("pause", CURE) == [Pause()]
    assert read("im away until sunday", CURE) == [Pause(wall(3, 7, 9))]
    assert read("ok im back carry on", CURE) == [Resume()]
    assert read("jo has the fire from 20:00", CURE) == [HandOver("jo", wall(3, 1, 20), "fire")]


def test_several_things_at_once() -> None:
    """A deed, a reading and a wish in one line are three intents in their order."""
    assert read("flipped, fridge 3c, push dinner to 3", CURE) == [
        StepDone("flip"),
        Reading((Temperature(3, "c", Probe.FRIDGE),)),
        MoveDeadline(wall(3, 6, 15)),
    ]
    assert read("fridge was off 2 hrs, 50f now", CURE) == [
        Reading((Temperature(50, "f", Probe.FRIDGE),)),
        Happened("power_cut", {"celsius": 10.0, "hours": 2.0}),
    ]


@pytest.mark.parametrize(
    ("text", "where", "step"),
    [
        ("in it goes", context("waiting"), "into_cure"),
        ("on it goes", context("drying"), "meat_on"),
        ("lighting now", context("drying"), "light"),
        ("in the pot, simmering", context("drying"), "meat_on"),
        ("ok mixed", context("waiting"), "brine"),
    ],
)
def test_a_deed_under_way_is_done(text: str, where: Context, step: str) -> None:
    """As one says it with full hands."""
    assert read(text, where) == [StepDone(step)]


def test_last_night_and_this_morning_are_two_flips() -> None:
    """Both are noted."""
    assert read("flipped last night and this morning", CURE) == [StepDone("flip", also_previous=True)]


@pytest.mark.parametrize(
    "line", ["i was gone all weekend nobody flipped", "no one turned the bag", "nobody has turned it"]
)
def test_what_nobody_did_is_not_done(line: str) -> None:
    """A flip that is told as nobody's was missed, however long the line that tells it."""
    assert isinstance(read(line, CURE)[0], StepMissed)
