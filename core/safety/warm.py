"""A fridge or brine that was warm, by what the cook tells of it and by what was read in those hours."""

from core.safety.findings import Finding, Outcome, Rule, Status
from core.safety.fridge import COLD_F, HOT_DAY_HOURS, MENDED_F, PART_OF_A_DAY, two_hour_limit
from core.safety.history import History, Reading, later, ordered, printed_f, within
from core.safety.record import Incident
from core.safety.told import asked, number
from core.sources import FSIS_DANGER_ZONE, SMALL_PLANT_STORAGE
from core.units import Celsius, Hours


def judge_warm(rule: Rule, incident: Incident, read: History) -> Finding:
    """Up to 44.6 °F part of a day is mended; warmer, or nobody knows how warm or how long, the two-hour rule."""
    hours = number(incident, "hours")
    warm = _warmest(incident, read)
    mended = warm is not None and printed_f(warm) <= MENDED_F
    limit = PART_OF_A_DAY if mended else two_hour_limit(warm)
    status, means = _status(hours, limit, told=asked(incident, "hours"))
    longer = means is Outcome.THROW_AWAY or (hours is not None and hours > HOT_DAY_HOURS)
    within_a_day = hours is None or hours <= PART_OF_A_DAY
    if longer and within_a_day and warm is None and not asked(incident, "room_c"):
        status, means = Status.UNKNOWN, Outcome.CANNOT_SAY
    return Finding(
        rule=rule,
        status=status,
        means=means,
        source=SMALL_PLANT_STORAGE if mended else FSIS_DANGER_ZONE,
        readings=() if warm is None else (Reading(incident.at, warm),),
        deadline=later(incident.at, limit) if status is Status.UNKNOWN else None,
        value=hours,
        limit=limit,
        unit="h",
        missing="hours_above_40f" if status is Status.UNKNOWN else "",
        detail="mended" if mended else "two_hours",
        advice="fridge_colder" if means is Outcome.SAFE else "throw_away",
    )


def _warmest(incident: Incident, read: History) -> Celsius | None:
    """The warmest that was told, or read above 40 °F in the hours before it was told; None where neither. [°C]"""
    told, hours = number(incident, "room_c"), number(incident, "hours")
    since = later(incident.at, -(hours or 0.0))
    seen = [r.celsius for r in within(ordered(read), since, incident.at) if printed_f(r.celsius) > COLD_F]
    return max([*seen, *([] if told is None else [told])], default=None)


def _status(hours: Hours | None, limit: Hours, *, told: bool) -> tuple[Status, Outcome]:
    """Not asked yet is a doubt; asked and not known is thrown away."""
    if hours is None:
        return Status.UNKNOWN, Outcome.THROW_AWAY if told else Outcome.CANNOT_SAY
    return (Status.PASSED, Outcome.SAFE) if hours <= limit else (Status.FAILED, Outcome.THROW_AWAY)
