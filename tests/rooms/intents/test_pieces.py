"""Several pieces of one weight in a question: all of them count for a dose, the heaviest alone for the hours."""

from datetime import date

import pytest

from bot.intents.cures import mixture, wanted_dose
from bot.intents.days import the_nth
from bot.intents.rates import rate
from bot.intents.sums.told import told
from core.cure.dose import from_teaspoons


@pytest.mark.parametrize(
    ("line", "all_of_it", "heaviest"),
    [
        ("2 flats 3 kg each", 6.0, 3.0),
        ("3 chickens 1.5 kg each how long", 4.5, 1.5),
        ("2 x 1.5 kg", 3.0, 1.5),
        ("8 g cure for 2 flats 3 kg each", 6.0, 3.0),
        ("4 kg flat", 4.0, 4.0),
    ],
)
def test_all_and_the_heaviest(line: str, all_of_it: float, heaviest: float) -> None:
    """The weight of each times their number, and no other figure of the line is a number of pieces (derived)."""
    found = told(line)
    assert (found.meat, found.heaviest) == (pytest.approx(all_of_it), pytest.approx(heaviest))


def test_what_each_eater_gets_is_no_piece() -> None:
    """200 g for each of 6 people is a portion (derived)."""
    found = told("6 people 200 g each how much meat")
    assert (found.people, found.each, found.meat) == (6, pytest.approx(0.2), None)


def test_a_dose_is_for_all_of_them() -> None:
    """What is weighed, and what is judged, counts every piece (derived)."""
    wanted, mixed = wanted_dose("how much cure for 2 flats 3 kg each"), mixture("8 g cure on 2 flats 3 kg each")
    assert wanted is not None
    assert wanted.meat == pytest.approx(6.0)
    assert mixed is not None
    assert mixed.meat == pytest.approx(6.0)


@pytest.mark.parametrize(
    ("line", "of_a_kilo"),
    [("6 g cure for each kg", 0.006), ("3 g per lb", 0.003 / 0.45359237), ("2.5 g of pink salt per kilo", 0.0025)],
)
def test_curing_salt_by_the_kilo(line: str, of_a_kilo: float) -> None:
    """Grams for each kilo or pound are no dose for all of it: never judged on the whole weight (derived)."""
    assert rate(line) == (pytest.approx(of_a_kilo), pytest.approx(of_a_kilo))
    assert mixture(f"2 kg meat, {line}") is None


def test_a_spoon_by_the_kilo_is_a_range_and_plain_salt_is_no_rate() -> None:
    """A tablespoon is three teaspoons, each of a weight that is only known between two bounds (derived)."""
    assert rate("1 tbsp of pink salt per kilo") == tuple(map(pytest.approx, from_teaspoons(3.0)))
    assert rate("15 g salt per kilo") is None


@pytest.mark.parametrize(
    ("line", "past", "day"),
    [
        ("sunday the 4th", False, date(2027, 4, 4)),
        ("the 3rd", False, date(2027, 3, 3)),
        ("the 26th", True, date(2027, 2, 26)),
    ],
)
def test_a_day_of_some_month(line: str, past: bool, day: date) -> None:
    """By its day of the week where that is said, from 1 March 2027, a Monday (the calendar)."""
    found = the_nth(line, date(2027, 3, 1), past)
    assert found is not None
    assert found.days == (day,)
