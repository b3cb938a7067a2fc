"""Lines of a hasty thumb that lost a part: an hour, a number beside a question, a pit, how it is to be cured."""

from dataclasses import replace
from datetime import timedelta

import pytest

from bot.intents.intents import Ask, Change, Choose, Happened, Question, Reading, Snooze, Start, StepDone, StepSkipped
from bot.intents.read import read
from core.batch.events import Probe
from tests.talk_lines import KILOS, POUNDS, context

FIRE, CURE = context("cooking"), context("curing")


@pytest.mark.parametrize("text", ["12.30 it was 151", "12.15 meat 151", "12:30 it read 151", "it was 151 at 12.30"])
def test_an_hour_before_a_reading_is_its_hour(text: str) -> None:
    """It is no hour of a deed, and no reading of now."""
    (found,) = read(text, FIRE)
    assert isinstance(found, Reading)
    assert found.temperatures[0].at is not None


@pytest.mark.parametrize("text", ["158 can i pull it", "158 should i take it off", "63 what do i pull at"])
def test_a_number_before_a_question_is_kept(text: str) -> None:
    """What was read is noted, whatever is asked with it."""
    found = read(text, FIRE)
    assert isinstance(found[0], Reading)
    assert len(found) == 2


@pytest.mark.parametrize("text", ["64/119 hardly moves", "64/119 wont budge", "64 119, core barely rising now"])
def test_two_numbers_that_hardly_move_are_both_kept(text: str) -> None:
    """A remark behind them makes no question of them."""
    (found,) = read(text, context("cooking", KILOS))
    assert isinstance(found, Reading)
    assert [one.probe for one in found.temperatures] == [Probe.CORE, Probe.PIT]


@pytest.mark.parametrize("text", ["85 now, core 41", "core 41, 85 now", "85 and core 41"])
def test_a_number_far_over_the_core_is_a_cool_pit(text: str) -> None:
    """Two places of one piece do not lie so far apart."""
    (found,) = read(text, context("cooking", KILOS))
    assert isinstance(found, Reading)
    assert {one.value: one.probe for one in found.temperatures} == {85.0: Probe.PIT, 41.0: Probe.CORE}


@pytest.mark.parametrize("text", ["110, bird on", "duck is on, 110", "lit, 110"])
def test_a_number_beside_the_fire_is_the_pits(text: str) -> None:
    """Meat that goes on has no such core."""
    readings = [one for one in read(text, context("drying", KILOS)) if isinstance(one, Reading)]
    assert [one.temperatures[0].probe for one in readings] == [Probe.PIT]


def test_of_a_fry_test_no_flip_is_left_out() -> None:
    """It is no step of the plan; a flip is left out by its name."""
    assert read("not doing the fry test", CURE) == [Question("not doing the fry test")]
    assert read("skip the flip", CURE) == [StepSkipped("flip")]


@pytest.mark.parametrize("text", ["soak another hour then", "ill soak it one more hour", "soak it an hour longer"])
def test_a_longer_soak_moves_what_comes_after_it(text: str) -> None:
    """And is no longer cure."""
    assert read(text, context("drying")) == [Snooze(by=timedelta(hours=1), step="dry")]


@pytest.mark.parametrize("text", ["dry cure i think, 6.25%", "6.25% dry brine", "6.25% and i want to do it dry"])
def test_how_it_is_cured_is_heard_beside_the_strength(text: str) -> None:
    """Before the answer or after it."""
    asked = replace(context("waiting", POUNDS), asked="cure")
    assert read(text, asked) == [Change({"method": "dry", "cure_nitrite_fraction": 0.0625})]


def test_the_second_kind_is_no_packet_to_look_up() -> None:
    """Asked for the strength, «cure 2» is met with what it is."""
    asked = replace(context("waiting"), asked="cure")
    assert read("cure 2", asked) == [Choose("cure", "second")]
    assert read("cure 1", asked) == [Choose("cure", "unknown")]


@pytest.mark.parametrize("text", ["a duck breast or two for monday", "also a chicken or three for sunday"])
def test_how_many_is_left_open_is_no_temperature(text: str) -> None:
    """«or two» reads no thermometer."""
    assert not any(isinstance(one, Reading) for one in read(text, context("waiting", KILOS)))


@pytest.mark.parametrize(
    ("text", "hours"),
    [
        ("power was out from about 1 till 5 last night", 4.0),
        ("power went out at 1 and came back at 5", 4.0),
        ("no power 14:00-16:30", 2.5),
        ("power out 1 till 5", 4.0),
    ],
)
def test_a_power_cut_lasts_from_its_hour_to_its_hour(text: str, hours: float) -> None:
    """Not until now."""
    (found,) = read(text, CURE)
    assert getattr(found, "facts", {}).get("hours") == hours


def test_who_is_fed_has_eaten() -> None:
    """«everybodys fed» is the meal."""
    assert read("everybodys fed", context("stored")) == [StepDone("serve")]


@pytest.mark.parametrize("text", ["gonna do 275 instead", "doing 275 instead", "ill do 275 instead"])
def test_a_pit_that_is_run_otherwise(text: str) -> None:
    """Beside a fire it is the pit, and puts nothing off."""
    (found,) = read(text, FIRE)
    assert isinstance(found, Change)
    assert found.changes == {"pit_c": pytest.approx(135.0)}


@pytest.mark.parametrize("text", ["flat 157 bacon fridge 37", "bacon fridge 37 flat 157"])
def test_two_batches_in_a_breath_are_each_read(text: str) -> None:
    """Without a comma, too: the name of the second begins what is told of it."""
    here = context("cooking", POUNDS, batches=(("b2", "bacon"), ("b1", "flat")), batch="b1", last_core_c=65.5)
    found = read(text, here)
    told = {one.batch: one.temperatures[0].probe for one in found if isinstance(one, Reading)}
    assert told == {"b1": Probe.CORE, "b2": Probe.FRIDGE}


def test_a_product_again_begins_it() -> None:
    """«pastrami again same as last time» is a start, whether there was a last one or not."""
    (found,) = read("pastrami again same as last time", context("none"))
    assert isinstance(found, Start)
    assert found.said == {"product": "pastrami"}


def test_cold_then_is_the_bound_of_a_warm_fridge() -> None:
    """«this morning it was 38» tells since when at most; without a time, or warm then too, it bounds nothing."""
    asked = context("curing", POUNDS, asked="happened_warm_fridge")
    (found,) = read("no idea, this morning it was 38", asked)
    assert isinstance(found, Happened)
    assert found.facts["hours"] == pytest.approx(8.5)  # at 08:30, since midnight
    for text in ("no idea, it was 38", "no idea, this morning it was 44"):
        (found,) = read(text, asked)
        assert isinstance(found, Happened)
        assert found.facts.get("unknown")


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("3.4kg raw came out 1.95 whats the yield", "loss"),
        ("bacon went from 2.2 to 1.98 kg how much lost", "loss"),
        ("2 in in mm", "convert"),
    ],
)
def test_a_sum_in_short(text: str, kind: str) -> None:
    """Both weights count, the unit of one is that of the other, and «in in» is inches in."""
    (found,) = read(text, context("none"))
    assert isinstance(found, Ask)
    assert (found.topic, found.about) == ("sum", kind)
