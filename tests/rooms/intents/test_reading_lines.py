"""Lines with temperatures: which thermometer, which unit, at what hour; and what has to be asked."""

from datetime import datetime, timedelta

import pytest

from bot.intents.context import Context
from bot.intents.intents import Ask, Change, Happened, Question, Reading, Snooze, StepDone, Temperature, Unclear
from bot.intents.read import read
from core.batch.events import Probe
from core.person import Units
from core.units import celsius_from_fahrenheit
from tests.talk_lines import KILOS, NOW, POUNDS, context, wall

COOK = context("cooking", last_core_c=62.0, last_pit_c=121.0)
METRIC = context("cooking", KILOS, last_core_c=62.0, last_pit_c=121.0)
CURE = context("curing")
CHILL = context("chilling", last_core_c=62.0)
Told = list[tuple[float, str, str]]


def told(text: str, where: Context) -> Told:
    """Value, unit and thermometer of each temperature of a line that is a reading and nothing else."""
    (intent,) = read(text, where)
    assert isinstance(intent, Reading), intent
    return [(t.value, t.unit or "", t.probe.value if t.probe else "") for t in intent.temperatures]


@pytest.mark.parametrize(
    ("text", "temperatures"),
    [
        ("158", [(158, "f", "core")]),
        ("158!", [(158, "f", "core")]),
        ("one fifty eight", [(158, "f", "core")]),
        ("１５８", [(158, "f", "core")]),
        ("158 degrees", [(158, "f", "core")]),
        ("158ºF", [(158, "f", "core")]),
        ("158/245", [(158, "f", "core"), (245, "f", "pit")]),
        ("158 245", [(158, "f", "core"), (245, "f", "pit")]),
        ("158,245", [(158, "f", "core"), (245, "f", "pit")]),
        ("158-245", [(158, "f", "core"), (245, "f", "pit")]),
        ("245/158", [(245, "f", "pit"), (158, "f", "core")]),
        ("70/120", [(70, "c", "core"), (120, "c", "pit")]),
        ("70c pit 120", [(70, "c", "core"), (120, "c", "pit")]),
        ("probe says 161.5", [(161.5, "f", "core")]),
        ("core 70,5 c", [(70.5, "c", "core")]),
        ("its at 158 pit 240ish", [(158, "f", "core"), (240, "f", "pit")]),
        ("meat=158 pit=245", [(158, "f", "core"), (245, "f", "pit")]),
        ("245 pit 158 meat", [(245, "f", "pit"), (158, "f", "core")]),
        ("pit 245, meat 158, fridge 38", [(245, "f", "pit"), (158, "f", "core"), (38, "f", "fridge")]),
        ("smoker 250 meat 160 ambient 12c", [(250, "f", "pit"), (160, "f", "core"), (12, "c", "room")]),
        ("pit 240-260", [(240, "f", "pit"), (260, "f", "pit")]),
        ("pit was 245 now 260", [(245, "f", "pit"), (260, "f", "pit")]),
        ("meat was 150 now 158", [(150, "f", "core"), (158, "f", "core")]),
        ("thick end 155 thin end 168", [(155, "f", "core"), (168, "f", "core")]),
        ("200 pit 245", [(200, "f", "core"), (245, "f", "pit")]),
        ("dome 260 grate 245", [(245, "f", "pit")]),
        ("250", [(250, "f", "pit")]),
        ("pit is 280 too hot", [(280, "f", "pit")]),
        ("it's raining and the pit is down to 215", [(215, "f", "pit")]),
        ("stuck at 152 for 2 hours", [(152, "f", "core")]),
        ("went down 2 degrees 150 now", [(150, "f", "core")]),
        ("158 and the fire looks low", [(158, "f", "core")]),
        ("518", [(518, "f", "core")]),
        ("900", [(900, "f", "core")]),
        ("518/245", [(518, "f", "core"), (245, "f", "pit")]),
    ],
)
def test_a_cook_read_by_one_who_thinks_in_fahrenheit(text: str, temperatures: Told) -> None:
    """Core 62 °C (144 °F) and rising, pit 121 °C: what follows from it is taken; a slip is passed on as typed."""
    assert told(text, COOK) == temperatures


@pytest.mark.parametrize(
    ("text", "temperatures"),
    [
        ("70", [(70, "c", "core")]),
        ("158", [(158, "f", "core")]),
        ("120", [(120, "c", "pit")]),
        ("70/120", [(70, "c", "core"), (120, "c", "pit")]),
        ("158/245", [(158, "f", "core"), (245, "f", "pit")]),
        ("pit 120", [(120, "c", "pit")]),
        ("pit 250", [(250, "f", "pit")]),
        ("core 88", [(88, "c", "core")]),
    ],
)
def test_a_cook_read_by_one_who_thinks_in_celsius(text: str, temperatures: Told) -> None:
    """The same numbers to a person of °C: 158 can be no core in °C and no pit at 121 °C."""
    assert told(text, METRIC) == temperatures


