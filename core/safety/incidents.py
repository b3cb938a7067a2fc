"""What went wrong, judged by the facts that decide; the facts that nobody gave count as unknown.

`needed` is the short dialogue of each kind: the facts that decide, in the order in which they are asked.
Temperatures are in °C ("core_c", "room_c"), times in hours ("hours"), a dose in mg/kg ("mg_kg").
"""

from collections.abc import Callable
from dataclasses import replace
from typing import Final

from core.safety.come_up import danger_hours
from core.safety.cook import cook_readings, hours_on
from core.safety.findings import Finding, Outcome, Rule, Status
from core.safety.fire_out import HOT_F, LONGEST_BELOW, FireOut, judge_fire_out
from core.safety.fridge import HOT_DAY_F, TWO_HOURS
from core.safety.heat import brought_through
from core.safety.heat_shown import cold_until, heat_again, last_heat, said_hours
from core.safety.history import (
    Reading,
    first_at_or_above,
    hours_between,
    last_at_or_above,
    within,
)
from core.safety.left_out import (
    WHOLE_DOSE,
    Counter,
    Leak,
    PowerCut,
    Twice,
    judge_leak,
    judge_left_out,
    judge_power_cut,
    judge_twice,
    not_asked,
)
from core.safety.record import Incident, Record
from core.safety.told import asked, fresh_core, number, yes
from core.safety.warm import judge_warm
from core.sources import CFR_21_172, COMMON_PRACTICE
from core.units import Fraction, Hours, celsius_from_fahrenheit

EATERS: Final = "at_risk_eaters"  # a fact of the batch, not of the incident
_NEEDED: Final = {
    "fire_out": ("core_c",),
    "left_out": ("hours", "room_c", "core_c"),
    "power_cut": ("hours", "door_shut", "room_c", "ice_crystals", "core_c"),
    "warm_fridge": ("hours", "room_c"),
    "warm_brine": ("hours", "room_c"),
    "leaked": ("lost_fraction", "unnoticed_days"),
    "dosed_twice": ("mg_kg", EATERS),
}
_SAME: Final = {
    "leak": "leaked",
    "doubled_cure": "dosed_twice",
    "fridge_door_open": "warm_fridge",
    "brine_warm": "warm_brine",
    "fridge_warm": "warm_fridge",
}


def needed(incident: Incident, record: Record) -> tuple[str, ...]:
    """The facts that still decide it: the short dialogue.

    Parameters
    ----------
    incident
        What went wrong, with the facts that were told so far; a fact told as None is not asked again.
    record
        The batch to which it happened.

    Returns
    -------
    Names of facts in the order in which they are asked; none where it is settled.
    """
    finding = judge_incident(incident, record)
    if finding is None or (finding.status in (Status.PASSED, Status.FAILED) and finding.detail != "by_clock"):
        return ()
    if finding.rule is Rule.FIRE_OUT and finding.missing == "hours_out":
        return () if asked(incident, "hours") else ("hours",)
    if finding.detail == "by_clock":
        return () if "core_c" in incident.facts else ("core_c",)
    wanted = (fact for fact in _NEEDED[_kind(incident)] if fact == EATERS or not asked(incident, fact))
    return tuple(fact for fact in wanted if _matters(fact, finding, incident, record))


def _matters(fact: str, finding: Finding, incident: Incident, record: Record) -> bool:
    """Whether a fact of the list can still change what was found."""
    frozen = incident.facts.get("where", "fridge") != "fridge"
    return {
        "ice_crystals": frozen,
        "room_c": finding.rule is not Rule.POWER_CUT or finding.value is None or finding.value <= TWO_HOURS,
        "mg_kg": finding.detail != "not_in_yet",
        EATERS: record.at_risk_eaters is None and finding.detail == "over_limit",
    }.get(fact, True)


def judge_incident(incident: Incident, record: Record) -> Finding | None:
    """What it means.

    Parameters
    ----------
    incident
        What went wrong, with the facts that were told.
    record
        The batch to which it happened: readings and times count before what is only said.

    Returns
    -------
    The finding; None for a kind that is no question of safety by itself ("forgot_cure").
    """
    judge = _JUDGES.get(_kind(incident))
    return None if judge is None else judge(incident, record)


def _kind(incident: Incident) -> str:
    return _SAME.get(incident.what, incident.what)


