"""On the fire: whether it is done, how fast it came up, and whether it stayed up."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from core.safety.come_up import COME_UP, REACH_140, Climb, Fall, danger_hours, falls, judge_climb
from core.safety.cook import cook_readings, way_up
from core.safety.done import done_findings
from core.safety.findings import Finding, Outcome, Rule, Status
from core.safety.fire_out import FireOut, judge_fire_out
from core.safety.history import Reading, first_at_or_above, later, within
from core.safety.record import Record
from core.sources import COMMON_PRACTICE, FSIS_COOKING_2021, FSIS_SAFE_TEMPERATURES, Source

REHEATED_F: Final = 165.0
BACK_WITHIN: Final = 2.0  # h from the last good reading


def heat_findings(record: Record) -> tuple[Finding, ...]:
    """What the record says of the cook; raw meat is not done yet, and that is all there is to say of it."""
    if record.meat_on_at is None and not record.possible_core:
        return (_unread(record),)
    readings = cook_readings(record)
    found = [_impossible(record), *done_findings(record, readings), *_climbs(record), *_stayed_up(record, readings)]
    return tuple(f for f in found if f is not None)


def _unread(record: Record) -> Finding:
    raw = (Status.OPEN, Outcome.NOT_YET)
    rule = Rule.POULTRY_165 if record.bird else Rule.DONENESS
    return Finding(rule, *raw, FSIS_SAFE_TEMPERATURES, missing="cook_it", detail="raw")


def _impossible(record: Record) -> Finding | None:
    wrong = record.impossible_core
    if not wrong:
        return None
    doubt = (Status.UNKNOWN, Outcome.CANNOT_SAY)
    return Finding(Rule.CORE_POSSIBLE, *doubt, FSIS_SAFE_TEMPERATURES, wrong, missing="corrected_reading")


def _climbs(record: Record) -> list[Finding]:
    """Intact meat is judged by its surface, which nobody reads: a slow core is a doubt there, not a verdict.

    The published 6 h are for *Staphylococcus aureus*, which nitrite does not hold: they stand for all meat. The trade's
    4 h are for birds, and for meat that is not intact; as the trade words them, they leave out what is cured.
    """
    found = [_climb(record, COME_UP, (Rule.COME_UP, FSIS_COOKING_2021))]
    if record.hurried:
        found.append(_climb(record, REACH_140, (Rule.REACH_140, COMMON_PRACTICE)))
    return found


def _climb(record: Record, climb: Climb, rule: tuple[Rule, Source]) -> Finding:
    until = min(record.now, record.off_at or record.now)
    judged = judge_climb(climb, way_up(record, climb.to_f), record.meat_on_at, until)
    read = cook_readings(record)
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
        readings=tuple(r for r in judged.deciding if r in read),
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
        delicate=record.hurried,  # cured to its middle the hours of a fall count for the 6 h, as all hours do
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
    deadline = later(judged.readings[0].at, BACK_WITHIN) if open_still else None
    missing = "core_reading" if open_still else judged.missing
    return replace(judged, rule=rule, status=status, means=means, deadline=deadline, missing=missing)
