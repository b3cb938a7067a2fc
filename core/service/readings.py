"""Take readings: doubt what cannot be, keep the rest, derive everything again."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from core.batch import doubts
from core.batch.assess import Assessment, Change, assess
from core.batch.batch import Reading
from core.batch.doubts import Doubted
from core.batch.events import Probe, What
from core.errors import Gone
from core.service import batches, record
from core.service.turn import Turn
from core.units import Celsius

A_MOMENT = timedelta(minutes=1)  # after a reading of the same minute
SUPPOSED = 1_000_000  # the number of an event that never was: after all that were
Plain = tuple[Probe, Celsius, datetime]


def look(turn: Turn, batch_id: str) -> Assessment:
    """The batch as it stands before the readings; raises Gone where it is over."""
    a = batches.look(turn, batch_id)
    if a.batch.finished:
        raise Gone("batch")
    return a


def doubt(a: Assessment, plain: Sequence[Plain]) -> Doubted | None:
    """The first reading that cannot be, if there is one."""
    for which, (probe, celsius, at) in enumerate(plain):
        why = doubts.doubt(a, probe, celsius, at)
        if why is not None:
            return Doubted(which, why.why, why.suggested, why.probe, why.at)
    return None


def supposed(a: Assessment, plain: Sequence[Plain]) -> Assessment:
    """The batch as it would stand with readings that are not kept."""
    more = [Reading(at + A_MOMENT, probe, celsius, SUPPOSED) for probe, celsius, at in plain]
    read = tuple(sorted((*a.batch.readings, *more), key=lambda r: (r.at, r.number)))
    return assess(replace(a.batch, readings=read), a.person, a.now + A_MOMENT)


def take(turn: Turn, batch_id: str, happened: Sequence[tuple[What, datetime]]) -> Change:
    """Keep readings, with the steps that they answer."""
    return record.add(turn, batch_id, happened)
