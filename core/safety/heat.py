"""On the fire: is it done, by which table, how fast it came up, and whether it stayed up."""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from typing import Final

from core.errors import OutOfRange
from core.safety.come_up import COME_UP, REACH_140, Climb, Fall, danger_hours, falls, judge_climb
from core.safety.findings import Finding, Outcome, Rule, Status
from core.safety.fire_out import FireOut, judge_fire_out
from core.safety.history import (
    Reading,
    coldest_at_each_time,
    first_at_or_above,
    hours_between,
    later,
    ordered,
    printed_f,
    until_cold,
    within,
)
from core.safety.lethality import DwellTable, Lethality, dwell_table, earned
from core.safety.record import Record
from core.sources import FSIS_COOKING_2021, FSIS_SAFE_TEMPERATURES, FSIS_SMOKING, HOT_SMOKED_FISH, Source
from core.units import Celsius, Fahrenheit, Hours, celsius_from_fahrenheit

MEAT_FLOOR_F: Final = 145.0
POULTRY_FLOOR_F: Final = 165.0
FISH_FLOOR_F: Final = 145.0
REST_HOURS: Final = 3.0 / 60.0  # with 145 °F; sources.FSIS_SAFE_TEMPERATURES
FRIDGE_F: Final = 40.0
REHEATED_F: Final = 165.0
CURED_FROM: Final = 100.0  # mg/kg in the centre: the rule's nitrite
BACK_ON_WITHIN: Final = 2.0  # h
SHOWN_WITHIN: Final = 1.0  # h before it came off: a reading that shows how far it got
MODEL_MAY_EXCEED: Final = 1.0  # °C over a reading before the modelled low side is not the low side
SMOKED_FISH: Final = DwellTable("fish_160f_30min", 1.0, ((160.0, 1800.0),), HOT_SMOKED_FISH)


def heat_findings(record: Record) -> tuple[Finding, ...]:
    """What the record says of the cook; raw meat is not done yet, and that is all there is to say of it."""
    if record.meat_on_at is None and not record.possible_core:
        return (_unread(record),)
    readings = cook_readings(record)
    found = [_impossible(record), *_done(record, readings), *_climbs(record), *_stayed_up(record, readings)]
    return tuple(f for f in found if f is not None)


def cook_readings(record: Record) -> tuple[Reading, ...]:
    """The core readings of cook, rest and chill, up to the first cold one: no reheating counts as the cook."""
    readings = within(record.possible_core, record.meat_on_at, record.stored_since)
    return until_cold(FRIDGE_F, coldest_at_each_time(readings))


def cook_history(record: Record) -> tuple[Reading, ...]:
    """The readings with the modelled low side between them; alone where one is colder than the model says."""
    readings = cook_readings(record)
    if not readings:
        return ()
    model = within(ordered(record.modelled_low), record.meat_on_at, readings[-1].at)
    if any(_modelled_at(model, r.at) > r.celsius + MODEL_MAY_EXCEED for r in readings):
        return readings
    return coldest_at_each_time((*readings, *model))


def cook_lethality(record: Record) -> Lethality | None:
    """What the cook has earned by the table of the meat; None where there is none (fish, a bird of unlisted fat)."""
    try:
        return None if record.fish else earned(cook_history(record), _table(record))
    except OutOfRange:
        return None


def floor_f(record: Record) -> Fahrenheit:
    """The core below which it is never called done: the chart's, or the product's own above it. [°F]"""
    chart = POULTRY_FLOOR_F if record.bird else FISH_FLOOR_F if record.fish else MEAT_FLOOR_F
    own = record.doneness_floor_c
    return chart if own is None else max(chart, printed_f(own))


def _table(record: Record) -> DwellTable:
    """Meat that is not intact, and any meat until nobody at risk is known to eat it, wants 7 log."""
    if record.bird:
        return dwell_table(record.species, record.fat_fraction)
    return dwell_table(record.species, None, 6.5 if record.whole and record.at_risk_eaters is False else 7.0)


def _modelled_at(model: Sequence[Reading], at: datetime) -> Celsius:
    """The modelled core at a time, between its points by a line; colder than all where the model says nothing."""
    place = bisect_left(model, at, key=lambda r: r.at)
    if not model or place == len(model) or (place == 0 and model[0].at != at):
        return celsius_from_fahrenheit(-459.0)
    second, first = model[place], model[max(place - 1, 0)]
    span = hours_between(first.at, second.at)
    share = hours_between(first.at, at) / span if span > 0 else 1.0
    return first.celsius + share * (second.celsius - first.celsius)


def _unread(record: Record) -> Finding:
    return _open(Rule.DONENESS, FSIS_SAFE_TEMPERATURES, missing="cook_it", detail="raw")


def _open(rule: Rule, source: Source, missing: str, detail: str = "") -> Finding:
    return Finding(rule, Status.OPEN, Outcome.NOT_YET, source, missing=missing, detail=detail)


def _impossible(record: Record) -> Finding | None:
    wrong = record.impossible_core
    if not wrong:
        return None
    doubt = (Status.UNKNOWN, Outcome.CANNOT_SAY)
    return Finding(Rule.CORE_POSSIBLE, *doubt, FSIS_SAFE_TEMPERATURES, wrong, missing="corrected_reading")


