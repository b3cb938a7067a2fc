"""Add to a batch what happened: load, decide, save. Every change of a batch goes through here."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from typing import Any, Final

from core.batch.assess import Assessment, Change, assess
from core.batch.batch import Phase, fold
from core.batch.events import Event, What
from core.errors import Gone, TooMany
from core.person import Person
from core.plan.hours import wall_of
from core.plan.reminders import Pause, Wanted, wanted
from core.service import teaching
from core.service.duties import in_pause, shared
from core.service.turn import Turn
from core.store import batches, members, outbox, people
from core.store.database import Transaction

MOST_OPEN: Final = (
    40  # in one chat; with so many «flipped» is read in 0.1 s, in which nobody else is answered. Judgement
)


def look(tx: Transaction, batch_id: str, now: datetime) -> Assessment:
    """A batch as it stands; raises Gone where there is none."""
    return assessed(tx, batch_id, (batches.events(tx, batch_id), owner_of(tx, batch_id), now))


def assessed(tx: Transaction, batch_id: str, of: tuple[Sequence[Event], Person, datetime]) -> Assessment:
    """What the log of a batch, its owner and the time make of it: worked out once for the same in a transaction.

    Nothing else goes into an assessment, so that nothing else can make the one of a moment ago a wrong one; from
    one turn to the next it is not kept, since the next has another time.
    """
    known: tuple[Any, Assessment] | None = tx.derived.get(batch_id)
    if known is None or known[0] != of:
        log, owner, now = of
        with tx.reckoned.timed():
            known = tx.derived[batch_id] = of, assess(fold(batch_id, log), owner, now)
    return known[1]


def make_room(turn: Turn) -> None:
    """Raises TooMany where this chat has as many batches under way as it may: a line is read beside each of them."""
    if len(batches.open_in(turn.tx, turn.said.chat)) >= MOST_OPEN:
        raise TooMany(MOST_OPEN)


def owner_of(tx: Transaction, batch_id: str) -> Person:
    """Whose batch it is: their zone, hours and learning make the plan."""
    row = batches.get(tx, batch_id)
    if row is None:
        raise Gone("batch")
    return people.load(tx, row.owner) or Person(row.owner)


def add(turn: Turn, batch_id: str, happened: Sequence[tuple[What, datetime]]) -> Change:
    """Append what happened, fold the batch again, and bring its reminders in line, in this turn's transaction."""
    turn.tx.take_turns_of_batch(batch_id)
    known = batches.events(turn.tx, batch_id)
    owner = owner_of(turn.tx, batch_id)
    before = assessed(turn.tx, batch_id, (known, owner, turn.now)) if known else None
    new = _numbered(turn, known, happened)
    after = assessed(turn.tx, batch_id, ((*known, *new), owner, turn.now))
    batches.append(turn.tx, batch_id, new)
    if teaching.of_the_fire(before.batch if before else None, after.batch, turn.now):
        after = replace(after, person=_taught(turn, owner))
    remind(turn.tx, after)
    return Change(before, after)


def note(turn: Turn, batch_id: str, what: What) -> None:
    """Append what changes nothing of what is known of a batch: nothing is worked out anew, and nobody reminded."""
    turn.tx.take_turns_of_batch(batch_id)
    batches.append(turn.tx, batch_id, _numbered(turn, batches.events(turn.tx, batch_id), [(what, turn.now)]))


def _numbered(turn: Turn, known: Sequence[Event], happened: Sequence[tuple[What, datetime]]) -> list[Event]:
    """What happened as the next lines of a log, said by who speaks."""
    first, said = max((e.number for e in known), default=0) + 1, turn.said
    return [
        Event(first + i, at, said.said_at, turn.person.id, said.ref or said.key, what)
        for i, (what, at) in enumerate(happened)
    ]


def _taught(turn: Turn, owner: Person) -> Person:
    """The owner with what their batches teach now."""
    taught = teaching.learn(turn.tx, owner)
    if taught.id == turn.person.id:
        turn.person = replace(turn.person, learned=taught.learned)
    return taught


def remind(tx: Transaction, after: Assessment) -> None:
    """Bring the waiting reminders of a batch in line with its plan; meat that is thrown away calls for none."""
    batch = after.batch
    row = batches.get(tx, batch.id)
    if row is None:
        raise Gone("batch")
    asked: Sequence[Wanted] = ()
    sharing = members.of_batch(tx, batch.id)
    if after.plan is not None and batch.phase is not Phase.OVER and not after.ledger.thrown:
        pause = Pause(batch.paused_since, batch.paused_until) if batch.paused else None
        asked = wanted(after.plan, wall_of(after.person), now=after.now)
        if pause is None:
            asked = shared(asked, batch.handed, sharing)
        else:
            held = wanted(after.plan, wall_of(after.person), pause=pause, now=after.now)
            asked = in_pause(asked, held, batch, row, sharing)
    outbox.reconcile(tx, batch.id, row.chat, asked, after.now)
    if batch.phase is Phase.OVER:
        batches.close(tx, batch.id, after.now)
        members.close(tx, batch.id)
