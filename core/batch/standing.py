"""The log of a batch as it stands: what was corrected reads as it was put right, and what was taken back is gone."""

from collections.abc import Iterable, Mapping

from core.batch.events import Corrected, Event
from core.but import but


def effective(events: Iterable[Event]) -> tuple[Event, ...]:
    """The events as they stand after every correction, in the order in which they were said.

    Corrections of one event add up ("no, 185", then "that was at nine"). Taking back a correction lifts it,
    taking that back restores it; a correction of a correction corrects what the first one stood for.
    """
    listed = {e.number: e for e in sorted(events, key=lambda e: e.number)}
    lifted = _lifted(listed)
    standing: dict[int, Event | None] = {n: e for n, e in listed.items() if not isinstance(e.what, Corrected)}
    for event in listed.values():
        if isinstance(event.what, Corrected) and event.number not in lifted and not _takes_back(event.what, listed):
            root = _root(event.what, listed)
            if root in standing:
                standing[root] = _instead(standing[root] or listed[root], event, event.what)
    return tuple(e for e in standing.values() if e is not None)


def amendments(events: Iterable[Event]) -> dict[int, Event]:
    """The last correction that holds of each event that was corrected or taken back, by the number of that event."""
    listed = {e.number: e for e in sorted(events, key=lambda e: e.number)}
    lifted = _lifted(listed)
    return {
        _root(event.what, listed): event
        for event in listed.values()
        if isinstance(event.what, Corrected) and event.number not in lifted and not _takes_back(event.what, listed)
    }


def _lifted(listed: dict[int, Event]) -> set[int]:
    """The corrections that were taken back, read from the last to the first, so that taking back is itself lifted."""
    lifted: set[int] = set()
    for event in reversed(listed.values()):
        if isinstance(event.what, Corrected) and event.number not in lifted and _takes_back(event.what, listed):
            lifted.add(event.what.target)
    return lifted


def _takes_back(what: Corrected, listed: Mapping[int, Event]) -> bool:
    """Whether this only takes back another correction."""
    target = listed.get(what.target)
    return what.instead is None and what.at is None and target is not None and isinstance(target.what, Corrected)


def _root(what: Corrected, listed: Mapping[int, Event]) -> int:
    """The number of the event that a correction is about in the end."""
    target = listed.get(what.target)
    while target is not None and isinstance(target.what, Corrected) and target.what.target < target.number:
        what, target = target.what, listed.get(target.what.target)
    return what.target


def _instead(original: Event, correction: Event, what: Corrected) -> Event | None:
    if what.instead is None and what.at is None:
        return None
    return but(original, what=what.instead or original.what, at=what.at or original.at, by=correction.by)
