"""Words for meat that is ready before the meal: how to hold it hot, for how long, and when to chill it instead."""

from bot.wording import cautions, numbers
from core.batch.assess import Assessment
from core.batch.hot import HOT_C, Hold, by_itself, hold
from core.heat.band import Band
from core.units import Celsius, Hours

OVEN_C: Celsius = 75.0  # 165 °F; holds 60 °C in the middle without cooking on. Common practice
WAYS = {
    "foil": "in foil",
    "towels": "in foil and towels",
    "box": "in foil and towels in a shut cool box without ice",
}


def planned(a: Assessment) -> str:
    """In a plan: that it will be ready early, and how it is held till then; empty where there is no wait."""
    found = hold(a)
    return "" if found is None or a.batch.off_at is not None else f"{_early(found)} {_how(found, a)}"


def till_the_knife(a: Assessment) -> str:
    """Once it is off: how to keep it hot till it is sliced, and what never to fall under."""
    found = hold(a)
    if found is None:
        return f"Keep the middle at {numbers.both(HOT_C, a.person)} or above until you slice."
    return f"It is {numbers.hours(_half(found.hours.p50))} to the knife.\n{_how(found, a)}"


def reading(a: Assessment, core_c: Celsius) -> str:
    """A core read in the hold: how long it stays hot in the way it lies, or that it is time to eat or to chill."""
    limit = numbers.both(HOT_C, a.person)
    if core_c < HOT_C:
        return (
            f"It is under {limit}: eat it within the hour, or chill it now and heat it again later.\n"
            "Say «in the chill» when you do, and send the core."
        )
    told = ", ".join(f"{WAYS[way]} {_span(hours)}" for way, hours in by_itself(a))
    return f"It holds: {numbers.temperature(core_c, a.person)}.\nAbove {limit} it stays from now on {told}."


def asked(a: Assessment) -> str:
    """How to hold it, for whoever asks."""
    found = hold(a)
    if found is not None:
        return f"{_how(found, a)}\n{_by_itself(a)}\n{cautions.WORDS['hold_at_140f']}"
    return (
        f"Hold it wrapped, with a probe in it, at {numbers.both(HOT_C, a.person)} or above in the middle.\n{_by_itself(a)}\n"
        f"Longer than that: an oven or the pit at {numbers.both(OVEN_C, a.person)}. Falling under "
        f"{numbers.both(HOT_C, a.person)} and nobody at the table yet: chill it, and heat it again later."
    )


def _early(found: Hold) -> str:
    return f"It may be ready {_span(found.hours)} before the knife, so that a slow one is still in time."


def _how(found: Hold, a: Assessment) -> str:
    limit = numbers.both(HOT_C, a.person)
    oven = f"an oven or the pit at {numbers.both(OVEN_C, a.person)}"
    enough = found.enough
    if enough is None:
        return f"Hold it wrapped in {oven}, a probe in it.\nNever under {limit} in the middle."
    stays = dict(found.by_itself)[enough]
    longest = min(stays.p10, found.longest)
    return (
        f"Hold it {WAYS[enough]}.\nNine in ten stay above {limit} for {numbers.hours(_half(longest))}. "
        f"Longer, or without a probe in it: {oven}."
    )


def _by_itself(a: Assessment) -> str:
    told = ", ".join(f"{WAYS[way]} {_span(hours)}" for way, hours in by_itself(a))
    return f"Above {numbers.both(HOT_C, a.person)} it stays by itself: {told} (computed; a probe in it knows better)."


def _span(hours: Band) -> str:
    return f"{numbers.hours(_half(hours.p10))} to {numbers.hours(_half(hours.p90))}"


def _half(hours: Hours) -> Hours:
    """To the half hour, downwards."""
    return max(int(hours * 2) / 2, 0.5)
