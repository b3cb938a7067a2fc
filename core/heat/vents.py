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

PitState = Literal["unknown", "wait", "coming", "settling", "steady", "high", "far_high", "low", "dying", "out"]
Vent = Literal["none", "lower", "both", "look"]

LEAVE_K: Final = 7.0  # within 7 K (about 12 °F) of the set point nothing is done
FAR_HIGH_K: Final = 14.0
FAR_LOW_K: Final = 14.0
FALLING_K_H: Final = -16.0  # a fire that falls faster than this and is low is dying
HOLDS_K_H: Final = -5.0  # one that falls no faster holds, however low: it is small, and burns
OUT_C: Final = 85.0  # below it, far under the set point and not climbing, no meat is being cooked
COLD_C: Final = 60.0  # below it nothing burns, whatever was opened or put on
CLIMBING_K_H: Final = 6.0
COMING_H: Final = 1.0  # a pit that is back within the hour by itself is left alone
WORSE_K: Final = 6.0  # so much further off, and the wait after a vent was moved is broken off
OPENINGS: Final = 3  # of the lid within `OFTEN_S`: then the lid is the trouble
OFTEN_S: Final = 3600.0
MEAT_SHADOW_S: Final = 40 * 60.0  # the cold meat shields the probe for 20 to 40 min
LOOK_BACK_S: Final = 45 * 60.0
LEAST_APART_S: Final = 240.0  # two readings nearer to each other tell no drift


@dataclass(frozen=True)
class Advice:
    """What to do to the fire.

    `direction` is +1 to give air, -1 to take it, 0 to leave it. `share` of the vent's gap is moved. [-]
    `off_k` is the pit less its set point [K], `slope_k_h` its drift [K/h] where two readings tell it. `judge_s` is when
    to look again [s since the meat went on], None where there is nothing to wait for. `lid_often` says that the lid
    was opened so often within the hour that no fire keeps up. States "coming" (on its way back by itself) and
    "settling" (a vent was moved a little while ago) ask for patience alone.
    """

    state: PitState
    vent: Vent
    direction: int
    share: float
    wait_minutes: tuple[float, float]
    off_k: float
    slope_k_h: float | None
    judge_s: Seconds | None = None
    lid_often: bool = False
    source: Source = COMMON_PRACTICE


def advise(readings: Sequence[Seen], target_c: Celsius, kind: str, lids: Sequence[Seconds] = (0.0,)) -> Advice:
    """Advice on the vents from the readings of the pit.

    Parameters
    ----------
    readings
        Readings of the pit; others are passed over.
    target_c
        Set point. [°C]
    kind
        The cooker.
    lids
        When the lid was open, 0 for the meat going on: what was read soon after it is not chased. [s]
    """
    wait = (cooker(kind).wait_minutes.low, cooker(kind).wait_minutes.high)
    pit = sorted((r for r in readings if r.probe == "pit"), key=lambda r: r.seconds)
    if not pit:
        return Advice("unknown", "none", 0, 0.0, wait, 0.0, None)
    off, slope = pit[-1].celsius - target_c, _slope(pit)
    state, judge = _now(pit, target_c, lids, wait)
    vent, direction, share = MOVES[state]
    recent = [lid for lid in lids if lid > 0 and 0 <= pit[-1].seconds - lid <= OFTEN_S]
    return Advice(state, vent, direction, share, wait, off, slope, judge, len(recent) >= OPENINGS)


def _now(
    pit: Sequence[Seen], target_c: Celsius, lids: Sequence[Seconds], wait: tuple[float, float]
) -> tuple[PitState, Seconds | None]:
    """The state as it is to be acted on: after a lid or a move of a vent it is waited for, unless the fire dies."""
    slope = _slope(pit)
    state = _state(pit[-1].celsius - target_c, slope, pit[-1].celsius)
    if state == "dying" and len(pit) == 1:  # one reading tells no fall: it may be on its way up
        state = "low"
    last, patience = pit[-1].seconds, 60.0 * wait[1]
    shaded = [lid + (MEAT_SHADOW_S if lid <= 0 else patience) for lid in lids if lid <= last]
    sure = state == "out" and (pit[-1].celsius < COLD_C or (slope is not None and slope < FALLING_K_H))
    if not sure and any(until > last for until in shaded):
        return "wait", max(shaded)
    moved = _moved(pit, target_c, last - patience) if state in ("high", "far_high", "low") else None
    if moved is not None:
        return "settling", moved + patience
    return state, last + patience if MOVES[state][1] else None


def _moved(pit: Sequence[Seen], target_c: Celsius, since: Seconds) -> Seconds | None:
    """When a vent was moved on advice since a time, if the pit is not much further off since. [s]"""
    now_off = pit[-1].celsius - target_c
    for count in range(len(pit) - 1, 0, -1):
        earlier = pit[count - 1]
        if earlier.seconds <= since:
            return None
        off = earlier.celsius - target_c
        advised = MOVES[_state(off, _slope(pit[:count]), earlier.celsius)][1]
        if advised and advised == (-1 if now_off > 0 else 1) and abs(now_off) < abs(off) + WORSE_K:
            return earlier.seconds
    return None


# state: the vent to move, which way, and how much of its gap
MOVES: Final[dict[PitState, tuple[Vent, int, float]]] = {
    "unknown": ("none", 0, 0.0),
    "steady": ("none", 0, 0.0),
    "wait": ("none", 0, 0.0),
    "coming": ("none", 0, 0.0),
    "settling": ("none", 0, 0.0),
    "high": ("lower", -1, 0.25),
    "far_high": ("both", -1, 0.75),
    "low": ("lower", 1, 0.25),
    "dying": ("look", 1, 1.0),
    "out": ("look", 1, 1.0),
}


def _state(off: float, slope: float | None, pit_c: Celsius) -> PitState:
    falling = slope is not None and slope < FALLING_K_H
    cold = pit_c < COLD_C or (pit_c < OUT_C and off < -FAR_LOW_K)
    if cold and (slope is None or slope < CLIMBING_K_H):
        return "out"
    if (
        slope is not None
        and abs(slope) >= CLIMBING_K_H
        and -off * slope > 0
        and LEAVE_K < abs(off) <= abs(slope) * COMING_H
    ):
        return "coming"
    soon = slope is not None and off + slope * COMING_H > -2.0 * FAR_LOW_K  # a step of a dial is no dying fire
    holds = slope is not None and (slope > HOLDS_K_H or soon)
    if (off < -FAR_LOW_K and not holds) or (falling and off < -LEAVE_K):  # down to the set point is only coming back
        return "dying"
    if off < -LEAVE_K:
        return "low"
    if off <= LEAVE_K:
        return "steady"
    return "high" if off <= FAR_HIGH_K else "far_high"


def _slope(pit: Sequence[Seen]) -> float | None:
    """Drift over the last readings, from the oldest of the last 45 min to the newest. [K/h]"""
    ages = [pit[-1].seconds - r.seconds for r in pit]
    apart = [n for n, age in enumerate(ages) if age >= LEAST_APART_S]
    if not apart:
        return None
    oldest = next((n for n in apart if ages[n] <= LOOK_BACK_S), apart[-1])
    return 3600.0 * (pit[-1].celsius - pit[oldest].celsius) / ages[oldest]
