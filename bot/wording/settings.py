"""Words for settings, pauses and carrying on."""

from datetime import datetime
from typing import Any

from bot.wording import numbers, plans
from core.batch.assess import Assessment
from core.person import Person, Units
from core.plan.steps import Kind, State


def changed(person: Person, changes: dict[str, Any], now: datetime) -> str:
    """What is kept now, echoed so that a slip is seen."""
    said = "; ".join(dict.fromkeys(text for field in changes if (text := _one(field, person, now))))
    return f"Noted: {said}." if said else "Noted."


STANDING = ("zone", "units", "quiet_from", "flip_hours", "jurisdiction", "cooker", "fridge_c", "cure_nitrite_fraction")


def standing(person: Person, now: datetime) -> str:
    """Everything that holds for a person, one line each, and how it is changed."""
    lines = [f"{said[:1].upper()}{said[1:]}." for field in STANDING if (said := _one(field, person, now))]
    return "\n".join([
        "Change any of these in words, like «we are in Chicago» or «quiet from 23 to 6».", *lines,
    ])  # fmt: skip


def _one(field: str, person: Person, now: datetime) -> str:
    match field:
        case "zone":
            return f"your clock is {person.zone.replace('_', ' ')}, where it is {numbers.clock(now, person)} now"
        case "units":
            return f"units are {_units(person.units)}"
        case "quiet_from" | "quiet_to":
            return f"quiet from {person.quiet_from:%H:%M} to {person.quiet_to:%H:%M}; chill, fire and safety still speak up"
        case "flip_hours":
            return "flips at " + " and ".join(f"{t:%H:%M}" for t in person.flip_hours)
        case "jurisdiction":
            return f"limits by the law of {person.jurisdiction}"
        case "cooker":
            return f"you cook on {person.cooker}"
        case "fridge_c":
            return f"your fridge runs at {numbers.temperature(person.fridge_c, person)}"
        case "cure_nitrite_fraction" if person.cure_nitrite_fraction is not None:
            return f"your curing salt holds {numbers.percent(person.cure_nitrite_fraction)} nitrite"
        case "language":
            return f"language {person.language}"
        case _:
            return ""


def _units(units: Units) -> str:
    return f"{units.mass}, {units.length} and °{units.temperature.upper()}"


def paused(a: Assessment) -> str:
    """A pause, and what goes on all the same."""
    until = f" until {numbers.when(a.batch.paused_until, a.person, a.now)}" if a.batch.paused_until else ""
    return f"Quiet{until}. Fire, chill and safety still speak up. Say «back» to carry on."


def resumed(a: Assessment) -> str:
    """Carrying on, with what was missed."""
    missed = [s for s in a.plan.of_kind(Kind.FLIP) if s.state is State.SKIPPED and s.due < a.now] if a.plan else []
    lead = f"Welcome back. {len(missed)} flips passed; that does no harm.\n" if missed else "Welcome back. "
    return lead + plans.now(a)


def hand_over(to: str) -> str:
    """Somebody else takes over: what works today."""
    who = to or "whoever takes over"
    return f"Everybody in this chat gets the reminders and may answer them, so {who} only needs to be in it. The first «done» counts for all."
