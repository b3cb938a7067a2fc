"""A caution: how grave it is, which facts it carries, and on which source it rests. Words are made at the rim.

Every caution there is stands in `cautions.toml`, with the places in the week where it belongs.
"""

import tomllib
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import cache
from importlib.resources import files
from typing import Any

from core.errors import Gone, Unreadable
from core.sources import Source, every_source

FILE = "cautions.toml"


class Severity(StrEnum):
    """How grave: a note is said once, a warning stands beside the number, a stop ends the matter."""

    NOTE = "note"
    WARNING = "warning"
    STOP = "stop"


@dataclass(frozen=True)
class Caution:
    """One caution, by its key ("nitrite_weigh_exactly"); `facts` are the numbers its words need."""

    key: str
    severity: Severity
    source: Source
    facts: tuple[tuple[str, float], ...] = ()


@dataclass(frozen=True)
class Entry:
    """One line of the register: the caution and where it belongs.

    `again` is repeated when it matters. `found` is given only where a computation finds it, with its numbers
    and, for a dose, with the source of the limit that counts.
    """

    caution: Caution
    at: tuple[str, ...]
    again: bool
    found: bool


def for_step(kind: str) -> tuple[Caution, ...]:
    """The cautions that always belong to a kind of step or a place ("dose", "poultry"), the gravest first."""
    order = tuple(Severity)
    found = [entry.caution for entry in register().values() if kind in entry.at and not entry.found]
    return tuple(sorted(found, key=lambda c: -order.index(c.severity)))


def caution(key: str, **facts: float) -> Caution:
    """The caution of that key, with the numbers its words need; raises Gone where there is none."""
    entry = register().get(key)
    if entry is None:
        raise Gone(f"caution {key}")
    return replace(entry.caution, facts=tuple(facts.items()))


def every_caution() -> tuple[Caution, ...]:
    """Every caution there is, in the order of the register."""
    return tuple(entry.caution for entry in register().values())


@cache
def register() -> dict[str, Entry]:
    """The register by key, read once; raises Unreadable where a line is not as its head says."""
    text = (files("core.safety") / FILE).read_text(encoding="utf-8")
    return {key: _entry(key, line) for key, line in tomllib.loads(text).items()}


def _entry(key: str, line: dict[str, Any]) -> Entry:
    try:
        told = Caution(key, Severity(line["severity"]), every_source()[line["source"]])
        return Entry(told, tuple(line["at"]), bool(line.get("again", False)), bool(line.get("found", False)))
    except (KeyError, ValueError) as wrong:
        raise Unreadable(FILE, key, str(wrong)) from wrong
