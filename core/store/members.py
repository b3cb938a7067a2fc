"""Who has a batch beside the chat where it was begun: further chats, and the invitations to become one."""

import secrets
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any, Final

from sqlalchemy import bindparam, delete, select, update

from core.store.codec import decode, encode
from core.store.database import Transaction
from core.store.tables import invitations, members

ALPHABET: Final = "23456789abcdefghjkmnpqrstuvwxyz"  # nothing that is taken for another when it is read out
OF_BATCH: Final = select(members).where(members.c.batch == bindparam("of")).order_by(members.c.since, members.c.chat)
CODE_LENGTH: Final = 10  # 31^10, over 8e14: no guess comes near in a week


@dataclass(frozen=True)
class Member:
    """A chat that has a batch, whose it is, and since when (aware UTC)."""

    batch: str
    chat: str
    person: str
    since: datetime


@dataclass(frozen=True)
class Invitation:
    """What a code opens until a time, and the event that hands something over to whoever comes."""

    batch: str
    until: datetime
    handing: Any = None


def of_batch(tx: Transaction, batch_id: str) -> tuple[Member, ...]:
    """The further chats of a batch, the earliest first."""
    return tx.once(_of_batch, batch_id, tables=frozenset({"members"}))


def add(tx: Transaction, member: Member) -> None:
    """One chat more; one that is in already stays as it is."""
    row = {"batch": member.batch, "chat": member.chat, "person": member.person, "since": member.since}
    tx.execute(tx.insert(members).values(**row).on_conflict_do_nothing())


def remove(tx: Transaction, batch_id: str, chat: str) -> None:
    """A chat has the batch no longer."""
    tx.execute(delete(members).where(members.c.batch == batch_id, members.c.chat == chat))


def of_person(tx: Transaction, person_id: str) -> tuple[Member, ...]:
    """Where a person has a batch of others, the earliest first."""
    found = select(members).where(members.c.person == person_id).order_by(members.c.since, members.c.batch)
    return tuple(Member(**row) for row in tx.execute(found).mappings())


def invite(tx: Transaction, batch_id: str, until: datetime, handing: Any = None) -> str:
    """A code that lets one more chat in, once, until a time."""
    code = "".join(secrets.choice(ALPHABET) for _ in range(CODE_LENGTH))
    kept = None if handing is None else encode(handing)
    tx.execute(invitations.insert().values(code=code, batch=batch_id, until=until, handing=kept))
    return code


def opens(tx: Transaction, code: str, now: datetime) -> bool:
    """Whether a code opens a batch, which leaves it as it is."""
    mine = select(invitations.c.code).where(invitations.c.code == code, invitations.c.until >= now)
    return tx.execute(mine).first() is not None


def take(tx: Transaction, code: str, now: datetime) -> Invitation | None:
    """What a code opens, used up by this; None where there is none, or its time is over."""
    mine = invitations.c.code == code
    row = tx.execute(select(invitations).where(mine).with_for_update()).mappings().first()
    if row is None or row["until"] < now:
        return None
    tx.execute(delete(invitations).where(mine))
    return Invitation(row["batch"], row["until"], None if row["handing"] is None else decode(row["handing"]))


def close(tx: Transaction, batch_id: str) -> None:
    """The batch is over: no code opens it any more."""
    tx.execute(delete(invitations).where(invitations.c.batch == batch_id))


def prune(tx: Transaction, before: datetime) -> None:
    """Forget the codes whose time was over by then."""
    tx.execute(delete(invitations).where(invitations.c.until < before))


def chat_moved(tx: Transaction, old: str, new: str) -> None:
    """The chat has another id now; where that is in already, it stays once."""
    known: Sequence[str] = tx.execute(select(members.c.batch).where(members.c.chat == new)).scalars().all()
    tx.execute(delete(members).where(members.c.chat == old, members.c.batch.in_(known)))
    tx.execute(update(members).where(members.c.chat == old).values(chat=new))


def _of_batch(tx: Transaction, batch_id: str) -> tuple[Member, ...]:
    return tuple(Member(**row) for row in tx.execute(OF_BATCH, {"of": batch_id}).mappings())
