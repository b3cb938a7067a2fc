"""Hours of a day in which nobody is there: «at work tomorrow 7 to 5», «on shift 7pm to 7am», «out sunday 10 to 3»."""

from datetime import UTC, date, datetime, time, timedelta
from typing import Final
from zoneinfo import ZoneInfo

from bot.intents.clock import instant
from bot.intents.context import Context
from bot.intents.days import DAY_PATTERNS, find_day
from bot.intents.intents import Pause
from bot.intents.small import SMALL, content
from core import patterns as re

_ABSENT: Final = re.compile(
    r"\b(?:at (?:work|school|college|church|uni|the (?!fridge|fire|pit|smoker|grill)\w+|(?:my|our|an?) \w+"
    r"|\w+s)|work(?:ing)?|(?:(?:night|day|early|late) )?shift|out|away|gone|busy|off|driving|travell?ing|flying"
    r"|(?:nobody|no one|noone)(?: is|s| will be)? (?:home|here|in|around|at home)|not (?:home|here|around|in|at home)"
    r"|in (?:an? )?(?:meetings?|class|court|hospital|town)|meetings?|class(?:es)?"
    r"|appointments?|babysitting|fishing|hunting|hiking|shopping)\b"
)
_HOURS: Final = re.compile(
    r"\b(?:from |between )?(?P<from>1[0-2]|[1-9]|1[3-9](?=[:.])|2[0-3](?=[:.]))(?:[:.](?P<from_m>[0-5]\d))? ?"
    r"(?P<from_half>[ap]m)? ?(?:to|-|until|till?|and) ?(?P<to>1[0-2]|[1-9]|1[3-9]|2[0-3])(?:[:.](?P<to_m>[0-5]\d))? ?"
    r"(?P<to_half>[ap]m)?(?![\d/:°%]| ?(?:f|c|deg\w*|lbs?|kg|people|guests|days?|nights?|weeks?|h|hrs?|hours?|m|mins?"
    r"|minutes?|in|inch\w*|mm|cm|jan\w*|feb\w*|mar\w*|apr\w*|may|june?|july?|aug\w*|sep\w*|oct\w*|nov\w*|dec\w*)\b)"
)
_OF_A_THING: Final = re.compile(
    r"\b(?:fridge|pit|smoker|grill|cooker|oven|fire|brine|bag|meat|brisket|flat|point|core|power|cure|meal|dinner|lunch"
    r"|supper|eat\w*|guests?)\b"
)
_OFTEN: Final = re.compile(r"\b(?:every|daily|weekdays?|usually|always|normally|each|all week)\b|\bmon\w* to fri")
_LATE: Final = re.compile(r"\b(?:tonight|evening|night)\b")
_ABSENT_SURELY: Final = re.compile(  # «out saturday», «off tomorrow» may be the meat
    r"\b(?:nobody|no one|noone|im|i am|ill be|we are|were|well be|not|all|whole|away|gone|busy|work\w*|travell?ing"
    r"|flying"
    r"|driving)\b"
)
_TO_AN_END: Final = re.compile(
    r"\b(?:until|till?|for|from|since|back|night|tonight|evening|morning|afternoon|noon|has"
    r"|takes|does)\b|\?"
)
_WORD: Final = re.compile(r"[^\W\d_]{2,}")
_FIRST_OF_THE_MORNING: Final = 6  # an hour without its half from then to eleven begins a day. Habit, no source
_HALF_DAY: Final = 12


def read_away_hours(text: str, context: Context) -> Pause | None:
    """Somebody who is away from one hour to another of a day, and says no more than that."""
    if context.phase == "none" or not _ABSENT.search(text) or _OFTEN.search(text) or _OF_A_THING.search(text):
        return None
    found = _HOURS.search(text)
    if found is None:
        return _all_day(text, context)
    rest = _ABSENT.sub(" ", f"{text[: found.start()]} {text[found.end() :]}")
    local = context.now.astimezone(ZoneInfo(context.zone))
    said = find_day(rest, local.date())
    for words in DAY_PATTERNS:
        rest = words.sub(" ", rest)
    if content(rest):
        return None
    begins, hours = _span(found, bool(_LATE.search(text)))
    since, until = _on(said.days[0] if said else local.date(), begins, hours, context)
    if until <= context.now and said is None:
        since, until = _on(local.date() + timedelta(days=1), begins, hours, context)
    return Pause(until, since=since if since > context.now else None) if until > context.now else None


def _all_day(text: str, context: Context) -> Pause | None:
    """«im out tomorrow», «away all saturday»: the whole of that day, and not until its morning."""
    local = context.now.astimezone(ZoneInfo(context.zone))
    said = find_day(text, local.date())
    if said is None or said.days[0] <= local.date() or re.search(r"\d", text) or not _ABSENT_SURELY.search(text):
        return None
    rest = _ABSENT.sub(" ", f"{text[: said.start]} {text[said.end :]}")
    if _TO_AN_END.search(rest) or find_day(rest, local.date()) or not SMALL.issuperset(_WORD.findall(rest)):
        return None
    since, until = (instant(day, time(0), context.zone).at for day in (said.days[0], said.days[0] + timedelta(days=1)))
    return Pause(until, since=since)


def hours_in(text: str, context: Context) -> tuple[datetime, datetime] | None:
    """«jen watches it 2 to 4»: the next such hours, from and until when."""
    found = _HOURS.search(text)
    if found is None:
        return None
    local = context.now.astimezone(ZoneInfo(context.zone))
    said = find_day(f"{text[: found.start()]} {text[found.end() :]}", local.date())
    begins, hours = _span(found, bool(_LATE.search(text)))
    since, until = _on(said.days[0] if said else local.date(), begins, hours, context)
    half = timedelta(hours=_HALF_DAY)
    if not (found["from_half"] or found["to_half"]) and since <= context.now < until + half:  # «8 to 10», said at noon
        return since + half, until + half
    later = until <= context.now and said is None
    return _on(local.date() + timedelta(days=1), begins, hours, context) if later else (since, until)


def _span(found: re.Match[str], late: bool) -> tuple[time, timedelta]:
    """When it begins, and for how long: «7 to 5» is ten hours from the morning, «6 to 10pm» four of the evening."""
    ends = _minutes(found, "to", found["to_half"])
    if found["from_half"] or int(found["from"]) > _HALF_DAY:
        begins = _minutes(found, "from", found["from_half"])
    elif found["to_half"]:
        both = (_minutes(found, "from", half) for half in ("am", "pm"))
        begins = min(both, key=lambda minutes: (ends - minutes) % (24 * 60) or 24 * 60)
    else:
        morning = _FIRST_OF_THE_MORNING <= int(found["from"]) < _HALF_DAY and not late
        begins = _minutes(found, "from", "am" if morning else "pm")
    round_ = 24 * 60 if found["to_half"] or int(found["to"]) > _HALF_DAY else _HALF_DAY * 60
    return time(begins // 60, begins % 60), timedelta(minutes=(ends - begins) % round_ or round_)


def _minutes(found: re.Match[str], end: str, half: str | None) -> int:
    """Minutes since midnight of one end of the span."""
    hour = int(found[end])
    hour = hour % _HALF_DAY + _HALF_DAY * (half == "pm") if half else hour
    return 60 * (hour % 24) + int(found[f"{end}_m"] or 0)


def _on(day: date, begins: time, hours: timedelta, context: Context) -> tuple[datetime, datetime]:
    since = instant(day, begins, context.zone).at
    wall = datetime.combine(day, begins) + hours
    return since.astimezone(UTC), instant(wall.date(), wall.time(), context.zone).at.astimezone(UTC)
