"""What is not known of a cook before it begins, as members of an ensemble.

Each member is a point of standard normal numbers, one a parameter, spread evenly over the space (a
Kronecker sequence: no chance, the same every time), and made into a body and its surroundings. The
medians and spreads of the surface's water are TUNED on COOK_CASE and TAMU_BRISKET, so neither is a
validation; the others are judgement, as docs/science/cooking.md says one by one.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import exp
from statistics import NormalDist
from typing import Final

import numpy as np

from core.heat.band import Array
from core.heat.cook import Cook
from core.heat.cooker import Cooker, cooker
from core.heat.humid_air import VAPOUR_GAS_CONSTANT, pressure_at
from core.heat.modes import Bodies, modes
from core.heat.properties import component, meat
from core.heat.shape import MIDDLE_C, body
from core.heat.surface import saturated
from core.meat.piece import Z90, Piece, Species
from core.units import ZERO_CELSIUS_IN_KELVIN, Pascals

MEMBERS: Final = 200

# The parameters, in the order of the rows of a point.
NAMES: Final = (
    "size", "shape", "film", "skin", "bark", "supply", "pit", "dew", "conductivity", "start", "place", "wall", "swing",
)  # fmt: skip

PROCESS_FILM: Final = 30.0  # whole coefficient during the stall, for the equivalent body. [W/m2 K] DERIVED
SHAPE_LOG_SD: Final = 0.06  # of the heat that all sides gather: no flat is a brick. Judgement
SKIN: Final = 280.0  # resistance of the fresh surface, a film of fat and rub. [s/m] TUNED
SKIN_LOG_SD: Final = 0.3
SKIN_ON: Final = 500.0  # what the skin of a bird or a rind adds. [s/m] judgement
AIR_FILM: Final = 150.0  # 900 / h_c at 6 W/m2 K. [s/m]
LEAST_LEAN: Final = 0.2
BARK: Final = 10.0  # resistance that each kg/m2 of lost water adds. [s/m per kg/m2] TUNED
BARK_LOG_SD: Final = 0.4
# Fish: what no skin closes dries, and the water of salted flesh comes up by diffusion, so that each kg/m2 that has gone
# adds pi rho_v / (2 c^2 D): 0.16 kg/m3 of vapour at 65 °C, 530 kg/m3 of water that can leave, D 1.3e-9 to 2.8e-9 m2/s.
# fish_sources.JASON_FISH and TORRY_SALMON, taken to 65 °C; DERIVED in docs/science/cooking.md
FLESH_BARE: Final = 0.5  # of the surface: one broad face is skin, which passes next to nothing. Judgement
PELLICLE: Final = 480.0  # [s/m per kg/m2]
PELLICLE_LOG_SD: Final = 0.5
SUPPLY: Final = 0.72  # share of the meat's water that can reach the surface. [-] TUNED
SUPPLY_LOG_SD: Final = 0.10
CONDUCTIVITY_LOG_SD: Final = 0.06
START_SD: Final = 1.5  # [K]
PLACE_SD: Final = 0.12  # the probe's distance from the middle, in half thicknesses. Judgement
LEARNED_FLOOR: Final = 0.4  # past cooks never narrow the cooker's own spread below this share
OWN_LOG_SD: Final = 0.18  # the model's own spread of ln(hours) that the cooker answers for


@dataclass(frozen=True, eq=False)
class Members:
    """The members' bodies and surroundings; each array holds one number a member.

    `place` of the probe [-], `film` [W/m2 K], `wall_offset` and `pit_offset` [K], `swing` of the unread pit
    [standard normal], `vapour` density [kg/m3] and pressure [Pa], `skin` [s/m], `bark` [s/m per kg/m2],
    `supply` of water [kg/m2], `start` [°C], `pace` [-], `area` [m2/kg].
    """

    bodies: Bodies
    place: Array
    film: Array
    wall_offset: Array
    pit_offset: Array
    swing: Array
    vapour: Array
    vapour_pressure: Array
    skin: Array
    bark: Array
    supply: Array
    start: Array
    pace: Array
    area: Array
    emissivity: float
    pressure: Pascals


@lru_cache(maxsize=4)
def points(count: int = MEMBERS) -> Array:
    """Evenly spread standard normal points, made to have mean 0 and no correlation. [parameters x members]"""
    size = len(NAMES)
    root = 2.0
    for _ in range(60):  # the generalised golden ratio: root of x^(size + 1) = x + 1
        root = (1.0 + root) ** (1.0 / (size + 1))
    steps = root ** -np.arange(1.0, size + 1.0)
    uniform = (0.5 + np.outer(steps, np.arange(1.0, count + 1.0))) % 1.0
    inverse = NormalDist().inv_cdf
    normal = np.array([[inverse(u) for u in row] for row in uniform])
    normal -= normal.mean(axis=1, keepdims=True)
    spread = np.linalg.cholesky(np.cov(normal))
    whitened: Array = np.linalg.solve(spread, normal)
    whitened.flags.writeable = False
    return whitened


def members(cook: Cook, z: Array) -> Members:
    """The members at those points. [parameters x members]"""
    at = dict(zip(NAMES, z, strict=True))
    at |= {habit.name: habit.mean + habit.sd * at[habit.name] for habit in cook.habits}
    kind = cooker(cook.cooker)
    narrow = _narrowing(cook)
    bodies = _bodies(cook, at)
    dew = _dew_point(kind, narrow * at["dew"])
    vapour = saturated(dew)
    share = cook.piece.cut.composition.water
    area = _area(cook, bodies)
    return Members(
        bodies=bodies,
        place=np.clip(np.abs(PLACE_SD * at["place"]), 0.0, 0.8),
        film=kind.film.centre * np.exp(narrow * kind.film.sd * at["film"]),
        wall_offset=kind.wall_offset.centre + narrow * kind.wall_offset.sd * at["wall"],
        pit_offset=narrow * kind.pit_offset_sd * at["pit"],
        swing=at["swing"],
        vapour=vapour * (dew + ZERO_CELSIUS_IN_KELVIN) / (cook.pit_c + ZERO_CELSIUS_IN_KELVIN),
        vapour_pressure=vapour * VAPOUR_GAS_CONSTANT * (dew + ZERO_CELSIUS_IN_KELVIN),
        skin=_behind_fat(cook.piece, SKIN * np.exp(SKIN_LOG_SD * at["skin"])),
        bark=_bark(cook.piece, at["bark"]),
        supply=SUPPLY * np.exp(SUPPLY_LOG_SD * at["supply"]) * share / area,
        start=cook.start_c + START_SD * at["start"],
        pace=np.full(z.shape[1], exp(cook.log_shift)),
        area=area,
        emissivity=kind.emissivity,
        pressure=pressure_at(cook.altitude_m),
    )


def _bodies(cook: Cook, at: dict[str, Array]) -> Bodies:
    stands_for = body(cook.piece, PROCESS_FILM)
    heat = meat(cook.piece.cut.composition, MIDDLE_C)
    length = stands_for.length * np.exp(cook.piece.thickness_log_sd * at["size"])
    return Bodies(
        modes(stands_for.geometry),
        length,
        heat.conductivity * np.exp(CONDUCTIVITY_LOG_SD * at["conductivity"]),
        np.full(len(length), heat.volumetric_heat),
        stands_for.gather * np.exp(SHAPE_LOG_SD * at["shape"]),
    )


def _area(cook: Cook, bodies: Bodies) -> Array:
    """Surface that gives off water, for a kilogram of meat. [m2/kg]"""
    density = meat(cook.piece.cut.composition, MIDDLE_C).density
    faces = 2.0 if bodies.modes.geometry == "cylinder" else 1.0
    return faces * bodies.gather / (density * bodies.length)


def _behind_fat(piece: Piece, skin: Array) -> Array:
    """Resistance of the fresh surface where only the lean share of it gives water, and skin may cover it. [s/m]

    The lean share passes its own film and skin; spread over the whole surface that is R / lean + film x fat / lean.
    """
    fat = piece.cut.composition.fat * meat(piece.cut.composition, MIDDLE_C).density / component("fat", MIDDLE_C).density
    lean = max(1.0 - fat, LEAST_LEAN) * _bare(piece)
    covered = SKIN_ON if piece.skin_on and piece.cut.species is not Species.FISH else 0.0
    resisting: Array = (skin + covered) / lean + AIR_FILM * (1.0 - lean) / lean
    return resisting


def _bare(piece: Piece) -> float:
    """The share of the surface that no skin closes; that of a bird leaks, and is counted as a resistance. [-]"""
    return FLESH_BARE if piece.cut.species is Species.FISH and piece.skin_on else 1.0


def _bark(piece: Piece, z: Array) -> Array:
    """Resistance that each kg/m2 of lost water adds; a share that is bare dries the sooner. [s/m per kg/m2]"""
    if piece.cut.species is not Species.FISH:
        return BARK * np.exp(BARK_LOG_SD * z)
    pellicle: Array = PELLICLE / _bare(piece) ** 2 * np.exp(PELLICLE_LOG_SD * z)
    return pellicle


def _dew_point(kind: Cooker, z: Array) -> Array:
    return kind.dew_point.middle + (kind.dew_point.high - kind.dew_point.low) / (2 * Z90) * np.clip(z, -3.0, 3.0)


def _narrowing(cook: Cook) -> float:
    """What past cooks leave of the cooker's spread. [-]"""
    if cook.log_sd <= 0.0:
        return 1.0
    return min(1.0, max(LEARNED_FLOOR, cook.log_sd / OWN_LOG_SD))
