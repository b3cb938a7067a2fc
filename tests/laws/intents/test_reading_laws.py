"""Laws of reading a line: anything may be typed, in any phase; the answer is intents, soon, and never a guess."""

import string
import time
from datetime import UTC, datetime, timedelta
from typing import Any, get_args

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from bot.intents.context import Context, Phase
from bot.intents.intents import Change, Intent, Question, Reading, Start, Unclear
from bot.intents.read import LONGEST, read
from bot.measures import find, from_house, plain, to_house
from core.answers.likeness import nearest
from core.person import Units
from tests.talk_lines import KILOS, POUNDS, context, rows

KINDS = get_args(Intent)
SLOTS = (
    None, "cure", "thickness", "mass", "mass_unit", "cut", "method", "pit_c", "fridge_c", "probe", "doubt", "deadline",
    "batch", "eaters", "weight_after", "grey", "salty", "zone", "when", "confirm", "no_such_slot",
)  # fmt: skip
WORDS = sorted({word for row in rows("messages_sample.csv") for word in row["message"].split()} | {
    "no", "not", "at", "meant", "saturday", "half", "6.25%", "3,4", "kg", "lb", "in", "cure", "?", "fridge", "pit",
    "undo", "later", "moved", "to", "3/4", "1¾", "👍", "and", ",", "it's", "ago", "min", "flipped", "wrapped",
    "forgot",
    "quiet", "zone", "pause",
})  # fmt: skip

instants = st.integers(1_767_000_000, 1_893_000_000).map(lambda s: datetime.fromtimestamp(s, UTC))  # 2026 to 2029
contexts = st.builds(
    Context,
    now=instants,
    zone=st.sampled_from(("UTC", "Europe/Vienna", "America/Chicago", "Pacific/Kiritimati", "Asia/Kathmandu")),
    units=st.sampled_from((POUNDS, KILOS, Units("kg", "in", "f"))),
    language=st.sampled_from(("en", "de", "de-AT")),
    phase=st.sampled_from(get_args(Phase)),
    asked=st.sampled_from(SLOTS),
    asked_value=st.none() | st.floats(-10, 500),
    last_core_c=st.none() | st.floats(-5, 100),
    last_pit_c=st.none() | st.floats(60, 200),
    deadline=st.none() | instants,
    batches=st.sampled_from(((), (("b1", "flat 1"),), (("b1", "flat 1"), ("b2", "ham")), (("b1", "("), ("b2", "")))),
    due_step=st.sampled_from((None, "flip/3", "chill_check/2", "brine_check")),
    mass=st.none() | st.floats(0.1, 10),
)
sentences = st.lists(st.sampled_from(WORDS), min_size=1, max_size=14).map(" ".join)


@given(st.text(max_size=120) | sentences, contexts)
@example("", context())
@example("\x00\x07\u202e", context())
@example("½" * 20, context())
@example("٣٤٥ kg ෧෨ lb", context("none"))
@example("1/0 in", context())
@example("half 8 half 8 half 8", context())
@example("saturday the 31 february 2027", context("none"))
@settings(max_examples=400, deadline=None)
def test_anything_that_is_typed_means_something(text: str, where: Context) -> None:
    """Every text gives at least one intent of a known kind, and never raises."""
    found = read(text, where)
    assert found
    assert {type(intent) for intent in found} <= set(KINDS)


@given(st.text(alphabet=string.printable, min_size=LONGEST + 1, max_size=5000))
@settings(max_examples=20, deadline=None)
def test_too_long_a_text_is_said_to_be(text: str) -> None:
    """5,000 characters are not searched for a meaning."""
    (intent,) = read(text, context())
    assert isinstance(intent, Unclear)
    assert intent.why == "too_long"


@given(sentences, contexts)
@settings(max_examples=200, deadline=None)
def test_times_are_aware(text: str, where: Context) -> None:
    """No naive time leaves the reader."""
    for intent in read(text, where):
        for value in _values(intent):
            assert not isinstance(value, datetime) or value.utcoffset() == timedelta(0)


def _values(intent: Any) -> list[Any]:
    held = list(vars(intent).values())
    for value in (getattr(intent, "said", {}), getattr(intent, "changes", {})):
        held.extend(value.values())
    for temperature in getattr(intent, "temperatures", ()):
        held.append(temperature.at)
    return held


