"""A batch is shared with further chats, and a reminder goes to each of them."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None

NUMBER = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
OLD = "uq_outgoing_batch_step_kind_occurrence_again"
NEW = "uq_outgoing_batch_chat_step_kind_occurrence_again"
KEY = ("batch", "chat", "step", "kind", "occurrence", "again")
LIVE = "state IN ('waiting', 'sending')"
INDEXES = (
    ("ix_outgoing_due", ["sort", "due_at", "id"], LIVE),
    ("ix_outgoing_free", ["sort", "free_at"], LIVE),
    ("ix_outgoing_chat", ["chat", "sort", "id"], LIVE),
    ("ix_outgoing_said", ["chat", "channel_key"], "channel_key IS NOT NULL"),
    ("ix_outgoing_reminded", ["chat", "sent_at"], "state = 'sent' AND sort = 'reminder'"),
)


def upgrade() -> None:
    """Make the tables of a household; a reminder is one for each chat."""
    op.create_table(
        "members",
        sa.Column("batch", sa.Text(), nullable=False),
        sa.Column("chat", sa.Text(), nullable=False),
        sa.Column("person", sa.Text(), nullable=False),
        sa.Column("since", sa.BigInteger(), nullable=False),
        sa.ForeignKeyConstraint(["batch"], ["batches.id"], name="fk_members_batch"),
        sa.PrimaryKeyConstraint("batch", "chat", name="pk_members"),
    )
    op.create_index("ix_members_chat", "members", ["chat"])
    op.create_table(
        "invitations",
        sa.Column("code", sa.Text(), nullable=False),
        sa.Column("batch", sa.Text(), nullable=False),
        sa.Column("until", sa.BigInteger(), nullable=False),
        sa.Column("handing", sa.JSON(), nullable=True),
        sa.ForeignKeyConstraint(["batch"], ["batches.id"], name="fk_invitations_batch"),
        sa.PrimaryKeyConstraint("code", name="pk_invitations"),
    )
    if op.get_bind().dialect.name == "sqlite":
        _copied()
    else:
        op.drop_constraint(OLD, "outgoing", type_="unique")
        op.create_unique_constraint(NEW, "outgoing", list(KEY))


def _copied() -> None:
    """SQLite changes no constraint of a table: it is made anew, and its rows and the count of its ids go along."""
    for name, _, _ in INDEXES:
        op.drop_index(name, table_name="outgoing")
    op.rename_table("outgoing", "outgoing_before")
    _make()
    op.execute("INSERT INTO outgoing SELECT * FROM outgoing_before")
    op.execute("DELETE FROM sqlite_sequence WHERE name = 'outgoing'")
    op.execute("UPDATE sqlite_sequence SET name = 'outgoing' WHERE name = 'outgoing_before'")
    op.drop_table("outgoing_before")
    for name, columns, where in INDEXES:
        op.create_index(name, "outgoing", columns, sqlite_where=sa.text(where))


def _make() -> None:
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
        sa.UniqueConstraint(*KEY, name=NEW),
        sqlite_autoincrement=True,
    )
