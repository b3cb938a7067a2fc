"""How long a pot of brine takes to cool, and how much ice does it at once.

One temperature in the pot (free convection stirs it); heat leaves by air and walls, and from an open pot
by evaporation. The pot is as high as it is wide. Open air around it; no other food in the fridge.
"""

from dataclasses import dataclass
from math import pi
from typing import Final

from core.errors import OutOfRange
from core.heat.band import Band
from core.heat.humid_air import STANDARD_PRESSURE, saturation_pressure, vapour_density
from core.heat.surface import LATENT_0, LATENT_SLOPE
from core.units import Celsius, Kilograms

WATER_HEAT: Final = 4180.0  # [J/kg K]
ICE_MELTS: Final = 334e3  # [J/kg]
FREE: Final = 1.8  # h = FREE x rise^(1/4): free convection on a pot. [W/m2 K^5/4] textbook, small bodies
RADIANT: Final = 2.0  # bright metal and glass, mixed. [W/m2 K] judgement
LEWIS_COOL: Final = 1050.0  # rho cp Le^(2/3) near 30 °C. [J/m3 K]
AIR_HUMIDITY: Final = 0.6  # of the air around the pot
BAND_SHARE: Final = 0.3  # 30 % either way: pots and fridges differ
LONGEST_H: Final = 72.0
STEP_S: Final = 60.0


@dataclass(frozen=True)
class IceShare:
    """A brine made short of water and finished with ice: hot part, ice, and what they come to. [kg, kg, °C]"""

    hot: Kilograms
    ice: Kilograms
    celsius: Celsius


def hours_to(
    litres: float, start_c: Celsius, ambient_c: Celsius, to_c: Celsius = 4.0, lidded: bool = True
) -> Band | None:
    """Hours until the pot has cooled. [h] None where it takes over 72 h or never gets there.

    Parameters
    ----------
    litres
        Brine in the pot. [l]
    ambient_c
        Air around it. [°C]
    """
    if not ambient_c < start_c:
        raise OutOfRange("start", start_c, ambient_c, 100.0, "°C")
    side = (litres * 1e-3 * 4 / pi) ** (1 / 3)  # a pot as high as it is wide
    top = pi * side**2 / 4
    around = top + pi * side**2
    celsius, hours = start_c, 0.0
    while celsius > to_c:
        watts = _watts(celsius - ambient_c) * around + (0.0 if lidded else top * _evaporation(celsius, ambient_c))
        celsius -= watts * STEP_S / (litres * WATER_HEAT)
        hours += STEP_S / 3600.0
        if hours > LONGEST_H or celsius <= ambient_c + 0.05:
            return None
    return Band(hours * (1 - BAND_SHARE), hours, hours * (1 + BAND_SHARE))


def with_ice(litres: float, hot_c: Celsius, to_c: Celsius = 4.0) -> IceShare:
    """The share of the water to keep back as ice so that the brine is cold at once.

    Parameters
    ----------
    litres
        The whole of the brine. [l]
    hot_c
        Temperature of the part that was heated. [°C]
    """
    if not 0.0 < to_c < hot_c <= 100.0:
        raise OutOfRange("temperature", to_c, 0.0, hot_c, "°C")
    ice = litres * WATER_HEAT * (hot_c - to_c) / (WATER_HEAT * hot_c + ICE_MELTS)
    return IceShare(litres - ice, ice, to_c)


def ice_into(hot: Kilograms, hot_c: Celsius, to_c: Celsius = 4.0) -> Kilograms:
    """Ice that cools a hot brine as it stands, all of it melted. [kg]

    Parameters
    ----------
    hot
        The brine, counted as water. [kg]
    """
    if not 0.0 < to_c < hot_c <= 100.0:
        raise OutOfRange("temperature", to_c, 0.0, hot_c, "°C")
    return hot * WATER_HEAT * (hot_c - to_c) / (ICE_MELTS + WATER_HEAT * to_c)


def mixed(hot: Kilograms, hot_c: Celsius, ice: Kilograms) -> Celsius:
    """Temperature of hot brine with ice stirred in; 0 where ice is left over. [°C]"""
    return max(0.0, (hot * WATER_HEAT * hot_c - ice * ICE_MELTS) / ((hot + ice) * WATER_HEAT))


def _watts(rise: float) -> float:
    return (FREE * float(rise**0.25) + RADIANT) * rise


def _evaporation(celsius: Celsius, ambient_c: Celsius) -> float:
    """Heat that evaporation takes from an open surface. [W/m2]"""
    film = FREE * float(max(celsius - ambient_c, 0.1) ** 0.25)
    gap = vapour_density(saturation_pressure(celsius), celsius) - AIR_HUMIDITY * vapour_density(
        saturation_pressure(ambient_c), ambient_c
    )
    stefan = 1.0 - 0.5 * saturation_pressure(celsius) / STANDARD_PRESSURE
    return film / LEWIS_COOL / stefan * max(gap, 0.0) * (LATENT_0 - LATENT_SLOPE * celsius)
