"""What happened to a batch, one frozen dataclass a kind; append-only.

An `Event` says when it happened (`at`), when it was said (`said_at`), who said it and in which message.
A correction is an event like any other: it names the event it corrects and what stands instead.
"""

from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum
from typing import Any

from core.units import Celsius, Hours, Kilograms, Metres


class Probe(StrEnum):
    """Where a temperature was read."""

    CORE = "core"
    PIT = "pit"
    FRIDGE = "fridge"
    BRINE = "brine"
    ROOM = "room"


@dataclass(frozen=True)
class Started:
    """A batch was begun, with what was said of it."""

    name: str
    setup: dict[str, Any]


@dataclass(frozen=True)
class Changed:
    """Something of the setup was stated or changed.

    `anew` is what the house assumes with another product or cut; None where neither changes, and in older records.
    """

    changes: dict[str, Any]
    anew: dict[str, Any] | None = None


@dataclass(frozen=True)
class Assumed:
    """The house chose something of the setup that the cook left open, so that the meal can be had in time."""

    changes: dict[str, Any]


@dataclass(frozen=True)
class Done:
    """A step was done. `detail` is what was said with it ("foil", "tastes fine")."""

    step: str
    detail: str = ""


@dataclass(frozen=True)
class Skipped:
    """A step was left out on purpose."""

    step: str


@dataclass(frozen=True)
class Snoozed:
    """A step was put off until a time."""

    step: str
    until: datetime


@dataclass(frozen=True)
class Missed:
    """Steps of a kind that fell due in a span were forgotten."""

    steps: tuple[str, ...]


@dataclass(frozen=True)
class Read:
    """A temperature was read."""

    probe: Probe
    celsius: Celsius
    at_step: str = ""


@dataclass(frozen=True)
class Incident:
    """Something went wrong: fire out, power cut, left out, leak, dosed twice. `facts` is what was said of it."""

    what: str
    facts: dict[str, Any] = field(default_factory=dict)


@dataclass(frozen=True)
class Corrected:
    """Event number `target` was wrong. `instead` stands in its place, or nothing does (undo)."""

    target: int
    instead: "What | None" = None
    at: datetime | None = None

    @property
    def is_undo(self) -> bool:
        """Whether it puts nothing in the place of what it corrects."""
        return self.instead is None and self.at is None


@dataclass(frozen=True)
class Paused:
    """Quiet reminders rest until `until`, or until further notice, from `since` or now; safety goes on."""

    until: datetime | None = None
    since: datetime | None = None


@dataclass(frozen=True)
class Resumed:
    """Reminders run again."""


@dataclass(frozen=True)
class Weighed:
    """The finished piece was weighed."""

    mass: Kilograms


@dataclass(frozen=True)
class Sliced:
    """What the slice showed: `grey` is the width of grey in the middle, 0 when pink all through. [m]

    None is grey of which nobody said how wide it is.
    """

    grey: Metres | None
    of: Metres | None = None

    @property
    def pink(self) -> bool:
        """Whether it was pink all through."""
        return self.grey == 0.0


@dataclass(frozen=True)
class Tasted:
    """How salty: -1 bland, 0 right, +1 too salty."""

    salt: int


@dataclass(frozen=True)
class Handed:
    """From `since` on somebody else answers for something: "fire", "flips", "cure" (who weighs it) or "all".

    `person` and `chat` are theirs, `name` as it was typed; a chat of "" is every chat of the batch. `until` is the end
    that an invitation keeps for whoever takes it; what ends by itself is an event of its own.
    """

    task: str
    since: datetime
    person: str = ""
    name: str = ""
    chat: str = ""
    until: datetime | None = None


@dataclass(frozen=True)
class Took:
    """How long the piece was on the fire, as the cook says. [h]"""

    hours: Hours


@dataclass(frozen=True)
class Rated:
    """How it was, as a mark of so many, and the line in which it was told."""

    mark: float
    of: float = 10.0
    words: str = ""


@dataclass(frozen=True)
class Finished:
    """The batch is over. `how` is "eaten", "cancelled" or "thrown_away"."""

    how: str


What = (
    Started | Changed | Assumed | Done | Skipped | Snoozed | Missed | Read | Incident | Corrected
    | Paused | Resumed | Handed | Weighed | Sliced | Tasted | Took | Rated | Finished
)  # fmt: skip


@dataclass(frozen=True)
class Event:
    """One line of the log. `number` counts from 1 within the batch; `message` is the channel's key of what was said."""

    number: int
    at: datetime
    said_at: datetime
    by: str
    message: str
    what: What
