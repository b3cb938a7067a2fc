"""What a falling core comes to, in words: kept hot for the table, or cold enough in time."""

from math import floor

from bot.wording import numbers
from bot.wording.language import say
from core.person import Person
from core.units import Celsius, Hours

HOT: Celsius = 60.0


def kept_hot(last: Celsius, stays: tuple[Hours, Hours], wanted: Hours | None, person: Person) -> str:
    """How long it stays at 60 °C or above by its last two readings, and whether that does until the meal."""
    soon, late = stays
    hot = numbers.both(HOT, person)
    if wanted is not None and wanted <= soon:
        first = say("By your readings it is hot enough until you eat, with a probe in it.")
    elif wanted is not None:
        first = say(
            "It does not stay hot until you eat: into an oven at 70 to 75 °C (160 to 165 °F) now, or eat it now, "
            "or chill it quickly and heat it again."
        )
    else:
        first = say("Hot it is still: read it again before that time is over, or put it into a low oven.")
    rule = say(
        "It is {last}, and by your readings at {hot} in {soon} to {late}. For the table it stays at {hot} or above "
        "until it is eaten; below that it has 2 h off the heat, and then it is thrown away.",
        last=numbers.both(last, person),
        hot=hot,
        soon=numbers.hours(_less(soon)),
        late=numbers.hours(_less(max(soon, late))),
    )
    return f"{first}\n{rule}"


def in_time(falls: tuple[Hours, Hours], left: Hours) -> str:
    """Whether a core will be cold enough within the time that it has left."""
    soon, late = falls
    fields = {"soon": numbers.hours(soon), "late": numbers.hours(max(soon, late)), "left": numbers.hours(_less(left))}
    if late <= left:
        return say("At this pace it takes {soon} to {late} more, and it has {left} left: it should make it.", **fields)
    if soon <= left:
        return say(
            "At this pace it takes {soon} to {late} more, since it slows down, and it has {left} left. That is tight: "
            "more ice, stirred, and thick pieces halved.",
            **fields,
        )
    return say(
        "At this pace it takes {soon} more and longer, and it has {left} left: too slow. More ice now, stirred, and thick pieces halved.",
        **fields,
    )


def _less(hours: Hours) -> Hours:
    """To the five minutes below: nobody is told of more time than there is."""
    return floor(hours * 12 + 1e-6) / 12