@pytest.mark.parametrize(
    ("text", "temperature"),
    [
        ("its 38 in the fridge", (38, "f", "fridge")),
        ("fridge 46!!", (46, "f", "fridge")),
        ("fridge seems to be around 39 today", (39, "f", "fridge")),
        ("Kühlschrank 4 Grad", (4, "c", "fridge")),
        ("brine is 39", (39, "f", "brine")),
    ],
)
def test_a_fridge_in_the_cure(text: str, temperature: tuple[float, str, str]) -> None:
    """Where it is named, in the unit in which it can be."""
    assert told(text, CURE) == [temperature]


@pytest.mark.parametrize("units", [POUNDS, KILOS])
@pytest.mark.parametrize("text", ["4", "38", "40", "its 38", "40 now", "37.5", "hmm 40"])
def test_a_bare_number_in_the_cure_is_asked_about(text: str, units: Units) -> None:
    """A fridge, a brine, minutes or a thickness: none stands in the record unasked, unless a reading was called for."""
    for phase in ("waiting", "curing"):
        (asked,) = read(text, context(phase, units))
        assert isinstance(asked, Unclear)
        assert {option.temperatures[0].probe for option in asked.options if isinstance(option, Reading)} == {
            Probe.FRIDGE, Probe.BRINE,
        }  # fmt: skip
    (asked,) = read(text, context("curing", units, dry=True))
    assert isinstance(asked, Unclear)
    assert all(o.temperatures[0].probe is Probe.FRIDGE for o in asked.options if isinstance(o, Reading))
    called = context("curing", POUNDS, due_step="fridge_check/20270301")
    assert told("38", called) == [(38, "f", "fridge")]


def test_what_a_bare_number_may_be_by_phase() -> None:
    """A thickness, a weight, how long already and minutes are offered beside the temperatures."""
    (brine,) = read("6", context("waiting"))
    (cure,) = read("40", context("curing"))
    (cook,) = read("its been 6", context("cooking", last_core_c=65.0))
    assert isinstance(brine, Unclear)
    assert isinstance(cure, Unclear)
    assert isinstance(cook, Unclear)
    assert any(isinstance(o, Change) and "mass" in o.changes for o in brine.options)
    assert Change({"thickness": 0.04}) in cure.options
    assert Snooze(by=timedelta(minutes=40)) in cure.options
    assert Ask("since") in cook.options


def test_raw_meat_in_the_cold_is_cold() -> None:
    """A core of 45 before the fire is °F to who counts in °F; 45 °C may be a fire nobody told of: asked."""
    assert told("core 45", CURE) == [(45, "f", "core")]
    assert told("meat is 4", CURE) == [(4, "c", "core")]
    (asked,) = read("core 45", context("drying", KILOS))
    assert isinstance(asked, Unclear)
    assert [o.temperatures[0].unit for o in asked.options if isinstance(o, Reading)] == ["f", "c"]


def test_the_brine_is_meant_when_it_was_called_for() -> None:
    """Before the meat is in, a cold number is the brine's if its check was due, else it is asked."""
    assert told("39", context("waiting", due_step="brine_check")) == [(39, "f", "brine")]
    (asked,) = read("39", context("waiting"))
    assert isinstance(asked, Unclear)
    assert [o.temperatures[0].probe for o in asked.options if isinstance(o, Reading)] == [Probe.FRIDGE, Probe.BRINE]


@pytest.mark.parametrize(
    ("text", "where"),
    [
        ("95", context("cooking", last_core_c=None)),
        ("95", COOK),  # 95 °C would be a leap, 95 °F a fall
        ("140", context("cooking", last_core_c=71.0)),  # falling: 160 °F before
        ("140", METRIC),  # a core in °F, or the pit in °C
        ("45", METRIC),
        ("350", COOK),
        ("pit 120", COOK),  # a good pit in °C, or a dying one in °F
        ("pit was 245 now 200", COOK),  # the pit falling, or the meat
        ("fridge 12", CURE),
        ("55", CURE),
        ("38", CHILL),  # the core, or the fridge that it lies in
        ("38 f", CHILL),
        ("250 250 145", COOK),
        ("brine 39", context("waiting", KILOS)),
        ("158", context("none")),
    ],
)
def test_what_may_be_two_things_is_asked(text: str, where: Context) -> None:
    """No guess at a temperature: what may be two things is offered as both."""
    (asked,) = read(text, where)
    assert isinstance(asked, Unclear)
    assert asked.why == "number"


def test_what_is_offered_is_ready_to_take() -> None:
    """Every option says thermometer and unit; minutes are offered where a step is due."""
    (asked,) = read("95", context("cooking", due_step="reading/2"))
    assert isinstance(asked, Unclear)
    assert asked.options == (
        Reading((Temperature(95, "f", Probe.CORE),)),
        Reading((Temperature(95, "c", Probe.CORE),)),
        Reading((Temperature(95, "c", Probe.PIT),)),
        Snooze(by=timedelta(minutes=95)),
    )


