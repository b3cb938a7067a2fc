"""The outbox: replies and reminders that wait, are claimed for a while, and are marked sent.

    waiting -> sending -> sent
       ^  \\        |  \\
       |   withdrawn|   dead
       +------------+

A row is claimed under a lease. Who claimed it sends it and marks it; if the process dies in between, the
lease ends and the row is claimed once more, as a repeat. So nothing is lost, and at most what
was in flight is said twice. A claim is known by its owner and its attempt: who comes late changes nothing.
"""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cache
from typing import Any, Final

from sqlalchemy import BigInteger, Select, Update, bindparam, func, insert, select, type_coerce, update
from sqlalchemy.sql.dml import ReturningUpdate

from core.plan.reminders import Wanted
from core.store.codec import decode, encode
from core.store.database import Database, Transaction
from core.store.due import AGAIN, OPEN, OUT, SORTS, earliest, lanes, rank, spelled, taking
from core.store.tables import MICROSECOND, outgoing
from core.store.wanted import reconcile

__all__ = [
    "Claim", "Row", "Wanted", "chat_back", "chat_gone", "chat_moved", "claim", "find_by_channel_key", "give_back_all",
    "give_up", "last_about", "last_reminder", "mark_sent", "next_due", "next_reply", "not_tried", "prune", "put_back",
    "put_reply", "reconcile", "row_of", "sent", "set_back", "unsure", "withdraw",
]  # fmt: skip

GONE: Final = "chat gone"  # why a row is dead whose chat could not be reached
LATER: Final = type_coerce(type_coerce(OUT.due_at, BigInteger) + bindparam("late", type_=BigInteger), OUT.due_at.type)
DELAY: Final = (
    update(outgoing)
    .where(OUT.batch == bindparam("of_batch"), OUT.chat == bindparam("of_chat"), OUT.step == bindparam("of_step"))
    .where(OUT.occurrence > 0, OUT.state == "waiting", OUT.free_at < LATER)
    .values(free_at=LATER)
)
PUT: Final = insert(outgoing).returning(OUT.id)
OF_CHAT: Final = select(outgoing).where(OUT.chat == bindparam("of")).limit(1)
BY_KEY: Final = OF_CHAT.where(OUT.channel_key == bindparam("key"))
LAST_REMINDER: Final = OF_CHAT.where(OUT.sort == spelled("reminder"), OUT.state == spelled("sent")).order_by(
    OUT.sent_at.desc(), OUT.id.desc()
)
LAST_ABOUT: Final = (
    select(OUT.batch)
    .where(OUT.chat == bindparam("of"), OUT.batch.is_not(None))
    .where((OUT.sort == spelled("reply")) | (OUT.state == spelled("sent")))
    .order_by(func.coalesce(OUT.sent_at, OUT.made_at).desc(), OUT.id.desc())
    .limit(1)
)


@dataclass(frozen=True)
class Row:
    """One message on its way. `repeat` says that an earlier try may have arrived."""

    id: str
    chat: str
    sort: str
    batch: str | None
    step: str | None
    kind: str | None
    occurrence: int
    again: int
    urgency: str | None
    body: dict[str, Any] | None
    answering: str | None
    made_at: datetime
    due_at: datetime
    free_at: datetime
    state: str
    owner: str | None
    attempts: int
    repeat: bool
    sent_at: datetime | None
    channel_key: str | None
    why: str | None


@dataclass(frozen=True)
class Claim:
    """When rows are taken (aware UTC), for how long, and by which process."""

    at: datetime
    lease: timedelta
    owner: str


def put_reply(
    tx: Transaction,
    chat: str,
    body: dict[str, Any],
    at: datetime,
    *,
    answering: str | None = None,
    batch: str | None = None,
) -> str:
    """Put in a reply that is due at once; its id. Replies of a chat go out in the order in which they came."""
    values = {"chat": chat, "sort": "reply", "body": encode(body), "answering": answering, "batch": batch}
    times = {"made_at": at, "due_at": at, "free_at": at}
    return str(tx.execute(PUT, values | times | {"state": "waiting"}).scalar_one())


