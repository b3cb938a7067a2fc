"""Answers that somebody called wrong, for the keeper to mend."""

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None

NUMBER = sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def upgrade() -> None:
    """Make the table."""
    op.create_table(
        "wronged",
        sa.Column("id", NUMBER, autoincrement=True, nullable=False),
        sa.Column("at", sa.BigInteger(), nullable=False),
        sa.Column("answer", sa.Text(), nullable=False),
        sa.Column("question", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_wronged"),
        sqlite_autoincrement=True,
    )
