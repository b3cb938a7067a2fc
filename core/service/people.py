"""Settings of a person: kept, and every batch of theirs brought in line."""

from typing import Any

from core.batch.assess import Assessment, Change
from core.batch.batch import fold
from core.batch.events import Assumed, Changed
from core.person import Person
from core.service import households, record
from core.service.turn import Turn
from core.store import batches, people, visits


def change(turn: Turn, changes: dict[str, Any]) -> list[Change]:
    """Keep settings of who spoke, and derive the plans and reminders of their open batches again."""
    home = turn.person.zone if turn.person.zone_known else ""
    own = [row.id for row in batches.of_person(turn.tx, turn.person.id) if row.closed_at is None]
    before = [record.look(turn.tx, batch_id, turn.now) for batch_id in own]
    if changes.get("jurisdiction", turn.person.jurisdiction) != turn.person.jurisdiction:
        _keep_as_weighed(turn)
    turn.keep_person(**(changes | _left(turn.person, changes)))
    moved = (_in_line(turn, was, home, changes) for was in before)
    return [one for one in moved if one is not None]


def _in_line(turn: Turn, was: Assessment, home: str, changes: dict[str, Any]) -> Change | None:
    """One batch by the settings as they are now; None where it is left as it was, on the clock of another place."""
    stays = _stays(turn, was, home, changes)
    if stays is not None:
        record.add(turn, was.batch.id, [(Assumed({"zone": stays}), turn.now)])
    if stays and "jurisdiction" not in changes:
        return None
    if _on_another_cooker(was, changes):
        moved = record.add(turn, was.batch.id, [(Changed({"cooker": changes["cooker"]}), turn.now)])
        return Change(was, moved.after)
    after = record.look(turn.tx, was.batch.id, turn.now)
    record.remind(turn.tx, after)
    return Change(was, after)


def _keep_as_weighed(turn: Turn) -> None:
    """By whose law each batch was weighed, those that are over too: what is in stays in, and what was eaten."""
    for row in batches.of_person(turn.tx, turn.person.id):
        batch = fold(row.id, batches.events(turn.tx, row.id))
        if batch.dosed is not None and not batch.setup.law:
            record.note(turn, row.id, Assumed({"law": turn.person.jurisdiction}))


def _left(person: Person, changes: dict[str, Any]) -> dict[str, Any]:
    """With another zone, the one that was left first, and its law: a journey of several stops ends where it began."""
    zone = changes.get("zone")
    if zone is None or not person.zone_known or zone == person.zone:
        return {}
    home, law = person.home_zone or person.zone, person.home_law or person.jurisdiction
    stays = zone == home or "home_zone" in changes
    return {"home_zone": "", "home_law": ""} if stays else {"home_zone": home, "home_law": law}


def _stays(turn: Turn, a: Assessment, home: str, changes: dict[str, Any]) -> str | None:
    """The clock that a batch is on from now: of the place that its owner left, where others have it too.

    "" is the owner's own again: who said the same place twice, or is back. None is no change.
    """
    zone, kept = changes.get("zone"), a.batch.setup.zone
    if zone is None or (kept and zone not in (kept, home)):
        return None
    if kept:
        return ""
    shared = households.is_shared(turn, a.batch.id) or households.in_group(turn, a.batch.id)
    return home if home and zone != home and shared else None


def _on_another_cooker(a: Assessment, changes: dict[str, Any]) -> bool:
    """Whether meat that is not off yet, and is smoked, was planned for another cooker than the one that is told."""
    kind = a.batch.setup.cooker
    return "cooker" in changes and kind not in (changes["cooker"], "pot") and a.batch.off_at is None


def forget(turn: Turn) -> tuple[str, ...]:
    """Forget who spoke: settings, learning, open questions; the names of their open batches, where these forbid it.

    The clock and the hours of an open batch are its owner's, so none of them may be under way.
    """
    under_way = open_ones(turn)
    if not under_way:
        households.forget(turn)
        people.forget(turn.tx, turn.person.id)
        batches.unname(turn.tx, turn.person.id)
        visits.forget(turn.tx, turn.person.id)
    return under_way


def open_ones(turn: Turn) -> tuple[str, ...]:
    """The names of the batches of who spoke that are under way."""
    return tuple(row.name for row in batches.of_person(turn.tx, turn.person.id) if row.closed_at is None)
