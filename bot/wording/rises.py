"""Words for a way up that may be too slow for the rule."""

from datetime import timedelta

from bot.wording import numbers
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.rise import Rise, rise


def planned(a: Assessment) -> str:
    """In a plan, before it is on: the pit that keeps the rule; empty where the planned one does."""
    found = rise(a) if a.on_at is None else None
    if found is None:
        return ""
    return say(
        "Its core has to pass {limit} within {within} of going on, and at {pit} more than one in ten of this size would not. {how}",
        limit=numbers.at_least(found.to_c, a.person),
        within=numbers.hours(found.within),
        pit=numbers.temperature(a.batch.setup.pit_c, a.person),
        how=_hotter(found, a),
    )


def on_the_fire(a: Assessment) -> str:
    """With a reading: by when it has to be there, and what helps; empty where it will be."""
    found = rise(a)
    if found is None or a.on_at is None:
        return ""
    return say(
        "By {clock} the core has to read {limit}; at this pace more than one in ten would not. {how}",
        clock=numbers.clock(a.on_at + timedelta(hours=found.within), a.person),
        limit=numbers.at_least(found.to_c, a.person),
        how=_hotter(found, a),
    )


def _hotter(found: Rise, a: Assessment) -> str:
    if found.pit_c is None:
        return say(
            "No pit that I plan with is sure to bring it there: take a smaller piece, or have it boned and split."
        )
    return say(
        "Run the pit at {pit}, and tell me, like «pit runs at {pit}».", pit=numbers.temperature(found.pit_c, a.person)
    )
