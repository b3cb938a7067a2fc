"""What the pit readings say of the fire, and which vent to move: one at a time, in small steps, then wait.

The steps are common practice (no source); the waiting time is the cooker's. Air in is the size of the
fire, the top is its pull.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

from core.heat.cook import Seen
from core.heat.cooker import cooker
from core.sources import COMMON_PRACTICE, Source
from core.units import Celsius, Seconds

PitState = Literal["unknown", "wait", "steady", "high", "far_high", "low", "dying", "out"]
Vent = Literal["none", "lower", "both", "look"]

LEAVE_K: Final = 7.0  # within 7 K (about 12 °F) of the set point nothing is done
FAR_HIGH_K: Final = 14.0
FAR_LOW_K: Final = 14.0
FALLING_K_H: Final = -16.0  # a fire that falls faster than this and is low is dying
OUT_C: Final = 85.0  # below it, and not climbing, no meat is being cooked
CLIMBING_K_H: Final = 6.0
MEAT_SHADOW_S: Final = 40 * 60.0  # the cold meat shields the probe for 20 to 40 min
LOOK_BACK_S: Final = 45 * 60.0


@dataclass(frozen=True)
class Advice:
    """What to do to the fire.

    `direction` is +1 to give air, -1 to take it, 0 to leave it. `share` of the vent's gap is moved. [-]
    `off_k` is the pit less its set point [K], `slope_k_h` its drift [K/h] where two readings tell it.
    """

    state: PitState
    vent: Vent
    direction: int
    share: float
    wait_minutes: tuple[float, float]
    off_k: float
    slope_k_h: float | None
    source: Source = COMMON_PRACTICE


def advise(readings: Sequence[Seen], target_c: Celsius, kind: str, lid_s: Seconds | None = None) -> Advice:
    """Advice on the vents from the readings of the pit.

    Parameters
    ----------
    readings
        Readings of the pit; others are passed over.
    target_c
        Set point. [°C]
    kind
        The cooker.
    lid_s
        When the lid was last open, or the meat went on: what was read soon after it is not chased. [s]
    """
    wait = (cooker(kind).wait_minutes.low, cooker(kind).wait_minutes.high)
    pit = sorted((r for r in readings if r.probe == "pit"), key=lambda r: r.seconds)
    if not pit:
        return Advice("unknown", "none", 0, 0.0, wait, 0.0, None)
    off = pit[-1].celsius - target_c
    slope = _slope(pit)
    state = _state(off, slope, pit[-1].celsius)
    if state != "out" and lid_s is not None and _shaded(pit[-1].seconds, lid_s, wait):
        return Advice("wait", "none", 0, 0.0, wait, off, slope)
    vent, direction, share = MOVES[state]
    return Advice(state, vent, direction, share, wait, off, slope)


# state: the vent to move, which way, and how much of its gap
MOVES: Final[dict[PitState, tuple[Vent, int, float]]] = {
    "unknown": ("none", 0, 0.0),
    "steady": ("none", 0, 0.0),
    "wait": ("none", 0, 0.0),
    "high": ("lower", -1, 0.25),
    "far_high": ("both", -1, 0.75),
    "low": ("lower", 1, 0.25),
    "dying": ("look", 1, 1.0),
    "out": ("look", 1, 1.0),
}


def _state(off: float, slope: float | None, pit_c: Celsius) -> PitState:
    falling = slope is not None and slope < FALLING_K_H
    if pit_c < OUT_C and (slope is None or slope < CLIMBING_K_H):
        return "out"
    if off < -FAR_LOW_K or (falling and off < -LEAVE_K):  # down to the set point is only coming back
        return "dying"
    if off < -LEAVE_K:
        return "low"
    if off <= LEAVE_K:
        return "steady"
    return "high" if off <= FAR_HIGH_K else "far_high"


def _shaded(read_s: Seconds, lid_s: Seconds, wait: tuple[float, float]) -> bool:
    shade = MEAT_SHADOW_S if lid_s <= 0 else wait[1] * 60.0
    return 0 <= read_s - lid_s < shade


def _slope(pit: Sequence[Seen]) -> float | None:
    """Drift over the last readings, from the oldest of the last 45 min to the newest. [K/h]"""
    recent = [r for r in pit if pit[-1].seconds - r.seconds <= LOOK_BACK_S]
    if len(recent) < 2 and len(pit) >= 2:
        recent = list(pit[-2:])
    span = recent[-1].seconds - recent[0].seconds
    return 3600.0 * (recent[-1].celsius - recent[0].celsius) / span if span >= 240.0 else None
