"""Sums of the kitchen that no other room makes: salt in a mix, sodium, portions, cups of salt, a coarse scale."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import ceil, sqrt
from typing import Final, TypeAlias

from core.errors import OutOfRange
from core.units import Fraction, Kilograms

SODIUM_IN_SALT: Final[Fraction] = 22.98977 / (22.98977 + 35.45)  # sources.ATOMIC_WEIGHTS
STARTER: Final[Kilograms] = 0.075  # cooked, before a meal. Common practice, no source
PORTION: Final = (
    0.10,
    0.15,
    0.20,
)  # kg cooked for each: with other dishes, a sandwich or plate, a feast. Common practice
WHOLE_BIRD: Final = (0.45, 0.57, 0.68)  # kg raw for each, with its bones: 1 to 1.5 lb. Common practice
PACKER_TRIM: Final = (0.20, 0.30)  # of an untrimmed whole brisket. Common practice
SLICE: Final[Kilograms] = 0.03  # a usual slice. Common practice
SLICED_AWAY: Final[Fraction] = 0.05  # ends and crumbs. Common practice
Left: TypeAlias = tuple[Fraction, Fraction]  # cooked weight of raw, from the least to the most
LEFT_TENDER: Final[Left] = (0.55, 0.65)  # red meat cooked until tender. Common practice
LEFT_FIRM: Final[Left] = (0.70, 0.78)  # a whole bird, or whatever else is cooked to its floor. Common practice
LEFT_OF: Final[Mapping[str, Left]] = {
    "bacon": (0.85, 0.95), "back_bacon": (0.82, 0.90), "ham": (0.80, 0.88), "boiled_ham": (0.80, 0.88),
    "turkey": (0.75, 0.85), "duck": (0.75, 0.85), "salmon": (0.70, 0.82), "trout": (0.65, 0.78),
}  # by product, cooked to its floor. Common practice  # fmt: skip
BONE: Final[Fraction] = 0.15  # of a leg or a bird that is bought with its bones. Common practice
RUB: Final = (0.025, 0.030, 0.040)  # kg for a kg of meat. Common practice
SALT_UNCURED: Final = (0.010, 0.015)  # kg for a kg of meat that is not cured, in its rub. Common practice
DRAWN: Final = (0.01, 0.05)  # of its weight that meat loses in a bag with its dry cure. Common practice
SPICE: Final = (0.006, 0.008)  # kg pickling spice for a kg of meat. Common practice
CUP: Final = {
    "table": (0.270, 0.300),
    "coarse": (0.220, 0.250),
    "light": (0.130, 0.150),
}  # kg a US cup. Common practice
TEASPOON: Final = {
    "sugar": 0.0042,
    "brown sugar": 0.0046,
    "honey": 0.0070,
    "maple syrup": 0.0066,
    "black pepper": 0.0023,
    "pepper": 0.0023,
    "paprika": 0.0023,
    "garlic powder": 0.0031,
    "onion powder": 0.0024,
    "coriander seed": 0.0018,
    "coriander": 0.0018,
    "mustard powder": 0.0020,
    "allspice": 0.0019,
    "cloves": 0.0021,
    "fennel seed": 0.0020,
    "celery seed": 0.0020,
    "dill seed": 0.0021,
    "cayenne": 0.0018,
    "chili powder": 0.0027,
    "cinnamon": 0.0026,
    "ginger": 0.0018,
}  # kg a level US teaspoon. sources.USDA_SR28, household weights
CLOSE: Final[Fraction] = 0.1  # of the curing salt in a stock: a step of a scale that still weighs it. Judgement
STOCK: Final = (0.010, 0.090)  # kg of curing salt in kg of water: one part in ten


@dataclass(frozen=True)
class Span:
    """An amount as its low, its usual and its high end."""

    low: float
    usual: float
    high: float

    def times(self, factor: float) -> "Span":
        """So many times as much."""
        return Span(self.low * factor, self.usual * factor, self.high * factor)


@dataclass(frozen=True)
class Coarse:
    """A dose on a scale that shows whole steps: what it may be out by, and the stock to weigh instead. [-, kg]

    `cure` and `water` make enough of the stock; `will_do` says whether that scale weighs them closely enough.
    """

    error_low: Fraction
    error_high: Fraction
    stock: Kilograms
    cure: Kilograms
    water: Kilograms
    will_do: bool


def salinity(salt_kg: Kilograms, water_kg: Kilograms, meat_kg: Kilograms = 0.0) -> Fraction:
    """Salt in all that it ends up in, once it is even. [-]

    Raises
    ------
    OutOfRange
        Nothing to dissolve it in, or no salt.
    """
    everything = salt_kg + water_kg + meat_kg
    if salt_kg <= 0.0 or water_kg + meat_kg <= 0.0:
        raise OutOfRange("salt in the mix", salt_kg, 0.0, everything, "kg")
    return salt_kg / everything


def water_for(strength: Fraction, salt_kg: Kilograms) -> Kilograms:
    """Water in which so much salt makes a brine of a strength, as salt in salt plus water. [kg] strength under 0.26"""
    return salt_kg / (salt_for(strength, 1.0))


def salt_for(strength: Fraction, water_kg: Kilograms) -> Kilograms:
    """Salt that makes a brine of a strength, as salt in salt plus water. [kg] strength under 0.26"""
    if not 0.0 < strength < 0.26395:  # sources.SALOMETER: no more dissolves
        raise OutOfRange("salt in the brine", strength, 0.0, 0.26395)
    return strength * water_kg / (1.0 - strength)


def sodium(salt_kg: Kilograms) -> Kilograms:
    """Sodium in that much salt. [kg] `sources.ATOMIC_WEIGHTS`"""
    return SODIUM_IN_SALT * salt_kg


def salt_in_slice(mass: Kilograms, salt_fraction: Fraction, share: Fraction | None = None) -> Span:
    """Salt in cooked meat that was cured to `salt_fraction` raw and has lost water since; juice takes some along. [kg]

    The low end is as if it left with the juice, the high end as if all of it stayed; where the share that
    was lost is told, all of it stayed.
    """
    low, high = mass * salt_fraction, mass * salt_fraction / (1.0 - share if share else LEFT_TENDER[0])
    return Span(low, high if share else sqrt(low * high), high)


def left_of(product: str, tender: bool) -> Left:
    """What cooking leaves of a product's meat. [-]"""
    return LEFT_TENDER if tender else LEFT_OF.get(product, LEFT_FIRM)


