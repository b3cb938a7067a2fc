"""What is put together for a cure: meat, curing salt, salt, sugar, water, and what that makes of it by law.

The same noun serves the dose that is planned and the one that a cook has already put in.
"""

from dataclasses import dataclass
from typing import Final

from core.cure import nitrite
from core.cure.limits import METHODS, Ingoing
from core.errors import Gone, OutOfRange, UnknownCure
from core.units import Fraction, Kilograms, MilligramsPerKilogram

# The weakest curing salts on sale hold 0.4 to 0.6 % (TRADE practice), the strongest dilute one 6.25 %. Past 8 % it
# is no diluted cure any more, and a slip of the scale is poison.
WEAKEST_CURE: Final[Fraction] = 0.003
STRONGEST_CURE: Final[Fraction] = 0.08
STRONG_CURES: Final[tuple[Fraction, ...]] = (0.0625, 0.0588)  # the pink kinds as packets print them, the usual first
WEAK_CURES: Final[tuple[Fraction, ...]] = (0.006, 0.005)  # curing salts of the Continent, the same
LEAFLET_BRINE: Final[Fraction] = 1.0 / 8.0  # 1 part of salt to 7 of water by weight, sources.HOT_SMOKED_FISH
SATURATED_BRINE: Final[Fraction] = 0.26395  # salt in saturated brine at 60 °F = 100 degrees, sources.SALOMETER
USUAL_PICKUP: Final[Fraction] = 0.10  # upper end of +3 to +10 % in 3 to 7 days, common practice


@dataclass(frozen=True)
class Contents:
    """What is in the bag, tub or needle.

    `method` is "brine", "dry", "inject" or "comminuted". Masses in kg as weighed. `nitrite_fraction` and
    `nitrate_fraction` are the sodium nitrite and nitrate printed on the curing salt; the rest of it counts as salt.
    `pump_fraction` is the gain by injection; `rubbed_salt_kg` the part of `salt_kg` (and all sugar) that is rubbed on
    an injected piece because the pickle cannot carry it. `covered` says that the rest of the pickle stands about the
    injected piece, as its cover brine.
    """

    method: str
    meat_kg: Kilograms
    cure_kg: Kilograms
    nitrite_fraction: Fraction
    salt_kg: Kilograms = 0.0
    sugar_kg: Kilograms = 0.0
    water_kg: Kilograms = 0.0
    nitrate_fraction: Fraction = 0.0
    pump_fraction: Fraction = 0.10
    rubbed_salt_kg: Kilograms = 0.0
    covered: bool = False
    skin_on: bool = False
    product_class: str = "whole_muscle"
    jurisdiction: str = "US"

    @property
    def counted_meat_kg(self) -> Kilograms:
        """Green weight that limits and diffusion count, without the skin. [kg]"""
        return nitrite.skin_free(self.meat_kg, self.skin_on)

    @property
    def nitrite_kg(self) -> Kilograms:
        """Sodium nitrite put in. [kg]"""
        return self.cure_kg * self.nitrite_fraction

    @property
    def nitrate_kg(self) -> Kilograms:
        """Sodium nitrate put in. [kg]"""
        return self.cure_kg * self.nitrate_fraction

    @property
    def all_salt_kg(self) -> Kilograms:
        """Salt put in, that of the curing salt included. [kg]"""
        return self.salt_kg + self.cure_kg * (1.0 - self.nitrite_fraction - self.nitrate_fraction)

    @property
    def pickle_kg(self) -> Kilograms:
        """The whole pickle: water, salt, sugar and cure, but not what is rubbed on an injected piece. [kg]"""
        rubbed = self.rubbed_salt_kg + self.sugar_kg if self.method == "inject" and not self.covered else 0.0
        return self.water_kg + self.salt_kg + self.sugar_kg + self.cure_kg - rubbed

    @property
    def salt_fraction(self) -> Fraction:
        """Salt, that of the curing salt included, in meat plus water: what the meat tends to. [-]"""
        return self.all_salt_kg / (self.counted_meat_kg + self.water_kg)

    @property
    def brine_strength(self) -> Fraction:
        """Salt in salt plus water of the pickle as it is made. [-] 0 where there is no water"""
        salt = self.all_salt_kg - self.rubbed_salt_kg
        return salt / (salt + self.water_kg) if self.water_kg > 0.0 else 0.0

    @property
    def pumped_kg(self) -> Kilograms:
        """Pickle that the needles put in; one smaller than the pump would take is pumped whole. [kg] 0 uninjected"""
        return min(self.pump_fraction * self.counted_meat_kg, self.pickle_kg) if self.method == "inject" else 0.0

    def ingoing(self) -> Ingoing:
        """Ingoing nitrite and nitrate by the formula of the method: equilibrium for a brine. [mg/kg]"""
        return Ingoing(self._by_method(self.nitrite_kg), self._by_method(self.nitrate_kg))

    def by_pickup(self, pickup: Fraction = USUAL_PICKUP) -> MilligramsPerKilogram | None:
        """Ingoing nitrite of a brine by what the meat gains in weight, as information; None without a brine. [mg/kg]"""
        if self.method != "brine":
            return None
        return nitrite.by_pickup(self.nitrite_kg, pickup, self.pickle_kg)

    def _by_method(self, substance: Kilograms) -> MilligramsPerKilogram:
        match self.method:
            case "brine":
                return nitrite.by_equilibrium(substance, self.counted_meat_kg, self.pickle_kg)
            case "inject":
                return self._injected(substance)
            case _:
                return nitrite.dry_cured(substance, self.counted_meat_kg)

    def _injected(self, substance: Kilograms) -> MilligramsPerKilogram:
        """What the needles put in; with a cover brine all of it at rest, where that is more."""
        by_needle = nitrite.pumped(substance, self.pumped_kg / self.counted_meat_kg, self.pickle_kg)
        if not self.covered:
            return by_needle
        return max(by_needle, nitrite.by_equilibrium(substance, self.counted_meat_kg, self.pickle_kg))


def salometer_degrees(strength: Fraction) -> float:
    """Brine strength in salometer degrees, 100 for a saturated one.

    Parameters
    ----------
    strength
        Salt in salt plus water. [-] 0 to 0.26395

    Raises
    ------
    OutOfRange
        No brine is that strong: the salt would not dissolve.
    """
    if not 0.0 <= strength <= SATURATED_BRINE * (1.0 + 1e-9):
        raise OutOfRange("salt in the brine", strength, 0.0, SATURATED_BRINE)
    return 100.0 * strength / SATURATED_BRINE


def check_method(method: str) -> None:
    """Raise Gone for a method that there is not."""
    if method not in METHODS:
        raise Gone(f"method {method}")


def check_strength(fraction: Fraction | None) -> Fraction:
    """The nitrite of a curing salt, if it is one that can be dosed in a kitchen.

    Raises
    ------
    UnknownCure
        Nobody has read it off the packet, or there is none in it.
    OutOfRange
        It is weaker or stronger than curing salts are: a slip, or pure nitrite, which is not dosed here.
    """
    if fraction is None or fraction <= 0.0:
        raise UnknownCure("" if fraction is None else f"{fraction:g}")
    if not WEAKEST_CURE <= fraction <= STRONGEST_CURE:
        raise OutOfRange("nitrite in the curing salt", fraction, WEAKEST_CURE, STRONGEST_CURE)
    return fraction
