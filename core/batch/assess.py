"""A batch as it stands: the dose, the days, the hours, the cooling, the verdict and the plan, from one pure call.

`assess` is the *decide* of the house. It never refuses to look: what a rule or the calendar refuses is carried in
`refusal`, so that the cook can be told what is possible instead.
"""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from math import floor

from core.batch import cold, cured, ledger, material
from core.batch.asked import next_reading
from core.batch.batch import Batch
from core.batch.events import Probe
from core.batch.frozen import frozen_at, frozen_days
from core.batch.weighed import dose_in, is_told
from core.cure.dose import Dose
from core.cure.penetration import After, Penetration
from core.errors import SaltbellError, UnknownCure
from core.heat.band import Band as HeatBand
from core.heat.fire import Fuel
from core.heat.ready import Estimate
from core.meat.piece import Piece
from core.person import Person
from core.plan.case import Case
from core.plan.hours import wall_of
from core.plan.progress import Progress
from core.plan.recipe import product
from core.plan.schedule import schedule
from core.plan.setup import Setup
from core.plan.steps import Band, Durations, Plan, TimeBand
from core.safety.fridge import MENDED_F
from core.safety.history import printed_f
from core.safety.storage import keeping
from core.units import Celsius, Days, Hours

WRAP_AT_C: Celsius = 71.0  # 160 °F, colour set: common practice
QUARTERS = 96.0  # of an hour in a day


@dataclass(frozen=True)
class Assessment:
    """A batch as it stands at `now`, for its owner.

    `dose` is None while the curing salt is unknown or a limit refuses it; `cure` are the days until the middle is
    pink; `cook` is the estimate of the hours, before the fire and during it; `plan` is None where `refusal` says why.
    """

    batch: Batch
    person: Person
    now: datetime
    piece: Piece
    dose: Dose | None
    cure: Penetration | None
    cook: Estimate | None
    cooling: cold.Cooling
    plan: Plan | None
    ledger: ledger.Ledger
    refusal: SaltbellError | None = None

    @property
    def chilled(self) -> bool:
        """Whether the meat is chilled before it is sliced."""
        return product(self.batch.setup.product).purpose(self.batch.setup.purpose).chilled

    @property
    def floor_c(self) -> Celsius:
        """The core below which it is never called done. [°C]"""
        return product(self.batch.setup.product).floor_of(self.batch.setup)

    @property
    def below_floor(self) -> bool:
        """Whether no core reading shows the safety floor yet."""
        floor = printed_f(self.floor_c)
        return not any(printed_f(r.celsius) >= floor for r in self.batch.of_probe(Probe.CORE))

    @property
    def cure_days(self) -> Band | None:
        """Days until the middle is pink. [d]"""
        return None if self.cure is None else Band(self.cure.days_p10, self.cure.days_p50, self.cure.days_p90)

    @property
    def cure_shift_days(self) -> Days:
        """How many days more than by the house defaults the person's own slices ask for. [d]"""
        if self.cure is None:
            return 0.0
        plain = replace(self.person, learned=material.fresh(self.person.learned))
        return self.cure.days_p90 - material.days_of(self.batch.setup, plain, self.dose).days_p90

    @property
    def on_at(self) -> datetime | None:
        """When the meat went on."""
        return self.batch.done.get("meat_on")

    @property
    def ready(self) -> TimeBand | None:
        """When a cook under way is ready."""
        if self.cook is None or self.on_at is None or self.batch.off_at is not None:
            return None
        return _times(self.on_at, self.cook.ready, self.hold_hours)

    @property
    def hold_hours(self) -> Hours:
        """How long it stays on once its core is at the target. [h]"""
        return product(self.batch.setup.product).hours.hold_at_target

    @property
    def fuel(self) -> Fuel | None:
        """Fuel for the hours of the slow end of the band."""
        return material.fuel_of(self.batch.setup, self.cook.ready.p90) if self.cook else None

    def after_cure(self) -> After | None:
        """What the planned or the past days leave in the middle; None of a dose that nobody told."""
        days = _full_quarters(self.plan.cure_days) if self.plan is not None and is_told(self.batch) else 0.0
        return None if self.cure is None or days <= 0.0 else self.cure.after(days)


@dataclass(frozen=True)
class Change:
    """A batch before and after what was said: the difference is what the cook is told."""

    before: Assessment | None
    after: Assessment


def assess(batch: Batch, person: Person, now: datetime) -> Assessment:
    """Everything that is known of a batch at a time. Pure: the same batch and time give the same answer."""
    setup = batch.setup
    person = replace(person, zone=setup.zone) if setup.zone else person
    piece = material.piece_of(setup)
    weighed, refusal = _weighed(batch, person)
    cure, refusal = _days(setup, person, (weighed, refusal))
    days, refusal = material.planned_days(setup, (cure, weighed), refusal)
    cook = material.estimate_of(batch, person, now)
    cooling = cold.cooling(batch, now)
    plan = None
    if refusal is None and days is not None:
        plan, refusal = _plan(batch, person, now, _Worked(weighed, cure, days, cook, cooling))
    known = ledger.Known(piece, weighed, cure, cook, _cured_days(batch, plan))
    found = ledger.judge(batch, known, now)
    return Assessment(batch, person, now, piece, weighed, cure, cook, cooling, plan, found, refusal)


def _weighed(batch: Batch, person: Person) -> tuple[Dose | None, SaltbellError | None]:
    if batch.setup.cure_nitrite_fraction is None and batch.setup.nitrite_target > 0.0:
        return None, UnknownCure("")
    try:
        return dose_in(batch, person.jurisdiction), None
    except SaltbellError as refusal:
        return None, refusal


