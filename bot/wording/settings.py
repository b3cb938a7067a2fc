"""Words for settings, pauses and carrying on."""

from datetime import datetime, timedelta
from typing import Any

from bot.wording import batches, numbers, plans
from bot.wording.language import Words, name, place, say, say_n
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.person import Person, Units
from core.plan.steps import Kind, State, Step
from core.units import METRES_PER_FOOT


def changed(person: Person, changes: dict[str, Any], now: datetime) -> str:
    """What is kept now, echoed so that a slip is seen."""
    said = "; ".join(dict.fromkeys(text for field in changes if (text := _one(field, person, now))))
    away = person.home_zone.replace("_", " ") if "zone" in changes else ""
    back = say("\n«back home» sets it to {zone} again.", zone=away) if away else ""
    return say("Noted: {said}.", said=said) + back if said else say("Noted.")


COOKERS = Words(
    {
        "ceramic": "ceramic",
        "steel": "steel",
        "kettle": "kettle",
        "offset": "offset",
        "pellet": "pellet",
        "gas": "gas",
        "electric": "electric",
        "pot": "pot",
    }
)
COOKS = Words(
    {
        "ceramic": "you cook on a ceramic cooker",
        "steel": "you cook on a steel cooker",
        "kettle": "you cook on a kettle",
        "offset": "you cook on an offset",
        "pellet": "you cook on pellets",
        "gas": "you cook on gas",
        "electric": "you cook with electricity",
        "pot": "you cook in a pot",
    }
)
STANDING = (
    "zone",
    "units",
    "quiet_from",
    "flip_hours",
    "jurisdiction",
    "cooker",
    "altitude_m",
    "fridge_c",
    "cure_nitrite_fraction",
    "scale",
    "salt",
)


def standing(person: Person, now: datetime, about: str = "") -> str:
    """Everything that holds for a person, one line each, or what was asked for, and how it is changed."""
    how = say("Change any of these in words, like «we are in Chicago» or «quiet from 23 to 6».")
    fields = (about,) if about else STANDING
    lines = [f"{said[:1].upper()}{said[1:]}." for field in fields if (said := _one(field, person, now))]
    return "\n".join([*lines, say("«settings» shows all that holds for you.")] if about else [how, *lines])


def journey(to: str) -> str:
    """A journey that is still to come: the clock goes along when they are there, and nothing rests before they say."""
    return say(
        "Once you are there, say «i'm in {place}», and the hours go by the clock there.\n"
        "If nobody can flip meanwhile, say until when you are away: «away until monday».",
        place=to,
    )


def _one(field: str, person: Person, now: datetime) -> str:
    match field:
        case "zone":
            return say(
                "your clock is {replace}, where it is {now} now",
                replace=person.zone.replace("_", " "),
                now=numbers.clock(now, person),
            )
        case "units":
            return say("units are {units}", units=_units(person.units))
        case "quiet_from" | "quiet_to":
            return say(
                "quiet from {quiet_from} to {quiet_to}; chill, fire and safety still speak up",
                quiet_from=f"{person.quiet_from:%H:%M}",
                quiet_to=f"{person.quiet_to:%H:%M}",
            )
        case "flip_hours" if not person.flip_hours:
            return say("no calls for flips; the fridge is still asked for, and «flips at 8 and 20» brings them back")
        case "flip_hours":
            return say("flips at {hours}", hours=say(" and ").join(f"{t:%H:%M}" for t in person.flip_hours))
        case "jurisdiction":
            return say("limits by the law of {jurisdiction}", jurisdiction=plans.LAWS[person.jurisdiction])
        case "cooker":
            return COOKS[person.cooker]
        case "altitude_m" if person.altitude_m > 0.0:
            return say("your yard lies at {height}, so water boils colder", height=_height(person))
        case "fridge_c":
            return say("your fridge runs at {fridge}", fridge=numbers.temperature(person.fridge_c, person))
        case "cure_nitrite_fraction" if person.cure_nitrite_fraction is not None:
            return say(
                "your curing salt holds {cure_nitrite} nitrite",
                cure_nitrite=numbers.percent(person.cure_nitrite_fraction),
            )
        case "scale":
            return say("you weigh on a scale") if person.scale else say("you have no scale")
        case "salt":
            return say("your plain salt is fine") if person.salt == "fine" else say("your plain salt is coarse")
        case "language":
            return say("language {language}", language=name(person.language))
        case _:
            return ""


