"""How long something lasted at most, by what a cook says of it: the longest that the words allow, or nothing at all."""

from datetime import datetime, time, timedelta
from typing import Any, Final

from bot.intents import spans, when
from bot.intents.clock import instant, wall_of
from bot.intents.context import Context
from core import patterns as re
from core.units import Hours

_LOOSE: Final = re.compile(
    r"\b(?:overnight|all (?:night|day)|the whole (?:night|day)|hours and hours|ages|for hours|several hours"
    r"|on and off|off and on|(?:hours?|h|min(?:ute)?s?|days?),? (?:each )?(?:twice|(?:\d|several|a few|many) times)"
    r"|(?:twice|(?:\d|several|a few|many) times) (?:for )?(?:\d|an|a|half))\b"
)
_MORE_THAN: Final = re.compile(
    r"(?<!no )(?<!not )(?<!never )"
    r"\b(?:over(?= (?:an?|half|\d))|more than|at least|longer than|minimum|min\.|or more|or longer|maybe more"
    r"|perhaps more)\b|\d ?\+|\bhours? plus\b(?! (?:\d|an?|half)\b)"
)
_LONE_UNIT: Final = re.compile(r"(?:^|(?<=\bor )|(?<=\bmaybe ))(hour|day)\b")  # «hour or two», «half an hour or hour»
_OR_TWO: Final = re.compile(  # «an hour or two» is two at most
    r"\b(hours?|h|days?|min(?:ute)?s?)\b,? (?:(?:or|to|maybe|perhaps|even) )+"
    r"(2|two|3|three|4|four|5|five|6|six)\b(?! ?(?:m|h|d)\w*\b)"
)
_HOUR: Final = r"(?:\d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?|noon|midday|midnight)"
_NEAR: Final = r"(?:about |around |roughly |maybe |like |at )?"
_OF_DAY: Final = (
    r"(?: (?:last night|at night|yesterday|today|in the (?:morning|afternoon|evening|night)|this morning))?"
)
_FROM_TO: Final = re.compile(
    rf"\b(?:from|between) {_NEAR}(?P<a>{_HOUR}){_OF_DAY} ?(?:to|until|till?|and|-) ?{_NEAR}(?P<b>{_HOUR})\b"
)
# «1 till 5», «14:00-16:30»; «3 to 5» may be degrees
_TILL: Final = re.compile(
    rf"\b(?P<a>{_HOUR}) (?:until|till?) {_NEAR}(?P<b>{_HOUR})\b"
    r"|\b(?P<c>\d{1,2}(?:[:.]\d\d| ?[ap]m)) ?(?:-|to) ?(?P<d>\d{1,2}(?:[:.]\d\d| ?[ap]m))\b"
)
OUT_AND_BACK: Final = re.compile(
    rf"\b(?:out|off|down|cut|failed|died|gone) (?:at|about|around|since|from) {_NEAR}(?P<a>{_HOUR})\b.{{0,24}}"
    rf"\b(?:back|on|restored|returned)(?: on| up)?(?: again)? (?:at|about|around|by) {_NEAR}(?P<b>{_HOUR})\b"
)
_DAYS_AGO: Final = re.compile(r"\b(?:yesterday|(?:mon|tues|wednes|thurs|fri|satur|sun)day)\b")
_TIL_THEN: Final = re.compile(r",? ?\b(?:to|until|till?|up to) .+")
TIL_NOW: Final = re.compile(r",? ?\b(?:to|until|till?|up to) (?:just |right )?now\b")
SINCE: Final = re.compile(r"\b(?:since|from)\b (?P<when>.+)")
_EVENING: Final = re.compile(r"\b(?:night|nite|evening|tonight|tonite)\b")
_SPREAD: Final = timedelta(hours=6)  # so much earlier than its usual hour an evening may begin. Judgement
_LEAST: Final[Hours] = 0.1  # less is an hour that is still to come, or a slip


def told(text: str, context: Context) -> dict[str, Any]:
    """How long at most; None where only «overnight» or «more than» is known, nothing where it is not told. [h]"""
    text = _OR_TWO.sub(r"\1 or \2 \1", _LONE_UNIT.sub(r"1 \1", text))
    if _LOOSE.search(text) or longer(text):
        return {"hours": None}
    if lasted := spans.longest(text) or _between(text, context):
        return {"hours": _hours(lasted)}
    began = by_clock(text, context)
    return {"hours": began[0]} if len(began) == 1 else {}


def plainly(text: str) -> Hours | None:
    """The longest time that is told, where no more can be meant: not of «over 2 hours» or «an hour ago». [h]"""
    lasted = None if _LOOSE.search(text) or longer(text) or "ago" in text.split() else spans.longest(text)
    return None if lasted is None else _hours(lasted)


def longer(text: str) -> bool:
    """Whether it lasted longer than what is told: «over 2 hours», «3+ days»."""
    return bool(_MORE_THAN.search(text) and (spans.longest(text) or "+" in text))


def by_clock(text: str, context: Context) -> tuple[Hours, ...]:
    """«since 2am», as `since` gives it; nothing where no time is told since when it was so. [h]"""
    found = SINCE.search((_TIL_THEN if _DAYS_AGO.search(text) else TIL_NOW).sub("", text))
    return since(found["when"].partition(",")[0], context) if found else ()


def since(words: str, context: Context) -> tuple[Hours, ...]:
    """How long ago a time was, the longest that its words allow; both, where an hour has no half of the day. [h]"""
    lasted = spans.SPAN.match(words) and not (longer(words) or _OR_TWO.search(words))  # «since 2 hours»: no two o'clock
    said = when.past(f"since {words}" if lasted else f"at {words}" if words[:1].isdigit() else words, context)
    if said is None:
        return ()
    begins = (said.at, *said.others) if said.hour_said else (_earliest(said.at, words, context),)
    lasted = tuple(_hours(context.now - at) for at in begins)
    return lasted if min(lasted) > _LEAST else ()


def _earliest(at: datetime, words: str, context: Context) -> datetime:
    """A part of the day is no hour: an evening begins in the afternoon, a morning or a day at midnight."""
    if _EVENING.search(words):
        return at - _SPREAD
    return instant(wall_of(at, context.zone).date(), time(), context.zone).at


def _between(text: str, context: Context) -> timedelta | None:
    """«from 2 to 5»: by the hours of the clock alone; from another day on it may be longer than they tell."""
    if not (ends := _both_ends(text)) or TIL_NOW.search(text) or _DAYS_AGO.search(text):
        return None
    first, last = (when.past(f"at {end}", context) for end in ends)
    return None if first is None or last is None else (last.at - first.at) % timedelta(hours=24)


def _both_ends(text: str) -> tuple[str, str] | None:
    """The two hours of the clock between which something lasted, as they were typed."""
    for words in (_FROM_TO, OUT_AND_BACK, _TILL):
        if found := words.search(text):
            said = found.groupdict()
            return (said["a"], said["b"]) if said["a"] else (said["c"], said["d"])
    return None


def _hours(lasted: timedelta) -> Hours:
    return round(lasted.total_seconds() / 3600, 4)
