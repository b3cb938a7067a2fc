"""Settings of a person: kept, and every batch of theirs brought in line."""

from typing import Any

from core.batch.assess import Assessment, Change
from core.batch.events import Assumed, Changed
from core.batch.weighed import is_told
from core.person import Person
from core.service import households, record
from core.service.turn import Turn
from core.store import batches, people, visits
from core.units import Kilograms


def change(turn: Turn, changes: dict[str, Any]) -> list[Change]:
    """Keep settings of who spoke, and derive the plans and reminders of their open batches again."""
    home = turn.person.zone if turn.person.zone_known else ""
    own = [row.id for row in batches.of_person(turn.tx, turn.person.id) if row.closed_at is None]
    before = [record.look(turn.tx, batch_id, turn.now) for batch_id in own]
    turn.keep_person(**changes, **_left(turn.person, changes))
    found = []
    for was in before:
        if "jurisdiction" in changes and (weighed := _weighed(was)) is not None:
            record.add(turn, was.batch.id, [(Assumed({"put_in_cure": weighed}), turn.now)])
        stays = _stays(turn, was, home, changes)
        if stays is not None:
            record.add(turn, was.batch.id, [(Assumed({"zone": stays}), turn.now)])
        if stays:
            continue
        if _on_another_cooker(was, changes):
            moved = record.add(turn, was.batch.id, [(Changed({"cooker": changes["cooker"]}), turn.now)])
            found.append(Change(was, moved.after))
            continue
        after = record.look(turn.tx, was.batch.id, turn.now)
        record.remind(turn.tx, after)
        found.append(Change(was, after))
    return found


def _weighed(a: Assessment) -> Kilograms | None:
    """The curing salt that is in, aimed by the law of the place that is left: what is in stays in. [kg]"""
    told = a.batch.dosed is not None and "put_in_cure" not in a.batch.put_in and is_told(a.batch)
    return a.dose.cure_kg if told and a.dose is not None and a.dose.cure_kg > 0.0 else None


def _left(person: Person, changes: dict[str, Any]) -> dict[str, Any]:
    """With another zone, the one that was left first: a journey of several stops ends where it began."""
    zone = changes.get("zone")
    if zone is None or not person.zone_known or zone == person.zone or "home_zone" in changes:
        return {}
    home = person.home_zone or person.zone
    return {"home_zone": "" if zone == home else home}


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
