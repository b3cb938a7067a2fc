"""An index by which a turn sees what was said last in its chat, however much was said in others."""

import sqlalchemy as sa
from alembic import op

revision = "0007"
down_revision = "0006"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the index."""
    said = sa.text("batch IS NOT NULL AND (sort = 'reply' OR state = 'sent')")
    op.create_index("ix_outgoing_about", "outgoing", ["chat", "id"], sqlite_where=said, postgresql_where=said)
