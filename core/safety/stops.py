"""The stops that words cannot pass: a key, its rule with source, its figures, and what can be done instead.

They take no argument on purpose. "I know what I am doing" gets the same figures as anybody.
"""

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any

from core.errors import Gone, Unreadable
from core.safety.cautions import Caution, caution
from core.sources import Source, every_source

FILE = "stops.toml"


@dataclass(frozen=True)
class Stop:
    """One stop. `figures` are (name with unit, number); an `emergency` ends with a number to call and nothing more."""

    key: str
    source: Source
    caution: Caution
    instead: str
    figures: tuple[tuple[str, float], ...]
    emergency: bool


def stop(key: str) -> Stop:
    """The stop of that key; raises Gone where there is none."""
    found = every_stop().get(key)
    if found is None:
        raise Gone(f"stop {key}")
    return found


@cache
def every_stop() -> dict[str, Stop]:
    """Every stop by its key, read once; raises Unreadable where a line is not as its head says."""
    text = (files("core.safety") / FILE).read_text(encoding="utf-8")
    return {key: _stop(key, line) for key, line in tomllib.loads(text).items()}


def _stop(key: str, line: dict[str, Any]) -> Stop:
    try:
        figures = tuple((name, float(value)) for name, value in line.get("figures", {}).items())
        rule, told = every_source()[line["source"]], caution(line["caution"])
        return Stop(key, rule, told, line["instead"], figures, bool(line.get("emergency", False)))
    except (KeyError, ValueError, Gone) as wrong:
        raise Unreadable(FILE, key, str(wrong)) from wrong