def claim(
    database: Database,
    now: datetime,
    lease: timedelta,
    limit: int,
    owner: str,
    sorts: Collection[str] = SORTS,
    chat: str | None = None,
    held: Collection[str] = (),
) -> list[Row]:
    """Take what is due, for `lease`: lane by lane (`due.LANES`), then by due time. Nobody else gets the same rows.

    A reply is not taken while an earlier one of its chat is still open, nor a reminder while an earlier one of its
    chat and urgency is due, in hand, or to be tried again: so each chat keeps its order, over all replicas. `held` are
    the ids that this process has in flight: they are not taken again, even if a clock that jumped ended their lease.
    """
    values = {"most": limit, "held": [int(i) for i in held]} | ({} if chat is None else {"of_chat": chat})
    with database.transaction(first=True) as tx:
        taken = _take(tx, taking(tuple(sorts), chat is not None), values, Claim(now, lease, owner))
    return sorted(taken, key=lambda row: (rank(row.sort, row.urgency), row.due_at, int(row.id)))


def next_reply(tx: Transaction, chat: str, claim_: Claim) -> Row | None:
    """Take the first reply of a chat, none of whose replies is in flight, within a transaction: see `claim`."""
    taken = _take(tx, taking(("reply",), of_chat=True, held=False), {"most": 1, "of_chat": chat}, claim_)
    return taken[0] if taken else None


def sent(database: Database, row: Row, at: datetime, channel_key: str) -> bool:
    """`mark_sent` in a transaction of its own."""
    with database.transaction(first=True) as tx:
        return mark_sent(tx, row, at, channel_key)


