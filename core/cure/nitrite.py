"""Ingoing nitrite, by the formulas of the inspectors' handbook, and back from a target to the weight of curing salt.

`nitrite` and `cure` are masses in one unit with the meat [kg]; results are mg of sodium nitrite for a kg of
what the formula counts [mg/kg]. Formula numbers F1 to F10 are those of tests/published/cure/handbook_formulas.csv.

References
----------
`sources.FSIS_HANDBOOK_1995`: comminuted pages 12-19, pumped 19, immersion 22, dry cured 24-31.
"""

from typing import Final

from core.errors import OutOfRange
from core.units import Fraction, Kilograms, MilligramsPerKilogram

MILLIGRAMS: Final = 1e6  # mg in a kg
SKIN_SHARE: Final = 0.10  # of a rind-on belly, the usual figure of the handbook, pages 27-31

# Molar masses [g/mol], from the standard atomic weights `sources.ATOMIC_WEIGHTS`
SODIUM_NITRITE: Final = 22.98977 + 14.0067 + 2 * 15.9994
POTASSIUM_NITRITE: Final = 39.0983 + 14.0067 + 2 * 15.9994
NITRITE_ION: Final = 14.0067 + 2 * 15.9994


def skin_free(green: Kilograms, skin_on: bool) -> Kilograms:
    """Green weight that a limit counts: a belly with its skin on is taken as 10 % lighter. [kg]"""
    return green * (1.0 - SKIN_SHARE) if skin_on else green


def comminuted(nitrite: Kilograms, green: Kilograms) -> MilligramsPerKilogram:
    """Ingoing nitrite of minced meat, on its green weight, never on the finished one; F1. [mg/kg]"""
    return nitrite * MILLIGRAMS / _positive("meat", green)


def dry_cured(nitrite: Kilograms, green: Kilograms) -> MilligramsPerKilogram:
    """Ingoing nitrite of a dry cure, all of it counted, on the skin-free green weight; F6. [mg/kg]"""
    return nitrite * MILLIGRAMS / _positive("meat", green)


def pumped(nitrite: Kilograms, pump: Fraction, pickle: Kilograms) -> MilligramsPerKilogram:
    """Ingoing nitrite of pumped meat, on its green weight; F3.

    Parameters
    ----------
    nitrite
        Sodium nitrite in the whole pickle. [kg]
    pump
        Gain of the meat by pumping, as a share of its green weight. [-]
    pickle
        The whole pickle: water, salt, sugar and cure. [kg]

    Returns
    -------
    Ingoing nitrite. [mg/kg]
    """
    return nitrite * pump * MILLIGRAMS / _positive("pickle", pickle)


def by_pickup(nitrite: Kilograms, pickup: Fraction, pickle: Kilograms) -> MilligramsPerKilogram:
    """Ingoing nitrite of an immersion by what the meat gains in weight (handbook, method one); F4.

    It assumes that nothing moves but the pickle that is taken up, which days in a bag disprove: shown as information,
    never used for a limit. Parameters as for `pumped`, `pickup` the gain of the meat. [mg/kg]
    """
    return pumped(nitrite, pickup, pickle)


def by_equilibrium(nitrite: Kilograms, green: Kilograms, pickle: Kilograms) -> MilligramsPerKilogram:
    """Ingoing nitrite of an immersion taken as one system, meat and whole pickle (handbook, method two); F5. [mg/kg]"""
    return nitrite * MILLIGRAMS / _positive("meat and pickle", green + pickle)


def cure_for_dry(target: MilligramsPerKilogram, green: Kilograms, strength: Fraction) -> Kilograms:
    """Curing salt for a dry cure; F7, the inverse of F6.

    Parameters
    ----------
    target
        Ingoing nitrite wanted. [mg/kg]
    green
        Skin-free green weight. [kg]
    strength
        Sodium nitrite in the curing salt. [-]

    Returns
    -------
    Curing salt. [kg]
    """
    return target * green / (MILLIGRAMS * _positive("nitrite in the curing salt", strength))


def cure_for_pumped(target: MilligramsPerKilogram, others: Kilograms, pump: Fraction, strength: Fraction) -> Kilograms:
    """Curing salt for a pickle of which `pump` goes in; `others` is the pickle without the cure; F8. [kg]

    Raises
    ------
    OutOfRange
        The curing salt is too weak: not even a pickle of nothing else reaches the target.
    """
    return target * others / _strong_enough(target, MILLIGRAMS * strength * pump, strength)


def cure_for_equilibrium(target: MilligramsPerKilogram, others: Kilograms, strength: Fraction) -> Kilograms:
    """Curing salt for an immersion; `others` is meat and pickle without the cure; F9. [kg]

    Raises
    ------
    OutOfRange
        The curing salt is too weak: not even the salt alone reaches the target.
    """
    return target * others / _strong_enough(target, MILLIGRAMS * strength, strength)


def sodium_from_potassium(potassium_nitrite: MilligramsPerKilogram) -> MilligramsPerKilogram:
    """Sodium nitrite with as much nitrite as that much potassium nitrite. [mg/kg]"""
    return potassium_nitrite * SODIUM_NITRITE / POTASSIUM_NITRITE


def potassium_from_sodium(sodium_nitrite: MilligramsPerKilogram) -> MilligramsPerKilogram:
    """Potassium nitrite with as much nitrite as that much sodium nitrite. [mg/kg]"""
    return sodium_nitrite * POTASSIUM_NITRITE / SODIUM_NITRITE


def sodium_from_ion(ion: MilligramsPerKilogram) -> MilligramsPerKilogram:
    """Sodium nitrite with that much nitrite ion; the EU counts the ion since October 2025. [mg/kg]"""
    return ion * SODIUM_NITRITE / NITRITE_ION


def ion_from_sodium(sodium_nitrite: MilligramsPerKilogram) -> MilligramsPerKilogram:
    """Nitrite ion in that much sodium nitrite. [mg/kg]"""
    return sodium_nitrite * NITRITE_ION / SODIUM_NITRITE


def _positive(quantity: str, value: float) -> float:
    if not value > 0.0:
        raise OutOfRange(quantity, value, 0.0, float("inf"))
    return value


def _strong_enough(target: float, brought: float, strength: Fraction) -> float:
    if brought <= target:
        raise OutOfRange("nitrite in the curing salt", strength, target / MILLIGRAMS, 1.0)
    return brought - target