@pytest.mark.parametrize(
    ("text", "where", "at"),
    [
        ("140 at 7", CHILL, [wall(3, 1, 7)]),
        ("140 now since 7pm", CHILL, [wall(2, 28, 19)]),
        ("at 7 it was 158", COOK, [wall(3, 1, 7)]),
        ("158 @ 7", COOK, [wall(3, 1, 7)]),
        ("158 at 3pm", COOK, [wall(2, 28, 15)]),
        ("158 20 min ago", COOK, [NOW - timedelta(minutes=20)]),
        ("17:30 158/245", COOK, [wall(2, 28, 17, 30)] * 2),
        ("7:15 150, 8:00 158", COOK, [wall(3, 1, 7, 15), wall(3, 1, 8)]),
        ("was 82f at 9, 44 at 7am", CHILL, [wall(2, 28, 21), wall(3, 1, 7)]),
        ("158", COOK, [None]),
    ],
)
def test_hours_of_readings(text: str, where: Context, at: list[datetime | None]) -> None:
    """A reading has the hour that was said, the latest past one, in the order of a series."""
    (intent,) = read(text, where)
    assert isinstance(intent, Reading)
    assert [t.at for t in intent.temperatures] == at


@pytest.mark.parametrize(
    ("text", "tender"),
    [
        ("203 soft", True),
        ("probe slides in like butter at 201", True),
        ("195 still tough", False),
        ("201 not tender", False),
        ("198 but still tough", False),
        ("203 not tender yet", False),
        ("its 199 and still firm", False),
        ("meat 200 too hard", False),
    ],
)
def test_how_it_feels(text: str, tender: bool) -> None:
    """Tender or not is kept beside the number; what is tough is answered too."""
    intent, *beside = read(text, COOK)
    assert isinstance(intent, Reading)
    assert intent.tender is tender
    assert [getattr(one, "topic", "") for one in beside] == ([] if tender else ["tough"])


def test_a_reading_beside_something_else() -> None:
    """A number said in the same breath as a deed, a question or a mishap is kept."""
    core = Reading((Temperature(158, "f", Probe.CORE),))
    assert read("158 how much longer", COOK) == [core, Ask("eta", text="158 how much longer")]
    assert read("158, is it safe?", COOK) == [core, Ask("safe", text="158, is it safe?")]
    assert read("fridge 46, ok?", CURE)[0] == Reading((Temperature(46, "f", Probe.FRIDGE),))
    assert read("fire is out, core 138f", COOK) == [
        Reading((Temperature(138, "f", Probe.CORE),)),
        Happened("fire_out", {"core_c": celsius_from_fahrenheit(138.0)}),
    ]
    assert read("flipped and fridge is 38", CURE) == [
        StepDone("flip"),
        Reading((Temperature(38, "f", Probe.FRIDGE),)),
    ]


@pytest.mark.parametrize(
    "text",
    [
        "keep the fridge under 40",
        "pull it at 195",
        "smoke at 225 f",
        "138 for 20 min brisket",
        "pit between 240 and 260",
    ],
)
def test_a_wish_a_plan_or_a_question_is_no_reading(text: str) -> None:
    """A number that is wanted, planned or asked about is never put on record."""
    assert not any(isinstance(intent, Reading) for intent in read(text, COOK))


def test_a_pit_before_the_fire_is_a_wish() -> None:
    """«pit 110 c» in the cure is how hot it shall run; over the fire it is how hot it is."""
    assert read("pit 110 c", CURE) == [Change({"pit_c": 110.0})]
    assert read("pit 110 c", COOK) == [Reading((Temperature(110, "c", Probe.PIT),))]
    assert read("pit 150 c and pit 90 c", context("none", POUNDS)) != [Question("pit 150 c and pit 90 c")]


@pytest.mark.parametrize("text", ["10 minutes ago core 157", "core was 157 10 minutes ago", "10 min ago, core 157"])
def test_how_long_ago_it_was_read(text: str) -> None:
    """The span before the number counts as much as the span behind it: a chill is judged by its hours."""
    (intent,) = read(text, COOK)
    assert isinstance(intent, Reading)
    assert [t.at for t in intent.temperatures] == [NOW - timedelta(minutes=10)]


@pytest.mark.parametrize(
    ("text", "deeds", "asked"),
    [
        ("flip done, fridge at 38. smells like pickles, normal?", 2, "smells like pickles, normal?"),
        ("slept in, just flipped it. is white stuff in the brine ok?", 1, "is white stuff in the brine ok?"),
        ("fridge 38. should the meat float?", 1, "should the meat float?"),
        ("if i flipped it, fridge 38, is that enough?", 0, "if i flipped it, fridge 38, is that enough?"),
        ("my friend flipped his, should i flip mine?", 0, "my friend flipped his, should i flip mine?"),
    ],
)
def test_a_question_beside_a_deed_loses_neither(text: str, deeds: int, asked: str) -> None:
    """What was done and read is kept, and the rest is what is asked."""
    *done, question = read(text, CURE)
    assert (len(done), question) == (deeds, Question(asked))
