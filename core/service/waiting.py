"""What waits in the outbox, seen from above the store: the batch that a reminder speaks of."""

from datetime import datetime

from core.batch.assess import Assessment
from core.errors import Gone
from core.service import record
from core.service.turn import House
from core.store import backlog as backlogs
from core.store import batches, outbox
from core.store.backlog import Backlog
from core.store.database import open_database
from core.store.outbox import Row

__all__ = ["Backlog", "Row", "backlog", "batch_by_id", "batch_of", "has_others", "next_due", "open_house"]


def batch_of(house: House, row: Row, now: datetime) -> Assessment | None:
    """The batch of a reminder as it stands now, None where there is none any more."""
    return None if row.batch is None else batch_by_id(house, row.batch, now)


def batch_by_id(house: House, batch_id: str, now: datetime) -> Assessment | None:
    """A batch as it stands now, None where there is none."""
    with house.reading() as tx:
        try:
            return record.look(tx, batch_id, now)
        except Gone:
            return None


def has_others(house: House, row: Row) -> bool:
    """Whether the chat of a reminder has more than one batch under way: then each is called by its name."""
    with house.reading() as tx:
        return len(batches.open_in(tx, row.chat)) > 1


def next_due(house: House) -> datetime | None:
    """When the next message falls due."""
    return outbox.next_due(house)


def backlog(house: House, now: datetime) -> Backlog:
    """What is due and not yet sent. Raises NotKept."""
    with house.reading() as tx:
        return backlogs.backlog(tx, now)


def open_house(url: str) -> House:
    """The store at a URL, brought up to date; what an earlier run left half sent waits again."""
    house = open_database(url)
    outbox.give_back_all(house)
    return house
