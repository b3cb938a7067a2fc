"""What was told of the meat or of what went in, and is put right by its number alone: «oops 18», «55 not 48»."""

from collections.abc import Mapping, Sequence
from math import isclose
from typing import Final

from bot.conversation import righting
from bot.intents.intents import Correct
from bot.measures import from_house, to_house
from core.batch.events import Changed
from core.service import batches
from core.service.turn import Turn

_NOTHING = 1e-9  # in any unit: a number that was typed as 0
_FINEST = 4  # decimals; nobody types more of a weight or a thickness
SAME = 0.05  # in the unit in which it was typed
_UNITS: Final = {  # in which a number of each is typed
    **dict.fromkeys(("put_in_cure", "put_in_salt", "put_in_sugar"), ("g", "oz")),
    "mass": ("kg", "lb"), "thickness": ("mm", "in", "cm"),
}  # fmt: skip
_OPEN: Final = frozenset({"put_in_cure_most", "put_in_water", "pieces", "heaviest"})  # a spoon, litres: asked about


def just_told(turn: Turn, batch: str, intent: Correct) -> Mapping[str, object] | None:
    """The field that the last message told, with a number that is said without more: «8 g of cure», «oops 18».

    It is no reading of hours ago. Empty where the last message told a figure whose unit is open, None where none.
    """
    if intent.value is None or any(said is not None for said in (intent.was, intent.probe, intent.unit)):
        return None
    last = batches.last_event(turn, batch)
    if not isinstance(last.what, Changed) or turn.now - last.said_at > righting.LONG_AGO:
        return None
    told = {name: value for name, value in last.what.changes.items() if value is not None}
    if not told.keys() & (_UNITS.keys() | _OPEN):
        return None
    (field, was), *others = told.items()
    if others or field not in _UNITS:
        return {}
    return {field: _in_the_unit_told(intent.value, was, _UNITS[field])}


def _in_the_unit_told(value: float, was: float, units: Sequence[str]) -> float:
    """A number in the unit in which the one before it was typed; where two fit, «5 cm» or «50 mm», in the likelier."""
    many = {unit: decimals(from_house(was, unit)) for unit in units}
    fitting = [to_house(value, unit) for unit in units if many[unit] == min(many.values())]
    return min(fitting, key=lambda meant: max(meant, was) / max(min(meant, was), _NOTHING))


def by_its_number(turn: Turn, batch: str, intent: Correct) -> dict[str, object]:
    """«55 not 48» of who said, or had assumed, a thickness of 48 mm; «3.1 not 3.4» of a weight: that, in its unit."""
    a = batches.look(turn, batch)
    if intent.value is None or intent.was is None or intent.probe is not None:
        return {}
    thick = a.piece.thickness if a.batch.setup.thickness is None else a.batch.setup.thickness
    for field, was, units in (("thickness", thick, ("mm", "in", "cm")), ("mass", a.batch.setup.mass, ("kg", "lb"))):
        unit = next((one for one in units if abs(from_house(was, one) - intent.was) < SAME), None)
        if unit is not None:
            return {field: to_house(intent.value, unit)}
    return {}


def decimals(value: float) -> int:
    """How many decimals a number must have been typed with."""
    return next((many for many in range(_FINEST) if isclose(value, round(value, many), rel_tol=1e-9)), _FINEST)


def is_weighed(turn: Turn, batch: str) -> bool:
    """Whether the cure was weighed for the batch: then «thats kilos» may be of any number, and changes no weight."""
    return not {"brine", "into_cure"}.isdisjoint(batches.look(turn, batch).batch.done)
