"""The record of a batch: what was done when by whom, the dose and its sum, the temperatures, the ledger, the verdicts.

It is a log for the cook. Nothing in it is kept apart: all of it follows from the events, whenever it is asked for.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Final, Literal

from core.batch.assess import Assessment, assess
from core.batch.batch import fold
from core.batch.events import Corrected, Done, Event, Finished, Handed, Started, What
from core.batch.standing import amendments, effective
from core.cure.dose import Dose
from core.person import Person
from core.safety.ledger import Verdict
from core.units import Fraction, Kilograms

MILESTONES: Final = ("out", "off", "chill", "slice")  # after these the verdict is worth keeping
Base = Literal["meat_and_pickle", "green_meat", "pump"]


@dataclass(frozen=True)
class Member:
    """Somebody who did or said something of the batch. `name` is "" where none is kept; the number tells them apart."""

    number: int
    name: str


@dataclass(frozen=True)
class Entry:
    """One thing that was said of the batch. Times aware UTC.

    `said` is what was said first, `what` what stands of it now: None once it was taken back. `amended` is when that was
    last changed, and `amended_by` the number of the member who did; None where nobody did.
    """

    number: int
    at: datetime
    said_at: datetime
    by: int
    said: What
    what: What | None
    amended: datetime | None = None
    amended_by: int | None = None


@dataclass(frozen=True)
class DoseSum:
    """The arithmetic of a dose: sodium nitrite over what it is counted in. [kg]

    `nitrite_kg` over `base_kg` is the ingoing figure. Of an injected piece the base is the meat that this much pickle
    would pump: `pickle_kg` over `pumped`, the share of its weight that the meat takes up.
    """

    nitrite_kg: Kilograms
    base: Base
    base_kg: Kilograms
    meat_kg: Kilograms
    pickle_kg: Kilograms
    pumped: Fraction | None


@dataclass(frozen=True)
class VerdictThen:
    """What the ledger said when a step was done: by what was known of the time before."""

    step: str
    at: datetime
    verdict: Verdict


@dataclass(frozen=True)
class BatchRecord:
    """The record. `as_of` is the time for which it is judged: now, or the end of a batch that is over.

    `a` is the batch as it stood then, `entries` is in the order of when it happened, `verdicts` too.
    """

    a: Assessment
    as_of: datetime
    made_at: datetime
    members: tuple[Member, ...]
    entries: tuple[Entry, ...]
    dose: DoseSum | None
    verdicts: tuple[VerdictThen, ...]

    @property
    def owner(self) -> Member | None:
        """Whose clock and units the record has: who began the batch."""
        begun = next((e for e in self.entries if isinstance(e.said, Started)), None)
        return None if begun is None else self.member(begun.by)

    def member(self, number: int) -> Member:
        """The member of that number."""
        return self.members[number - 1]


def batch_record(
    batch_id: str, events: Sequence[Event], known: tuple[Person, Mapping[str, str]], now: datetime
) -> BatchRecord:
    """The record of a batch.

    Parameters
    ----------
    batch_id
        Its id.
    events
        Its whole log.
    known
        Whose batch it is, and the names of those who spoke, by their ids; who is not in it has none.
    now
        When it is made. aware

    Raises
    ------
    Gone
        The log begins no batch.
    """
    person, names = known
    standing = effective(events)
    as_of = min((e.at for e in standing if isinstance(e.what, Finished)), default=now)
    a = assess(fold(batch_id, events), person, as_of)
    ids = tuple(dict.fromkeys(e.by for e in events))
    members = tuple(Member(n, names.get(one, "")) for n, one in enumerate(ids, 1))
    numbers = {one: n for n, one in enumerate(ids, 1)}
    return BatchRecord(
        a=a,
        as_of=as_of,
        made_at=now,
        members=members,
        entries=_entries([_nameable(e, names) for e in events], numbers),
        dose=None if a.dose is None or a.dose.limit is None else dose_sum(a.dose),
        verdicts=_verdicts(batch_id, standing, person, as_of),
    )


def _nameable(event: Event, names: Mapping[str, str]) -> Event:
    """What was handed over, with the name that is kept of who has it, and with no number and no chat of theirs."""
    if not isinstance(event.what, Handed):
        return event
    name = names.get(event.what.person, "") if event.what.person else event.what.name
    return replace(event, what=replace(event.what, person="", chat="", name=name))


def dose_sum(dose: Dose) -> DoseSum:
    """The sum behind the ingoing figure of a dose, by the formula of its method."""
    meat, pickle, nitrite = dose.counted_meat_kg, dose.pickle_kg, dose.nitrite_kg
    if dose.method not in ("brine", "inject"):
        return DoseSum(nitrite, "green_meat", meat, meat, 0.0, None)
    at_rest = DoseSum(nitrite, "meat_and_pickle", meat + pickle, meat, pickle, None)
    if dose.method == "brine":
        return at_rest
    pumped = dose.pumped_kg / meat
    needled = DoseSum(nitrite, "pump", pickle / pumped, meat, pickle, pumped)
    # with a cover brine the stricter of the two is the figure, so the smaller base
    return min(needled, at_rest, key=lambda one: one.base_kg) if dose.covered else needled


def _entries(events: Sequence[Event], numbers: Mapping[str, int]) -> tuple[Entry, ...]:
    """Everything that was said, corrections folded into what they correct, in the order in which it happened."""
    standing = {e.number: e for e in effective(events)}
    amended = amendments(events)
    found = []
    for event in (e for e in events if not isinstance(e.what, Corrected)):
        stands, by = standing.get(event.number), amended.get(event.number)
        plain = Entry(event.number, event.at, event.said_at, numbers[event.by], event.what, None)
        entry = plain if stands is None else replace(plain, at=stands.at, what=stands.what)
        found.append(entry if by is None else replace(entry, amended=by.said_at, amended_by=numbers[by.by]))
    return tuple(sorted(found, key=lambda e: (e.at, e.number)))


def _verdicts(batch_id: str, standing: Sequence[Event], person: Person, as_of: datetime) -> tuple[VerdictThen, ...]:
    """The verdict when each milestone was reached, by what had happened up to then."""
    done = {e.what.step: e.at for e in standing if isinstance(e.what, Done) and e.what.step in MILESTONES}
    found = []
    for step, at in sorted(done.items(), key=lambda one: one[1]):
        if at > as_of:
            continue
        until = [e for e in standing if e.at <= at]
        found.append(VerdictThen(step, at, assess(fold(batch_id, until), person, at).ledger.verdict))
    return tuple(found)
