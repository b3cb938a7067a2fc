"""What is pumped into a piece, and what it took up, in words."""

from bot.wording import numbers
from bot.wording.language import say
from core.person import Person
from core.units import Fraction, Kilograms


def inject(mass: Kilograms, pump: Fraction, doses: tuple[tuple[Fraction, Kilograms], ...], person: Person) -> str:
    """How much pickle is injected, and the curing salt in it."""
    (one, first), (other, second) = doses
    return say(
        "Inject {pickle} of pickle, {pump} of {mass}: it then weighs {after}. Weigh the meat before and after.\n"
        "All of the curing salt is in that: {first} of the {one} kind, or {second} of the {other} kind. "
        "So strong a pickle is not for tasting. Injected meat is no longer intact.",
        pickle=numbers.grams(pump * mass),
        pump=numbers.percent(pump, 1),
        mass=numbers.mass(mass, person),
        after=numbers.mass((1.0 + pump) * mass, person),
        first=numbers.grams(first),
        one=numbers.percent(one),
        second=numbers.grams(second),
        other=numbers.percent(other),
    )


def taken_up(pickle: Kilograms, before: Kilograms, person: Person) -> str:
    """What a piece took up by its weight."""
    return say(
        "That is {share} of its weight: {pickle} of pickle in {before}.\n"
        "About a tenth is usual. The dose goes by what it took up: less than you reckoned with, and less nitrite is in it.",
        share=numbers.percent(pickle / before, 1),
        pickle=numbers.grams(pickle),
        before=numbers.mass(before, person),
    )
