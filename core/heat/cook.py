"""What is known of a cook: the piece, the cooker, and what was seen since the meat went on.

Times are seconds since the meat went on; temperatures °C. The batch turns its events into these.
"""

from dataclasses import dataclass
from typing import Literal

from core.errors import OutOfRange
from core.meat.piece import Piece
from core.person import Habit
from core.units import Celsius, Metres, Seconds

WrapKind = Literal["none", "paper", "foil"]
Probe = Literal["core", "pit"]

PIT_LOW_C, PIT_HIGH_C = 60.0, 200.0
TARGET_LOW_C, TARGET_HIGH_C = 40.0, 99.0
PIT_OVER_K = 5.0  # a core that has to come so near its pit never does


@dataclass(frozen=True)
class Cook:
    """One piece in one cooker, to a core temperature.

    Parameters
    ----------
    pit_c
        Set point of the pit. [°C] 60 to 200
    start_c
        Temperature of the meat when it goes on. [°C]
    target_c
        Core temperature at which it is ready. [°C] 40 to 99, and below the pit
    altitude_m
        [m] Water boils colder higher up.
    habits
        What earlier cooks on this cooker taught of its film, pit, air and walls (`core.heat.carried`).
    log_shift, log_sd
        What earlier cooks on this cooker taught: mean and standard deviation of ln(true / predicted
        hours). `log_sd` 0: nothing learned, the model's own band stands. [-]

    Raises
    ------
    OutOfRange
        The set point or the target is not one the model holds for.
    """

    piece: Piece
    cooker: str = "ceramic"
    pit_c: Celsius = 121.0
    start_c: Celsius = 4.0
    target_c: Celsius = 93.0
    altitude_m: Metres = 0.0
    log_shift: float = 0.0
    log_sd: float = 0.0
    habits: tuple[Habit, ...] = ()

    def __post_init__(self) -> None:
        if not PIT_LOW_C <= self.pit_c <= PIT_HIGH_C:
            raise OutOfRange("pit", self.pit_c, PIT_LOW_C, PIT_HIGH_C, "°C")
        high = min(TARGET_HIGH_C, self.pit_c - PIT_OVER_K)
        if not TARGET_LOW_C <= self.target_c <= high:
            raise OutOfRange("target", self.target_c, TARGET_LOW_C, high, "°C")
        if not -5.0 <= self.start_c < self.target_c:
            raise OutOfRange("start", self.start_c, -5.0, self.target_c, "°C")


@dataclass(frozen=True)
class Seen:
    """A temperature that was read, at a time since the meat went on. [s, °C]"""

    seconds: Seconds
    probe: Probe
    celsius: Celsius


@dataclass(frozen=True)
class Wrapped:
    """The meat was wrapped then, or unwrapped ("none"). [s]"""

    seconds: Seconds
    kind: WrapKind


@dataclass(frozen=True)
class PitSet:
    """The set point was moved then. [s, °C] Before the first of these `Cook.pit_c` stands."""

    seconds: Seconds
    celsius: Celsius


@dataclass(frozen=True)
class History:
    """What happened since the meat went on. `now_s` is None before that: nothing has happened yet.

    `lids` are the times at which the lid is known to have been opened. [s]
    """

    seen: tuple[Seen, ...] = ()
    wraps: tuple[Wrapped, ...] = ()
    now_s: Seconds | None = None
    pit_sets: tuple[PitSet, ...] = ()
    lids: tuple[Seconds, ...] = ()

    def of(self, probe: Probe) -> tuple[Seen, ...]:
        """The readings of a probe from the time the meat went on, in order."""
        return tuple(sorted((s for s in self.seen if s.probe == probe and s.seconds >= 0), key=lambda s: s.seconds))

    @property
    def wrap(self) -> WrapKind:
        """How the meat is wrapped at the end of the history."""
        return max(self.wraps, key=lambda w: w.seconds).kind if self.wraps else "none"

    @property
    def now(self) -> Seconds:
        """Seconds since the meat went on; 0 before that. Never before the last thing seen."""
        return max(self.now_s or 0.0, self.last)

    @property
    def last(self) -> Seconds:
        """When the last thing was seen or done; 0 before that. [s]"""
        seconds = [s.seconds for s in self.seen]
        seconds += [w.seconds for w in self.wraps]
        seconds += [p.seconds for p in self.pit_sets]
        seconds += self.lids
        return max([0.0, *seconds])
