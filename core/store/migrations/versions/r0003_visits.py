"""How often a chat was spoken in, and whether it was let in."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the table."""
    op.create_table(
        "visits",
        sa.Column("chat", sa.Text(), nullable=False),
        sa.Column("first_day", sa.Text(), nullable=False),
        sa.Column("day", sa.Text(), nullable=False),
        sa.Column("messages", sa.Integer(), nullable=False),
        sa.Column("admitted", sa.Boolean(), server_default=sa.text("FALSE"), nullable=False),
        sa.PrimaryKeyConstraint("chat", name="pk_visits"),
    )
    op.create_index("ix_visits_first_day", "visits", ["first_day"])
