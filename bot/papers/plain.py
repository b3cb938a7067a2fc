"""The record as plain data (JSON): one unit a quantity, named in its key; times in UTC, with the zone beside.

`schema` names the form and its version: under the same version keys may be added, under a new one changed or dropped.
"""

import json
from collections.abc import Mapping
from dataclasses import asdict, fields, is_dataclass
from datetime import UTC, date, datetime, time, timedelta
from enum import StrEnum
from typing import Any, Final

from bot.facts import facts
from bot.wording import recorded, records
from bot.wording.language import say
from core.batch.batch_record import BatchRecord, Entry, VerdictThen
from core.safety.cooling import CoolingVerdict, RuleJudgement
from core.safety.findings import Finding
from core.safety.history import Reading
from core.sources import Source

SCHEMA: Final = {"name": "saltbell batch record", "version": 1}
UNITS: Final = {  # for what the log holds under a name that does not say its unit
    "mass": "mass_kg", "heaviest": "heaviest_kg", "thickness": "thickness_m", "celsius": "temperature_c",
    "grey": "grey_m", "of": "of_m", "nitrite_target": "nitrite_target_mg_kg", "put_in_cure": "put_in_cure_kg",
    "put_in_cure_most": "put_in_cure_most_kg", "put_in_pumped": "put_in_pumped_kg", "put_in_water": "put_in_water_kg",
    "put_in_salt": "put_in_salt_kg", "put_in_sugar": "put_in_sugar_kg",
    "hours": "duration_h", "mg_kg": "nitrite_mg_kg", "water_share": "water_share_kg_per_kg",
}  # fmt: skip


def plain(r: BatchRecord) -> bytes:
    """The record. [UTF-8]"""
    return json.dumps(_record(r), ensure_ascii=False, allow_nan=False, indent=1).encode()


def value(found: Any) -> Any:
    """Anything that is kept, as JSON knows it, with the unit in each key; one of our own nouns says its kind."""
    match found:
        case StrEnum():
            return found.value
        case datetime():
            return _iso(found)
        case date() | time():
            return found.isoformat()
        case timedelta():
            return found.total_seconds()
        case Mapping():
            return {_key(key, v): value(v) for key, v in found.items()}
        case tuple() | list():
            return [value(v) for v in found]
        case frozenset() | set():
            return sorted(value(v) for v in found)
        case _ if is_dataclass(found):
            held = {field.name: getattr(found, field.name) for field in fields(found)}
            return {"kind": type(found).__name__.lower(), **value(held)}
        case _:
            return found


def _key(key: str, v: Any) -> str:
    return UNITS.get(key, key) if isinstance(v, int | float) and not isinstance(v, bool) else key


def _record(r: BatchRecord) -> dict[str, Any]:
    v, figures = r.a.ledger.verdict, facts(r.a)
    return {
        "schema": SCHEMA,
        "notice": say(records.NO_LICENCE),
        "zone": r.a.person.zone,
        "made_at": _iso(r.made_at),
        "judged_as_of": _iso(r.as_of),
        "members": [{"number": m.number, "name": recorded.who(m, r)} for m in r.members],
        "figures": {key: found for key, found in figures.items() if key != "batch"},
        "dose_sum": None if r.dose is None else asdict(r.dose),
        "log": [_entry(e) for e in r.entries],
        "verdict": {"kind": v.kind.value, "says": records.verdict(r)},
        "verdicts_then": [_then(one) for one in r.verdicts],
        "rules": [_finding(f) for f in v.because],
        "cooling": _cooling(r.a.ledger.cooling),
    }


def _entry(e: Entry) -> dict[str, Any]:
    return {
        "number": e.number,
        "at": _iso(e.at),
        "said_at": _iso(e.said_at),
        "by_member": e.by,
        "what": None if e.what is None else value(e.what),
        "taken_back": e.what is None,
        "said_first": value(e.said) if e.said != e.what else None,
        "amended_at": None if e.amended is None else _iso(e.amended),
        "amended_by_member": e.amended_by,
    }


def _then(one: VerdictThen) -> dict[str, Any]:
    deciding = one.verdict.deciding
    return {"step": one.step, "at": _iso(one.at), "kind": one.verdict.kind.value, "rule": deciding.rule.value}


def _finding(f: Finding) -> dict[str, Any]:
    return {
        "rule": f.rule.value,
        "status": f.status.value,
        "means": f.means.value,
        # a kill table vouches for no more than it prints
        "value": min(f.value, f.limit) if f.unit == "log" and f.value is not None and f.limit is not None else f.value,
        "limit": f.limit,
        "unit": f.unit or None,
        "deadline": None if f.deadline is None else _iso(f.deadline),
        "readings": [_reading(x) for x in f.readings],
        "missing": f.missing or None,
        "source": _source(f.source),
    }


def _cooling(found: CoolingVerdict | None) -> list[dict[str, Any]]:
    return [] if found is None else [_rule(j, decided=j is found.decided_by) for j in found.rules]


def _rule(j: RuleJudgement, *, decided: bool) -> dict[str, Any]:
    stages = [
        {
            "from_f": s.stage.from_f,
            "to_f": s.stage.to_f,
            "max_h": s.stage.max_h,
            "status": s.status.value,
            "at_most_h": s.hours_at_most,
            "started": None if s.started is None else _reading(s.started),
            "ended": None if s.ended is None else _reading(s.ended),
        }
        for s in j.stages
    ]
    kept = {"key": j.rule.key, "status": j.status.value, "conditions": j.conditions.value, "decided": decided}
    return {**kept, "stages": stages, "source": _source(j.rule.source)}


def _reading(x: Reading) -> dict[str, Any]:
    return {"at": _iso(x.at), "temperature_c": x.celsius}


def _source(s: Source) -> dict[str, str]:
    return {"title": s.title, "where": s.where, "year": s.year, "status": s.status}


def _iso(moment: datetime) -> str:
    return moment.astimezone(UTC).isoformat()
