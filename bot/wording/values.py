"""Words for the fields of a setup and for their values, as a change, a correction or a question names them."""

from collections.abc import Mapping
from typing import Any

from bot.wording import fire, meat_names, meats, numbers, plans
from bot.wording.language import Words, decimal, say
from bot.wording.settings import COOKERS
from core.batch.assess import Assessment
from core.cure.nitrite import skin_free

FIELDS = Words(
    {
        "mass": "weight",
        "thickness": "thickness",
        "deadline": "meal",
        "method": "method",
        "pit_c": "pit",
        "fridge_c": "fridge",
        "purpose": "eaten",
        "wrap": "",
        "chill": "chill",
        "cooker": "cooker",
        "cure_nitrite_fraction": "curing salt",
        "target_c": "off at",
        "at_risk_eaters": "",
        "cure_days": "days in the cure",
        "long_cure_confirmed": "",
        "salt_fraction": "salt",
        "sugar_fraction": "sugar",
        "pump_fraction": "pump",
        "cover_share": "",
        "nitrite_target": "nitrite",
        "brine_strength": "brine",
        "brine_hours": "hours in the brine:",
        "salting_hours": "hours in the salt:",
        "soak_hours": "soak",
        "rest_days": "sealed rest",
        "cure_nitrate_fraction": "nitrate in the cure",
        "sealed_faces": "",
        "vacuum": "",
        "wood": "wood",
        "heaviest": "the heaviest piece",
        "pieces": "pieces:",
        "cut": "cut",
        "product": "now it is",
        "lighter": "lit with",
        "outside_c": "outside",
        "wind_m_s": "",
        "water_share": "water",
        "frozen": "",
        "put_in_cure": "curing salt put in",
        "put_in_cure_most": "at most",
        "put_in_pumped": "pumped in",
        "put_in_water": "water put in",
        "put_in_salt": "salt put in",
        "put_in_sugar": "sugar put in",
        "law": "weighed by the law of",
        "fridge_vouched": "on your word, the fridge stayed at 4 °C (40 °F) or below",
    }
)


_IN_WORDS: dict[str, Mapping[Any, str]] = {
    "wrap": plans.WRAPS,
    "chill": plans.CHILLS,
    "lighter": fire.LIGHTERS,
    "cooker": COOKERS,
    "law": plans.LAWS,
}

WOODS = Words(
    {
        "cherry": "cherry", "apple": "apple", "hickory": "hickory", "oak": "oak", "mesquite": "mesquite",
        "maple": "maple", "pecan": "pecan", "alder": "alder", "beech": "beech", "walnut": "walnut", "plum": "plum",
        "pear": "pear", "peach": "peach", "birch": "birch", "ash": "ash", "olive": "olive", "orange": "orange",
        "apricot": "apricot", "almond": "almond", "chestnut": "chestnut",
    }
)  # fmt: skip

_IF_SO = Words(
    {
        "long_cure_confirmed": "so long in the cure, on your word",
        "pierced": "so no longer intact, and no faster: the stricter clocks count",
        "at_risk_eaters": "somebody at risk will eat it",
        "cover_share": "the rest of the pickle covers it",
        "sealed_faces": "one face under fat",
        "vacuum": "packed without air: fish stays at 3 °C (38 °F) or below, and opens to thaw",
        "frozen": "still frozen, it thaws first",
        "wind_m_s": "windy",
    }
)
_IF_NOT = Words(
    {
        "long_cure_confirmed": "not so long in the cure",
        "pierced": "no, still intact",
        "at_risk_eaters": "nobody at risk will eat it",
        "cover_share": "no cover brine",
        "sealed_faces": "no fat on a face",
        "vacuum": "not packed without air",
        "frozen": "thawed",
        "wind_m_s": "no wind",
    }
)


def _water(field: str, v: float, a: Assessment) -> str:
    """Water is weighed or measured: a kilo of it is a litre."""
    kg = v if field == "put_in_water" else v * skin_free(a.batch.setup.mass, a.batch.setup.skin_on)
    return say("{kg} kg (litres)", kg=decimal(kg, 2))


def _grams(v: float | None, *, up: bool) -> str:
    """What was weighed in, the most of a spoon rounded up; None where nobody told it."""
    if v is None:
        return say("not told")
    return numbers.grams_up(v) if up else numbers.grams(v)


def value(field: str, v: Any, a: Assessment) -> str:
    """A value of the setup in the person's units."""
    person = a.person
    match field:
        case "put_in_cure" | "put_in_cure_most" | "put_in_salt" | "put_in_sugar":
            return _grams(v, up=field == "put_in_cure_most")
        case "put_in_water" | "water_share":
            return _water(field, v, a)
        case "vacuum" if v and not meats.fish(a):  # the rule of the cold pack is that of fish
            return say("packed without air")
        case "mass" | "heaviest" | "put_in_pumped":
            return numbers.mass(v, person)
        case "thickness":
            return numbers.length(v, person)
        case "deadline":
            return numbers.when(v, person, a.now) if v is not None else say("without a date")
        case "pit_c" | "fridge_c" | "target_c" | "outside_c":
            return numbers.temperature(v, person)
        case "cure_nitrate_fraction" | "cure_nitrite_fraction" | "salt_fraction" | "sugar_fraction" | "pump_fraction":
            return numbers.percent(v)
        case "wood" | "fridge_vouched":
            return ", ".join(WOODS.get(one, one) for one in v.split("+")) if field == "wood" else ""
        case "brine_strength":
            return say("by the equilibrium") if v is None else say("of {v} by the clock", v=numbers.percent(v))
        case "method":
            return plans.method(a)
        case "brine_hours" | "salting_hours" | "soak_hours":
            return numbers.hours(v) if v else say("none")
        case "rest_days" | "cure_days":
            return numbers.days(v) if v else say("none")
        case "purpose":
            return meats.purpose_of(a, v)
        case "nitrite_target":
            return numbers.ppm(v) if v else say("none")
        case "product" | "cut":
            return (meat_names.PRODUCTS | meat_names.CUTS).get(v, str(v))
        case _ if field in _IF_SO:
            return (_IF_SO if v else _IF_NOT)[field]
        case _ if field in _IN_WORDS:
            return _IN_WORDS[field].get(v, str(v))
        case _:
            return (say("yes") if v else say("no")) if isinstance(v, bool) else str(v).replace("_", " ")