def _fire_out(incident: Incident, record: Record) -> Finding:
    """The worst case runs from the last sign of heat to the first look after it, or to now."""
    readings = within(cook_readings(record), record.meat_on_at, record.off_at)
    before = within(readings, None, incident.at)
    good = last_at_or_above(HOT_F, before)
    seen = _seen(incident, [r for r in readings if (r.at > good.at if good else r.at >= incident.at)])
    shown = good or last_heat(incident, record, before)
    again = None if seen is None else first_at_or_above(HOT_F, [r for r in readings if r.at >= seen.at])
    still = None if good or seen is None else _still_out(incident, record, seen, list(readings))
    facts = FireOut(
        core=seen.celsius if seen else None,
        hours_below=_without_heat(incident, record, (good, shown, still or seen)),
        reached=good is not None,
        hours_since_on=hours_between(record.meat_on_at, again.at) if record.meat_on_at and again else hours_on(record),
        hours_in_all=danger_hours(readings).by_line,
        delicate=record.delicate,
        again=again is not None,
    )
    judged = judge_fire_out(facts, tuple(r for r in (shown, seen, still) if r is not None))
    if judged.detail == "still_hot" and heat_again(incident, record):
        judged = replace(judged, advice="")
    if judged.means is Outcome.CANNOT_SAY and incident.facts.get("unknown"):
        judged = replace(judged, means=Outcome.THROW_AWAY, advice="throw_away")
    return brought_through(judged, readings, Rule.FIRE_OUT)


def _still_out(incident: Incident, record: Record, seen: Reading, readings: list[Reading]) -> Reading | None:
    """The last reading that shows it still out after the look; none where the pit was hot again before that."""
    again = heat_again(incident, record)
    return None if again is not None and again.at <= seen.at else cold_until(seen, record, readings)


def _without_heat(
    incident: Incident, record: Record, signs: tuple[Reading | None, Reading | None, Reading | None]
) -> Hours | None:
    """From the last sign of heat to the look, of a core on its way up also to a pit that is hot again.

    `signs` are the last core at 140 °F, the last sign of heat, and the look or what shows it out after that. Without a
    sign from going on, while that is short, or by the cook's word. [h]
    """
    good, shown, seen = signs
    until = seen.at if seen else record.now
    if again := None if good else heat_again(incident, record):
        until = min(until, again.at)
    told = said_hours(incident, record)
    if shown is not None:
        return max(hours_between(shown.at, until), told or 0.0)
    if record.meat_on_at is None:
        return None
    since_on = hours_between(record.meat_on_at, until)
    return since_on if since_on <= LONGEST_BELOW else told


def _seen(incident: Incident, after: list[Reading]) -> Reading | None:
    """The core when it was found: what was said with it, else the first reading after the last good one."""
    said = number(incident, "core_c")
    if said is not None:
        return Reading(incident.at, said)
    return after[0] if after else None


def _left_out(incident: Incident, record: Record) -> Finding:
    """Nobody asked for the hours yet: a doubt; asked and not known, or overnight: thrown away."""
    told = Counter(number(incident, "hours"), number(incident, "room_c"), fresh_core(incident))
    judged = judge_left_out(told)
    known = asked(incident, "hours") or bool(incident.facts.get("overnight"))
    hot_day = judge_left_out(replace(told, air=celsius_from_fahrenheit(HOT_DAY_F)))
    if judged.detail == "in_time" and hot_day.detail != "in_time" and not asked(incident, "room_c"):
        return not_asked(Rule.LEFT_OUT, judged)
    return judged if known else replace(judged, means=Outcome.CANNOT_SAY)


def _power_cut(incident: Incident, record: Record) -> Finding:
    """By the worst that nobody denied; a doubt while a fact that could clear it was not asked for."""
    facts = PowerCut(
        hours=number(incident, "hours"),
        where=str(incident.facts.get("where") or "fridge"),
        door_shut=yes(incident, "door_shut"),
        core=fresh_core(incident),
        ice_crystals=yes(incident, "ice_crystals"),
        air=number(incident, "room_c"),
    )
    judged = judge_power_cut(facts)
    hot_day = judge_power_cut(replace(facts, air=celsius_from_fahrenheit(HOT_DAY_F)))
    if judged.detail == "in_time" and hot_day.detail != "in_time" and not asked(incident, "room_c"):
        return not_asked(Rule.POWER_CUT, judged)
    if judged.detail != "by_clock":
        return judged
    shut = judge_power_cut(replace(facts, door_shut=True))
    by_door = not asked(incident, "door_shut") and shut.status is Status.PASSED
    by_ice = facts.frozen and not asked(incident, "ice_crystals")
    told = asked(incident, "hours") and not by_door and not by_ice
    return judged if told else not_asked(Rule.POWER_CUT, judged)