def _done(record: Record, readings: Sequence[Reading]) -> list[Finding]:
    """The floor, the table, and what follows where it came off before them.

    Intact meat for people who are not at risk is done by the chart alone (145 °F and 3 min of rest).
    """
    floor, kill = _floor(record, readings), cook_lethality(record)
    by_chart = floor.status is Status.PASSED and record.whole and not record.bird and not record.at_risk_eaters
    found = [floor]
    if record.fish:
        found.append(_smoked_fish(record))
    if kill is not None and (kill.met or not by_chart):
        found.append(_kill(kill))
    done = by_chart or (kill.met if kill else floor.status is Status.PASSED)
    return found if done or record.off_at is None else [*found, _partial(record, readings)]


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


def _smoked_fish(record: Record) -> Finding:
    """160 °F, held for 30 min."""
    held = earned(cook_history(record), SMOKED_FISH)
    return Finding(
        rule=Rule.FISH_160,
        status=Status.PASSED if held.met else Status.OPEN,
        means=Outcome.SAFE if held.met else Outcome.NOT_YET,
        source=HOT_SMOKED_FISH,
        readings=held.deciding,
        value=held.fraction * 0.5,
        limit=0.5,
        unit="h",
        missing="" if held.met else "core_reading",
    )


def _partial(record: Record, readings: Sequence[Reading]) -> Finding:
    """It came off before it was done: back on within two hours, or out. Cured bacon is cooked before eating."""
    off = record.off_at or record.now
    shown = tuple(r for r in readings if hours_between(r.at, off) <= SHOWN_WITHIN)
    if record.product_class == "bacon" and (record.cured_centre_mg_kg or 0.0) >= CURED_FROM:
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


def _climbs(record: Record) -> list[Finding]:
    """Intact meat is judged by its surface, which nobody reads: a slow core is a doubt there, not a verdict."""
    found = [_climb(record, COME_UP, (Rule.COME_UP, FSIS_COOKING_2021))]
    if record.delicate:
        found.append(_climb(record, REACH_140, (Rule.REACH_140, FSIS_SMOKING)))
    return found


def _climb(record: Record, climb: Climb, rule: tuple[Rule, Source]) -> Finding:
    until = min(record.now, record.off_at or record.now)
    judged = judge_climb(climb, cook_history(record), record.meat_on_at, until)
    too_long = Outcome.THROW_AWAY if record.delicate else Outcome.CANNOT_SAY
    means = {
        Status.PASSED: Outcome.SAFE,
        Status.OPEN: Outcome.NOT_YET,
        Status.UNKNOWN: Outcome.CANNOT_SAY,
        Status.FAILED: too_long,
    }[judged.status]
    return Finding(
        rule=rule[0],
        status=judged.status,
        means=means,
        source=rule[1],
        readings=judged.deciding,
        deadline=judged.deadline if judged.status is Status.OPEN else None,
        value=judged.hours,
        limit=climb.max_h,
        unit="h",
        missing="core_reading" if judged.status in (Status.OPEN, Status.UNKNOWN) else "",
        detail="core" if record.delicate else "core_for_surface",
    )


def _stayed_up(record: Record, readings: Sequence[Reading]) -> list[Finding]:
    """Each fall of the core on the fire, by the grid; what fell and came back is eaten the same day, from 165 °F."""
    on_fire = within(readings, record.meat_on_at, record.off_at)
    return [_fall(record, fall, on_fire) for fall in falls(on_fire, min(record.now, record.off_at or record.now))]


def _fall(record: Record, fall: Fall, readings: Sequence[Reading]) -> Finding:
    facts = FireOut(
        core=fall.lowest.celsius,
        hours_below=fall.hours,
        reached=True,
        hours_since_on=None,
        hours_in_all=danger_hours(readings).by_line,
        delicate=record.delicate,
    )
    judged = judge_fire_out(facts, tuple(r for r in (fall.hot, fall.again or fall.lowest) if r is not None))
    return brought_through(judged, readings, Rule.HELD_140)


def brought_through(judged: Finding, readings: Sequence[Reading], rule: Rule) -> Finding:
    """A core that may be brought through is not yet to be eaten before it read 165 °F after its fall."""
    since = judged.readings[-1].at if judged.readings else None
    through = first_at_or_above(REHEATED_F, within(readings, since, None))
    open_still = judged.means is Outcome.EAT_NOW and through is None
    means = Outcome.NOT_YET if open_still else judged.means
    status = Status.PASSED if judged.means is Outcome.EAT_NOW and through else judged.status
    deadline = later(judged.readings[0].at, BACK_ON_WITHIN) if open_still and judged.readings else None
    missing = "core_reading" if open_still else judged.missing
    return replace(judged, rule=rule, status=status, means=means, deadline=deadline, missing=missing)


def hours_on(record: Record) -> Hours | None:
    """Hours since the meat went on, up to now or to when it came off."""
    if record.meat_on_at is None:
        return None
    return hours_between(record.meat_on_at, min(record.now, record.off_at or record.now))
