"""Left out, power cut, leaked bag, dosed twice: the facts that decide, and the verdict by rule.

None stands for "nobody knows", and what nobody knows counts as the worst it can be. In doubt, it is thrown out.
"""

from dataclasses import dataclass
from typing import Final

from core.safety.findings import Finding, Outcome, Rule, Status
from core.safety.fridge import two_hour_limit
from core.safety.history import printed_f
from core.sources import (
    CFR_21_172,
    COMMON_PRACTICE,
    FSIS_DANGER_ZONE,
    JUDGEMENT,
    POWER_OUTAGE,
    Source,
)
from core.units import Celsius, Fahrenheit, Fraction, Hours, MilligramsPerKilogram

COUNTER_COOL_F: Final = 50.0  # proven below it by a reading, the counter is judged as a warm fridge
DOOR_SHUT_HOURS: Final = 4.0  # fridge, sources.POWER_OUTAGE
FREEZER_FULL_HOURS: Final = 48.0
FREEZER_HALF_HOURS: Final = 24.0
COLD_F: Final = 40.0
SMALL_LEAK: Final = 0.10  # of the liquid; common practice
FIRST_DAYS: Final = 2.0  # an unknown loss in the first days starts the cure again
EARLY_LOSS_DAYS: Final = 1.0
UNNOTICED_DAYS: Final = 5.0
CEILING: Final = 200.0  # mg/kg, sources.CFR_21_172
OUT_OF_QUESTION: Final = 400.0  # mg/kg; policy


@dataclass(frozen=True)
class Counter:
    """Meat that stood out of the cold: hours, the air [°C], and the core now [°C]."""

    hours: Hours | None
    air: Celsius | None = None
    core: Celsius | None = None


@dataclass(frozen=True)
class PowerCut:
    """A fridge ("fridge") or freezer ("freezer_full", "freezer_half") without power. [h]

    `door_shut` throughout; `core` of the meat or its brine now [°C]; `ice_crystals` still in it.
    """

    hours: Hours | None
    where: str = "fridge"
    door_shut: bool | None = None
    core: Celsius | None = None
    ice_crystals: bool | None = None


@dataclass(frozen=True)
class Leak:
    """A bag that lost liquid: how much of it [-], when in the cure [d], how long nobody noticed [d], wet or dry."""

    lost: Fraction | None
    day: float | None
    unnoticed_days: float | None = None
    wet: bool = True


def judge_left_out(facts: Counter) -> Finding:
    """The two-hour rule, one hour at 90 °F or above; raw or cooked, in brine or not. sources.FSIS_DANGER_ZONE"""
    limit = two_hour_limit(facts.air)
    if facts.core is not None and printed_f(facts.core) <= COUNTER_COOL_F and _short(facts.hours, 24.0):
        return _found(Rule.LEFT_OUT, "still_cool", facts.hours, limit, FSIS_DANGER_ZONE)
    if facts.hours is None:
        return _found(Rule.LEFT_OUT, "unknown_time", None, limit, FSIS_DANGER_ZONE)
    case = "in_time" if facts.hours <= limit else "too_long"
    return _found(Rule.LEFT_OUT, case, facts.hours, limit, FSIS_DANGER_ZONE)


def judge_power_cut(facts: PowerCut) -> Finding:
    """Four hours behind a shut door; then the core decides. A freezer keeps 48 h full, 24 h half full."""
    limit = _power_limit(facts.where)
    if _still_cold(facts):
        return _found(Rule.POWER_CUT, "still_cold", facts.hours, limit, POWER_OUTAGE)
    if facts.core is not None and facts.where != "fridge":
        case = "warm" if _short(facts.hours, limit) and facts.door_shut else "too_long"
        return _found(Rule.POWER_CUT, case, facts.hours, limit, POWER_OUTAGE)
    if facts.door_shut and _short(facts.hours, limit):
        return _found(Rule.POWER_CUT, "in_time", facts.hours, limit, POWER_OUTAGE)
    if facts.core is None:
        return _found(Rule.POWER_CUT, "read_it", facts.hours, limit, POWER_OUTAGE)
    return _found(Rule.POWER_CUT, "too_long", facts.hours, limit, POWER_OUTAGE)


def judge_leak(facts: Leak) -> Finding:
    """A leaked bag is a question of the dose, and of safety only where the middle went without cure for days."""
    source = COMMON_PRACTICE
    early = facts.day is not None and facts.day <= EARLY_LOSS_DAYS
    if early and (facts.unnoticed_days or 0.0) > UNNOTICED_DAYS:
        return _found(Rule.LEAK, "unnoticed", facts.unnoticed_days, UNNOTICED_DAYS, source)
    if facts.lost is not None and facts.lost < SMALL_LEAK:
        return _found(Rule.LEAK, "top_up" if facts.wet else "small", facts.lost, SMALL_LEAK, source)
    if facts.lost is not None and facts.wet:
        return _found(Rule.LEAK, "top_up", facts.lost, SMALL_LEAK, source)
    if facts.day is None:
        return _found(Rule.LEAK, "when", None, FIRST_DAYS, source)
    case = "restart" if facts.day <= FIRST_DAYS else "partly_cured"
    return _found(Rule.LEAK, case, facts.day, FIRST_DAYS, source)


