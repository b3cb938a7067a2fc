"""When: «at 8», «since 7pm», «this morning», «sat 1pm», «in 20 min», as an instant that is echoed to the person.

An hour without am or pm is the nearest sensible one: the latest past for what was done, the next to come for
a reminder, a hour at which people eat for a meal. What stays open (`3/4`, `sat 5`) is said to be open.
"""

from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, time, timedelta
from typing import Final

from bot.intents import spans
from bot.intents.clock import Instant, instant, last_at, next_at, wall_of
from bot.intents.context import Context
from bot.intents.days import DAY_PATTERNS, Day, find_day, nearest_weekday
from bot.intents.hours import CLOCKS, find_clock
from bot.intents.small import ASKS
from bot.intents.spoken import PARTS, Spoken, as_spoken, masked
from core import patterns as re

_NAMED_ALONE: Final = ("breakfast", "lunch", "dinner", "supper")
_UNTIL_PART: Final = re.compile(r"\b(?:until|till?|in) (?:the )?(?:morning|mornin|afternoon|evening)\b")
_SOON: Final = timedelta(hours=4)
# «bought it yesterday, for sunday»: nobody eats on a day that is gone
_PART_OF_DAY: Final = re.compile(r"\bthis (?:morning|evening|afternoon)\b")  # the next one, of whichever day
_AT_A_MEAL: Final = re.compile(
    r"\b(?:at|over|during|around) (?:breakfast|brunch|lunch(?:time)?|tea|dinner|supper|bedtime)\b"
)
_LONG_PAST: Final = timedelta(hours=20)  # an hour that comes soon was that of no day before
_AGO: Final = re.compile(  # «since 20 mins» is that long ago, and no hour
    r"\bago\b|\bsince (?:about |like |around )?(?:\d{1,3}|an?|half an?) ?(?:m?mins?|minutes?|h|hrs?|hours?|days?)\b"
)
_SO_FAR: Final = re.compile(r"\b(?:been|already|so far|by now)\b")
_STILL_TO_GO: Final = re.compile(  # a length of time that is to come, is over, or is none of it
    r"\b(?:in|after|before|another|more|till?|until|every|will|going|gonna|need\w*|took|takes?|was|for the next)"
    r" (?:about )?(?:\d|an?\b|half)|\b(?:left|to go|more|early|late|to cool|lid|later)\b"
)
_GONE: Final = re.compile(
    r"\b(?:(?:the )?day before )?yesterday\b|\bgestern\b|\blast (?:night|week|\w{3,6}day)\b"
    r"|\bsince (?:last )?(?:mon|tues?|wed|thu(?:rs)?|fri|sat|sun)[a-z]*(?: (?:night|evening|morning|noon))?\b"
)
_BREAKFAST_FROM = 6
_BREAKFAST = re.compile(r"\bbacon\b")  # who makes it eats it then, unless they say so
_USUAL_MEAL: Final = (13, "pm")


@dataclass(frozen=True)
class When:
    """A time that was said: `at` is aware UTC.

    `day_said` and `hour_said` tell what was stated; the rest is a usual value. `others` are the other instants it
    may have meant; `exists` is false where the clocks jump over it (then `at` is moved forward), `twice` is true
    where it comes two times (then `at` is the first).
    """

    at: datetime
    day_said: bool = False
    hour_said: bool = True
    exists: bool = True
    twice: bool = False
    others: tuple[datetime, ...] = ()
    words: str = ""
    next_said: bool = False


_OF_ELSE: Final = re.compile(  # a day that is still to come, or since which somebody was away
    r"\b(?:un)?till? (?:next |on )?(?:mon|tue|wed|thu|fri|sat|sun|tom)[a-z]*$"
    r"|\b(?:away|gone|out|at work|travell?ing) (?:since|from) [^,;.]+(?=[,;.])"
)


def past(text: str, context: Context, before: datetime | None = None) -> When | None:
    """When something was done: the latest fitting time that is not after `before` (now, unless it is given)."""
    limit = before or context.now
    text = _OF_ELSE.sub("", text) if "til" in text or " since " in text else text
    if _AGO.search(text) or text.startswith("vor ") or " vor " in text:
        back = spans.span(text)
        return When(limit - back) if back else None
    spoken = as_spoken(text, context, past=True)
    if spoken.day is None and spoken.clock is None and not _AT_A_MEAL.search(text):
        return None
    times = spoken.times(PARTS.get(spoken.part, (12, ""))[0])
    if spoken.as_written(context):
        times = times[:1]
    day = spoken.day.days[0] if spoken.day else None
    here = (instant(day, t, context.zone) if day else last_at(t, limit, context.zone) for t in times)
    *earlier, latest = sorted((i for i in here if i.at <= limit), key=lambda i: i.at) or [Instant(limit)]
    if spoken.day is None and spoken.clock is None and limit - latest.at > _LONG_PAST:
        return None
    return replace(_made(latest, spoken), others=tuple(i.at for i in earlier))


