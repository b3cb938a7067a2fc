"""Settings of a person: kept, and every batch of theirs brought in line."""

from typing import Any

from core.batch.assess import Assessment
from core.service import record
from core.service.turn import Turn
from core.store import batches


def change(turn: Turn, changes: dict[str, Any]) -> list[Assessment]:
    """Keep settings of who spoke, and derive the plans and reminders of their open batches again."""
    turn.keep_person(**changes)
    found = []
    for row in batches.of_person(turn.tx, turn.person.id):
        if row.closed_at is None:
            after = record.look(turn.tx, row.id, turn.now)
            record.remind(turn.tx, after)
            found.append(after)
    return found
