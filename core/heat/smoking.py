"""The cook: conduction inside, and at the surface air, walls and water.

Every member is stepped at once. Inside, the modes of `modes.py`; at the surface the balance of
`surface.py`, linearised at the last surface temperature and solved together with the conduction (one
Newton step a time step; heat and water of a step are those of the linear balance, so that both balances
close exactly). The resistance to vapour grows with the water that has left and runs away as the supply
ends: R = skin + bark m / (1 - m / supply)^2. That is what raises the stall from 50 to 65-75 °C and ends it.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from core.heat.band import Array
from core.heat.cook import History, WrapKind
from core.heat.modes import Stride
from core.heat.pit import Course
from core.heat.prior import Members
from core.heat.surface import Surroundings, flux
from core.units import Seconds

LEAST_LEFT: Final = 0.02  # the supply is never quite gone
CHECK_EVERY: Final = 8  # steps between two looks whether all are done


@dataclass(frozen=True)
class Skin:
    """What a wrap does: `film` and `emissivity` are shares of the bare ones, `resistance` is added. [-, -, s/m]"""

    film: float
    emissivity: float
    resistance: float


# Foil: dulled by smoke and grease, crumpled; emissivity 0.1 new. Paper: layers of air between, soon greased shut.
# TUNED so that foil in the stall saves 2 to 4 h and paper 1 to 2 h (common practice).
WRAPS: Final[dict[WrapKind, Skin]] = {
    "none": Skin(1.0, 1.0, 0.0),
    "paper": Skin(0.7, 0.35, 1.5e4),
    "foil": Skin(0.95, 0.25, 4.0e4),
}


@dataclass(frozen=True, eq=False)
class Wrapping:
    """From step `step` on, the members `who` are wrapped so."""

    step: int
    who: slice
    kind: WrapKind


@dataclass(frozen=True, eq=False)
class Pull:
    """At step `step` the members are moved, all through, by the weighted misses of the readings so far.

    `seconds` and `celsius` are the readings, `weights` how much of each miss counts.
    """

    step: int
    seconds: Array
    celsius: Array
    weights: Array


Change = Wrapping | Pull


@dataclass(frozen=True, eq=False)
class Task:
    """How far to simulate: until `share` of the first `count` members reached `target_c` and `least` steps are done."""

    target_c: float
    count: int
    share: float = 0.96
    least: int = 0


@dataclass(frozen=True, eq=False)
class Run:
    """What became of the members, a row a step from the start on.

    `core` is the temperature at the probe [°C], `water` the water that has left [kg/m2].
    """

    step_s: Seconds
    core: Array
    water: Array

    def at(self, seconds: Array) -> Array:
        """The cores at times between the steps; at the last step where a time lies behind it. [times x members]"""
        where = np.clip(seconds / self.step_s, 0.0, len(self.core) - 1.0)
        low = np.minimum(where.astype(int), max(len(self.core) - 2, 0))
        part = (where - low)[:, None]
        rows: Array = (1.0 - part) * self.core[low] + part * self.core[np.minimum(low + 1, len(self.core) - 1)]
        return rows


@dataclass(eq=False)
class _State:
    """The members as they are now; the loop's own."""

    amplitudes: Array
    surface: Array
    heat: Array
    water: Array
    around: Surroundings
    skin: Array


def simulate(members: Members, course: Course, changes: Sequence[Change] = (), task: Task | None = None) -> Run:
    """Run the members through the course of the pit.

    Without a task they run to the end of the course.
    """
    stride = members.bodies.stride(course.step_s / members.pace)
    state = _fresh(members, course)
    probe = members.bodies.modes.at(members.place)
    settled = members.bodies.modes.settled_at(members.place) * members.bodies.scale
    steps = len(course.celsius) - 1
    core = np.empty((steps + 1, len(members.start)))
    water = np.empty_like(core)
    core[0], water[0] = members.start, 0.0
    due = _by_step(changes)
    length = course.step_s / members.pace
    for step in range(steps):
        for change in due.get(step, ()):
            _apply(change, members, state, Run(course.step_s, core[: step + 1], water))
        _advance(members, course, state, stride, step, length)
        core[step + 1] = np.einsum("km,km->m", probe, state.amplitudes) + settled * state.heat
        water[step + 1] = state.water
        if task and step % CHECK_EVERY == 0 and step >= task.least and _finished(core, step, task):
            steps = step + 1
            break
    return Run(course.step_s, core[: steps + 1], water[: steps + 1])


def wrappings(history: History, step_s: Seconds, who: slice) -> list[Wrapping]:
    """The wraps of a history as changes of the run."""
    return [Wrapping(round(max(w.seconds, 0.0) / step_s), who, w.kind) for w in history.wraps]


def _fresh(members: Members, course: Course) -> _State:
    around = Surroundings(
        air_c=members.pit_offset,
        wall_c=members.wall_offset,
        film=members.film,
        emissivity=np.full(len(members.film), members.emissivity),
        vapour=members.vapour,
        vapour_pressure=members.vapour_pressure,
        resistance=members.skin,
        pressure=members.pressure,
    )
    start = members.bodies.modes.uniform(members.start)
    none = np.zeros_like(members.start)
    return _State(start, members.start.copy(), none, none, around, members.skin.copy())


def _advance(members: Members, course: Course, state: _State, stride: Stride, step: int, length: Array) -> None:
    air = course.celsius[step] + members.pit_offset + course.spread[step] * members.swing
    left = np.maximum(1.0 - state.water / members.supply, LEAST_LEFT)
    around = replace(
        state.around,
        air_c=air,
        wall_c=air + members.wall_offset,
        resistance=state.skin + members.bark * state.water / (left * left),
    )
    now = flux(state.surface, around)
    state.amplitudes *= stride.keep
    coasting = stride.surface @ state.amplitudes
    half = 0.5 * now.heat_slope
    surface = (coasting + stride.answer * (now.heat - half * state.surface)) / (1.0 - stride.answer * half)
    moved = 0.5 * (surface - state.surface)
    state.heat = now.heat + now.heat_slope * moved
    state.amplitudes += stride.gain * state.heat
    state.water = np.maximum(state.water + (now.water + now.water_slope * moved) * length, 0.0)
    state.surface = surface


def _by_step(changes: Sequence[Change]) -> dict[int, list[Change]]:
    due: dict[int, list[Change]] = {}
    for change in changes:
        due.setdefault(change.step, []).append(change)
    return due


def _apply(change: Change, members: Members, state: _State, so_far: Run) -> None:
    if isinstance(change, Pull):
        shift = change.weights @ (change.celsius[:, None] - so_far.at(change.seconds))
        state.amplitudes[0] += shift / members.bodies.modes.values[0, 0]
        state.surface = state.surface + shift
        return
    skin = WRAPS[change.kind]
    film = np.array(state.around.film, copy=True)
    emissivity = np.array(state.around.emissivity, copy=True)
    film[change.who] = skin.film * members.film[change.who]
    emissivity[change.who] = skin.emissivity * members.emissivity
    state.skin[change.who] = members.skin[change.who] + skin.resistance
    state.around = replace(state.around, film=film, emissivity=emissivity)


def _finished(core: Array, step: int, task: Task) -> bool:
    reached = np.count_nonzero(core[step + 1, : task.count] >= task.target_c)
    return bool(reached >= task.share * task.count)
