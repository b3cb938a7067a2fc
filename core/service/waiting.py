"""What waits in the outbox, seen from above the store: the batch that a reminder speaks of."""

from datetime import datetime

from core.batch.assess import Assessment
from core.errors import Gone
from core.person import Person
from core.service import record
from core.service.duties import holder
from core.service.turn import House
from core.store import backlog as backlogs
from core.store import batches, members, outbox, people, standing
from core.store.backlog import Backlog
from core.store.database import open_database
from core.store.outbox import Row
from core.store.servertime import Time, wall

__all__ = [
    "Backlog",
    "Row",
    "Time",
    "backlog",
    "batch_by_id",
    "batch_of",
    "beside",
    "called",
    "doser",
    "has_others",
    "next_due",
    "open_house",
    "reader",
    "said_since",
    "wall",
]


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


def beside(house: House, row: Row, now: datetime) -> tuple[Row, ...]:
    """The other reminders of a row's chat that stand at the same time, none of them piercing."""
    with house.reading() as tx:
        return standing.beside(tx, row, now)


def said_since(house: House, chat: str, since: datetime) -> int:
    """How many messages of reminders a chat was sent from a moment on, piercing ones left out."""
    with house.reading() as tx:
        return standing.said_since(tx, chat, since)


def called(house: House, row: Row, a: Assessment) -> str:
    """Who a reminder is for, by name, where it was handed to somebody and goes to a chat of several."""
    one = holder(a.batch.handed, (row.step or "").partition("/")[0], row.due_at)
    with house.reading() as tx:
        kept = batches.get(tx, row.batch or "")
    at_home = kept is not None and kept.chat == row.chat
    if one is None or one.chat != row.chat or one.person == row.chat:  # nobody is called by name in a chat of their own
        return ""
    return one.name if at_home else ""


def reader(house: House, row: Row) -> Person | None:
    """Who reads a reminder in a chat of their own; None for a group, which sleeps by the clock of the batch."""
    with house.reading() as tx:
        kept = batches.get(tx, row.batch or "")
        sharing = {m.chat: m.person for m in members.of_batch(tx, row.batch or "")}
        at_home = kept.owner if kept and kept.chat == row.chat == kept.owner else ""
        return people.load(tx, sharing.get(row.chat, at_home))


def doser(house: House, row: Row, a: Assessment) -> str:
    """Who weighs the cure that a reminder calls for, by name, where others have the batch too."""
    if row.step != "brine" or a.batch.setup.nitrite_target == 0.0:
        return ""
    with house.reading() as tx:
        kept = batches.get(tx, row.batch or "")
        sharing = members.of_batch(tx, row.batch or "")
        owner = people.load(tx, kept.owner) if kept else None
    handed = next((one.name for one in reversed(a.batch.handed) if one.task == "cure"), "")
    return handed or (owner.name if owner and sharing else "")


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
