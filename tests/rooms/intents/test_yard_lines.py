"""Talk beside the fire, and what of it is about the trade while there is no fire."""

import pytest

from bot.intents.intents import Ask, Change, Happened, Question, Reading, StepDone
from bot.intents.read import read
from tests.talk_lines import context

COOK = context("cooking", last_core_c=62.0, last_pit_c=121.0)
DRY = context("drying")


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("how much charcoal do i need", "fuel"),
        ("will the charcoal last?", "fuel"),
        ("how many chunks", "fuel"),
        ("should i wrap now", "wrap"),
        ("when do I wrap?", "wrap"),
        ("what does foil save", "wrap"),
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
