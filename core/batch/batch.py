"""A batch is the fold of what happened: the same events give the same batch, whenever and wherever."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum
from typing import Any

from core.batch.events import (
    Assumed,
    Changed,
    Done,
    Event,
    Finished,
    Handed,
    Incident,
    Missed,
    Paused,
    Probe,
    Rated,
    Read,
    Resumed,
    Skipped,
    Sliced,
    Snoozed,
    Started,
    Tasted,
    Took,
    Weighed,
    What,
)
from core.batch.standing import effective
from core.but import but
from core.errors import Gone
from core.plan.recipe import product
from core.plan.setup import Setup
from core.units import Celsius, Hours


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
    took: Hours | None = None  # on the fire, as the cook says
    rated: tuple[datetime, Rated] | None = None
    finished: str | None = None
    paused: bool = False
    paused_until: datetime | None = None
    paused_since: datetime | None = None
    paused_by: str = ""  # who is away; "" where more than one is
    put_in: Mapping[str, float | None] = field(default_factory=dict)
    pit_start: Celsius | None = None
    pit_sets: tuple[tuple[datetime, Celsius], ...] = ()
    settled: datetime | None = None
    handed: tuple[Handed, ...] = ()
    dosed: Setup | None = None  # the setup by which the cure was weighed out: what is in stays in

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

    @property
    def off_at(self) -> datetime | None:
        """When it came off the fire: as said, or the first later step that was done."""
        return min((self.done[k] for k in ("off", "rest", "chill", "slice") if k in self.done), default=None)

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
        if isinstance(event.what, Started) or _says_when(event.what):
            batch = but(batch, settled=event.at)
    return but(batch, readings=tuple(sorted(batch.readings, key=lambda r: (r.at, r.number))))


def _says_when(what: What) -> bool:
    """Whether it says when the meal is: that is judged by the hour at which it was said, whatever is told since."""
    return isinstance(what, Changed | Assumed) and "deadline" in what.changes


def _setup(said: dict[str, Any]) -> Setup:
    stated = {k: v for k, v in said.items() if k not in ("product", "assumed")}
    return product(said["product"]).setup(stated, frozenset(said.get("assumed", ())))


def _after(batch: Batch, event: Event) -> Batch:
    match event.what:
        case Changed(changes, anew):
            return _changed(batch, changes, anew, event.at)
        case Done(step, detail):
            details = {**batch.details, step: detail} if detail else batch.details
            done = {**batch.done, step: event.at}
            return _as_done(but(batch, done=done, details=details, skipped=batch.skipped - {step}), step, detail)
        case Skipped(step):
            return but(batch, skipped=batch.skipped | {step})
        case Missed(steps):
            return but(batch, skipped=batch.skipped | set(steps), missed=batch.missed | set(steps))
        case Snoozed(step, until):
            return but(batch, snoozed={**batch.snoozed, step: until})
        case Read(probe, celsius):
            return but(batch, readings=(*batch.readings, Reading(event.at, probe, celsius, event.number)))
        case _:
            return _ended(batch, event)


def _away(batch: Batch, event: Event) -> str:
    """Who rests by a pause: who said so, or everybody where somebody else does so already."""
    lasts = batch.paused and (batch.paused_until is None or batch.paused_until > event.at)
    return event.by if not lasts or batch.paused_by == event.by else ""


def _ended(batch: Batch, event: Event) -> Batch:
    match event.what:
        case Assumed(changes):
            return _with(batch, changes, Setup.assume)
        case Incident():
            return but(batch, incidents=(*batch.incidents, (event.at, event.what)))
        case Paused(until, since):
            return but(batch, paused=True, paused_until=until, paused_since=since, paused_by=_away(batch, event))
        case Resumed():
            return but(batch, paused=False, paused_until=None, paused_since=None, paused_by="")
        case Handed():
            return but(batch, handed=(*batch.handed, event.what))
        case Weighed(mass):
            return but(batch, weighed_after=mass)
        case Sliced():
            return but(batch, sliced=event.what)
        case Tasted(salt):
            return but(batch, tasted=salt)
        case Took(hours):
            return but(batch, took=hours)
        case Rated():
            return but(batch, rated=(event.at, event.what))
        case Finished(how):
            return but(batch, finished=how)
        case _:
            return batch


def _changed(batch: Batch, changes: dict[str, Any], anew: dict[str, Any] | None, at: datetime) -> Batch:
    if "pit_c" in changes and "meat_on" in batch.done:
        batch = but(batch, pit_sets=(*batch.pit_sets, (at, changes["pit_c"])))
    if anew is not None:
        batch = but(batch, setup=batch.setup.assume(anew | {k: changes[k] for k in ("product", "cut") if k in changes}))
    found = _with(batch, changes, Setup.change)
    return _dosed(found, at) if changes.keys() & {"put_in_cure", "put_in_water"} else found


def _with(batch: Batch, changes: Mapping[str, Any], put: Callable[[Setup, dict[str, Any]], Setup]) -> Batch:
    """The batch with what is changed of its setup, said or assumed, and with what is told of the grams that are in."""
    put_in = {k: v for k, v in changes.items() if k.startswith("put_in_")}
    rest = {k: v for k, v in changes.items() if k not in put_in}
    if "put_in_cure" in put_in:  # weighed grams end what a spoon left open
        put_in = {"put_in_cure_most": None, **put_in}
    setup = product(batch.setup.product).settle(put(batch.setup, rest)) if rest else batch.setup
    return but(batch, setup=setup, put_in={**batch.put_in, **put_in})


def _dosed(batch: Batch, at: datetime) -> Batch:
    """What was weighed is in: nobody is called to weigh it again, and the ppm are those of what went in."""
    if "brine" in batch.done or "into_cure" in batch.done:
        return batch
    return _weighed_out(but(batch, done={**batch.done, "brine": at}))


def _weighed_out(batch: Batch) -> Batch:
    """What is weighed is weighed by the law of where its owner is, though an earlier one was taken back elsewhere."""
    here = but(batch.setup, law="")
    return but(batch, setup=here, dosed=here)


def _as_done(batch: Batch, step: str, detail: str) -> Batch:
    """Dose, fire, wrap and chill go on from what was done, not from what was planned."""
    if step in ("brine", "into_cure") and batch.dosed is None:
        return _weighed_out(batch)
    if step == "meat_on":
        return but(batch, pit_start=batch.setup.pit_c)
    if step == "chill" and detail:  # «in the fridge» and no more: as it came off, wrapped or bare
        way = detail if detail != "fridge" else "foil" if batch.setup.wrap != "none" else "rack"
        return but(batch, setup=but(batch.setup, chill=way))
    if step != "wrap":
        return batch
    kind = detail if detail in ("foil", "paper") else batch.setup.wrap
    return but(batch, setup=but(batch.setup, wrap=kind if kind != "none" else "foil"))
