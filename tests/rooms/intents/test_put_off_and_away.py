"""A step put off or told by what comes every day, somebody who is away, and short words that need their thing."""

from dataclasses import replace
from datetime import timedelta
from zoneinfo import ZoneInfo

import pytest

from bot.intents.context import Context
from bot.intents.intents import Debrief, Intent, MoveDeadline, Pause, Snooze, Unclear
from bot.intents.read import read
from tests.rooms.intents.shorthand import short
from tests.talk_lines import NOW, context

RAW, CURE, FIRE = context("waiting"), context("curing"), context("cooking")
_MIDNIGHT = NOW.astimezone(ZoneInfo(CURE.zone)).replace(hour=0, minute=0, tzinfo=None)


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("did it already this mornin", "done flip @08:00"),
        ("did it this morning", "done flip @08:00"),
        ("turned it b4 work", "done flip @09:00"),
        ("did it first thing", "done flip @09:00"),
        ("flipped after breakfast", "done flip @09:00"),
        ("flipped it when i got up", "done flip @09:00"),
        ("flipped before bed", "done flip @22:00"),
        ("flipped after work", "done flip"),
    ],
)
def test_a_deed_of_every_day_is_told_by_what_comes_every_day(text: str, meant: str) -> None:
    """It is the flip, at about that hour: never the step that was done then, nor the flip of now."""
    assert short(read(text, replace(CURE, now=NOW + timedelta(hours=1)))) == meant


@pytest.mark.parametrize(
    ("text", "until"),
    [
        ("quiet til morning", 32),
        ("dont bother me until morning", 32),
        ("dont bug me till the mornin", 32),
        ("back wednesday", 57),
        ("home tomorrow evening", 43),
        ("be home tonight", 20),
    ],
)
def test_how_long_somebody_is_away(text: str, until: int) -> None:
    """Until a part of the day, and till they are home: in hours from midnight."""
    (found,) = read(text, CURE)
    assert isinstance(found, Pause)
    assert found.until is not None
    assert found.until.astimezone(ZoneInfo(CURE.zone)).replace(tzinfo=None) == _MIDNIGHT + timedelta(hours=until)


@pytest.mark.parametrize(
    "text", ["do it tomorrow", "do it at 9", "not till tomorrow", "tomorrow", "can we do it tomorrow"]
)
def test_a_time_with_the_meal_days_away_may_be_that_of_a_step(text: str) -> None:
    """Asked: the meal was moved by it to where it can never be."""
    (asked,) = read(text, CURE)
    assert isinstance(asked, Unclear)
    assert [type(option) for option in asked.options] == [Snooze, MoveDeadline]


@pytest.mark.parametrize("text", ["bit longer", "give it longer", "needs longer", "more time"])
def test_longer_is_asked_of_what(text: str) -> None:
    """No new piece, and nothing dropped."""
    half = timedelta(minutes=30)
    assert read(text, FIRE) == [Unclear("longer", text, (Snooze(by=half), MoveDeadline(by=half)))]


@pytest.mark.parametrize("here", [CURE, FIRE])
def test_another_hour_is_asked_of_what(here: Context) -> None:
    """Where nothing was called for."""
    hour = timedelta(hours=1)
    assert read("another hour", here) == [Unclear("longer", "another hour", (Snooze(by=hour), MoveDeadline(by=hour)))]


@pytest.mark.parametrize("text", ["too salty", "brine too salty", "tastes way too salty"])
def test_too_salty_in_the_cure_is_asked_of_what(text: str) -> None:
    """The brine always is; of the finished slice it is no question."""
    assert read(text, CURE) == [Unclear("salty", text)]
    assert not any(isinstance(one, Unclear) for one in read("too salty", context("stored")))


def test_a_small_number_may_be_an_hour() -> None:
    """«7» in the cure: seven o'clock, beside degrees and days; no hour of the night."""
    (seven,), (three,) = read("7", CURE), read("3", CURE)
    assert [one.until is not None for one in _snoozes(seven)] == [True]
    assert [one.until is not None for one in _snoozes(three)] == [True]  # in the afternoon
    (night,) = read("3", replace(CURE, now=NOW + timedelta(hours=12)))
    assert not _snoozes(night)


def _snoozes(asked: Intent) -> list[Snooze]:
    assert isinstance(asked, Unclear)
    return [one for one in asked.options if isinstance(one, Snooze)]


def test_out_of_ice_into_the_fridge_is_no_ice_that_ran_out() -> None:
    """It is asked how it lies; «out of ice» alone is the ice."""
    (moved,), (melted,) = (read(text, context("chilling")) for text in ("out of ice n in fridge", "out of ice"))
    assert isinstance(moved, Unclear)
    assert isinstance(melted, Unclear)
    assert (moved.why, melted.why) == ("chilled_on", "melted")


