"""Everything that is kept of one person, and nothing of anybody else."""

from dataclasses import dataclass, replace
from typing import Any

from sqlalchemy import select

from core.batch.events import Event, Handed
from core.person import Person
from core.store import batches, members, people, visits
from core.store.batches import Row
from core.store.codec import decode
from core.store.database import Transaction
from core.store.due import OUT
from core.store.members import Member
from core.store.outbox import Row as Message
from core.store.outbox import row_of
from core.store.tables import asked, events, outgoing


@dataclass(frozen=True)
class InBatch:
    """What a person said in one batch; `batch` is None where another began it, `by_others` counts what others said."""

    id: str
    batch: Row | None
    said: tuple[Event, ...]
    by_others: int


@dataclass(frozen=True)
class Kept:
    """All of it. `messages` is what the bot said in the person's own chat, `shared` where others share a batch.

    `door` is what is counted of the person's own chat: its last day, its messages then, whether it was let in.
    """

    id: str
    person: Person | None
    questions: tuple[tuple[str, dict[str, Any]], ...]
    batches: tuple[InBatch, ...]
    messages: tuple[Message, ...]
    shared: tuple[Member, ...] = ()
    door: tuple[str, int, bool] | None = None


def of_person(tx: Transaction, person_id: str) -> Kept:
    """Everything that is kept of a person: settings, open questions, what they said, and what was said to them.

    A message about a batch that others have or spoke in may quote them, and one about no batch may be about such a one:
    their words are left out.
    """
    found = tuple(_in_batch(tx, one, person_id) for one in _batch_ids(tx, person_id))
    shared = members.of_person(tx, person_id)
    alone: set[str | None] = {one.id for one in found if one.by_others == 0 and not members.of_batch(tx, one.id)}
    alone |= set() if shared or len(alone) < len(found) else {None}
    mine = tx.execute(select(outgoing).where(OUT.chat == person_id).order_by(OUT.id)).mappings()
    return Kept(
        person_id,
        people.load(tx, person_id),
        _questions(tx, person_id),
        found,
        tuple(row if row.batch in alone else replace(row, body=None) for row in map(row_of, mine)),
        shared,
        visits.of_chat(tx, person_id),
    )


def _batch_ids(tx: Transaction, person_id: str) -> list[str]:
    """The batches that a person began, then those in which they said something."""
    spoken = tx.execute(select(events.c.batch).where(events.c.said_by == person_id).distinct()).scalars()
    return list(dict.fromkeys([*(row.id for row in batches.of_person(tx, person_id)), *sorted(spoken)]))


def _in_batch(tx: Transaction, batch_id: str, person_id: str) -> InBatch:
    row = batches.get(tx, batch_id)
    said = batches.events(tx, batch_id)
    mine = tuple(_own(event, person_id) for event in said if event.by == person_id)
    return InBatch(batch_id, row if row and row.owner == person_id else None, mine, len(said) - len(mine))


def _own(event: Event, person_id: str) -> Event:
    """What was said, without the number and the chat of whom it was handed to."""
    if not isinstance(event.what, Handed) or event.what.person in ("", person_id):
        return event
    return replace(event, what=replace(event.what, person="", chat=""))


def _questions(tx: Transaction, person_id: str) -> tuple[tuple[str, dict[str, Any]], ...]:
    found = tx.execute(select(asked.c.chat, asked.c.question).where(asked.c.person == person_id).order_by(asked.c.chat))
    return tuple((row.chat, decode(row.question)) for row in found)
