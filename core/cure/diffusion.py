"""Fick's law across a slab or cylinder, cut into cells: a stirred bath of limited volume outside, or nothing.

Every stage of a cure (brine, dry dose, soak, rest, cook) is the same balance of cells with another neighbour. The
balance is linear, so each stage is solved exactly in time through its own modes (implicit in the best sense: stable
and exact at any step); the only error is that of the cells, under 1e-4 of the final level from a Fourier number of
0.01 on. What is in the cells and the bath is conserved to rounding: it is the mode that does not decay.

Inside this file lengths are in half thicknesses (radii), time is the Fourier number D t / L² [-], and a
concentration is that of the water in the meat, so that meat and bath are at rest when they are equal.

References
----------
`sources.CRANK_1975`, whose series (`core.cure.series`) are the check.
"""

from dataclasses import dataclass
from functools import lru_cache
from typing import Final, TypeAlias

import numpy as np
from numpy.typing import NDArray

from core.meat.piece import Shape

Array: TypeAlias = NDArray[np.float64]
CELLS: Final = 128


@dataclass(frozen=True, eq=False)
class Modes:
    """The modes of one balance, and the way there and back.

    `rates` [per Fourier number], the first exactly 0; `inward` turns concentrations into amplitudes, `outward` turns
    them back, both with the bath as the last cell where there is one; `volumes` are the cells' shares of the meat, the
    bath's its size relative to what the meat holds.
    """

    rates: Array
    inward: Array
    outward: Array
    volumes: Array
    bath_ratio: float

    @property
    def bath(self) -> Array:
        """Bath concentration that each mode carries; nothing without a bath."""
        return self.outward[CELLS] if self.bath_ratio > 0.0 else np.zeros_like(self.rates)

    def centre(self) -> Array:
        """Concentration at the middle that each mode carries: a parabola through the two innermost cells."""
        return np.asarray(1.125 * self.outward[0] - 0.125 * self.outward[1])

    def mean(self) -> Array:
        """Mean concentration of the meat that each mode carries."""
        return np.asarray(self.volumes[:CELLS] @ self.outward[:CELLS])

    def gentle(self, beyond: float, at_least: int = 1) -> "Modes":
        """The modes that are still alive at a Fourier number; exact from there on, and as conserving as the whole."""
        keep = max(int(np.searchsorted(self.rates, 36.0 / max(beyond, 1e-12))), at_least)  # e^-36 is below rounding
        return Modes(self.rates[:keep], self.inward[:keep], self.outward[:, :keep], self.volumes, self.bath_ratio)


@dataclass(frozen=True, eq=False)
class Field:
    """What is where: concentrations of the cells, one row a member of the ensemble, and of the bath, if any."""

    cells: Array
    bath: Array | None = None


@dataclass(frozen=True, eq=False)
class Stage:
    """One stage as the cells see it.

    `fourier` is its length for each member; `bath_ratio` the bath's size relative to what the meat holds, 0 sealed;
    `bath` the concentration of the bath as it starts, None for the one that stood there already; `loss` what share
    of the meat's nitrite is used up, as the exponent k t, for each member.
    """

    fourier: Array
    bath_ratio: float = 0.0
    bath: float | None = None
    loss: Array | None = None


@lru_cache(maxsize=64)
def modes(shape: Shape, bath_ratio: float) -> Modes:
    """The modes of a slab or cylinder in a bath, or sealed where `bath_ratio` is 0.

    Parameters
    ----------
    shape
        Slab (half of it, mirrored at the middle, or the whole with one sealed face) or cylinder.
    bath_ratio
        Solute that the bath holds over that which the meat holds at equal concentration, Crank's alpha. [-] >= 0
    """
    edges = np.linspace(0.0, 1.0, CELLS + 1)
    round_ = shape is Shape.CYLINDER
    volumes = np.diff(edges**2 if round_ else edges)
    areas = 2.0 * edges if round_ else np.ones_like(edges)
    passage = areas[1:-1] * CELLS
    if bath_ratio > 0.0:
        volumes = np.append(volumes, bath_ratio)
        # Half a cell to the surface, and what makes the condition there, tan q = -alpha q, true to the fourth order
        to_surface = 1.0 + areas[-1] / (3.0 * bath_ratio * CELLS)
        passage = np.append(passage, areas[-1] * 2.0 * CELLS / to_surface)
    weight = np.sqrt(volumes)
    rates, vectors = np.linalg.eigh(_balance(passage) / np.outer(weight, weight))
    rates = rates * (1.0 + rates / (12.0 * CELLS**2))  # cells damp a wave too little, by k² h² / 12: put back
    rates[0] = 0.0  # the mode of equal concentration carries all the mass and does not decay
    return Modes(rates, vectors.T * weight, vectors / weight[:, None], volumes, bath_ratio)


