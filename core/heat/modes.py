"""The finite-volume operator of a slab, cylinder or sphere, and its modes.

The insulated body is cut into shells; the operator (heat balance of each shell) is symmetric in the
shells' volumes, so it is taken apart once into modes that fade each at its own rate. A step under a
constant surface flux is then exact in time, however long, costs a few operations a mode, and keeps
energy to the last digit: mode 0 is the mean temperature, and only the flux moves it. The modes that are
left out settle within a minute or two: what they add under a steady flux is kept, at every place.

State: temperature = sum over modes of value(place) x amplitude. Dimensionless time is Fo = alpha t / L2.
"""

from dataclasses import dataclass
from functools import cache
from typing import Final

import numpy as np

from core.heat.band import Array
from core.heat.conduction import Geometry

SHELLS: Final = 120
KEPT: Final = 7
_POWER: Final[dict[Geometry, int]] = {"slab": 0, "cylinder": 1, "sphere": 2}


@dataclass(frozen=True, eq=False)
class Modes:
    """The slowest modes of an insulated body of unit size.

    `decay` is the rate of each mode [1/Fo], 0 for the mean; `surface` its value at the outermost shell;
    `rest` the temperature that the faster modes and half the outermost shell add at the surface for a
    unit flux; `places` and `values` the middles of the shells and the modes there, `settled` what the
    faster modes add there for a unit flux.
    """

    geometry: Geometry
    decay: Array
    surface: Array
    rest: float
    places: Array
    values: Array
    settled: Array

    def at(self, places: Array) -> Array:
        """Value of each mode at places from the middle (0) to the surface (1). [modes x places]"""
        return np.array([np.interp(places, self.places, row) for row in self.values])

    def settled_at(self, places: Array) -> Array:
        """What the faster modes add at places for a unit flux."""
        return np.interp(places, self.places, self.settled)

    def uniform(self, temperatures: Array) -> Array:
        """Amplitudes of bodies that are at one temperature throughout. [modes x bodies]"""
        amplitudes = np.zeros((len(self.decay), len(temperatures)))
        amplitudes[0] = temperatures / self.values[0, 0]
        return amplitudes


@cache
def modes(geometry: Geometry, kept: int = KEPT) -> Modes:
    """The modes of that body, found once."""
    faces = np.linspace(0.0, 1.0, SHELLS + 1)
    power = _POWER[geometry] + 1
    volumes = np.diff(faces**power) / power
    middles = 0.5 * (faces[1:] + faces[:-1])
    rates, vectors = np.linalg.eigh(_symmetric(faces, middles, volumes, power - 1))
    values = (vectors / np.sqrt(volumes)[:, None]).T
    surface = values[:, -1]
    settled = (surface[kept:] / rates[kept:]) @ values[kept:]
    rates[0] = 0.0
    half_shell = 1.0 - float(middles[-1])
    rest = float(settled[-1]) + half_shell
    return Modes(geometry, rates[:kept], surface[:kept], rest, middles, values[:kept], settled)


def _symmetric(faces: Array, middles: Array, volumes: Array, power: int) -> Array:
    """The operator, scaled by the roots of the volumes so that it is symmetric."""
    flow = faces[1:-1] ** power / np.diff(middles)
    through = np.zeros(len(volumes))
    through[:-1] += flow
    through[1:] += flow
    operator = np.diag(through / volumes)
    side = -flow / np.sqrt(volumes[1:] * volumes[:-1])
    return operator + np.diag(side, 1) + np.diag(side, -1)


@dataclass(frozen=True, eq=False)
class Bodies:
    """Many bodies of one geometry side by side, each with its own size and properties.

    `length` is the half thickness or radius [m], `conductivity` [W/m K], `volumetric_heat` [J/m3 K]; `gather`
    is the heat that enters a real piece by all its sides for each unit through the sides that are modelled [-].
    """

    modes: Modes
    length: Array
    conductivity: Array
    volumetric_heat: Array
    gather: Array

    @property
    def scale(self) -> Array:
        """Temperature that a unit of flux makes across a body at rest. [K per W/m2]"""
        return self.gather * self.length / self.conductivity

    def stride(self, seconds: Array | float) -> "Stride":
        """What one step of that many seconds does to each body."""
        fourier = self.conductivity / self.volumetric_heat * seconds / self.length**2
        rate = self.modes.decay[:, None]
        keep = np.exp(-rate * fourier)
        gain = np.empty_like(keep)
        gain[0] = fourier
        gain[1:] = (1.0 - keep[1:]) / rate[1:]
        gain *= self.modes.surface[:, None] * self.scale
        answer = self.modes.surface @ gain + self.modes.rest * self.scale
        return Stride(self.modes.surface, keep, gain, answer)


@dataclass(frozen=True, eq=False)
class Stride:
    """One step: amplitudes' = keep x amplitudes + gain x flux; surface' = coasting + answer x flux."""

    surface: Array
    keep: Array
    gain: Array
    answer: Array
