"""Finished meat in the freezer: what was told of it, and what that does to the days it keeps in the fridge."""

from datetime import datetime, timedelta
from typing import Final

from core.batch.batch import Batch
from core.units import Days

THAWS: Final[Days] = 1.0  # of each spell, counted as in the fridge: it thaws there for up to a day. Judgement


def frozen_at(batch: Batch) -> datetime | None:
    """Since when all of the finished meat lies in the freezer; None while some of it is in the fridge."""
    spells = _spells(batch)
    return spells[-1][0] if spells and spells[-1][1] is None else None


def frozen_days(batch: Batch) -> Days:
    """Whole spells in the freezer, by which its days in the fridge are put off; each less the day of its thaw. [d]"""
    ended = [(until - since) / timedelta(days=1) for since, until in _spells(batch) if until is not None]
    return sum(max(days - THAWS, 0.0) for days in ended)


def _spells(batch: Batch) -> list[tuple[datetime, datetime | None]]:
    """From when to when all of it was frozen, in order; the last one may go on."""
    off, found = batch.off_at, list[tuple[datetime, datetime | None]]()
    for at, what in sorted(batch.incidents, key=lambda told: told[0]):
        if off is None or at < off:
            continue
        open_ = bool(found) and found[-1][1] is None
        if what.what == "frozen" and what.facts.get("all") and not open_:
            found.append((at, None))
        elif what.what == "thawed" and open_:
            found[-1] = (found[-1][0], at)
    return found