def _leaked(incident: Incident, record: Record) -> Finding:
    """The leak began as long ago as the cook says, or as the meat has lain where nobody knows."""
    since = None if record.put_in_cure_at is None else hours_between(record.put_in_cure_at, incident.at) / 24.0
    said = number(incident, "unnoticed_days")
    unnoticed = since if said is None else said
    day = None if since is None else max(since - (since if said is None else said), 0.0)
    judged = judge_leak(Leak(number(incident, "lost_fraction"), day, unnoticed, record.wet, _room(incident, record)))
    by_time = not asked(incident, "unnoticed_days") and judged.detail in ("unnoticed", "restart", "no_fresh_dose")
    return not_asked(Rule.LEAK, judged) if by_time or not asked(incident, "lost_fraction") else judged


def _room(incident: Incident, record: Record) -> Fraction:
    """The share of the dose that may go in on top, were all that went in in the meat; none of an unknown dose."""
    dose = record.ingoing_mg_kg
    if dose is None:
        return 0.0
    if dose <= 0.0:
        return WHOLE_DOSE  # plain salt has no limit
    return record.nitrite_limit_mg_kg / dose - 1.0 - _topped_up(incident, record)


def _topped_up(incident: Incident, record: Record) -> Fraction:
    """The shares with which a brine was topped up before, each for a leak of its own."""
    before = [i for i in record.incidents if _kind(i) == "leaked" and i.at < incident.at]
    return sum(number(i, "lost_fraction") or 0.0 for i in before if _leaked(i, record).detail == "top_up")


def lost_cure(record: Record) -> frozenset[str]:
    """What became of the cure by its leaks: "partly_cured" and "no_fresh_dose" count as uncured."""
    return frozenset(_leaked(i, record).detail for i in record.incidents if _kind(i) == "leaked")


def _dosed_twice(incident: Incident, record: Record) -> Finding:
    """By the computed dose; without one, twice what the record holds."""
    dose = number(incident, "mg_kg")
    if dose is None and record.ingoing_mg_kg is not None:
        dose = 2.0 * record.ingoing_mg_kg
    if dose is None:
        doubt = (Status.UNKNOWN, Outcome.CANNOT_SAY)
        return Finding(Rule.DOSED_TWICE, *doubt, CFR_21_172, unit="mg/kg", missing="mg_kg", advice="throw_away_advised")
    into = record.put_in_cure_at
    hours_in = None if into is None else hours_between(into, incident.at)
    judged = judge_twice(Twice(dose, hours_in, record.wet), record.nitrite_limit_mg_kg, record.at_risk_eaters)
    known = asked(incident, "mg_kg") or judged.detail in ("over_400", "not_in_yet")
    return judged if known or judged.status is Status.PASSED else not_asked(Rule.DOSED_TWICE, judged)


def _warm_fridge(incident: Incident, record: Record) -> Finding:
    return judge_warm(Rule.WARM_FRIDGE, incident, record.fridge)


def _warm_brine(incident: Incident, record: Record) -> Finding:
    return judge_warm(Rule.WARM_BRINE, incident, record.brine)


def _spoiled(incident: Incident, record: Record) -> Finding:
    """What a nose, an eye or a finger says for sure outweighs every number of the record; the reverse never holds."""
    return Finding(Rule.SPOILED, Status.FAILED, Outcome.THROW_AWAY, COMMON_PRACTICE, advice="not_tasted")


_JUDGES: Final[dict[str, Callable[[Incident, Record], Finding]]] = {
    "fire_out": _fire_out,
    "left_out": _left_out,
    "power_cut": _power_cut,
    "leaked": _leaked,
    "dosed_twice": _dosed_twice,
    "warm_fridge": _warm_fridge,
    "warm_brine": _warm_brine,
    "spoiled": _spoiled,
}
