"""What a sum about heat comes to: held temperatures, cooling, hours, fuel, boiling, sodium, a coarse scale."""

from math import floor

from bot.wording import numbers
from bot.wording.language import Words, decimal, later, say
from core.answers.amounts import Coarse
from core.answers.held import Held
from core.heat.band import Band
from core.heat.fire import Fuel
from core.person import Person
from core.safety.cooling import GROWS_BELOW_F
from core.safety.findings import Finding, Outcome
from core.safety.fire_out import HOT_F
from core.units import Celsius, Hours, Kilograms, Seconds, celsius_from_fahrenheit

MEATS = Words({
    "beef": later("beef"), "pork": later("pork"), "turkey": later("turkey"), "chicken": later("chicken"),
    "duck": later("birds"), "fish": later("fish"),
})  # fmt: skip
POULTRY_F = 165.0
FISH_F = 160.0
RED_F = 145.0
MINCED_F = 160.0  # sources.FSIS_SAFE_TEMPERATURES
LOGS_MEAT, LOGS_BIRDS = 6.5, 7.0  # sources.FSIS_COOKING_2021
PELLETS = later(
    "Have {load} of wood pellets for {hours} at {pit}, with a reserve in it.\nWind and frost take more: look at the hopper."
)


def held(found: Held, seconds: Seconds | None, person: Person) -> str:
    """A temperature that was held, against its table."""
    if found.asked is None:
        return say(
            "No: at {at} no time is enough; the table for {meat} begins at {first}.\n{home}",
            at=numbers.both(found.celsius, person),
            meat=MEATS[found.species],
            first=numbers.both(celsius_from_fahrenheit(found.first), person),
            home=_home(found.species, person),
        )
    return f"{_verdict(found, seconds, person)}\n{_home(found.species, person)}"


def _verdict(found: Held, seconds: Seconds | None, person: Person) -> str:
    fields = {
        "at": numbers.both(found.celsius, person),
        "meat": MEATS[found.species],
        "asked": _time(found.asked or 0.0),
        "told": _time(seconds or 0.0),
    }
    match found.enough(seconds):
        case None:
            return say(
                "{asked} at {at} or above, by the table for {meat}, whole and moist, at its coldest spot.", **fields
            )
        case True:
            return say("On paper yes: at {at} the table for {meat} asks {asked}, and you held {told}.", **fields)
        case _:
            return say("Not yet: at {at} the table for {meat} asks {asked}, and {told} is less. Go on.", **fields)


def held_of_any(red: Held, told: tuple[bool, Seconds], seconds: Seconds, person: Person) -> str:
    """A temperature that was held, of a meat that nobody names: whether it is enough for each, and the longest time."""
    enough, longest = told
    at, plain = numbers.both(red.celsius, person), _home("chicken", person)
    if enough:
        return say(
            "On paper yes, whatever meat it is: at {at} the longest that a table asks is {asked}, and you held {told}.\n{home}",
            at=at, asked=_time(longest), told=_time(seconds), home=plain,
        )  # fmt: skip
    if red.asked is None:
        return say("No, whatever meat it is: at {at} no time is enough. Go on.\n{home}", at=at, home=plain)
    return say(
        "Not yet, whatever meat it is: at {at} the table for beef and pork asks {asked}, that for birds more, and {told} is less. Go on.\n{home}",
        at=at, asked=_time(red.asked), told=_time(seconds), home=plain,
    )  # fmt: skip


def by_the_chart(found: Held, person: Person) -> str:
    """A whole piece of red meat that meets the consumer's chart, though not yet its table."""
    return say(
        "Yes: {safe} and 3 min of rest do for a whole piece of {meat}, at its coldest spot.\n"
        "The table, for a bigger kill, asks {asked} at {at}. Minced it is {minced}, and for anybody at risk {risk}.",
        safe=numbers.both(celsius_from_fahrenheit(RED_F), person),
        meat=MEATS[found.species],
        asked=_time(found.asked or 0.0),
        at=numbers.both(found.celsius, person),
        minced=numbers.both(celsius_from_fahrenheit(MINCED_F), person),
        risk=numbers.both(celsius_from_fahrenheit(POULTRY_F), person),
    )