def mark_sent(tx: Transaction, row: Row, at: datetime, channel_key: str) -> bool:
    """The row arrived, as `channel_key` of its channel; False where the claim was lost meanwhile.

    The repeat of a reminder keeps its distance from the first: as late as that went out, so much later it comes.
    """
    if not _change(tx, row, state="sent", sent_at=at, channel_key=channel_key):
        return False
    if row.sort == "reminder" and row.occurrence == 0 and at > row.due_at:
        of = {"of_batch": row.batch, "of_chat": row.chat, "of_step": row.step}
        tx.execute(DELAY, of | {"late": (at - row.due_at) // MICROSECOND})
    return True


def put_back(database: Database, row: Row, until: datetime, *, alone: bool = False) -> bool:
    """The row did certainly not arrive: it waits for the next try, and what comes later in its chat waits for it.

    No reply waits for a reminder, what is piercing for nothing else, nor one urgency for another. `alone` holds
    nothing back at all. However much waits for the chat, one row is touched.
    """
    why = None if alone else AGAIN
    return _finish(database, row, state="waiting", owner=None, free_at=until, why=why)


def not_tried(database: Database, row: Row, until: datetime) -> bool:
    """The row's turn had not come: as `put_back`, but it counts as no attempt, so that no later wait is longer."""
    return _finish(database, row, state="waiting", owner=None, free_at=until, why=AGAIN, attempts=row.attempts - 1)


def unsure(database: Database, row: Row, until: datetime) -> bool:
    """The row may have arrived: it is claimed once more, as a repeat, at `until`. Nobody has it in hand meanwhile."""
    return _finish(database, row, state="sending", owner=None, free_at=until)


def withdraw(database: Database, row: Row) -> bool:
    """The row has nothing to say any more."""
    return _finish(database, row, state="withdrawn", why="nothing to say")


def give_up(database: Database, row: Row, why: str) -> bool:
    """The row can never arrive."""
    return _finish(database, row, state="dead", why=why)


def next_due(database: Database, held: Collection[str] = (), sorts: Collection[str] = SORTS) -> datetime | None:
    """When the next row can be claimed, ends of leases of others included; None where nothing waits."""
    ours = {"held": [int(i) for i in held]}
    with database.reading() as tx:
        times = [tx.execute(earliest(lane), ours).scalar() for lane in lanes(sorts)]
    return min((at for at in times if at is not None), default=None)


def give_back_all(database: Database) -> int:
    """Give back every claim, as a repeat, at the start of a process that is the only one; how many they were.

    With another process on the store, its claims may be alive: then their leases end by themselves.
    """
    if not database.alone():
        return 0
    with database.transaction() as tx:
        held = update(outgoing).where(OUT.state == "sending")
        return tx.execute(held.values(state="waiting", owner=None, free_at=OUT.due_at, repeat=True)).rowcount


def set_back(database: Database, now: datetime) -> int:
    """The clock was set back: who waits for the next try would wait by a time that never was; how many try now.

    What has its hour by the plan keeps it, and so does what was put off to an hour.
    """
    nobodys = OUT.owner.is_(None), OUT.state.in_(OPEN), OUT.free_at > now
    replies = update(outgoing).where(*nobodys, OUT.sort == "reply")
    retried = OUT.due_at <= now, (OUT.why == AGAIN) | (OUT.state == "sending")
    reminders = update(outgoing).where(*nobodys, OUT.sort == "reminder", *retried)
    with database.transaction() as tx:
        said = tx.execute(replies.values(due_at=now, free_at=now)).rowcount
        return said + tx.execute(reminders.values(free_at=now)).rowcount


def find_by_channel_key(tx: Transaction, chat: str, channel_key: str) -> Row | None:
    """The message of ours that a channel knows by this key."""
    return _first(tx, BY_KEY, {"of": chat, "key": channel_key})


def last_reminder(tx: Transaction, chat: str) -> Row | None:
    """The latest reminder that was sent to a chat."""
    return _first(tx, LAST_REMINDER, {"of": chat})


def last_about(tx: Transaction, chat: str) -> str | None:
    """The batch of the latest thing that was said in a chat: a reply that was made, or a reminder that went out."""
    found: str | None = tx.execute(LAST_ABOUT, {"of": chat}).scalar()
    return found


def chat_gone(tx: Transaction, chat: str) -> int:
    """Nothing can reach this chat any more: whatever waits for it is given up; how many they were."""
    waiting = OUT.chat == chat, OUT.state == "waiting"
    return tx.execute(update(outgoing).where(*waiting).values(state="dead", why=GONE)).rowcount


def chat_back(tx: Transaction, chat: str, now: datetime) -> int:
    """The chat can be reached again: the reminders that were given up and are still ahead wait again; how many."""
    ahead = OUT.chat == chat, OUT.state == "dead", OUT.why == GONE, OUT.sort == "reminder", OUT.due_at > now
    back = {"state": "waiting", "why": None, "free_at": OUT.due_at, "attempts": 0}
    return tx.execute(update(outgoing).where(*ahead).values(back)).rowcount


def chat_moved(tx: Transaction, old: str, new: str) -> None:
    """The chat has another id now (`chats.moved` tells the other rooms too)."""
    tx.execute(update(outgoing).where(OUT.chat == old).values(chat=new))


def prune(tx: Transaction, before: datetime) -> int:
    """Forget replies that were done with before then; how many they were. Reminders stay with their batch."""
    done = OUT.sort == "reply", OUT.state.not_in(OPEN), OUT.made_at < before
    return tx.execute(outgoing.delete().where(*done)).rowcount


@cache
def _changing(names: tuple[str, ...]) -> Update:
    """A change of one row, while it is held by the claim that it came from."""
    mine = OUT.owner == bindparam("claimer"), OUT.attempts == bindparam("attempt"), OUT.state == spelled("sending")
    values: dict[str, Any] = {name: bindparam(f"new_{name}") for name in names}
    return update(outgoing).where(OUT.id == bindparam("row"), *mine).values(values)


def _change(tx: Transaction, row: Row, **values: Any) -> bool:
    claim_ = {"row": int(row.id), "claimer": row.owner, "attempt": row.attempts}
    new = {f"new_{name}": value for name, value in values.items()}
    return bool(tx.execute(_changing(tuple(values)), claim_ | new).rowcount)


def _take(tx: Transaction, statement: ReturningUpdate[Any], values: dict[str, Any], by: Claim) -> list[Row]:
    taken = {"at": by.at, "lease_end": by.at + by.lease, "claimer": by.owner}
    return [row_of(found) for found in tx.execute(statement, values | taken).mappings()]


def _finish(database: Database, row: Row, **values: Any) -> bool:
    with database.transaction(first=True) as tx:
        return _change(tx, row, **values)


def _first(tx: Transaction, statement: Select[Any], values: dict[str, Any]) -> Row | None:
    found = tx.execute(statement, values).mappings().first()
    return None if found is None else row_of(found)


def row_of(found: Any) -> Row:
    """A row as the database gives it."""
    return Row(**{**found, "id": str(found["id"]), "body": decode(found["body"])})
