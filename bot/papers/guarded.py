"""The record as rows of comma-separated values (RFC 4180), which no spreadsheet takes for its own formulas.

A cell of words that begins with a sign of a formula gets an apostrophe before it. The byte order mark at the head tells
a spreadsheet that the letters are UTF-8.
"""

import csv
import io
from collections.abc import Iterator
from datetime import UTC, datetime
from typing import Final

from bot.measures import from_house
from bot.wording import numbers, recorded, records, safety
from bot.wording.language import say
from core.batch.batch_record import BatchRecord, Entry
from core.batch.events import Read, Weighed
from core.safety.findings import Finding
from core.units import Kilograms

FORMULA: Final = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
Cell = str | float
HEAD: Final = ("part", "time (ISO 8601)", "said (ISO 8601)", "who", "what", "where", "temperature ({degree})",
               "mass ({mass})", "nitrite (mg/kg)", "note", "source")  # fmt: skip


def rows(r: BatchRecord) -> bytes:
    """The rows, in the units of whose batch it is. [UTF-8]"""
    out = io.StringIO()
    written = csv.writer(out, lineterminator="\r\n")
    units = r.a.person.units
    degree = "°F" if units.temperature == "f" else "°C"
    written.writerow([name.format(degree=degree, mass=units.mass) for name in HEAD])
    for row in _all(r):
        written.writerow([guarded(row.get(name, "")) for name in HEAD])
    return out.getvalue().encode("utf-8-sig")


def guarded(cell: Cell) -> str:
    """A cell that is read as words; figures stay figures."""
    if not isinstance(cell, str):
        return f"{cell:.10g}"
    plain = "".join(c for c in cell if c.isprintable() or c == "\n")
    return f"'{plain}" if plain.lstrip(" \u00a0\n")[:1] in FORMULA and plain.strip() else plain


def _all(r: BatchRecord) -> Iterator[dict[str, Cell]]:
    now = _iso(r.as_of, r)
    yield {"part": "record", "what": say(records.NO_LICENCE)}
    yield {"part": "verdict", HEAD[1]: now, "what": records.verdict(r)}
    for v in r.verdicts:
        yield {"part": "verdict", HEAD[1]: _iso(v.at, r), "what": safety.lead(v.verdict), "where": v.step}
    yield {"part": "weight", "what": records.WEIGHED["meat"], **_mass(r.a.batch.setup.mass, r)}
    yield from _dose(r)
    yield from (_entry(e, r) for e in r.entries)
    yield from (_finding(f, r) for f in r.a.ledger.verdict.because)


def _dose(r: BatchRecord) -> Iterator[dict[str, Cell]]:
    d = r.a.dose
    if d is None:
        return
    strength = numbers.percent(d.nitrite_fraction)
    for name, kilograms in (("cure", d.cure_kg), ("salt", d.salt_kg), ("sugar", d.sugar_kg), ("water", d.water_kg)):
        if kilograms:
            yield {"part": "dose", "what": records.WEIGHED[name].format(strength=strength), **_mass(kilograms, r)}
    if d.limit is not None:
        yield {"part": "dose", "what": "; ".join(records.dose_lines(r)), HEAD[8]: d.nitrite_ingoing}
        yield {"part": "limit", "what": d.limit.jurisdiction, HEAD[8]: d.limit.max_mg_kg, "source": d.limit.where}


def _entry(e: Entry, r: BatchRecord) -> dict[str, Cell]:
    event = e.what or e.said
    row: dict[str, Cell] = {
        "part": "log", HEAD[1]: _iso(e.at, r), HEAD[2]: _iso(e.said_at, r), "who": recorded.who(r.member(e.by), r),
        "what": recorded.what(e, r), "note": recorded.note(e, r).replace("\n", " "),
    }  # fmt: skip
    match event:
        case Read(probe, celsius) if e.what is not None:
            shown = from_house(celsius, "f") if r.a.person.units.temperature == "f" else celsius
            return row | {"part": "temperature", "where": probe.value, HEAD[6]: float(shown)}
        case Weighed(mass) if e.what is not None:
            return row | _mass(mass, r)
        case _:
            return row


def _finding(f: Finding, r: BatchRecord) -> dict[str, Cell]:
    rule, state, amount, read, source = records.finding(f, r)
    when = _iso(f.readings[-1].at, r) if f.readings else ""
    note = "; ".join(x.replace("\n", " ") for x in (amount, read) if x != records.NOTHING)
    return {"part": "rule", HEAD[1]: when, "what": rule, "where": state, "note": note, "source": source}


def _mass(kilograms: Kilograms, r: BatchRecord) -> dict[str, Cell]:
    units = r.a.person.units
    return {HEAD[7]: from_house(kilograms, "lb") if units.mass == "lb" else float(kilograms)}


def _iso(moment: datetime, r: BatchRecord) -> str:
    """The local time with what it is ahead of UTC, to the second."""
    return moment.astimezone(UTC).astimezone(r.a.person.tz).isoformat(timespec="seconds")
