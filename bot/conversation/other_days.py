"""Days in the cure other than planned, asked for by a span, by a day or «now»: what they make of it."""

import re
from datetime import date, timedelta

from bot.conversation.understand import Understood, context_of
from bot.intents import spans, when
from bot.intents.days import WEEKDAYS, find_day, of_the_weekend
from bot.intents.normal import normal
from bot.wording import sooner, standing
from core.batch.assess import Assessment
from core.service.turn import Turn

A_DAY = timedelta(days=1)
_AT_ONCE = re.compile(r"\b(?:now|already|today|tonight|straight ?away|this (?:morning|afternoon|evening)|yet)\b")

_WHEN = re.compile(r"(?:(?:so|and|ok),? )*(?:when|what (?:time|day|date)|which day)\b")
_SOON_AFTER = 2  # days after the planned end on which a weekday may as well be meant; habit, no source
_FROM_NOW = re.compile(r"\bin (?:another |about )?\d{1,2}(?:\.\d)? days?\b")
_IN_ALL = re.compile(r"\b\d{1,2}(?:\.\d)? days?\b")  # «is 4 days enough», and not four days sooner
_AND_A_HALF = re.compile(r"\b(\d{1,2}) and a half\b")
_ON_DAY = re.compile(
    r"\bday (\d{1,2})\b"
)  # «is day 3 too soon»: in the course of it, so after one day less at the least
_SO_FAR = re.compile(  # «its 4 days now can i take it out early»: what has gone by, and no span to go by
    r"\b(?:its|been|had|after) (?:been )?(?:in )?(?:for )?\d{1,2}(?:\.\d)? days?\b"
    r"|\b\d{1,2}(?:\.\d)? days? (?:now|in|already|so far)\b"
)
_SOONER = re.compile(r"\b(?:earl(?:y|ier)|sooner|less|fewer|shorter|before|ahead|off)\b")


def _halved(text: str) -> str:
    """«5 and a half days» as one number."""
    return _AND_A_HALF.sub(r"\1.5", text)


def _days(turn: Turn, meant: Understood, of: tuple[Assessment, str]) -> float:
    """How many days a line speaks of: a span, the days from a day that it names to the end of the cure, or one."""
    a, text = of
    plain = _halved(normal(text, turn.person.language))
    so_far = _SO_FAR.search(plain)
    span = None if so_far else spans.span(plain)
    if span is not None:
        return max(span / A_DAY, 0.0)
    if (so_far or _AT_ONCE.search(plain)) and a.plan and (coming := a.plan.step("out")):
        return max((coming.due - a.now) / A_DAY, 0.0)
    said = when.meal(plain, context_of(turn, meant.message, None, a))
    planned = a.plan.step("out") if a.plan else None
    if said is None or not said.day_said or planned is None:
        return 1.0
    days = (planned.due.astimezone(a.person.tz).date() - said.at.astimezone(a.person.tz).date()).days
    left = (planned.due - a.now) / A_DAY
    after = 0 if _SOONER.search(plain) else -_SOON_AFTER  # «early for sunday» is none behind the end
    week_before = said.words in WEEKDAYS and days < after and days + 7 <= left  # «by tuesday», the next there is
    return float(days + 7 * week_before)


def _today(text: str) -> bool:
    return bool(_AT_ONCE.search(text.lower()))


def earlier(turn: Turn, meant: Understood, of: tuple[Assessment, str]) -> str:
    """Out of the cure before the plan, by so many days, on a day or at once: what that makes of it."""
    if _WHEN.match(of[1].lower()):  # «what time do i pull it out thursday»
        return standing.out(of[0])
    a, less = of[0], _days(turn, meant, of)
    planned = a.plan.step("out") if a.plan else None
    line = of[1].lower()
    if _SO_FAR.search(line):
        pass  # out now, whatever the days that are told
    elif a.plan is not None and planned is not None and _FROM_NOW.search(line):
        less = (planned.due - a.now) / A_DAY - less
    elif a.plan is not None and _IN_ALL.search(_halved(line)) and not _SOONER.search(line):
        less = a.plan.cure_days - less
    elif a.plan is not None and (day := _ON_DAY.search(normal(of[1], turn.person.language))) and not _today(of[1]):
        less = a.plan.cure_days - (int(day[1]) - 1)
    overdue = planned is not None and planned.due <= a.now
    return sooner.earlier(a, max(less, 0.0)) if less >= 0.0 or overdue else sooner.longer(a, -less)


def longer(turn: Turn, meant: Understood, of: tuple[Assessment, str]) -> str:
    """In the cure beyond the plan, by so many days, or so many in all."""
    a, text = of
    days = abs(_days(turn, meant, of))
    in_all = re.search(r"\bbeen\b", text.lower()) and a.plan is not None
    return sooner.longer(a, days - a.plan.cure_days if in_all and a.plan else days)


def day_asked(turn: Turn, meant: Understood, of: tuple[Assessment, str]) -> date | None:
    """The day that a plain line names for a deed; of a weekend the first of its two."""
    a, asked = of
    if weekend := of_the_weekend(asked):
        found = find_day(weekend[0], a.now.astimezone(a.person.tz).date())
        return found.days[0] if found else None
    said = when.meal(asked, context_of(turn, meant.message, None, a))
    return said.at.astimezone(a.person.tz).date() if said is not None and said.day_said else None
