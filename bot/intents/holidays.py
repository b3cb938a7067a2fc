"""Feasts by their names, on which a meal may be: those of a date, and those that move."""

from collections.abc import Callable, Mapping
from datetime import date, timedelta
from typing import Final

_FIXED: Final = {
    "christmas eve": (12, 24), "xmas eve": (12, 24), "heiligabend": (12, 24), "christmas": (12, 25),
    "christmas day": (12, 25), "xmas": (12, 25), "xmas day": (12, 25), "weihnachten": (12, 25), "boxing day": (12, 26),
    "new years eve": (12, 31), "silvester": (12, 31), "new years day": (1, 1), "new years": (1, 1), "neujahr": (1, 1),
    "st pats": (3, 17), "st pattys": (3, 17), "st paddys": (3, 17), "st patricks": (3, 17), "st patricks day": (3, 17),
    "st pats day": (3, 17), "paddys day": (3, 17), "valentines": (2, 14), "valentines day": (2, 14),
    "4th of july": (7, 4), "fourth of july": (7, 4), "july 4th": (7, 4), "halloween": (10, 31),
    "crimbo": (12, 25), "chrimbo": (12, 25), "canada day": (7, 1), "nikolaus": (12, 6),
}  # fmt: skip


def holiday(word: str, year: int) -> date:
    """The day of a feast in a year."""
    if word in _FIXED:
        month, day = _FIXED[word]
        return date(year, month, day)
    return _MOVING[word](year)


def _thanksgiving(year: int) -> date:
    """The fourth Thursday of November, 5 U.S.C. 6103."""
    return _nth(year, 11, 3, 4)


def _nth(year: int, month: int, weekday: int, which: int) -> date:
    """The first, second … of a weekday in a month; a week begins on Monday with 0."""
    first = date(year, month, 1)
    return first + timedelta(days=(weekday - first.weekday()) % 7 + 7 * (which - 1))


def _easter(year: int) -> date:
    """Easter Sunday, Gregorian: the anonymous algorithm (Meeus, Astronomical Algorithms, 1991, ch. 8)."""
    a, b, c = year % 19, year // 100, year % 100
    h = (19 * a + b - b // 4 - (b - (b + 8) // 25 + 1) // 3 + 15) % 30
    k = (32 + 2 * (b % 4) + 2 * (c // 4) - h - c % 4) % 7
    m = (a + 11 * h + 22 * k) // 451
    month, day = divmod(h + k - 7 * m + 114, 31)
    return date(year, month, day + 1)


def _by_easter(days: int) -> Callable[[int], date]:
    return lambda year: _easter(year) + timedelta(days=days)


_MOVING: Final[Mapping[str, Callable[[int], date]]] = {
    **dict.fromkeys(("easter", "easter sunday", "ostern", "ostersonntag"), _easter),
    **dict.fromkeys(("good friday", "karfreitag"), _by_easter(-2)),
    **dict.fromkeys(("easter monday", "ostermontag"), _by_easter(1)),
    **dict.fromkeys(("pfingsten", "pfingstsonntag", "whitsun"), _by_easter(49)),
    **dict.fromkeys(("thanksgiving", "thanksgiving day", "turkey day"), _thanksgiving),
    "thanksgiving eve": lambda year: _thanksgiving(year) - timedelta(days=1),
    "black friday": lambda year: _thanksgiving(year) + timedelta(days=1),
    **dict.fromkeys(("labor day", "labour day"), lambda year: _nth(year, 9, 0, 1)),  # 5 U.S.C. 6103
    "memorial day": lambda year: date(year, 5, 31) - timedelta(days=date(year, 5, 31).weekday()),  # 5 U.S.C. 6103
    **dict.fromkeys(("fathers day", "father's day"), lambda year: _nth(year, 6, 6, 3)),  # 36 U.S.C. 109
}
HOLIDAYS: Final = (*_FIXED, *_MOVING)
