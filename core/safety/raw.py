"""While the meat is raw: its fridge, its brine, its days, and how much nitrite it took."""

from datetime import datetime
from typing import Final

from core.safety.findings import Finding, Outcome, Rule, Status
from core.safety.fridge import Window, judge_brine, judge_fridge
from core.safety.history import hours_between
from core.safety.left_out import judge_nitrite, unknown_dose
from core.safety.record import Record
from core.safety.storage import Keeping, keeping, raw_line
from core.sources import COMMON_PRACTICE
from core.units import SECONDS_PER_DAY, SECONDS_PER_HOUR, Days

LONGEST_CURE: Final = 28.0  # d; common practice: past it quality and certainty go
_HOURS_PER_DAY: Final = SECONDS_PER_DAY / SECONDS_PER_HOUR


def raw_findings(record: Record) -> tuple[Finding, ...]:
    """What the record says of the time before the fire."""
    found = [_fridge(record), _brine(record), _nitrite(record), *_days(record)]
    return tuple(f for f in found if f is not None)


def _window(record: Record, what: str) -> Window | None:
    since = record.put_in_cure_at
    if since is None or since > record.now:
        return None
    return Window(since, record.meat_on_at, record.now, "fridge_cold" in record.vouched, record.said_cold(what))


def _fridge(record: Record) -> Finding | None:
    window = _window(record, "warm_fridge")
    return None if window is None else judge_fridge(record.fridge, window)


def _brine(record: Record) -> Finding | None:
    window = _window(record, "warm_brine")
    return None if window is None else judge_brine(record.brine, window)


def _nitrite(record: Record) -> Finding | None:
    """A dose that nobody knows is a doubt from the hour in which the meat went into it."""
    if record.ingoing_mg_kg is None:
        asked = record.put_in_cure_at is not None and not record.without_cure
        return unknown_dose(record.nitrite_limit_mg_kg) if asked else None
    if not _cured_or_later(record):
        return None
    return judge_nitrite(record.ingoing_mg_kg, record.nitrite_limit_mg_kg, record.at_risk_eaters)


def _cured_or_later(record: Record) -> bool:
    """Whether the meat went into the cure, or a later step says that it must have: a mix alone is no meat."""
    later = (record.put_in_cure_at, record.out_at, record.meat_on_at, record.off_at)
    return any(at is not None for at in later)


def _days(record: Record) -> list[Finding]:
    """Days raw in the fridge: uncured from the start, cured from the day on which it came out of the cure."""
    until = record.meat_on_at or record.now
    found: list[Finding] = []
    if record.put_in_cure_at is not None and (record.ingoing_mg_kg == 0.0 or record.without_cure):
        found.append(_kept(keeping(raw_line(record.species), "raw"), record.put_in_cure_at, until))
    elif record.out_at is not None:
        found.append(_kept(keeping("fish" if record.fish else "corned_beef", "raw"), record.out_at, until))
    if record.put_in_cure_at is not None:
        found += _too_long(_days_between(record.put_in_cure_at, record.out_at or until))
    return found


def _kept(line: Keeping, since: datetime, until: datetime) -> Finding:
    days = _days_between(since, until)
    status, means = Status.PASSED, Outcome.SAFE
    if days > line.days:
        status, means = Status.UNKNOWN, Outcome.CANNOT_SAY
    if days > line.longest:
        status, means = Status.FAILED, Outcome.THROW_AWAY
    return Finding(
        Rule.RAW_KEEPING, status, means, line.source, value=days, limit=line.days, unit="d", detail=line.line
    )


def _too_long(days: Days) -> list[Finding]:
    if days <= LONGEST_CURE:
        return []
    doubt = (Status.UNKNOWN, Outcome.CANNOT_SAY)
    return [Finding(Rule.LONGEST_CURE, *doubt, COMMON_PRACTICE, value=days, limit=LONGEST_CURE, unit="d")]


def _days_between(since: datetime, until: datetime) -> Days:
    return hours_between(since, until) / _HOURS_PER_DAY
