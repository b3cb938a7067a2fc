"""Step and Plan: what is done, and when.

A step's `key` is stable from one derivation of the plan to the next, so that a reminder, a button and an
event mean the same step though its time has moved. Steps that come once have their kind as key
("rinse"); steps that come often carry their number ("flip/3").
"""

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from core.units import Hours


class Kind(StrEnum):
    """The kinds of step, in the order of the week."""

    THAW = "thaw"
    BRINE = "brine"
    BRINE_CHECK = "brine_check"
    INTO_CURE = "into_cure"
    FLIP = "flip"
    FRIDGE_CHECK = "fridge_check"
    MID_CHECK = "mid_check"
    OUT = "out"
    RINSE = "rinse"
    SOAK = "soak"
    EVEN = "even"
    DRY = "dry"
    RUB = "rub"
    LIGHT = "light"
    MEAT_ON = "meat_on"
    READING = "reading"
    WRAP = "wrap"
    OFF = "off"
    REST = "rest"
    CHILL = "chill"
    CHILL_CHECK = "chill_check"
    SLICE = "slice"
    SERVE = "serve"
    DEBRIEF = "debrief"
    USE_BY = "use_by"


class State(StrEnum):
    """Where a step stands."""

    DONE = "done"
    SKIPPED = "skipped"
    DUE = "due"
    AHEAD = "ahead"


class Urgency(StrEnum):
    """How loud a step may be: quiet keeps the quiet hours, piercing breaks them."""

    QUIET = "quiet"
    NORMAL = "normal"
    PIERCING = "piercing"


@dataclass(frozen=True)
class Step:
    """One thing to do. Times are aware UTC; `due` is when the person should act.

    `early` and `late` are the 10 % and 90 % times where the time is an estimate. `put_off` says that the
    person named `due`: it is no estimate, and is kept to the minute. `within` is the key of an earlier step that
    nobody has confirmed: this one is not called for by itself, but named when that one is.
    """

    key: str
    kind: Kind
    due: datetime
    urgency: Urgency = Urgency.NORMAL
    state: State = State.AHEAD
    done_at: datetime | None = None
    early: datetime | None = None
    late: datetime | None = None
    minutes: float = 0.0
    note: str = ""
    put_off: bool = False
    within: str = ""


@dataclass(frozen=True)
class Band:
    """An estimate as its 10 %, 50 % and 90 % points, in the unit of its name."""

    p10: float
    p50: float
    p90: float


@dataclass(frozen=True)
class TimeBand:
    """A time as its 10 %, 50 % and 90 % points, aware UTC."""

    p10: datetime
    p50: datetime
    p90: datetime


@dataclass(frozen=True)
class Durations:
    """What the solvers say of this piece: the only thing the schedule needs to know of physics.

    `cure` in days (its 90 % point is the advice), everything else in hours but `keep_days`.
    """

    cure: Band
    cook: Band
    rest: Hours
    chill: Hours
    lighting: Hours = 1.0
    thaw: Hours = 0.0
    keep_days: int = 3


@dataclass(frozen=True)
class Plan:
    """The whole week, derived from the batch and the time; never patched."""

    steps: tuple[Step, ...]
    serve: datetime
    wanted: datetime | None
    cure_days: float

    @property
    def late(self) -> timedelta:
        """How much later than asked for the meal is; zero where it is not."""
        if self.wanted is None:
            return timedelta(0)
        return max(self.serve - self.wanted, timedelta(0))

    def step(self, key: str) -> Step | None:
        """The step of that key, if the plan has one."""
        return next((s for s in self.steps if s.key == key), None)

    def of_kind(self, kind: Kind) -> tuple[Step, ...]:
        """Every step of a kind, in order."""
        return tuple(s for s in self.steps if s.kind is kind)

    def named_with(self, key: str) -> tuple[Step, ...]:
        """The steps that wait for the step of a key to be confirmed, in order."""
        return tuple(s for s in self.steps if s.within == key and s.state in (State.DUE, State.AHEAD))

    def next_step(self) -> Step | None:
        """The first step that waits to be done."""
        return next((s for s in self.steps if s.state in (State.DUE, State.AHEAD)), None)
