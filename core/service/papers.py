"""What is written down for a person: the record of a batch, and everything that is kept of them."""

from datetime import datetime

from core.batch.batch_record import BatchRecord, batch_record
from core.batch.events import Handed
from core.errors import Gone
from core.service import record
from core.service.turn import House, Turn
from core.store import batches, kept, people
from core.store.batches import Row
from core.store.kept import InBatch, Kept

__all__ = ["InBatch", "Kept", "latest", "of_batch", "of_person"]


def of_batch(house: House, batch_id: str, now: datetime) -> BatchRecord | None:
    """The record of a batch as it stands, None where there is no such batch."""
    with house.reading() as tx:
        events = batches.events(tx, batch_id)
        handed = {e.what.person for e in events if isinstance(e.what, Handed)}
        known = {one: people.load(tx, one) for one in {e.by for e in events} | handed}
        names = {one: person.name for one, person in known.items() if person is not None}
        try:
            return batch_record(batch_id, events, (record.owner_of(tx, batch_id), names), now)
        except Gone:
            return None


def latest(turn: Turn) -> Row | None:
    """The batch of this chat that was begun last, under way or over."""
    found = batches.all_in(turn.tx, turn.said.chat)
    return found[-1] if found else None


def of_person(house: House, person_id: str) -> Kept:
    """Everything that is kept of a person, and nothing of anybody else."""
    with house.reading() as tx:
        return kept.of_person(tx, person_id)
