"""Bring the waiting reminders of a batch in line with what its plan wants, by key.

The key is (chat, step, kind, occurrence). What waits is moved or withdrawn; what is missing is put in. What was
sent is not sent again, unless the plan moved it to more than `AGAIN_AFTER` after it was sent, or the person
put it off to any time after that: then it is a new reminder, with its count `again` one higher. A step that
was reminded under another kind counts as reminded, since the kind only chooses the words. A reminder that
died comes back only while it is ahead.
"""

from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta
from typing import Any, Final, NamedTuple

from sqlalchemy import Row, bindparam, insert, literal_column, select, update

from core.plan.reminders import Wanted
from core.store.database import Transaction
from core.store.tables import outgoing

AGAIN_AFTER: Final = timedelta(minutes=25)  # judgement: an estimate that wobbles by less is the same reminder

PLACE: Final = (
    update(outgoing)
    .where(outgoing.c.id == bindparam("row"))
    .values({name: bindparam(f"new_{name}") for name in ("due_at", "free_at", "urgency", "attempts", "repeat")})
    .values(state="waiting", owner=None, why=None)
)
KNOWN: Final = (
    select(outgoing)
    .where(outgoing.c.batch == bindparam("batch"), outgoing.c.sort == literal_column("'reminder'"))
    .order_by(outgoing.c.again)
    .with_for_update()  # another replica must not claim what is about to be moved
)


class Key(NamedTuple):
    """What makes two reminders of a batch the same one."""

    chat: str
    step: str
    kind: str
    occurrence: int


class Said:
    """When the steps of a batch were reminded of; what is on its way just now counts as said now."""

    def __init__(self, rows: Iterable[Row[Any]], now: datetime) -> None:
        self._at: dict[tuple[str, str, int], datetime] = {}
        for row in rows:
            at = now if row.state == "sending" else row.sent_at
            if at is not None:
                step = (row.chat, row.step, row.occurrence)
                self._at[step] = max(at, self._at.get(step, at))

    def covers(self, chat: str, wish: Wanted) -> bool:
        """Whether this was said already in a chat."""
        at = self._at.get((chat, wish.step, wish.occurrence))
        return at is not None and wish.due_at <= (at if wish.put_off else at + AGAIN_AFTER)


def reconcile(tx: Transaction, batch_id: str, chat: str, wanted: Sequence[Wanted], now: datetime) -> None:
    """Bring the reminders of a batch in line with `wanted`; doing it again changes nothing.

    Parameters
    ----------
    chat
        The batch's own, to which a wish goes that names none.
    wanted
        Every reminder that the plan asks for, those already sent included. Times aware UTC.
    now
        The time of the turn, aware UTC.
    """
    rows = tx.execute(KNOWN, {"batch": batch_id}).all()
    latest = {_key(row): row for row in rows}
    said = Said(rows, now)
    new: list[dict[str, Any]] = []
    placed: list[dict[str, Any]] = []
    kept: set[int] = set()
    for key, wish in {Key(w.chat or chat, w.step, str(w.kind), w.occurrence): w for w in wanted}.items():
        row = latest.get(key)
        if said.covers(key.chat, wish):
            continue
        if row is None or row.state in ("sent", "sending"):
            new.append(_new(batch_id, key.chat, wish, now) | {"again": 0 if row is None else row.again + 1})
        elif row.state != "dead" or wish.due_at > now:
            kept.add(row.id)
            placed.extend(_place(row, wish))
    _withdraw(tx, [row.id for row in rows if row.state == "waiting" and row.id not in kept])
    if placed:
        tx.execute(PLACE, placed)
    if new:
        tx.execute(insert(outgoing), new)


def _key(row: Row[Any]) -> Key:
    return Key(row.chat, row.step, row.kind, row.occurrence)


def _new(batch_id: str, chat: str, wish: Wanted, now: datetime) -> dict[str, Any]:
    return {
        "batch": batch_id,
        "chat": chat,
        "sort": "reminder",
        "step": wish.step,
        "kind": str(wish.kind),
        "occurrence": wish.occurrence,
        "urgency": str(wish.urgency),
        "made_at": now,
        "due_at": wish.due_at,
        "free_at": wish.due_at,
        "state": "waiting",
    }


def _place(row: Row[Any], wish: Wanted) -> Iterable[dict[str, Any]]:
    """The change that lets a row wait as wished; none where it does so already."""
    waits = row.state == "waiting"
    if waits and (row.due_at, row.urgency) == (wish.due_at, str(wish.urgency)):
        return
    tries_later = waits and row.free_at > row.due_at
    yield {
        "row": row.id,
        "new_due_at": wish.due_at,
        "new_free_at": max(wish.due_at, row.free_at) if tries_later else wish.due_at,
        "new_urgency": str(wish.urgency),
        "new_attempts": row.attempts if waits else 0,
        "new_repeat": row.repeat if waits else False,
    }


def _withdraw(tx: Transaction, ids: Sequence[int]) -> None:
    if ids:
        tx.execute(update(outgoing).where(outgoing.c.id.in_(ids)).values(state="withdrawn", why="not wanted"))
