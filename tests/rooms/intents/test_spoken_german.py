"""German numbers and hours of the clock, by the dial that Duden gives; words by their spelling there (from memory)."""

import pytest

from bot.intents.intents import Reading
from bot.intents.read import read
from bot.intents.rewriting.foreign_spelling import spelling
from bot.intents.rewriting.spoken_german import in_digits
from bot.intents.rewriting.tongue import english
from tests.talk_lines import KILOS, context


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("um halb 8", "um 7:30"),
        ("um halb eins", "um 12:30"),
        ("viertel 8", "7:15"),
        ("dreiviertel 7", "6:45"),
        ("dreiviertel eins", "12:45"),
        ("viertel nach 8", "8:15"),
        ("viertel vor 1", "12:45"),
        ("5 vor halb 8", "7:25"),
        ("10 nach halb 8", "7:40"),
        ("20 vor 8", "7:40"),
        ("kurz nach 8", "8"),
        ("11 uhr dreißig", "11:30"),
        ("um 8 abends", "um 8 pm"),
        ("abends um 8", "um 8 pm"),
        ("um 8 in der früh", "um 8 am"),
        ("um 3 nachts", "um 3 am"),
        ("um 10 nachts", "um 10 pm"),
        ("20 uhr abends", "um 20"),
        ("achtundfünfzig", "58"),
        ("hundertfuenfzehn grad", "115 grad"),
        ("zweieinhalb kilo", "2.5 kilo"),
        ("anderthalb kilo", "1.5 kilo"),
        ("4 komma 5 grad", "4.5 grad"),
        ("5 pfund rinderbrust", "2.5 kg rinderbrust"),
        ("ein pfund lachs", "0.5 kg lachs"),
    ],
)
def test_what_is_spoken_is_a_figure(said: str, meant: str) -> None:
    """The hour before the half, the quarter of the hour that runs, the decimal comma."""
    assert in_digits(said) == meant


@pytest.mark.parametrize(
    "figures",
    [
        "nach 8 stunden",
        "10 nach 8 stunden",
        "vor 5 grad",
        "halb 8 kg",
        "kern 20 nach 10",
        "3/4 kg",
        "um 8 grad",
        "20/110",
    ],
)
def test_a_figure_of_something_else_is_left(figures: str) -> None:
    """Spans, weights and temperatures are no hours."""
    assert in_digits(figures) == figures


def test_a_slip_is_mended_to_the_one_word_that_is_near() -> None:
    """Umlauts that are written out or left off, a letter too few or two swapped; not where another word is meant."""
    german = spelling(["gewendet", "kühlschrank", "grün"], ["wendet", "gesendet"])
    assert german.mended("gewnedet kuehlschrank kuhlschrank 3.5") == "gewendet kühlschrank kühlschrank 3.5"
    assert german.mended("gesendet wendet grun 8") == "gesendet wendet grun 8"


def test_no_slip_changes_a_number() -> None:
    """What is weighed or measured comes through as it was typed."""
    for line in ("kern 5o", "fuer 2.5 kg", "kuehlschrank 3.5 grad", "17.5 g poekelsalz"):
        assert [c for c in english(line, "de") if c.isdigit()] == [c for c in line if c.isdigit()]


def test_an_hour_is_no_reading() -> None:
    """«um 7» is the clock, «bei 7» and «auf 7» the thermometer."""
    assert english("quatsch, war um 7", "de") == "no, it was at 7 oclock"
    assert "oclock" not in english("kühlschrank bei 7 grad", "de") + english("um 7 grad wärmer", "de")


@pytest.mark.parametrize(
    ("line", "value"), [("kühlschrank 38 grad", 38.0), ("kühlschrank 5 grad", 5.0), ("lake 28 grad", 28.0)]
)
def test_a_degree_is_one_of_celsius_for_who_reads_so(line: str, value: float) -> None:
    """Hot as a fridge may be, its figure is never taken for one of Fahrenheit that would be cold; in °F it is asked."""
    phase = "waiting" if line.startswith("lake") else "curing"
    (found,) = read(line, context(phase, KILOS, language="de"))
    assert isinstance(found, Reading)
    assert [(t.value, t.unit) for t in found.temperatures] == [(value, "c")]
