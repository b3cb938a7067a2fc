"""Words for meat that is ready before the meal: how to hold it hot, for how long, and when to chill it instead."""

from datetime import datetime, timedelta

from bot.wording import cautions, cooling, numbers, safety, smoked_fish
from bot.wording.language import Words, say
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.batch.hot import HOT_C, Hold, by_itself, hold
from core.heat.band import Band
from core.plan.steps import Plan
from core.safety.after import HOT_F, hot_until
from core.safety.findings import Outcome, Rule
from core.safety.history import printed_f
from core.units import Celsius, Hours

WITHIN = timedelta(hours=1)  # from under 60 °C to the table; common practice
HOT_AT_MOST: Hours = 12.0  # longer dries it out, however hot it stays; common practice, no source
OVEN_C: Celsius = 75.0  # 165 °F; holds 60 °C in the middle without cooking on. Common practice
WAYS = Words(
    {
        "foil": "in foil",
        "towels": "in foil and towels",
        "box": "in foil and towels in a shut cool box without ice",
    }
)


def planned(a: Assessment) -> str:
    """In a plan: that it will be ready early, and how it is held till then; empty where there is no wait."""
    found = hold(a)
    if found is None or a.batch.off_at is not None:
        return ""
    return _too_early(found) if found.hours.p50 > HOT_AT_MOST else f"{_early(found)} {_how(found, a)}"


def till(plan: Plan) -> tuple[datetime | None, datetime]:
    """When it is sliced and when it is eaten: what a hold before it depends on."""
    knife = plan.step("slice")
    return knife.due if knife else None, plan.serve


def till_the_knife(a: Assessment) -> str:
    """Once it is off: how to keep it hot till it is sliced, and what never to fall under."""
    found = hold(a)
    if found is None:
        return say("Keep the middle at {limit} or above until you slice.", limit=numbers.both(HOT_C, a.person))
    if found.hours.p50 > HOT_AT_MOST:
        return _not_so_long(found, a)
    return say(
        "It is {half} to the knife.\n{how}", half=numbers.hours(numbers.half_down(found.hours.p50)), how=_how(found, a)
    )


def reading(a: Assessment, core_c: Celsius) -> str:
    """A core read in the hold: how long it stays hot in the way it lies, or that it is time to eat or to chill."""
    limit = numbers.both(HOT_C, a.person)
    if printed_f(core_c) < HOT_F:
        return _fallen(a)
    found = by_itself(a)
    knife = a.plan.step("slice") if a.plan else None
    left = max((knife.due - a.now) / timedelta(hours=1), 0.0) if knife else 0.0
    if left > max((hours.p10 for _, hours in found), default=0.0):
        return say(
            "It holds, {core}, but not till the knife in {left}: wrapped into an oven or the pit at {oven} now.\n"
            "Never under {limit} in the middle.",
            core=numbers.temperature(core_c, a.person),
            left=numbers.hours(numbers.half_down(left)),
            oven=numbers.both(OVEN_C, a.person),
            limit=limit,
        )
    told = ", ".join(f"{WAYS[way]} {_span(hours)}" for way, hours in found)
    return say(
        "It holds: {core}.\nAbove {limit} it stays from now on {told}.",
        core=numbers.temperature(core_c, a.person),
        limit=limit,
        told=told,
    )


def _fallen(a: Assessment) -> str:
    """Under 60 °C: by when it is eaten, while that is shown to be in time; else how its cooling stands."""
    until, found = hot_until(a.ledger.record), a.ledger.verdict
    to_eat = found.kind in (Outcome.SAFE, Outcome.EAT_NOW)
    if not to_eat and found.deciding.rule is not Rule.COOLING:
        return "\n".join([safety.VERDICTS[found.kind], safety.finding(found.deciding, a), cooling.stands(a)])
    if not to_eat or until is None or a.now > until:
        return cooling.stands(a)
    return say(
        "It is under {limit}: eat it by {until}, or chill it now and heat it again later.\n"
        "Say «in the chill» when you do, and send the core.",
        limit=numbers.both(HOT_C, a.person),
        until=numbers.clock(min(until, a.now + WITHIN), a.person),
    )


def asked(a: Assessment) -> str:
    """How to hold it, for whoever asks; what is in the cold already stays there."""
    if a.batch.phase in (Phase.CHILLING, Phase.STORED):
        return say(
            "It is in the cold already, so it is not held hot: leave it at {limit} or below, and heat before the meal what is eaten hot.",
            limit=numbers.both(4.4, a.person),
        )
    if smoked := smoked_fish.to_hold(a):
        return smoked
    found = hold(a)
    if found is not None:
        return f"{_how(found, a)}\n{_by_itself(a)}\n{cautions.WORDS['hold_at_140f']}"
    return say(
        "Hold it wrapped, with a probe in it, at {limit} or above in the middle.\n{by_itself}\n"
        "Longer than that: an oven or the pit at {limit2}. Falling under "
        "{limit} and nobody at the table yet: chill it, and heat it again later.",
        limit=numbers.both(HOT_C, a.person),
        by_itself=_by_itself(a),
        limit2=numbers.both(OVEN_C, a.person),
    )


def _not_so_long(found: Hold, a: Assessment) -> str:
    """Off the fire a day before its meal: eaten now, or chilled and heated again, and held hot by nobody."""
    return say(
        "It is {half} to the knife, too long to keep it hot. Chill it now and heat it again for the meal: say «in the chill» "
        "when it lies there. Or eat it today: say when, like «we eat at {hour}».\nUntil then never under {limit} in the middle.",
        half=numbers.hours(numbers.half_down(found.hours.p50)),
        hour=numbers.clock(numbers.quarter(a.now + WITHIN, up=True), a.person),
        limit=numbers.both(HOT_C, a.person),
    )


def _too_early(found: Hold) -> str:
    return say(
        "It would be ready {span} before the knife, too long to keep it hot: move the meal or the fire, or have it sliced cold.",
        span=_span(found.hours),
    )


def _early(found: Hold) -> str:
    return say("It may be ready {span} before the knife, so that a slow one is still in time.", span=_span(found.hours))


def _how(found: Hold, a: Assessment) -> str:
    limit = numbers.both(HOT_C, a.person)
    oven = say("an oven or the pit at {limit}", limit=numbers.both(OVEN_C, a.person))
    enough = found.enough
    if enough is None:
        return say(
            "Hold it wrapped in {oven}, a probe in it.\nNever under {limit} in the middle.", oven=oven, limit=limit
        )
    stays = dict(found.by_itself)[enough]
    longest = min(stays.p10, found.longest)
    return say(
        "Hold it {ways}.\nNine in ten stay above {limit} for {half}. Longer, or without a probe in it: {oven}.",
        ways=WAYS[enough],
        limit=limit,
        half=numbers.hours(numbers.half_down(longest)),
        oven=oven,
    )


def _by_itself(a: Assessment) -> str:
    told = ", ".join(f"{WAYS[way]} {_span(hours)}" for way, hours in by_itself(a))
    return say(
        "Above {limit} it stays by itself: {told} (computed; a probe in it knows better).",
        limit=numbers.both(HOT_C, a.person),
        told=told,
    )


def _span(hours: Band) -> str:
    if numbers.half_down(hours.p10) == 0.0:
        return say("under 30 min")
    if numbers.half_down(hours.p10) == numbers.half_down(hours.p90):
        return say("about {half}", half=numbers.hours(numbers.half_down(hours.p50)))
    return say(
        "{half} to {half2}",
        half=numbers.hours(numbers.half_down(hours.p10)),
        half2=numbers.hours(numbers.half_down(hours.p90)),
    )
