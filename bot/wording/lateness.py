"""Words for a meal that cannot be had when it was wanted: once, with the way to have it hot in time where there is one."""

from datetime import datetime, timedelta

from bot.wording import numbers
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.hot import HOT_C
from core.batch.ways import hot_in_time, hot_off_the_fire
from core.plan.steps import Plan

WORTH_TELLING = timedelta(minutes=10)
WORTH_REPEATING = timedelta(minutes=30)  # each reading moves the meal a little


def meal(a: Assessment, plan: Plan) -> str:
    """When the meal is; one that comes later than it was wanted is never said too early."""
    late = plan.wanted is not None and plan.serve > plan.wanted
    return numbers.when(numbers.quarter(plan.serve, up=True) if late else plan.serve, a.person, a.now)


def late(a: Assessment, before: Plan | None = None) -> list[str]:
    """Said where the meal cannot be had when it was wanted; once, when `before` was told so already."""
    if a.plan is None or a.plan.late < WORTH_TELLING or a.plan.wanted is None or "serve" in a.batch.done:
        return []
    if before is not None and before.late >= WORTH_TELLING and abs(before.serve - a.plan.serve) < WORTH_REPEATING:
        return []
    told = say(
        "The meal was wanted {wanted}; safe and done it is {meal}. For a later one type it, like «dinner at 15:00».",
        wanted=numbers.when(a.plan.wanted, a.person, a.now),
        meal=meal(a, a.plan),
    )
    hot = hot_in_time(a)
    if hot is None:
        return [told, *hot_instead(a, a.plan.wanted)]
    served = numbers.when(numbers.quarter(hot.serve, up=True), a.person, a.now)
    return [told, say("Eaten hot, off the fire and rested, it can be had {meal}: type «eat it hot».", meal=served)]


def hot_instead(a: Assessment, wanted: datetime) -> list[str]:
    """When it could be eaten hot on the day of its fire, where a meal on that day comes too soon for a chilled one."""
    hot, day = hot_off_the_fire(a), wanted.astimezone(a.person.tz).date()
    if hot is None or hot.p10.astimezone(a.person.tz).date() != day:
        return []
    if a.batch.off_at is not None:
        return [_hot_now(a, max(hot.p50, wanted))]
    at = numbers.quarter(hot.p90 if hot.p90.astimezone(a.person.tz).date() == day else hot.p50, up=True)
    today = a.now.astimezone(a.person.tz).date()
    return [
        say(
            "Eaten hot it need not chill: rested {band}. If you like, type «eat it hot {when}».",
            band=numbers.time_band(hot, a.person, a.now),
            when=say("today {at}", at=numbers.clock(at, a.person))
            if day == today
            else numbers.when(at, a.person, a.now),
        )
    ]


def _hot_now(a: Assessment, at: datetime) -> str:
    """It is off the fire and rests: eaten hot it waits for no chill."""
    return say(
        "Eaten hot it need not chill, while the middle stays at {limit} or above: type «eat it hot today {at}».",
        limit=numbers.both(HOT_C, a.person),
        at=numbers.clock(at, a.person),
    )
