"""A question of the batch that names the unit it wants: «how much charcoal in kg», of who reads pounds."""

from dataclasses import replace
from typing import Final

from core import patterns as re
from core.batch.assess import Assessment
from core.person import Units

_NAMED: Final = re.compile(
    r"\b(?:in|as) (?:(?P<kg>kg|kilos?|kilograms?)|(?P<lb>lbs?|pounds?)|(?P<c>celsius|centigrade|°?c)"
    r"|(?P<f>fahrenheit|°?f)|(?P<mm>mm|milli\w+)|(?P<inch>inch(?:es)?))(?=[ ?.!,;]*$)"
)


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


def said_in(a: Assessment, text: str) -> Assessment:
    """The batch as it is told to whoever asks in that unit."""
    units = asked(text, a.person.units)
    return a if units == a.person.units else replace(a, person=replace(a.person, units=units))
