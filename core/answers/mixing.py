"""Sums of the tub: thinner brine, what to inject, a recipe in another size, sugar, how big a vessel, how much ice."""

from dataclasses import dataclass
from typing import Final

from core.answers.amounts import Span
from core.cure.contents import SATURATED_BRINE
from core.errors import OutOfRange
from core.units import Celsius, Fraction, Hours, Kilograms

SUGAR: Final = (0.005, 0.015)  # of the meat, and of the water with it. Common practice
IN_A_BAG: Final = (0.3, 0.5)  # kg of water for a kg of meat. Common practice
IN_A_TUB: Final = (0.6, 1.0)
BAG: Final = (2.2, 2.8)  # l for a kg of meat with its brine, room to tie it. Common practice
ROOM: Final = 1.25  # of meat and brine, so that nothing runs over. Common practice
MEAT_DENSITY: Final = 1.06  # kg/l. sources.CHOI_OKOS_1986, lean meat in the fridge
PUMP: Final[Fraction] = 0.10  # of the meat. Common practice
MELTING: Final = 333.6  # kJ/kg, of ice at 0 °C. sources.INCROPERA
WATER_HEAT: Final = 4.19  # kJ/(kg K). sources.INCROPERA
MEAT_HEAT: Final = 3.5  # kJ/(kg K), lean meat. sources.CHOI_OKOS_1986
COLD: Final[Celsius] = 4.0
TAP: Final[Celsius] = 15.0
BOILING: Final[Celsius] = 100.0
STEAM: Final = (0.75, 1.0)  # h for a kg, cold to hot through. Common practice
READ_TO: Final = 0.5  # K, as close as a probe is read
DENSITY_OF_SALT: Final = 0.74  # kg/l that a brine is heavier for a share of salt of 1; of weak ones at room temperature


@dataclass(frozen=True)
class Scaled:
    """A recipe in another size: how many times as much, and each of its masses. [-, kg]"""

    factor: float
    masses: tuple[Kilograms, ...]


def sugar(counted_kg: Kilograms, share: Fraction | None = None) -> Span:
    """Sugar for meat, and for the water with it. [kg]"""
    low, high = (share, share) if share is not None else SUGAR
    return Span(counted_kg * low, counted_kg * (low + high) / 2.0, counted_kg * high)


def water_to_thin(brine_kg: Kilograms, strength: Fraction, wanted: Fraction) -> Kilograms:
    """Water that brings a brine down to a strength. [kg]

    Raises
    ------
    OutOfRange
        What is wanted is no weaker.
    """
    if not 0.0 < wanted < strength:
        raise OutOfRange("strength of the brine", wanted, 0.0, strength)
    return brine_kg * (strength / wanted - 1.0)


def salt_to_raise(brine_kg: Kilograms, strength: Fraction, wanted: Fraction) -> Kilograms:
    """Salt that brings a brine up to a strength. [kg]

    Raises
    ------
    OutOfRange
        What is wanted is no stronger, or more than water dissolves.
    """
    if not 0.0 <= strength < wanted <= SATURATED_BRINE:
        raise OutOfRange("strength of the brine", wanted, strength, SATURATED_BRINE)
    return brine_kg * (wanted - strength) / (1.0 - wanted)


def thinned(brine_kg: Kilograms, strength: Fraction, water_kg: Kilograms) -> Fraction:
    """The strength of a brine after water went in. [-]"""
    return brine_kg * strength / (brine_kg + water_kg)


def brine_mass(litres: float, strength: Fraction) -> Kilograms:
    """What so many litres of a brine weigh. [kg]"""
    return litres * (1.0 + DENSITY_OF_SALT * strength)


def scaled(recipe_kg: Kilograms, own_kg: Kilograms, masses: tuple[Kilograms, ...]) -> Scaled:
    """The masses of a recipe for so much meat, for one's own meat. [kg]"""
    if recipe_kg <= 0.0 or own_kg <= 0.0:
        raise OutOfRange("meat", min(recipe_kg, own_kg), 0.0, 100.0, "kg")
    return Scaled(own_kg / recipe_kg, tuple(mass * own_kg / recipe_kg for mass in masses))


def vessel(meat_kg: Kilograms) -> Span:
    """Litres of a tub for meat and the brine that covers it, from little brine to much. [l]"""
    low, high = (ROOM * (meat_kg / MEAT_DENSITY + share * meat_kg) for share in IN_A_TUB)
    return Span(low, (low + high) / 2.0, high)


def ice(meat_kg: Kilograms, start_c: Celsius, water_kg: Kilograms = 0.0) -> Kilograms:
    """Ice that cools meat, and tap water beside it, to the fridge's cold, all of it melted. [kg]"""
    if not COLD < start_c <= 100.0:
        raise OutOfRange("core", start_c, COLD, 100.0, "°C")
    taken = MEAT_HEAT * meat_kg * (start_c - COLD) + WATER_HEAT * water_kg * (TAP - COLD)
    return taken / (MELTING + WATER_HEAT * COLD)


def ice_in_brine(hot: Kilograms, whole: Kilograms) -> tuple[Kilograms, Kilograms]:
    """Ice, and tap water with it, that bring a boiled part of a brine to its full amount at the fridge's cold. [kg]

    The second figure is 0 where all that is missing has to be ice, and is too little.

    Raises
    ------
    OutOfRange
        The boiled part is no smaller than the whole.
    """
    if not 0.0 < hot < whole:
        raise OutOfRange("boiled water", hot, 0.0, whole, "kg")
    rest = whole - hot
    taken = WATER_HEAT * (hot * (BOILING - COLD) + rest * (TAP - COLD))
    melted = taken / (MELTING + WATER_HEAT * COLD + WATER_HEAT * (TAP - COLD))
    return min(melted, rest), max(rest - melted, 0.0)


def steaming(mass: Kilograms) -> Span:
    """Hours in steam until a cold piece is hot through. [h]"""
    low, high = (hours * mass for hours in STEAM)
    return Span(low, (low + high) / 2.0, high)


def straight_on(first_c: Celsius, last_c: Celsius, hours: Hours, target_c: Celsius) -> Span:
    """Hours that are left, were the core to go on as between its last two readings, each read to half a degree. [h]

    Raises
    ------
    OutOfRange
        It does not rise by more than the readings may be out, or is there already.
    """
    rise, left = last_c - first_c, target_c - last_c
    if hours <= 0.0 or left <= 0.0 or rise <= 2.0 * READ_TO:
        raise OutOfRange("rise of the core", rise, 2.0 * READ_TO, left, "K")
    quick, usual, slow = (left * hours / (rise + out) for out in (2.0 * READ_TO, 0.0, -2.0 * READ_TO))
    return Span(quick, usual, slow)
