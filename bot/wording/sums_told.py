"""What mixes and fires that somebody told by their own figures come to, in words."""

from bot.wording import numbers
from bot.wording.language import decimal, say
from core.person import Person
from core.units import Fraction, Hours, Kilograms


def soaked(start: Fraction, end: Fraction, water: Kilograms) -> str:
    """Where salty meat ends in fresh water, and that it takes days to get there."""
    return say(
        "At the very end, evened out, {end} in meat and water alike; it started at {start}.\n"
        "In {water} l it gets only part of the way in a few hours. Keep it in the fridge, change the water, and fry a slice to taste.",
        end=numbers.percent(end),
        start=numbers.percent(start),
        water=numbers.plain(round(water, 2)),
    )


def thinned(water: Kilograms, shares: tuple[Fraction, Fraction], cure: tuple[Kilograms, Fraction]) -> str:
    """Water that brings a salty tub to a share, and what that does to the curing salt in it."""
    lines = [
        say(
            "Add {water} l of water: that brings it from {before} to {after} salt.",
            water=decimal(water, 2),
            before=numbers.percent(shares[0]),
            after=numbers.percent(shares[1]),
        )
    ]
    more, left = cure
    if more:
        lines.append(
            say(
                "The nitrite thins with it, to {left} of what it was: {more} more of the same curing salt keep its level. Check that by its packet.",
                left=numbers.share(left),
                more=numbers.grams(more),
            )
        )
    else:
        lines.append(
            say(
                "The nitrite thins with it, to {left} of what it was; tell me the curing salt.",
                left=numbers.share(left),
            )
        )
    return "\n".join(lines)


def burnt(needed: Kilograms, hours: Hours, has: Kilograms | None, person: Person) -> str:
    """The fuel for so many hours by what somebody burns, and what is left of what there is."""
    lines = [
        say("{needed} burn in {hours}.", needed=numbers.mass(needed, person), hours=numbers.hours(hours)),
        say("Wind, frost and opening the lid take more: have a fifth in hand, and never let it run empty."),
    ]
    if has is None:
        return "\n".join(lines)
    rest = numbers.mass(abs(has - needed), person)
    lead = say("Yes, with {rest} over.", rest=rest) if has >= needed else say("No, {rest} are missing.", rest=rest)
    return "\n".join([lead, *lines])


def burns_for(hours: Hours, has: Kilograms, person: Person) -> str:
    """How long so much fuel lasts by what somebody burns."""
    return say(
        "{has} last {hours} at that. Wind, frost and opening the lid take more: have a fifth in hand.",
        has=numbers.mass(has, person),
        hours=numbers.hours(numbers.half_down(hours)),
    )
