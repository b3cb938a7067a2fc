"""How fast nitrite and salt move in raw meat, how fast nitrite is used up, and what heat does to it.

The default is TUNED: chosen inside the published range so that one case of common practice is reproduced
(docs/science/curing.md weighs the evidence). One diffusivity serves salt and nitrite: in free water their salts
differ by 2 to 3 % (`sources.KIRK_IONS`).
"""

from dataclasses import dataclass
from math import exp, hypot, log
from typing import Final

from core.meat.piece import Species
from core.units import Celsius, SquareMetresPerSecond, kelvin_from_celsius

REFERENCE_C: Final[Celsius] = 3.0
ACTIVATION_ENERGY: Final = 21_000.0  # [J/mol] viscosity of water; nitrate across the fibre 24.7 (sources.GOMEZ_2017)
GAS_CONSTANT: Final = 8.314462618  # [J/(mol K)] exact to the digits
HOUSE_LOG_SD: Final = 0.35  # 90 % of pieces within 1.5 to 4.6e-10, the published beef and pork rows
LOSS_LOG_SD: Final = 0.5
COLOUR_SET_C: Final[Celsius] = 65.0  # above it the pigment is set; further movement no longer counts


@dataclass(frozen=True)
class Tissue:
    """Effective diffusivity at 3 °C [m² s⁻¹], and the log-sd that a species adds to the house's own."""

    diffusivity: SquareMetresPerSecond
    extra_log_sd: float

    def log_sd(self, learned: float) -> float:
        """Standard deviation of ln D, that of the person (0.35 untaught) and of the species together. [-]"""
        return hypot(learned, self.extra_log_sd)


# CONFIRMED ranges, TUNED centre: lean beef and pork; poultry is the same with log-sd 0.45, fish 1.5e-10 with 0.5
LEAN: Final = Tissue(2.6e-10, 0.0)
POULTRY: Final = Tissue(2.6e-10, 0.283)
FISH: Final = Tissue(1.5e-10, 0.357)


def tissue(species: Species) -> Tissue:
    """The lean of a species. Fat, rind and skin (about 5e-13) are taken as sealed by the geometry instead."""
    match species:
        case Species.FISH:
            return FISH
        case Species.TURKEY | Species.CHICKEN | Species.DUCK:
            return POULTRY
        case _:
            return LEAN


def warming(temperature: Celsius) -> float:
    """D at a temperature over D at 3 °C, by Arrhenius. [-] Meant for 0 to 65 °C."""
    inverse = 1.0 / kelvin_from_celsius(temperature) - 1.0 / kelvin_from_celsius(REFERENCE_C)
    return exp(-ACTIVATION_ENERGY / GAS_CONSTANT * inverse)


def mean_warming(start_c: Celsius, end_c: Celsius, parts: int = 16) -> float:
    """Mean of `warming` while the temperature runs evenly from `start_c` to `end_c`, by Simpson's rule. [-]"""
    step = (end_c - start_c) / parts
    weights = [1, *([4, 2] * (parts // 2))[:-1], 1]
    return sum(w * warming(start_c + i * step) for i, w in enumerate(weights)) / (3.0 * parts)


def nitrite_loss(temperature: Celsius, ph: float = 5.7) -> float:
    """Rate at which raw meat uses up nitrite. [s⁻¹]

    log10(half-life in h) = 0.65 - 0.025 T + 0.35 pH, from memory (`sources.NORDIN_1969`): 15 days at 3 °C, log-sd 0.5.
    """
    half_life_h: float = 10.0 ** (0.65 - 0.025 * temperature + 0.35 * ph)
    return log(2.0) / (half_life_h * 3600.0)
