"""Sooner or later than planned: what a day less or more in the cure makes of it, and whether a meal can be had in time."""

from datetime import datetime, timedelta
from math import ceil

from bot.wording import lateness, meats, numbers, plans, put_in, recalled, standing, steps
from bot.wording.language import decimal, say
from core.batch.assess import Assessment
from core.batch.in_time import off_by
from core.batch.weighed import is_told
from core.plan.anchors import LONGEST_CURE
from core.plan.recipe import product
from core.plan.steps import Step, TimeBand
from core.units import Days

WORTH = timedelta(minutes=10)
LIKELY = 0.9


def cured_yet(a: Assessment) -> str:
    """How pink such a middle is by today, and by the day it comes out."""
    into, out = a.batch.done.get("into_cure"), a.batch.done.get("out")
    if meats.plain(a):
        return say("It is only salted, so there is no pink to wait for. {out}", out=standing.out(a))
    if not is_told(a.batch):
        return put_in.unknown()
    if a.cure is None or a.dose is None or into is None:
        return standing.out(a)
    if out is None and (weak := put_in.too_weak(a)):
        return f"{weak}\n{standing.out(a)}"
    days = ((out or a.now) - into) / timedelta(days=1)
    chance = numbers.chance(a.cure.after(max(days, 0.01)).probability_pink)
    if out is not None:
        return say(
            "It was in for {days} d: {chance} of pieces like this are pink in the middle by then.",
            days=decimal(days, 1),
            chance=chance,
        )
    return say(
        "After {days} d in the cure {chance} of pieces like this are pink in the middle.\n"
        "Nine in ten are there after {p90}. Only a slice shows it, so leave it in. {out}",
        days=decimal(days, 1),
        chance=chance,
        p90=numbers.days(a.cure.days_p90),
        out=standing.out(a),
    )


def earlier(a: Assessment, less: Days) -> str:
    """Out of the cure so many days before the plan: how many middles are pink then, and what that costs."""
    planned = a.plan.step("out") if a.plan else None
    if a.plan is None or planned is None or a.cure is None or "out" in a.batch.done:
        return _no_cure_left(a)
    into = a.batch.done.get("into_cure")
    if into is not None and planned.due <= a.now:
        return say(
            "Yes, take it out: by the plan it was to come out {due}, and it has been in for {days}. Kept cold, the rest did no harm.",
            due=numbers.when(planned.due, a.person, a.now),
            days=numbers.days((a.now - into) / timedelta(days=1)),
        )
    then = max(a.plan.cure_days - less, 0.0)
    if then <= 0.0:
        return say(
            "It has {days} in all, so not so early. {out}", days=numbers.days(a.plan.cure_days), out=standing.out(a)
        )
    at = planned.due - timedelta(days=less)
    pink, planned_pink = (a.cure.after(d).probability_pink for d in (then, a.plan.cure_days))
    enough = pink >= LIKELY and then >= max(a.cure.days_p90, least(a))
    lead = say("Yes, as far as the cure goes.") if enough else say("No, that is too early.")
    out = say(
        "Out {at}, after {then}: {chance} of pieces like this are pink in the middle, {planned} as planned.",
        at=numbers.when(at, a.person, a.now),
        then=numbers.days(then),
        chance=numbers.chance(pink),
        planned=numbers.chance(planned_pink),
    )
    lines = (lead, out, _least(then, a), _enough(then, a, enough=enough, at_once=at <= a.now + WORTH))
    return "\n".join(filter(None, lines))


def least(a: Assessment) -> Days:
    """The days below which such a piece does not come out, however soon its middle is reached. [d]"""
    return product(a.batch.setup.product).least(a.batch.setup)


def _least(then: Days, a: Assessment) -> str:
    return say("Such a piece wants {least} at least.", least=numbers.days(least(a))) if then < least(a) else ""


def _enough(then: Days, a: Assessment, *, enough: bool, at_once: bool) -> str:
    if enough and at_once:
        return say(
            "That is enough for the colour; cooling and keeping go by what the middle holds then. "
            "Once it is out, type «out of the cure»."
        )
    if enough:
        return say(
            "That is enough for the colour; cooling and keeping go by what the middle holds then. Type it, like «leave it in for {days} days».",
            days=ceil(then),
        )
    return say(
        "A middle that is not reached counts as not cured: cook it through, and chill it by the stricter rule. "
        "Better to split it thinner or inject it next time. Type it, like «leave it in for {days} days».",
        days=max(ceil(then), 1),
    )


def out(a: Assessment) -> str:
    """It came out before nine in ten such middles are pink: what that makes of it, and the way back; else nothing."""
    into, taken = a.batch.done.get("into_cure"), a.batch.done.get("out")
    if a.cure is None or into is None or taken is None or meats.plain(a):
        return ""
    days = max((taken - into) / timedelta(days=1), 0.01)
    pink = a.cure.after(days).probability_pink
    if pink >= LIKELY:
        return ""
    return say(
        "That is early: after {days} d {chance} of pieces like this are pink in the middle.\n"
        "If it was a slip, or it goes straight back, say «undo». Else it counts as not cured: cook it through, and chill "
        "it by the stricter rule.",
        days=decimal(days, 1),
        chance=numbers.chance(pink),
    )


