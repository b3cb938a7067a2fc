"""The safety record of a batch, written from its log, and what the ledger finds in it."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from core.batch.batch import Batch
from core.batch.cured import LEFTOVERS, come_in, storage_of
from core.batch.events import Probe
from core.batch.frozen import frozen_at, frozen_days
from core.batch.material import piece_of
from core.batch.weighed import is_told, most_in
from core.cure.dose import Dose
from core.cure.penetration import Penetration
from core.errors import Missing
from core.heat.ready import Estimate
from core.meat.cuts import cut
from core.meat.piece import Piece
from core.plan.recipe import product
from core.safety.cooling import CoolingVerdict, judge_cooling
from core.safety.done import held_as_smoked
from core.safety.findings import Outcome, Rule
from core.safety.history import hours_between
from core.safety.incidents import lost_cure
from core.safety.ledger import Verdict, verdict
from core.safety.left_out import CEILING
from core.safety.lethality import Lethality, lethality
from core.safety.record import CURED_FROM, Fact, Incident, Record
from core.units import Days, MilligramsPerKilogram

History = tuple[tuple[datetime, float], ...]
LOST = frozenset({"partly_cured", "no_fresh_dose"})  # leaks after which it counts as uncured


@dataclass(frozen=True)
class Known:
    """What the solvers know of a batch: the piece, the dose, the cure with its days, the cook."""

    piece: Piece
    dose: Dose | None
    cure: Penetration | None
    cook: Estimate
    cured_days: Days | None


@dataclass(frozen=True)
class Ledger:
    """The verdict with its findings, and the two sums behind it where there are readings for them."""

    verdict: Verdict
    lethality: Lethality | None
    cooling: CoolingVerdict | None
    record: Record

    @property
    def thrown(self) -> bool:
        """Whether it is to be thrown away for what happened to it; a use-by day that is over has its own reminder."""
        return any(f.means is Outcome.THROW_AWAY and f.rule is not Rule.USE_BY for f in self.verdict.because)


def judge(batch: Batch, known: Known, now: datetime) -> Ledger:
    """What the ledger finds at a time."""
    record = record_of(batch, known, now)
    return Ledger(verdict(record), _kill(record), _chill(batch, record), record)


def record_of(batch: Batch, known: Known, now: datetime) -> Record:
    """The record of a batch as the ledger takes it."""
    setup, done = batch.setup, batch.done
    if not is_told(batch):  # what was planned is no evidence of what went in
        known = replace(known, dose=None)
    made = product(setup.product)
    kind = known.piece.cut
    centre = _centre(batch, known)
    cure = cure_record(batch, known.dose, now)
    return replace(
        cure,
        product_class=LEFTOVERS if uncured(batch, known.dose) else storage_of(setup, known.dose, centre),
        intact=known.piece.intact,
        injected=setup.method == "inject",
        fat_fraction=kind.composition.fat,
        cured_centre_mg_kg=centre,
        without_cure=_forgotten(batch) or "no_fresh_dose" in lost_cure(cure) or _too_weak(known.dose),
        at_risk_eaters=setup.at_risk_eaters,
        doneness_floor_c=made.cooked_from_c or made.safety_floor_c,
        core=_core(batch),
        modelled_low=_modelled(batch, known, now),
        pit=_history(batch, Probe.PIT),
        pit_meant=_meant(batch),
        fridge=_history(batch, Probe.FRIDGE),
        brine=_history(batch, Probe.BRINE),
        out_at=done.get("out"),
        meat_on_at=done.get("meat_on"),
        off_at=batch.off_at,
        chill_started_at=done.get("chill"),
        storage_started_at=batch.off_at,
        frozen_at=frozen_at(batch),
        frozen_days=frozen_days(batch),
        vouched=frozenset({"fridge_cold"} if setup.fridge_vouched else ()),
        vacuum=setup.vacuum,
    )


def cure_record(batch: Batch, dose: Dose | None, now: datetime) -> Record:
    """The record of what went in, and of what went wrong: enough to judge what became of the cure."""
    limit = dose.limit if dose else None
    most = most_in(batch, dose) if dose else None
    return Record(
        species=cut(batch.setup.cut).species.value,
        now=now,
        ingoing_mg_kg=_counted(most) if most else None,
        nitrite_limit_mg_kg=limit.max_mg_kg if limit else CEILING,
        put_in_cure_at=batch.done.get("into_cure"),
        wet=batch.setup.method == "brine",
        incidents=tuple(_weighed(i, most) for i in incidents_of(batch)),
    )


def _counted(dose: Dose) -> MilligramsPerKilogram:
    """What the limit of the place counts of a dose: nitrite, in Canada with the nitrate. [mg/kg]"""
    ingoing = dose.ingoing()
    return ingoing.nitrite if dose.limit is None else ingoing.counted(dose.limit)


def kept_by_its_line(batch: Batch, cook: Estimate, now: datetime) -> bool:
    """Whether it keeps by the line of its product: fish only where it was held as smoked fish is, or will be."""
    made = product(batch.setup.product)
    if not made.cooked_from_c:
        return True
    if batch.off_at is None:
        return batch.setup.target_c >= made.safety_floor_c
    return held_as_smoked(record_of(batch, Known(piece_of(batch.setup), None, None, cook, None), now))


def incidents_of(batch: Batch) -> tuple[Incident, ...]:
    """What went wrong, each with the facts that were told later ("more") put in."""
    found: list[Incident] = []
    for at, told in batch.incidents:
        same = [i for i, known in enumerate(found) if known.what == told.what]
        if told.facts.get("more") and same:
            known = found[same[-1]]
            facts = {**known.facts, **told.facts, **_age(told.facts, known.at, at)}
            found[same[-1]] = Incident(known.what, known.at, facts)
        else:
            found.append(Incident(told.what, at, told.facts))
    return tuple(found)


def _age(told: Mapping[str, Fact], since: datetime, at: datetime) -> dict[str, Fact]:
    """How long after the incident its core was read. [h]"""
    return {"core_after_h": hours_between(since, at)} if told.get("core_c") is not None else {}


def _weighed(incident: Incident, dose: Dose | None) -> Incident:
    """The curing salt that went in as nitrite by the formula of the method, the liquid lost as a share of it."""
    cure, lost = incident.facts.get("cure_kg"), incident.facts.get("lost_kg")
    facts: dict[str, Fact] = {}
    if "cure_kg" in incident.facts:
        facts["mg_kg"] = _counted(replace(dose, cure_kg=float(cure))) if dose and cure is not None else None
    if "lost_kg" in incident.facts:
        facts["lost_fraction"] = float(lost) / dose.water_kg if dose and dose.water_kg and lost is not None else None
    return replace(incident, facts={**facts, **incident.facts}) if facts else incident


def _history(batch: Batch, probe: Probe) -> History:
    return tuple((r.at, r.celsius) for r in batch.of_probe(probe))


def _meant(batch: Batch) -> History:
    """What the pit was to hold when the meat went on, and each time that it was set anew."""
    return ((batch.done.get("meat_on", batch.started), batch.pit_start or batch.setup.pit_c), *batch.pit_sets)


def _core(batch: Batch) -> History:
    """Core readings from the fire on: what was read of raw meat in the fridge is no cook."""
    on = batch.done.get("meat_on")
    return tuple((at, c) for at, c in _history(batch, Probe.CORE) if on is not None and at >= on)


def uncured(batch: Batch, dose: Dose | None) -> bool:
    """Whether it was no cure after all: forgotten, a salt that is merely pink, run out, or a middle that is grey."""
    if batch.sliced is not None and not batch.sliced.pink:  # what was seen counts more than what was modelled
        return True
    return _forgotten(batch) or bool(LOST & lost_cure(cure_record(batch, dose, batch.started)))


def _forgotten(batch: Batch) -> bool:
    into = batch.done.get("into_cure")
    kinds = [what for at, what in batch.incidents if into is not None and at >= into]  # before, nothing was lost
    return any(k.what == "forgot_cure" or (k.what == "wrong_salt" and k.facts.get("salt") == "no_cure") for k in kinds)


def _too_weak(dose: Dose | None) -> bool:
    """Whether the nitrite that went in, by the light end of a spoon, is less than the cooling rule calls cured.

    The floor of a place is what is planned for: the grams as they are shown may lie a hair under it.
    """
    return dose is not None and dose.limit is not None and dose.nitrite_ingoing < CURED_FROM


def _centre(batch: Batch, known: Known) -> float | None:
    """Nitrite that came into the middle, at the slow end of the band: what the cooling rule counts. [mg/kg]

    None of it (0) where it was no cure, or where nobody said that it went into one; None while that is not known.
    """
    if _without_nitrite(batch, known.dose):
        return 0.0
    if known.cure is None or known.dose is None or not known.cured_days or known.cured_days <= 0:
        return None
    return come_in(known.cure, known.cured_days)


def _without_nitrite(batch: Batch, dose: Dose | None) -> bool:
    """Whether it counts as uncured for certain: plain salt, a cure that was none, or one that it never went into."""
    plain = dose is not None and dose.nitrite_ingoing == 0.0
    beyond = batch.off_at is not None or any(step in batch.done for step in ("out", "meat_on"))
    return plain or uncured(batch, dose) or (beyond and "into_cure" not in batch.done)


def _modelled(batch: Batch, known: Known, now: datetime) -> History:
    """The low side of the modelled core while the meat was on the fire."""
    on = batch.done.get("meat_on")
    if on is None:
        return ()
    until = min(batch.off_at or now, now)
    curve = known.cook.curve
    points = ((on + timedelta(hours=h), c) for h, c in zip(curve.hours, curve.low, strict=True))
    return tuple((at, c) for at, c in points if at <= until)


def _kill(record: Record) -> Lethality | None:
    if not record.possible_core:
        return None
    try:
        return lethality(record.possible_core, record.species, None)
    except Missing:  # fish has no table; the ledger holds it to its own rule
        return None


def _chill(batch: Batch, record: Record) -> CoolingVerdict | None:
    off = batch.off_at
    after = [r for r in record.possible_core if off is not None and r.at >= off]
    if not after:
        return None
    before = [r for r in record.possible_core if off is not None and r.at < off][-1:]
    return judge_cooling((*before, *after), record.cured_centre_mg_kg, record.ascorbate_mg_kg, record.now)
