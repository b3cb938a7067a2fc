"""From what a cook said to what the solvers take: the piece, the dose, the cure, the cook, the chill.

Every result is a pure function of frozen inputs and is remembered, so that a turn that changes nothing of the
meat costs nothing of the physics.
"""

from dataclasses import replace
from datetime import datetime
from functools import lru_cache
from math import isfinite

from core.batch import needled
from core.batch.batch import Batch
from core.batch.events import Probe
from core.cure.contents import STRONG_CURES
from core.cure.course import Immersion
from core.cure.dose import Dose, Recipe, dose, house_target
from core.cure.gradient import Brining, brining, salted
from core.cure.penetration import Penetration, Quantiles, penetration
from core.errors import SaltbellError, TooLong
from core.heat import lighting
from core.heat.cook import Cook, History, PitSet, Seen, WrapKind, Wrapped
from core.heat.cooker import cooker
from core.heat.cooling import Chill, ChillMethod, chill, rest
from core.heat.fire import Fuel, Weather, fuel
from core.heat.ready import Estimate, forecast
from core.meat.cuts import cut
from core.meat.piece import Piece, Species, piece
from core.person import Learned, Person
from core.plan.recipe import product
from core.plan.setup import Setup, by_the_clock
from core.plan.steps import Band
from core.units import Celsius, Fraction, Hours, Metres

ASSUMED_STRENGTH = STRONG_CURES[0]  # for the days only, while the packet's figure is unknown: no dose is told from it
CHILLS: dict[str, ChillMethod] = {"foil": "foil", "rack": "rack", "fan": "fan", "ice": "ice"}


def piece_of(setup: Setup) -> Piece:
    """The piece of a setup; raises OutOfRange for a mass or thickness that cannot be."""
    return piece(
        cut(setup.cut),
        setup.heaviest or setup.mass / setup.pieces,
        setup.thickness,
        sealed_faces=max(setup.sealed_faces, int(setup.skin_on)),  # skin and rind hardly let salt through
        skin_on=setup.skin_on,
        intact=setup.method != "inject" and not setup.pierced,
    )


def on_the_grate(setup: Setup) -> Piece:
    """The piece as it cooks: fish lies on its skin or in it, which gives no water off, unless it was said to be off."""
    cooked = piece_of(setup)
    skinless = "skin_on" in setup.said and not setup.skin_on
    return replace(cooked, skin_on=not skinless) if cooked.cut.species is Species.FISH else cooked


@lru_cache(maxsize=512)
def dose_of(setup: Setup, jurisdiction: str) -> Dose:
    """The dose of a setup by the law of a place; raises what `core.cure.dose.dose` raises.

    What nobody asked for is aimed within the limit of the place; what somebody asked for is held against it.
    """
    kind = product(setup.product).product_class
    target = setup.nitrite_target
    if target > 0.0 and "nitrite_target" not in setup.said:
        target = min(target, house_target(jurisdiction, kind, setup.method))
        target = needled.aimed(target, setup)
    return dose(
        Recipe(
            method=setup.method,
            meat_kg=setup.mass,
            nitrite_fraction=setup.cure_nitrite_fraction,
            product_class=kind,
            jurisdiction=jurisdiction,
            nitrate_fraction=setup.cure_nitrate_fraction,
            nitrite_target=target,
            salt_fraction=setup.salt_fraction,
            sugar_fraction=setup.sugar_fraction,
            water_share=setup.water_share,
            pump_fraction=needled.pumped(target, setup),
            cover_share=setup.cover_share,
            skin_on=setup.skin_on,
            brine_strength=setup.brine_strength if setup.method == "brine" else None,
        )
    )


def days_of(setup: Setup, person: Person, weighed: Dose | None = None) -> Penetration:
    """Days until the middle is pink, with what the person's own slices taught.

    While the packet's strength is unknown the days are those of the same nitrite from a usual curing salt.
    """
    known = setup.cure_nitrite_fraction or ASSUMED_STRENGTH
    weighed = weighed or dose_of(replace(setup, cure_nitrite_fraction=known), person.jurisdiction)
    return _penetration(immersion_of(setup, weighed, person.learned))


