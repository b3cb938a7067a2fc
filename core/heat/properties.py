"""Density, heat capacity and conductivity of meat from its composition and temperature.

Choi and Okos (1986), as in the ASHRAE Refrigeration Handbook, chapter 19, table 3; -40 to 150 °C.
Mixtures: density by volume, heat capacity by mass, conductivity in parallel by volume. Meat conducts
less well than the parallel rule, since its fibres lie every way: 0.9 of it is taken (judgement; in
series it would be 20 to 25 % less).

A public misprint gives the slope of the conductivity of fat as 2.7604e-3: it is e-4.
"""

from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from core.errors import OutOfRange
from core.meat.piece import Composition
from core.units import Celsius, SquareMetresPerSecond, WattsPerMetreKelvin

LOW_C: Final = -40.0
HIGH_C: Final = 150.0
PARALLEL_SHARE: Final = 0.9  # of the parallel conductivity; judgement, spread in the models

Polynomial = tuple[float, float, float]

# a + b T + c T2 with T in °C. [kg/m3]
DENSITY: Final[dict[str, Polynomial]] = {
    "water": (997.18, 3.1439e-3, -3.7574e-3),
    "protein": (1329.9, -0.51840, 0.0),
    "fat": (925.59, -0.41757, 0.0),
    "carbohydrate": (1599.1, -0.31046, 0.0),
    "fibre": (1311.5, -0.36589, 0.0),
    "ash": (2423.8, -0.28063, 0.0),
    "ice": (916.89, -0.13071, 0.0),
}
# [J/kg K]
HEAT_CAPACITY: Final[dict[str, Polynomial]] = {
    "water": (4128.9, -9.0864e-2, 5.4731e-3),
    "protein": (2008.2, 1.2089, -1.3129e-3),
    "fat": (1984.2, 1.4733, -4.8008e-3),
    "carbohydrate": (1548.8, 1.9625, -5.9399e-3),
    "fibre": (1845.9, 1.8306, -4.6509e-3),
    "ash": (1092.6, 1.8896, -3.6817e-3),
    "ice": (2062.3, 6.0769, 0.0),
}
# [W/m K]
CONDUCTIVITY: Final[dict[str, Polynomial]] = {
    "water": (0.57109, 1.7625e-3, -6.7036e-6),
    "protein": (0.17881, 1.1958e-3, -2.7178e-6),
    "fat": (0.18071, -2.7604e-4, -1.7749e-7),
    "carbohydrate": (0.20141, 1.3874e-3, -4.3312e-6),
    "fibre": (0.18331, 1.2497e-3, -3.1683e-6),
    "ash": (0.32962, 1.4011e-3, -2.9069e-6),
    "ice": (2.2196, -6.2489e-3, 1.0154e-4),
}


@dataclass(frozen=True)
class Properties:
    """What heat meets in meat at one temperature."""

    density: float  # [kg/m3]
    heat_capacity: float  # [J/kg K]
    conductivity: WattsPerMetreKelvin

    @property
    def volumetric_heat(self) -> float:
        """Heat to warm a cubic metre by one kelvin. [J/m3 K]"""
        return self.density * self.heat_capacity

    @property
    def diffusivity(self) -> SquareMetresPerSecond:
        """Conductivity over volumetric heat. [m2/s]"""
        return self.conductivity / self.volumetric_heat


def component(name: str, temperature_c: Celsius) -> Properties:
    """A pure component ("water", "protein", "fat", "carbohydrate", "fibre", "ash", "ice").

    Parameters
    ----------
    temperature_c
        [°C] -40 to 150

    Raises
    ------
    OutOfRange
        The equations are not given there.
    """
    if not LOW_C <= temperature_c <= HIGH_C:
        raise OutOfRange("temperature", temperature_c, LOW_C, HIGH_C, "°C")
    return Properties(
        _value(DENSITY[name], temperature_c),
        _value(HEAT_CAPACITY[name], temperature_c),
        _value(CONDUCTIVITY[name], temperature_c),
    )


@lru_cache(maxsize=256)
def parallel(composition: Composition, temperature_c: Celsius) -> Properties:
    """Meat of that composition with heat running along its components (the parallel rule).

    The shares are taken as they are printed; the density divides by their sum, which is 1 within the
    rounding of the table.
    """
    shares = _shares(composition)
    parts = {name: component(name, temperature_c) for name in shares}
    volume = {name: share / parts[name].density for name, share in shares.items()}
    room = sum(volume.values())
    return Properties(
        sum(shares.values()) / room,
        sum(share * parts[name].heat_capacity for name, share in shares.items()) / sum(shares.values()),
        sum(volume[name] / room * parts[name].conductivity for name in shares),
    )


def meat(composition: Composition, temperature_c: Celsius) -> Properties:
    """Meat as the models take it: the parallel rule with 0.9 of its conductivity."""
    along = parallel(composition, temperature_c)
    return Properties(along.density, along.heat_capacity, PARALLEL_SHARE * along.conductivity)


def _shares(composition: Composition) -> dict[str, float]:
    return {
        "water": composition.water,
        "protein": composition.protein,
        "fat": composition.fat,
        "ash": composition.ash,
    }


def _value(polynomial: Polynomial, temperature_c: Celsius) -> float:
    constant, linear, square = polynomial
    return constant + linear * temperature_c + square * temperature_c**2
