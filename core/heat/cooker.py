"""The cookers, read from `cookers.toml` beside this file: film, walls, air, fire.

Sources of the figures stand in the file. Most are judgement, and carry a band for it.
"""

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Any, Final

from core.errors import Gone, Unreadable

FILE: Final = "cookers.toml"


@dataclass(frozen=True)
class Spread:
    """A median or mean, and the standard deviation about it (of the logarithm for a film coefficient)."""

    centre: float
    sd: float


@dataclass(frozen=True)
class Range:
    """Low and high of a quantity; which points of it these are says the file."""

    low: float
    high: float

    @property
    def middle(self) -> float:
        """Half way between."""
        return 0.5 * (self.low + self.high)


@dataclass(frozen=True)
class Cooker:
    """One kind of cooker. Units stand in the names of the file: W/m2 K, K, °C, minutes, W/K, kJ/K, kg/h."""

    name: str
    film: Spread
    emissivity: float
    wall_offset: Spread
    dew_point: Range
    pit_offset_sd: float
    pit_swing_sd: float
    stable_minutes: Range
    wait_minutes: Range
    shell: Range
    shell_heat: float
    air: Range
    practice: Range
    fuel: str


@cache
def cookers() -> dict[str, Cooker]:
    """Every cooker by name.

    Raises
    ------
    Unreadable
        The file is not as it should be; the error names the cooker and the entry.
    """
    table = tomllib.loads(resources.files("core.heat").joinpath(FILE).read_text("utf-8"))
    return {name: _cooker(name, row) for name, row in table.items()}


def cooker(name: str) -> Cooker:
    """The cooker of that name; raises Gone where there is none."""
    try:
        return cookers()[name]
    except KeyError:
        raise Gone(f"cooker {name}") from None


def _cooker(name: str, row: dict[str, Any]) -> Cooker:
    try:
        return Cooker(
            name=name,
            film=Spread(*row["film_w_m2k"]),
            emissivity=row["emissivity"],
            wall_offset=Spread(*row["wall_offset_k"]),
            dew_point=Range(*row["dew_point_c"]),
            pit_offset_sd=row["pit_offset_k"],
            pit_swing_sd=row["pit_swing_k"],
            stable_minutes=Range(*row["stable_minutes"]),
            wait_minutes=Range(*row["wait_minutes"]),
            shell=Range(*row["shell_w_k"]),
            shell_heat=row["shell_heat_kj_k"],
            air=Range(*row["air_kg_h"]),
            practice=Range(*row["practice_kg_h"]),
            fuel=row["fuel"],
        )
    except (KeyError, TypeError, ValueError) as trouble:
        raise Unreadable(FILE, name, str(trouble)) from trouble
