"""Two things in a breath without a comma: of two batches, of a pit and a wish, of a flip and a smell."""

import pytest

from bot.intents.intents import (
    Change,
    HandOver,
    MoveDeadline,
    Pause,
    Question,
    Reading,
    StepDone,
    StepSkipped,
    Unclear,
)
from bot.intents.read import read
from core.batch.events import Probe
from tests.talk_lines import POUNDS, context, wall

CURE, RAW, FIRE, CHILL = context("curing"), context("waiting"), context("cooking"), context("chilling")
TWO = context(
    "cooking",
    batch="f",
    batches=(("f", "flat"), ("b", "bacon")),
    of_what=(("flat", "pastrami", "brisket_flat"), ("bacon", "bacon", "pork_belly")),
)


@pytest.mark.parametrize(
    "text",
    [
        "bacon fridge 38 brisket 161",
        "bacon fridge 38 flat 161",
        "flat 161 bacon fridge 38",
        "the flat is 161 the bacon fridge is 38",
    ],
)
def test_each_batch_has_its_own_number(text: str) -> None:
    """The core of one is none of the other's."""
    found = [one for one in read(text, TWO) if isinstance(one, Reading)]
    assert {one.batch: one.temperatures[0].value for one in found} == {"b": 38.0, "f": 161.0}


@pytest.mark.parametrize("text", ["brisket 155 bacon flipped", "bacon flipped flat 155", "flat 155 bacon turned"])
def test_a_reading_of_one_and_a_flip_of_the_other(text: str) -> None:
    """Neither is lost."""
    found = read(text, TWO)
    assert {type(one) for one in found} == {Reading, StepDone}
    assert {getattr(one, "batch", None) for one in found} == {"b", "f"}


@pytest.mark.parametrize("text", ["flipped n its kinda slimy", "flipped it, smells rotten", "fridge 37, it went slimy"])
def test_what_went_off_is_heard_beside_a_deed(text: str) -> None:
    """The warning is not lost over it."""
    assert any(isinstance(one, Unclear) and one.why == "spoiled" for one in read(text, CURE))


@pytest.mark.parametrize("text", ["pit 225 want 250", "pit is 225, i want 250", "pit at 225 should be 250"])
def test_a_pit_that_is_read_and_one_that_is_wanted(text: str) -> None:
    """The first is read, the second set."""
    found = read(text, FIRE)
    assert isinstance(found[0], Reading)
    assert found[0].temperatures[0].value == 225.0
    assert found[1] == Change({"pit_c": pytest.approx(121.1, abs=0.1)})


@pytest.mark.parametrize(
    "text", ["probes off reads 140 in boiling water", "probe says 209 in boiling water", "reads 98 in boiling water"]
)
def test_what_a_probe_shows_in_boiling_water_is_no_core(text: str) -> None:
    """It is a test of the probe."""
    assert not any(isinstance(one, Reading) for one in read(text, FIRE))


@pytest.mark.parametrize("text", ["149 now was 151", "its 149 now, it was 151", "149 now but it was 152"])
def test_what_it_reads_now_counts(text: str) -> None:
    """And not what it was."""
    (found,) = read(text, context("cooking", last_core_c=65.6))
    assert isinstance(found, Reading)
    assert [t.value for t in found.temperatures] == [149.0]


@pytest.mark.parametrize(
    "text", ["went from 140 to 85 in an hour", "dropped from 140 to 85", "core fell from 140 to 85"]
)
def test_a_chill_is_where_it_came_to(text: str) -> None:
    """No pit is there any more."""
    (found,) = read(text, context("chilling", last_core_c=60.0))
    assert isinstance(found, Reading)
    assert [(t.value, t.probe) for t in found.temperatures] == [(85.0, Probe.CORE)]


@pytest.mark.parametrize(
    "text", ["it tapers 2.25 down to 1", "tapers from 2 in to 1 in", "it tapers from 50 mm to 30 mm"]
)
def test_a_piece_that_tapers_is_asked_at_its_thickest(text: str) -> None:
    """The days go by that."""
    (found,) = read(text, RAW)
    assert isinstance(found, Unclear)
    assert found.why == "thickest"


@pytest.mark.parametrize("text", ["brother in law takes over till mon", "my brother in law takes over till mon"])
def test_a_brother_in_law_is_a_brother(text: str) -> None:
    """Nobody is called «in law»."""
    (found,) = read(text, CURE)
    assert isinstance(found, HandOver)
    assert found.to == "brother"


@pytest.mark.parametrize("text", ["dont need the morning ping tomorrow", "i dont need the morning one"])
def test_a_ping_that_is_not_needed_is_left_out(text: str) -> None:
    """That of the morning."""
    (found,) = read(text, CURE)
    assert isinstance(found, StepSkipped)
    assert found.at is not None


@pytest.mark.parametrize("text", ["put it back a day", "put the meal back a day", "put dinner back 1 day"])
def test_a_meal_that_is_put_back(text: str) -> None:
    """It comes later; of a batch by its name as well."""
    (found,) = read(text, CURE)
    assert isinstance(found, MoveDeadline)
    (named,) = read("put the bacon back a day", TWO)
    assert isinstance(named, MoveDeadline)
    assert named.batch == "b"


