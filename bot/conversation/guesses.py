"""What is guessed of a person: units and law by the place, length by weight, degrees by use; what was said stays."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from bot.intents.intents import Temperature
from bot.intents.zones import law_of, units_of
from bot.wording import settings
from core.batch.events import Probe
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


def with_degrees(turn: Turn, read: Sequence[Temperature]) -> str:
    """Who types the meat or the pit in the other scale reads in it from now on; what is said of it, "" for nothing.

    One thermometer reads both, so its scale is theirs; that of a fridge has its own.
    """
    units = {t.unit for t in read if t.unit and t.probe in (Probe.CORE, Probe.PIT)}
    if len(units) != 1 or turn.person.degrees_known or units == {turn.person.units.temperature}:
        return ""
    turn.keep_person(units=replace(turn.person.units, temperature=units.pop()))
    return settings.degrees_by_use(turn.person)


def scale_said(person: Person, changes: dict[str, Any]) -> bool:
    """Whether a setting of units says one for temperatures: another than before, or nothing else that is new."""
    units = changes.get("units")
    return isinstance(units, Units) and (
        units.temperature != person.units.temperature or units.mass == person.units.mass
    )
