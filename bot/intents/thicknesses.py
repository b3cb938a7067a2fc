"""How thick the piece is, where the unit or the place is left open: asked about, never guessed."""

import re
from typing import Final

from bot import measures
from bot.intents.context import Context
from bot.intents.fields import THICK_AND_THIN
from bot.intents.intents import Change, Intent, Unclear

_THICKNESS_BARE: Final = re.compile(
    rf"^(?:(?:its|the|actually|sorry|no) )*thick(?:ness)?(?: (?:is|was|of|at|about|=))* (?P<value>{measures.NUMBER})$"
)
_ENDS: Final = re.compile(r"\bthick(?:est)? (?:end|side|part|bit|spot)\b")
_INCHES: Final = (0.5, 5.0)  # a thickness that people give in inches, in mm; between them it may be cm
_MILLIMETRES: Final = (12.0, 150.0)


def thicknesses(value: float, typed: str, context: Context) -> tuple[float, ...]:
    """What a thickness without a unit can be [m]: millimetres from 12, inches by a fraction or the person's own."""
    if _MILLIMETRES[0] <= value <= _MILLIMETRES[1]:
        return (measures.to_house(value, "mm"),)
    if _INCHES[0] <= value <= _INCHES[1] and ("/" in typed or context.units.length == "in"):
        return (measures.to_house(value, "in"),)
    return tuple(measures.to_house(value, unit) for unit in ("in", "cm") if _INCHES[0] <= value <= _MILLIMETRES[0])


def two_thicknesses(text: str, context: Context) -> Intent | None:
    """«thickest bit 55, thinnest 40 mm»: the cure has to reach the middle of the thickest; which that is, is asked."""
    lengths = measures.of_kind(text, "length")
    typed = {float(n) for n in re.findall(r"(?<![\w.])\d{1,3}(?:\.\d{1,2})?", text)}
    if len(typed) < 2 or not THICK_AND_THIN.search(text) or not (lengths or _ENDS.search(text)):
        return None
    both = sorted(typed, reverse=True)[:2]
    unit = lengths[0].unit if lengths else None
    ways = [(measures.to_house(value, unit),) if unit else thicknesses(value, text, context) for value in both]
    metres = [metre for way in ways for metre in way]
    return Unclear("unit", text[:60], tuple(Change({"thickness": one}) for one in metres))


def thickness_without_unit(text: str, context: Context) -> Intent | None:
    """«thickness is 48»: in the unit that fits, asked about where two do."""
    found = _THICKNESS_BARE.search(text)
    value = measures.number(found["value"]) if found else None
    if value is None:
        return None
    options = tuple(Change({"thickness": metres}) for metres in thicknesses(value, text, context))
    return options[0] if len(options) == 1 else Unclear("unit", text[:60], options)
