"""When the meat will be ready, and what is known on the way.

One call, no state: the members of `prior.py` are moved by the readings (`filter.py`), run through the pit
as it was read and is expected, and what they do is told in quantiles. Members that start wrapped now run
beside them, so that the gain of a wrap is measured on the same cook.
"""

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Final

import numpy as np

from core.heat.band import Array, Band, band
from core.heat.cook import Cook, History, PitSet, Probe, Seen, WrapKind, Wrapped
from core.heat.curve import Curve, curve
from core.heat.doubt import Doubt, doubt
from core.heat.filter import READING_SD, STEP_S, discrepancy, fitted, used
from core.heat.loss import LOSS_SD, loss_fraction
from core.heat.pace import LEAST_WAIT_S, NEXT_LEAST_S, NEXT_MOST_S, at_this_pace
from core.heat.pit import course, set_point
from core.heat.prior import members
from core.heat.properties import meat
from core.heat.smoking import Change, Pull, Run, Task, Wrapping, simulate, wrappings
from core.heat.stall import Stall, stall, until_done
from core.heat.vents import Advice, advise
from core.meat.piece import Z90
from core.sources import CHOI_OKOS_1986, COOK_CASE, KERTH_BRISKET, TAMU_BRISKET, USDA_YIELDS, Source
from core.units import Celsius, Seconds

__all__ = [
    "Cook", "Doubt", "Estimate", "History", "PitSet", "Probe", "Seen", "Stall", "WrapGain", "WrapKind", "Wrapped",
    "doubt", "forecast",
]  # fmt: skip

HORIZON_H: Final = 40.0
EVERY_WRAP: Final = 4  # a quarter of the members tries each wrap
AHEAD_S: Final = 12 * 3600.0  # looked ahead at least, however long the cook has taken
NEAR_END_S: Final = 3600.0
BOARD_SHARE: Final = 0.5  # of the heat that would even out, what reaches the middle off the heat. Judgement
CRUST: Final[dict[WrapKind, str]] = {"none": "best", "paper": "good", "foil": "soft"}
ENOUGH: Final = 0.7  # of the most that a reading in the next hours could tell


@dataclass(frozen=True)
class WrapGain:
    """What wrapping now would change: hours saved, and the share of the raw weight that stays. [h, -]

    `crust` is what is left of it: "good" under paper, "soft" under foil (common practice).
    """

    kind: WrapKind
    saves: Band
    weight_kept: float
    crust: str


@dataclass(frozen=True)
class Estimate:
    """What is known of a cook now. Hours count from the meat going on.

    `ready` is when the core reaches the target; members that never do stand at the horizon (40 h, or 12 h from
    now), and `reaches` is the share that does. `loss` is the share of the raw weight gone by then,
    `carry_over` what the core still climbs on the board [K]. `next_reading_s` is when a reading of the core
    tells most, in seconds since the meat went on; in the past where it is overdue. `fire` is what the pit readings say.
    """

    ready: Band
    reaches: float
    core_now: Band
    curve: Curve
    stall: Stall
    wraps: tuple[WrapGain, ...]
    loss: Band
    carry_over: Band
    next_reading_s: Seconds
    fire: Advice
    now_s: Seconds
    sources: tuple[Source, ...] = (CHOI_OKOS_1986, COOK_CASE, TAMU_BRISKET, KERTH_BRISKET, USDA_YIELDS)


@dataclass(frozen=True)
class _Steps:
    """Steps of a run: that of now, those that it takes at least, those to the horizon."""

    now: int
    least: int
    horizon: int


@dataclass(frozen=True, eq=False)
class _Outcome:
    """The members at the end: the run of those that are real, their hours, and of each wrap tried now."""

    run: Run
    hours: Array
    lost: Array
    length: Array
    tried: dict[WrapKind, tuple[Array, Array]]


def forecast(cook: Cook, history: History | None = None) -> Estimate:
    """When it will be ready, from before the fire is lit to the last reading.

    Parameters
    ----------
    cook
        The piece, the cooker, the set point and the target.
    history
        What happened since the meat went on; nothing yet if left out.
    """
    return _forecast(cook, history or History())


