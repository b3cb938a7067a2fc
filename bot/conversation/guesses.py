"""What is guessed at first of a person: units and law by the place, lengths by the weights; what was said stays."""

from dataclasses import replace
from typing import Any

from bot.intents.zones import law_of, units_of
from core.person import Person, Units
from core.service import batches
from core.service.turn import Turn


def with_place(turn: Turn, changes: dict[str, Any]) -> dict[str, Any]:
    """With the first zone comes a first guess of the units, and of the law before the first batch; what was said stays.

    Who travels later keeps the law of home, and who named another on the way has that of home again there.
    """
    person, guessed = turn.person, dict[str, Any]()
    if not (person.zone_known or person.units_known):
        guessed["units"] = units_of(changes["zone"])
    law = law_of(changes["zone"])
    unsaid = person.jurisdiction == Person.jurisdiction and not batches.all_of(turn, person.id)
    if law and (unsaid or not person.zone_known):
        guessed["jurisdiction"] = law
    if changes["zone"] == person.home_zone and person.home_law not in ("", person.jurisdiction):
        guessed["jurisdiction"] = person.home_law
    return guessed | changes


def with_length(person: Person, changes: dict[str, Any]) -> dict[str, Any]:
    """Who weighs in kilos measures in millimetres, unless they said otherwise."""
    units = changes.get("units")
    if not isinstance(units, Units) or units.mass == person.units.mass or units.length != person.units.length:
        return changes
    return changes | {"units": replace(units, length="mm" if units.mass == "kg" else "in")}
