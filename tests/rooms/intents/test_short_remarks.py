"""Short remarks of a phone: what is left out, what turned or dropped, how far it swings, who is away and when."""

from datetime import timedelta

import pytest

from bot.intents.intents import (
    Ask,
    Change,
    Choose,
    MoveDeadline,
    Question,
    Reading,
    StepDone,
    Unclear,
)
from bot.intents.read import read
from core.batch.events import Probe
from tests.talk_lines import KILOS, MEAL, NOW, POUNDS, context, wall

CURE, FIRE, RAW = context("curing"), context("cooking"), context("waiting")
COOK = context("cooking", last_core_c=65.6, last_pit_c=121.0)


@pytest.mark.parametrize(
    ("text", "deed"),
    [
        ("did flip 10 min ago", "flip"),
        ("did flip", "flip"),
        ("did flip at 7", "flip"),
        ("already did turn", "flip"),
        ("did the flip late", "flip"),
        ("did morning flip", "flip"),
        ("did the morning flip", "flip"),
        ("did evening turn already", "flip"),
        ("did rinse 5 mins ago", "rinse"),
        ("did rinse", "rinse"),
        ("did wrap at 1", "wrap"),
    ],
)
def test_a_deed_without_its_doer_is_told(text: str, deed: str) -> None:
    """«did flip» asks nothing."""
    found = read(text, FIRE if deed == "wrap" else CURE)[0]
    assert isinstance(found, StepDone)
    assert found.step == deed


@pytest.mark.parametrize("text", ["did flip?", "did it turn pink", "did it go in ok", "did they come out even"])
def test_what_it_did_is_asked(text: str) -> None:
    """A verb behind «did it» asks, and does no flip."""
    assert not any(isinstance(found, StepDone) for found in read(text, CURE))


@pytest.mark.parametrize(
    "text",
    [
        "no spritz today",
        "not bothering w the spritz",
        "not doing the mop",
        "leaving the spritz",
        "leaving out the mop",
        "cant be bothered with spritzing",
        "giving the spritz a miss",
        "forget the spritz",
        "skip basting it",
        "dropping the spritz this time",
    ],
)
def test_what_is_no_step_may_be_left_out(text: str) -> None:
    """Nothing changes by it, and no reading or flip is skipped."""
    (found,) = read(text, FIRE)
    assert isinstance(found, Unclear)
    assert found.why == "extra_left_out"


@pytest.mark.parametrize(
    "text",
    [
        "no stuffing then",
        "skip the stuffing",
        "without stuffing then",
        "not stuffing it",
        "ill leave out the stuffing",
        "leaving the stuffing out",
        "then no stuffing",
        "ok no stuffing",
        "forget the stuffing",
    ],
)
@pytest.mark.parametrize("phase", ["none", "curing", "waiting"])
def test_a_bird_without_a_stuffing(text: str, phase: str) -> None:
    """It is the safer way, and no flip is left out by it."""
    (found,) = read(text, context(phase))
    assert isinstance(found, Unclear)
    assert found.why == "stuffing"


@pytest.mark.parametrize(
    "text",
    [
        "pits all over 230 to 280",
        "pit swings between 230 and 280",
        "pit bounces from 230 to 280",
        "pits up and down 225 to 275",
        "smoker going 220 to 290",
        "temp jumping between 235 and 265",
        "pit 230 to 280",
        "grill is all over the place 240 to 300",
        "its swinging from 225 to 260",
    ],
)
def test_a_pit_that_swings_is_asked_what_it_reads_now(text: str) -> None:
    """Neither end is kept as a reading; both are offered."""
    (found,) = read(text, COOK)
    assert isinstance(found, Unclear)
    assert found.why == "swings"
    assert [one.temperatures[0].probe for one in found.options] == [Probe.PIT, Probe.PIT]


def test_a_core_beside_a_pit_that_swings_is_not_lost() -> None:
    """It stands in both taps."""
    (found,) = read("its at 158 pit 230 to 280", COOK)
    assert isinstance(found, Unclear)
    assert [[t.value for t in one.temperatures] for one in found.options] == [[158.0, 230.0], [158.0, 280.0]]


@pytest.mark.parametrize(
    "text",
    [
        "meat thermometer vs lid 40 apart",
        "lid says 40 higher than the probe",
        "two probes 12 degrees apart",
        "probes 15 different",
        "dial reads 30 over the grate",
        "lid is 25 off from the probe",
        "the lid and the probe differ by 35",
        "grate is 30 lower than the lid",
        "pit swinging 30 degrees",
        "pit varies by 20",
    ],
)
@pytest.mark.parametrize("units", [POUNDS, KILOS])
def test_a_difference_is_no_temperature(text: str, units: object) -> None:
    """A pit of 40 °F would call the fire out."""
    found = read(text, context("cooking", units, last_core_c=65.6, last_pit_c=121.0))  # type: ignore[arg-type]
    assert not any(isinstance(one, Reading) for one in found)
    assert not any(isinstance(one, Unclear) and one.options for one in found)


