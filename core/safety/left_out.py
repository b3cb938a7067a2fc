"""Left out, power cut, leaked bag, dosed twice: the facts that decide, and the verdict by rule.

None stands for "nobody knows", and what nobody knows counts as the worst it can be. In doubt, it is thrown out.
"""

from dataclasses import dataclass, replace
from typing import Final

from core.safety.findings import Finding, Outcome, Rule, Status
from core.safety.fridge import MENDED_F, PART_OF_A_DAY, two_hour_limit
from core.safety.history import printed_f
from core.sources import (
    CFR_21_172,
    COMMON_PRACTICE,
    FSIS_DANGER_ZONE,
    JUDGEMENT,
    POWER_OUTAGE,
    SMALL_PLANT_STORAGE,
    Source,
)
from core.units import Celsius, Fahrenheit, Fraction, Hours, MilligramsPerKilogram

DOOR_SHUT_HOURS: Final = 4.0  # fridge, sources.POWER_OUTAGE
FREEZER_FULL_HOURS: Final = 48.0
FREEZER_HALF_HOURS: Final = 24.0
COLD_F: Final = 40.0
SMALL_LEAK: Final = 0.10  # of the liquid; common practice
FIRST_DAYS: Final = 2.0  # an unknown loss in the first days starts the cure again, where the limit lets it
WHOLE_DOSE: Final[Fraction] = 1.0  # what a cure that is begun anew takes once more
EARLY_LOSS_DAYS: Final = 1.0
UNNOTICED_DAYS: Final = 5.0
NOISE: Final = 1e-9  # a dose computed from its own limit comes back a few binary digits above it
CEILING: Final = 200.0  # mg/kg, sources.CFR_21_172
OUT_OF_QUESTION: Final = 400.0  # mg/kg; policy
POUR_OFF_HOURS: Final = 24.0  # little has gone in from a brine yet; common practice


@dataclass(frozen=True)
class Counter:
    """Meat that stood out of the cold: hours, the air [°C], and the core now [°C]."""

    hours: Hours | None
    air: Celsius | None = None
    core: Celsius | None = None


@dataclass(frozen=True)
class PowerCut:
    """A fridge ("fridge") or freezer ("freezer_full", "freezer_half") without power. [h]

    `door_shut` throughout; `core` of the meat or its brine when the power came back or still is off [°C];
    `ice_crystals` still in it; `air` of the room [°C], which makes the clock of an open door shorter.
    """

    hours: Hours | None
    where: str = "fridge"
    door_shut: bool | None = None
    core: Celsius | None = None
    ice_crystals: bool | None = None
    air: Celsius | None = None

    @property
    def frozen(self) -> bool:
        """Whether it stood in a freezer."""
        return self.where != "fridge"


@dataclass(frozen=True)
class Leak:
    """A bag that lost liquid: how much of it [-], when in the cure [d], how long nobody noticed [d], wet or dry.

    `room` is the largest share of the first dose that may go in on top: what the meat took already stays in it.
    """

    lost: Fraction | None
    day: float | None
    unnoticed_days: float | None = None
    wet: bool = True
    room: Fraction = 1.0


@dataclass(frozen=True)
class Twice:
    """A dose that went in twice: all of its nitrite [mg/kg], how long the meat has lain in it, and where. [h]

    `hours_in` is None where the meat is not in yet; `wet` a brine, which can be poured off, where a rub is in it whole.
    """

    ingoing: MilligramsPerKilogram
    hours_in: Hours | None
    wet: bool


def judge_left_out(facts: Counter) -> Finding:
    """The two-hour rule, one hour at 90 °F or above; raw or cooked, in brine or not. sources.FSIS_DANGER_ZONE

    With a core that is still as cold as a fridge that is mended, it is judged as that is.
    """
    limit = two_hour_limit(facts.air)
    if facts.core is not None and printed_f(facts.core) <= MENDED_F and _short(facts.hours, PART_OF_A_DAY):
        return _found(Rule.LEFT_OUT, "still_cool", facts.hours, PART_OF_A_DAY, SMALL_PLANT_STORAGE)
    if facts.hours is None:
        return _found(Rule.LEFT_OUT, "unknown_time", None, limit, FSIS_DANGER_ZONE)
    case = "in_time" if facts.hours <= limit else "too_long"
    return _found(Rule.LEFT_OUT, case, facts.hours, limit, FSIS_DANGER_ZONE)


