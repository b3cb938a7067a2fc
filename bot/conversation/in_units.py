"""The unit in which a question is answered: «how much charcoal in kg», or «1640 g», of who reads pounds."""

from dataclasses import replace
from typing import Final

from bot import measures
from bot.intents.sums.fitting import SMALLEST_PIECE
from core import patterns as re
from core.batch.assess import Assessment
from core.person import Units

_NAMED: Final = re.compile(
    r"\b(?:in|as) (?:(?P<kg>kg|kilos?|kilograms?)|(?P<lb>lbs?|pounds?)|(?P<c>celsius|centigrade|°?c)"
    r"|(?P<f>fahrenheit|°?f)|(?P<mm>mm|milli\w+)|(?P<inch>inch(?:es)?))(?=[ ?.!,;]*$)"
)

_HOW_MANY: Final = re.compile(r"\bhow many (?:(?P<kg>kg|kilos?|kilograms?)|(?:lbs?|pounds?))\b")
_METRIC: Final = frozenset({"kg", "g", "mm", "cm"})


def asked(text: str, units: Units) -> Units:
    """The units of a person, but for the one that a line names at its end."""
    found = _NAMED.search(text.lower())
    match found.lastgroup if found else None:
        case "kg" | "lb" as mass:
            return replace(units, mass=mass)
        case "c" | "f" as temperature:
            return replace(units, temperature=temperature)
        case "mm":
            return replace(units, length="mm")
        case "inch":
            return replace(units, length="in")
        case _:
            return units


def used_in(text: str, units: Units) -> Units:
    """The units of a sum: as its line asks for, else as all of its meat is weighed and measured.

    A few grams of curing salt or of a portion say nothing of a scale for meat.
    """
    wanted, named = _HOW_MANY.search(text), asked(text, units)
    if wanted or named != units:
        return named if wanted is None else replace(units, mass="kg" if wanted["kg"] else "lb")
    told = [m for m in measures.find(text) if m.kind == "length" or m.value >= SMALLEST_PIECE]
    scales = {m.unit in _METRIC for m in told if m.kind == "mass"}
    rules = {m.unit in _METRIC for m in told if m.kind == "length"}
    mass = units.mass if len(scales) != 1 else "kg" if scales.pop() else "lb"
    length = units.length if len(rules) != 1 else "mm" if rules.pop() else "in"
    return replace(units, mass=mass, length=length)


def said_in(a: Assessment, text: str) -> Assessment:
    """The batch as it is told to whoever asks in that unit."""
    units = asked(text, a.person.units)
    return a if units == a.person.units else replace(a, person=replace(a.person, units=units))