@pytest.mark.parametrize("text", ["lit at 60 c", "lit the smoker at 60 c", "fire lit at 60 c", "lit, 110"])
def test_a_number_beside_the_lighting_is_the_pits(text: str) -> None:
    """Nothing cooks yet."""
    readings = [one for one in read(text, context("drying", KILOS)) if isinstance(one, Reading)]
    assert [one.temperatures[0].probe for one in readings] == [Probe.PIT]


@pytest.mark.parametrize(
    "text", ["whyd it drop", "why did it drop", "how come its dropping", "why is it going down", "it dropped"]
)
def test_what_dropped_is_asked(text: str) -> None:
    """The pit or the core."""
    (found,) = read(text, COOK)
    assert isinstance(found, Unclear)
    assert found.why == "moved"


@pytest.mark.parametrize("text", ["turned", "all turned"])
def test_a_bare_turned_in_the_cure_is_the_flip(text: str) -> None:
    """Nobody says of meat alone that it has «turned» and no more."""
    assert read(text, CURE) == [StepDone("flip")]


@pytest.mark.parametrize("text", ["its turned", "turned now"])
def test_a_bare_turned_before_a_flip_is_asked(text: str) -> None:
    """The bag was turned, or the meat has: it is a flip where one was called for."""
    assert read(text, CURE) == [Unclear("turned", text, (StepDone("flip"),))]
    assert read("turned", context("curing", due_step="flip/3")) == [StepDone("flip")]


@pytest.mark.parametrize("text", ["add more salt?", "put more salt in", "add a bit more sugar"])
def test_more_of_what_is_asked(text: str) -> None:
    """It asks for some, or tells that it went in."""
    (found,) = read(text, CURE)
    assert isinstance(found, Unclear)
    assert found.why == "more_in"


@pytest.mark.parametrize(
    ("text", "hour"),
    [
        ("guests running late make it 2", 14),
        ("people are late so make it 2", 14),
        ("dinners late make it 7", 19),
        ("family delayed, make it 3 then", 15),
        ("kids late make it about 2", 14),
        ("lunch make it 1", 13),
    ],
)
def test_a_meal_by_its_bare_hour(text: str, hour: int) -> None:
    """Where guests or the meal are spoken of."""
    assert read(text, FIRE) == [MoveDeadline(to=wall(3, 6, hour))]


def test_a_bare_hour_alone_is_offered() -> None:
    """«make it 2» may be no meal."""
    assert read("make it 2", FIRE) == [Unclear("word", "make it 2", (MoveDeadline(to=wall(3, 6, 14)),))]


@pytest.mark.parametrize(
    "text",
    [
        "scrap that keep sat",
        "scrap that, keep sat",
        "forget that keep it on saturday",
        "no leave it saturday",
        "nah keep it sat",
        "keep it sat please",
        "stick with sat",
        "stay with saturday",
        "undo that, stick to saturday",
        "actually keep saturday",
    ],
)
def test_a_meal_stays_on_its_day(text: str) -> None:
    """Whatever was moved meanwhile, and no batch is dropped."""
    assert read(text, CURE) == [MoveDeadline(to=MEAL)]
    assert read(text, context("curing", deadline=MEAL + timedelta(days=1))) == [MoveDeadline(to=MEAL)]


@pytest.mark.parametrize(
    "text",
    [
        "can it come out wed not thu",
        "can it come out wed",
        "could it come out a day early",
        "may the meat come out tomorrow",
        "could it be out by tuesday",
        "can it come out of the brine earlier",
    ],
)
def test_whether_it_may_come_out_sooner(text: str) -> None:
    """It is asked of the days in the cure, and of no meal."""
    assert [(a.topic if isinstance(a, Ask) else a) for a in read(text, CURE)] == ["earlier"]


@pytest.mark.parametrize("text", ["cure 2", "cure #2", "#2", "prague powder 2", "its the 2nd kind", "pink salt no 2"])
def test_the_second_kind_is_no_strength(text: str) -> None:
    """It is told what it is, and the packet's percent is asked again."""
    assert read(text, context("waiting", asked="cure")) == [Choose("cure", "second")]


@pytest.mark.parametrize("text", ["cure 2", "cure #2", "prague powder 2", "pink salt no 2"])
def test_the_second_kind_by_its_number_alone(text: str) -> None:
    """Where no strength was asked for it is answered."""
    assert read(text, context("none")) == [Question(text)]


@pytest.mark.parametrize(
    "text", ["still hard as a rock", "still rock hard", "hard as a brick still", "its solid in the middle"]
)
def test_raw_meat_that_is_hard_is_frozen(text: str) -> None:
    """Before the cure nothing else makes it so."""
    assert read(text, RAW) == [Change({"frozen": True})]


@pytest.mark.parametrize("text", ["feels soft now", "its soft all through", "bends now", "no more ice in it"])
def test_raw_meat_that_is_soft_may_be_thawed(text: str) -> None:
    """Its middle is asked about."""
    assert read(text, RAW) == [Unclear("thawed_through", text, (Change({"frozen": False}),))]


def test_now_is_monday_morning() -> None:
    """The hours above are counted from it."""
    assert wall(3, 1, 8, 30) == NOW
