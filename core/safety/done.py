"""Is it done: the floor of the chart, the table of the meat, and what follows where it came off before them."""

from collections.abc import Sequence
from datetime import datetime
from typing import Final

from core.safety.cook import cook_history, cook_lethality, cook_readings
from core.safety.findings import Finding, Outcome, Rule, Status
from core.safety.history import Reading, first_at_or_above, hours_between, later, printed_f
from core.safety.lethality import DwellTable, Lethality, earned, trichinella_table
from core.safety.record import Record
from core.sources import FSIS_SAFE_TEMPERATURES, FSIS_SMOKING, HOT_SMOKED_FISH
from core.units import Fahrenheit, celsius_from_fahrenheit

FLOOR_F: Final = 145.0  # whole meat and fish
POULTRY_FLOOR_F: Final = 165.0
REST_HOURS: Final = 3.0 / 60.0  # with 145 °F; sources.FSIS_SAFE_TEMPERATURES
BACK_ON_WITHIN: Final = 2.0  # h
SHOWN_WITHIN: Final = 1.0  # h before it came off: a reading that shows how far it got
SMOKED_FISH_F: Final = 160.0
SMOKED_FISH: Final = DwellTable("fish_160f_30min", 1.0, ((SMOKED_FISH_F, 1800.0),), HOT_SMOKED_FISH)
VOUCHED: Final = 0.75  # h between two readings that show a hold; a fire can go out in more. Judgement


def done_findings(record: Record, readings: Sequence[Reading]) -> list[Finding]:
    """The floor, the table, and what follows where it came off before them.

    Intact meat for people who are not at risk is done by the chart alone (145 °F and 3 min of rest).
    """
    floor, kill = _floor(record, readings), cook_lethality(record)
    by_chart = floor.status is Status.PASSED and record.whole and not record.at_risk_eaters
    found = [floor]
    if record.fish:
        found.append(_smoked_fish(record, floor.status is Status.PASSED))
    if kill is not None and (kill.met or not by_chart):
        found.append(_kill(kill))
    if record.species == "pork":
        found.append(_parasites(record))
    done = by_chart or (kill.met if kill else floor.status is Status.PASSED)
    return found if done or record.off_at is None else [*found, _partial(record, readings, record.off_at)]


def _floor(record: Record, readings: Sequence[Reading]) -> Finding:
    limit_f = floor_f(record)
    reached = first_at_or_above(limit_f, readings)
    hottest = max(readings, key=lambda r: r.celsius, default=None)
    rested = reached is not None and (record.bird or record.fish or _rested(record, readings, limit_f))
    return Finding(
        rule=Rule.POULTRY_165 if record.bird else Rule.DONENESS,
        status=Status.PASSED if rested else Status.OPEN,
        means=Outcome.SAFE if rested else Outcome.NOT_YET,
        source=FSIS_SAFE_TEMPERATURES,
        readings=tuple(r for r in (reached or hottest,) if r is not None),
        value=None if hottest is None else hottest.celsius,
        limit=celsius_from_fahrenheit(limit_f),
        unit="°C",
        missing="" if rested else "rest_3min" if reached else "core_reading",
    )


def _rested(record: Record, readings: Sequence[Reading], limit_f: Fahrenheit) -> bool:
    """Whether three minutes passed after a reading at the floor, and none of them shows a colder spot."""
    hot = [r for r in readings if printed_f(r.celsius) >= limit_f]
    cold = [r for r in readings if printed_f(r.celsius) < limit_f]
    shown = (r for r in hot if not any(0.0 <= hours_between(r.at, c.at) < REST_HOURS for c in cold))
    return any(hours_between(r.at, record.now) >= REST_HOURS for r in shown)


def _parasites(record: Record) -> Finding:
    """Trichinae in pork, by the table that was law: dead long before the floor, and shown for whoever asks."""
    dead = earned(cook_history(record), trichinella_table())
    return Finding(
        rule=Rule.PARASITES,
        status=Status.PASSED if dead.met else Status.OPEN,
        means=Outcome.SAFE if dead.met else Outcome.NOT_YET,
        source=dead.source,
        readings=dead.deciding,
        value=dead.fraction,
        limit=1.0,
        unit="-",
        missing="" if dead.met else "core_reading",
    )


