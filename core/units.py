"""One unit for each quantity inside the house, and the exact conversions that published tables need.

Inside, temperature is °C, mass kg, length m, time s, salt a mass fraction, nitrite mg/kg. A person's
own units are read and written at the rims of the house with a unit library; the functions here exist
because the rules themselves are printed in °F, lb and inches.

Factors are exact by definition: International Yard and Pound Agreement, 1959; °F from the
International Temperature Scale.
"""

from typing import Final, TypeAlias

Celsius: TypeAlias = float
Fahrenheit: TypeAlias = float
Kelvin: TypeAlias = float
Kilograms: TypeAlias = float
Grams: TypeAlias = float
Metres: TypeAlias = float
Seconds: TypeAlias = float
Hours: TypeAlias = float
Days: TypeAlias = float
Fraction: TypeAlias = float
MilligramsPerKilogram: TypeAlias = float
SquareMetresPerSecond: TypeAlias = float
WattsPerSquareMetreKelvin: TypeAlias = float
WattsPerMetreKelvin: TypeAlias = float
Pascals: TypeAlias = float

KILOGRAMS_PER_POUND: Final = 0.45359237
METRES_PER_INCH: Final = 0.0254
METRES_PER_FOOT: Final = 12 * METRES_PER_INCH
KILOGRAMS_PER_OUNCE: Final = KILOGRAMS_PER_POUND / 16
LITRES_PER_US_GALLON: Final = 3.785411784
ZERO_CELSIUS_IN_KELVIN: Final = 273.15
SECONDS_PER_MINUTE: Final = 60.0
SECONDS_PER_HOUR: Final = 3600.0
SECONDS_PER_DAY: Final = 86400.0


def celsius_from_fahrenheit(temperature_f: Fahrenheit) -> Celsius:
    """Temperature in °C from °F, exact. [°C]"""
    return (temperature_f - 32.0) / 1.8


def fahrenheit_from_celsius(temperature_c: Celsius) -> Fahrenheit:
    """Temperature in °F from °C, exact. [°F]"""
    return temperature_c * 1.8 + 32.0


def kelvin_from_celsius(temperature_c: Celsius) -> Kelvin:
    """Absolute temperature from °C, exact. [K]"""
    return temperature_c + ZERO_CELSIUS_IN_KELVIN
