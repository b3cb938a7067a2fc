"""What the sums of the calendar come to, in words: the day first, then how it was counted."""

from collections.abc import Sequence
from datetime import datetime
from math import ceil

from bot.wording import numbers
from bot.wording.language import say, say_n
from core.person import Person
from core.plan.anchors import LONGEST_CURE
from core.safety.storage import Keeping
from core.safety.thaw import Thaw
from core.units import Days, Hours, Kilograms


def out_on(first: datetime, out: datetime, days: int, of: tuple[bool, Person]) -> str:
    """The day so many days on; of a cure, what comes then."""
    cured, person = of
    said = say_n(
        "{out}: {n} day from {first}, which counts as day 0.",
        "{out}: {n} days from {first}, which counts as day 0.",
        days,
        n=days,
        out=numbers.day(out, person),
        first=numbers.day(first, person),
    )
    after = say(
        "Then it is rinsed, and dries overnight on a rack in the fridge. Whether the days are enough, thickness says."
    )
    return f"{said}\n{after}" if cured else said


def to_go(days: int, out: datetime, person: Person) -> str:
    """The days that are left of so many, and the day on which they are over."""
    return say("{left} It is out on {out}.", left=still_to_go(days), out=numbers.day(out, person))


def still_to_go(days: int) -> str:
    """The days from today on."""
    return say_n("{n} day to go.", "{n} days to go.", days, n=days)


def between(first: datetime, second: datetime, days: int, person: Person) -> str:
    """The days from one day to another."""
    return say_n(
        "{n} day from {first} to {second}; the first counts as day 0.",
        "{n} days from {first} to {second}; the first counts as day 0.",
        days,
        n=days,
        first=numbers.day(first, person),
        second=numbers.day(second, person),
    )


def thaw(mass: Kilograms, fridge: Thaw, water: Thaw, wet_first: bool, person: Person) -> str:
    """How long to thaw; in water first, where that is asked for."""
    said = _thaw(mass, fridge, water, person).split("\n")
    return "\n".join(said[::-1] if wet_first else said)


def _thaw(mass: Kilograms, fridge: Thaw, water: Thaw, person: Person) -> str:
    if _long(fridge.low) == _long(fridge.high):
        return say(
            "{high} in the fridge for {mass}, and a day in hand.\n"
            "In cold water, sealed and changed every 30 min: about {wet}, then cure or cook it at once.",
            high=_long(fridge.high),
            mass=numbers.mass(mass, person),
            wet=numbers.hours(water.high),
        )
    return say(
        "{low} to {high} in the fridge for {mass}; take the longer one and a day in hand.\n"
        "In cold water, sealed and changed every 30 min: about {wet}, then cure or cook it at once.",
        low=_long(fridge.low),
        high=_long(fridge.high),
        mass=numbers.mass(mass, person),
        wet=numbers.hours(water.high),
    )


def thaw_by(begin: datetime, wanted: datetime, late: bool, person: Person) -> str:
    """When it goes from the freezer into the fridge for a day."""
    if late:
        return say("The fridge alone is too slow for {wanted}: cold water.", wanted=numbers.day(wanted, person))
    return say(
        "Into the fridge on {begin} at the latest, to have it soft on {wanted}.",
        begin=numbers.day(begin, person),
        wanted=numbers.day(wanted, person),
    )


def soft_by(begin: datetime, soft: datetime, person: Person) -> str:
    """When it is soft, put into the fridge on a day."""
    return say(
        "In the fridge from {begin} it is soft on {soft}, by the longer figure.",
        begin=numbers.day(begin, person),
        soft=numbers.day(soft, person),
    )


def soft_at(soft: datetime, person: Person) -> str:
    """When it is soft in cold water."""
    return say("In cold water, sealed and changed, it is soft by about {soft}.", soft=numbers.clock(soft, person))


