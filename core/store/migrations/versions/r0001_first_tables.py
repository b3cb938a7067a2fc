"""The first tables: people, what they were asked, batches, their events, seen messages, the outbox."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None

# Times are microseconds since 1970 UTC. A migration spells its types itself: the code moves on, it does not.
NUMBER = sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def upgrade() -> None:
    """Make the tables."""
    op.create_table(
        "people",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("settings", sa.JSON(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_people"),
    )
    op.create_table(
        "asked",
        sa.Column("chat", sa.Text(), nullable=False),
        sa.Column("person", sa.Text(), nullable=False),
        sa.Column("question", sa.JSON(), nullable=False),
        sa.PrimaryKeyConstraint("chat", "person", name="pk_asked"),
    )
    op.create_table(
        "seen",
        sa.Column("key", sa.Text(), nullable=False),
        sa.Column("at", sa.BigInteger(), nullable=False),
        sa.PrimaryKeyConstraint("key", name="pk_seen"),
    )
    op.create_index("ix_seen_at", "seen", ["at"])
    _make_batches()
    _make_outgoing()


def _make_batches() -> None:
    op.create_table(
        "batches",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("chat", sa.Text(), nullable=False),
        sa.Column("owner", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("made_at", sa.BigInteger(), nullable=False),
        sa.Column("closed_at", sa.BigInteger(), nullable=True),
        sa.PrimaryKeyConstraint("id", name="pk_batches"),
    )
    _make_index("ix_batches_open", "batches", ["chat"], "closed_at IS NULL")
    op.create_index("ix_batches_owner", "batches", ["owner"])
    op.create_table(
        "events",
        sa.Column("batch", sa.Text(), nullable=False),
        sa.Column("number", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("at", sa.BigInteger(), nullable=False),
        sa.Column("said_at", sa.BigInteger(), nullable=False),
        sa.Column("said_by", sa.Text(), nullable=False),
        sa.Column("message", sa.Text(), nullable=True),
        sa.Column("place", sa.Integer(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("body", sa.JSON(), nullable=False),
        sa.ForeignKeyConstraint(["batch"], ["batches.id"], name="fk_events_batch"),
        sa.PrimaryKeyConstraint("batch", "number", name="pk_events"),
        sa.UniqueConstraint("batch", "message", "place", name="uq_events_batch_message_place"),
    )


def _make_outgoing() -> None:
    op.create_table(
        "outgoing",
        sa.Column("id", NUMBER, autoincrement=True, nullable=False),
        sa.Column("chat", sa.Text(), nullable=False),
        sa.Column("sort", sa.Text(), nullable=False),
        sa.Column("batch", sa.Text(), nullable=True),
        sa.Column("step", sa.Text(), nullable=True),
        sa.Column("kind", sa.Text(), nullable=True),
        sa.Column("occurrence", sa.Integer(), server_default="0", nullable=False),
        sa.Column("again", sa.Integer(), server_default="0", nullable=False),
        sa.Column("urgency", sa.Text(), nullable=True),
        sa.Column("body", sa.JSON(), nullable=True),
        sa.Column("answering", sa.Text(), nullable=True),
        sa.Column("made_at", sa.BigInteger(), nullable=False),
        sa.Column("due_at", sa.BigInteger(), nullable=False),
        sa.Column("free_at", sa.BigInteger(), nullable=False),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("owner", sa.Text(), nullable=True),
        sa.Column("attempts", sa.Integer(), server_default="0", nullable=False),
        sa.Column("repeat", sa.Boolean(), server_default=sa.text("FALSE"), nullable=False),
        sa.Column("sent_at", sa.BigInteger(), nullable=True),
        sa.Column("channel_key", sa.Text(), nullable=True),
        sa.Column("why", sa.Text(), nullable=True),
        sa.CheckConstraint("sort IN ('reply', 'reminder')", name="ck_outgoing_sort"),
        sa.CheckConstraint("state IN ('waiting', 'sending', 'sent', 'withdrawn', 'dead')", name="ck_outgoing_state"),
        sa.CheckConstraint("free_at >= due_at", name="ck_outgoing_free_at"),
        sa.PrimaryKeyConstraint("id", name="pk_outgoing"),
        sa.UniqueConstraint(
            "batch", "step", "kind", "occurrence", "again", name="uq_outgoing_batch_step_kind_occurrence_again"
        ),
        sqlite_autoincrement=True,
    )
    live = "state IN ('waiting', 'sending')"
    _make_index("ix_outgoing_due", "outgoing", ["sort", "due_at", "id"], live)
    _make_index("ix_outgoing_free", "outgoing", ["sort", "free_at"], live)
    _make_index("ix_outgoing_chat", "outgoing", ["chat", "sort", "id"], live)
    _make_index("ix_outgoing_said", "outgoing", ["chat", "channel_key"], "channel_key IS NOT NULL")
    _make_index("ix_outgoing_reminded", "outgoing", ["chat", "sent_at"], "state = 'sent' AND sort = 'reminder'")


def _make_index(name: str, table: str, columns: list[str], where: str) -> None:
    op.create_index(name, table, columns, sqlite_where=sa.text(where), postgresql_where=sa.text(where))
