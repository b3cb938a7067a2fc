"""Take readings: doubt what cannot be, keep the rest, derive everything again."""

from collections.abc import Sequence
from datetime import datetime

from core.batch import doubts
from core.batch.assess import Assessment, Change
from core.batch.doubts import Doubted
from core.batch.events import Probe, What
from core.errors import Gone
from core.service import batches, record
from core.service.turn import Turn
from core.units import Celsius

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


def take(turn: Turn, batch_id: str, happened: Sequence[tuple[What, datetime]]) -> Change:
    """Keep readings, with the steps that they answer."""
    return record.add(turn, batch_id, happened)
