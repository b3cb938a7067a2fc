"""What a whole bird feeds, and how heavy one is bought, in words."""

from math import ceil, floor

from bot.wording import numbers
from bot.wording.language import say
from core.answers.amounts import WHOLE_BIRD, Span
from core.person import Person
from core.units import Celsius, Hours, Kilograms


def birds(people: int, raw: Span, person: Person) -> str:
    """What to buy of a bird with its bones."""
    return say(
        "Buy {low} to {high} of whole bird for {people} people: {least} to {most} each, bones counted, the more with leftovers.\n"
        "Small ones cook sooner and more evenly than one big one.",
        low=numbers.mass(raw.low, person),
        high=numbers.mass(raw.high, person),
        people=people,
        least=numbers.mass(WHOLE_BIRD[0], person),
        most=numbers.mass(WHOLE_BIRD[-1], person),
    )


def so_many(mass: Kilograms, people: int, raw: Span, person: Person) -> str:
    """How many birds of that weight."""
    return say(
        "{few} to {many} birds of {mass} for {people} people: {low} to {high} in all, bones counted.",
        few=ceil(raw.low / mass),
        many=ceil(raw.high / mass),
        mass=numbers.mass(mass, person),
        people=people,
        low=numbers.mass(raw.low, person),
        high=numbers.mass(raw.high, person),
    )


def does_it(mass: Kilograms, people: int, raw: Span, person: Person) -> str:
    """Whether a bird of that weight is enough."""
    fields = {"mass": numbers.mass(mass, person), "people": people}
    if mass >= raw.high:
        return say("Yes: {mass} is enough for {people}, with leftovers.", **fields)
    if mass >= raw.low:
        return say("Yes: {mass} is enough for {people}.", **fields)
    return say("No: {mass} is too little for {people}.", **fields)


def feeds(mass: Kilograms, people: tuple[float, float], person: Person) -> str:
    """How many a bird feeds."""
    few, many = people
    return say(
        "A bird of {mass} feeds {few} to {many}: {least} to {most} raw each, bones counted.",
        mass=numbers.mass(mass, person),
        few=max(floor(few + 0.05), 1),
        many=max(floor(many + 0.05), 1),
        least=numbers.mass(WHOLE_BIRD[0], person),
        most=numbers.mass(WHOLE_BIRD[-1], person),
    )


def too_low(degrees: tuple[Celsius, Celsius, Celsius], hours: tuple[Hours, Hours], person: Person) -> str:
    """A fire too low for a bird: what it has to pass and how long it may take there, and the fire to run instead."""
    pit, high, mark = degrees
    return say(
        "Too low for this bird: its middle has to pass {mark} within {most}.\nAt {pit} it may take {hours}: "
        "run {high} or more.",
        mark=numbers.both(mark, person),
        most=numbers.hours(hours[1]),
        pit=numbers.both(pit, person),
        hours=numbers.hours(ceil(hours[0] * 4.0) / 4.0),
        high=numbers.both(high, person),
    )
