"""Indexes by which a claim finds what is urgent, however much else is due."""

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the indexes."""
    urgent = sa.text("state IN ('waiting', 'sending') AND urgency IN ('piercing', 'normal')")
    for name, last in (("due", ["due_at", "id"]), ("free", ["free_at"])):
        columns = ["urgency", *last]
        op.create_index(f"ix_outgoing_urgent_{name}", "outgoing", columns, sqlite_where=urgent, postgresql_where=urgent)
