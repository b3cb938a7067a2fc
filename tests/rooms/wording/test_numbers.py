"""Numbers as a person reads them: the right digits, rounded to no unsafe side, in their units and zone."""

from datetime import UTC, datetime, timedelta

import pytest

from bot.wording import numbers
from core.person import Person, Units
from core.plan.steps import TimeBand

METRIC = Person("ida", zone="Europe/Vienna")
CUSTOMARY = Person("bo", zone="America/Chicago", units=Units("lb", "in", "f"))
NOON = datetime(2027, 3, 1, 12, 7, tzinfo=UTC)


@pytest.mark.parametrize(
    ("value", "digits", "shown"),
    [
        (0.1, 0, "10 %"),
        (0.2, 0, "20 %"),
        (0.0625, 2, "6.25 %"),
        (0.006, 2, "0.6 %"),
        (0.02, 2, "2 %"),
        (1.0, 0, "100 %"),
    ],
)
def test_a_share_keeps_its_zeros(value: float, digits: int, shown: str) -> None:
    """Ten per cent is not one; zeros go only behind a point."""
    assert numbers.percent(value, digits) == shown


@pytest.mark.parametrize(("days", "shown"), [(2.01, "2.5 days"), (2.5, "2.5 days"), (1.0, "1 day"), (6.51, "7 days")])
def test_days_in_the_cure_are_rounded_up(days: float, shown: str) -> None:
    """A cure that is told shorter than it has to be leaves the middle grey."""
    assert numbers.days(days) == shown


def test_a_dose_is_in_grams_for_everybody() -> None:
    """Tenths where they matter."""
    assert (numbers.grams(0.01187), numbers.grams(0.1734)) == ("11.9 g", "173 g")


def test_masses_and_lengths_are_in_a_person_s_units() -> None:
    """Kilos and millimetres, or pounds and inches."""
    assert (numbers.mass(3.2, METRIC), numbers.mass(3.2, CUSTOMARY)) == ("3.2 kg", "7.1 lb")
    assert (numbers.length(0.048, METRIC), numbers.length(0.048, CUSTOMARY)) == ("48 mm", "1.9 in")


def test_a_limit_is_told_in_both_scales() -> None:
    """The rules are printed in both, and the person's own comes first."""
    assert numbers.both(60.0, METRIC) == "60 °C (140 °F)"
    assert numbers.both(60.0, CUSTOMARY) == "140 °F (60 °C)"


def test_a_band_of_time_is_widened_to_the_quarter() -> None:
    """Early down, late up: an estimate is not known to the minute."""
    band = TimeBand(NOON, NOON + timedelta(hours=2), NOON + timedelta(hours=4))
    assert numbers.time_band(band, METRIC, NOON) == "about 15:00 (13:00 to 17:15)"


def test_hours_are_those_of_the_person_s_wall() -> None:
    """The same moment, on two walls."""
    assert (numbers.clock(NOON, METRIC), numbers.clock(NOON, CUSTOMARY)) == ("13:07", "06:07")
    assert numbers.when(NOON + timedelta(days=1), METRIC, NOON) == "tomorrow 13:07"


def test_who_reads_in_fahrenheit_has_it_in_front() -> None:
    """Texts that print both units: the person's own leads, spans as well; other texts stay as they are."""
    text = "54 to 26 °C (130 to 80 °F) in 1.5 h, 4 °C (40 °F) 5 h later; frozen at -20 °C (-4 °F)."
    assert numbers.own_first(text, CUSTOMARY) == (
        "130 to 80 °F (54 to 26 °C) in 1.5 h, 40 °F (4 °C) 5 h later; frozen at -4 °F (-20 °C)."
    )
    assert numbers.own_first(text, METRIC) == text


@pytest.mark.parametrize(
    ("fahrenheit", "told"),
    [
        (80.0, "26 °C (80 °F)"),
        (70.0, "21 °C (70 °F)"),
        (45.0, "7 °C (45 °F)"),
        (41.0, "5 °C (41 °F)"),
        (40.0, "4 °C (40 °F)"),
    ],
)
def test_a_limit_to_fall_to_is_never_told_above_itself(fahrenheit: float, told: str) -> None:
    """A cook who reads the whole degree that was told has reached the corner of the rule."""
    celsius = (fahrenheit - 32.0) / 1.8
    assert numbers.at_most(celsius, Person("a")) == told
    assert float(told.split()[0]) <= celsius + 1e-9


@pytest.mark.parametrize(
    ("fahrenheit", "told"),
    [
        (130.0, "55 °C (130 °F)"),
        (140.0, "60 °C (140 °F)"),
        (145.0, "63 °C (145 °F)"),
        (160.0, "72 °C (160 °F)"),
        (165.0, "74 °C (165 °F)"),
    ],
)
def test_a_limit_to_rise_to_is_never_told_below_itself(fahrenheit: float, told: str) -> None:
    """A cook who reads the whole degree that was told is over the line: 54 °C are 129.2 °F."""
    celsius = (fahrenheit - 32.0) / 1.8
    assert numbers.at_least(celsius, Person("a")) == told
    assert float(told.split()[0]) >= celsius - 1e-9


@pytest.mark.parametrize(
    ("kilos", "down", "up"),
    [
        (0.00355, "3.5 g", "3.6 g"),
        (0.0852, "85.2 g", "85.2 g"),
        (0.10397, "103 g", "104 g"),
        (0.1032, "103 g", "104 g"),
    ],
)
def test_a_dose_is_rounded_to_the_safe_side(kilos: float, down: str, up: str) -> None:
    """What may be added never goes over, what may be in is never shown as less; from 100 g on by the gram."""
    assert (numbers.grams_down(kilos), numbers.grams_up(kilos)) == (down, up)
