"""What water boils at and how high that is, and how far a probe is out that was held into it."""

from bot.measures import from_house
from bot.wording.language import decimal, say
from core.person import Person
from core.units import METRES_PER_FOOT, Celsius, Metres

CLOSE_K = 1.1  # 2 °F: two home thermometers agree no better. Common practice


def boils(height: Metres, at: Celsius, person: Person) -> str:
    """Boiling water up there."""
    return say(
        "At {height} water boils at about {at}, by the standard atmosphere.\n"
        "So a probe reads that in boiling water there, and a simmer or a steamer is so much colder and slower.",
        height=_height(height, person),
        at=_tenths(at, person),
    )


def _height(height: Metres, person: Person) -> str:
    """A height as the person's maps have it."""
    if person.units.length == "in":
        return say("{feet} ft", feet=f"{from_house(height, 'in') / 12.0:.0f}")
    return say("{metres} m", metres=f"{height:.0f}")


def reads(shown: Celsius, at: Celsius, person: Person) -> str:
    """How far a probe is out that was held into boiling water."""
    k = shown - at
    off = abs(k) * (1.8 if person.units.temperature == "f" else 1.0)
    fields = {"off": f"{off:.1f} °{person.units.temperature.upper()}", "at": _tenths(at, person)}
    if abs(k) <= CLOSE_K:
        return say("It is right: {off} from {at} is as close as a probe is read.", **fields)
    if k > 0:
        return say("It reads {off} too high: take that off every reading.", **fields)
    return say("It reads {off} too low: add that to every reading.", **fields)


def so_high(at: Celsius, height: Metres, person: Person) -> str:
    """The height that a boiling point tells."""
    return say(
        "Water boils at {at} at about {height} m ({feet} ft), by the standard atmosphere; the weather moves it by a hundred metres or two.\n"
        "If you live lower than that, the thermometer is off: check it in ice water too.",
        at=_tenths(at, person),
        height=f"{round(height / 50.0) * 50}",
        feet=f"{round(height / METRES_PER_FOOT / 100.0) * 100}",
    )


def _tenths(at: Celsius, person: Person) -> str:
    f, c = f"{decimal(at * 1.8 + 32.0, 1)} °F", f"{decimal(at, 1)} °C"
    return f"{f} ({c})" if person.units.temperature == "f" else f"{c} ({f})"
