"""«half 8» is 7:30 to some and 8:30 to others: what a line says either way, and the question which hour is meant.

Whose clock hangs where one language says the former and another the latter is asked; to all others it is half past.
"""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from itertools import zip_longest
from typing import Final
from zoneinfo import ZoneInfo

from bot.intents.context import Context
from bot.intents.intents import Intent, Question, Start, Unclear
from bot.intents.questions import is_question
from bot.intents.small import words
from bot.intents.zones import country_of
from core import patterns as re

HALF_HOUR: Final = re.compile(
    r"\b(?:half|halb) (?P<hour>1[0-2]|[1-9])\b(?! ?(?:kg|lb|kilo|pound|inch|cup|litre|liter|tsp|hour|min))"
)


_OF_THIS_HOUR: Final = re.compile(
    r"\b(?:(?P<by>since|at|from|around|about|by) |(?<=\bme ))(?:a )?(?P<minutes>quarter|half|\d{1,2}) (?P<side>to"
    r"|past)(?=$|[,;.!])"
)
_MINUTES: Final = {"quarter": 15, "half": 30}
_CALLED: Final = re.compile(
    r"\b(?:remind|ping|call|nudge|text|buzz|ask|wake) me\b|\b(?:ask|try|check|ping|remind|call) (?:back|again)\b"
)
_A_SHARE: Final = re.compile(r"\b(?:in|and an?|by|the|other|a|of)$")  # «cut it in half 2 lb each»
# lands whose own «half eight» is 7:30, by the Unicode CLDR's code of the territory
_HALF_BEFORE: Final = words("DE AT CH LI LU NL BE DK NO SE FI IS EE LV LT PL CZ SK HU SI HR RU UA")


def half_past(plain: str, context: Context) -> str:
    """«half 8» as half past, of whoever speaks English and lives where nobody means 7:30 by it."""
    return half_past_there(plain, context.language, context.home_zone or context.zone)


def half_past_there(plain: str, language: str, zone: str) -> str:
    """The same of whoever speaks a language and lives in a zone."""
    half = HALF_HOUR.search(plain)
    if half is None or language != "en" or country_of(zone) in _HALF_BEFORE:
        return plain
    if _A_SHARE.search(plain[: half.start()].rstrip()):
        return plain
    return half_past_there(f"{plain[: half.start()]}{half['hour']}.30 oclock{plain[half.end() :]}", language, zone)


def of_this_hour(plain: str, context: Context) -> str:
    """«on since quarter to»: no hour was said, so it is the latest such moment before now, or the next one by then."""
    found = _OF_THIS_HOUR.search(plain)
    if found is None:
        return plain
    minutes = _MINUTES.get(found["minutes"]) or int(found["minutes"])
    if not 0 < minutes < 60:
        return plain
    local = context.now.astimezone(ZoneInfo(context.zone))
    at = local.replace(minute=minutes if found["side"] == "past" else 60 - minutes)
    ahead = found["by"] == "by" or bool(_CALLED.search(plain[: found.start()]))
    at += (
        timedelta(hours=1) if ahead and at < local else timedelta(hours=-1) if not ahead and at > local else timedelta()
    )
    return f"{plain[: found.start()]}{found['by'] or 'at'} {at:%H:%M}{plain[found.end() :]}"


def either_way(half: re.Match[str], shown: str, read: Callable[[str], list[Intent]]) -> list[Intent]:
    """What a line with such an hour says, by `read` of it with the one hour and the other.

    What is the same both ways stands; where the ways part, each is offered.
    """
    plain = half.string
    if HALF_HOUR.search(plain, half.end()):
        return [Unclear("number", shown)]
    hour = int(half["hour"])
    hours = (f"{(hour - 1) or 12}.30 oclock", f"{hour}.30 oclock")
    one, two = (read(plain[: half.start()] + h + plain[half.end() :]) for h in hours)
    if all(isinstance(way[0], Start) for way in (one, two)):
        return [_without_deadline(one[0], half[0])]
    parted = [(a, b) for a, b in zip_longest(one, two) if a != b]
    options = tuple(way for pair in parted for way in pair if way is not None)
    if not parted or len(parted) > 1 or any(isinstance(option, Question | Unclear) for option in options):
        return [Question(shown)] if is_question(plain) else [Unclear("half_hour", half[0])]
    same = [intent for intent in one if intent in two]
    return [*same, Unclear("half_hour", half[0], options)]


def _without_deadline(start: Intent, typed: str) -> Intent:
    """A start whose meal has an hour that may be two: the rest is kept, the hour is asked."""
    if not isinstance(start, Start):
        return start
    said = {name: value for name, value in start.said.items() if name != "deadline"}
    return replace(start, said=said, unclear=(*start.unclear, f"deadline:{typed}"))
