"""What shows that the fire burned while the core was still on its way up, and what the cook says of it.

A pit at 200 °F is no pit without heat, nor is one that stands near what it is meant to hold, where that is less. A core
that rose between two readings shows heat at the first of them; at the second it may rise already on what it holds. The
limits are ours (status DERIVED; docs/science/safety.md).
"""

from collections.abc import Sequence
from datetime import datetime
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
THROUGH_F: Final = 140.0  # a core that is through the band needs no pit to show it


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


def cold_until(look: Reading, record: Record, core: Sequence[Reading]) -> Reading | None:
    """The last reading after the look that shows the fire still out: a pit that warms nothing, a core that fell.

    Parameters
    ----------
    look
        The core when the fire was found out.
    record
        The batch, for its readings of the pit.
    core
        Core readings of the cook in order.

    Returns
    -------
    The reading, before any pit that is hot again and any core at 140 °F; None where none shows it. [°C]
    """
    burning = [r.at for r in _hot_pits(record) if r.at >= look.at]
    warm = [r.at for r in core if r.at >= look.at and printed_f(r.celsius) >= THROUGH_F]
    until = min((*burning, *warm), default=None)
    fell = [r for r in core if printed_f(look.celsius) - printed_f(r.celsius) >= RISE_F]
    cold = [r for r in ordered(record.pit) if printed_f(r.celsius) < PIT_WARM_F]
    end = min(record.now, record.off_at or record.now)
    shown = [r for r in (*fell, *cold) if look.at < r.at <= end and (until is None or r.at < until)]
    return max(shown, key=lambda r: r.at, default=None)


def hot_from(record: Record, at: datetime) -> Fahrenheit:
    """From where on a pit reading shows a fire, by what the pit was meant to hold at the time. [°F]"""
    sets = ordered(record.pit_meant)
    meant = next((s for s in reversed(sets) if s.at <= at), None) or next(iter(sets), None)
    near = PIT_HOT_F if meant is None else fahrenheit_from_celsius(meant.celsius) - NEAR_F
    return min(PIT_HOT_F, max(PIT_WARM_F, near))


def _hot_pits(record: Record) -> list[Reading]:
    return [r for r in ordered(record.pit) if printed_f(r.celsius) >= hot_from(record, r.at)]


def said_hours(incident: Incident, record: Record) -> Hours | None:
    """The longest that the cook says it was out, with this telling or a later one. [h]"""
    later = (i for i in (incident, *record.incidents) if i.what == incident.what and i.at >= incident.at)
    hours = (number(i, "hours") for i in later)
    return max((h for h in hours if h is not None), default=None)
