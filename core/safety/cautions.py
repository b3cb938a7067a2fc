"""A caution: how grave it is, which facts it carries, and on which source it rests. Words are made at the rim."""

from dataclasses import dataclass
from enum import StrEnum

from core.sources import Source


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
