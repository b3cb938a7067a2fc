"""Readings that cannot be true, asked about before they are kept."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from core.batch import material
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.batch.events import Probe
from core.heat.conduction import temperature
from core.heat.cook import Seen
from core.heat.doubt import Doubt as HeatDoubt
from core.heat.doubt import doubt as doubt_of_cook
from core.heat.properties import meat
from core.units import Celsius

RANGES = {
    Probe.CORE: (-5.0, 101.0),
    Probe.PIT: (-20.0, 350.0),
    Probe.FRIDGE: (-10.0, 40.0),
    Probe.BRINE: (-8.0, 100.0),
    Probe.ROOM: (-30.0, 60.0),
}
NEARLY_DONE_K = 8.0
CARRIES_K, CARRIES_FROM_C = 8.0, 54.0  # a core goes on rising for a while after it is off; common practice
FALL_K = 4.0  # more than a stall's dip or an opened lid takes from the middle
FALL_OF_NOTE_K = 8.0  # less is another place of the meat
HELD_FACES, ROOM_C = 1000.0, 20.0  # a Biot number of faces that are at the bath's own temperature
QUICKER = 3.0  # thin ends, cuts and another place of the meat; judgement
WARMED = timedelta(hours=1)  # on the fire no core stays as cold as raw meat for so long
WARMEST_RAW_C: Celsius = 25.0  # said of the time before it went on: how warm the raw meat was
REASONS = {
    "digits": "typing_slip",
    "air": "probe_in_air",
    "unit": "unit",
    "swapped": "swapped",
    "jump": "jump",
    "clock": "clock",
    "range": "range",
}


@dataclass(frozen=True)
class Doubt:
    """Why a reading is doubted, and what was probably meant: how warm [°C], where, and when."""

    why: str
    suggested: Celsius | None = None
    probe: str | None = None
    at: datetime | None = None


@dataclass(frozen=True)
class Doubted:
    """The reading of a message that cannot be, by its place in it, why, and what was probably meant."""

    which: int
    why: str
    suggested: Celsius | None
    suggested_probe: str | None
    suggested_at: datetime | None = None


def doubt(a: Assessment, probe: Probe, celsius: Celsius, at: datetime) -> Doubt | None:
    """The doubt about a reading, or None where it may well be true."""
    low, high = RANGES[probe]
    on = a.on_at if a.batch.phase is Phase.COOKING and probe in (Probe.CORE, Probe.PIT) else None
    raw = on is not None and at < on and celsius <= WARMEST_RAW_C
    if on is not None and not raw and not _fire_was_out(a, at):
        return _in_cook(a, probe, celsius, (at - on).total_seconds())
    if not low <= celsius <= high:
        return Doubt("range")
    if probe is Probe.CORE and _raw_on_the_fire(a, celsius, at):
        return Doubt("on_fire") if _fell_too_fast(a, celsius, a.now) else Doubt("on_fire", celsius, at=a.now)
    if probe is Probe.CORE and _warmer_later(a, celsius, at):
        return Doubt("clock")
    odd = probe is Probe.CORE and (_fell_too_fast(a, celsius, at) or _rose_in_the_cold(a, celsius, at))
    return Doubt("jump") if odd else None


def _fell_too_fast(a: Assessment, celsius: Celsius, at: datetime) -> bool:
    """A core off the fire that fell three times as fast as a slab of its thickness with its faces held at 0 °C can.

    A false cold core would end the watch over the chill. It is held against every reading since it went on, since the
    last on the fire may be the only one. Meat that was cut flat to cool counts by its layers.
    """
    on, off = a.on_at, a.batch.off_at
    if on is None or off is None or at < off:
        return False
    warmer = [r for r in a.batch.of_probe(Probe.CORE) if on <= r.at <= at and r.celsius - celsius >= FALL_OF_NOTE_K]
    return any(celsius < r.celsius * _left(a, at - r.at) for r in warmer)


def _left(a: Assessment, lasted: timedelta) -> float:
    """The share of its warmth over 0 °C that the middle keeps at the least. [-]"""
    cut = material.cut_of(a.batch)
    half = material.layer(a.piece, cut[1] if cut else None).thickness / 2.0
    fourier = meat(a.piece.cut.composition, ROOM_C).diffusivity * QUICKER * lasted.total_seconds() / half**2
    return temperature("slab", HELD_FACES, fourier, 0.0) if fourier > 0.0 else 1.0


def _rose_in_the_cold(a: Assessment, celsius: Celsius, at: datetime) -> bool:
    """A core that rose in the chill by more than one carries on or another place of the meat makes: a probe in the air.

    Kept, it would condemn meat that was cold in time.
    """
    began = a.batch.done.get("chill")
    before = [r for r in a.batch.of_probe(Probe.CORE) if began is not None and began <= r.at <= at]
    chilled = a.batch.phase is Phase.CHILLING and bool(before)
    return chilled and celsius - before[-1].celsius > CARRIES_K


def _warmer_later(a: Assessment, celsius: Celsius, at: datetime) -> bool:
    """A core told late that was colder than one read after it, once it is off: meat that cools grows no warmer."""
    if a.batch.phase not in (Phase.RESTING, Phase.CHILLING):
        return False
    rises = CARRIES_K if celsius > CARRIES_FROM_C else FALL_K
    return any(r.at > at and r.celsius > celsius + rises for r in a.batch.of_probe(Probe.CORE))


def _raw_on_the_fire(a: Assessment, celsius: Celsius, at: datetime) -> bool:
    """A core as cold as raw meat, said of an hour at which it had long been on the fire: another hour was meant."""
    on, off = a.on_at, a.batch.off_at
    return on is not None and off is not None and on + WARMED < at < off and celsius <= WARMEST_RAW_C


def _fire_was_out(a: Assessment, at: datetime) -> bool:
    """A fire that went out lets core and pit fall as no cook expects: then only what cannot be at all is doubted."""
    return any(what.what == "fire_out" and told <= at for told, what in a.batch.incidents)


def _has_left_the_fire(a: Assessment, celsius: Celsius) -> bool:
    """The core was all but done and now falls: nobody said that it came off."""
    last = a.batch.last(Probe.CORE)
    done = last is not None and last.celsius >= a.batch.setup.target_c - NEARLY_DONE_K
    return done and last is not None and last.celsius - celsius > FALL_K and celsius > 0.0


def _in_cook(a: Assessment, probe: Probe, celsius: Celsius, seconds: float) -> Doubt | None:
    low, high = RANGES[probe]
    if probe is Probe.CORE and _has_left_the_fire(a, celsius):
        return Doubt("off_the_fire")
    seen = Seen(seconds, "core" if probe is Probe.CORE else "pit", celsius)
    found = doubt_of_cook(material.cook_of(a.batch, a.person), material.history_of(a.batch, a.now), seen)
    if found is None:
        return None
    why = REASONS[found.reason] if low <= celsius <= high else "range"
    if why == "clock":
        return Doubt(why, celsius, at=_moved(a, found))
    return Doubt(why, found.suggested_c, found.suggested_probe)


def _moved(a: Assessment, found: HeatDoubt) -> datetime:
    """When a reading that does not fit its time was probably taken: as the cook's course says, else just now."""
    if found.suggested_seconds is None or a.on_at is None:
        return a.now
    return min(a.on_at + timedelta(seconds=found.suggested_seconds), a.now)
