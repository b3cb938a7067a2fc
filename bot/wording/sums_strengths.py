"""What curing salt of another strength, and a dose out of curing salt in water, come to in words."""

from bot.wording import numbers
from bot.wording.language import say
from bot.wording.sums_packet import see_the_packet
from core.units import Fraction, Kilograms

WORTH_SAYING: Kilograms = 0.001


def swapped(mine: tuple[Kilograms, Fraction], theirs: tuple[Kilograms, Fraction], salt: Kilograms, told: bool) -> str:
    """As much nitrite of another kind, and what that changes of the plain salt; `salt` is missing, or too much. [kg]"""
    said = say(
        "{mine} of the {strong} kind hold as much nitrite as {theirs} of the {weak} kind.",
        mine=numbers.grams(mine[0]),
        strong=numbers.percent(mine[1]),
        theirs=numbers.grams(theirs[0]),
        weak=numbers.percent(theirs[1]),
    )
    lines = [said] if told else [said, see_the_packet()]
    if salt >= WORTH_SAYING:
        lines.append(say("They bring less salt: put {salt} of plain salt in with them.", salt=numbers.grams(salt)))
    elif salt <= -WORTH_SAYING:
        lines.append(say("They bring more salt: leave out {salt} of the plain salt.", salt=numbers.grams(-salt)))
    return "\n".join(lines)


def tell_the_meat() -> str:
    """Whether the recipe is right, the meat says."""
    return say("Whether the recipe is right I see by the meat: tell me its weight, and I weigh the dose for it.")


def of_the_stock(wanted: Kilograms, mass: Kilograms) -> str:
    """So much of curing salt in water."""
    return say(
        "{stock} of it hold {wanted} of curing salt; take {water} less of the other water.\n"
        "Stir it until all is dissolved, and weigh it, do not pour it by the spoon.",
        stock=numbers.grams(mass),
        wanted=numbers.grams(wanted),
        water=numbers.grams(mass - wanted),
    )


def of_the_mix(wanted: Kilograms, mass: Kilograms) -> str:
    """So much of curing salt in plain salt."""
    return say(
        "{mix} of it hold {wanted} of curing salt and {salt} of plain salt: take so much less of the other salt.\n"
        "Grains part as they are shaken: stir it well right before you weigh. In water it mixes surer.",
        mix=numbers.grams(mass),
        wanted=numbers.grams(wanted),
        salt=numbers.grams(mass - wanted),
    )


def blend(share: Fraction, mass: Kilograms) -> str:
    """The nitrite of curing salt in plain salt."""
    return say(
        "{mass} of it hold {share} of nitrite. It takes the place of all the salt then: tell me that share for a dose.\n"
        "Grains part as they are shaken, so stir it well before each weighing, and label it with that figure.",
        mass=numbers.grams(mass),
        share=numbers.percent(share, 3),
    )
