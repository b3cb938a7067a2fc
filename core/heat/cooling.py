"""Cooling: the rest, and the chill to fridge-cold, at the middle of the piece.

The same conduction as in the cook, with one coefficient at the surface: no credit for evaporation, so a
bare piece cools a little sooner than said. Coefficients for a domestic fridge carry 40 % either way (80 %
of cases), and so do the hours. Against a three-dimensional computation: docs/science/cooking.md.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from math import log
from typing import Final, Literal

import numpy as np

from core.errors import OutOfRange
from core.heat.band import Array, Band, band
from core.heat.cook import Seen
from core.heat.curve import Curve, curve
from core.heat.modes import Bodies, modes
from core.heat.prior import points
from core.heat.properties import meat
from core.heat.shape import body
from core.meat.piece import Z90, Composition, Piece
from core.units import Celsius, Hours, Metres, WattsPerSquareMetreKelvin, celsius_from_fahrenheit

ChillMethod = Literal["foil", "rack", "fan", "ice"]
RestMethod = Literal["bare", "foil", "towels", "box"]
Method = ChillMethod | RestMethod

# Coefficient at the surface, radiation included. [W/m2 K] Still air and foil computed with textbook
# correlations of free convection; fan, towels, box and ice water by judgement. 40 % either way.
CHILL_FILM: Final[dict[ChillMethod, float]] = {"foil": 5.5, "rack": 9.0, "fan": 15.0, "ice": 70.0}
REST_FILM: Final[dict[RestMethod, float]] = {"bare": 10.5, "foil": 5.0, "towels": 2.0, "box": 1.2}
FILM_LOG_SD: Final = log(1.4) / Z90
ICE_WATER_C: Final = 1.0
ROOM_C: Final = 21.0
FOOTPRINT_LEFT: Final = 0.72  # of the raw footprint, after the cook; the thickness is kept. Judgement
WATER_LEFT: Final = 0.62  # of the raw water, after the cook
MEMBERS: Final = 64
READING_SD: Final = 1.5  # [K] thermometer, placement and the model

# marks of the cooling rules, from 140 to 40 °F. [°C]
MARKS: Final = tuple(celsius_from_fahrenheit(f) for f in (140, 135, 130, 120, 80, 70, 55, 45, 41, 40))
MARK_WITHIN_K: Final = 0.15  # "26.7" means 80 °F

# seconds a step, and how many of them: short while the surface is quick, long later; 60 h in all
PACES: Final = ((60.0, 30), (120.0, 45), (300.0, 120), (600.0, 288))


@dataclass(frozen=True)
class Chill:
    """How the middle of a piece cools.

    `hours` are the hours from the start to each mark in °C; None where the surroundings are not colder
    or 60 h are not enough. `members` are the hours of each member, with its weight, for `between`.
    """

    method: Method
    start_c: Celsius
    ambient_c: Celsius
    thickness: Metres
    hours: tuple[tuple[Celsius, Band | None], ...]
    curve: Curve
    members: tuple[tuple[float, ...], ...]
    weights: tuple[float, ...]

    def to(self, celsius: Celsius) -> Band | None:
        """Hours until the middle has fallen to one of the marks; 0 if it starts below it. [h]"""
        return self.hours[_mark(celsius)][1]

    def between(self, high_c: Celsius, low_c: Celsius) -> Band | None:
        """Hours from one mark to a lower one, member by member. [h] None where it is not reached in 60 h."""
        above, below = self._row(high_c), self._row(low_c)
        return _finite_band(below - above, np.array(self.weights))

    def chance(self, stages: Sequence[tuple[Celsius, Celsius, Hours]]) -> float:
        """Share of the members that keep every stage (from, to, longest hours). [-]"""
        kept = np.ones(len(self.weights), dtype=bool)
        for high_c, low_c, longest in stages:
            kept &= self._row(low_c) - self._row(high_c) <= longest
        return float(np.array(self.weights)[kept].sum())

    def _row(self, mark: Celsius) -> Array:
        return np.array(self.members[_mark(mark)])


def _mark(celsius: Celsius) -> int:
    """The number of a mark, told to a tenth of a degree; raises OutOfRange where there is none."""
    nearest = min(range(len(MARKS)), key=lambda n: abs(MARKS[n] - celsius))
    if abs(MARKS[nearest] - celsius) > MARK_WITHIN_K:
        raise OutOfRange("mark", celsius, MARKS[-1], MARKS[0], "°C")
    return nearest


def rest(piece: Piece, method: RestMethod = "foil", start_c: Celsius = 88.0, room_c: Celsius = ROOM_C) -> Chill:
    """The rest after the cook, at room temperature. `to(60.0)` is the time left above 140 °F."""
    return _cooled(piece, _Around(method, REST_FILM[method], start_c, room_c), ())


def chill(
    piece: Piece,
    method: ChillMethod,
    start_c: Celsius = 60.0,
    ambient_c: Celsius = 3.0,
    seen: tuple[Seen, ...] = (),
) -> Chill:
    """The chill in a fridge, or in ice water, from one temperature throughout.

    Parameters
    ----------
    method
        "foil" (wrapped, still air), "rack" (bare on a rack), "fan" (bare before a fan), "ice" (bagged, in ice water).
    ambient_c
        Temperature of the fridge. [°C] Ice water is taken at 1 °C whatever the fridge.
    seen
        Readings of the middle since the chill began, which correct the coefficient. [s, °C]
    """
    around = ICE_WATER_C if method == "ice" else ambient_c
    return _cooled(piece, _Around(method, CHILL_FILM[method], start_c, around), seen)


def cooked(composition: Composition) -> Composition:
    """Composition of the cooked meat: the water that left is taken off. [-]"""
    water = WATER_LEFT * composition.water
    left = water + composition.protein + composition.fat + composition.ash
    return Composition(water / left, composition.protein / left, composition.fat / left, composition.ash / left)


@dataclass(frozen=True)
class _Around:
    method: Method
    film: WattsPerSquareMetreKelvin
    start_c: Celsius
    ambient_c: Celsius


@lru_cache(maxsize=256)
def _cooled(piece: Piece, around: _Around, seen: tuple[Seen, ...]) -> Chill:
    if not -5.0 <= around.ambient_c < around.start_c <= 100.0:
        raise OutOfRange("start", around.start_c, around.ambient_c, 100.0, "°C")
    z = points(MEMBERS)
    films = around.film * np.exp(FILM_LOG_SD * z[0])
    times, core = _run(_bodies(piece, around.film, z[1]), films, around)
    weights = _weights(times, core, seen)
    members = np.array([_crossing(times, core, mark) for mark in MARKS])
    return Chill(
        around.method,
        around.start_c,
        around.ambient_c,
        piece.thickness,
        tuple((mark, _finite_band(row, weights)) for mark, row in zip(MARKS, members, strict=True)),
        curve(times / 3600.0, core, weights),
        tuple(tuple(float(x) for x in row) for row in members),
        tuple(float(w) for w in weights),
    )


def _bodies(piece: Piece, film: WattsPerSquareMetreKelvin, z: Array) -> Bodies:
    heat = meat(cooked(piece.cut.composition), 30.0)
    stands_for = body(replace(piece, mass=piece.mass * FOOTPRINT_LEFT), film)
    length = stands_for.length * np.exp(piece.thickness_log_sd * z)
    return Bodies(
        modes(stands_for.geometry),
        length,
        np.full(len(length), heat.conductivity),
        np.full(len(length), heat.volumetric_heat),
        np.full(len(length), stands_for.gather),
    )


def _run(bodies: Bodies, film: Array, around: _Around) -> tuple[Array, Array]:
    """Times [s] and the middle of each member [°C], rows are steps."""
    surface = np.full(len(film), around.start_c - around.ambient_c)
    amplitudes = bodies.modes.uniform(surface)
    middle, settled = bodies.modes.values[:, 0], bodies.modes.settled[0] * bodies.scale
    times, rows = [0.0], [surface]
    for step_s, count in PACES:
        stride = bodies.stride(step_s)
        for _ in range(count):
            coasting = stride.surface @ (amplitudes * stride.keep)
            flow = -film * 0.5 * (surface + coasting) / (1.0 + 0.5 * film * stride.answer)
            surface = coasting + stride.answer * flow
            amplitudes = amplitudes * stride.keep + stride.gain * flow
            times.append(times[-1] + step_s)
            rows.append(middle @ amplitudes + settled * flow)
    return np.array(times), around.ambient_c + np.array(rows)


def _crossing(times: Array, core: Array, mark: Celsius) -> Array:
    """Hours until each member has fallen to the mark, infinite where it does not. [h]"""
    below = core <= mark
    at = below.argmax(axis=0)
    who = np.arange(core.shape[1])
    before = np.maximum(at - 1, 0)
    high, low = core[before, who], core[at, who]
    part = np.where(high > low, (high - mark) / np.where(high > low, high - low, 1.0), 0.0)
    seconds = times[before] + part * (times[at] - times[before])
    return np.where(below.any(axis=0), np.where(at == 0, 0.0, seconds) / 3600.0, np.inf)


def _weights(times: Array, core: Array, seen: tuple[Seen, ...]) -> Array:
    """Weight of each member after the readings, tempered so that a few of them always count."""
    logs = np.zeros(core.shape[1])
    for reading in (s for s in seen if s.probe == "core"):
        row = np.array([np.interp(reading.seconds, times, member) for member in core.T])
        logs -= 0.5 * ((row - reading.celsius) / READING_SD) ** 2
    for power in (1.0, 0.5, 0.25, 0.1, 0.03, 0.01):
        weights = np.exp(power * (logs - logs.max()))
        weights /= weights.sum()
        if 1.0 / (weights**2).sum() >= 6.0:
            break
    tempered: Array = weights
    return tempered


def _finite_band(values: Array, weights: Array) -> Band | None:
    clean = np.where(np.isfinite(values), values, np.inf)
    found = band(clean, weights)
    return found if found.p90 < float("inf") else None