def run(shape: Shape, field: Field, stage: Stage, steps: int = 16) -> Field:
    """Carry a field through one stage.

    Losses in the meat are split off symmetrically (Strang) over `steps` equal steps; without losses, or sealed, one
    step is exact.
    """
    own = modes(shape, stage.bath_ratio)
    state = _with_bath(field, stage)
    if stage.loss is None or stage.bath_ratio == 0.0:
        state = _advance(own, state, stage.fourier)
        state = state if stage.loss is None else state * np.exp(-stage.loss)[:, None]
        return _split(state, stage.bath_ratio)
    half = np.exp(-stage.loss / (2.0 * steps))[:, None]
    for _ in range(steps):
        state[:, :CELLS] *= half
        state = _advance(own, state, stage.fourier / steps)
        state[:, :CELLS] *= half
    return _split(state, stage.bath_ratio)


def in_brine(members: int, bath_ratio: float, within: float = 0.0) -> Field:
    """Meat that evenly holds `within` beside a brine that will bring it to 1 at rest."""
    bath = (1.0 + bath_ratio - within) / bath_ratio
    return Field(np.full((members, CELLS), within), np.full(members, bath))


def at_surface(shape: Shape, members: int) -> Field:
    """A dry dose in no depth at the surface, that will bring the whole to 1 at rest.

    It is laid into the two outermost cells as the surface would be read from them, 9/8 and -1/8, so that its spread
    is nothing; the negative share is gone by a Fourier number of 0.001.
    """
    volumes = modes(shape, 0.0).volumes
    cells = np.zeros((members, CELLS))
    cells[:, -2:] = np.array([-0.125, 1.125]) / volumes[-2:]
    return Field(cells)


def in_layer(shape: Shape, members: int, depth: float) -> Field:
    """A dose spread evenly through the outermost `depth`, as a share of the way in, that will bring the whole to 1."""
    edges = np.linspace(0.0, 1.0, CELLS + 1)
    filled = np.clip((edges[1:] - (1.0 - depth)) * CELLS, 0.0, 1.0)  # a cell that the edge cuts is filled in part
    return Field(np.tile(filled / (filled @ modes(shape, 0.0).volumes), (members, 1)))


def mean(shape: Shape, field: Field) -> Array:
    """Mean concentration of the meat, for each member."""
    return np.asarray(field.cells @ modes(shape, 0.0).volumes)


def centre(field: Field) -> Array:
    """Concentration at the middle (or the sealed face), for each member."""
    return np.asarray(1.125 * field.cells[:, 0] - 0.125 * field.cells[:, 1])


def _balance(passage: Array) -> Array:
    balance = np.zeros((passage.size + 1, passage.size + 1))
    here = np.arange(passage.size)
    balance[here, here] += passage
    balance[here + 1, here + 1] += passage
    balance[here, here + 1] -= passage
    balance[here + 1, here] -= passage
    return balance


def _advance(own: Modes, state: Array, fourier: Array) -> Array:
    amplitudes = (state @ own.inward.T) * np.exp(-np.outer(fourier, own.rates))
    return np.asarray(amplitudes @ own.outward.T)


def _with_bath(field: Field, stage: Stage) -> Array:
    if stage.bath_ratio == 0.0:
        return field.cells.copy()
    bath = field.bath if stage.bath is None else np.full(len(field.cells), stage.bath)
    if bath is None:
        raise ValueError("a bath needs a concentration")
    return np.concatenate([field.cells, bath[:, None]], axis=1)


def _split(state: Array, bath_ratio: float) -> Field:
    return Field(state[:, :CELLS], state[:, CELLS] if bath_ratio > 0.0 else None)
