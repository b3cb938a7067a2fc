"""From the fire to the fridge: when the core falls to 60 °C, and how the chill stands against its corners."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from core.batch import material
from core.batch.batch import Batch, Reading
from core.batch.events import Probe
from core.errors import SaltbellError
from core.heat.cook import Seen
from core.heat.cooling import Chill, rest
from core.safety.history import printed_f
from core.units import Celsius, Fahrenheit, Metres

CHILL_CLOCK_C: Celsius = 60.0  # 140 °F
STAGE_ONE_FROM_F: Fahrenheit = 130.0
CORNERS_F: dict[str, Fahrenheit] = {"27": 80.0, "4": 40.0}


@dataclass(frozen=True)
class Cooling:
    """How the cooling stands. Times aware UTC, None where nothing is known yet.

    `forecast` is the chill from the latest reading on; `since` when that reading was taken.
    """

    at_60c: datetime | None = None
    from_54c: datetime | None = None
    cold_at: datetime | None = None
    corners: frozenset[str] = frozenset()
    forecast: Chill | None = None
    since: datetime | None = None
    readings: tuple[Reading, ...] = ()


def cooling(batch: Batch, now: datetime) -> Cooling:
    """How the cooling of a batch stands; empty before it came off the fire."""
    off = batch.off_at
    if off is None:
        return Cooling()
    seen = tuple(r for r in batch.of_probe(Probe.CORE) if r.at >= off)
    at_60c = batch.done.get("chill") or _falls_to_60(batch, off, seen)
    if "chill" not in batch.done:
        return Cooling(at_60c=at_60c, readings=seen)
    return _chilling(batch, at_60c or now, seen)


def _falls_to_60(batch: Batch, off: datetime, seen: tuple[Reading, ...]) -> datetime | None:
    """When the middle is at 60 °C: by its readings, or by the rest that lies ahead."""
    below = next((r.at for r in seen if r.celsius <= CHILL_CLOCK_C), None)
    if below is not None:
        return below
    start, since = (seen[-1].celsius, seen[-1].at) if seen else (batch.setup.target_c, off)
    if start <= CHILL_CLOCK_C + 0.1:
        return since
    hours = rest(material.piece_of(batch.setup), "foil", start_c=start).to(CHILL_CLOCK_C)
    return None if hours is None else since + timedelta(hours=hours.p50)


def _chilling(batch: Batch, start: datetime, seen: tuple[Reading, ...]) -> Cooling:
    warm = [r for r in seen if printed_f(r.celsius) >= STAGE_ONE_FROM_F]
    from_54c = warm[-1].at if warm else start
    fell = [printed_f(r.celsius) for r in seen if r.at >= start]
    corners = frozenset(name for name, f in CORNERS_F.items() if any(read <= f for read in fell))
    cut = material.cut_of(batch)
    since = max(start, cut[0]) if cut else start
    forecast = _forecast(batch, since, seen, cut[1] if cut else None)
    to_cold = forecast.to(4.4) if forecast else None
    return Cooling(
        at_60c=start,
        from_54c=from_54c,
        cold_at=None if to_cold is None else since + timedelta(hours=to_cold.p50),
        corners=corners,
        forecast=forecast,
        since=since,
        readings=seen,
    )


def _forecast(batch: Batch, start: datetime, seen: tuple[Reading, ...], cut_to: Metres | None) -> Chill | None:
    """The chill from its beginning on, or from when it was cut: layers begin as warm as the middle was read last."""
    near = sorted((abs((r.at - start).total_seconds()), r.celsius) for r in seen)
    start_c = near[0][1] if near and near[0][0] <= 1800.0 else CHILL_CLOCK_C
    if cut_to is not None:
        start_c = next((r.celsius for r in reversed(seen) if r.at <= start), start_c)
    later = tuple(Seen((r.at - start).total_seconds(), "core", r.celsius) for r in seen if r.at > start)
    try:
        return material.chill_of(batch.setup, max(start_c, batch.setup.fridge_c + 1.0), later, cut_to)
    except SaltbellError:  # a start that is colder than the ice water needs no forecast
        return None