def immersion_of(setup: Setup, weighed: Dose, learned: Learned) -> Immersion:
    """The piece in its cure, with the soak and the rest after it and what is known of the person's meat."""
    return Immersion(
        piece_of(setup),
        weighed,
        setup.fridge_c,
        learned.diffusivity_log_shift,
        learned.diffusivity_log_sd,
        soak_hours=setup.soak_hours,
        rest_hours=setup.rest_days * 24.0,
    )


@lru_cache(maxsize=256)
def _penetration(immersion: Immersion) -> Penetration:
    found = penetration(immersion)
    if not isfinite(found.days_p90):
        raise TooLong(found.days_p90, 21.0)
    return found


def brining_of(setup: Setup, weighed: Dose) -> Brining:
    """The hours in a strong brine that is left by the clock."""
    return _brining(Immersion(piece_of(setup), weighed, setup.fridge_c), setup.salt_fraction)


@lru_cache(maxsize=256)
def _brining(immersion: Immersion, wanted: Fraction) -> Brining:
    return brining(immersion, wanted)


@lru_cache(maxsize=256)
def salt_taken(setup: Setup, weighed: Dose, hours: Hours) -> Quantiles:
    """Mean salt after so many hours in a strong brine; of fish from with its skin to without, where nobody said. [-]"""
    bare = Immersion(piece_of(setup), weighed, setup.fridge_c)
    found = salted(bare, hours)
    if bare.piece.cut.species is not Species.FISH or "skin_on" in setup.said:
        return found
    skinned = salted(replace(bare, piece=replace(bare.piece, sealed_faces=1)), hours)
    return Quantiles(skinned.p10, (skinned.p50 + found.p50) / 2, found.p90)


def in_the_cure(setup: Setup, cure: Penetration | None, weighed: Dose | None) -> Band | None:
    """Days in the cure as they are planned: for the middle, and no fewer than the product wants; in salt, its hours.

    By the clock it is the middle of the band: longer is as wrong as shorter.
    """
    made = product(setup.product)
    if by_the_clock(setup) and (told := made.brining(setup)) is not None:
        return None if weighed is None else Band(told / 24.0, told / 24.0, told / 24.0)
    if by_the_clock(setup):
        hours = None if weighed is None else brining_of(setup, weighed).hours
        return None if hours is None else Band(hours.p10 / 24.0, hours.p50 / 24.0, hours.p50 / 24.0)
    if setup.nitrite_target == 0.0:
        salting = (setup.salting_hours or made.hours.salting) / 24.0
        return Band(salting, salting, salting)
    return None if cure is None else Band(cure.days_p10, cure.days_p50, max(cure.advice, made.least(setup)))


def planned_days(
    setup: Setup, known: tuple[Penetration | None, Dose | None], refusal: SaltbellError | None
) -> tuple[Band | None, SaltbellError | None]:
    """The same with what refuses it, the refusal before it standing first."""
    try:
        return in_the_cure(setup, *known), refusal
    except SaltbellError as found:
        return None, refusal or found


def cook_of(batch: Batch, person: Person) -> Cook:
    """The cook of a batch, on this person's cooker."""
    setup, learned = batch.setup, person.learned
    runs = learned.of_cooker(setup.cooker) if batch.off_at is None else None  # a record is not judged by its own lesson
    return Cook(
        on_the_grate(setup),
        cooker=setup.cooker,
        pit_c=batch.pit_start or setup.pit_c,
        start_c=_start_c(batch),
        target_c=setup.target_c,
        altitude_m=person.altitude_m,
        log_shift=learned.cook_log_shift,
        log_sd=learned.cook_log_sd,
        habits=runs.habits if runs else (),
    )


