"""Which rows of the outbox may be claimed, and when: the urgent before the rest, each chat in its order.

A row stands in one of four lanes. What breaks the quiet hours (fire, chill, safety) goes before all; then replies, then
what may wait for the morning but should not wait for long, then flips and fridge readings. Within a lane what was due
first goes first, and a chat keeps its order, whoever asks, in whichever process. What is piercing waits for no other
lane; the others wait for a reply of their chat that failed and is to be tried again.
"""

from collections.abc import Collection, Sequence
from datetime import datetime
from functools import cache
from typing import Any, Final

from sqlalchemy import (
    ColumnElement,
    Select,
    and_,
    bindparam,
    exists,
    func,
    literal_column,
    or_,
    select,
    tuple_,
    union_all,
    update,
)
from sqlalchemy.sql.dml import ReturningUpdate
from sqlalchemy.sql.selectable import NamedFromClause

from core.store.tables import outgoing

SORTS: Final = ("reply", "reminder")
LANES: Final = ("piercing", "reply", "normal", "quiet")  # in the order in which they are claimed
AGAIN: Final = "again"  # why a row waits that its chat waits for: a try failed, and the next is to come
OUT: Final = outgoing.c


def spelled(word: str) -> ColumnElement[str]:
    """A word of ours spelled in the statement, not bound.

    Only so does a planner see that a partial index serves; and SQLite plans a statement anew at every call where a
    bound value might decide that, which costs ten times what the statement does.
    """
    return literal_column(f"'{word}'")


OPEN: Final[Sequence[ColumnElement[str]]] = [spelled("waiting"), spelled("sending")]
LOUD: Final[Sequence[ColumnElement[str]]] = [spelled("piercing"), spelled("normal")]


def lanes(sorts: Collection[str]) -> tuple[str, ...]:
    """The lanes in which rows of these sorts stand, in the order in which they are claimed."""
    return tuple(lane for lane in LANES if ("reply" if lane == "reply" else "reminder") in sorts)


def rank(sort: str, urgency: str | None) -> int:
    """The place of a row's lane in the order in which they are claimed."""
    loud = urgency if urgency in LANES else "quiet"
    return LANES.index("reply" if sort == "reply" else loud)


def _of(lane: str, row: Any) -> tuple[ColumnElement[bool], ...]:
    """The rows of a lane. Whatever is called neither piercing nor normal is quiet, so that no row is in none."""
    if lane == "reply":
        return (row.sort == spelled("reply"),)
    if lane != "quiet":
        return row.urgency.in_(LOUD), row.urgency == spelled(lane)
    return row.sort == spelled("reminder"), *(row.urgency.is_distinct_from(louder) for louder in LOUD)


def _open(lane: str, at: ColumnElement[Any] | None = None) -> tuple[ColumnElement[bool], ...]:
    """Open rows of a lane that no earlier one of their chat, and no earlier asking of their step, holds back.

    With `at` one that could be taken then holds back those after it, too.
    """
    live = OUT.state.in_(OPEN)
    earlier = outgoing.alias("earlier")
    if lane == "reply":
        before = *_of(lane, earlier.c), earlier.c.chat == OUT.chat, earlier.c.state.in_(OPEN), earlier.c.id < OUT.id
        return *_of(lane, OUT), live, ~exists().where(*before)
    # a repeat never overtakes the first, which another replica may have in its hands
    first = *(earlier.c[n] == OUT[n] for n in ("batch", "chat", "step")), earlier.c.occurrence < OUT.occurrence
    asked = (OUT.occurrence == 0) | ~exists().where(*first, earlier.c.state.in_(OPEN))
    holds = ((earlier.c.state == spelled("sending")) & earlier.c.owner.is_not(None)) | _to_be_tried_again(earlier)
    # in one look: the first that is found decides, and in a storm that is the first of the chat
    before_it = ~exists().where(*_earlier(lane, earlier), holds if at is None else holds | (earlier.c.free_at <= at))
    if lane == "piercing":
        return *_of(lane, OUT), live, asked, before_it
    reply = outgoing.alias("failed")
    failed = *_of("reply", reply.c), reply.c.chat == OUT.chat, reply.c.state.in_(OPEN), _to_be_tried_again(reply)
    return *_of(lane, OUT), live, asked, before_it, ~exists().where(*failed)


def _to_be_tried_again(row: NamedFromClause[Any]) -> ColumnElement[bool]:
    return and_(row.c.state == spelled("waiting"), row.c.why == spelled(AGAIN))


def _earlier(lane: str, earlier: NamedFromClause[Any]) -> tuple[ColumnElement[bool], ...]:
    """The open reminders of a lane that come before one of the same chat."""
    before = tuple_(earlier.c.due_at, earlier.c.id) < tuple_(OUT.due_at, OUT.id)
    chat = earlier.c.chat == OUT.chat, earlier.c.sort == spelled("reminder"), earlier.c.state.in_(OPEN)
    # the last of it only: with the whole a planner takes the index of what is urgent, and reads that of all chats
    return *chat, before, *(_of(lane, earlier.c)[-1:] if lane != "quiet" else _of(lane, earlier.c))


# Statements are built once: building one costs several times what the database needs to execute it.


@cache
def taking(sorts: tuple[str, ...], of_chat: bool, *, held: bool = True) -> ReturningUpdate[Any]:
    """Take rows of these sorts that are due `at`, at `most` so many, for a `claimer` and until `lease_end`.

    Those that are `held` already are left alone; without it nothing is held of what might be taken.
    """
    # apart from the update, so that no plan looks twice and takes more than was asked for
    due = [_due(lane, of_chat, held).cte(f"of_{lane}") for lane in lanes(sorts)]
    ranked = union_all(*(select(of.c.id, literal_column(str(rank)).label("rank")) for rank, of in enumerate(due)))
    every = ranked.subquery("every")
    first = select(every.c.id).order_by(every.c.rank).limit(bindparam("most"))
    values: dict[str, Any] = {
        "state": "sending",
        "why": None,
        "owner": bindparam("claimer"),
        "free_at": bindparam("lease_end"),
        "attempts": OUT.attempts + 1,
        # what is claimed out of "sending" was in flight when its lease ended
        "repeat": or_(OUT.repeat, OUT.state == spelled("sending")),
    }
    return update(outgoing).where(OUT.id.in_(first)).values(values).returning(*outgoing.c)


def _due(lane: str, of_chat: bool, held: bool) -> Select[int]:
    at = bindparam("at", type_=OUT.due_at.type)
    due = select(OUT.id).where(*_open(lane, at), OUT.due_at <= at, OUT.free_at <= at)
    if held:
        due = due.where(_not_held())
    if of_chat:
        due = due.where(OUT.chat == bindparam("of_chat"))
    return due.order_by(OUT.due_at, OUT.id).limit(bindparam("most")).with_for_update(skip_locked=True)


@cache
def earliest(lane: str) -> Select[datetime]:
    """When the first row of a lane can be taken."""
    return select(func.min(OUT.free_at)).where(*_open(lane), _not_held())


def _not_held() -> ColumnElement[bool]:
    return OUT.id.not_in(bindparam("held", expanding=True))
