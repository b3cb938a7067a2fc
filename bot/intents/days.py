"""Days as people name them: weekdays, holidays, «tomorrow», «13 march», ISO dates; never a guess between two."""

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

from bot.intents.holidays import HOLIDAYS, holiday
from core import patterns as re

WEEKDAYS: Final = {
    "mon": 0, "monday": 0, "montag": 0, "tue": 1, "tues": 1, "tuesday": 1, "dienstag": 1, "wed": 2, "weds": 2,
    "wednesday": 2, "mittwoch": 2, "thu": 3, "thur": 3, "thurs": 3, "thursday": 3, "donnerstag": 3, "fri": 4,
    "friday": 4, "freitag": 4, "sat": 5, "saturday": 5, "saterday": 5, "satruday": 5, "samstag": 5, "sun": 6,
    "sunday": 6, "sonntag": 6,
}  # fmt: skip
WEEKDAY: Final = r"(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?"  # as a part of a pattern
MONTH: Final = r"(?:jan|feb|mar|mär|apr|may|mai|jun|jul|aug|sep|oct|okt|nov|dec|dez)"  # its beginning
_RELATIVE: Final = {
    "today": 0, "heute": 0, "tonight": 0, "tonite": 0, "this morning": 0, "this mornin": 0, "this afternoon": 0,
    "this evening": 0, "heute morgen": 0, "heute früh": 0, "tomorrow": 1, "tomoro": 1, "tomorow": 1, "tommorow": 1,
    "tommorrow": 1, "tmrw": 1, "tmr": 1, "2moro": 1, "morgen": 1, "day after tomorrow": 2, "übermorgen": 2,
    "yesterday": -1, "yesterdays": -1, "yest": -1, "gestern": -1, "last night": -1, "last nite": -1,
    "gestern abend": -1, "day before yesterday": -2,
}  # fmt: skip
_MONTHS: Final = {
    "jan": 1, "january": 1, "januar": 1, "feb": 2, "february": 2, "februar": 2, "mar": 3, "march": 3, "märz": 3,
    "apr": 4, "april": 4, "may": 5, "mai": 5, "jun": 6, "june": 6, "juni": 6, "jul": 7, "july": 7, "juli": 7,
    "aug": 8, "august": 8, "sep": 9, "sept": 9, "september": 9, "oct": 10, "october": 10, "oktober": 10, "okt": 10,
    "nov": 11, "november": 11, "dec": 12, "december": 12, "dezember": 12, "dez": 12,
}  # fmt: skip
# fixed days (month, day); Easter and Thanksgiving move and are computed


def _either(words: object) -> str:
    return "|".join(sorted(map(re.escape, words), key=len, reverse=True))  # type: ignore[call-overload]


_COMING: Final = r"(?:^|(?<=the )|(?<=this )|(?<=on )|(?<=for )|(?<=to ))coming"  # «guests coming sunday» is any
_NAMED: Final = re.compile(
    rf"\b(?:(?P<relative>{_either(_RELATIVE)})|(?P<holiday>{_either(HOLIDAYS)})"
    rf"|(?:(?P<which>next|this|last|{_COMING}|kommenden|nächsten|letzten) )?(?P<weekday>{_either(WEEKDAYS)}))s?\b"
    r"(?P<after> (?:week|after next|in a week|next week)\b)?"
)
_ISO: Final = re.compile(r"(?<!\d)(?P<year>20\d\d)-(?P<month>\d\d?)-(?P<day>\d\d?)(?!\d)")
_DAY_MONTH: Final = re.compile(
    rf"(?<![\d.:/])(?P<day>\d\d?)(?:st|nd|rd|th"
    rf"|\.)? ?(?:of )?(?P<month>{_either(_MONTHS)})\b\.?(?: (?P<year>20\d\d)\b)?"
)
_MONTH_DAY: Final = re.compile(
    rf"\b(?P<month>{_either(_MONTHS)})\.? (?P<day>\d\d?)(?:st|nd|rd|th)?\b(?![:.]?\d)(?:,? (?P<year>20\d\d)\b)?"
)
_DOTTED: Final = re.compile(r"(?<![\d.])(?P<day>\d\d?)\.(?P<month>\d\d?)\.(?:(?P<year>20\d\d|\d\d)(?!\d))?(?![\d])")
_SLASHED: Final = re.compile(r"(?<![\d/.])(?<!\d )(?P<one>\d\d?)/(?P<two>\d\d?)(?:/(?P<year>20\d\d|\d\d))?(?![\d/])")
_AHEAD: Final = re.compile(
    r"\b(?:in|for) (?P<many>\d{1,2}|an?|a couple of|a fortnight|einer|einem)(?: (?P<unit>days?|weeks?|wochen?"
    r"|tagen?)(?: time)?)?\b(?! in the)"
)
_WEEKS_ON: Final = re.compile(  # «saturday in two weeks»: two after the next one
    rf"\b(?P<weekday>{_either(WEEKDAYS)}),? in (?P<many>\d{{1,2}}|an?|one|einer) (?:weeks?|wochen?)(?: time)?\b"
)
_WEEKEND: Final = re.compile(
    r"\b(?:(?:this|next|the|coming) )?(?:weekend|wochenende)\b|\bnext week\b"
    r"|\bsome ?time (?:next|this)\b"
)
_AFTER_WEEKDAY: Final = "|".join(rf"(?<=\b{day} )" for day in ("mon", "tue", "wed", "thu", "fri", "sat", "sun"))
_ORDINAL: Final = re.compile(
    r"(?:\b(?:(?:on|by|for|till|until) )?the |\b(?:on|by|for|till|until) (?=\d\d?(?:st|nd|rd|th)(?: at\b|$|[,;.!]))"
    rf"|(?<=day )|{_AFTER_WEEKDAY}"
    r"|(?<=[a-z] )(?=(?:[12]\d|3[01])(?:st|nd|rd|th)(?:$|[,;.!]| (?:at|noon|lunch|dinner|supper|evening|around"
    r"|\d))))(?P<day>\d\d?)(?:(?:st|nd|rd|th)\b|(?= at \d))"
)
_WEEKDAY_BEFORE: Final = re.compile(rf"\b(?P<weekday>{_either(WEEKDAYS)}),? (?:the |den )?$")
_WEEKDAY_AFTER: Final = re.compile(rf",? (?:(?:is )?an? |on )?(?P<weekday>{_either(WEEKDAYS)})\b")

