"""Late tonight, left out till the morning, dry and not wet, the same again, and what stands beside a question."""

from datetime import time, timedelta

import pytest

from bot.intents.again import LIKE_LAST
from bot.intents.intents import (
    Ask,
    Change,
    Greet,
    Happened,
    MoveDeadline,
    Reading,
    Settings,
    Snooze,
    Start,
    StepDone,
    StepSkipped,
    Unclear,
)
from bot.intents.read import read
from core.batch.events import Probe
from tests.talk_lines import KILOS, NOW, context

CURE, RAW, FIRE = context("curing"), context("waiting"), context("cooking")


@pytest.mark.parametrize(
    "text",
    ["gonna be an hour late tonight", "im 1 hour late tonight", "ill be an hour late home", "running 1 h late today"],
)
def test_who_is_late_tonight_moves_no_meal_of_another_day(text: str) -> None:
    """The flip of the evening, or the meal: it is asked."""
    hour = timedelta(hours=1)
    assert read(text, CURE) == [Unclear("late", text, (Snooze(by=hour), MoveDeadline(by=hour)))]


@pytest.mark.parametrize(
    "text",
    [
        "dinner an hour late",
        "dinner an hour later tonight",
        "guests an hour late tonight",
        "guests late by an hour",
        "theyll be late by 1 hour",
    ],
)
def test_a_meal_that_is_late_is_moved(text: str) -> None:
    """It is named."""
    assert read(text, CURE) == [MoveDeadline(by=timedelta(hours=1))]


@pytest.mark.parametrize(
    "text", ["skip til mornin", "skip till morning", "skip it until the morning", "skipping til morning"]
)
def test_what_is_left_out_till_the_morning_is_before_it(text: str) -> None:
    """The flip of the morning stays."""
    assert read(text, CURE) == [StepSkipped(None)]


@pytest.mark.parametrize("text", ["skip the morning one", "skip it tomorrow morning", "skip the flip tomorrow morning"])
def test_the_flip_of_the_morning_may_be_left_out(text: str) -> None:
    """By its part of the day."""
    (found,) = read(text, CURE)
    assert isinstance(found, StepSkipped)
    assert found.at is not None


@pytest.mark.parametrize("text", ["actually make it dry not wet", "make it dry not wet", "make it dry then"])
def test_a_way_of_curing_is_no_drying_denied(text: str) -> None:
    """Nothing is taken back."""
    assert read(text, RAW) == [Change({"method": "dry"})]


@pytest.mark.parametrize(
    "text",
    [
        "do another brisket like the last one 6lb",
        "another flat like last time 6lb",
        "another brisket like that one but 6 lb",
        "make another pastrami like the last one 6 lb",
    ],
)
def test_another_like_the_last(text: str) -> None:
    """The meat may be named as well."""
    (found,) = read(text, context("none"))
    assert isinstance(found, Start)
    assert LIKE_LAST in found.assumed


@pytest.mark.parametrize("text", ["its at 52 how long till 40", "52 how long till its cold", "brine is 52 how long"])
def test_how_warm_the_brine_is_stands_before_a_question(text: str) -> None:
    """What was read is kept."""
    found = read(text, context("waiting", brine_made=True))
    assert isinstance(found[0], Reading)
    assert [(t.value, t.probe) for t in found[0].temperatures] == [(52.0, Probe.BRINE)]


@pytest.mark.parametrize("text", ["put in brine", "put in the brine", "popped in the brine", "meat in brine"])
def test_what_was_put_in(text: str) -> None:
    """Who did it is left out."""
    assert read(text, RAW) == [StepDone("into_cure")]


@pytest.mark.parametrize(
    ("text", "inches"), [("2 1/8", 2.125), ("1 3/4", 1.75), ("its 2 1/2", 2.5), ("about 2 3/8", 2.375)]
)
@pytest.mark.parametrize("due", [None, "brine", "brine_check"])
def test_a_number_by_its_parts_is_offered_as_a_thickness(text: str, inches: float, due: str | None) -> None:
    """No thermometer reads so."""
    (found,) = read(text, context("waiting", due_step=due))
    assert isinstance(found, Unclear)
    assert found.options[0] == Change({"thickness": pytest.approx(inches * 0.0254)})
    assert not any(isinstance(one, Reading) for one in found.options)


@pytest.mark.parametrize("text", ["both fine", "all good", "everything is fine", "both are still ok", "all looks well"])
def test_that_all_is_well_asks_nothing(text: str) -> None:
    """It is met with a nod."""
    assert read(text, CURE) == [Greet("nod")]


@pytest.mark.parametrize(
    "text", ["36f meat goin in", "meat in at 38", "brisket went in at 36", "in she goes at 39", "38 meat going in"]
)
def test_how_cold_it_is_where_the_meat_goes_in(text: str) -> None:
    """The brine is read, and no raw meat."""
    found = read(text, context("waiting", brine_made=True))
    assert [type(one) for one in found] == [Reading, StepDone]
    assert isinstance(found[0], Reading)
    assert found[0].temperatures[0].probe is Probe.BRINE


@pytest.mark.parametrize(
    ("text", "hours"),
    [
        ("flip at 10 every night", (time(8), time(22))),
        ("flip it at 9 each evening", (time(8), time(21))),
        ("turn it at 7 every morning", (time(7), time(20))),
        ("remind me to flip at 6:30 every morning", (time(6, 30), time(20))),
    ],
)
def test_a_flip_of_every_day_at_an_hour(text: str, hours: tuple[time, ...]) -> None:
    """It sets that half of the day, and puts no flip off."""
    assert read(text, CURE) == [Settings({"flip_hours": hours})]


