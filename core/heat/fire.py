"""Fuel for the hours from the heat balance of the cooker, wood by the cut.

    per hour = (shell x (T_pit - T_out) + air x c_p x (T_pit - T_out) + meat) / lower heating value

Charcoal 29.5 MJ/kg, 7 % either way; wood pellets 16.5 MJ/kg, the least of their class; propane 46.3 MJ/kg;
electricity 3.6 MJ/kWh. The balance is a floor for
still, dry air and a closed lid; what cooks report of charcoal (common practice) is two to three times that on
thin steel. The load is taken from the higher of the two with a reserve: what is not burnt keeps, a fire that
dies at night does not.
"""

from dataclasses import dataclass
from math import exp, log, sqrt
from typing import Final

from core.heat.band import Band
from core.heat.cooker import Cooker, Range, cooker
from core.meat.piece import Z90, Cut, Species
from core.sources import CHARCOAL_HEAT, COMMON_PRACTICE, PELLET_HEAT, PROPANE_HEAT, Source
from core.units import Celsius, Hours

HEATING_VALUE: Final = {"charcoal": 29.5e6, "pellets": 16.5e6, "propane": 46.3e6, "electricity": 3.6e6}  # [J/kg, J/kWh]
SOURCES: Final[dict[str, tuple[Source, ...]]] = {
    "charcoal": (CHARCOAL_HEAT, COMMON_PRACTICE),
    "pellets": (PELLET_HEAT, COMMON_PRACTICE),
    "propane": (PROPANE_HEAT, COMMON_PRACTICE),
    "electricity": (COMMON_PRACTICE,),
}
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
    """Fuel for a cook. [kg, of electricity kWh]

    `kind` is "charcoal", "pellets", "propane" or "electricity". `burnt` is the heat balance with its band, `warm_up`
    for the walls, `practice` what cooks report for those hours (0 where nobody counts), `load` what to fill or have;
    `chunks` of wood.
    """

    kind: str
    burnt: Band
    warm_up: float
    practice: Range
    load: float
    chunks: Range

    @property
    def sources(self) -> tuple[Source, ...]:
        """What the figures rest on."""
        return SOURCES[self.kind]


def fuel(kind: str, pit_c: Celsius, hours: Hours, cut: Cut, weather: Weather | None = None) -> Fuel:
    """Fuel and wood for the hours, from lighting on.

    Parameters
    ----------
    kind
        The cooker; raises Gone where there is none of that name.
    pit_c
        Set point. [°C]
    hours
        From a steady pit to the meat off; the 90 % point is the one to load for. [h]
    """
    stove = cooker(kind)
    air = weather or Weather()
    warm_up = stove.shell_heat * 1e3 * (pit_c - air.outside_c) / HEATING_VALUE[stove.fuel]
    rate = burn_rate(stove, pit_c, air)
    burnt = Band(*(hours * r for r in (rate.p10, rate.p50, rate.p90)))
    practice = _practice(stove, pit_c, air)
    usual = Range(hours * practice.low, hours * practice.high)
    load = max(RESERVE * usual.middle, RESERVE * burnt.p50, burnt.p90) + warm_up
    return Fuel(stove.fuel, burnt, warm_up, usual, load, chunks(cut))


def burn_rate(stove: Cooker, pit_c: Celsius, weather: Weather) -> Band:
    """Fuel burnt in an hour by the heat balance. [kg/h, of electricity kW]"""
    rise = pit_c - weather.outside_c
    shell = _middle(stove.shell) * rise * _wind(stove, weather)
    flue = _middle(stove.air) / 3600.0 * AIR_HEAT * rise
    power = shell + flue + MEAT_W
    spread = sqrt(
        (shell / power * _log_sd(stove.shell)) ** 2 + (flue / power * _log_sd(stove.air)) ** 2 + HEATING_LOG_SD**2
    )
    centre = 3600.0 * power / HEATING_VALUE[stove.fuel]
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
