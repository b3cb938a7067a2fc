"""Birds and fish, as they are told at the table and the fire: what is left over, and what held for half an hour."""

from datetime import timedelta

import pytest

from bot.intents.intents import Change, Happened, Reading, Start, StepDone
from bot.intents.read import read
from bot.intents.sums.done_at import done_at
from core.batch.events import Probe
from tests.talk_lines import KILOS, POUNDS, context

FIRE = context("cooking", POUNDS)


@pytest.mark.parametrize("phase", ["none", "resting", "stored"])
@pytest.mark.parametrize(
    "text",
    [
        "leftovers still on the table",
        "the rest still out on the counter",
        "the leftovers are out on the counter",
        "leftovers still out",
    ],
)
def test_what_is_left_over_is_out_of_the_cold(text: str, phase: str) -> None:
    """It lies on no fire and in no fridge, and how long is asked."""
    assert read(text, context(phase, POUNDS)) == [Happened("left_out")]


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("been 160 for half an hour", 30),
        ("its been at 160 for 30 min now", 30),
        ("held 160 30 min", 30),
        ("fish has been over 160 for the last half hour", 30),
        ("stayed at 160 an hour", 60),
    ],
)
def test_a_core_that_held_is_read_at_both_ends(text: str, minutes: int) -> None:
    """The half hour of smoked fish hangs on it."""
    (found,) = read(text, FIRE)
    assert isinstance(found, Reading)
    assert [(t.value, t.probe, t.at) for t in found.temperatures] == [
        (160.0, Probe.CORE, FIRE.now - timedelta(minutes=minutes)),
        (160.0, Probe.CORE, None),
    ]


@pytest.mark.parametrize("text", ["been 250 for 3 hours", "been at 165 for 5 hours", "its been 30 min"])
def test_a_pit_or_a_night_has_no_second_end(text: str) -> None:
    """One look before and one now vouch for no more than two hours of meat."""
    assert all(len(getattr(one, "temperatures", "1")) == 1 for one in read(text, FIRE))


@pytest.mark.parametrize(
    "text",
    [
        "is 158 enough",
        "is it done at 158?",
        "158 is that enough",
        "is 150 in the breast done",
        "would 160 do",
        "is 160 hot enough to eat",
        "are they safe at 155",
        "is 155 in the thigh ok to pull",
    ],
)
def test_a_core_that_is_asked_about(text: str) -> None:
    """Judged by the floor of the meat in hand."""
    assert done_at(text)


@pytest.mark.parametrize("text", ["is 30 min enough", "are 10 enough people", "is 3.2 enough", "will 4 days do", "158"])
def test_another_number_is_no_core(text: str) -> None:
    """Minutes, people, days, and a bare reading."""
    assert not done_at(text)


@pytest.mark.parametrize(
    ("text", "pieces"),
    [
        ("two whole chickens for sunday, smoked", 2),
        ("2 nice turkeys for sunday", 2),
        ("three little trout for sunday", 3),
        ("two frozen ducks for sunday", 2),
    ],
)
def test_birds_are_counted_and_not_weighed(text: str, pieces: int) -> None:
    """«two whole chickens» are no 2 kilos."""
    (found,) = read(text, context("none", POUNDS))
    assert isinstance(found, Start)
    assert (found.said.get("pieces"), found.unclear) == (pieces, ())


@pytest.mark.parametrize("text", ["in the brine now", "its in the brine", "out of the brine, drying"])
def test_a_deed_beside_a_half_start_chooses_no_way(text: str) -> None:
    """It is told, and the wet way is not wished by it."""
    found = read(text, context("none", POUNDS, asked="mass", asked_of_start=True))
    assert isinstance(found[0], StepDone)


@pytest.mark.parametrize(
    ("text", "cores"),
    [
        ("165 in one spot 158 in another", [165.0, 158.0]),
        ("one at 170 others 160", [170.0, 160.0]),
        ("150 150 148 155", [150.0, 150.0, 148.0, 155.0]),
        ("all of em 175 now", [175.0]),
        ("one fillet 140 the other 152", [140.0, 152.0]),
        ("164 166", [164.0, 166.0]),
    ],
)
def test_several_places_are_all_of_the_meat(text: str, cores: list[float]) -> None:
    """Beside a pit that was read; the coldest of them counts."""
    (found,) = read(text, context("cooking", POUNDS, last_core_c=60.0, last_pit_c=135.0))
    assert isinstance(found, Reading)
    assert [(t.value, t.probe) for t in found.temperatures] == [(core, Probe.CORE) for core in cores]


