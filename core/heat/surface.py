"""The surface of the meat: heat in by air and walls, water out through skin and bark.

    conduction = h_c (T_pit - T_s) + eps sigma (T_wall^4 - T_s^4) - lambda j
    j          = (rho_vs(T_s) - rho_v) / (900 / (h_c F) + R)

The mass transfer coefficient follows from the film coefficient (Lewis; rho cp Le^(2/3) is about 900
J/m3 K in a film near 90 °C), F = P / (P - p_mean) is Stefan's factor for the wind of the vapour itself,
and R [s/m] is the resistance of skin, fat and bark. A wet surface (R = 0) would stall at 48 to 56 °C.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np

from core.heat.band import Array
from core.heat.humid_air import STANDARD_PRESSURE, VAPOUR_GAS_CONSTANT, saturation_pressure, vapour_density
from core.units import ZERO_CELSIUS_IN_KELVIN, Celsius, Pascals

STEFAN_BOLTZMANN: Final = 5.670374419e-8  # [W/m2 K4]
LEWIS: Final = 900.0  # rho cp Le^(2/3) of air in the film. [J/m3 K]
LATENT_0: Final = 2501e3  # heat of evaporation at 0 °C. [J/kg] from memory, within 0.3 % of steam tables
LATENT_SLOPE: Final = 2370.0  # its fall with temperature. [J/kg K]

# density of saturated vapour = exp(a + b T / (c + T)), T in °C; fitted to ASHRAE eq. 6 over 3 to 110 °C
VAPOUR_A: Final = -5.33409738
VAPOUR_B: Final = 15.5175251
VAPOUR_C: Final = 222.921785


@dataclass(frozen=True, eq=False)
class Surroundings:
    """What the surface sees, a number or one a member.

    `air_c` and `wall_c` [°C], `film` h_c [W/m2 K], `emissivity` [-], `vapour` density in the pit [kg/m3]
    and its pressure [Pa], `resistance` of skin, bark and wrap [s/m], `pressure` of the air [Pa].
    """

    air_c: Array | float
    wall_c: Array | float
    film: Array | float
    emissivity: Array | float
    vapour: Array | float
    vapour_pressure: Array | float
    resistance: Array | float
    pressure: Pascals = STANDARD_PRESSURE


@dataclass(frozen=True, eq=False)
class Flux:
    """Heat into the meat [W/m2] and water out of it [kg/m2 s] at a surface temperature, and their slopes. [per K]"""

    heat: Array
    heat_slope: Array
    water: Array
    water_slope: Array


def saturated(surface_c: Array) -> Array:
    """Density of saturated vapour, by a fit that is within 0.4 % of ASHRAE between 5 and 105 °C. [kg/m3]"""
    density: Array = np.exp(VAPOUR_A + VAPOUR_B * surface_c / (VAPOUR_C + surface_c))
    return density


def flux(surface_c: Array, around: Surroundings) -> Flux:
    """Heat and water through the surface at that temperature. Stefan's factor and the slopes hold for small steps."""
    inverse = 1.0 / (VAPOUR_C + surface_c)
    density = np.exp((VAPOUR_A + VAPOUR_B) - (VAPOUR_B * VAPOUR_C) * inverse)  # `saturated`, with its slope at hand
    kelvin = surface_c + ZERO_CELSIUS_IN_KELVIN
    vapour_pressure = VAPOUR_GAS_CONSTANT * density * kelvin + around.vapour_pressure
    stefan = np.maximum(1.0 - (0.5 / around.pressure) * vapour_pressure, 0.2)
    pass_through = 1.0 / (LEWIS * stefan / around.film + around.resistance)
    water = pass_through * (density - around.vapour)
    water_slope = (VAPOUR_B * VAPOUR_C) * pass_through * density * inverse * inverse
    latent = LATENT_0 - LATENT_SLOPE * surface_c
    radiant = STEFAN_BOLTZMANN * around.emissivity
    cube = radiant * kelvin * kelvin * kelvin
    wall = around.wall_c + ZERO_CELSIUS_IN_KELVIN
    wall = wall * wall
    heat = around.film * (around.air_c - surface_c) + radiant * wall * wall - cube * kelvin - latent * water
    heat_slope = -4.0 * cube - around.film - latent * water_slope
    return Flux(heat, heat_slope, water, water_slope)


def steady(around: Surroundings, start_c: Celsius = 50.0) -> tuple[float, float]:
    """The temperature at which a surface takes no heat, by Newton, and its evaporation. [°C, kg/m2 s]"""
    surface = np.array([start_c])
    for _ in range(40):
        now = flux(surface, around)
        surface = surface - np.clip(now.heat / now.heat_slope, -15.0, 15.0)
    return float(surface[0]), float(flux(surface, around).water[0])


def pit_vapour(dew_point_c: Celsius, pit_c: Celsius) -> float:
    """Density of the vapour in the pit's air. [kg/m3]"""
    return vapour_density(saturation_pressure(dew_point_c), pit_c)
