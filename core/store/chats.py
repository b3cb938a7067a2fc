"""A chat that got another id: everything that is kept of it moves in one transaction."""

from core.store import batches, members, outbox, people, visits
from core.store.database import Transaction


def moved(tx: Transaction, old: str, new: str) -> None:
    """Batches, open questions and the outbox go along to the new id."""
    batches.chat_moved(tx, old, new)
    members.chat_moved(tx, old, new)
    people.chat_moved(tx, old, new)
    outbox.chat_moved(tx, old, new)
    visits.chat_moved(tx, old, new)
