"""Sums of the calendar: the day so many days on, the days between two, and when a frozen piece goes into the fridge."""

import re
from dataclasses import replace
from datetime import date, datetime, time, timedelta
from math import ceil
from typing import Final

from bot import measures
from bot.conversation.sums_hot import Answer
from bot.conversation.sums_salt import KITCHEN, need
from bot.intents.clock import instant, wall_of
from bot.intents.days import find_day, the_nth
from bot.intents.sums.of_days import DAY_NAMED, day_of
from bot.intents.sums.told import Told
from bot.wording import sums_dates
from core.errors import Missing
from core.safety.thaw import thaw
from core.service.turn import Turn
from core.units import Days, Hours

A_DAY: Final = 24.0  # h
DAY_IN_HAND: Final = 1
LONG_GONE: Final = 60  # days; a date further back is that of the next year. Judgement
_IN_THE_CURE: Final = re.compile(
    r"\b(?:bag|brine|brining|cure|curing|tub|bucket|pickle|corning|salt)\b|\b(?:goes|went|put(?: it)?) in\b"
)
_WHEN: Final = re.compile(r"\b(?:when|(?:what|which) (?:day|date))\b")
_BEGUN: Final = re.compile(r"\b(?:start|begin|go|put|goes|do|in)\w*\b")
_ENOUGH: Final = re.compile(
    r"\b(?:enough|too (?:short|few|little|long|many|soon|early)|ok|okay|fine|do it|be done|good|cured|plenty|suffice)\b"
)
_STARTS: Final = re.compile(r"\b(?:start\w*|from|begin\w*|goes in|put it in|take it out)\b(?: (?!for\b)\w+){0,2}$")
_PAST: Final = re.compile(r"\b(?:went|put|been|since|started|did|was)\b")
_IN_WATER: Final = re.compile(r"\bwater\b(?!.*\b(?:or|and|vs) (?:the )?fridge\b)")
NOON: Final = time(12)
_WEEKDAY: Final = re.compile(r"(?:mon|tue|wed|thu|fri|sat|sun)")


def _out_on(turn: Turn, line: Told) -> Answer:
    """So many days from the day that is named, or from today; where two days are named, what is between them."""
    if (counted := day_of(line.text)) is not None:
        left = counted[1] - counted[0]
        out = wall_of(turn.now, turn.person.zone).date() + timedelta(days=left)
        return sums_dates.to_go(left, noon(turn, out), turn.person), (), {"days": left}
    spans = [m for m in measures.find(line.text) if m.kind == "duration"]
    bare = without(line.text, spans)
    first, after = _first_day(turn, bare)
    told = next((hours / A_DAY for hours in line.durations if hours >= A_DAY), None)
    second = find_day(after, first) if told is None else None
    today = wall_of(turn.now, turn.person.zone).date()
    if told is None and second is None:
        if first <= today:
            raise Missing("days")
        said = sums_dates.between(noon(turn, today), noon(turn, first), (first - today).days, turn.person)
        return said, (), {"days": (first - today).days}
    if second is not None:
        between = (second.days[0] - first).days
        return sums_dates.between(noon(turn, first), noon(turn, second.days[0]), between, turn.person), (), {}
    days = ceil(told or 0.0)
    out = first + timedelta(days=days)
    cured = bool(_IN_THE_CURE.search(line.text))
    said = sums_dates.out_on(noon(turn, first), noon(turn, out), days, (cured, turn.person))
    if first < today <= out:
        said = f"{sums_dates.still_to_go((out - today).days)}\n{said}"
    return said, (), {"out": out.isoformat()}


def without(text: str, spans: list[measures.Measure]) -> str:
    """A line without its times: «for 11 days» is no day ahead."""
    for m in spans:
        text = text[: m.start] + " " * (m.end - m.start) + text[m.end :]
    return re.sub(r"\b(?:in|for) +(?=$|[,;?.]|[a-z])", " ", text)


def _first_day(turn: Turn, text: str) -> tuple[date, str]:
    """The first day that is named, today where none is, and what stands behind it."""
    today = wall_of(turn.now, turn.person.zone).date()
    past = bool(_PAST.search(text))
    found = the_nth(text, today, past) or find_day(text, today, past)
    return (today, text) if found is None else (found.days[0], text[found.end :])


