"""Before a general answer about eating or keeping: that the batch in hand is not shown to be safe.

What is to be thrown away is told before every answer already (`asking`).
"""

from typing import Final

from bot.wording import cooling
from core.answers.entries import Entry
from core.batch.batch import Phase
from core.safety.findings import Outcome
from core.service import batches
from core.service.turn import Turn

OF_EATING: Final = frozenset(
    {"eaters", "health", "serve", "reheat", "store", "keep", "slice", "slicing", "freeze", "pack"}
)


def first(turn: Turn, e: Entry) -> str:
    """That the cooked batch of this talk is not cleared, before an entry that reads as leave to eat it, or nothing."""
    if e.kind != "entry" or e.subject not in OF_EATING:
        return ""
    here = [batches.look(turn, row.id) for row in batches.open_here(turn)]
    doubted = [a for a in here if a.batch.phase is Phase.STORED and a.ledger.verdict.kind is Outcome.CANNOT_SAY]
    return cooling.not_cleared(doubted[-1], named=len(here) > 1) if doubted else ""
