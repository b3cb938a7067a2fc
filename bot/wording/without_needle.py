"""A piece that is planned by needle, without one: the days, the meal, or why its cut wants one."""

from bot.wording import numbers, plans, refusals
from bot.wording.language import say
from core.batch import ways
from core.batch.assess import Assessment
from core.errors import TooLong, TooSoon


def said(a: Assessment) -> str:
    """Without a needle: the days that it lies then, and when it could be eaten; or that its cut wants one."""
    if a.batch.setup.method != "inject":
        return say("It is planned without a needle: the days reckon with that.")
    tried = ways.without_needle(a)
    if tried is None:
        return say(
            "This cut I plan by needle alone.\nA brine creeps in from outside, and beside the bone or deep in a bird it may "
            "come later than the spoiling does. A marinade needle or a clean food syringe does it; boned meat may be brined."
        )
    method = plans.method(tried)
    match tried.refusal:
        case TooLong(days=days, limit_days=limit):
            return say(
                "Without a needle it lies {days}; more than {limit} days I do not plan. A thinner piece needs less.",
                days=numbers.days(days),
                limit=numbers.plain(limit),
            )
        case TooSoon(earliest=earliest, cure_days_p90=days):
            return say(
                "Without a needle ({method}) it lies {days}, and the meal could be {when} at the soonest.",
                method=method,
                days=numbers.days(days),
                when=numbers.when(earliest, a.person, a.now),
            )
    if tried.plan is None:
        return refusals.say(tried.refusal, a.person) if tried.refusal else ""
    return say(
        "Without a needle ({method}) it lies {days}; the meal is {when}.\nTap it, and the dose is another.",
        method=method,
        days=numbers.days(tried.plan.cure_days),
        when=numbers.when(tried.plan.serve, a.person, a.now),
    )
