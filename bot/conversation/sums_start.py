"""Sums of the calendar: when to begin for a meal, and when to put it in to have it out on a day."""

import re
from datetime import date, datetime, timedelta
from math import ceil
from typing import Final

from bot import measures
from bot.conversation.sums_dates import noon, without
from bot.conversation.sums_hot import Answer, piece_of, setup_of
from bot.conversation.sums_salt import KITCHEN, need
from bot.conversation.sums_time import cure_days
from bot.intents.clock import wall_of
from bot.intents.days import find_day
from bot.intents.sums.told import Told
from bot.wording import sums_dates, sums_time
from core.cure.thumb import square_rule
from core.safety.thaw import thaw
from core.service.turn import Turn
from core.units import Days

AFTER_THE_CURE: Final[Days] = 3.0  # one to dry, one on the fire, one in the cold to set. Common practice
_OUT_ON: Final = re.compile(  # «out and rinsed on the 15th», «comes out on the 21st»
    r"\b(?:out|rinsed?)(?: (?:of|from) the (?:cure|brine|bag|tub|pickle))?(?: and (?:rinsed?|dr(?:y|ied)))?"
    r"(?: (?:on|by|for))?(?: the)?(?: (?:evening|morning|night) of)?(?: the)? "
    r"(?:\d{1,2}(?:st|nd|rd|th)\b|(?:mon|tues|wednes|thurs|fri|satur|sun)day\b)"
)


def _start_by(turn: Turn, line: Told) -> Answer:
    spans = [m for m in measures.find(line.text) if m.kind == "duration"]
    told_days = next((hours / 24.0 for hours in line.durations if hours >= 24.0), None)
    out = find_day(without(line.text, spans), wall_of(turn.now, turn.person.zone).date())
    if _OUT_ON.search(line.text) and out and told_days is None:
        return _out_by(turn, line, out.days[0])
    cure = cure_days(turn, line)[1] if told_days is None else told_days
    frozen = "frozen" in line.text or "freezer" in line.text
    thawing = thaw(need(line.meat, "meat"), "fridge").high / 24.0 if frozen else 0.0
    before = ceil(cure) + AFTER_THE_CURE + ceil(thawing)
    day = find_day(without(line.text, spans), wall_of(turn.now, turn.person.zone).date())
    body = {"days_before": before, "cure_days": cure}
    if day is None:
        return sums_time.days_before(before, cure, ceil(thawing)), KITCHEN, body
    counted = before, cure, ceil(thawing)
    if len(day.days) > 1:  # «sat the 18th», which is a monday: one of the two is a slip
        both = [_begin_for(turn, line, one, counted)[0] for one in sorted(day.days)]
        lead = sums_dates.at_odds([noon(turn, one) for one in sorted(day.days)], turn.person)
        return "\n".join([lead, *both]), KITCHEN, body
    said, late = _begin_for(turn, line, day.days[0], counted)
    return said, KITCHEN, body | {"late": late}


def _begin_for(turn: Turn, line: Told, day: date, counted: tuple[Days, Days, int]) -> tuple[str, bool]:
    """When to begin for a meal on a day, in words, and whether that is over."""
    before, cure, thawing = counted
    today = wall_of(turn.now, turn.person.zone).date()
    begin, meal = day - timedelta(days=before), noon(turn, day)
    told_days = next((hours / 24.0 for hours in line.durations if hours >= 24.0), None)
    by_rule = _surer_days(line) if told_days is None else None
    if by_rule is not None and by_rule > ceil(cure):
        sooner = day - timedelta(days=by_rule + AFTER_THE_CURE + thawing)
        if sooner >= today:
            begins = noon(turn, sooner), noon(turn, begin), meal
            return sums_time.begin_by_rule(begins, (by_rule, cure, thawing), turn.person), begin < today
        no_time = sums_time.no_time_for_the_rule(by_rule)
        return f"{_begin_on(turn, (begin, meal), counted)}\n{no_time}", begin < today
    return _begin_on(turn, (begin, meal), counted), begin < today


def _out_by(turn: Turn, line: Told, out: date) -> Answer:
    """The day to put it in, where the day is told on which it comes out of the cure: by both rules."""
    cure = ceil(cure_days(turn, line)[1])
    sure = max(cure, _surer_days(line) or cure)
    today = wall_of(turn.now, turn.person.zone).date()
    begins = out - timedelta(days=sure), out - timedelta(days=cure)
    days = noon(turn, begins[0]), noon(turn, begins[1]), noon(turn, out)
    said = sums_dates.out_by(days, (sure, cure), (begins[0] < today, begins[1] < today), turn.person)
    return said, KITCHEN, {"days_before": sure, "cure_days": cure}


def _begin_on(turn: Turn, days: tuple[date, datetime], counted: tuple[Days, Days, Days]) -> str:
    begin, meal = days
    late = begin < wall_of(turn.now, turn.person.zone).date()
    return sums_time.begin_on((noon(turn, begin), meal), counted, late, turn.person)


def _surer_days(line: Told) -> int | None:
    """The days in the cure by the trade's rule of the square; None for a piece that is injected. [d]"""
    return None if setup_of(line).method == "inject" else ceil(square_rule(piece_of(line)))


SUMS = {"start_by": _start_by}
