"""Words for a quantity that cannot be: what was said, what can be, and what to type instead."""

from bot.wording import meat_names, numbers
from bot.wording.language import Words, say
from core.errors import OutOfRange
from core.heat.cook import PIT_OVER_K, TARGET_HIGH_C
from core.person import Person

QUANTITIES = Words(
    {
        "mass": "weight",
        "thickness": "thickness",
        "target": "core temperature to take it off at",
        "pit": "pit temperature",
        "fridge": "fridge temperature",
        "temperature": "temperature",
        "nitrite_fraction": "strength of the curing salt",
        "salt_fraction": "share of salt",
        "water_share": "share of water",
        "pump_fraction": "share to inject",
        "days": "number of days",
    }
)
SHARES = frozenset(
    {"nitrite in the curing salt", "nitrate in the curing salt", "salt", "sugar", "pump", "salt in the brine",
     "salt wanted from this brine", "salt_fraction", "nitrite_fraction"}
)  # fmt: skip
EXAMPLES = Words(
    {
        "nitrite in the curing salt": "like 6.25 %",
        "thickness": "like 48 mm or 1.9 in",
        "nitrite_fraction": "like 6.25 %",
    }
)


def out_of_range(error: OutOfRange, person: Person) -> str:
    """What cannot be, and what can."""
    if error.quantity == "fridge":
        found, limit = numbers.temperature(error.value, person), numbers.both(4.4, person)
        return say(
            "A fridge at {found} is no place for a cure: it has to run at {limit} or below.\nTurn it down, then type what it reads, like «fridge runs at 3 c».",
            found=found,
            limit=limit,
        )
    if error.quantity == "target" and error.high < min(error.value, TARGET_HIGH_C):
        return say(
            "That pit is too cool for a core of {target}: it has to run at {least} or more.\nType another, or another core.",
            target=numbers.temperature(error.value, person),
            least=numbers.temperature(error.value + PIT_OVER_K, person),
        )
    if error.quantity == "salt in the pickle":
        return say(
            "No water dissolves that: the pickle would hold {found} salt, and {most} is the most.\n"
            "Take a stronger curing salt, pump more, or cure it dry or in a brine.",
            found=numbers.percent(error.value, 1),
            most=numbers.percent(error.high, 1),
        )
    name = QUANTITIES.get(error.quantity, error.quantity.replace("_", " "))
    low, high, value = (_shown(error, v, person) for v in (error.low, error.high, error.value))
    if error.quantity == "mass":
        return _mass(error, low, high, value)
    example = EXAMPLES.get(error.quantity, "")
    again = say(" Type it again, {example}.", example=example) if example else say(" Type it again.")
    return say(
        "A {name} of {value} cannot be right; I can take {low} to {high}.{again}",
        name=name,
        value=value,
        low=low,
        high=high,
        again=again,
    )


def _mass(error: OutOfRange, low: str, high: str, value: str) -> str:
    cut = meat_names.cut_name(error.of) if error.of else say("Meat")
    if error.value > error.high:
        return say(
            "{cut}: I can take {low} to {high} as one piece, not {value}.\n"
            "Type the weight again, or how many pieces it is, like «2 pieces».",
            cut=cut,
            low=low,
            high=high,
            value=value,
        )
    return say(
        "{cut}: I can take {low} to {high}, not {value}. Type the weight again, like 3.2 kg or 7 lb, or another cut.",
        cut=cut,
        low=low,
        high=high,
        value=value,
    )


def _shown(error: OutOfRange, value: float, person: Person) -> str:
    match error.unit:
        case "kg":
            return numbers.mass(value, person)
        case "m":
            return numbers.length(value, person)
        case "°C":
            return numbers.temperature(value, person)
        case "-" | "" if error.quantity in SHARES:
            return numbers.percent(value)
        case "-" | "":
            return numbers.plain(value)
        case unit:
            return f"{numbers.plain(value)} {unit}"
