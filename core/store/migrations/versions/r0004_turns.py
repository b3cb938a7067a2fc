"""An index by which a claim sees whether an earlier reminder of the chat is due or in hand."""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the index."""
    live = sa.text("state IN ('waiting', 'sending')")
    columns = ["chat", "sort", "due_at", "id"]
    op.create_index("ix_outgoing_turn", "outgoing", columns, sqlite_where=live, postgresql_where=live)
