"""The cook as a history: its readings, the modelled core between them, and what both have earned."""

from bisect import bisect_left
from collections.abc import Sequence
from datetime import datetime
from typing import Final

from core.errors import OutOfRange
from core.safety.history import (
    Reading,
    coldest_at_each_time,
    hours_between,
    lasting_above,
    ordered,
    until_cold,
    within,
)
from core.safety.lethality import DwellTable, Lethality, dwell_table, earned
from core.safety.record import Record
from core.units import ZERO_CELSIUS_IN_KELVIN, Celsius, Fahrenheit, Hours

FRIDGE_F: Final = 40.0
MODEL_MAY_EXCEED: Final = 1.0  # °C over a reading before the modelled low side is not the low side


def cook_readings(record: Record) -> tuple[Reading, ...]:
    """The core readings of cook, rest and chill, up to the first cold one: no reheating counts as the cook."""
    readings = within(record.possible_core, record.meat_on_at, record.stored_since)
    return until_cold(FRIDGE_F, coldest_at_each_time(readings))


def cook_history(record: Record) -> tuple[Reading, ...]:
    """The readings with the modelled low side between them; alone where one is colder than the model says."""
    readings = cook_readings(record)
    if not readings:
        return ()
    model = within(ordered(record.modelled_low), record.meat_on_at, readings[-1].at)
    if any(_modelled_at(model, r.at) > r.celsius + MODEL_MAY_EXCEED for r in readings):
        return readings
    return coldest_at_each_time((*readings, *model))


def way_up(record: Record, limit_f: Fahrenheit) -> tuple[Reading, ...]:
    """The readings on the fire; of whole meat also the modelled low side, from where on it was over a limit.

    That lies before the reading that shows it and after the last one that was too cold, and starts nothing. The rule
    looks at the surface of whole meat, which was hot long before; where the core itself is judged no model counts.
    """
    readings = within(cook_readings(record), None, record.off_at)
    warm = lasting_above(limit_f, readings)
    if record.delicate or not warm:
        return readings
    low = lasting_above(limit_f, within(cook_history(record), None, warm[0].at))
    return (*readings[: -len(warm)], *low, *warm)


def cook_lethality(record: Record) -> Lethality | None:
    """What the cook has earned by the table of its meat.

    Parameters
    ----------
    record
        The batch.

    Returns
    -------
    The kill; None where there is no table (fish, a bird fatter than the last column).
    """
    try:
        return None if record.fish else earned(cook_history(record), _table(record))
    except OutOfRange:
        return None


def hours_on(record: Record) -> Hours | None:
    """Hours since the meat went on, up to now or to when it came off."""
    if record.meat_on_at is None:
        return None
    return hours_between(record.meat_on_at, min(record.now, record.off_at or record.now))


def _table(record: Record) -> DwellTable:
    """Meat that is not intact, and any meat until nobody at risk is known to eat it, wants 7 log."""
    if record.bird:
        return dwell_table(record.species, record.fat_fraction)
    return dwell_table(record.species, None, 6.5 if record.whole and record.at_risk_eaters is False else 7.0)


def _modelled_at(model: Sequence[Reading], at: datetime) -> Celsius:
    """The modelled core at a time, between its points by a line; colder than all where the model says nothing."""
    place = bisect_left(model, at, key=lambda r: r.at)
    if place < len(model) and model[place].at == at:
        return model[place].celsius
    if not 0 < place < len(model):
        return -ZERO_CELSIUS_IN_KELVIN
    first, second = model[place - 1], model[place]
    share = hours_between(first.at, at) / hours_between(first.at, second.at)
    return first.celsius + share * (second.celsius - first.celsius)