@pytest.mark.parametrize(
    ("text", "core"),
    [
        ("160 everyone here can i serve", 160.0),
        ("164 166 close enough?", 164.0),
        ("breast 150 thigh 155 running late guests here at 5", 150.0),
        ("158 f the kids are starving can we eat", 158.0),
        ("138 been stuck here a while whats going on", 138.0),
    ],
)
def test_what_was_read_is_kept_before_a_question(text: str, core: float) -> None:
    """Whatever is asked, or moved, behind it."""
    first, *rest = read(text, context("cooking", POUNDS, last_core_c=55.0, last_pit_c=135.0))
    assert isinstance(first, Reading)
    assert first.temperatures[0].value == core
    assert rest


@pytest.mark.parametrize(
    "text", ["165 for chicken right?", "158 the right temp?", "165 is the number right", "160 or 165 for chicken"]
)
def test_a_rule_that_is_asked_about_is_no_reading(text: str) -> None:
    """A core that nobody read would clear a bird."""
    found = read(text, context("cooking", POUNDS, last_core_c=60.0, last_pit_c=135.0))
    assert not any(isinstance(one, Reading) for one in found)


@pytest.mark.parametrize(
    "text",
    [
        "leftovers were out the whole game",
        "the carcass is still out",
        "turkey still out on the platter",
        "half the fish is still on the table",
        "the leftovers have been out all afternoon",
    ],
)
def test_nobody_is_away_who_leaves_the_leftovers_out(text: str) -> None:
    """«out» is said of the meat: no pause begins by it."""
    (found,) = read(text, context("stored", POUNDS))
    assert isinstance(found, Happened)
    assert found.what == "left_out"


def test_on_at_a_heat_is_the_meat_that_the_fire_waits_for() -> None:
    """«on at 275» tells both; before that is called for it is the pit alone."""
    waits = read("on at 275", context("drying", POUNDS, due_step="meat_on"))
    assert [type(one) for one in waits] == [StepDone, Reading]
    assert [type(one) for one in read("on at 275", context("drying", POUNDS, due_step="light"))] == [Reading]


@pytest.mark.parametrize(
    ("text", "method"), [("no cure, dry brine", "dry"), ("no cure just brine it", "brine"), ("no cure, dry", "dry")]
)
def test_a_dry_brine_is_dry(text: str, method: str) -> None:
    """Whatever word stands behind it."""
    assert read(text, context("waiting", POUNDS, asked="cure")) == [Change({"nitrite_target": 0.0, "method": method})]


@pytest.mark.parametrize("text", ["3 lb wings smoked", "dozen wings for saturday", "2 kg wings for sunday"])
def test_wings_are_a_chickens(text: str) -> None:
    """Not planned, and told so; no beef is offered for them."""
    (found,) = read(text, context("none", POUNDS))
    assert isinstance(found, Start)
    assert found.said["product"] == "chicken_pieces"


@pytest.mark.parametrize("phase", ["resting", "chilling", "stored"])
def test_pieces_that_are_counted_are_no_cold_core(phase: str) -> None:
    """«two breasts still on the side» is no core of 2 °C that would clear them."""
    (found,) = read("two breasts still on the side", context(phase, KILOS, last_core_c=74.0))
    assert found == Happened("left_out")


def test_a_core_beside_a_half_start_is_no_weight() -> None:
    """«breast 150 thigh 155», while the weight is asked for."""
    (found,) = read("breast 150 thigh 155", context("none", POUNDS, asked="mass", asked_of_start=True))
    assert isinstance(found, Reading)


@pytest.mark.parametrize(
    ("text", "values"),
    [
        ("the biggest is 163 the rest 168", [163.0, 168.0]),
        ("the big bird is at 150, the small one 158", [150.0, 158.0]),
        ("thickest 141 the rest 150", [141.0, 150.0]),
    ],
)
def test_pieces_by_their_size_are_read_each(text: str, values: list[float]) -> None:
    """All of them are cores; the coldest counts."""
    (found,) = read(text, FIRE)
    assert isinstance(found, Reading)
    assert [(t.value, t.probe) for t in found.temperatures] == [(value, Probe.CORE) for value in values]


@pytest.mark.parametrize("text", ["the biggest is 14 the rest 12 lb", "the big one is 63 mm thick"])
def test_a_size_in_its_unit_is_no_core(text: str) -> None:
    """A weight and a thickness stay what they are."""
    assert not any(isinstance(one, Reading) for one in read(text, FIRE))


@pytest.mark.parametrize("text", ["the rest in foil on the counter", "leftovers wrapped on the kitchen table"])
def test_what_is_left_over_and_covered_is_out_of_the_cold(text: str) -> None:
    """Foil keeps nothing cold."""
    assert read(text, context("resting", POUNDS)) == [Happened("left_out")]


@pytest.mark.parametrize("text", ["rest in foil on the counter", "the rest in foil in the fridge"])
def test_a_rest_in_foil_is_not_left_over(text: str) -> None:
    """Meat that rests, and what lies in the cold."""
    assert Happened("left_out") not in read(text, context("resting", POUNDS))
