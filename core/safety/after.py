"""Off the fire: how it cooled, how long it may be kept, and how cold."""

from datetime import datetime, timedelta
from typing import Final

from core.errors import Missing
from core.safety.cooling import CoolingVerdict, judge_cooling
from core.safety.cooling_rules import Use
from core.safety.done import held_as_smoked
from core.safety.findings import Finding, Outcome, Rule, Status
from core.safety.fridge import Window, judge_fridge, warm_spells
from core.safety.history import Reading, last_at_or_above, later, ordered, printed_f, within
from core.safety.record import Record
from core.safety.storage import VACUUM_FISH_F, UseBy, use_by
from core.sources import FSIS_DANGER_ZONE, HOT_SMOKED_FISH
from core.units import celsius_from_fahrenheit

HOT_F: Final = 140.0
TWO_HOURS: Final = 2.0
LEFTOVERS: Final = "leftovers"  # line of the storage chart
_STATUS: Final = {
    Outcome.SAFE: Status.PASSED,
    Outcome.NOT_YET: Status.OPEN,
    Outcome.CANNOT_SAY: Status.UNKNOWN,
    Outcome.THROW_AWAY: Status.FAILED,
}


def after_findings(record: Record) -> tuple[Finding, ...]:
    """What the record says of the time after it came off; nothing before."""
    if record.off_at is None or record.off_at > record.now:
        return ()
    cooled = cooling(record)
    kept = _kept(record, record.off_at)
    found = [_two_hours(record), _cooling(record, cooled), kept, _fridge(record), _vacuum_fish(record)]
    return tuple(f for f in found if f is not None)


def cooling(record: Record) -> CoolingVerdict:
    """The cooling by every rule: from the last reading before it came off, to the first cold one."""
    return judge_cooling(cooling_readings(record), record.cured_centre_mg_kg, record.ascorbate_mg_kg, record.now)


def cooling_readings(record: Record) -> tuple[Reading, ...]:
    """The core readings since it came off, and the last one before."""
    readings = within(record.possible_core, record.meat_on_at, None)
    off = record.off_at
    before = [r for r in readings if off is not None and r.at < off]
    after = [r for r in readings if off is None or r.at >= off]
    return tuple(before[-1:] + after)


def hot_until(record: Record) -> datetime | None:
    """Until when it may be eaten off the fire: two hours after the last reading at 140 °F."""
    hot = last_at_or_above(HOT_F, cooling_readings(record))
    return None if hot is None or record.stored_since is not None else later(hot.at, TWO_HOURS)


def use_by_of(record: Record) -> UseBy | None:
    """Its use-by, from the time at which it came off; what has no line on the chart keeps as leftovers do."""
    return None if record.off_at is None else _dates(record, record.off_at)


def _dates(record: Record, off: datetime) -> UseBy:
    since = off + timedelta(days=record.frozen_days)  # the freezer stops the clock, and gives no day back
    smoked = not record.fish or held_as_smoked(record)
    try:
        return use_by(record.product_class if smoked else LEFTOVERS, since)
    except Missing:
        return use_by(LEFTOVERS, since)


def _still_hot(record: Record) -> bool:
    until = hot_until(record)
    return until is not None and record.now <= until


def _two_hours(record: Record) -> Finding | None:
    """Two hours from the heat to the cold, while it was hot at the last look; then the cooling rules speak."""
    until = hot_until(record)
    if record.chill_started_at is not None or record.frozen_at is not None or until is None:
        return None
    readings = cooling_readings(record)
    if printed_f(readings[-1].celsius) < HOT_F:
        return None
    in_time = record.now <= until
    return Finding(
        rule=Rule.TWO_HOURS,
        status=Status.OPEN if in_time else Status.UNKNOWN,
        means=Outcome.SAFE if in_time else Outcome.CANNOT_SAY,
        source=FSIS_DANGER_ZONE,
        readings=readings[-1:],
        deadline=until,
        limit=TWO_HOURS,
        unit="h",
        missing="chill" if in_time else "cooling_reading",
    )


def _cooling(record: Record, cooled: CoolingVerdict) -> Finding:
    """While it is still hot enough to be served, an open cooling is no reason to wait."""
    means = cooled.kind
    served = means is Outcome.NOT_YET and _still_hot(record)
    stage, decided = cooled.stage, cooled.decided_by
    slow_cured = means is Outcome.CANNOT_SAY and decided.rule.use is Use.CURED
    wanting = means is Outcome.NOT_YET or decided.clock is Status.UNKNOWN
    return Finding(
        rule=Rule.COOLING,
        status=_STATUS[means],
        means=Outcome.SAFE if served else means,
        source=decided.rule.source,
        readings=cooled.deciding,
        deadline=stage.deadline if means is Outcome.NOT_YET else None,
        value=stage.hours_at_most,
        limit=stage.stage.max_h,
        unit="h",
        missing="cooling_reading" if wanting else "",
        detail=decided.rule.key,
        advice="reheat_165_today" if slow_cured else "",
    )


def _kept(record: Record, off: datetime) -> Finding:
    dates = _dates(record, off)
    asked = record.frozen_at or record.now
    status, means = Status.PASSED, Outcome.SAFE
    if asked > dates.at:
        status, means = Status.FAILED, Outcome.THROW_AWAY if record.at_risk_eaters else Outcome.EAT_NOW
    if asked > dates.latest:
        status, means = Status.FAILED, Outcome.THROW_AWAY
    days = (asked - off).total_seconds() / 86400.0 - record.frozen_days
    line = dates.keeping
    return Finding(
        Rule.USE_BY,
        status,
        means,
        line.source,
        deadline=dates.at,
        value=days,
        limit=line.days,
        unit="d",
        detail=line.line,
    )


def _stored_since(record: Record) -> datetime | None:
    """Since when it stands in the fridge finished; freezing stops that clock."""
    return None if record.frozen_at is not None else record.stored_since


def _fridge(record: Record) -> Finding | None:
    """A warm fridge while it is kept. The fridge that was watched through the cure is taken for cold until read."""
    since = _stored_since(record)
    if since is None:
        return None
    window = Window(since, None, record.now, said_cold=record.said_cold("warm_fridge"))
    readings = within(ordered(record.fridge), since, record.now)
    return judge_fridge(record.fridge, window) if warm_spells(readings, window) else None


def _vacuum_fish(record: Record) -> Finding | None:
    """Without air botulinum grows colder than the fridge line: every reading at 38 °F or below."""
    since = _stored_since(record)
    if not (record.fish and record.vacuum) or since is None:
        return None
    readings = within(ordered(record.fridge), since, record.now)
    warmest = max(readings, key=lambda r: r.celsius, default=None)
    held = held_as_smoked(record)  # cooked fish keeps its few days only with air about it
    cold = held and warmest is not None and printed_f(warmest.celsius) <= VACUUM_FISH_F
    status = Status.PASSED if cold else Status.FAILED if warmest or not held else Status.UNKNOWN
    return Finding(
        rule=Rule.VACUUM_FISH,
        status=status,
        means=Outcome.SAFE if cold else Outcome.CANNOT_SAY,
        source=HOT_SMOKED_FISH,
        readings=tuple(r for r in (warmest,) if r is not None),
        value=None if warmest is None else warmest.celsius,
        limit=celsius_from_fahrenheit(VACUUM_FISH_F),
        unit="°C",
        missing="" if warmest or not held else "fridge_reading",
        advice="" if cold else "throw_away_advised",
    )
