"""What is told in passing beside something else, as a phone writes it: guests, ice, a call, a fridge by its door."""

import pytest

from bot.intents.guests import how_many
from bot.intents.intents import (
    Ask,
    Change,
    Correct,
    Debrief,
    HandOver,
    Happened,
    MoveDeadline,
    Pause,
    Question,
    Reading,
    Settings,
    Snooze,
    StepDone,
    StepMissed,
)
from bot.intents.normal import normal
from bot.intents.read import read
from bot.intents.steps import read_step
from core.batch.events import Probe
from tests.talk_lines import context, wall

CURE, RAW, FIRE = context("curing"), context("waiting"), context("cooking")
CHILL, DRY = context("chilling", last_core_c=49.0), context("drying")


def _eaters(text: str) -> list[int | None]:
    return [how_many(normal(one.text)) for one in read(text, CURE) if isinstance(one, Ask) and one.topic == "feed"]


@pytest.mark.parametrize(
    ("text", "many", "beside"),
    [
        ("eat at 4 instead n were 9 now", 9, MoveDeadline),
        ("flipped fridge 36 n make it 9 people", 9, Reading),
        ("fridge 37 n 12 guests comin", 12, Reading),
        ("eat at 5 with 9 people", 9, MoveDeadline),
    ],
)
def test_how_many_eat_beside_what_else_is_told(text: str, many: int, beside: type) -> None:
    """Neither the guests are lost nor what stands before them."""
    assert _eaters(text) == [many]
    assert any(isinstance(one, beside) for one in read(text, CURE))


@pytest.mark.parametrize(
    "text", ["flipped it 2 of us held the bag", "fridge 36 n plus 2 people", "fridge was 39 when 3 people opened it"]
)
def test_people_who_do_not_eat(text: str) -> None:
    """Who held the bag, or comes on top of nobody knows how many, is no number of guests."""
    assert _eaters(text) == []


@pytest.mark.parametrize("text", ["stirred the brine", "turned ham at 7 this mornin stirred the brine too"])
def test_a_brine_that_is_stirred_is_not_made_anew(text: str) -> None:
    """The meat lies in it: its hour stays as it was."""
    assert not any(isinstance(one, StepDone) and one.step == "brine" for one in read(text, CURE))


def test_a_brine_that_is_stirred_together_is_made() -> None:
    """The opposite: before the meat is in."""
    assert read_step("stirred the brine", RAW) == [StepDone("brine")]


@pytest.mark.parametrize(("text", "tender"), [("199 like butter", True), ("184 nearly like butter", False)])
def test_nearly_tender_is_not_tender(text: str, tender: bool) -> None:
    """What is not there yet stays on."""
    (found,) = read(text, FIRE)
    assert isinstance(found, Reading)
    assert found.tender is tender


@pytest.mark.parametrize("text", ["96 now ice all melted", "95 added more ice", "96 ice melted"])
def test_a_core_beside_the_ice(text: str) -> None:
    """What was read is the proof of the chill, and is kept."""
    (read_there,) = (one for one in read(text, CHILL) if isinstance(one, Reading))
    assert read_there.temperatures[0].value in (95.0, 96.0)


@pytest.mark.parametrize(
    ("text", "values"),
    [("151 pit runnin 238", {151.0, 238.0}), ("152 added coals", {152.0}), ("150 cruising at 245", {150.0, 245.0})],
)
def test_a_core_beside_the_fire(text: str, values: set[float]) -> None:
    """It is not lost over how the pit runs."""
    found = [t.value for one in read(text, FIRE) if isinstance(one, Reading) for t in one.temperatures]
    assert set(found) == values


@pytest.mark.parametrize(
    "text", ["44 since last night door was open", "46 door was left open", "42 kids left the door open"]
)
def test_a_fridge_by_its_door(text: str) -> None:
    """The only door with a number that cold is that of the fridge."""
    assert any(isinstance(one, Reading) and one.temperatures[0].probe is Probe.FRIDGE for one in read(text, CURE))


def test_a_fridge_that_was_warm_and_is_cold_again() -> None:
    """How long it was so is asked, and what it reads now is kept."""
    found = read("fridge was 44 this morning kids left it open back to 38 now", CURE)
    assert [type(one) for one in found] == [Reading, Happened]


@pytest.mark.parametrize(
    ("text", "at"),
    [
        ("cant now ask me after school run 330", wall(3, 1, 15, 30)),
        ("cant now ask me at 330", wall(3, 1, 15, 30)),
    ],
)
def test_put_off_with_the_hour_at_the_end(text: str, at: object) -> None:
    """It is an hour, and no temperature; nothing is asked beside it."""
    (found,) = read(text, CURE)
    assert isinstance(found, Snooze)
    assert found.until == at


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("gimme 45 on the phone", 45),
        ("give me 20 im cooking", 20),
        ("cant get out there for an hr", 60),
        ("half hr more then ping me", 30),
    ],
)
def test_put_off_by_a_while(text: str, minutes: int) -> None:
    """Once, and by what was said."""
    (found,) = read(text, FIRE)
    assert isinstance(found, Snooze)
    assert found.by is not None
    assert found.by.total_seconds() == 60 * minutes


