"""«nearly 165», «over 44»: on the safe side the number counts, on the other it is asked for."""

import pytest

from bot.intents.intents import Happened, Reading, Unclear
from bot.intents.read import read
from core.batch.events import Probe
from core.person import Units
from tests.talk_lines import KILOS, POUNDS, context


def _read(line: str, phase: str, units: Units) -> tuple[list[tuple[float, Probe | None]], bool]:
    """The readings of a line, and whether a number is asked for."""
    found = read(line, context(phase, units))
    readings = [(t.value, t.probe) for one in found if isinstance(one, Reading) for t in one.temperatures]
    return readings, any(isinstance(one, Unclear) and one.why == "bound" for one in found)


@pytest.mark.parametrize(
    ("line", "phase", "probe", "value"),
    [
        ("core over 160", "cooking", Probe.CORE, 160.0),
        ("core at least 165", "cooking", Probe.CORE, 165.0),
        ("core under 40", "chilling", Probe.CORE, 40.0),
        ("core below 40 f now", "chilling", Probe.CORE, 40.0),
        ("fridge under 40", "curing", Probe.FRIDGE, 40.0),
        ("fridge is nearly 41", "curing", Probe.FRIDGE, 41.0),
        ("pit over 250", "cooking", Probe.PIT, 250.0),
    ],
)
def test_a_bound_on_the_safe_side_counts_as_its_number(line: str, phase: str, probe: Probe, value: float) -> None:
    """More heat in what cooks, less in what cools or is kept cold."""
    assert _read(line, phase, POUNDS) == ([(value, probe)], False)


@pytest.mark.parametrize(
    ("line", "phase"),
    [
        ("core nearly 165", "cooking"),
        ("it hit almost 165", "cooking"),
        ("pulled at almost 165", "cooking"),
        ("wrapped at nearly 160", "cooking"),
        ("core just under 165", "cooking"),
        ("off at just under 160", "chilling"),
        ("core over 80", "chilling"),
        ("core nearly 40", "chilling"),
        ("core still above 80 f", "chilling"),
        ("fridge is over 44", "curing"),
        ("flipped, fridge over 41", "curing"),
        ("brine above 40", "curing"),
    ],
)
def test_a_bound_on_the_unsafe_side_is_asked_for(line: str, phase: str) -> None:
    """«nearly 165» of a bird was kept as 165, «over 44» of a fridge as 44, which its rule mends."""
    assert _read(line, phase, POUNDS) == ([], True)


@pytest.mark.parametrize(
    ("line", "phase", "read_as"),
    [
        ("kern fast 74", "cooking", []),
        ("kern über 74", "cooking", [(74.0, Probe.CORE)]),
        ("kern knapp über 26", "chilling", []),
        ("kern unter 4 grad", "chilling", [(4.0, Probe.CORE)]),
        ("kühlschrank über 7", "curing", []),
    ],
)
def test_german_bounds(line: str, phase: str, read_as: list[tuple[float, Probe]]) -> None:
    """The same in German."""
    assert _read(line, phase, KILOS)[0] == read_as


@pytest.mark.parametrize(
    ("line", "asked", "fact"),
    [
        ("above 44 f for 3 hours", "happened_warm_fridge", "room_c"),
        ("core over 40 f", "happened_left_out", "core_c"),
        ("core over 40 f", "happened_power_cut", "core_c"),
    ],
)
def test_what_was_warmer_than_a_number_is_nothing_that_is_known(line: str, asked: str, fact: str) -> None:
    """«core over 40 f» after a power cut was taken for a core of 40 °F, which is cold enough."""
    (told,) = read(line, context("curing", POUNDS, asked=asked))
    assert isinstance(told, Happened)
    assert told.facts[fact] is None


def test_what_lay_out_is_as_warm_as_its_core_and_not_its_room() -> None:
    """«left out, core over 40 f» told of a room of 40 °F."""
    (told,) = read("left out, core over 40 f", context("curing", POUNDS))
    assert isinstance(told, Happened)
    assert "room_c" not in told.facts


@pytest.mark.parametrize(
    ("line", "phase"),
    [
        ("core is probably about 165", "cooking"),
        ("i think its 165", "cooking"),
        ("core 165 i think", "cooking"),
        ("no thermometer but core feels like 165", "cooking"),
        ("core should be 165 by now", "cooking"),
        ("fridge is probably 38", "curing"),
        ("fridge usually 38", "curing"),
        ("fridge goes down to 37 at night", "curing"),
        ("fridge should be 37", "curing"),
        ("165 but the thermometer reads 10 high", "cooking"),
        ("didnt check but fridge is 38", "curing"),
        ("kern vermutlich 74", "cooking"),
        ("ich glaube der kern hat 74", "cooking"),
    ],
)
def test_a_guess_is_asked_about(line: str, phase: str) -> None:
    """«core is probably 165» was a core of 165 °F; a tap says that it was read."""
    found = read(line, context(phase, KILOS if "kern" in line else POUNDS))
    assert not any(isinstance(one, Reading) for one in found)
    assert any(isinstance(one, Unclear) and one.why == "guessed" for one in found), found


@pytest.mark.parametrize(
    ("line", "phase"),
    [
        ("core 150, i think it needs more fuel", "cooking"),
        ("fridge 38 i checked", "curing"),
        ("165ish", "cooking"),
        ("203 off", "cooking"),  # it came off
        ("core 203 off the smoker", "cooking"),
    ],
)
def test_what_was_read_is_no_guess(line: str, phase: str) -> None:
    """A guess about something else leaves the number alone."""
    assert any(isinstance(one, Reading) for one in read(line, context(phase, POUNDS)))


@pytest.mark.parametrize(
    "line",
    [
        "outside of the meat is 165",
        "ir gun says 165",
        "skin is at 165",
        "165 on the surface",
        "probe was touching the bone at 165",
        "165 near the bone",
    ],
)
def test_what_is_not_the_middle_is_no_core(line: str) -> None:
    """«outside of the meat is 165» was kept as a core of 165 °F."""
    (asked,) = read(line, context("cooking", POUNDS))
    assert isinstance(asked, Unclear)
    assert (asked.why, asked.options) == ("not_core", ())


@pytest.mark.parametrize("line", ["core 165 outside its cold", "core 150, bone in", "core 150 skin looks good"])
def test_a_core_beside_other_words_is_kept(line: str) -> None:
    """The skin and the weather take nothing from a core."""
    assert any(isinstance(one, Reading) for one in read(line, context("cooking", POUNDS)))
