"""Short remarks that may be several things: asked about, each with its own question."""

import pytest

from bot.intents.intents import Ask, Happened, MoveDeadline, Snooze, StepDone, Unclear
from bot.intents.read import read
from tests.rooms.intents.shorthand import short
from tests.talk_lines import context

FLIP = context("curing", due_step="flip/3")
COOK = context("cooking", last_core_c=65.0)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("its late", "late"),
        ("smells a bit", "smell"),
        ("looks grey", "look"),
        ("did the big one", "which"),
        ("flipped one not the other", "which"),
        ("2 of em", "which"),
        ("dropped a bit", "moved"),
        ("same again", "again"),
        ("is that enough", "enough"),
        ("forgot", "forgot"),
        ("more salt?", "more_in"),
        ("a bit more sugar?", "more_in"),
        ("the usual", "again"),
        ("feels done", "ready"),
        ("its too long", "size"),
        ("its way too big", "size"),
        ("can i change it", "change"),
        ("how do i change that", "change"),
        ("can i still change something", "change"),
        ("not yet, after dinner", "until"),
        ("later, when the kids are in bed", "until"),
        ("not now, once the guests have gone", "until"),
    ],
)
def test_a_remark_is_asked_about(text: str, why: str) -> None:
    """Nothing is marked, moved or answered by a guess."""
    (asked,) = read(text, FLIP)
    assert isinstance(asked, Unclear)
    assert asked.why == why


@pytest.mark.parametrize("text", ["its out", "its off"])
def test_the_fire_or_the_meat(text: str) -> None:
    """Beside the fire both can be meant, and one of them is a danger."""
    (asked,) = read(text, COOK)
    assert isinstance(asked, Unclear)
    assert asked.options == (StepDone("off"), Happened("fire_out"))


def test_a_bare_while_beside_the_fire() -> None:
    """«2 hours» is so long already, a reminder, or the meal; «ok 20 mins» is none but a reminder."""
    (asked,) = read("2 hours", COOK)
    assert isinstance(asked, Unclear)
    assert [type(option) for option in asked.options] == [Ask, Snooze, MoveDeadline]


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("can we say 5pm not 1", "meal sat17:00"),
        ("could dinner be 6 not 1", "meal sat18:00"),
        ("can dinner slip an hour", "meal +60m"),
        ("push it off an hour", "meal +60m"),
        ("guests want it the 8th at 7", "meal mon19:00"),
        ("they want friday night now", "meal fri20:00"),
        ("put it off til 8 tonight", "later @20:00"),
        ("put off the flip til 11", "later @11:00"),
        ("cant flip tonight", "skip"),
        ("sorry, not tonight", "skip"),
        ("sorry wont be able to turn it today", "skip"),
        ("cant flip now", "later"),
        ("everything back 2 hrs", "meal +120m"),
        ("guests are late say 7.30", "meal sat19:30"),
        ("dinners 7 now", "meal sat19:00"),
        ("running 30 late", "meal +30m"),
        ("running 30 late, 6:30 ok", "meal sat18:30"),
        ("shove the lot back a day", "meal +1440m"),
        ("mates just rang theyre 2 hrs behind", "meal +120m"),
        ("gimme half hour driving", "later @09:00"),
        ("leave it lie two days longer", "set cure_days_more=2.0"),
        ("add 2 days to the cure", "set cure_days_more=2.0"),
        ("forgot last nite just did it now", "missed & done"),
        ("flipped but late like 7", "done flip @07:00"),
        ("quarter to 8 that was, forgot to say", "done @07:45"),
        ("turned her", "done flip"),
    ],
)
def test_loose_talk_of_the_plan(text: str, meant: str) -> None:
    """Moved, put off, longer in the cure, done late."""
    assert short(read(text, FLIP)) == meant


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("can we do 5pm not 1", "meal sat17:00"),
        ("can we do 5 not 1", "meal sat17:00"),
        ("could we do 6pm", "meal sat18:00"),
    ],
)
def test_an_hour_in_place_of_another(text: str, meant: str) -> None:
    """The hour of the meal; while a step is called for it may be the hour of that, and is asked about."""
    assert short(read(text, context("curing"))) == meant
    assert short(read(text, FLIP)) == "ask"


@pytest.mark.parametrize("text", ["bump lunch 45 min", "partys off til next wkend", "cant light today do it tmrw"])
def test_two_ways_of_moving(text: str) -> None:
    """Where a line leaves open which way, both are offered."""
    (asked,) = read(text, FLIP)
    assert isinstance(asked, Unclear)
    assert len(asked.options) == 2


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("hasnt moved for 2 hrs still 152", "read core 152f"),
        ("not moved off 157 in 2 hrs", "read core 157f"),
        ("went up 12 in half hr its 171", "read core 171f"),
        ("its run off on me 315 an climbing", "read pit 315f"),
        ("meant 149 fat thumbs", "fix 149"),
    ],
)
def test_how_it_climbs(text: str, meant: str) -> None:
    """Beside how far and how fast, the number that stands now is read."""
    assert short(read(text, COOK)) == meant


@pytest.mark.parametrize(
    "text", ["put it off til 8", "put the flat off til 8", "holding it off til 3", "scraped it off", "turned it off"]
)
def test_what_is_put_off_comes_off_no_fire(text: str) -> None:
    """«put it off til 8» was once noted as off the fire at eight in the morning, and the meat condemned by it."""
    assert not any(isinstance(each, StepDone) for each in read(text, COOK))
    assert short(read("took it off", context("cooking", last_core_c=95.0))) == "done off"


@pytest.mark.parametrize(
    "text", ["all done thx it was great", "all done thanks, delicious", "batch finished", "dinner was great"]
)
def test_the_end_is_told(text: str) -> None:
    """Thanks between the words, or the batch by its name: it is eaten."""
    assert short(read(text, context("stored"))) == "done serve"


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("all gone, was great", "gone praised"),
        ("its all eaten", "gone"),
        ("all done thanks, came out great", "praised"),
        ("were done eating, it was not great", ""),
    ],
)
def test_how_the_meal_was_goes_with_it(text: str, told: str) -> None:
    """What is praised is answered, and nobody is warned of what is left where nothing is."""
    assert read(text, context("stored")) == [StepDone("serve", detail=told)]
