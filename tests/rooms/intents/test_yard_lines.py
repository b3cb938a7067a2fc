"""Talk beside the fire, and what of it is about the trade while there is no fire."""

from dataclasses import replace
from datetime import timedelta

import pytest

from bot.intents.intents import Ask, Change, Happened, Question, Reading, Settings, StepDone, Temperature
from bot.intents.read import read
from core.batch.events import Probe
from tests.talk_lines import KILOS, NOW, context

COOK = context("cooking", last_core_c=62.0, last_pit_c=121.0)
DRY = context("drying")


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("how much charcoal do i need", "fuel"),
        ("will the charcoal last?", "fuel"),
        ("how many chunks", "fuel"),
        ("how much propane", "fuel"),
        ("should i wrap now", "wrap"),
        ("when do I wrap?", "wrap"),
        ("what does foil save", "wrap"),
        ("wrap in paper now?", "wrap"),
        ("what if i wrap it", "wrap"),
        ("next reading when", "reading"),
        ("when should i check it again", "reading"),
        ("what is the target", "pull"),
        ("whats my target temp?", "pull"),
        ("the probe fell out", "probe_out"),
        ("probe came out", "probe_out"),
        ("how long does the stall last?", "stall"),
        ("is this the stall", "stall"),
        ("is it stalling", "stall"),
        ("should i turn the heat up", "fire"),
        ("shall we bring the pit down", "fire"),
        ("opened the vent", "fire"),
        ("i have closed the top vent a bit", "fire"),
        ("pit is running hot", "fire"),
        ("the fire keeps dropping", "fire"),
        ("cant hold the temp", "fire"),
        ("should i open the vents", "fire"),
        ("how do i hold it warm", "hold"),
        ("its ready too early", "hold"),
        ("how do i chill it", "chill"),
        ("what temp do i pull it", "pull"),
        ("probe tender", "tender"),
        ("it's like butter", "tender"),
        ("still tough", "tough"),
        ("not tender yet", "tough"),
    ],
)
def test_beside_the_fire_it_is_about_this_meat(text: str, topic: str) -> None:
    """Asked while meat is on the fire, it is answered from the batch."""
    found = read(text, COOK)
    assert [type(one) for one in found] == [Ask]
    assert isinstance(found[0], Ask)
    assert found[0].topic == topic


@pytest.mark.parametrize("text", ["when do i wrap", "how long does the stall last?", "how do i hold it warm"])
def test_without_a_fire_it_is_about_the_trade(text: str) -> None:
    """Before there is a batch the entries answer."""
    assert [type(one) for one in read(text, context("none"))] == [Question]


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("i opened the lid", Happened("lid")),
        ("spritzed it", Happened("lid")),
        ("flare up!", Happened("flare")),
        ("grease fire", Happened("flare")),
        ("unwrapped it", Happened("unwrapped")),
        ("took it out of the foil", Happened("unwrapped")),
        ("it's windy", Change({"wind_m_s": 7.0})),
        ("wind picked up", Change({"wind_m_s": 7.0})),
        ("no wind", Change({"wind_m_s": 0.0})),
        ("5 c outside", Change({"outside_c": 5.0})),
        ("i light with a chimney", Change({"lighter": "chimney"})),
        ("we use a torch", Change({"lighter": "torch"})),
    ],
)
def test_what_happens_in_the_yard(text: str, meant: object) -> None:
    """The lid, a flare, the weather and the way of lighting are written down."""
    assert read(text, COOK) == [meant]


def test_a_lid_and_a_reading_in_one_line() -> None:
    """Both are taken, each for itself."""
    found = read("opened the lid, pit 99 c", COOK)
    assert {type(one) for one in found} == {Happened, Reading}


@pytest.mark.parametrize("text", ["should i open the lid", "how do i avoid a flare up?", "what if it is windy"])
def test_a_question_happens_to_nobody(text: str) -> None:
    """Asking about it writes nothing down."""
    assert not any(isinstance(one, Happened | Change) for one in read(text, COOK))


def test_before_the_fire_the_fuel_can_be_asked_for() -> None:
    """Charcoal is bought days before."""
    assert read("how much charcoal", context("curing")) == [Ask("fuel", text="how much charcoal")]
    assert read("when do i light", DRY) == [Ask("light", text="when do i light")]