def use_by(days: tuple[datetime, ...], chart: Keeping, person: Person) -> str:
    """Until when something keeps that was cooked on a day."""
    cooked, last, longest = (numbers.day(one, person) for one in days)
    cold = numbers.at_most(chart.fridge_c, person)
    if chart.days == chart.longest:
        return say(
            "Eat it by {last}: {days} days from {cooked}, at {cold} or below. What is left then is frozen before that.",
            last=last,
            days=numbers.plain(chart.days),
            cooked=cooked,
            cold=cold,
        )
    return say(
        "Eat it by {last}, {longest} at the latest: {days} to {more} days from {cooked}, at {cold} or below.\n"
        "What is left then is frozen before that.",
        last=last,
        longest=longest,
        days=numbers.plain(chart.days),
        more=numbers.plain(chart.longest),
        cooked=cooked,
        cold=cold,
    )


def comes_out(first: datetime, outs: Sequence[datetime], person: Person) -> str:
    """The day on which a cure comes out that begins on another; where there are two, the surer one behind it."""
    first_, out = numbers.day(first, person), numbers.day(outs[0], person)
    if len(outs) == 1:
        return say("Begun {first}, it comes out {out} by that.", first=first_, out=out)
    return say(
        "Begun {first}, it comes out {out} at the least, {sure} to be sure.",
        first=first_,
        out=out,
        sure=numbers.day(outs[1], person),
    )


def is_enough(told: Days, of: tuple[Days, Days | None]) -> str:
    """Whether so many days are enough: for a middle that is pink, and by the trade's rule for even salt."""
    least, by_rule = of
    shown = {"told": numbers.days(told), "least": numbers.days(least)}
    if told < least:
        return say("No: {told} are too few, {least} are the least. A thick piece is injected or split.", **shown)
    if told > LONGEST_CURE:
        return say(
            "Too long: {told} are more than the {longest} that I let it lie.",
            **shown,
            longest=numbers.days(LONGEST_CURE),
        )
    if by_rule is not None and told < by_rule:
        return say(
            "Enough for a pink middle, yes: {told}, and {least} are the least. Not for even salt: that is {rule}.",
            **shown,
            rule=numbers.days(ceil(by_rule)),
        )
    return say("Long enough, and not too long: {told}.", **shown)


def _long(hours: Hours) -> str:
    return numbers.days(hours / 24.0) if hours >= 24.0 else numbers.hours(ceil(hours))


def out_by(
    at: tuple[datetime, datetime, datetime], days: tuple[Days, Days], late: tuple[bool, bool], person: Person
) -> str:
    """The day to put it in for a day on which it comes out: by the trade's rule, and by which the middle is pink.

    `late` says of each of the two whether it has gone by.
    """
    sure, latest, out = (numbers.day(one, person) for one in at)
    fields = {"sure": sure, "latest": latest, "out": out, "long": numbers.days(days[0]), "least": numbers.days(days[1])}
    fields["most"] = numbers.days(LONGEST_CURE)
    if late[1]:
        return say(
            "No day is left for it: out on {out} it would have gone in on {latest}. Inject it, split it, or take a later day.",
            **fields,
        )
    if late[0] or days[0] == days[1]:
        return say(
            "Into the cure on {latest} at the latest, to be out on {out}: {least}, by which 9 in 10 are pink in the middle.\n"
            "Sooner does no harm, cold, up to {most} in all.",
            **fields,
        )
    return say(
        "Into the cure on {sure}, to be out on {out}; on {latest} at the latest.\n"
        "{long} are the trade's rule, mm squared over 200; by {least} 9 in 10 are pink in the middle. Sooner does no harm, cold, "
        "up to {most} in all.",
        **fields,
    )


def at_odds(days: Sequence[datetime], person: Person) -> str:
    """A day of the week and a date that do not go together: both are counted, and which is meant is asked."""
    first, second = (numbers.day(one, person) for one in days)
    return say("The day of the week and the date do not go together: {first} or {second}? Here are both.", first=first, second=second)  # fmt: skip
