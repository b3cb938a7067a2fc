"""Contexts in which lines are read, and the wall clock of the tests: Monday 1 March 2027, 08:30 in Vienna."""

import csv
from datetime import UTC, datetime
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from bot.intents.context import Context
from core.person import Units

ZONE = "Europe/Vienna"
POUNDS = Units("lb", "in", "f")
KILOS = Units()
NOW = datetime(2027, 3, 1, 7, 30, tzinfo=UTC)
PUBLISHED = Path(__file__).parent / "published" / "intents"


def wall(month: int, day: int, hour: int, minute: int = 0) -> datetime:
    """A wall time of 2027 in Vienna, as aware UTC."""
    return datetime(2027, month, day, hour, minute, tzinfo=ZoneInfo(ZONE)).astimezone(UTC)


MEAL = wall(3, 6, 13)  # the Saturday to come


def context(phase: str = "curing", units: Units = POUNDS, **more: Any) -> Context:
    """A context with a meal on Saturday at 13:00, where there is a batch."""
    more.setdefault("deadline", None if phase == "none" else MEAL)
    return Context(now=NOW, zone=ZONE, units=units, phase=phase, **more)


def rows(name: str) -> list[dict[str, str]]:
    """The rows of a table in tests/published/intents, its comment lines left out."""
    lines = (PUBLISHED / name).read_text("utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))