def _days(
    setup: Setup, person: Person, known: tuple[Dose | None, SaltbellError | None]
) -> tuple[Penetration | None, SaltbellError | None]:
    weighed, refusal = known
    if setup.nitrite_target == 0.0 or (refusal is not None and not isinstance(refusal, UnknownCure)):
        return None, refusal
    try:
        return material.days_of(setup, person, weighed), refusal
    except SaltbellError as found:
        return None, refusal or found


@dataclass(frozen=True)
class _Worked:
    """What is worked out of a batch before its plan is: the dose, the cure and its days, the cook, the chill."""

    dose: Dose | None
    cure: Penetration | None
    days: Band
    cook: Estimate
    cooling: cold.Cooling


def _plan(batch: Batch, person: Person, now: datetime, of: _Worked) -> tuple[Plan | None, SaltbellError | None]:
    seen = ledger.Known(material.piece_of(batch.setup), of.dose, of.cure, of.cook, _cured_days(batch, None))
    case = Case(
        batch.setup,
        product(batch.setup.product),
        _durations(batch.setup, of.days, of.cook, _keeps(batch, now, of)),
        _progress(batch, of.cook, of.cooling, next_reading(batch, seen, now)),
        wall_of(person),
        now,
        person.flip_hours,
    )
    try:
        return schedule(case), None
    except SaltbellError as found:
        return None, found


def _keeps(batch: Batch, now: datetime, of: _Worked) -> int:
    """How many days it keeps: by what the middle holds after the days that it was in the cure, or that are planned.

    Fish that was not held as smoked fish is, or is not planned to be, keeps as leftovers do.
    """
    shortest = max(of.days.p90, batch.setup.cure_days or 0.0)
    past = _cured_days(batch, None)
    inside = shortest if past is None or past <= 0.0 else past
    centre = None if of.cure is None else cured.come_in(of.cure, inside)
    told = of.dose if is_told(batch) else None
    line = cured.storage_of(batch.setup, told, None if ledger.uncured(batch, of.dose) else centre)
    line = line if ledger.kept_by_its_line(batch, of.cook, now) else cured.LEFTOVERS
    return int(keeping(line).days + frozen_days(batch))


def _durations(setup: Setup, days: Band, cook: Estimate, keep_days: int) -> Durations:
    hold = product(setup.product).hours.hold_at_target
    rest, chill = material.rest_of(setup).to(60.0), material.chill_of(setup, 60.0).to(4.4)
    return Durations(
        cure=days,
        cook=Band(cook.ready.p10 + hold, cook.ready.p50 + hold, cook.ready.p90 + hold),
        rest=rest.p50 if rest else 1.0,
        chill=chill.p50 if chill else 24.0,
        lighting=material.lighting_of(setup),
        thaw=setup.mass / 2.0 * 24.0,  # 24 h for 4 to 5 lb in the fridge, USDA
        keep_days=keep_days,
    )


def _progress(batch: Batch, cook: Estimate, cooling: cold.Cooling, reading: datetime | None) -> Progress:
    on, off = batch.done.get("meat_on"), batch.off_at
    cooking = on is not None and off is None
    core = [r for r in batch.of_probe(Probe.CORE) if on is not None and r.at >= on]
    return Progress(
        started=batch.started,
        settled=batch.settled,
        done=batch.done,
        skipped=batch.skipped | ({"use_by"} if frozen_at(batch) else set()),
        snoozed=batch.snoozed,
        ready=_times(on, cook.ready, product(batch.setup.product).hours.hold_at_target)
        if on is not None and cooking
        else None,
        wrap_at=_wrap_at(on, cook) if on is not None and cooking else None,
        next_reading=reading,
        readings=len(core),
        at_60c=cooling.at_60c,
        from_54c=cooling.from_54c,
        cold_at=cooling.cold_at,
        cooled=cooling.corners,
        fire_seen=_fire_seen(batch),
        warm_at=_warm_at(batch),
    )


def _fire_seen(batch: Batch) -> bool:
    """Whether core or pit were read since the meat came out of the cure."""
    out = batch.done.get("out")
    return out is not None and any(r.at >= out for p in (Probe.CORE, Probe.PIT) for r in batch.of_probe(p))


def _warm_at(batch: Batch) -> datetime | None:
    """When the fridge of raw meat was read above what part of a day mends, where that was its last reading."""
    last, raw = batch.last(Probe.FRIDGE), "into_cure" in batch.done and "meat_on" not in batch.done
    return last.at if raw and last is not None and printed_f(last.celsius) > MENDED_F else None


def _times(on: datetime, hours: HeatBand, hold: Hours) -> TimeBand:
    """When it comes off: at the target, and held there for as long as the product asks."""
    return TimeBand(*(on + timedelta(hours=h + hold) for h in (hours.p10, hours.p50, hours.p90)))


def _wrap_at(on: datetime, cook: Estimate) -> datetime | None:
    """When the middle of the band is expected at the core where it is wrapped."""
    curve = cook.curve
    hour = next((h for h, c in zip(curve.hours, curve.p50, strict=True) if c >= WRAP_AT_C), None)
    return None if hour is None else on + timedelta(hours=hour)


def _cured_days(batch: Batch, plan: Plan | None) -> Days | None:
    """Days in the cure: those that were, or those that are planned."""
    into = batch.done.get("into_cure")
    out = batch.done.get("out")
    if into is not None and out is not None:
        return (out - into) / timedelta(days=1)
    return _full_quarters(plan.cure_days) if plan is not None else None


def _full_quarters(days: Days) -> Days:
    """Days without the last part of a quarter of an hour.

    What is planned from now on is a little shorter each second. With fewer days less has come in, so it counts as no
    more cured than it is; and from one message to the next the solver need not be asked again.
    """
    return floor(days * QUARTERS) / QUARTERS