def cooked_on(turn: Turn, text: str) -> date | None:
    """The day on which something was cooked: the last such, where that is not long gone; else the next one."""
    today = wall_of(turn.now, turn.person.zone).date()
    gone = the_nth(text, today, True) or find_day(text, today, True)
    if gone is not None and (today - gone.days[0]).days <= LONG_GONE:
        return gone.days[0]
    ahead = find_day(text, today)
    return ahead.days[0] if ahead is not None else None


def comes_out(turn: Turn, line: Told, days: tuple[Days, Days | None]) -> str:
    """The day on which a cure comes out, where a line asks for it: by our days, and by the trade's rule behind them."""
    if not (_WHEN.search(line.text) and (_BEGUN.search(line.text) or DAY_NAMED.search(line.text))):
        return ""
    least, by_rule = days
    first, _ = _first_day(turn, without(line.text, [m for m in measures.find(line.text) if m.kind == "duration"]))
    outs = [first + timedelta(days=ceil(one)) for one in (least, by_rule) if one is not None and one >= least]
    return sums_dates.comes_out(noon(turn, first), [noon(turn, out) for out in outs], turn.person)


def is_enough(line: Told, days: tuple[Days, Days | None]) -> str:
    """Whether the days that a line tells are enough for its piece, where it asks: for the colour, for even salt."""
    told = next((hours / A_DAY for hours in line.durations if hours >= A_DAY), None)
    return sums_dates.is_enough(told, days) if told is not None and _ENOUGH.search(line.text) else ""


def wall_hour(turn: Turn, hour: Hours) -> datetime:
    """An hour of a day, up to the quarter after it."""
    minutes = ceil(hour * 4) * 15 % (24 * 60)
    return instant(wall_of(turn.now, turn.person.zone).date(), time(*divmod(minutes, 60)), turn.person.zone).at


def noon(turn: Turn, day: date) -> datetime:
    """The middle of a day on the clock of who asks: a day that is told by its name."""
    return instant(day, NOON, turn.person.zone).at


def _thaw(turn: Turn, line: Told) -> Answer:
    """How long it thaws; for a day that is named, when it goes into the fridge."""
    mass = need(line.heaviest, "meat")
    bird = line.species in ("turkey", "chicken", "duck", "fish")
    fridge, water = thaw(mass, "fridge", bird), thaw(mass, "water", bird)
    wet = bool(_IN_WATER.search(line.text))
    said, keys = sums_dates.thaw(mass, fridge, water, wet, turn.person), (fridge.source.key, *KITCHEN)
    if line.clocks and wet:
        soft = wall_hour(turn, line.clocks[0] + water.high)
        return f"{sums_dates.soft_at(soft, turn.person)}\n{said}", keys, {"high_h": water.high}
    body: dict[str, object] = {"high_h": fridge.high}
    today = wall_of(turn.now, turn.person.zone).date()
    bare = without(line.text, [m for m in measures.find(line.text) if m.kind == "duration"])
    day = find_day(bare, today)
    if day is not None and day.days[0] == today and _WEEKDAY.match(day.word):  # said of what is frozen: the next one
        day = replace(day, days=(today + timedelta(days=7),))
    if day is None or day.days[0] <= today:
        return said, keys, body
    wanted = re.search(rf"\b(?:for|by) {re.escape(day.word)}", line.text)  # «when do i take it out for thursday»
    if not wanted and _STARTS.search(bare[: day.start].strip()):
        soft = day.days[0] + timedelta(days=ceil(fridge.high / A_DAY))
        return f"{sums_dates.soft_by(noon(turn, day.days[0]), noon(turn, soft), turn.person)}\n{said}", keys, body
    before: Days = ceil(fridge.high / A_DAY) + DAY_IN_HAND
    begin = day.days[0] - timedelta(days=before)
    lead = sums_dates.thaw_by(noon(turn, begin), noon(turn, day.days[0]), begin < today, turn.person)
    return f"{lead}\n{said}", keys, body | {"begin": begin.isoformat()}


SUMS = {"out_on": _out_on, "thaw": _thaw}
