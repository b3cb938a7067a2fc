"""What a button says that offers one of the things that were perhaps meant."""

from datetime import datetime, timedelta
from typing import Any

from bot.intents.intents import (
    Ask,
    Cancel,
    Change,
    Choose,
    Debrief,
    Happened,
    Intent,
    MoveDeadline,
    Pause,
    Reading,
    Snooze,
    StepDone,
    StepMissed,
    StepSkipped,
    Temperature,
    Undo,
)
from bot.measures import from_house, to_house
from bot.wording import meat_names, numbers, steps
from bot.wording.language import Words, say
from core.person import Person

_PLACES = Words({"core": "meat", "pit": "pit", "fridge": "fridge", "brine": "brine", "room": "room"})
_FIELDS = Words(
    {
        "cure_nitrite_fraction": "cure",
        "salt_fraction": "salt",
        "thickness": "thick",
        "mass": "",
        "deadline": "meal",
    }
)
_HAPPENED = Words({"leaked": "The bag leaked", "left_out": "It was left out", "power_cut": "The fridge was off"})
_WORDS = Words(
    {True: "Yes", False: "No", None: "None", "brisket_flat": "Brisket flat", "brisket_point": "Brisket point"}
)
CHOSEN = Words(
    {
        "method/brine": "Brine in a bag",
        "method/dry": "Dry in a bag",
        "method/inject": "Inject",
        "purpose/cold": "Cold slices",
        "purpose/thin": "Thin cold slices",
        "purpose/hot": "Warm slices",
        "purpose/pulled": "Pulled",
        "wrap/none": "No wrap",
        "wrap/paper": "Paper",
        "wrap/foil": "Foil",
        "chill/ice": "Ice bath",
        "chill/fan": "Rack and fan",
        "chill/rack": "Rack",
        "chill/foil": "In foil",
    }
)  # as the questions about them call them


TO_CHANGE = Words(
    {
        "thickness": "Thickness",
        "deadline": "Meal time",
        "method": "Method",
        "purpose": "Eaten how",
        "pit_c": "Pit",
        "wrap": "Wrap",
        "chill": "Chill",
        "mass": "Weight",
    }
)


def label(option: Intent, person: Person) -> str:
    """The words on the button for one option."""
    match option:
        case Reading(temperatures=temperatures):
            return ", ".join(_temperature(t, person) for t in temperatures)
        case Change(changes={"frozen": False}):
            return say("Thawed")
        case Change(changes=changes):
            return ", ".join(_value(name, value, person) for name, value in changes.items())
        case Choose(slot="vouch"):
            return say("The fridge stayed cold")
        case Choose(slot="change", value=value):
            return TO_CHANGE[str(value)]
        case Choose(slot=slot, value=value):
            return _value(slot, value, person)
        case MoveDeadline(to=to, by=by):
            return say("Meal {moment}", moment=_moment(to, person)) if to else _moved(by) if by else say("Meal")
        case Debrief(mass=mass, grey=grey):
            return (
                say("{mass} after", mass=numbers.mass(mass, person))
                if mass
                else say("{length} grey", length=numbers.length(grey or 0.0, person))
            )
        case _:
            return _of_step(option, person)


def _moved(by: timedelta) -> str:
    if by < timedelta(0):
        return say("Meal {by} earlier", by=numbers.span(-by))
    return say("Meal {by} later", by=numbers.span(by))


def _of_step(option: Intent, person: Person) -> str:
    match option:
        case StepDone(at=at) if at is not None:
            return f"{_moment(at, person)}"
        case StepDone(step="off"):
            return say("It is off the fire")
        case StepDone(step=step) if step:
            return say("{name}: done", name=steps.name_of(step))
        case StepDone():
            return say("Done")
        case Happened(what="fire_out"):
            return say("The fire is out")
        case Happened(what="forgot_cure"):
            return say("Forgot the cure")
        case Happened(what=what):
            return _HAPPENED[what]
        case Pause():
            return say("I am away")
        case Cancel():
            return say("Drop it")
        case Undo(step=step) if step:
            return say("Take back: {name}", name=steps.name_of(step))
        case Undo():
            return say("Take it back")
        case StepMissed():
            return say("Forgot it")
        case StepSkipped():
            return say("Leave it out")
        case Ask(topic="now"):
            return say("What comes next")
        case Ask(topic="since"):
            return say("So long already")
        case Ask(topic="safe"):
            return say("Safe to eat")
        case Snooze(by=by, until=until):
            if until:
                return say("Later, {moment}", moment=_moment(until, person))
            return say("In {by}", by=numbers.span(by)) if by else say("Later")
        case _:
            return type(option).__name__


def _temperature(temperature: Temperature, person: Person) -> str:
    unit = (temperature.unit or person.units.temperature).upper()
    place = _PLACES[temperature.probe.value] if temperature.probe else say("meat")
    read = f"{numbers.plain(temperature.value)} °{unit} {place}"
    return f"{read} {numbers.clock(temperature.at, person)}" if temperature.at else read


def celsius(temperature: Temperature, person: Person) -> float:
    """How warm it is, in the unit that was said or the person's own. [°C]"""
    return to_house(temperature.value, temperature.unit or person.units.temperature)


def _value(name: str, value: Any, person: Person) -> str:
    if isinstance(value, datetime):
        return say("Meal {moment}", moment=_moment(value, person))
    match name, value:
        case "deadline", None:
            return say("Only the date")
        case "probe", str():
            place, _, unit = value.partition("/")
            return f"°{unit.upper()} {_PLACES.get(place, place)}"
        case "mass", float():
            return _weight(value, person)
        case "thickness", float():
            return say("{length} thick", length=_length(value, person))
        case (_, float()) if name.endswith("_fraction"):
            return f"{numbers.percent(value, 4)} {_FIELDS.get(name, name.removesuffix('_fraction'))}"
        case (_, float()) if name.endswith("_c"):
            return numbers.temperature(value, person)
        case "cut", str():
            return meat_names.cut_name(value)
        case _, str() if f"{name}/{value}" in CHOSEN:
            return CHOSEN[f"{name}/{value}"]
        case _:
            return _WORDS.get(value, str(value).replace("_", " ").capitalize())


def _length(value: float, person: Person) -> str:
    """In the unit in which it was typed, where that can be told: 40 mm is no round number of inches."""
    inches, mm = from_house(value, "in"), from_house(value, "mm")
    if abs(mm - round(mm)) < 1e-6 < abs(inches * 8 - round(inches * 8)):
        return f"{numbers.plain(mm)} mm"
    return numbers.length(value, person)


def _weight(value: float, person: Person) -> str:
    """In the unit in which it was typed, where that can be told: 3.2 lb is no round number of kilos."""
    pounds = from_house(value, "lb")
    typed = abs(pounds * 100 - round(pounds * 100)) < 1e-6 < abs(value * 100 - round(value * 100))
    return f"{numbers.plain(pounds)} lb" if typed else numbers.mass(value, person)


def _moment(at: datetime, person: Person) -> str:
    return f"{numbers.day(at, person)} {numbers.clock(at, person)}"
