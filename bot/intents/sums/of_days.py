"""What a line tells of days: how long something was kept, a day so many days on, a cure counted back from a meal."""

from typing import Final

from bot.intents.days import WEEKDAY, WEEKDAYS
from bot.intents.sums.told import Told
from core import patterns as re

_WEEKDAY: Final = re.compile(rf"\b{WEEKDAY}\b")
START_ASKED: Final = re.compile(
    r"\bwhen (?:do|should|must|can|would|shall) (?:i|we) (?:have to |need to )?(?:start|begin)\b"
    r"|\bwhen (?:do|should|must|can|would|shall) (?:i|we) (?:have to |need to )?get"
    r" (?:it )?(?:going|started|cracking)\b"
    r"|\b(?:last|latest) start|\bstart when\b|\bwhen (?:to )?start\b"
    r"|^(?=.*\b(?:by|for) ).*\bstart\W*$|\b(?:count|work)\w* (?:it )?back"
    r"|\bwhen (?:has|does|must|should|do|have) (?:it|i|we|the \w+) (?:(?:have|need|got) to )?(?:be|go|get it|put it)"
    r" (?:in|into)\b"
    r"|\b(?:by|for) (?=.*\bwhen (?:does|must|should|do i|shall) (?:\w+ ){1,3}(?:go|put it|get it|be) (?:in|into)\b)"
)
EATEN_AT: Final = re.compile(r"\b(?:eat(?:ing)?|dinner|lunch|supper|guests|serv(?:e|ed|ing)|sit down)\b")
DAY_NAMED: Final = re.compile(
    r"\b(?:today|tomorrow|yesterday|(?:mon|tues|wednes|thurs|fri|satur|sun)day|the \d{1,2}(?:st|nd|rd|th)"
    r"|(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]* \d{1,2}"
    r"|easter|christmas|xmas|thanksgiving|(?:tues?|weds|thurs?|fri)|(?:on|by|from|next|this|till|until|start|begin"
    r"|in) (?:mon|wed|sat|sun))\b"
)
_DATE_ASKED: Final = re.compile(
    r"\b(?:dates?|(?:which|what) day|from now|out when|out on|when (?:is|does) it (?:come )?out"
    r"|when (?:do|can|should) (?:i|we) (?:take|get|pull) it out|when is (?:the )?cook)\b"
)
_CURED_FOR: Final = re.compile(
    r"\b(?:(?:takes?|needs?|wants?)(?= \d+ days?)|cur(?:e|es|ed|ing)|brin(?:e|es|ed|ing)"
    r"|in the (?:bag|tub|bucket|salt|pickle))\b"
)
A_DAY: Final = 24.0  # h


def days_kept(line: Told) -> float | None:
    """How many days something has been kept: told, or from one day of the week to a later one."""
    told_ = [hours / 24.0 for hours in line.durations if hours >= 24.0]
    named = [WEEKDAYS[found[0][:3]] for found in _WEEKDAY.finditer(line.text)]
    if told_ or len(named) < 2:
        return next(iter(told_), None)
    return float((named[1] - named[0]) % 7 or 7)


def dated(line: Told) -> bool:
    """A product for a day that is named, and when to begin: how thick it is has to be asked."""
    return line.has("product") and bool(DAY_NAMED.search(line.text)) and bool(START_ASKED.search(line.text))


_UNTIL_WHEN: Final = re.compile(
    r"^(?!.*\b(?:fr[oe]ez|frozen|raw)).*\b(?:use by|eat (?:it |them )?by|good (?:till?|until|for)|(?:un)?till? when"
    r"|how long"
    r"|(?:what|which) (?:date|day)|last day|keeps? (?:till?|until)|expires?|sell by)\b"
)
_MADE_ON: Final = re.compile(r"\b(?:cooked|smoked|made|finished|(?:came|taken|took) (?:it )?off|sliced)\b")


def use_by_asked(text: str) -> bool:
    """The one day on which something was cooked, and until when it keeps: «cooked march 4, use by?»."""
    asked = _MADE_ON.search(text) and _UNTIL_WHEN.search(text)
    return bool(asked) and len(DAY_NAMED.findall(text)) == 1


_UNTIL: Final = re.compile(r"\bhow many (?:more )?(?:days|sleeps) (?:is it |are there )?(?:till?|until|to|before)\b")
_DAY_OF: Final = re.compile(r"\bday (\d{1,2}) (?:out )?of (\d{1,2})\b(?=.*\b(?:left|to go|more|remain\w*|out|when)\b)")
_AWAY: Final = re.compile(r"\b(?:im|i am|we are|were|be|go(?:ing)?) away\b")


def day_of(text: str) -> tuple[int, int] | None:
    """«day 5 of 8, how many to go»: the day and all of them."""
    found = _DAY_OF.search(text) if "day" in text else None
    return (int(found[1]), int(found[2])) if found and int(found[1]) <= int(found[2]) else None


def is_span(line: Told) -> bool:
    """So many days, or two days of the calendar; no age of what is in the fridge, and no days away."""
    if _AWAY.search(line.text):
        return False
    days = [hours for hours in line.durations if hours >= 24.0]
    named = len(DAY_NAMED.findall(line.text))
    if day_of(line.text) is not None:
        return True
    if named == 1 and _UNTIL.search(line.text):
        return True
    dated = named > 0 or bool(_DATE_ASKED.search(line.text))
    return ((len(days) == 1 and dated) or named > 1) and not (line.has("length") or line.has("meat"))


def counted_back(line: Told) -> bool:
    """So many days in a cure before a meal."""
    days = any(hours >= A_DAY for hours in line.durations)
    wanted = line.clocks or EATEN_AT.search(line.text) or START_ASKED.search(line.text)
    return days and bool(_CURED_FOR.search(line.text)) and bool(wanted)
