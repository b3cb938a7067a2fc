"""Start, change, finish and list batches; correct and undo what was said of them."""

from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

from core.batch.assess import Assessment
from core.batch.batch import fold
from core.batch.events import Changed, Corrected, Event, Finished, Paused, Read, Resumed, Started, What
from core.errors import Gone
from core.plan.recipe import product, product_of_cut
from core.service import record
from core.service.record import Change
from core.service.turn import Turn
from core.store import batches
from core.store.batches import Row


def start(turn: Turn, said: dict[str, Any]) -> Change:
    """Begin a batch from what was said of it; what the person's past says stands where nothing was said.

    Raises
    ------
    Gone
        There is no such product, cut or purpose.
    OutOfRange
        A weight, thickness or target that cannot be.
    """
    name = said.get("product") or product_of_cut(said["cut"]).name
    setup = _habits(turn, name) | said | {"product": name}
    product(name).setup({k: v for k, v in setup.items() if k != "product"})  # refuses before anything is kept
    batch_id = batches.new_id(turn.tx)
    label = _label(turn, name, setup.get("cut", ""))
    batches.add(turn.tx, batch_id, turn.said.chat, turn.person.id, label, turn.now)
    return record.add(turn, batch_id, [(Started(label, setup), turn.now)])


def change(turn: Turn, batch_id: str, changes: dict[str, Any]) -> Change:
    """State or change something of the setup."""
    return record.add(turn, batch_id, [(Changed(changes), turn.now)])


def finish(turn: Turn, batch_id: str, how: str) -> Change:
    """The batch is over: eaten, cancelled or thrown away."""
    return record.add(turn, batch_id, [(Finished(how), turn.now)])


def pause(turn: Turn, batch_id: str, until: datetime | None) -> Change:
    """Hold back what is not about safety, until a time or until further notice."""
    return record.add(turn, batch_id, [(Paused(until), turn.now)])


def resume(turn: Turn, batch_id: str) -> Change:
    """Let the reminders run again."""
    return record.add(turn, batch_id, [(Resumed(), turn.now)])


def undo(turn: Turn, batch_id: str) -> tuple[Event, Change]:
    """Take back the last thing that was said of a batch; raises Gone where there is nothing to take back."""
    event = last_event(turn, batch_id)
    return event, correct(turn, batch_id, event.number, None)


def correct(
    turn: Turn, batch_id: str, number: int, instead: What | None, *, at: datetime | None = None
) -> Change:
    """Put something in the place of event `number`, or nothing."""
    return record.add(turn, batch_id, [(Corrected(number, instead, at), turn.now)])


def last_event(turn: Turn, batch_id: str, *, reading: bool = False) -> Event:
    """The last thing said of a batch that still stands, or its last reading; raises Gone where there is none.

    Several events of one message are one thing said: the last of them is meant.
    """
    known = batches.events(turn.tx, batch_id)
    lifted = {e.what.target for e in known if isinstance(e.what, Corrected) and e.what.instead is None}
    standing = [
        e
        for e in known
        if e.number not in lifted
        and not isinstance(e.what, Started | Corrected)
        and (isinstance(e.what, Read) or not reading)
    ]
    if not standing:
        raise Gone("event")
    return standing[-1]


def standing_event(turn: Turn, batch_id: str, number: int) -> Event:
    """Event `number` as it stands after its corrections; raises Gone where it was taken back."""
    from_log = [e for e in batches.events(turn.tx, batch_id)]
    target = next((e for e in from_log if e.number == number), None)
    if target is None:
        raise Gone("event")
    for event in from_log:
        if isinstance(event.what, Corrected) and event.what.target == number:
            target = replace(target, what=event.what.instead or target.what, at=event.what.at or target.at)
    return target


def look(turn: Turn, batch_id: str) -> Assessment:
    """A batch as it stands now; raises Gone where it is not this chat's."""
    row = batches.get(turn.tx, batch_id)
    if row is None or not _may_see(turn, row):
        raise Gone("batch")
    return record.look(turn.tx, batch_id, turn.now)


def open_here(turn: Turn) -> tuple[Row, ...]:
    """The batches that are under way in this chat, the latest last."""
    return batches.open_in(turn.tx, turn.said.chat)


def _may_see(turn: Turn, row: Row) -> bool:
    return row.chat == turn.said.chat


def _habits(turn: Turn, name: str) -> dict[str, Any]:
    """What the person's settings and past batches say before they say anything."""
    person = turn.person
    habits: dict[str, Any] = {"cooker": person.cooker, "fridge_c": person.fridge_c}
    if person.cure_nitrite_fraction is not None:
        habits["cure_nitrite_fraction"] = person.cure_nitrite_fraction
    usual = dict(product(name).defaults).get("salt_fraction")
    if usual is not None and person.learned.salt_shift:
        habits["salt_fraction"] = usual + person.learned.salt_shift
    return habits


def _label(turn: Turn, name: str, cut: str) -> str:
    """A short name for the batch, unlike the others of this chat: "flat", "flat 2"."""
    base = cut.rsplit("_", 1)[-1] if cut else name
    taken = {row.name for row in batches.open_in(turn.tx, turn.said.chat)}
    names = (base if n == 1 else f"{base} {n}" for n in range(1, len(taken) + 2))
    return next(n for n in names if n not in taken)


def finished_of(turn: Turn, person_id: str) -> list[tuple[Row, tuple[Event, ...]]]:
    """Every batch of a person with its log, in the order in which they were begun."""
    return [(row, batches.events(turn.tx, row.id)) for row in batches.of_person(turn.tx, person_id)]


def age(batch_events: tuple[Event, ...], now: datetime) -> timedelta:
    """How long ago a batch was begun."""
    return now - fold("", batch_events).started
