"""Fuel for the hours: charcoal from the heat balance of the cooker, wood by the cut.

    kg/h = (shell x (T_pit - T_out) + air x c_p x (T_pit - T_out) + meat) / lower heating value

Lower heating value 29.5 MJ/kg, 7 % either way. The balance is a floor for still, dry air and a closed
lid; what cooks report (common practice) is two to three times that on thin steel. The load is taken from
the higher of the two with a reserve: unburnt charcoal keeps, a fire that dies at night does not.
"""

from dataclasses import dataclass
from math import exp, log, sqrt
from typing import Final

from core.errors import Missing
from core.heat.band import Band
from core.heat.cooker import Cooker, Range, cooker
from core.meat.piece import Z90, Cut, Species
from core.sources import CHARCOAL_HEAT, COMMON_PRACTICE, Source
from core.units import Celsius, Hours, Kilograms

HEATING_VALUE: Final = 29.5e6  # [J/kg]
HEATING_LOG_SD: Final = 0.07 / 1.645
AIR_HEAT: Final = 1010.0  # [J/kg K]
MEAT_W: Final = 100.0  # what a flat takes up, evaporation included. DERIVED
RESERVE: Final = 1.4  # common practice: load = hours x rate x 1.4
Z95: Final = 1.6448536269514722


@dataclass(frozen=True)
class Weather:
    """The air outside. [°C, m/s]"""

    outside_c: Celsius = 20.0
    wind_m_s: float = 0.0


@dataclass(frozen=True)
class Fuel:
    """Charcoal for a cook. [kg]

    `burnt` is the heat balance with its band, `warm_up` for the walls, `practice` what cooks report for
    those hours, `load` what to fill; `stable_minutes` from lighting to a steady pit; `chunks` of wood.
    """

    burnt: Band
    warm_up: Kilograms
    practice: Range
    load: Kilograms
    stable_minutes: Range
    chunks: Range
    sources: tuple[Source, ...] = (CHARCOAL_HEAT, COMMON_PRACTICE)


def fuel(kind: str, pit_c: Celsius, hours: Hours, cut: Cut, weather: Weather | None = None) -> Fuel:
    """Charcoal and wood for the hours, from lighting on.

    Parameters
    ----------
    pit_c
        Set point. [°C]
    hours
        From a steady pit to the meat off; the 90 % point is the one to load for. [h]

    Raises
    ------
    Missing
        The cooker burns no charcoal.
    """
    stove = cooker(kind)
    if stove.fuel != "charcoal":
        raise Missing("charcoal")
    air = weather or Weather()
    warm_up = stove.shell_heat * 1e3 * (pit_c - air.outside_c) / HEATING_VALUE
    rate = burn_rate(stove, pit_c, air)
    burnt = Band(*(hours * r for r in (rate.p10, rate.p50, rate.p90)))
    practice = _practice(stove, pit_c, air)
    usual = Range(hours * practice.low, hours * practice.high)
    load = max(RESERVE * usual.middle, RESERVE * burnt.p50, burnt.p90) + warm_up
    return Fuel(burnt, warm_up, usual, load, stove.stable_minutes, chunks(cut))


def burn_rate(stove: Cooker, pit_c: Celsius, weather: Weather) -> Band:
    """Charcoal burnt in an hour by the heat balance. [kg/h]"""
    rise = pit_c - weather.outside_c
    shell = _middle(stove.shell) * rise * _wind(stove, weather)
    flue = _middle(stove.air) / 3600.0 * AIR_HEAT * rise
    power = shell + flue + MEAT_W
    spread = sqrt(
        (shell / power * _log_sd(stove.shell)) ** 2 + (flue / power * _log_sd(stove.air)) ** 2 + HEATING_LOG_SD**2
    )
    centre = 3600.0 * power / HEATING_VALUE
    return Band(centre * exp(-Z90 * spread), centre, centre * exp(Z90 * spread))


def chunks(cut: Cut) -> Range:
    """Fist-size chunks of wood (60 to 120 g each). Common practice, no source."""
    if cut.species in (Species.TURKEY, Species.CHICKEN, Species.DUCK, Species.FISH):
        return Range(1, 2)
    small = any(word in cut.name for word in ("loin", "belly", "bacon", "rib"))
    return Range(2, 3) if small else Range(3, 5)


def _practice(stove: Cooker, pit_c: Celsius, weather: Weather) -> Range:
    """What cooks report in an hour, moved from 121 °C with the rise over the air. [kg/h]"""
    scale = (pit_c - weather.outside_c) / (121.0 - 20.0) * _wind(stove, weather)
    return Range(stove.practice.low * scale, stove.practice.high * scale)


def _wind(stove: Cooker, weather: Weather) -> float:
    """Wind over 6.7 m/s (15 mph) adds 10 to 20 % on ceramic, 50 to 100 % on steel: common practice."""
    share = min(1.0, max(0.0, weather.wind_m_s / 6.7))
    return 1.0 + share * (0.15 if stove.name == "ceramic" else 0.75)


def _middle(span: Range) -> float:
    return sqrt(span.low * span.high)


def _log_sd(span: Range) -> float:
    return log(span.high / span.low) / (2 * Z95)