def minced(person: Person) -> str:
    """Minced meat has no table of ours."""
    return say(
        "Not for minced meat, whose inside was outside: it goes to {minced}, of birds to {bird}.",
        minced=numbers.both(celsius_from_fahrenheit(MINCED_F), person),
        bird=numbers.both(celsius_from_fahrenheit(POULTRY_F), person),
    )


def _home(species: str, person: Person) -> str:
    if species in ("turkey", "chicken", "duck"):
        return say(
            "It counts only where the coldest of three spots never fell below. The plain answer for birds is {safe}, "
            "and always for anybody at risk.",
            safe=numbers.both(celsius_from_fahrenheit(POULTRY_F), person),
        )
    return say(
        "It counts for a whole piece, not injected or minced, whose coldest spot never fell below. "
        "The plain answer is {safe} and 3 min of rest.",
        safe=numbers.both(celsius_from_fahrenheit(RED_F), person),
    )


def logs(found: Held, seconds: Seconds) -> str:
    """How much of a kill a time is, of what the table is for."""
    goal = LOGS_BIRDS if found.species in ("turkey", "chicken", "duck") else LOGS_MEAT
    return say(
        "That is about {logs} of {goal} logs; a kill goes on evenly with the time.",
        logs=decimal(goal * seconds / (found.asked or 1.0), 1),
        goal=decimal(goal, 1),
    )


def fish(person: Person) -> str:
    """Fish has one answer."""
    return say(
        "Hot-smoked fish: {safe} in the middle, and 30 min there. There is no table of other times for it.",
        safe=numbers.at_least(celsius_from_fahrenheit(FISH_F), person),
    )


def _time(seconds: Seconds) -> str:
    if seconds == 0.0:
        return say("no time at all")
    return say("{n} s", n=f"{seconds:.0f}") if seconds < 120 else say("{n} min", n=decimal(seconds / 60.0, 1))


def fire_out(found: Finding, person: Person) -> str:
    """What a fire that went out means for a core of which only two readings are told."""
    match found.means:
        case Outcome.EAT_NOW:
            first = say(
                "Now: relight it, or an oven at 150 °C (300 °F), and bring it to {safe}. Eat it today.",
                safe=_safe(person),
            )
        case Outcome.SAFE if found.detail == "still_hot":
            first = say("It may go on: keep it above {hot} and finish it now.", hot=_hot(person))
        case Outcome.SAFE | Outcome.NOT_YET:
            first = say("Relight it, or an oven, and finish it now.")
        case Outcome.CANNOT_SAY:
            first = say("I cannot call it safe. How long was it without fire?")
        case _ if found.detail == "too_long" and found.value is not None:
            first = say(
                "Throw it away: it may have been below {hot} for up to {hours}, and cooking does not undo that.",
                hot=_hot(person),
                hours=numbers.hours(found.value),
            )
        case _:
            first = say("Throw it away. Cooking it again does not undo the time it was warm.")
    rule = say(
        "Once below {hot}, it has 2 h without heat; when nobody knows how long, it is thrown away. Not for anybody at risk.",
        hot=_hot(person),
    )
    return f"{first}\n{rule}"


def stayed_hot(person: Person) -> str:
    """A pit that fell while the core stayed above the danger zone."""
    return say(
        "No harm: the core stayed at {hot} or above. Bring the pit back up; the cook takes about as much longer as the pit was low.",
        hot=_hot(person),
    )


def _hot(person: Person) -> str:
    return numbers.both(celsius_from_fahrenheit(HOT_F), person)


def _safe(person: Person) -> str:
    return numbers.both(celsius_from_fahrenheit(POULTRY_F), person)


def creeps(ready: Band, pit: Celsius, target: Celsius, person: Person) -> str:
    """Hours in a pit so cool that the middle may never come there."""
    return say(
        "At a pit of {pit} it creeps: {soon} at the soonest until the core is {target}, and it may never get there.\n"
        "Run it hotter, at the latest towards the end.",
        pit=numbers.both(pit, person),
        soon=numbers.hours(floor(ready.p10 * 2.0) / 2.0),
        target=numbers.both(target, person),
    )