def judge_power_cut(facts: PowerCut) -> Finding:
    """Four hours behind a shut door, two where it was opened, by the clock alone; only a cold core overrules it.

    A freezer keeps 48 h full and 24 h half full. sources.POWER_OUTAGE, sources.FSIS_DANGER_ZONE
    """
    limit = power_limit(facts)
    case = "in_time" if _short(facts.hours, limit) else "by_clock" if facts.core is None else "too_long"
    return _found(Rule.POWER_CUT, "still_cold" if _still_cold(facts) else case, facts.hours, limit, POWER_OUTAGE)


def power_limit(facts: PowerCut) -> Hours:
    """How long it may have been off. [h]

    What nobody knows of the door counts as open, and a warm core says that the shut door did not keep it: two hours.
    """
    warm_f: Fahrenheit = COLD_F if facts.frozen else MENDED_F
    if not facts.door_shut or (facts.core is not None and printed_f(facts.core) > warm_f):
        return two_hour_limit(facts.air)
    return {"freezer_full": FREEZER_FULL_HOURS, "freezer_half": FREEZER_HALF_HOURS}.get(facts.where, DOOR_SHUT_HOURS)


def judge_leak(facts: Leak) -> Finding:
    """A leaked bag is a question of the dose, and of safety only where the middle went without cure for days."""
    source = COMMON_PRACTICE
    topped = facts.wet and facts.lost is not None and facts.lost <= facts.room
    if facts.lost is not None and facts.lost < SMALL_LEAK:
        return _found(Rule.LEAK, "top_up" if topped else "small", facts.lost, SMALL_LEAK, source)
    early = facts.day is not None and facts.day <= EARLY_LOSS_DAYS
    if early and facts.unnoticed_days is not None and facts.unnoticed_days > UNNOTICED_DAYS:
        return _found(Rule.LEAK, "unnoticed", facts.unnoticed_days, UNNOTICED_DAYS, source)
    if facts.lost is not None and facts.wet:
        return _found(Rule.LEAK, "top_up" if topped else "partly_cured", facts.lost, SMALL_LEAK, source)
    if facts.day is None:
        return _found(Rule.LEAK, "when", None, FIRST_DAYS, source)  # the day decides what is to be done
    early_case = "restart" if facts.room >= WHOLE_DOSE else "no_fresh_dose"
    case = early_case if facts.day <= FIRST_DAYS else "partly_cured"
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
    if ingoing > limit * (1.0 + NOISE):
        return _found(rule, "over_at_risk" if at_risk else "over_limit", ingoing, limit, CFR_21_172)
    return _found(rule, "within_limit", ingoing, limit, CFR_21_172)


def unknown_dose(limit: MilligramsPerKilogram = CEILING) -> Finding:
    """Meat in a cure of which nobody knows how much went in: no evidence that it is under the ceiling. [mg/kg]"""
    return _found(Rule.NITRITE_CEILING, "unknown_dose", None, limit, CFR_21_172)


def judge_twice(facts: Twice, limit: MilligramsPerKilogram, at_risk: bool | None) -> Finding:
    """A dose that went in twice: by the sum, and by what can still be taken out; parameters as for `judge_nitrite`."""
    found = judge_nitrite(facts.ingoing, limit, at_risk, Rule.DOSED_TWICE)
    if found.status is Status.PASSED:
        return found
    if facts.hours_in is None:
        case = "not_in_yet"
    elif found.detail == "over_400":
        return found
    elif facts.wet:
        case = "pour_off" if facts.hours_in <= POUR_OFF_HOURS else found.detail
    else:
        case = "over_dry"
    return _found(Rule.DOSED_TWICE, case, facts.ingoing, limit, found.source)


