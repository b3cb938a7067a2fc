"""What all batches of a person teach, learned anew from the first to the last: a correction re-teaches."""

from dataclasses import replace
from datetime import datetime

from core.batch import material
from core.batch.batch import Batch, fold
from core.batch.learn import learned_from
from core.person import Learned, Person
from core.store import batches, people
from core.store.database import Transaction


def learn(tx: Transaction, owner: Person) -> Person:
    """Learn from every batch of the owner, in order, from the house defaults on; the owner with what was learned."""
    learned = Learned()
    for row in batches.of_person(tx, owner.id):
        learned = learned_from(fold(row.id, batches.events(tx, row.id)), owner, learned)
    taught = replace(owner, learned=learned)
    if taught != owner:
        people.save(tx, taught)
    return taught


def of_the_fire(before: Batch | None, after: Batch, now: datetime) -> bool:
    """Whether a cook that is over, or was, is another one than before: it came off, or its record was put right."""
    if before is None or (before.off_at is None and after.off_at is None):
        return False
    was, is_now = (material.history_of(batch, now) for batch in (before, after))
    return was != is_now or before.off_at != after.off_at or before.setup != after.setup
