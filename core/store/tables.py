"""The tables, as they are at the newest migration (a test holds the two equal).

Plain columns and JSON, no pickles, no function names: a reminder is data, and outlives the code that
made it. Times are whole microseconds since 1970 in UTC, so that every database keeps and orders them alike.
"""

from datetime import UTC, datetime, timedelta
from typing import Any, Final

from sqlalchemy import (
    JSON,
    BigInteger,
    Boolean,
    CheckConstraint,
    Column,
    Dialect,
    ForeignKey,
    Index,
    Integer,
    MetaData,
    Table,
    Text,
    TypeDecorator,
    UniqueConstraint,
    text,
)

EPOCH: Final = datetime(1970, 1, 1, tzinfo=UTC)
MICROSECOND: Final = timedelta(microseconds=1)

NAMES: Final = {
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "ck": "ck_%(table_name)s_%(constraint_name)s",
    "fk": "fk_%(table_name)s_%(column_0_name)s",
    "pk": "pk_%(table_name)s",
}


class Instant(TypeDecorator[datetime]):
    """An aware datetime, kept as microseconds since 1970 UTC; a naive one is refused at the door."""

    impl = BigInteger
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> int | None:
        """Microseconds since 1970. Raises ValueError for a time without a zone."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError(f"a time without a zone cannot be kept: {value!r}")
        return (value - EPOCH) // MICROSECOND

    def process_result_value(self, value: Any, dialect: Dialect) -> datetime | None:
        """The time in UTC."""
        return None if value is None else EPOCH + value * MICROSECOND


metadata = MetaData(naming_convention=NAMES)

people = Table(
    "people",
    metadata,
    Column("id", Text, primary_key=True),
    Column("settings", JSON, nullable=False),
)

asked = Table(
    "asked",
    metadata,
    Column("chat", Text, primary_key=True),
    Column("person", Text, primary_key=True),
    Column("question", JSON, nullable=False),
)

batches = Table(
    "batches",
    metadata,
    Column("id", Text, primary_key=True),
    Column("chat", Text, nullable=False),
    Column("owner", Text, nullable=False),
    Column("name", Text, nullable=False),
    Column("made_at", Instant, nullable=False),
    Column("closed_at", Instant),
)
Index(
    "ix_batches_open",
    batches.c.chat,
    sqlite_where=text("closed_at IS NULL"),
    postgresql_where=text("closed_at IS NULL"),
)
Index("ix_batches_owner", batches.c.owner)

members = Table(  # chats to which a batch is shared beside its own, and whose they are
    "members",
    metadata,
    Column("batch", Text, ForeignKey("batches.id"), primary_key=True),
    Column("chat", Text, primary_key=True),
    Column("person", Text, nullable=False),
    Column("since", Instant, nullable=False),
)
Index("ix_members_chat", members.c.chat)

invitations = Table(
    "invitations",
    metadata,
    Column("code", Text, primary_key=True),
    Column("batch", Text, ForeignKey("batches.id"), nullable=False),
    Column("until", Instant, nullable=False),
    Column("handing", JSON),  # what whoever comes takes over, as an event; NULL: nothing
)

events = Table(
    "events",
    metadata,
    Column("batch", Text, ForeignKey("batches.id"), primary_key=True),
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("at", Instant, nullable=False),
    Column("said_at", Instant, nullable=False),
    Column("said_by", Text, nullable=False),
    Column("message", Text),  # NULL: nobody said it in a message, so it cannot be said twice
    Column("place", Integer, nullable=False),  # which event of its message, from 0
    Column("kind", Text, nullable=False),
    Column("body", JSON, nullable=False),
    UniqueConstraint("batch", "message", "place"),
)

seen = Table(
    "seen",
    metadata,
    Column("key", Text, primary_key=True),
    Column("at", Instant, nullable=False),
)
Index("ix_seen_at", seen.c.at)

visits = Table(
    "visits",
    metadata,
    Column("chat", Text, primary_key=True),
    Column("first_day", Text, nullable=False),  # YYYY-MM-DD, UTC
    Column("day", Text, nullable=False),
    Column("messages", Integer, nullable=False),
    Column("admitted", Boolean, nullable=False, default=False, server_default=text("FALSE")),
)
Index("ix_visits_first_day", visits.c.first_day)

wronged = Table(
    "wronged",
    metadata,
    Column("id", BigInteger().with_variant(Integer, "sqlite"), primary_key=True, autoincrement=True),
    Column("at", Instant, nullable=False),
    Column("answer", Text, nullable=False),
    Column("question", Text, nullable=False),
    sqlite_autoincrement=True,
)

LIVE: Final = "state IN ('waiting', 'sending')"
URGENT: Final = "urgency IN ('piercing', 'normal')"

outgoing = Table(
    "outgoing",
    metadata,
    Column("id", BigInteger().with_variant(Integer, "sqlite"), primary_key=True, autoincrement=True),
    Column("chat", Text, nullable=False),
    Column("sort", Text, nullable=False),
    Column("batch", Text),
    Column("step", Text),
    Column("kind", Text),
    Column("occurrence", Integer, nullable=False, default=0, server_default="0"),
    # how often this very key was wanted once more after it had been sent
    Column("again", Integer, nullable=False, default=0, server_default="0"),
    Column("urgency", Text),
    Column("body", JSON),
    Column("answering", Text),
    Column("made_at", Instant, nullable=False),
    Column("due_at", Instant, nullable=False),
    # nobody may claim it before: the due time, the end of a wait for the next try, or of a lease
    Column("free_at", Instant, nullable=False),
    Column("state", Text, nullable=False),
    Column("owner", Text),
    Column("attempts", Integer, nullable=False, default=0, server_default="0"),
    # an earlier try may have arrived
    Column("repeat", Boolean, nullable=False, default=False, server_default=text("FALSE")),
    Column("sent_at", Instant),
    Column("channel_key", Text),
    Column("why", Text),
    CheckConstraint("sort IN ('reply', 'reminder')", name="sort"),
    CheckConstraint("state IN ('waiting', 'sending', 'sent', 'withdrawn', 'dead')", name="state"),
    CheckConstraint("free_at >= due_at", name="free_at"),
    UniqueConstraint("batch", "chat", "step", "kind", "occurrence", "again"),
    sqlite_autoincrement=True,
)


def _partial(name: str, where: str, *columns: str) -> None:
    Index(name, *(outgoing.c[column] for column in columns), sqlite_where=text(where), postgresql_where=text(where))


_partial("ix_outgoing_due", LIVE, "sort", "due_at", "id")
_partial("ix_outgoing_free", LIVE, "sort", "free_at")
_partial("ix_outgoing_urgent_due", f"{LIVE} AND {URGENT}", "urgency", "due_at", "id")
_partial("ix_outgoing_urgent_free", f"{LIVE} AND {URGENT}", "urgency", "free_at")
_partial("ix_outgoing_chat", LIVE, "chat", "sort", "id")
_partial("ix_outgoing_turn", LIVE, "chat", "sort", "due_at", "id")
_partial("ix_outgoing_said", "channel_key IS NOT NULL", "chat", "channel_key")
_partial("ix_outgoing_reminded", "state = 'sent' AND sort = 'reminder'", "chat", "sent_at")
_partial("ix_outgoing_about", "batch IS NOT NULL AND (sort = 'reply' OR state = 'sent')", "chat", "id")