@lru_cache(maxsize=64)
def _forecast(cook: Cook, history: History) -> Estimate:
    steps = _Steps(round(history.now / STEP_S), int(history.now // STEP_S) + 2, horizon_steps(history))
    outcome = _outcome(cook, replace(history, now_s=None), steps)
    diffusivity = meat(cook.piece.cut.composition, cook.target_c).diffusivity
    weights = np.ones(len(outcome.hours))
    hours, now_h = outcome.hours, history.now / 3600.0
    horizon_h = (horizon_steps(history) - 1) * STEP_S / 3600.0
    times = STEP_S / 3600.0 * np.arange(len(outcome.run.core), dtype=np.float64)
    now_row = outcome.run.at(np.array([history.now]))[0]
    return Estimate(
        ready=band(np.minimum(hours, horizon_h), weights),
        reaches=float(np.isfinite(hours).mean()),
        core_now=band(now_row, weights),
        curve=curve(times, outcome.run.core, weights),
        stall=stall(until_done(outcome.run.core, cook.target_c), STEP_S, now_h, history.wrap != "none"),
        wraps=_gains(outcome),
        loss=_loss(outcome),
        carry_over=_carry_over(outcome, diffusivity),
        next_reading_s=min(_next_reading(outcome, history), at_this_pace(history, cook.target_c)),
        fire=advise(history.of("pit"), set_point(cook, history), cook.cooker, _lids(history)),
        now_s=history.now,
    )


@lru_cache(maxsize=8)  # a run is nearly a megabyte
def _outcome(cook: Cook, history: History, steps: _Steps) -> _Outcome:
    """Run the members to the end, those of a quarter also wrapped now in each way that is left.

    Of the time that has passed only its steps count here: who asks again within one is told from the same run.
    """
    z = fitted(cook, history)
    count = z.shape[1]
    kinds = _wraps_left(history)
    quarter = z[:, ::EVERY_WRAP]
    columns = members(cook, np.concatenate([z, *[quarter] * len(kinds)], axis=1))
    pit = course(cook, history, STEP_S, steps.horizon)
    changes: list[Change] = [*wrappings(history, STEP_S, slice(None)), *pulls(history)]
    size = quarter.shape[1]
    for number, kind in enumerate(kinds):
        who = slice(count + number * size, count + (number + 1) * size)
        changes.append(Wrapping(steps.now, who, kind))
    run = simulate(columns, pit, changes, Task(cook.target_c, count, least=steps.least))
    core = corrected(run, history)
    hours = reached(core, cook.target_c)
    lost = loss_fraction(
        cook.piece.cut.composition, columns.area * _at_hours(run.water, hours), np.array(cook.target_c)
    )
    ends = [count + n * size for n in range(len(kinds) + 1)]
    tried = {k: (hours[e : e + size], lost[e : e + size]) for k, e in zip(kinds, ends, strict=False)}
    real = Run(run.step_s, core[:, :count], run.water[:, :count])
    return _Outcome(real, hours[:count], lost[:count], columns.bodies.length[:count], tried)


def horizon_steps(history: History) -> int:
    """Steps to the horizon, which moves on with a cook that is very late."""
    return int(max(HORIZON_H * 3600.0, history.now + AHEAD_S) / STEP_S) + 1


def _wraps_left(history: History) -> tuple[WrapKind, ...]:
    return ("paper", "foil") if history.wrap == "none" else ()


def pulls(history: History) -> list[Change]:
    """At the last reading the members are moved by what the model is wrong there, as the readings tell it."""
    readings = used(history)
    if not readings:
        return []
    seconds = np.array([r.seconds for r in readings])
    weights = discrepancy(seconds[-1:], readings)[0]
    return [Pull(round(seconds[-1] / STEP_S), seconds, np.array([r.celsius for r in readings]), weights)]


def corrected(run: Run, history: History) -> Array:
    """The cores, those of the past moved by what the model is wrong there."""
    readings = used(history)
    if not readings:
        return run.core
    seconds = np.array([r.seconds for r in readings])
    rows = np.arange(round(seconds[-1] / STEP_S) + 1)
    past = Run(run.step_s, run.core[: len(rows)], run.water)
    missing = np.array([r.celsius for r in readings])[:, None] - past.at(seconds)
    started = np.minimum(1.0, rows * STEP_S / seconds[0]) if seconds[0] > 0 else np.ones(len(rows))
    moved = run.core.copy()
    moved[: len(rows)] += started[:, None] * (discrepancy(rows * STEP_S, readings) @ missing)
    return moved


def reached(core: Array, target_c: Celsius) -> Array:
    """Hours at which each member's core passes the target for the first time, infinite where it does not. [h]"""
    above = core >= target_c
    at = above.argmax(axis=0)
    who = np.arange(core.shape[1])
    low, high = core[np.maximum(at - 1, 0), who], core[at, who]
    part = np.where(high > low, (target_c - low) / np.where(high > low, high - low, 1.0), 0.0)
    hours = (np.maximum(at - 1, 0) + part) * STEP_S / 3600.0
    return np.where(above.any(axis=0), hours, np.inf)


def _at_hours(rows: Array, hours: Array) -> Array:
    step = np.minimum(np.where(np.isfinite(hours), hours, 1e6) * 3600.0 / STEP_S, len(rows) - 1.0).astype(int)
    values: Array = rows[step, np.arange(rows.shape[1])]
    return values


def _gains(outcome: _Outcome) -> tuple[WrapGain, ...]:
    bare, lost = outcome.hours[::EVERY_WRAP], outcome.lost[::EVERY_WRAP]
    found = []
    for kind, (hours, wrapped_lost) in outcome.tried.items():
        both = np.isfinite(bare) & np.isfinite(hours)
        if both.any():
            saves = band(bare[both] - hours[both], np.ones(int(both.sum())))
            found.append(WrapGain(kind, saves, float(np.median((lost - wrapped_lost)[both])), CRUST[kind]))
    return tuple(found)


def _loss(outcome: _Outcome) -> Band:
    middle = band(outcome.lost, np.ones(len(outcome.lost)))
    low = float(np.hypot(middle.p50 - middle.p10, Z90 * LOSS_SD))
    high = float(np.hypot(middle.p90 - middle.p50, Z90 * LOSS_SD))
    return Band(middle.p50 - low, middle.p50, middle.p50 + high)


def _carry_over(outcome: _Outcome, diffusivity: float) -> Band:
    """What the middle still climbs off the heat.

    A core that climbs at s K/s has s L2 / 2 alpha between it and the surface. Left alone the heat evens out
    to a third of that over the middle; on the board most of it leaves by the surface.
    """
    core = outcome.run.core
    at = np.minimum(np.where(np.isfinite(outcome.hours), outcome.hours, 0.0) * 3600.0 / STEP_S, len(core) - 2).astype(
        int
    )
    who = np.arange(core.shape[1])
    before = np.maximum(at - 4, 0)
    slope = np.maximum(core[at + 1, who] - core[before, who], 0.0) / ((at + 1 - before) * STEP_S)
    climb = BOARD_SHARE * slope * outcome.length**2 / (6.0 * diffusivity)
    return band(climb, np.ones(len(climb)))


def _next_reading(outcome: _Outcome, history: History) -> Seconds:
    """The first time, 20 min to 2 h after the last thing seen, at which a reading tells nearly as much as it can.

    It counts from what was seen, not from now: time that passes in silence does not put it off.

    What it tells is the share of the variance of the ready time that goes with the core at that time,
    among members as they are now, over and above the error of a reading.
    """
    done = np.isfinite(outcome.hours)
    since = history.last
    left = (float(np.quantile(outcome.hours[done], 0.1)) * 3600.0 - since) if done.any() else NEXT_MOST_S
    ahead = np.arange(NEXT_LEAST_S, NEXT_MOST_S + 1.0, 600.0)
    ahead = ahead[ahead <= max(left, NEXT_LEAST_S)]
    if done.sum() < 3 or left <= NEAR_END_S:
        return since + min(NEXT_LEAST_S, max(left, LEAST_WAIT_S))
    rows = outcome.run.at(since + ahead)[:, done]
    told = np.array([_told(row, outcome.hours[done]) for row in rows])
    return since + float(ahead[int(np.argmax(told >= ENOUGH * told.max()))])


def _told(core: Array, hours: Array) -> float:
    variance = float(core.var())
    if variance <= 0.0 or float(hours.var()) <= 0.0:
        return 0.0
    share = float(np.corrcoef(core, hours)[0, 1]) ** 2
    return share * variance / (variance + READING_SD**2)


def _lids(history: History) -> tuple[Seconds, ...]:
    """When the lid was open, for all we know: as told, at each wrap, and when the meat went on."""
    return (0.0, *(w.seconds for w in history.wraps), *history.lids)