@pytest.mark.parametrize(
    "text", ["change to 225", "change the pit to 225", "switch it to 225", "changing it to 225 now"]
)
def test_a_pit_that_is_changed(text: str) -> None:
    """It is no hour of the meal."""
    assert read(text, CURE) == [Change({"pit_c": pytest.approx(107.2, abs=0.1)})]


@pytest.mark.parametrize("text", ["take it to 203", "taking it to 195"])
def test_a_core_that_is_wanted(text: str) -> None:
    """No pit runs so low."""
    (found,) = read(text, FIRE)
    assert isinstance(found, Change)
    assert "target_c" in found.changes


@pytest.mark.parametrize("text", ["took a peek", "had a quick look inside", "peeked", "took another peek"])
def test_a_peek_opens_the_lid(text: str) -> None:
    """What the pit reads then says nothing."""
    assert [one.what for one in read(text, FIRE) if isinstance(one, Happened)] == ["lid"]


@pytest.mark.parametrize("text", ["turned it down a bit", "backed the fire down", "turned the pit up a touch"])
def test_a_vent_that_was_moved(text: str) -> None:
    """What the fire needs now is answered."""
    assert [one.topic for one in read(text, FIRE) if isinstance(one, Ask)] == ["fire"]


@pytest.mark.parametrize("text", ["smells like pickles", "it smells like wet dog", "smells a bit like vinegar"])
def test_a_smell_of_something_is_asked(text: str) -> None:
    """Clean, or gone off."""
    (found,) = read(text, CURE)
    assert isinstance(found, Unclear)
    assert found.why == "smell"


@pytest.mark.parametrize("text", ["smells like rotten eggs", "smells like ammonia", "smells like feet"])
def test_a_smell_of_rot_is_no_question(text: str) -> None:
    """It is thrown away."""
    (found,) = read(text, CURE)
    assert isinstance(found, Unclear)
    assert found.why == "spoiled"


@pytest.mark.parametrize("text", ["salted it at 6", "salted 20 min ago", "salted the fish last night", "salted it"])
def test_fish_that_was_salted(text: str) -> None:
    """With its hour or without."""
    (found,) = read(text, RAW)
    assert isinstance(found, StepDone)
    assert found.step == "into_cure"


@pytest.mark.parametrize("text", ["give it another hour", "need another hour", "gimme another hour"])
def test_another_hour_is_a_while(text: str) -> None:
    """No other piece is spoken of."""
    (found,) = read(text, CURE)
    assert isinstance(found, Snooze)
    assert timedelta(hours=1) in (found.by, (found.until or NOW) - NOW)


@pytest.mark.parametrize(
    "text",
    ["pulled to wrap back on", "pulled it to wrap", "took it off to wrap, its back on"],
)
def test_off_the_fire_to_wrap_is_a_wrap(text: str) -> None:
    """It is neither off, nor eaten pulled."""
    assert read(text, FIRE) == [StepDone("wrap")]


@pytest.mark.parametrize("text", ["foil boat at 165", "foil boated it at 165", "in a foil boat, 165"])
def test_a_boat_of_foil_is_a_wrap(text: str) -> None:
    """In foil, with the core that was told."""
    found = read(text, context("cooking", last_core_c=72.0))
    assert found[0] == StepDone("wrap", detail="foil")


@pytest.mark.parametrize("text", ["put off a day", "put it off a day", "put dinner off by a day"])
def test_a_meal_that_is_put_off_a_day(text: str) -> None:
    """It moves."""
    assert read(text, RAW) == [MoveDeadline(by=timedelta(days=1))]


@pytest.mark.parametrize("text", ["pit dropped to 190 after i opened it", "pit 190 because i lifted the lid"])
def test_a_pit_after_the_lid_was_open(text: str) -> None:
    """The lid is told too."""
    assert [type(one) for one in read(text, FIRE)] == [Happened, Reading]


@pytest.mark.parametrize("text", ["was late flipping 5", "bit late turning it at 5", "late flipping about 5"])
def test_a_flip_that_was_late_has_its_hour(text: str) -> None:
    """It is done then."""
    (found,) = read(text, CURE)
    assert isinstance(found, StepDone)
    assert found.step == "flip"
    assert found.at is not None


def test_a_second_meat_without_a_weight_takes_none_of_the_first() -> None:
    """Two trout are no salmon."""
    (found,) = read("2 trout 400g each and a salmon side", context("none", KILOS))
    assert isinstance(found, Start)
    assert (found.said["product"], found.said["mass"]) == ("trout", pytest.approx(0.8))
    assert [one["product"] for one in found.then] == ["salmon"]
    assert "mass" not in found.then[0]


@pytest.mark.parametrize("text", ["bacon 10 lb 2 slabs", "belly 10 lb 2 sides", "salmon 3 lb 2 fillets"])
def test_a_count_of_pieces_is_no_ounces(text: str) -> None:
    """10 lb stay 10 lb."""
    (found,) = read(text, context("none"))
    assert isinstance(found, Start)
    assert not any("oz" in one for one in found.unclear)
    assert found.said.get("mass") in (None, pytest.approx(4.5359, abs=0.001), pytest.approx(1.3608, abs=0.001))


@pytest.mark.parametrize("text", ["same but 5lb", "the same again but 5 lb", "same one just 5lb"])
def test_the_same_with_another_weight(text: str) -> None:
    """No meat is called «but»."""
    (found,) = read(text, context("none"))
    assert isinstance(found, Start)
    assert found.said["mass"] == pytest.approx(2.268, abs=0.001)
    assert LIKE_LAST in found.assumed