def slow_pit(person: Person) -> str:
    """Said of a pit that warms a middle slowly."""
    return say(
        "So cool a pit is slow: the core has to pass {limit} within 6 h, so read it by then and turn it up if it does not.",
        limit=numbers.at_least(celsius_from_fahrenheit(GROWS_BELOW_F), person),
    )


def cook(ready: Band, pit: Celsius, target: Celsius, person: Person) -> str:
    """Hours of a cook."""
    return say(
        "About {usual}, between {low} and {high}, at a pit of {pit}, until the core is {target}.\n"
        "Thickness counts more than weight; readings narrow it once the meat is on.",
        usual=numbers.hours(numbers.half(ready.p50)),
        low=numbers.hours(numbers.half_down(ready.p10)),
        high=numbers.hours(numbers.half_up(ready.p90)),
        pit=numbers.both(pit, person),
        target=numbers.both(target, person),
    )


def fuel(found: Fuel, hours: Hours, pit: Celsius, person: Person) -> str:
    """Fuel for the hours."""
    fields = {"hours": numbers.hours(hours), "pit": numbers.both(pit, person)}
    if found.kind == "electricity":
        return say(
            "About {load} kWh for {hours} at {pit}, with a reserve in it.\nWind and frost take more.",
            load=decimal(found.load, 1),
            **fields,
        )
    fields["load"] = numbers.mass(found.load, person)
    if found.kind == "pellets":
        return say(PELLETS, **fields)
    if found.kind == "propane":
        return say(
            "Have {load} of propane for {hours} at {pit}, with a reserve in it.\nWind and frost take more: a full second bottle is the surest.",
            **fields,
        )
    return say(
        "Some {low} to {high} of charcoal burn in {hours} at {pit}: have {load}.\n"
        "Fill it in at the start: running short costs the meat, and what does not burn keeps once the vents are shut. "
        "Wind and frost take more.",
        low=numbers.mass(found.practice.low or found.burnt.p10, person),
        high=numbers.mass(found.practice.high or found.burnt.p90, person),
        **fields,
    )


def lasts(has: Kilograms, hours: Hours, pit: Celsius, person: Person) -> str:
    """How long a fuel lasts, to the half hour below: a fire that starves costs the meat."""
    return say(
        "{has} last about {hours} at {pit}, with a reserve left for wind and lighting.\n"
        "Have more beside it: a fire that starves costs the meat.",
        has=numbers.mass(has, person),
        hours=numbers.hours(numbers.half_down(hours)),
        pit=numbers.both(pit, person),
    )


def goes_round(enough: bool) -> str:
    """Whether a fuel is enough."""
    return say("That will do.") if enough else say("Too close: have more.")


def coarse(dose: Kilograms, found: Coarse) -> str:
    """A small dose on a coarse scale."""
    fields = {
        "dose": numbers.grams(dose),
        "low": numbers.share(found.error_low),
        "high": numbers.share(found.error_high),
    }
    if not found.will_do:
        return say(
            "No: on that scale {dose} may be out by {low} to {high}, and a solution weighed on it is no closer.\n"
            "Borrow or buy one that shows 0.1 g, and check it with a known weight.",
            **fields,
        )
    return say(
        "Stir {cure} of curing salt into {in_water} of water, and weigh {stock} of that for {dose}.\n"
        "Straight on that scale the dose may be out by {low} to {high}. Take {water} less water for the brine.",
        cure=numbers.grams(found.cure),
        in_water=numbers.grams(found.water),
        stock=numbers.grams(found.stock),
        water=numbers.grams(0.9 * found.stock),
        **fields,
    )


def per_kilo(meat: Kilograms, grams: tuple[float, ...], spice: bool, person: Person) -> str:
    """Rub or spice for a piece."""
    if spice:
        return say(
            "{low} to {high} of pickling spice for {meat}; it scents and changes no dose.",
            low=numbers.grams(grams[0] * meat),
            high=numbers.grams(grams[1] * meat),
            meat=numbers.mass(meat, person),
        )
    return say(
        "About {usual} of rub for {meat}, from {low} to {high}, and no salt in it: the cure brought that.",
        usual=numbers.grams(grams[1] * meat),
        low=numbers.grams(grams[0] * meat),
        high=numbers.grams(grams[2] * meat),
        meat=numbers.mass(meat, person),
    )
