"""Humid air: what the pit's air carries, and how cold it can keep a wet surface.

ASHRAE Handbook - Fundamentals, chapter 1: saturation pressure over water and ice (eqs 5 and 6, after
Hyland and Wexler), humidity ratio (eq. 20), wet bulb (eqs 33 and 35). Air and vapour are ideal gases.
"""

from math import exp, log
from typing import Final

from core.errors import OutOfRange
from core.units import Celsius, Metres, Pascals, kelvin_from_celsius

STANDARD_PRESSURE: Final = 101325.0  # [Pa]
VAPOUR_GAS_CONSTANT: Final = 461.5  # [J/kg K]
MOLE_RATIO: Final = 0.621945  # water to dry air, ASHRAE ch. 1 eq. 20
HIGHEST_M: Final[Metres] = 5000.0  # of the standard atmosphere as it is computed here

# ln(p/Pa) = c0/T + c1 + c2 T + c3 T2 + c4 T3 + c5 T4 + c6 ln T, T in K
OVER_WATER: Final = (-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 0.0, 6.5459673)
OVER_ICE: Final = (-5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019)


def pressure_at(altitude_m: Metres) -> Pascals:
    """Pressure of the standard atmosphere. [Pa] ASHRAE ch. 1 eq. 3; -500 to 5000 m"""
    if not -500.0 <= altitude_m <= HIGHEST_M:
        raise OutOfRange("altitude", altitude_m, -500.0, HIGHEST_M, "m")
    return STANDARD_PRESSURE * float((1 - 2.25577e-5 * altitude_m) ** 5.2559)


def saturation_pressure(temperature_c: Celsius) -> Pascals:
    """Pressure of saturated water vapour, over ice below the triple point. [Pa] -100 to 200 °C"""
    if not -100.0 <= temperature_c <= 200.0:
        raise OutOfRange("temperature", temperature_c, -100.0, 200.0, "°C")
    t = kelvin_from_celsius(temperature_c)
    c = OVER_WATER if temperature_c >= 0.01 else OVER_ICE
    return exp(c[0] / t + c[1] + t * (c[2] + t * (c[3] + t * (c[4] + t * c[5]))) + c[6] * log(t))


def vapour_density(pressure: Pascals, temperature_c: Celsius) -> float:
    """Vapour in a cubic metre at a vapour pressure and temperature. [kg/m3]"""
    return pressure / (VAPOUR_GAS_CONSTANT * kelvin_from_celsius(temperature_c))


def humidity_ratio(vapour_pressure: Pascals, pressure: Pascals = STANDARD_PRESSURE) -> float:
    """Water with each kilogram of dry air. [kg/kg] ASHRAE ch. 1 eq. 20

    Raises
    ------
    OutOfRange
        There is no dry air left at that vapour pressure.
    """
    if not 0.0 <= vapour_pressure < pressure:
        raise OutOfRange("vapour pressure", vapour_pressure, 0.0, pressure, "Pa")
    return MOLE_RATIO * vapour_pressure / (pressure - vapour_pressure)


def wet_bulb(dry_bulb_c: Celsius, dew_point_c: Celsius, pressure: Pascals = STANDARD_PRESSURE) -> Celsius:
    """Temperature to which air cools water that it evaporates, by bisection on ASHRAE ch. 1 eqs 33 and 35. [°C]

    Parameters
    ----------
    dry_bulb_c, dew_point_c
        [°C] the dew point is not above the dry bulb

    Raises
    ------
    OutOfRange
        The dew point lies above the dry bulb.
    """
    if dew_point_c > dry_bulb_c:
        raise OutOfRange("dew point", dew_point_c, -100.0, dry_bulb_c, "°C")
    ratio = humidity_ratio(saturation_pressure(dew_point_c), pressure)
    low, high = dew_point_c, min(dry_bulb_c, boiling_point(pressure) - 1e-6)
    for _ in range(60):
        middle = 0.5 * (low + high)
        if _ratio_at_wet_bulb(dry_bulb_c, middle, pressure) > ratio:
            high = middle
        else:
            low = middle
    return 0.5 * (low + high)


def boiling_point(pressure: Pascals = STANDARD_PRESSURE) -> Celsius:
    """Temperature at which water boils under that pressure, by bisection. [°C]"""
    low, high = 50.0, 150.0
    for _ in range(60):
        middle = 0.5 * (low + high)
        if saturation_pressure(middle) > pressure:
            high = middle
        else:
            low = middle
    return 0.5 * (low + high)


def _ratio_at_wet_bulb(dry_bulb_c: Celsius, wet_bulb_c: Celsius, pressure: Pascals) -> float:
    saturated = humidity_ratio(saturation_pressure(wet_bulb_c), pressure)
    drop = dry_bulb_c - wet_bulb_c
    if wet_bulb_c >= 0.0:
        return ((2501.0 - 2.326 * wet_bulb_c) * saturated - 1.006 * drop) / (
            2501.0 + 1.86 * dry_bulb_c - 4.186 * wet_bulb_c
        )
    return ((2830.0 - 0.24 * wet_bulb_c) * saturated - 1.006 * drop) / (2830.0 + 1.86 * dry_bulb_c - 2.1 * wet_bulb_c)


def height_of(celsius: Celsius) -> Metres:
    """The height at which water boils so, by the standard atmosphere. [m] 0 at 100 °C and above; to a metre."""
    low, high = 0.0, HIGHEST_M
    while high - low > 1.0:
        middle = (low + high) / 2.0
        low, high = (middle, high) if boiling_point(pressure_at(middle)) > celsius else (low, middle)
    return low