def longer(a: Assessment, more: Days) -> str:
    """In the cure so many days beyond the plan: harmless in the cold, up to the longest that is planned."""
    into = a.batch.done.get("into_cure")
    if a.plan is None or "out" in a.batch.done:
        return _no_cure_left(a)
    so_far = (a.now - into) / timedelta(days=1) if into else 0.0
    then = max(a.plan.cure_days + more, so_far)
    longest = numbers.plain(LONGEST_CURE)
    if then > LONGEST_CURE:
        return say(
            "No: {longest} days in the cure are the most that I plan. Take it out, rinse it, and cook or freeze it. "
            "Sour, slimy or gassy: throw it away.",
            longest=longest,
        )
    if latest := product(a.batch.setup.product).raw_until(a.batch.setup, into or a.now):
        return _raw(a, latest, kept=(into or a.now) + timedelta(days=then) <= latest)
    return say(
        "Yes, kept at {limit} or below: the salt ends even, so longer does no harm, up to {longest} days.\n"
        "It has been in for {so_far} d of {planned}. Type it, like «leave it in for {days} days», and the plan moves.",
        limit=numbers.both(4.4, a.person),
        longest=longest,
        so_far=decimal(so_far, 1),
        planned=numbers.days(a.plan.cure_days),
        days=ceil(then),
    )


def _raw(a: Assessment, latest: datetime, *, kept: bool) -> str:
    """Longer in salt alone: as long as raw meat of its kind keeps for sure, and no longer."""
    at = numbers.when(latest, a.person, a.now)
    if kept:
        return say(
            "Yes, if it is on the fire by {latest}: without curing salt it keeps raw no longer for sure.", latest=at
        )
    return say(
        "Not so long: without curing salt it keeps raw no longer for sure than {latest}, and the fire comes before that.",
        latest=at,
    )


def _no_cure_left(a: Assessment) -> str:
    if a.batch.off_at is not None:
        return recalled.keeps(a)
    if "out" in a.batch.done:
        return say("It is out of the cure already.") + f"\n{standing.since(a)}\n{plans.coming(a)}"
    coming = plans.coming(a) if "into_cure" in a.batch.done else ""  # before it, that it is not in says what comes
    return f"{standing.since(a)}\n{coming}".strip()


def in_time(a: Assessment) -> str:
    """Whether the meal is had when it was wanted: by the estimate on the fire, else by the plan."""
    needed = off_by(a)
    if a.ready is not None and needed is not None:
        return f"{_against(a.ready, needed, a)}\n{_meal(a)}"
    if a.plan is None:
        return plans.now(a)
    if a.plan.late >= WORTH:
        return "\n".join(lateness.late(a))
    return say("On time, as it stands: {meal}", meal=_meal(a))


def _meal(a: Assessment) -> str:
    return standing.meal(a)


def _against(ready: TimeBand, needed: datetime, a: Assessment) -> str:
    band, by = numbers.time_band(ready, a.person, a.now), numbers.when(needed, a.person, a.now)
    if ready.p90 <= needed:
        return say("On time: ready {band}, and it has to be off by {by}.", band=band, by=by)
    if ready.p50 <= needed:
        return say(
            "Likely on time: ready {band}, and it has to be off by {by}. A wrap makes it surer: ask «should I wrap».",
            band=band,
            by=by,
        )
    return say("Late, most likely: ready {band}, and it would have to be off by {by}.", band=band, by=by)


def cooks_already(a: Assessment) -> str:
    """What is on the fire is cooked now, whatever day is wished for."""
    return say(
        "It is on the fire since {since}, and it is cooked through now: only the meal can move.",
        since=numbers.when(a.on_at or a.now, a.person, a.now),
    )


def cooks_then(a: Assessment, step: Step) -> str:
    """The day that is wished for is the day of the plan."""
    return say(
        "That is the day of the plan: {step} {when}. {meal}",
        step=steps.name(step, a),
        when=numbers.when(step.due, a.person, a.now),
        meal=_meal(a),
    )


def moved(a: Assessment, then: Assessment, wanted: datetime) -> str:
    """Whether the meal can be had at another time, asked and not told: nothing is changed yet."""
    shown = numbers.when(wanted, a.person, a.now)
    if then.plan is None or wanted <= a.now:
        return say("Not {wanted}. The meal stays {serve}.", wanted=shown, serve=_serve(a))
    if then.plan.late >= WORTH:
        told = say(
            "Not {wanted}: safe and done it is {soonest} at the earliest. Nothing is changed; the meal stays {serve}.",
            wanted=shown,
            soonest=numbers.when(numbers.quarter(then.plan.serve, up=True), a.person, a.now),
            serve=_serve(a),
        )
        return "\n".join([told, *lateness.hot_instead(a, wanted)])
    steps = plans.moved(a.plan, then) if a.plan else []
    lead = say("Yes, {wanted} can be had. Nothing is moved yet: tap it, or type it.", wanted=shown)
    return "\n".join([lead, *steps])


def _serve(a: Assessment) -> str:
    return numbers.when(a.plan.serve, a.person, a.now) if a.plan else say("as it is")