@pytest.mark.parametrize("text", ["dropped a chunk of cherry on", "tossed another log on", "stuck some splits in"])
def test_wood_that_was_dropped_on(text: str) -> None:
    """It is fuel."""
    (found,) = read(text, FIRE)
    assert isinstance(found, Unclear)
    assert found.why == "fuelled"


@pytest.mark.parametrize(
    "text", ["were gonna be 5 instead of 8", "we are going to be 5 not 8", "there will be 5 not 8"]
)
def test_fewer_guests_put_no_reading_right(text: str) -> None:
    """They are counted."""
    assert not any(isinstance(one, Question) for one in read(text, context("curing", POUNDS)))
    assert [getattr(one, "topic", "") for one in read(text, CURE)] == ["feed"]


@pytest.mark.parametrize("text", ["ate some cold", "tried a bit cold", "ate some warm"])
def test_a_taste_of_what_cools(text: str) -> None:
    """It asks for no doctor."""
    (found,) = read(text, CHILL)
    assert isinstance(found, Unclear)
    assert found.why == "tasted"


@pytest.mark.parametrize("text", ["turned bag fridge at 3.5c", "flipped bag fridge 38", "turned bags, fridge 37"])
def test_a_bag_that_was_turned_beside_a_fridge(text: str) -> None:
    """The flip is not lost over the reading."""
    assert {type(one) for one in read(text, CURE)} == {StepDone, Reading}


@pytest.mark.parametrize("text", ["158 on probe 1 163 on probe 2", "158 on probe 2", "158 for channel 1"])
def test_the_number_of_a_probe_is_no_temperature(text: str) -> None:
    """Nothing reads 2."""
    readings = [t.value for one in read(text, FIRE) if isinstance(one, Reading) for t in one.temperatures]
    assert readings[0] == 158.0
    assert min(readings) > 100


@pytest.mark.parametrize("text", ["220 and falling", "218", "its 215 now", "dropping, 220"])
def test_above_boiling_a_number_alone_is_the_pits(text: str) -> None:
    """No core is so hot."""
    (found,) = read(text, context("cooking", last_core_c=65.6, last_pit_c=121.0))
    assert isinstance(found, Reading)
    assert [t.probe for t in found.temperatures] == [Probe.PIT]


@pytest.mark.parametrize("text", ["stirred it all in", "whisked everything in", "dissolved it all in"])
def test_what_was_stirred_in_is_no_meat(text: str) -> None:
    """It is salt."""
    assert not any(isinstance(one, StepDone) and one.step == "into_cure" for one in read(text, RAW))


@pytest.mark.parametrize(
    "text", ["took 6 hrs to hit 155", "it took 5 h to reach 155", "took about 6 hours to get to 155"]
)
def test_how_long_it_took_to_a_core(text: str) -> None:
    """It is there now."""
    (found,) = read(text, FIRE)
    assert isinstance(found, Reading)
    assert [t.value for t in found.temperatures] == [155.0]


@pytest.mark.parametrize("text", ["my son took over at 12", "jo took over the fire at 9", "wife has taken over"])
def test_who_took_over_has_it(text: str) -> None:
    """At once, whatever the hour was."""
    (found,) = read(text, FIRE)
    assert isinstance(found, HandOver)
    assert found.at is None


@pytest.mark.parametrize(
    "text", ["thicker than i said like 2.5", "its thicker than i said its 2.5", "thinner than i thought 2.5"]
)
def test_thicker_than_was_said(text: str) -> None:
    """It is a thickness, and no weight."""
    assert read(text, RAW) == [Change({"thickness": pytest.approx(0.0635)})]


@pytest.mark.parametrize("text", ["fridge froze a corner", "one end is icy", "bag has a frozen corner"])
def test_what_froze_in_part(text: str) -> None:
    """Those hours do not count."""
    (found,) = read(text, CURE)
    assert isinstance(found, Unclear)
    assert found.why == "froze"


def test_a_day_off() -> None:
    """From that day to the next."""
    (found,) = read("take sunday off", CURE)
    assert isinstance(found, Pause)
    assert (found.since, found.until) == (wall(3, 7, 0), wall(3, 8, 9))
    assert read("make it hot for dinner", RAW) == [Change({"purpose": "hot"})]
    (either,) = read("make it 6 30", CURE)
    assert isinstance(either, Unclear)
    assert either.options == (MoveDeadline(to=wall(3, 6, 18, 30)),)


@pytest.mark.parametrize("text", ["meal was great 10/10", "dinner was 9/10", "the meal was good 4/5"])
def test_a_mark_is_no_day(text: str) -> None:
    """No meal is moved to October."""
    assert not any(isinstance(one, MoveDeadline) for one in read(text, context("stored")))


@pytest.mark.parametrize("text", ["rest it in the oven at 170", "hold it in the oven at 150", "keeping it in the oven"])
def test_where_it_is_held_is_no_cooker(text: str) -> None:
    """It is cooked as before."""
    assert not any("cooker" in getattr(one, "changes", {}) for one in read(text, FIRE))


@pytest.mark.parametrize("text", ["door was left ajar 46 now", "the door stood open, its 48", "door is open 50"])
def test_a_door_that_was_open(text: str) -> None:
    """It is that of the fridge, with what it reads."""
    assert [type(one).__name__ for one in read(text, CURE)] == ["Reading", "Happened"]
