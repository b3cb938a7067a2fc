"""What shows that the fire burned while the core was still on its way up, and what the cook says of it.

A pit at 200 °F is no pit without heat, nor is one that stands near what it is meant to hold, where that is less. A core
that rose between two readings shows heat at the first of them; at the second it may rise already on what it holds. The
limits are ours (status DERIVED; docs/science/safety.md).
"""

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from core.safety.history import Reading, ordered, printed_f
from core.safety.record import Incident, Record
from core.safety.told import number
from core.units import Fahrenheit, Hours, fahrenheit_from_celsius

PIT_HOT_F: Final = 200.0
PIT_WARM_F: Final = 160.0  # below it no pit counts, whatever it is meant to hold: meat is not brought past 140 °F in it
NEAR_F: Final = 20.0  # under what it is meant to hold
RISE_F: Final = 2.0  # more than a probe moved in its hole


def last_heat(incident: Incident, record: Record, before: Sequence[Reading]) -> Reading | None:
    """The last sign of heat before a fire was found out.

    Parameters
    ----------
    incident
        The fire that went out.
    record
        The batch, for its readings of the pit.
    before
        Core readings of the cook up to the incident, in order.

    Returns
    -------
    The pit reading, or the first of the two core readings; None where nothing shows heat after going on. [°C]
    """
    on = record.meat_on_at
    if on is None:
        return None
    pits = [r for r in _hot_pits(record) if on <= r.at <= incident.at]
    rises = [a for a, b in pairwise(before) if printed_f(b.celsius) - printed_f(a.celsius) >= RISE_F]
    return max((*pits, *rises), key=lambda r: r.at, default=None)


def heat_again(incident: Incident, record: Record) -> Reading | None:
    """The first pit reading after a fire was found out that shows it burning again; None without one. [°C]"""
    return next((r for r in _hot_pits(record) if r.at > incident.at), None)


def hot_from(record: Record) -> Fahrenheit:
    """From where on a pit reading shows a fire. [°F]"""
    meant = record.pit_meant_c
    near = PIT_HOT_F if meant is None else fahrenheit_from_celsius(meant) - NEAR_F
    return min(PIT_HOT_F, max(PIT_WARM_F, near))


def _hot_pits(record: Record) -> list[Reading]:
    return [r for r in ordered(record.pit) if printed_f(r.celsius) >= hot_from(record)]


def said_hours(incident: Incident, record: Record) -> Hours | None:
    """The longest that the cook says it was out, with this telling or a later one. [h]"""
    later = (i for i in (incident, *record.incidents) if i.what == incident.what and i.at >= incident.at)
    hours = (number(i, "hours") for i in later)
    return max((h for h in hours if h is not None), default=None)