def begun(text: str, context: Context, *, lasts: bool) -> When | None:
    """When something was done: at its time, or so long ago as it has gone on («been in ice 20 min»).

    With `lasts` it is a state that lasts, and its length is told without more: «in ice 20 min».
    """
    said = past(text, context)
    if said or not (lasts or _SO_FAR.search(text)) or _STILL_TO_GO.search(text):
        return said
    back = spans.span(text)
    return When(context.now - back) if back else None


def future(text: str, context: Context) -> When | None:
    """When something shall be done: the next fitting time from now, or after the span that was said."""
    spoken = as_spoken(text, context)
    if spoken.day is None and spoken.clock is None and (spoken.part in _NAMED_ALONE or _UNTIL_PART.search(text)):
        return _made(next_at(time(PARTS[spoken.part][0]), context.now, context.zone), replace(spoken, part=""))
    if spoken.day is None and spoken.clock is None:
        after = spans.span(text)
        return When(context.now + after) if after else None
    times = spoken.times(PARTS.get(spoken.part, (9, ""))[0])
    if spoken.as_written(context):
        times = times[:1]
    if spoken.day is None or _PART_OF_DAY.search(text):
        return _made(min((next_at(t, context.now, context.zone) for t in times), key=lambda i: i.at), spoken)
    day, today = spoken.day.days[0], wall_of(context.now, context.zone).date()
    if spoken.day.weekday is not None and day == today and spoken.clock is None:
        day += timedelta(days=7)  # «until monday», said on a Monday
    here = [instant(day, t, context.zone) for t in times]
    ahead = [i for i in here if i.at > context.now] or here
    awake = [i for i in ahead if wall_of(i.at, context.zone).hour >= 7] or ahead
    return _made(awake[0], spoken)


def meal(text: str, context: Context) -> When | None:
    """When people want to eat, the nearest to come; what is not said is kept from `context.deadline`."""
    ahead = as_spoken(_GONE.sub(" ", text), context, dates=True)
    spoken = ahead if ahead.day else as_spoken(text, context, dates=True)
    if spoken.day is None and spoken.clock is None and not spoken.part:
        return None
    if context.deadline is None:
        return _new_meal(replace(spoken, from_hour=_BREAKFAST_FROM) if _BREAKFAST.search(text) else spoken, context)
    old = wall_of(context.deadline, context.zone)
    day = _moved_day(spoken.day, old.date(), wall_of(context.now, context.zone).date())
    clock = (
        min(spoken.meal_times(spoken.clock, context.units.temperature == "c"), key=lambda t: _gap(t, old.time()))
        if spoken.clock
        else old.time()
    )
    if not spoken.clock and spoken.part and (not spoken.day or _of_another_meal(spoken.part, old.time())):
        clock = time(PARTS[spoken.part][0])
    return _made(instant(day, clock, context.zone), spoken, context)


TENDER_FROM: Final = 80.0  # °C; what comes off below it is eaten on the day as a rule. Common practice
_DENIED: Final = re.compile(r"(?<![\d:.])\d{1,2} not (?P<n>\d{1,2})(?![\d:.])")  # «5 not 6»


def _of_no_planned_hour(text: str, context: Context) -> bool:
    """«5 not 6» of fish or a bird beside a plan of days on at another hour: put off by me, still today for its cook."""
    denied, tender = _DENIED.search(text), (context.target_c or TENDER_FROM) >= TENDER_FROM
    if denied is None or context.deadline is None or tender:
        return False
    planned, today = wall_of(context.deadline, context.zone), wall_of(context.now, context.zone)
    return (planned.date() - today.date()).days > 1 and int(denied["n"]) % 12 != planned.hour % 12


def of_today(text: str, said: When, context: Context) -> When:
    """«can we eat at quarter to 6», «5 not 6», beside the fire: the meal of today, where that hour is still ahead."""
    asked = context.phase in ("cooking", "resting") and not said.day_said
    asked = asked and (ASKS.match(text) or _of_no_planned_hour(text, context))
    today = meal(f"{text} today", context) if asked else None
    return today if today and today.at > context.now else said