_THIS_ONE: Final = 3  # days ahead within which a weekday is «this» one, and «next» the one after it

DAY_PATTERNS: Final = (_ISO, _DAY_MONTH, _MONTH_DAY, _ORDINAL, _NAMED)


@dataclass(frozen=True)
class Day:
    """A day as named and its place in the text: two days where day and month, or day of the week and date, disagree.

    `weekday` is set where only the day of the week was named, `which` holds a «next» or «last» before it.
    """

    days: tuple[date, ...]
    start: int
    end: int
    word: str = ""
    weekday: int | None = None
    which: str = ""


def find_day(text: str, today: date, past: bool = False, dates: bool = True) -> Day | None:
    """The first day named in a text, the nearest that fits: not before today, or not after it when `past`.

    Parameters
    ----------
    dates
        False where `3/4` or `12.3.` cannot be a date (a fraction, a decimal).
    """
    if feast := _feast_by_date(text, today, past):
        return feast
    patterns = (_ISO, _DAY_MONTH, _MONTH_DAY, _ORDINAL, *((_DOTTED, _SLASHED) if dates else ()))
    for pattern in patterns:
        if (found := pattern.search(text)) and (days := _dated(found, today, past)):
            return Day(_as_named(days, _weekday_beside(text, found)), found.start(), found.end(), found[0])
    if not past and (ahead := _weeks_on(text, today) or _ahead(text, today)):
        return ahead
    found = _NAMED.search(text)
    return _named(found, today, past) if found else None


def _feast_by_date(text: str, today: date, past: bool) -> Day | None:
    """«christmas ham for the 25th»: the day of the month is that of the feast."""
    feast, nth = _NAMED.search(text), _ORDINAL.search(text)
    named = _named(feast, today, past) if feast and feast["holiday"] and nth else None
    return named if named and nth and named.days[0].day == int(nth["day"]) else None


def the_nth(text: str, today: date, past: bool) -> Day | None:
    """«the 4th» by its month: the next one, the last one when `past`, with «sunday» the nearest that is such a day."""
    found = _ORDINAL.search(text)
    if found is None:
        return None
    weekday = _weekday_beside(text, found)
    months = (divmod(today.year * 12 + today.month - 1 + ahead, 12) for ahead in range(-12, 13))
    made = [day for year, month in months if (day := _make(year, month + 1, int(found["day"])))]
    if weekday is None:
        made = [day for day in made if (day <= today if past else day >= today)]
    fits = [day for day in made if weekday in (None, day.weekday())]
    nearest = min(fits, key=lambda day: abs(day - today), default=None)
    return Day((nearest,), found.start(), found.end(), found[0]) if nearest else None


def _weekday_beside(text: str, date_found: re.Match[str]) -> int | None:
    """The day of the week said with a date: «sunday 4 october», «4 october, a sunday»."""
    before = _WEEKDAY_BEFORE.search(text[: date_found.start()])
    beside = before or _WEEKDAY_AFTER.match(text[date_found.end() :])
    return WEEKDAYS[beside["weekday"]] if beside else None