_FIX: Final = (Status.PASSED, Outcome.SAFE)
_OUT: Final = (Status.FAILED, Outcome.THROW_AWAY)
_DOUBT: Final = (Status.UNKNOWN, Outcome.CANNOT_SAY)
_WAIT: Final = (Status.OPEN, Outcome.NOT_YET)
# case: how it stands and what it means, what to do, what is missing, the unit of its value; «not asked» has the
# unit of what is judged
_CASES: Final[dict[tuple[Rule, str], tuple[tuple[Status, Outcome], str, str, str]]] = {
    (Rule.LEFT_OUT, "in_time"): (_FIX, "into_the_fridge_now", "", "h"),
    (Rule.LEFT_OUT, "still_cool"): (_FIX, "into_the_fridge_now", "", "h"),
    (Rule.LEFT_OUT, "too_long"): (_OUT, "throw_away", "", "h"),
    (Rule.LEFT_OUT, "unknown_time"): ((Status.UNKNOWN, Outcome.THROW_AWAY), "throw_away", "hours_out", "h"),
    (Rule.LEFT_OUT, "not_asked"): (_DOUBT, "into_the_fridge_now", "", ""),
    (Rule.POWER_CUT, "still_cold"): (_FIX, "ice_and_go_on", "", "h"),
    (Rule.POWER_CUT, "in_time"): (_FIX, "ice_and_go_on", "", "h"),
    (Rule.POWER_CUT, "by_clock"): (_OUT, "unless_core_is_cold", "", "h"),
    (Rule.POWER_CUT, "too_long"): (_OUT, "throw_away", "", "h"),
    (Rule.POWER_CUT, "not_asked"): (_DOUBT, "read_the_core", "", ""),
    (Rule.LEAK, "not_asked"): (_DOUBT, "", "", ""),
    (Rule.NITRITE_CEILING, "unknown_dose"): (_DOUBT, "", "mg_kg", "mg/kg"),
    (Rule.DOSED_TWICE, "not_asked"): (_DOUBT, "throw_away_advised", "mg_kg", ""),
    (Rule.LEAK, "small"): (_FIX, "bag_again", "", "-"),
    (Rule.LEAK, "top_up"): (_FIX, "top_up_same_strength", "", "-"),
    (Rule.LEAK, "restart"): (_WAIT, "rinse_weigh_restart", "", "d"),
    (Rule.LEAK, "partly_cured"): (_FIX, "uncured_rules", "", "d"),
    (Rule.LEAK, "no_fresh_dose"): (_FIX, "no_fresh_dose", "", "d"),
    (Rule.LEAK, "when"): (_DOUBT, "", "day_of_the_leak", "d"),
    (Rule.LEAK, "unnoticed"): (_OUT, "throw_away", "", "d"),
}
_NITRITE_CASES: Final = {
    "within_limit": (_FIX, ""),
    "over_limit": (_DOUBT, "throw_away_advised"),
    "over_at_risk": (_OUT, "throw_away"),
    "over_400": (_OUT, "throw_away"),
    "over_dry": (_OUT, "throw_away"),
    "pour_off": (_WAIT, "pour_off_no_more_cure"),
    "not_in_yet": (_WAIT, "make_it_anew"),
}


def not_asked(rule: Rule, judged: Finding) -> Finding:
    """What the worst case says while the facts that decide were not asked for yet: a doubt, with its figures."""
    doubt = _found(rule, "not_asked", judged.value, judged.limit, judged.source)
    return replace(doubt, unit=judged.unit)


def _found(rule: Rule, case: str, value: float | None, limit: float | None, source: Source) -> Finding:
    if case in _NITRITE_CASES:
        (status, means), advice = _NITRITE_CASES[case]
        missing, unit = "", "mg/kg"
    else:
        (status, means), advice, missing, unit = _CASES[rule, case]
    return Finding(
        rule, status, means, source, value=value, limit=limit, unit=unit, missing=missing, detail=case, advice=advice
    )


def _still_cold(facts: PowerCut) -> bool:
    """Read at 40 °F or below; with no reading, ice crystals in what was frozen."""
    if facts.core is None:
        return bool(facts.ice_crystals) and facts.frozen
    limit: Fahrenheit = COLD_F
    return printed_f(facts.core) <= limit


def _short(hours: Hours | None, limit: Hours) -> bool:
    return hours is not None and hours <= limit