def _start_c(batch: Batch) -> float:
    """How warm the meat was when it went on: as read within a while before, or the fridge and a little."""
    on = batch.done.get("meat_on")
    before = [r.celsius for r in batch.of_probe(Probe.CORE) if on is not None and r.at <= on]
    return before[-1] if before else batch.setup.fridge_c + 1.0


def history_of(batch: Batch, now: datetime) -> History:
    """What happened since the meat went on, in the seconds of the cook; empty before that."""
    on = batch.done.get("meat_on")
    if on is None:
        return History()
    until = batch.off_at or now
    seen = tuple(
        Seen((r.at - on).total_seconds(), "core" if r.probe is Probe.CORE else "pit", r.celsius)
        for r in batch.readings
        if r.probe in (Probe.CORE, Probe.PIT) and on <= r.at <= until
    )
    wrapped = batch.done.get("wrap")
    wraps = (
        () if wrapped is None else (Wrapped((wrapped - on).total_seconds(), _wrap_kind(batch.setup)), *_bared(batch))
    )
    lids = tuple((at - on).total_seconds() for at, what in batch.incidents if what.what == "lid" and on <= at <= until)
    sets = tuple(PitSet(max((at - on).total_seconds(), 0.0), c) for at, c in batch.pit_sets if at > on)
    return History(seen, wraps, max((min(now, until) - on).total_seconds(), 0.0), sets, lids)


def _bared(batch: Batch) -> tuple[Wrapped, ...]:
    """When the wrap came off again on the fire."""
    on, wrapped = batch.done["meat_on"], batch.done["wrap"]
    told = (at for at, what in batch.incidents if what.what == "unwrapped" and at > wrapped)
    return tuple(Wrapped((at - on).total_seconds(), "none") for at in told)


def _wrap_kind(setup: Setup) -> WrapKind:
    return "paper" if setup.wrap == "paper" else "foil"


def estimate_of(batch: Batch, person: Person, now: datetime) -> Estimate:
    """When the meat is ready, as known now."""
    return forecast(cook_of(batch, person), history_of(batch, now))


def fuel_of(setup: Setup, hours: Hours) -> Fuel:
    """Fuel for the hours, in the weather that was told."""
    weather = Weather(setup.outside_c, setup.wind_m_s)
    return fuel(setup.cooker, setup.pit_c, hours, cut(setup.cut), weather)


def lighting_of(setup: Setup) -> Hours:
    """From lighting to a steady pit, the slow end of it. [h]"""
    return lighting.hours(cooker(setup.cooker), setup.lighter)


def rest_of(setup: Setup) -> Chill:
    """The rest, in foil at room temperature, from the core at which it came off."""
    return rest(piece_of(setup), "foil", start_c=max(setup.target_c, 61.0))


def chill_of(setup: Setup, start_c: Celsius, seen: tuple[Seen, ...] = (), cut_to: Metres | None = None) -> Chill:
    """The chill in the way that is planned; of layers `cut_to` so thick, where it was cut for it. [m]"""
    return chill(layer(piece_of(setup), cut_to), CHILLS[setup.chill], start_c, setup.fridge_c, seen)


def layer(piece: Piece, cut_to: Metres | None) -> Piece:
    """A layer of a piece that was cut flat: the footprint stays, the mass goes with the thickness."""
    if cut_to is None or cut_to >= piece.thickness:
        return piece
    return replace(piece, thickness=cut_to, mass=piece.mass * cut_to / piece.thickness)


def cut_of(batch: Batch) -> tuple[datetime, Metres] | None:
    """When the cooked meat was cut flat so as to cool, and how thick its layers are [m]; None where it was not."""
    off = batch.off_at
    told = [(at, what.facts.get("thickness")) for at, what in batch.incidents if what.what == "cut"]
    found = [(at, thick) for at, thick in told if isinstance(thick, float) and off is not None and at >= off]
    return found[-1] if found else None


def fresh(learned: Learned) -> Learned:
    """The same person without what slices taught: what the days would be by the house defaults."""
    return replace(learned, diffusivity_log_shift=0.0, diffusivity_log_sd=Learned().diffusivity_log_sd)
