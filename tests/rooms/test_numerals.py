"""Number words, fraction signs and decimal commas as plain digits."""

import pytest

from bot.numerals import digits


@pytest.mark.parametrize(
    ("typed", "plain"),
    [
        ("one fifty eight", "158"),
        ("one fifty-eight", "158"),
        ("two oh three", "203"),
        ("one hundred and six", "106"),
        ("a hundred fifty", "a 150"),
        ("two hundred forty five", "245"),
        ("one fifty eight two forty five", "158 245"),
        ("seventy", "70"),
        ("twelve thirty", "12:30"),
        ("six point two five", "6.25"),
        ("point five", "point 5"),
        ("zero point five percent", "0.5 percent"),
        ("one kilo", "1 kilo"),
        ("skip that one", "skip that one"),
        ("wrong one, its the pit", "wrong one, its the pit"),
        ("one and a half kilos", "1.5 kilos"),
        ("2 and a quarter", "2.25"),
        ("3,4 kg", "3.4 kg"),
        ("3,400 g", "3400 g"),
        ("158,245", "158,245"),
        ("70,5", "70.5"),
        ("zwei kilo", "2 kilo"),
        ("oh no", "oh no"),
        ("hundred", "100"),
    ],
)
def test_numbers_become_digits(typed: str, plain: str) -> None:
    """What people say for a number is its digits; what is no number stays."""
    assert digits(typed).strip() == plain
