"""What leans on what was said before, what cannot be, and two numbers that may be the other way round."""

from dataclasses import replace
from datetime import UTC, datetime, time

import pytest

from bot.intents.context import Context
from bot.intents.intents import (
    Ask,
    Change,
    Choose,
    Correct,
    Join,
    MoveDeadline,
    Reading,
    Settings,
    StepDone,
    StepSkipped,
    Temperature,
    Unclear,
)
from bot.intents.read import read
from core.batch.events import Probe
from core.person import Units

NINE = datetime(2027, 9, 24, 7, 0, tzinfo=UTC)  # 09:00 in Vienna, a Friday
CURE = Context(
    NINE,
    "Europe/Vienna",
    phase="curing",
    batch="b",
    batches=(("b", "flat"),),
    deadline=datetime(2027, 10, 2, 11, 0, tzinfo=UTC),
)
FIRE = replace(CURE, phase="cooking", last_core_c=52.0, last_pit_c=121.0)
NONE = Context(NINE, "Europe/Vienna")


def at(day: int, hour: int, minute: int = 0, month: int = 9) -> datetime:
    """A wall time in Vienna in the summer half of 2027."""
    return datetime(2027, month, day, hour - 2, minute, tzinfo=UTC)


@pytest.mark.parametrize(
    ("text", "context", "meant"),
    [
        ("and last night too", CURE, [StepDone("flip", at(23, 20))]),
        ("flipped, and last night too", CURE, [StepDone("flip"), StepDone("flip", at(23, 20))]),
        ("it's the pit", FIRE, [Correct(probe=Probe.PIT)]),
        ("fire is back", FIRE, [Ask("relit", text="fire is back")]),
        ("it stayed cold", CURE, [Choose("vouch", "fridge")]),
        (
            "fridge 4 c, it stayed cold",
            CURE,
            [Reading((Temperature(4.0, "c", Probe.FRIDGE),)), Choose("vouch", "fridge")],
        ),
        ("fridge runs at 4c", CURE, [Change({"fridge_c": 4.0})]),
        ("is this the stall?", FIRE, [Ask("stall", text="is this the stall?")]),
        ("skip brine check", replace(CURE, phase="waiting"), [StepSkipped("brine_check")]),
        ("did the brine check at 08:00", replace(CURE, phase="waiting"), [StepDone("brine_check", at(24, 8))]),
        ("done with the fridge at 7", CURE, [StepDone("fridge_check", at(24, 7))]),
    ],
)  # fmt: skip
def test_remarks(text: str, context: Context, meant: list[object]) -> None:
    """A remark of a few words is taken for what it leans on."""
    assert read(text, context) == meant


@pytest.mark.parametrize(
    ("text", "hours"),
    [
        ("flips with breakfast and supper", (time(8), time(19))),
        ("flips at breakfast and at bedtime", (time(8), time(21, 30))),
        ("remind me to flip with dinner", (time(19),)),
        ("flips at 7 and 19", (time(7), time(19))),
    ],
)
def test_habits_for_hours(text: str, hours: tuple[time, ...]) -> None:
    """Flips may be tied to what one does every day; the hour that is taken is told."""
    assert read(text, CURE) == [Settings({"flip_hours": hours})]


def test_late_by_hours() -> None:
    """«running late 2 hours» moves the meal, not the batch."""
    (moved,) = read("running late 2 hours", FIRE)
    assert isinstance(moved, MoveDeadline)
    assert moved.by is not None
    assert moved.by.total_seconds() == 7200


@pytest.mark.parametrize(
    ("text", "why", "typed"),
    [
        ("flips at 25:00", "hour", "25:00"), ("dinner sat 13:75", "hour", "13:75"),
        ("two kilos of moon", "meat", "moon"), ("mass is 900 kg", "mass", "900 kg"),
        ("thickness 5 m", "thickness", "5 m"),
        ("cure is 3 %", "strength", "3 %"), ("pink salt 2.5%", "strength", "2.5 %"),
    ],
)  # fmt: skip
def test_what_cannot_be(text: str, why: str, typed: str) -> None:
    """What cannot be is named in the cook's own figure, and nothing of it is taken."""
    (asked,) = read(text, CURE)
    assert isinstance(asked, Unclear)
    assert (asked.why, asked.text) == (why, typed)


@pytest.mark.parametrize("percent", ["0.4", "0.5", "0.6", "0.9", "5", "5.88", "6.25", "6.5", "10"])
def test_usual_strengths(percent: str) -> None:
    """The strengths that packets have are taken as they are typed (common practice, no source)."""
    (change,) = read(f"cure is {percent} %", CURE)
    assert change == Change({"cure_nitrite_fraction": pytest.approx(float(percent) / 100)})


@pytest.mark.parametrize("text", ["250/54", "54/250", "48/60"])
def test_a_pair_that_may_be_mixed(text: str) -> None:
    """A dial in °F over a probe in °C, or two numbers of which none is a pit: asked, never guessed."""
    (asked,) = read(text, FIRE)
    assert isinstance(asked, Unclear)
    assert asked.why == "pair"
    first = asked.options[0].temperatures if asked.options else ()
    assert first in ((), (Temperature(54.0, "c", Probe.CORE), Temperature(250.0, "f", Probe.PIT)))


@pytest.mark.parametrize(
    ("text", "phase", "hour"),
    [("meat is in since thursday 7:00", "curing", at(23, 7)), ("flipped at 8:20", "curing", at(24, 8, 20))],
)
def test_an_hour_with_minutes_stands(text: str, phase: str, hour: datetime) -> None:
    """«friday 7:00» is seven in the morning, also at night."""
    (done,) = read(text, replace(CURE, phase=phase))
    assert isinstance(done, StepDone)
    assert done.at == hour


def test_a_meal_stands_as_written() -> None:
    """«dinner at 11:00» is before noon; a dinner at 7:30 is in the evening."""
    assert read("dinner at 11:00", CURE) == [MoveDeadline(at(2, 11, month=10))]
    assert read("dinner at 7:30", CURE) == [MoveDeadline(at(2, 19, 30, month=10))]


def test_an_hour_to_come_is_asked_about() -> None:
    """«meat on at 9:20», said at nine: now, or yesterday."""
    (asked,) = read("meat on at 9:20", replace(CURE, phase="drying"))
    assert isinstance(asked, Unclear)
    assert asked.options == (StepDone("meat_on", NINE), StepDone("meat_on", at(23, 9, 20)))


def test_nearest_hour_on_twelve() -> None:
    """Who reads °F says 7:30 for the evening too: the nearest that has passed is meant."""
    (done,) = read("flipped at 7:30", replace(CURE, now=at(24, 20, 5), units=Units("lb", "in", "f")))
    assert isinstance(done, StepDone)
    assert done.at == at(24, 19, 30)


def test_the_hour_or_the_degrees() -> None:
    """«read the brine at 9» may be nine o'clock or nine degrees, so it is asked."""
    (asked,) = read("read the brine at 9", replace(CURE, phase="waiting"))
    assert isinstance(asked, Unclear)
    assert asked.why == "at"
    assert not any(isinstance(option, Settings) for option in asked.options)
    assert len(asked.options) == 2


@pytest.mark.parametrize("code", ["abcdefgh5p", "7a2kg52233", "frdgemsgs2", "trnd3kg522"])
def test_an_invitation_is_taken_by_its_letters(code: str) -> None:
    """The code of an invitation is no word with a slip in it and no hour: it is taken as it stands."""
    assert read(f"join {code}", NONE) == [Join(code)]