def judge_nitrite(
    ingoing: MilligramsPerKilogram,
    limit: MilligramsPerKilogram = CEILING,
    at_risk: bool | None = None,
    rule: Rule = Rule.NITRITE_CEILING,
) -> Finding:
    """Meat that has already taken so much nitrite, computed, whoever says what they are doing.

    Parameters
    ----------
    ingoing
        Nitrite put in, by the base of its method. [mg/kg]
    limit
        The ceiling of the jurisdiction and product. [mg/kg]
    at_risk
        Whether children, pregnant, old or weak people eat; None is not known.
    rule
        Under which name it is reported.
    """
    if ingoing > OUT_OF_QUESTION:
        return _found(rule, "over_400", ingoing, limit, JUDGEMENT)
    if ingoing > limit:
        return _found(rule, "over_at_risk" if at_risk else "over_limit", ingoing, limit, CFR_21_172)
    return _found(rule, "within_limit", ingoing, limit, CFR_21_172)


_FIX: Final = (Status.PASSED, Outcome.SAFE)
_OUT: Final = (Status.FAILED, Outcome.THROW_AWAY)
_DOUBT: Final = (Status.UNKNOWN, Outcome.CANNOT_SAY)
# case: how it stands and what it means, what to do, what is missing, the unit of its value
_CASES: Final[dict[tuple[Rule, str], tuple[tuple[Status, Outcome], str, str, str]]] = {
    (Rule.LEFT_OUT, "in_time"): (_FIX, "into_the_fridge_now", "", "h"),
    (Rule.LEFT_OUT, "still_cool"): (_FIX, "into_the_fridge_now", "", "h"),
    (Rule.LEFT_OUT, "too_long"): (_OUT, "throw_away", "", "h"),
    (Rule.LEFT_OUT, "unknown_time"): ((Status.UNKNOWN, Outcome.THROW_AWAY), "throw_away", "hours_out", "h"),
    (Rule.POWER_CUT, "still_cold"): (_FIX, "ice_and_go_on", "", "h"),
    (Rule.POWER_CUT, "in_time"): (_FIX, "ice_and_go_on", "", "h"),
    (Rule.POWER_CUT, "warm"): (_DOUBT, "throw_away", "hours_above_40f", "h"),
    (Rule.POWER_CUT, "read_it"): (_DOUBT, "read_the_core", "core_reading", "h"),
    (Rule.POWER_CUT, "too_long"): (_OUT, "throw_away", "", "h"),
    (Rule.LEAK, "small"): (_FIX, "bag_again", "", "-"),
    (Rule.LEAK, "top_up"): (_FIX, "top_up_same_strength", "", "-"),
    (Rule.LEAK, "restart"): ((Status.OPEN, Outcome.NOT_YET), "rinse_weigh_restart", "", "d"),
    (Rule.LEAK, "partly_cured"): (_FIX, "uncured_rules", "", "d"),
    (Rule.LEAK, "when"): (_DOUBT, "rinse_weigh_restart", "day_of_the_leak", "d"),
    (Rule.LEAK, "unnoticed"): (_OUT, "throw_away", "", "d"),
}
_NITRITE_CASES: Final = {
    "within_limit": (_FIX, ""),
    "over_limit": (_DOUBT, "throw_away_advised"),
    "over_at_risk": (_OUT, "throw_away"),
    "over_400": (_OUT, "throw_away"),
}


def _found(rule: Rule, case: str, value: float | None, limit: float, source: Source) -> Finding:
    if case in _NITRITE_CASES:
        (status, means), advice = _NITRITE_CASES[case]
        missing, unit = "", "mg/kg"
    else:
        (status, means), advice, missing, unit = _CASES[rule, case]
    return Finding(
        rule, status, means, source, value=value, limit=limit, unit=unit, missing=missing, detail=case, advice=advice
    )


def _power_limit(where: str) -> Hours:
    return {"freezer_full": FREEZER_FULL_HOURS, "freezer_half": FREEZER_HALF_HOURS}.get(where, DOOR_SHUT_HOURS)


def _still_cold(facts: PowerCut) -> bool:
    """Ice crystals in it, or read at 40 °F or below."""
    if facts.ice_crystals and facts.where != "fridge":
        return True
    limit: Fahrenheit = COLD_F
    return facts.core is not None and printed_f(facts.core) <= limit


def _short(hours: Hours | None, limit: Hours) -> bool:
    return hours is not None and hours <= limit