@pytest.mark.parametrize("text", ["sliced it all pink inside", "sliced n pink all through", "carved it nice and pink"])
def test_what_the_slice_showed_is_kept_beside_the_slicing(text: str) -> None:
    """Without a comma between them."""
    assert short(read(text, context("stored"))) == "done slice & debrief"


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("skiped the morning one", "missed flip"),
        ("forgot the evening flip", "missed flip"),
        ("no flips this weekend", "pause"),
        ("nobody here to flip tomorrow", "pause"),
        ("cant flip sunday", "pause"),
        ("taking a nap til 9", "pause"),
        ("brb 20", "later 20m"),
        ("can jen get the reminders instead", "hand jen"),
        ("send the reminders to jen instead", "hand jen"),
        ("can jen take over", "hand jen"),
        ("dinner not lunch on sat", "meal sat18:00"),
        ("they want it for 4", "meal sat16:00"),
        ("do the rinse on friday", "later @09:00"),
        ("remind me to weigh the salt on wednesday", "later @09:00"),
        ("wat day do i pull it", "ask out"),
        ("when do i pull it out", "ask out"),
    ],
)
def test_said_in_short_in_the_cure(text: str, meant: str) -> None:
    """Missed and not left out, away and not forgotten, handed over, moved, asked of the cure and not of the fire."""
    assert short(read(text, CURE)) == meant


def test_in_at_an_hour_is_the_meat() -> None:
    """While the meat waits to go in it is no meal."""
    assert short(read("in at 8.10", RAW)) == "done into_cure @08:10"


def test_the_check_beside_what_cools_is_that_of_the_chill() -> None:
    """And not of a fridge of yesterday."""
    assert short(read("forgot to check it", context("chilling"))) == "missed chill_check"


def test_left_in_the_fridge_overnight_is_asked_how_it_lies() -> None:
    """As if it had been moved there."""
    (asked,) = read("leaving it overnight in the fridge", context("chilling"))
    assert isinstance(asked, Unclear)
    assert asked.why == "chilled_on"


@pytest.mark.parametrize(
    ("phase", "text", "meant"),
    [
        ("curing", "ask hubby", "hand hubby"),
        ("curing", "nobody home tomorrow", "pause"),
        ("curing", "back early", "resume"),
        ("cooking", "kids bday til 3 cant look", "pause"),
        ("cooking", "tom is taking the nite shift", "hand tom"),
        ("cooking", "foil round it 20 min ago", "done wrap @08:10"),
        ("waiting", "bed now will put it in tmrw", "later @09:00"),
        ("resting", "into the cooler w ice", "done chill"),
        ("resting", "into the cooler", "done rest"),
        ("chilling", "skip the 40 check", "skip"),
    ],
)
def test_said_in_short_elsewhere(phase: str, text: str, meant: str) -> None:
    """Away, back, handed over, wrapped, cooled in ice and not rested."""
    assert short(read(text, context(phase))) == meant


def test_after_dinner_said_when_it_is_over_is_asked() -> None:
    """It was put off to the dinner of the next day."""
    (asked,) = read("after dinner", replace(CURE, now=NOW + timedelta(hours=12)))
    assert isinstance(asked, Unclear)
    assert asked.why == "until"


def test_hours_at_the_knife_are_none_on_the_fire() -> None:
    """«took 3 hrs to slice» is no length of the cook."""
    assert not any(isinstance(one, Debrief) for one in read("took 3 hrs to slice", context("stored")))


@pytest.mark.parametrize(
    ("phase", "text", "meant"),
    [
        ("curing", "flipped this morn n tonite", "done flip"),
        ("curing", "quiet pls", "pause"),
        ("waiting", "wait til morning", "later @08:00"),
        ("waiting", "in the salt since 5", "done into_cure @05:00"),
        ("cooking", "skip the next reading", "skip"),
        ("cooking", "hour later pls", "meal +60m"),
        ("resting", "dropped it in the sink w ice", "done chill"),
    ],
)
def test_said_with_a_word_left_out(phase: str, text: str, meant: str) -> None:
    """As it is said whole."""
    assert short(read(text, context(phase))) == meant


@pytest.mark.parametrize(("text", "why"), [("took it out the bath", "out_of_ice"), ("we ate half", "tasted")])
def test_what_cools_is_asked_of(text: str, why: str) -> None:
    """The chill goes on."""
    (asked,) = read(text, context("chilling"))
    assert isinstance(asked, Unclear)
    assert asked.why == why


@pytest.mark.parametrize(
    ("phase", "text", "meant"),
    [
        ("curing", "im in bed already skip", "skip"),
        ("curing", "did the evening one", "done flip"),
        ("curing", "back at it", "resume"),
        ("curing", "mums taking over fri", "hand mum"),
        ("curing", "my son is doing tonights flip", "hand son"),
        ("resting", "ice bath since 20 mins", "done chill @08:10"),
        ("curing", "not home skip tonight", "skip"),
        ("curing", "im here", "resume"),
        ("cooking", "took it off at 90 c wrapped in towels", "read core 90c & done off & done rest"),
        ("cooking", "dad is on it til 6", "hand dad"),
        ("cooking", "everyones here at 5", "meal sat17:00"),
        ("curing", "cancel sat do the 13th", "meal sat13:00"),
        ("curing", "that can wait", "later"),
        ("waiting", "poured in n bagged", "done into_cure"),
        ("waiting", "brine check done", "done brine_check"),
        ("cooking", "coming off now", "done off"),
        ("curing", "cant do wed", "ask"),
        ("chilling", "iced", "ask"),
    ],
)
def test_said_as_one_types_it_in_bed(phase: str, text: str, meant: str) -> None:
    """Left out, done, back and not away, handed over, moved; another day is asked for."""
    assert short(read(text, context(phase))) == meant
