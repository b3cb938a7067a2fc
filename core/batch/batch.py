"""A batch is the fold of what happened: the same events give the same batch, whenever and wherever."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime
from enum import StrEnum
from typing import Any

from core.batch.events import (
    Changed,
    Corrected,
    Done,
    Event,
    Finished,
    Incident,
    Missed,
    Paused,
    Probe,
    Read,
    Resumed,
    Skipped,
    Sliced,
    Snoozed,
    Started,
    Tasted,
    Weighed,
)
from core.errors import Gone
from core.plan.recipe import product
from core.plan.setup import Setup
from core.units import Celsius


class Phase(StrEnum):
    """Where in its week a batch is; the same number means another thing in another phase."""

    WAITING = "waiting"
    CURING = "curing"
    DRYING = "drying"
    COOKING = "cooking"
    RESTING = "resting"
    CHILLING = "chilling"
    STORED = "stored"
    OVER = "over"


@dataclass(frozen=True)
class Reading:
    """A temperature that was read: where, how warm [°C], when (aware UTC), and the number of its event."""

    at: datetime
    probe: Probe
    celsius: Celsius
    number: int


@dataclass(frozen=True)
class Batch:
    """What is known of one batch."""

    id: str
    name: str
    setup: Setup
    started: datetime
    done: Mapping[str, datetime] = field(default_factory=dict)
    details: Mapping[str, str] = field(default_factory=dict)
    skipped: frozenset[str] = frozenset()
    missed: frozenset[str] = frozenset()
    snoozed: Mapping[str, datetime] = field(default_factory=dict)
    readings: tuple[Reading, ...] = ()
    incidents: tuple[tuple[datetime, Incident], ...] = ()
    weighed_after: float | None = None
    sliced: Sliced | None = None
    tasted: int | None = None
    finished: str | None = None
    paused: bool = False
    paused_until: datetime | None = None
    put_in: Mapping[str, float] = field(default_factory=dict)

    @property
    def phase(self) -> Phase:
        """Where in its week the batch is."""
        if self.finished:
            return Phase.OVER
        marks = (
            ("slice", Phase.STORED),
            ("chill", Phase.CHILLING),
            ("off", Phase.RESTING),
            ("meat_on", Phase.COOKING),
            ("out", Phase.DRYING),
            ("into_cure", Phase.CURING),
        )
        return next((phase for key, phase in marks if key in self.done), Phase.WAITING)

    def of_probe(self, probe: Probe) -> tuple[Reading, ...]:
        """The readings of one probe in the order in which they were taken."""
        return tuple(r for r in self.readings if r.probe is probe)

    def last(self, probe: Probe) -> Reading | None:
        """The latest reading of one probe."""
        found = self.of_probe(probe)
        return found[-1] if found else None


def fold(batch_id: str, events: Iterable[Event]) -> Batch:
    """The batch that a list of events makes; raises Gone where it was never started.

    The order of arrival does not matter to readings: they are sorted by when they were taken.
    """
    standing = effective(events)
    first = next((e for e in standing if isinstance(e.what, Started)), None)
    if first is None or not isinstance(first.what, Started):
        raise Gone(f"batch {batch_id}")
    batch = Batch(batch_id, first.what.name, _setup(first.what.setup), first.at)
    for event in standing:
        batch = _after(batch, event)
    return replace(batch, readings=tuple(sorted(batch.readings, key=lambda r: (r.at, r.number))))


def effective(events: Iterable[Event]) -> tuple[Event, ...]:
    """The events as they stand after every correction, in the order in which they were said.

    Read from the last to the first, so that a correction of a correction lifts the first one.
    """
    listed = sorted(events, key=lambda e: e.number)
    lifted: dict[int, Event | None] = {}
    for event in reversed(listed):
        if event.number in lifted or not isinstance(event.what, Corrected):
            continue
        lifted.setdefault(event.what.target, _instead(event, event.what, listed))
    standing = [lifted.get(e.number, e) for e in listed if not isinstance(e.what, Corrected)]
    return tuple(e for e in standing if e is not None)


def _instead(correction: Event, what: Corrected, listed: list[Event]) -> Event | None:
    original = next((e for e in listed if e.number == what.target), None)
    if original is None or (what.instead is None and what.at is None):
        return None
    return replace(original, what=what.instead or original.what, at=what.at or original.at, by=correction.by)


def _setup(said: dict[str, Any]) -> Setup:
    return product(said["product"]).setup({k: v for k, v in said.items() if k != "product"})


def _after(batch: Batch, event: Event) -> Batch:
    match event.what:
        case Changed(changes):
            return _changed(batch, changes)
        case Done(step, detail):
            details = {**batch.details, step: detail} if detail else batch.details
            done = {**batch.done, step: event.at}
            return _wrapped(replace(batch, done=done, details=details, skipped=batch.skipped - {step}), step, detail)
        case Skipped(step):
            return replace(batch, skipped=batch.skipped | {step})
        case Missed(steps):
            return replace(batch, skipped=batch.skipped | set(steps), missed=batch.missed | set(steps))
        case Snoozed(step, until):
            return replace(batch, snoozed={**batch.snoozed, step: until})
        case Read(probe, celsius):
            return replace(batch, readings=(*batch.readings, Reading(event.at, probe, celsius, event.number)))
        case _:
            return _ended(batch, event)


def _ended(batch: Batch, event: Event) -> Batch:
    match event.what:
        case Incident():
            return replace(batch, incidents=(*batch.incidents, (event.at, event.what)))
        case Paused(until):
            return replace(batch, paused=True, paused_until=until)
        case Resumed():
            return replace(batch, paused=False, paused_until=None)
        case Weighed(mass):
            return replace(batch, weighed_after=mass)
        case Sliced():
            return replace(batch, sliced=event.what)
        case Tasted(salt):
            return replace(batch, tasted=salt)
        case Finished(how):
            return replace(batch, finished=how)
        case _:
            return batch


def _changed(batch: Batch, changes: dict[str, Any]) -> Batch:
    put_in = {k: v for k, v in changes.items() if k.startswith("put_in_")}
    setup_changes = {k: v for k, v in changes.items() if k not in put_in}
    setup = product(batch.setup.product).settle(batch.setup.change(setup_changes)) if setup_changes else batch.setup
    return replace(batch, setup=setup, put_in={**batch.put_in, **put_in})


def _wrapped(batch: Batch, step: str, detail: str) -> Batch:
    """Wrapping says how it was wrapped: the plan goes on from what was done, not from what was planned."""
    if step != "wrap":
        return batch
    kind = detail if detail in ("foil", "paper") else batch.setup.wrap
    return replace(batch, setup=replace(batch.setup, wrap=kind if kind != "none" else "foil"))