@pytest.mark.parametrize("text", ["not yet 158", "not done yet 155"])
def test_beside_the_fire_such_a_number_may_be_the_core(text: str) -> None:
    """The opposite: it is asked about, and is no hour."""
    assert all(one.until is None for one in read(text, FIRE) if isinstance(one, Snooze))


@pytest.mark.parametrize(
    "text", ["runnin late meat wont be on til 815", "meat not on til 830 sorry", "meat goes on at 815"]
)
def test_meat_that_is_not_on_before_an_hour(text: str) -> None:
    """Its step waits; nobody is away."""
    (found,) = read(text, DRY)
    assert isinstance(found, Snooze)
    assert found.step == "meat_on"


def test_somebody_who_is_not_home_is_away() -> None:
    """The opposite."""
    (found,) = read("im not home til 815", DRY)
    assert isinstance(found, Pause)


@pytest.mark.parametrize("text", ["away fri night til sunday 4pm", "away from fri night until sunday 16:00"])
def test_away_from_an_evening_to_an_hour(text: str) -> None:
    """From that evening on, to the hour of the other day."""
    (found,) = read(text, CURE)
    assert isinstance(found, Pause)
    assert found.since is not None
    assert found.until is not None
    assert (found.until - found.since).days == 1


def test_who_turns_it_meanwhile() -> None:
    """He is heard beside the way there."""
    found = read("off to my moms til sun 3pm my bro does the turning", CURE)
    assert any(isinstance(one, HandOver) and one.task == "flips" for one in found)


@pytest.mark.parametrize("text", ["gonna wrap in butcher paper", "well wrap it in butcher paper"])
def test_how_it_will_be_wrapped_is_no_while(text: str) -> None:
    """It is a wish of the cook."""
    assert read(text, CURE) == [Change({"wrap": "paper"})]


def test_when_it_will_be_wrapped_is_one() -> None:
    """The opposite."""
    (found,) = read("gonna wrap in paper at 3", FIRE)
    assert isinstance(found, Snooze)


@pytest.mark.parametrize("text", ["is 7 lb enough for 9 people", "what if the pit is running 300"])
def test_what_is_asked_is_answered(text: str) -> None:
    """A question stays one."""
    assert not any(isinstance(one, MoveDeadline | Reading) for one in read(text, CURE) if not isinstance(one, Question))


@pytest.mark.parametrize(
    "text",
    ["an hour ago 110 now 88", "110 an hour ago 88 now", "88 now an hour ago 110", "an hour ago 110 88 now"],
)
def test_what_was_and_what_is_each_at_its_hour(text: str) -> None:
    """A chill is judged by these hours: the number of now is of now, wherever it stands."""
    (found,) = read(text, CHILL)
    assert isinstance(found, Reading)
    assert {(t.value, t.at) for t in found.temperatures} == {(110.0, wall(3, 1, 7, 30)), (88.0, None)}


def test_three_in_a_row_each_at_its_hour() -> None:
    """An hour that stands before its number is not of the one before it."""
    (found,) = read("2 hours ago 125 an hour ago 110 now 88", CHILL)
    assert isinstance(found, Reading)
    assert [t.at for t in found.temperatures] == [wall(3, 1, 6, 30), wall(3, 1, 7, 30), None]


@pytest.mark.parametrize(
    ("text", "value", "was"),
    [("nah 148 was the wrong probe real ones 139", 139.0, 148.0), ("nah 250 was the wrong one its 230", 230.0, 250.0)],
)
def test_a_number_of_the_wrong_probe(text: str, value: float, was: float) -> None:
    """The right one takes its place."""
    (found,) = read(text, FIRE)
    assert isinstance(found, Correct)
    assert (found.value, found.was) == (value, was)


@pytest.mark.parametrize("text", ["gimme celsius n kilos from now", "switch me to celsius", "use celsius again"])
def test_units_however_they_are_asked_for(text: str) -> None:
    """They are set, and nothing is begun anew."""
    (found,) = read(text, context("none"))
    assert isinstance(found, Settings)
    assert found.changes["units"].temperature == "c"


@pytest.mark.parametrize(
    ("text", "salt"),
    [
        ("bit salty smoke spot on less salt next time", 1),
        ("bit bland more salt next time", -1),
        ("salt was right less smoke next time", 0),
    ],
)
def test_how_it_was_beside_how_it_shall_be(text: str, salt: int) -> None:
    """A wish for the next time takes nothing of what is told of this one."""
    (found,) = read(text, context("stored"))
    assert isinstance(found, Debrief)
    assert found.salt == salt


@pytest.mark.parametrize("text", ["spritzed n turned it round", "spritzed and flipped it"])
def test_turned_on_the_grate(text: str) -> None:
    """No flip of the cure: the lid was open."""
    assert [type(one) for one in read(text, FIRE)] == [Happened]


@pytest.mark.parametrize("text", ["last night missed the flip just done", "forgot last nights flip, done now"])
def test_forgotten_and_done_now(text: str) -> None:
    """Both are told."""
    assert [type(one) for one in read(text, CURE)] == [StepMissed, StepDone]
