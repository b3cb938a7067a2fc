"""What shows that the fire burned while the core was still on its way up, and what the cook says of it.

A pit at 200 °F is no pit without heat. A core that rose between two readings shows heat at the first of them; at the
second it may rise already on what it holds. Both limits are ours (status DERIVED; docs/science/safety.md).
"""

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from core.safety.history import Reading, ordered, printed_f
from core.safety.record import Incident, Record
from core.safety.told import number
from core.units import Hours

PIT_HOT_F: Final = 200.0
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
    pits = [r for r in ordered(record.pit) if on <= r.at <= incident.at and printed_f(r.celsius) >= PIT_HOT_F]
    rises = [a for a, b in pairwise(before) if printed_f(b.celsius) - printed_f(a.celsius) >= RISE_F]
    return max((*pits, *rises), key=lambda r: r.at, default=None)


def said_hours(incident: Incident, record: Record) -> Hours | None:
    """The longest that the cook says it was out, with this telling or a later one. [h]"""
    later = (i for i in (incident, *record.incidents) if i.what == incident.what and i.at >= incident.at)
    hours = (number(i, "hours") for i in later)
    return max((h for h in hours if h is not None), default=None)
