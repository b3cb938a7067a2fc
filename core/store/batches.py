"""Batches and their events: append-only, in order, and a message that comes again adds nothing."""

import secrets
import string
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any, Final

from sqlalchemy import BindParameter, RowMapping, Select, bindparam, or_, select, union_all, update

from core.batch.events import Event, Handed
from core.errors import Gone
from core.store import codec
from core.store.database import Transaction
from core.store.tables import batches, members
from core.store.tables import events as log

ALPHABET: Final = string.digits + string.ascii_lowercase
# Statements are built once: building one costs more than what the database needs to execute it.
OF: Final[BindParameter[str]] = bindparam("of")
ROWS: Final = select(batches).order_by(batches.c.made_at, batches.c.name, batches.c.id)  # begun in one line: by name
BY_ID: Final = ROWS.where(batches.c.id == OF)
OF_PERSON: Final = ROWS.where(batches.c.owner == OF)
SHARED: Final = select(members.c.batch).where(members.c.chat == OF)
IN_CHAT: Final = ROWS.where(or_(batches.c.chat == OF, batches.c.id.in_(SHARED)))
# begun in a chat, or shared with it: each by its own index, since with an «or» every open batch would be looked at
BEGUN: Final = select(batches.c.id).where(batches.c.chat == OF, batches.c.closed_at.is_(None))
OPEN_IN_CHAT: Final = ROWS.where(batches.c.id.in_(union_all(BEGUN, SHARED)), batches.c.closed_at.is_(None))
LOG: Final = select(log).where(log.c.batch == OF).order_by(log.c.number)
LOGGED: Final = frozenset({"events"})
KEPT: Final = frozenset({"batches"})
OPENED: Final = frozenset({"batches", "members"})
ID_LENGTH: Final = 8  # 2.8e12 ids: a button's payload stays short, a guess stays hopeless


@dataclass(frozen=True)
class Row:
    """A batch as the store knows it: all else is in its events."""

    id: str
    chat: str
    owner: str
    name: str
    made_at: datetime
    closed_at: datetime | None = None


def new_id(tx: Transaction) -> str:
    """An id that no batch has, and that nobody can guess."""
    while True:
        found = "".join(secrets.choice(ALPHABET) for _ in range(ID_LENGTH))
        if get(tx, found) is None:
            return found


def add(tx: Transaction, batch_id: str, chat: str, owner: str, name: str, at: datetime) -> None:
    """Keep a new batch, without events so far."""
    tx.execute(batches.insert().values(id=batch_id, chat=chat, owner=owner, name=name, made_at=at))


def append(tx: Transaction, batch_id: str, events: Sequence[Event]) -> None:
    """Add events at the end of the log.

    An event of a message that the log knew before this transaction adds nothing. A message of "" is
    nobody's: it is never taken for a repetition.

    Raises
    ------
    Gone
        There is no such batch.
    """
    if get(tx, batch_id) is None:
        raise Gone("batch")
    known = Counter(e.message for e in tx.once(_events, batch_id, tables=LOGGED) if e.message)
    fresh = [e for e in events if e.message not in known or (batch_id, e.message) in tx.appended]
    rows = []
    for event in fresh:
        rows.append(_row(batch_id, event, known[event.message]))
        known[event.message] += 1
        tx.appended.add((batch_id, event.message))
    if rows:
        tx.execute(log.insert(), rows)


def events(tx: Transaction, batch_id: str) -> tuple[Event, ...]:
    """The whole log of a batch, in order; empty where there is no such batch."""
    return tx.once(_events, batch_id, tables=LOGGED)


def get(tx: Transaction, batch_id: str) -> Row | None:
    """The batch of that id."""
    return tx.once(_get, batch_id, tables=KEPT)


def open_in(tx: Transaction, chat: str) -> tuple[Row, ...]:
    """The batches under way in a chat, begun there or shared with it, the oldest first."""
    return tx.once(_open_in, chat, tables=OPENED)


def all_in(tx: Transaction, chat: str) -> tuple[Row, ...]:
    """Every batch of a chat, begun there or shared with it, under way or over, the oldest first."""
    return _rows(tx, IN_CHAT, chat)


def of_person(tx: Transaction, person_id: str) -> tuple[Row, ...]:
    """Every batch that a person began, open or closed, the oldest first."""
    return _rows(tx, OF_PERSON, person_id)


def unname(tx: Transaction, person_id: str) -> None:
    """The log keeps what somebody answered for under their number, and their name no longer."""
    handed = select(log.c.batch, log.c.number, log.c.body).where(log.c.kind == Handed.__name__)
    for row in tx.execute(handed).all():
        what = codec.build(Handed.__name__, row.body)
        if what.person == person_id:
            nameless = codec.body(replace(what, name=""))
            mine = log.c.batch == row.batch, log.c.number == row.number
            tx.execute(update(log).where(*mine).values(body=nameless))


def close(tx: Transaction, batch_id: str, at: datetime) -> None:
    """The batch is over; closing it once more changes nothing."""
    mine = batches.c.id == batch_id, batches.c.closed_at.is_(None)
    tx.execute(update(batches).where(*mine).values(closed_at=at))


def chat_moved(tx: Transaction, old: str, new: str) -> None:
    """The chat has another id now."""
    tx.execute(update(batches).where(batches.c.chat == old).values(chat=new))


def _events(tx: Transaction, batch_id: str) -> tuple[Event, ...]:
    return tuple(map(_event, tx.execute(LOG, {"of": batch_id}).mappings()))


def _get(tx: Transaction, batch_id: str) -> Row | None:
    found = _rows(tx, BY_ID, batch_id)
    return found[0] if found else None


def _open_in(tx: Transaction, chat: str) -> tuple[Row, ...]:
    found = _rows(tx, OPEN_IN_CHAT, chat)
    for row in found:
        tx.known(_get, row.id, given=row, tables=KEPT)
    return found


def _rows(tx: Transaction, statement: Select[Any], of: str) -> tuple[Row, ...]:
    return tuple(Row(**row) for row in tx.execute(statement, {"of": of}).mappings())


def _row(batch_id: str, event: Event, place: int) -> dict[str, Any]:
    return {
        "batch": batch_id,
        "number": event.number,
        "at": event.at,
        "said_at": event.said_at,
        "said_by": event.by,
        "message": event.message or None,
        "place": place,
        "kind": type(event.what).__name__,
        "body": codec.body(event.what),
    }


def _event(row: RowMapping) -> Event:
    what = codec.build(row["kind"], row["body"])
    return Event(row["number"], row["at"], row["said_at"], row["said_by"], row["message"] or "", what)