def cooked(mass: Kilograms, left: Left = LEFT_TENDER, untrimmed: bool = False) -> Span:
    """What is left of a raw piece after trimming and cooking. [kg]"""
    low, high = left
    least, most = (1.0 - PACKER_TRIM[1], 1.0 - PACKER_TRIM[0]) if untrimmed else (1.0, 1.0)
    return Span(mass * least * low, mass * (least + most) / 2.0 * (low + high) / 2.0, mass * most * high)


def raw_for(people: int, left: Left = LEFT_TENDER, each: Kilograms | None = None) -> Span:
    """Raw meat to buy for so many people, from smaller to larger portions, or for portions of `each` cooked. [kg]"""
    if not 1 <= people <= 500:
        raise OutOfRange("people", people, 1, 500)
    of_a_kilo = cooked(1.0, left).usual * (1.0 - SLICED_AWAY)
    if each is not None and not 0.02 <= each <= 1.0:
        raise OutOfRange("portion", each, 0.02, 1.0, "kg")
    portions_kg = PORTION if each is None else (each, each, each)
    small, usual, large = (people * portion / of_a_kilo for portion in portions_kg)
    return Span(small, usual, large)


def whole_birds(people: int) -> Span:
    """The weight of whole birds for so many people, raw, with their bones. [kg]"""
    return Span(*(people * each for each in WHOLE_BIRD))


def raw_of(cooked_kg: Kilograms, left: Left = LEFT_TENDER) -> Span:
    """Raw trimmed meat that leaves so much cooked. [kg]"""
    low, high = left
    return Span(cooked_kg / high, cooked_kg / ((low + high) / 2.0), cooked_kg / low)


def spice_named(text: str) -> str | None:
    """The longest name of something sweet or spicy whose spoon is weighed, in a plain text."""
    named = [name for name in TEASPOON if name in text]
    return max(named, key=len) if named else None


def of_a_teaspoon(name: str) -> Kilograms:
    """What a level US teaspoon of it weighs. [kg] `sources.USDA_SR28`"""
    return TEASPOON[name]


def portions(mass: Kilograms, left: Left = LEFT_TENDER, untrimmed: bool = False) -> Span:
    """How many portions a raw piece gives: large ones, usual ones, small ones. [-]"""
    return portions_of(cooked(mass, left, untrimmed).usual)


def portions_of(cooked_kg: Kilograms) -> Span:
    """How many portions so much cooked meat gives: large ones, usual ones, small ones. [-]"""
    sliced = cooked_kg * (1.0 - SLICED_AWAY)
    return Span(sliced / PORTION[2], sliced / PORTION[1], sliced / PORTION[0])


def salt_by_volume(cups: float, kind: str) -> Span:
    """What so many US cups of salt weigh: "table" (fine), "coarse" or "light" flakes. [kg]"""
    low, high = CUP[kind]
    return Span(cups * low, cups * (low + high) / 2.0, cups * high)


def coarse(dose_kg: Kilograms, step_kg: Kilograms) -> Coarse:
    """A small dose on a scale that shows steps of `step_kg`. [kg] The stock is one part of curing salt in ten.

    So much of it is stirred that its own curing salt is weighed closely enough; a dose smaller than a step has none.
    """
    if not 0.0 < dose_kg <= 0.2 or not 0.0 < step_kg <= 0.01:
        raise OutOfRange("dose", dose_kg, 0.0, 0.2, "kg")
    whole = STOCK[0] + STOCK[1]
    stock = dose_kg * whole / STOCK[0]
    made = ceil(max(stock / whole, step_kg / CLOSE / STOCK[0]) - 1e-9)  # so many times the ten grams do
    will_do = step_kg <= CLOSE * stock
    return Coarse(0.5 * step_kg / dose_kg, step_kg / dose_kg, stock, made * STOCK[0], made * STOCK[1], will_do)
