"""Where a figure or a rule comes from; the list is `core/sources.py`."""

from dataclasses import dataclass
from typing import Literal

Status = Literal["CONFIRMED", "MEMORY", "PRACTICE", "DERIVED", "TUNED"]


@dataclass(frozen=True)
class Source:
    """Where a figure or a rule comes from. x."""

    key: str
    title: str
    where: str
    year: str
    status: Status
