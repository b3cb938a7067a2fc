"""The same told in other words: an hour put right, who did it, what nobody calls for; asked about where it is open."""

from datetime import timedelta

import pytest

from bot.intents.intents import (
    Ask,
    Change,
    Choose,
    Correct,
    HandOver,
    MoveDeadline,
    Pause,
    Reading,
    Snooze,
    StepDone,
    Unclear,
    Undo,
)
from bot.intents.read import read
from core.batch.events import Probe
from core.units import KILOGRAMS_PER_POUND as LB
from tests.talk_lines import KILOS, context, wall


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
        ("cooking", "run it hotter", "hotter"),
        ("cooking", "turn it up", "hotter"),
        ("cooking", "smells burnt", "smell"),
        ("curing", "too much?", "enough"),
        ("curing", "i put 2 tsp pink in", "spoons"),
        ("curing", "i used 12 not 12.6", "grams"),
        ("cooking", "pit is 40 too low", "number"),
        ("curing", "took it out to look", "took_out"),
    ],
)
def test_it_is_asked(phase: str, text: str, why: str) -> None:
    """Each is met with its own question or answer, and nothing is noted."""
    (asked,) = read(text, context(phase, KILOS, out_due=wall(3, 4, 17)))
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


@pytest.mark.parametrize(
    ("text", "percent"), [(".5% its german", 0.5), ("cure is .6 %", 0.6), (".5", 0.5), (",5 %", 0.5)]
)
def test_a_naught_left_out(text: str, percent: float) -> None:
    """«.5 %» is half a percent, and no five: a dose by ten times the strength would cure nothing."""
    assert read(text, context("waiting", KILOS, asked="cure")) == [
        Change({"cure_nitrite_fraction": pytest.approx(percent / 100)})
    ]


def test_a_point_that_ends_a_sentence_is_none() -> None:
    """«done .38 in the fridge»: no reading below one degree."""
    said = read("done .38 in the fridge", context("curing", KILOS))
    assert not [one for one in said if isinstance(one, Reading)]


@pytest.mark.parametrize(
    ("text", "grams"), [("cure was 12.6 not 12", 12.6), ("cure was 8 not 18", 8.0), ("cure weighed 11 g not 12", 11.0)]
)
def test_grams_of_cure_put_right(text: str, grams: float) -> None:
    """What went in, and no weight of the meat."""
    assert read(text, context("curing", KILOS)) == [Change({"put_in_cure": pytest.approx(grams / 1000)})]


@pytest.mark.parametrize("text", ["cure is 6.25 not 6", "cure at 38 not 40"])
def test_what_may_be_a_strength_is_no_grams(text: str) -> None:
    """A number that some packet has, or that nothing weighs, is put into no batch."""
    assert not [one for one in read(text, context("curing", KILOS)) if isinstance(one, Change)]


@pytest.mark.parametrize(
    "text", ["im out tomorrow", "not home tomorrow", "away all tuesday", "working all day tomorrow"]
)
def test_away_for_a_whole_day(text: str) -> None:
    """The whole of that day, and not until its morning."""
    assert read(text, context("curing", KILOS)) == [Pause(wall(3, 3, 0), since=wall(3, 2, 0))]


def test_gone_until_a_day() -> None:
    """«gone fishing til thursday» is away, and no question."""
    (away,) = read("gone fishing til thursday", context("curing", KILOS))
    assert isinstance(away, Pause)


@pytest.mark.parametrize("text", ["66 pit holding", "66, pit steady", "66 pit is good"])
def test_a_pit_that_holds_takes_no_number(text: str) -> None:
    """The number is the meat's."""
    (read_,) = read(text, context("cooking", KILOS))
    assert isinstance(read_, Reading)
    assert [(t.value, t.probe) for t in read_.temperatures] == [(66.0, Probe.CORE)]


def test_two_places_of_a_piece() -> None:
    """«154 in flat 158 in point» are degrees: no piece is so thick."""
    (read_,) = read("154 in flat 158 in point", context("cooking"))
    assert isinstance(read_, Reading)
    assert [t.value for t in read_.temperatures] == [154.0, 158.0]


@pytest.mark.parametrize(
    ("phase", "text", "changes"),
    [
        ("waiting", "its still in the freezer", {"frozen": True}),
        ("waiting", "use my injector", {"method": "inject"}),
        ("waiting", "change the thickness to 55 mm", {"thickness": 0.055}),
        ("waiting", "thicker than 50 mm maybe 55 mm", {"thickness": 0.055}),
        ("cooking", "pit to 135", {"pit_c": 135.0}),
        ("waiting", "cook it at 135", {"pit_c": 135.0}),
        ("curing", "make it hot instead of cold", {"purpose": "hot"}),
    ],
)
def test_it_is_set(phase: str, text: str, changes: dict[str, object]) -> None:
    """What is wanted or so, in other words."""
    assert read(text, context(phase, KILOS)) == [Change(changes)]


def test_how_many_eat() -> None:
    """«now its for 14» of a batch are eaters."""
    (asked,) = read("now its for 14", context("curing", KILOS))
    assert isinstance(asked, Ask)
    assert asked.topic == "feed"


def test_an_hour_without_its_at() -> None:
    """«it was 12 not 12:40»: the hour of what was said last."""
    (put_right,) = read("it was 7 not 7:40", context("cooking", KILOS))
    assert isinstance(put_right, Correct)
    assert put_right.at is not None
    assert put_right.value is None


@pytest.mark.parametrize("text", ["back on wednesday", "dont bug me today"])
def test_away_in_short(text: str) -> None:
    """Who is back on a day is away until then; who wants no calls today is left alone till tomorrow."""
    (away,) = read(text, context("curing", KILOS))
    assert isinstance(away, Pause)
    assert away.until is not None


@pytest.mark.parametrize("text", ["its in since 6", "in since 6"])
def test_in_since_an_hour(text: str) -> None:
    """Of raw meat it is when it went in, and no hour of the meal."""
    (done,) = read(text, context("waiting", KILOS))
    assert isinstance(done, StepDone)
    assert done.step == "into_cure"


def test_a_flip_that_was_wrong() -> None:
    """«that flip was wrong» takes back a flip, and nothing else that was said last."""
    assert read("that flip was wrong", context("curing", KILOS)) == [Undo(step="flip")]


@pytest.mark.parametrize(("text", "task"), [("let bob do it", "all"), ("let jo flip it tonight", "flips")])
def test_let_somebody(text: str, task: str) -> None:
    """Who is let to do it has it."""
    (handed,) = read(text, context("curing", KILOS))
    assert isinstance(handed, HandOver)
    assert handed.task == task


def test_started_tomorrow() -> None:
    """«starting tomorrow instead» puts off what is to be done first, and moves no meal."""
    (later,) = read("starting tomorrow instead", context("waiting", KILOS))
    assert isinstance(later, Snooze)