@pytest.mark.parametrize("phase", get_args(Phase))
@given(value=st.integers(-20, 1200), units=st.sampled_from((POUNDS, KILOS)), last=st.none() | st.floats(0, 100))
@settings(max_examples=60, deadline=None)
def test_a_bare_number_is_a_whole_reading_or_is_asked_about(phase: str, value: int, units: Units, last: float) -> None:
    """A number alone has both its unit and its thermometer, or it is asked about; it is never a start or a change."""
    (intent,) = read(str(value), context(phase, units, last_core_c=last))
    assert isinstance(intent, Reading | Unclear | Start)
    if isinstance(intent, Start):
        assert intent.said == {}
        assert intent.unclear[0].startswith("unit:")
    if isinstance(intent, Reading):
        assert all(t.value == value and t.unit and t.probe for t in intent.temperatures)


@given(
    st.integers(30, 900).map(lambda n: n / 100), st.sampled_from(("kg", "lb", "kilos", "pounds", "lbs")), st.booleans()
)
@settings(max_examples=100, deadline=None)
def test_a_mass_is_that_which_was_typed(mass: float, unit: str, comma: bool) -> None:
    """Decimal comma or point, kilos or pounds: the mass of a start is the one typed, to the milligram."""
    text = f"{mass:.2f}".replace(".", ",") if comma else f"{mass:.2f}"
    (intent,) = read(f"{text} {unit} brisket flat", context("none"))
    assert isinstance(intent, Start)
    factor = 1.0 if unit.startswith("k") else 0.45359237
    assert intent.said["mass"] == pytest.approx(mass * factor, abs=1e-6)


@given(st.sampled_from(("cure #1", "pink salt", "curing salt", "prague powder", "cure 6.25", "pink salt is 5.88")))
def test_a_strength_is_never_taken_without_its_percent(words: str) -> None:
    """A curing salt by its name alone gives no strength, in a start or after it."""
    for where in (context("none"), context("curing")):
        for intent in read(f"3 kg brisket flat with {words}", where) + read(words, where):
            assert "cure_nitrite_fraction" not in getattr(intent, "said", {})
            assert not isinstance(intent, Change) or "cure_nitrite_fraction" not in intent.changes


@pytest.mark.parametrize("asks", ["can i", "what if i", "should i", "is it ok to"])
@given(rest=sentences)
@settings(max_examples=40, deadline=None)
def test_a_question_changes_no_setup(asks: str, rest: str) -> None:
    """What is asked is not done: a question states no strength, no mass and no method."""
    for intent in read(f"{asks} {rest} ?", context("curing")):
        assert not isinstance(intent, Change)


@given(
    st.floats(0.01, 5000), st.sampled_from(("kg", "g", "lb", "oz", "mm", "cm", "in", "ml", "l", "gal", "cup", "h", "%"))
)
def test_units_go_there_and_back(value: float, unit: str) -> None:
    """From a person's unit into the house and out again is the same number."""
    assert from_house(to_house(value, unit), unit) == pytest.approx(value, rel=1e-9)


@given(st.floats(-200, 1000), st.sampled_from(("c", "f")))
def test_temperatures_go_there_and_back(value: float, unit: str) -> None:
    """From °F or °C into the house and out again is the same number."""
    assert from_house(to_house(value, unit), unit) == pytest.approx(value, abs=1e-8)


@given(st.text(max_size=300))
@settings(max_examples=200, deadline=None)
def test_quantities_lie_in_their_text(text: str) -> None:
    """Whatever is found stands where it says, in order and without overlap."""
    line = plain(text)
    place = 0
    for measure in find(line):
        assert place <= measure.start < measure.end <= len(line)
        place = measure.end


NASTY = (
    "a", "1", "1 ", "the ", "1/2 ", "at 1 ", "not ", "kg ", "1,", "no ", "one ", "it ", "1 kg and ", "a an half ",
    "move the ", "in ", "((", "ok ", "°", "pit 1 ", "@", "-", "half 8 ", " \n", "saturday ", "not 1 but ", "flipped, ",
    "3 kg flat ", "one hundred ", "yes yes ", "sorry ", "i i ", "hi, ", "flat ", "cure ", "dont ", "and ", "/", "1:1",
    "why ",
)  # fmt: skip


@pytest.mark.parametrize("piece", NASTY)
def test_no_text_runs_away(piece: str) -> None:
    """The longest text of any one piece is read in a blink: no pattern backtracks without end."""
    nearest("why", "en", 1)  # the phrasings are loaded with the first question
    text = (piece * LONGEST)[:LONGEST]
    begun = time.process_time()
    for phase in ("none", "cooking"):
        assert read(text, context(phase))
    assert time.process_time() - begun < 1.0


def test_a_question_is_kept_as_typed() -> None:
    """The entries are searched with the words of the person, not with ours."""
    assert read("What’s a “pellicle”?", context()) == [Question("What’s a “pellicle”?")]
