"""Words for fish that was frozen: whether that kills its worms, and what it does not do."""

from collections.abc import Sequence

from bot.wording import numbers
from bot.wording.language import say
from core.cure.penetration import Quantiles
from core.person import Person
from core.units import Fraction, Hours, Metres, celsius_from_fahrenheit


def worms(told: Sequence[tuple[str, bool]], person: Person) -> str:
    """Whether a freezing was enough, for each temperature that was meant: what was typed, and the verdict."""
    rule = rules(person)
    if len({enough for _, enough in told}) > 1:
        yes, no = (next(typed for typed, enough in told if enough is wanted) for wanted in (True, False))
        lead = say(
            "At {yes} that kills the worms, at {no} it does not: look at the scale of the freezer.", yes=yes, no=no
        )
    elif told[0][1]:
        lead = say("That is enough to kill the worms of fish: {typed}.", typed=told[0][0])
    else:
        lead = say("That is not enough to count on against worms: {typed}.", typed=told[0][0])
    return f"{lead}\n{rule}\n{still(person)}"


def unknown(person: Person) -> str:
    """How cold or how long is not known: the rule, and nothing said of this fish."""
    lead = say(
        "Whether that killed the worms hangs on how cold and how long: type both, like «frozen at -20 c for 7 days»."
    )
    return f"{lead}\n{rules(person)}\n{still(person)}"


def rules(person: Person) -> str:
    """The two freezings of the food code."""
    return say(
        "The food code asks {cold} or colder for 7 days, or {colder} for 15 h once it is solid; a freezer at {usual} never does.",
        cold=numbers.both(-20.0, person),
        colder=numbers.both(-35.0, person),
        usual=numbers.both(celsius_from_fahrenheit(0.0), person),
    )


def still(person: Person) -> str:
    """What frost does not do, and what makes it needless."""
    return say(
        "Smoked hot to {done} for 30 min they die anyway. Frost kills no germs: fish cold-smoked or cured raw I do not plan. "
        "Open its pack, thaw it in the fridge, then salt it.",
        done=numbers.at_least(celsius_from_fahrenheit(160.0), person),
    )


def salted(strength: Fraction, thick: Metres, taken: Sequence[tuple[Hours, Quantiles]], person: Person) -> str:
    """The salt that fish takes in a strong brine after each of some hours."""
    rows = ", ".join(
        say(
            "{low} to {high} in {hours}",
            low=numbers.percent(salt.p10, 1),
            high=numbers.percent(salt.p90, 1),
            hours=numbers.hours(hours),
        )
        for hours, salt in taken
    )
    return say(
        "An hour for small fish, two for a thick side, as the leaflets have it.\n"
        "In {strength} one that is {thick} thick takes about {rows} of salt at its thickest. "
        "Fry a slice and taste: longer is saltier, and no salt of yours makes it keep without the cold.",
        strength=numbers.percent(strength),
        thick=numbers.length(thick, person),
        rows=rows,
    )


def typed(degrees: float, unit: str, hours: Hours) -> str:
    """«-20 °C for 7 days»."""
    return say("{degrees} for {span}", degrees=f"{degrees + 0.0:g} °{unit.upper()}", span=_span(hours))


def _span(hours: Hours) -> str:
    return numbers.hours(hours) if hours < 48 else numbers.days(numbers.half_down(hours / 24))
