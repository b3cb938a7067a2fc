"""Which rows of the outbox may be claimed, and when: each chat in its order, whoever asks, in whichever process."""

from collections.abc import Sequence
from datetime import datetime
from functools import cache
from typing import Any, Final

from sqlalchemy import (
    ColumnElement,
    Select,
    bindparam,
    exists,
    func,
    literal_column,
    or_,
    select,
    tuple_,
    update,
)
from sqlalchemy.sql.dml import ReturningUpdate
from sqlalchemy.sql.selectable import NamedFromClause

from core.store.tables import outgoing

SORTS: Final = ("reply", "reminder")  # in the order in which they are claimed
OUT: Final = outgoing.c
# spelled in the statement, not bound: only so does a planner see that the partial indexes serve
OPEN: Final[Sequence[ColumnElement[str]]] = [literal_column("'waiting'"), literal_column("'sending'")]


def _open(sort: str) -> tuple[ColumnElement[bool], ...]:
    """Open rows of a sort that no earlier reply of their chat, and no earlier asking of their step, holds back."""
    live = OUT.state.in_(OPEN)
    earlier = outgoing.alias("earlier")
    if sort != "reply":
        # a repeat never overtakes the first, which another replica may have in its hands
        first = *(earlier.c[n] == OUT[n] for n in ("batch", "chat", "step")), earlier.c.occurrence < OUT.occurrence
        asked = (OUT.occurrence == 0) | ~exists().where(*first, earlier.c.state.in_(OPEN))
        in_hand = (earlier.c.state == "sending") & earlier.c.owner.is_not(None)
        return OUT.sort == sort, live, asked, ~exists().where(*_earlier_reminder(earlier), in_hand)
    before = earlier.c.chat == OUT.chat, earlier.c.sort == "reply", earlier.c.state.in_(OPEN), earlier.c.id < OUT.id
    return OUT.sort == sort, live, ~exists().where(*before)


def _earlier_reminder(earlier: NamedFromClause[Any]) -> tuple[ColumnElement[bool], ...]:
    before = tuple_(earlier.c.due_at, earlier.c.id) < tuple_(OUT.due_at, OUT.id)
    return earlier.c.chat == OUT.chat, earlier.c.sort == "reminder", earlier.c.state.in_(OPEN), before


# Statements are built once: building one costs several times what the database needs to execute it.


@cache
def taking(sort: str, of_chat: bool) -> ReturningUpdate[Any]:
    """Take rows of a sort that are due `at`, at `most` so many, for a `claimer` and until `lease_end`."""
    at = bindparam("at", type_=OUT.due_at.type)
    due = select(OUT.id).where(*_open(sort), OUT.due_at <= at, OUT.free_at <= at, _not_held())
    if sort == "reminder":
        earlier = outgoing.alias("due_before")
        due = due.where(~exists().where(*_earlier_reminder(earlier), earlier.c.free_at <= at))
    if of_chat:
        due = due.where(OUT.chat == bindparam("of_chat"))
    # apart from the update, so that no plan looks twice and takes more than was asked for
    free = due.order_by(OUT.due_at, OUT.id).limit(bindparam("most")).with_for_update(skip_locked=True).cte("free")
    values: dict[str, Any] = {
        "state": "sending",
        "owner": bindparam("claimer"),
        "free_at": bindparam("lease_end"),
        "attempts": OUT.attempts + 1,
        # what is claimed out of "sending" was in flight when its lease ended
        "repeat": or_(OUT.repeat, OUT.state == "sending"),
    }
    return update(outgoing).where(OUT.id.in_(select(free.c.id))).values(values).returning(*outgoing.c)


@cache
def earliest(sort: str) -> Select[datetime]:
    """When the first row of a sort can be taken."""
    return select(func.min(OUT.free_at)).where(*_open(sort), _not_held())


def _not_held() -> ColumnElement[bool]:
    return OUT.id.not_in(bindparam("held", expanding=True))