@pytest.mark.parametrize("phase", ["resting", "chilling"])
@pytest.mark.parametrize(
    ("text", "facts"),
    [
        ("halved it", {}),
        ("cut it in half", {}),
        ("sliced it thinner", {}),
        ("cut it flat to 25 mm", {"thickness": 0.025}),
        ("cut it to 1 inch", {"thickness": pytest.approx(0.0254)}),
    ],
)
def test_cut_so_as_to_cool_is_no_slicing_for_the_table(text: str, facts: dict[str, float], phase: str) -> None:
    """What the chill's own advice asks for, «cut it flat», leaves the chill going on."""
    assert read(text, context(phase, last_core_c=50.0)) == [Happened("cut", facts)]


@pytest.mark.parametrize("text", ["start the chill", "started the chill", "ok start chilling", "chill started"])
def test_the_words_of_the_call_begin_the_chill(text: str) -> None:
    """A cook who answers «Start the chill» with its own words has begun it."""
    assert read(text, context("resting", last_core_c=60.0)) == [StepDone("chill")]


def test_sliced_is_still_sliced() -> None:
    """Cold meat that is sliced is sliced for the table."""
    assert read("sliced", context("chilling", last_core_c=4.0)) == [StepDone("slice")]


@pytest.mark.parametrize("text", ["what if i use a kettle", "how about a kettle?", "would a kettle be faster"])
@pytest.mark.parametrize("phase", ["waiting", "curing", "drying", "cooking"])
def test_a_supposed_cooker_is_a_question(text: str, phase: str) -> None:
    """Asked is not told: the setting stays as it is."""
    found = read(text, context(phase))
    assert [type(one) for one in found] == [Ask]
    assert isinstance(found[0], Ask)
    assert (found[0].topic, found[0].about) == ("on_cooker", "kettle")


def test_a_cooker_that_is_told_is_a_setting() -> None:
    """«i use a kettle» is told."""
    assert read("i use a kettle", context("curing")) == [Settings({"cooker": "kettle"})]


ON_AT = NOW - timedelta(hours=1)


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("start temp was 8 c", 8.0, "c"),
        ("starting temp 46f", 46.0, "f"),
        ("start temp was 8", 8.0, "c"),
        ("start temp was 46", 46.0, "f"),
        ("the meat was 10 c when it went on", 10.0, "c"),
        ("it was 44 f when i put it on", 44.0, "f"),
        ("meat went on at 9 c", 9.0, "c"),
    ],
)
def test_how_warm_it_went_on_is_a_core_of_just_before(text: str, value: float, unit: str) -> None:
    """It is read as of the minute before it went on, so that it is the start of the cook and in the record."""
    found = read(text, context("cooking", on_at=ON_AT))
    assert found == [Reading((Temperature(value, unit, Probe.CORE, ON_AT - timedelta(minutes=1)),))]


def test_tender_and_off_is_off() -> None:
    """Who says both has heard what to do."""
    assert read("tender, off", COOK) == [StepDone("off")]


def test_a_probe_in_the_air_is_the_pit() -> None:
    """«air probe» names where it stands, not the meat."""
    found = read("air probe 121, meat 61", replace(COOK, units=KILOS))
    assert isinstance(found[0], Reading)
    assert {t.probe: t.value for t in found[0].temperatures} == {Probe.PIT: 121.0, Probe.CORE: 61.0}


@pytest.mark.parametrize("text", ["lit it again", "lit again", "relit"])
def test_lit_again_is_no_step_twice(text: str) -> None:
    """After a dead fire it burns again; the step of lighting was long done."""
    assert read(text, COOK) == [Ask("relit", text=text)]


@pytest.mark.parametrize(
    ("text", "purpose"),
    [("thin cold slices by machine", "thin"), ("thin cold slices", "thin"), ("cold slices", "cold")],
)
def test_a_purpose_is_known_by_the_name_that_the_plan_has_for_it(text: str, purpose: str) -> None:
    """Thin and cold is thin: it comes off at another core than cold slices by hand."""
    assert read(text, context("curing")) == [Change({"purpose": purpose})]