def degrees_by_use(person: Person) -> str:
    """That bare numbers count in the scale that was typed for the meat or the pit, and how that is undone."""
    if person.units.temperature == "c":
        return say("You type °C, so a bare number of meat or pit is °C for me from here on; «use f» changes it.")
    return say("You type °F, so a bare number of meat or pit is °F for me from here on; «use c» changes it.")


def _height(person: Person) -> str:
    if person.units.length == "in":
        return f"{person.altitude_m / METRES_PER_FOOT:.0f} ft"
    return f"{person.altitude_m:.0f} m"


def _units(units: Units) -> str:
    return say("{mass}, {length} and °{upper}", mass=units.mass, length=units.length, upper=units.temperature.upper())


def stays(name: str, zone: str) -> str:
    """A batch that others have too does not travel with its owner."""
    return say(
        "«{name}» stays on the clock of {zone}, where others have it too. Say it once more, and it goes by yours.",
        name=name,
        zone=place(zone),
    )


def paused(a: Assessment) -> str:
    """A pause, and what goes on all the same."""
    since = a.batch.paused_since
    if since is not None and since > a.now:
        lead = say(
            "Quiet from {since} to {until}, and as ever till then. Fire, chill and safety still speak up.",
            since=numbers.when(since, a.person, a.now),
            until=numbers.when(a.batch.paused_until, a.person, a.now) if a.batch.paused_until else "…",
        )
        return "\n".join(line for line in (lead, while_away(a)) if line)
    until = (
        say(" until {paused_until}", paused_until=numbers.when(a.batch.paused_until, a.person, a.now))
        if a.batch.paused_until
        else ""
    )
    lead = say("Quiet{until}. Fire, chill and safety still speak up. Say «back» to carry on.", until=until)
    return "\n".join(line for line in (lead, while_away(a)) if line)


def away_alone(a: Assessment) -> str:
    """One of several is away: the others are called all the same."""
    if a.batch.paused_until is None:
        return say("Noted: you are away, and the others are called as ever. Say «back» when you are.")
    return say(
        "Noted: you are away until {until}, and the others are called as ever. Say «back» when you are.",
        until=numbers.when(a.batch.paused_until, a.person, a.now),
    )


def while_away(a: Assessment) -> str:
    """Somebody stays with a fire; days away from what lies in the cure: flips may rest, the fridge may not."""
    if a.batch.phase is Phase.COOKING:
        return say("Somebody stays with the fire: hand it over, like «Jo has the fire from 20:00».")
    until = a.batch.paused_until
    if until is None or until - a.now < timedelta(days=1) or a.batch.phase is not Phase.CURING:
        return ""
    return say(
        "Flips may rest that long. Let somebody read the fridge once a day: it has to stay at {limit} or less. "
        "Whoever you hand it to gets the calls.",
        limit=numbers.both(4.4, a.person),
    )


def resumed(*those: Assessment) -> str:
    """Carrying on with one batch or with several, with what was missed and what is next of each."""
    missed = sum(len(_passed(a)) for a in those)
    lead = (
        say_n(
            "Welcome back. {n} flip passed; that does no harm.\n",
            "Welcome back. {n} flips passed; that does no harm.\n",
            missed,
            n=missed,
        )
        if missed
        else say("Welcome back. ")
    )
    if len(those) == 1:
        return lead + plans.now(those[0])
    return f"{lead.strip()}\n{batches.listed(those)}"


def _passed(a: Assessment) -> list[Step]:
    """The flips that nobody told of, as long as it lies in its cure."""
    if a.plan is None or a.batch.phase is not Phase.CURING:
        return []
    return [s for s in a.plan.of_kind(Kind.FLIP) if s.state is State.SKIPPED and s.due < a.now]