def _of_another_meal(part: str, clock: time) -> bool:
    """Whether a meal that is named is hours from the one that was planned: «friday dinner», of a lunch at one."""
    apart = abs(PARTS[part][0] - clock.hour)
    early = part == "breakfast" and apart >= _SAME_MEAL_H  # of a lunch at one; a dinner may be at two
    of_a_morning = part == "lunch" and clock.hour < _FIRST_LUNCH
    return early or of_a_morning or ((part in _NAMED_MEALS or part == "tonight") and apart > _SAME_MEAL_H)


def still_ahead(text: str, context: Context) -> datetime | None:
    """An hour of today that has not come yet, said of something that is done: a slip, or yesterday's."""
    spoken = as_spoken(text, context)
    if (
        _AGO.search(text)
        or spoken.day is not None
        or spoken.clock is None
        or not (spoken.clock.written or len(spoken.times(0)) == 1)
    ):
        return None
    soon = (next_at(t, context.now, context.zone).at for t in spoken.times(0))
    return next((at for at in soon if at - context.now <= _SOON), None)


def open_hour(text: str, context: Context) -> str:
    """«sat 5» as typed, which may be five o'clock or the fifth; "" where nothing of the kind is open."""
    plain = masked(text)
    day = find_day(plain, wall_of(context.now, context.zone).date())
    if day is None or day.weekday is None or find_clock(plain):
        return ""
    found = re.match(r" (?:the )?(\d{1,2})(?=$|[,;!?.]| instead| please| then)", plain[day.end :])
    return plain[day.start : day.end] + found[0] if found else ""


def hour_after_day(text: str, context: Context) -> str:
    """«sat 5» as «sat at 5», to be offered; other texts as they are."""
    words = open_hour(text, context)
    if not words:
        return text
    number = re.search(r"\d{1,2}", words)
    return text.replace(words, f"{words[: number.start()]}at {number[0]}") if number else text


def hour_for_sure(text: str, context: Context) -> str:
    """«sunday 5» as «sunday at 5» where no such day is a fifth for weeks: then it is the hour."""
    words = open_hour(text, context)
    day = find_day(words, wall_of(context.now, context.zone).date()) if words else None
    number = re.search(r"\d{1,2}", words)
    if day is None or number is None or not 1 <= int(number[0]) <= 12:
        return text
    weeks = (day.days[0] + timedelta(days=7 * ahead) for ahead in range(_WEEKS_AHEAD))
    return text if any(one.day == int(number[0]) for one in weeks) else hour_after_day(text, context)


def without_times(text: str) -> str:
    """The text with every measure, day, hour and span of time blanked out: what is left may be a bare number."""
    plain = masked(text)
    for pattern in (*DAY_PATTERNS, *(clock for clock, _ in CLOCKS), spans.SPAN):
        plain = pattern.sub(" ", plain)
    return plain


_NAMED_MEALS: Final = ("breakfast", "brunch", "lunch", "tea", "dinner", "supper", "evening", "abend", "night", "nite")
_SAME_MEAL_H: Final = 4
_FIRST_LUNCH: Final = 11
_WEEKS_AHEAD: Final = 6  # of which a date is named by its day alone


def _new_meal(spoken: Spoken, context: Context) -> When:
    usual = PARTS.get(spoken.part, _USUAL_MEAL)[0]
    clock = spoken.meal_times(spoken.clock, context.units.temperature == "c")[0] if spoken.clock else time(usual)
    if spoken.day is None:
        return _made(next_at(clock, context.now, context.zone), spoken, context)
    first = instant(spoken.day.days[0], clock, context.zone)
    if spoken.day.weekday is not None and first.at <= context.now and spoken.day.which != "last":
        first = instant(spoken.day.days[0] + timedelta(days=7), clock, context.zone)
    return _made(first, spoken, context)


def _moved_day(day: Day | None, old: date, today: date) -> date:
    if day is None:
        return old
    if day.weekday is None or day.which:
        return day.days[0]
    near = nearest_weekday(day.weekday, old)
    return near if near >= today else day.days[0]


def _gap(one: time, two: time) -> int:
    return abs(60 * (one.hour - two.hour) + one.minute - two.minute)


def _made(at: Instant, spoken: Spoken, context: Context | None = None) -> When:
    others: tuple[datetime, ...] = ()
    if context and spoken.day and len(spoken.day.days) > 1:
        clock = wall_of(at.at, context.zone).time()
        others = tuple(instant(day, clock, context.zone).at for day in spoken.day.days[1:])
    said = (spoken.day is not None, spoken.clock is not None)
    day = spoken.day
    words, next_said = (day.word, day.which in ("next", "nächsten")) if day else ("", False)
    return When(at.at.astimezone(UTC), *said, at.exists, at.twice, others, words, next_said)
