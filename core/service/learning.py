"""What a batch taught: incidents, the debrief, and the person's own defaults learned anew from all their batches."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import datetime
from typing import Any

from core.batch.assess import Change
from core.batch.events import Done, Incident, Rated, Sliced, Tasted, Took, Weighed, What
from core.service import record, teaching
from core.service.record import owner_of
from core.service.turn import Turn


def happened(turn: Turn, batch_id: str, what: str, facts: Mapping[str, Any], at: datetime) -> Change:
    """Something went wrong: it stands in the log, and the ledger judges it."""
    return record.add(turn, batch_id, [(Incident(what, dict(facts)), at)])


def debrief(turn: Turn, batch_id: str, told: Sequence[Weighed | Sliced | Tasted | Took | Rated]) -> Change:
    """What the scale, slice, tongue and clock said; the person's defaults are learned again from all batches."""
    measured = any(isinstance(what, Sliced) and what.grey is not None for what in told)
    looked_back: list[What] = [Done("debrief")] if measured else []
    change = record.add(turn, batch_id, [(what, turn.now) for what in (*told, *looked_back)])
    learn(turn, batch_id)
    return Change(change.before, record.look(turn.tx, batch_id, turn.now))


def learn(turn: Turn, batch_id: str) -> None:
    """Learn from every batch of the owner anew."""
    taught = teaching.learn(turn.tx, owner_of(turn.tx, batch_id))
    if taught.id == turn.person.id:
        turn.person = replace(turn.person, learned=taught.learned)