def _kill(kill: Lethality) -> Finding:
    return Finding(
        rule=Rule.LETHALITY,
        status=Status.PASSED if kill.met else Status.OPEN,
        means=Outcome.SAFE if kill.met else Outcome.NOT_YET,
        source=kill.source,
        readings=kill.deciding,
        value=kill.log_reduction,
        limit=kill.required_log,
        unit="log",
        missing="" if kill.met else "core_reading",
        detail=kill.table,
    )


def held_as_smoked(record: Record) -> bool:
    """Whether fish was held at 160 °F for 30 min, as what is kept for weeks has to be; `sources.HOT_SMOKED_FISH`."""
    return _held(record).met


def _held(record: Record) -> Lethality:
    """160 °F, held for 30 min on end, from a reading on that shows it: by readings close enough to vouch for what lies
    between them, or by the modelled low side.
    """
    read = cook_readings(record)
    shown = first_at_or_above(SMOKED_FISH_F, read)
    modelled = [r for r in cook_history(record) if shown is not None and r.at >= shown.at]
    runs = (*_runs(read), *_runs(modelled), ())
    return max((earned(run, SMOKED_FISH) for run in runs), key=lambda found: found.fraction)


def _smoked_fish(record: Record, cooked: bool) -> Finding:
    """What is held so keeps as smoked fish does; what came off without it, and is cooked, keeps as leftovers do."""
    held, over = _held(record), record.off_at is not None and record.off_at <= record.now
    as_leftovers = over and cooked and not held.met
    return Finding(
        rule=Rule.FISH_160,
        status=Status.PASSED if held.met else Status.FAILED if as_leftovers else Status.OPEN,
        means=Outcome.SAFE if held.met or as_leftovers else Outcome.NOT_YET,
        source=HOT_SMOKED_FISH,
        readings=held.deciding,
        value=held.fraction * 0.5,
        limit=0.5,
        unit="h",
        missing="" if held.met or as_leftovers else "core_reading",
    )


def _runs(history: Sequence[Reading]) -> list[tuple[Reading, ...]]:
    """The stretches at 160 °F or above: one that is colder ends a stretch, and so does a long time without one."""
    found: list[tuple[Reading, ...]] = []
    for reading in history:
        if printed_f(reading.celsius) < SMOKED_FISH_F:
            found.append(())
        elif found and found[-1] and hours_between(found[-1][-1].at, reading.at) <= VOUCHED:
            found[-1] = (*found[-1], reading)
        else:
            found.append((reading,))
    return found


def _partial(record: Record, readings: Sequence[Reading], off: datetime) -> Finding:
    """It came off before it was done: back on within two hours, or out. Cured bacon is cooked before eating."""
    shown = tuple(r for r in readings if hours_between(r.at, off) <= SHOWN_WITHIN)
    if record.product_class == "bacon" and record.cured:
        status, means, advice = Status.OPEN, Outcome.NOT_YET, "raw_cook_before_eating"
    elif hours_between(off, record.now) <= BACK_ON_WITHIN:
        status, means, advice = Status.OPEN, Outcome.NOT_YET, "back_on_now"
    elif shown:
        status, means, advice = Status.FAILED, Outcome.THROW_AWAY, "throw_away"
    else:
        status, means, advice = Status.UNKNOWN, Outcome.CANNOT_SAY, "throw_away_advised"
    return Finding(
        rule=Rule.PARTIAL_COOK,
        status=status,
        means=means,
        source=FSIS_SMOKING,
        readings=shown[-1:],
        deadline=later(off, BACK_ON_WITHIN) if advice == "back_on_now" else None,
        value=hours_between(off, record.now),
        limit=BACK_ON_WITHIN,
        unit="h",
        missing="" if status is Status.FAILED else "core_reading",
        advice=advice,
    )


def floor_f(record: Record) -> Fahrenheit:
    """The core below which it is never called done: the chart's, or the product's own above it. [°F]"""
    chart = POULTRY_FLOOR_F if record.bird else FLOOR_F
    own = record.doneness_floor_c
    return chart if own is None else max(chart, printed_f(own))