def _as_named(days: tuple[date, ...], weekday: int | None) -> tuple[date, ...]:
    """The dates that are such a day of the week; where none is, one of the two is a slip, and both are kept."""
    if weekday is None:
        return days
    return tuple(day for day in days if day.weekday() == weekday) or (*days, nearest_weekday(weekday, days[0]))


def open_days(text: str) -> str:
    """A span of days of which none is meant, as typed («next weekend», «next week»), or ""."""
    found = _WEEKEND.search(text)
    return found[0] if found and not _NAMED.search(text) else ""


def of_the_weekend(text: str) -> tuple[str, ...]:
    """The text for either day of a weekend that is named; nothing where none is."""
    found = _WEEKEND.search(text)
    if found is None or not found[0].endswith(("weekend", "wochenende")):
        return ()
    which = "next " if found[0].startswith("next") else ""
    return tuple(text[: found.start()] + which + day + text[found.end() :] for day in ("saturday", "sunday"))


def _weeks_on(text: str, today: date) -> Day | None:
    """«saturday in two weeks», so many weeks after the saturday to come."""
    found = _WEEKS_ON.search(text)
    if found is None:
        return None
    weekday, many = WEEKDAYS[found["weekday"]], found["many"]
    ahead = (weekday - today.weekday()) % 7 + 7 * (int(many) if many.isdigit() else 1)
    return Day((today + timedelta(days=ahead),), found.start(), found.end(), found[0])


def _ahead(text: str, today: date) -> Day | None:
    """«in 10 days», «in two weeks», «in a fortnight»."""
    found = _AHEAD.search(text)
    if not found or (not found["unit"] and found["many"] != "a fortnight"):
        return None
    word = found["many"]
    many = int(word) if word.isdigit() else 2 if "couple" in word else 14 if "fortnight" in word else 1
    days = many * 7 if (found["unit"] or "").startswith("w") else many
    if found[0].startswith("for"):  # «cure it for 10 days» is no date
        return None
    return Day((today + timedelta(days=days),), found.start(), found.end(), found[0])


def nearest_weekday(weekday: int, around: date) -> date:
    """The day of that name nearest to `around`: within three days of it."""
    ahead = (weekday - around.weekday()) % 7
    return around + timedelta(days=ahead if ahead <= 3 else ahead - 7)


def _named(found: re.Match[str], today: date, past: bool) -> Day:
    at = (found.start(), found.end())
    if word := found["relative"]:
        return Day((today + timedelta(days=_RELATIVE[word]),), *at, word)
    if word := found["holiday"]:
        return Day((_holiday(word, today, past),), *at, word)
    word, which = found["weekday"], found["which"] or ""
    weekday = WEEKDAYS[word]
    if past or which in ("last", "letzten"):
        back = (today.weekday() - weekday) % 7
        back = back or (7 if which == "last" else 0)
        return Day((today - timedelta(days=back),), *at, word, weekday, which)
    ahead = (weekday - today.weekday()) % 7
    if found["after"] or (which in ("next", "nächsten") and ahead <= _THIS_ONE):
        ahead += 7  # «saturday week» is the one after the next; on a thursday «next saturday» is not in two days
    return Day((today + timedelta(days=ahead),), *at, word, weekday, which)


def _dated(found: re.Match[str], today: date, past: bool) -> tuple[date, ...]:
    parts = found.groupdict()
    if "one" in parts:  # 3/4 is March or April: both are kept, unless one of them is no date
        one, two = int(parts["one"]), int(parts["two"])
        orders = [(two, one)] if one == two else [(two, one), (one, two)]
    elif parts.get("month") is None:
        orders = [(0, int(parts["day"]))]
    else:
        word = parts["month"]
        orders = [(_MONTHS[word] if word in _MONTHS else int(word), int(parts["day"]))]
    made = (_date(parts.get("year"), month, day, today, past) for month, day in orders)
    return tuple(day for day in made if day)


def _date(year: str | None, month: int, day: int, today: date, past: bool) -> date | None:
    if year:
        return _make(int(year) + (2000 if len(year) == 2 else 0), month, day)
    if month == 0:  # «the 14th»: of this month or the next
        this = _make(today.year, today.month, day)
        if this and this >= today:
            return this
        later = today.replace(day=1) + timedelta(days=32)
        return _make(later.year, later.month, day)
    here = _make(today.year, month, day)
    if here and (here <= today if past else here >= today):
        return here
    return _make(today.year + (-1 if past else 1), month, day)


def _make(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


def _holiday(word: str, today: date, past: bool) -> date:
    years = (today.year, today.year - 1) if past else (today.year, today.year + 1)
    here = [holiday(word, year) for year in years]
    return here[0] if (here[0] <= today if past else here[0] >= today) else here[1]
