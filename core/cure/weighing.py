"""What a cook wants, as a recipe, and what has to be weighed out for it, method by method. No law is asked here."""

from dataclasses import dataclass, replace
from typing import Final

from core.cure import nitrite
from core.cure.contents import SATURATED_BRINE, STRONGEST_CURE, Contents, check_strength
from core.errors import OutOfRange
from core.units import Fraction, Kilograms, MilligramsPerKilogram

HOUSE_TARGET: Final[MilligramsPerKilogram] = 150.0  # owner's policy: under the 156 of the retail label, 1 oz to 25 lb
LEAST_COVER: Final = 0.15  # kg of water for a kg of meat: less covers nothing, and a pump of 30 % would pass the rest
PICKLE_STRENGTH: Final[Fraction] = 0.6 * SATURATED_BRINE  # 60 salometer degrees, the strongest usual pump pickle


@dataclass(frozen=True)
class Recipe:
    """What a cook wants. `nitrite_fraction` is None while the strength of the curing salt is unknown.

    `nitrite_target` is mg/kg by the formula of the method: of meat plus whole pickle for a brine, of green meat
    otherwise; 0 is plain salt, for which no curing salt is needed. `salt_fraction` (the curing salt's included) and
    `sugar_fraction` are of meat plus water. `water_share` is kg of water for a kg of meat; `pump_fraction` the gain by
    injection, `cover_share` kg of water for a kg of meat that stands about the injected piece as its cover brine, 0 for
    none. `brine_strength` is salt in salt plus water of a strong brine that is left by the clock; None is an
    equilibrium, whose salt is that of the meat.
    """

    method: str
    meat_kg: Kilograms
    nitrite_fraction: Fraction | None
    product_class: str = "whole_muscle"
    jurisdiction: str = "US"
    nitrate_fraction: Fraction = 0.0
    nitrite_target: MilligramsPerKilogram = HOUSE_TARGET
    salt_fraction: Fraction = 0.0225
    sugar_fraction: Fraction = 0.01
    water_share: float = 0.5
    pump_fraction: Fraction = 0.10
    cover_share: float = 0.0
    skin_on: bool = False
    brine_strength: Fraction | None = None


def check_ranges(recipe: Recipe) -> None:
    """Raise OutOfRange for a quantity that a cure cannot have; the error names it with its range."""
    ranges = (
        ("meat", recipe.meat_kg, 0.05, 30.0, "kg"),
        ("nitrite target", recipe.nitrite_target or 1.0, 1.0, 2000.0, "mg/kg"),
        ("nitrate in the curing salt", recipe.nitrate_fraction, 0.0, 0.08, ""),
        ("salt", recipe.salt_fraction, 0.0, 0.06, ""),
        ("sugar", recipe.sugar_fraction, 0.0, 0.10, ""),
        ("water for a kg of meat", recipe.water_share, 0.1, 10.0, "kg"),
        ("pump", recipe.pump_fraction, 0.03, 0.30, ""),
        ("cover brine for a kg of meat", recipe.cover_share or LEAST_COVER, LEAST_COVER, 5.0, "kg"),
        ("salt in the brine", recipe.brine_strength or 0.03, 0.03, 0.20, ""),
    )
    for name, value, low, high, unit in ranges:
        if not low <= value <= high:
            raise OutOfRange(name, value, low, high, unit)


def weigh(recipe: Recipe, target: MilligramsPerKilogram) -> Contents:
    """What has to be weighed out for a target, no limit asked. The curing salt's own salt is taken off the salt."""
    match recipe.method:
        case "brine" if recipe.brine_strength is not None:
            return _by_the_clock(recipe)
        case "brine":
            return _brine(recipe, target)
        case "inject" if covered(recipe):
            return _covered(recipe, target)
        case "inject":
            return _injected(recipe, target)
        case _:
            return _dry(recipe, target)


def _brine(recipe: Recipe, target: MilligramsPerKilogram) -> Contents:
    """F9 with the salt depending on the cure: pickle = water + sugar + wanted salt + the nitrite and nitrate."""
    meat, strength = _counted(recipe), _strength(recipe)
    water = recipe.water_share * meat
    base = meat + water
    sugar, salt = recipe.sugar_fraction * base, recipe.salt_fraction * base
    active = strength + recipe.nitrate_fraction
    cure = target * (base + sugar + salt) / (nitrite.MILLIGRAMS * strength - target * active)
    added = salt - cure * (1.0 - active)
    if added < 0.0:  # a weak curing salt is all the salt there is
        cure, added = nitrite.cure_for_equilibrium(target, base + sugar, strength), 0.0
    return _contents(recipe, cure, added, sugar, water)


def _by_the_clock(recipe: Recipe) -> Contents:
    """A brine of a strength, whatever the meat: salt and sugar in the water alone."""
    water, strength = recipe.water_share * _counted(recipe), recipe.brine_strength or 0.0
    return _contents(recipe, 0.0, water * strength / (1.0 - strength), recipe.sugar_fraction * water, water)


def _dry(recipe: Recipe, target: MilligramsPerKilogram) -> Contents:
    meat, strength = _counted(recipe), _strength(recipe)
    cure = nitrite.cure_for_dry(target, meat, strength)
    brought = cure * (1.0 - strength - recipe.nitrate_fraction)
    added = max(recipe.salt_fraction * meat - brought, 0.0)
    return _contents(recipe, cure, added, recipe.sugar_fraction * meat, 0.0)


def _injected(recipe: Recipe, target: MilligramsPerKilogram) -> Contents:
    """All the cure in a pickle of `pump_fraction` of the meat, as salt as it can be up to 60 degrees; the rest rubbed.

    A pickle of 10 % that carried all the salt of a 2.25 % cure would be past saturation.
    """
    meat, strength = _counted(recipe), _strength(recipe)
    pickle = recipe.pump_fraction * meat
    cure = nitrite.cure_for_dry(target, meat, strength)  # F8 with the whole pickle pumped
    brought = cure * (1.0 - strength - recipe.nitrate_fraction)
    salt_and_water = pickle - cure + brought
    all_in = recipe.salt_fraction * (meat + salt_and_water) / (1.0 + recipe.salt_fraction)
    pumped_salt = max(min(all_in, PICKLE_STRENGTH * salt_and_water) - brought, 0.0)
    water = pickle - cure - pumped_salt
    rubbed = max(recipe.salt_fraction * (meat + water) - pumped_salt - brought, 0.0)
    sugar = recipe.sugar_fraction * (meat + water)
    return _contents(recipe, cure, pumped_salt + rubbed, sugar, water, rubbed)


def _covered(recipe: Recipe, target: MilligramsPerKilogram) -> Contents:
    """One pickle, a part of it pumped and the rest laid about the piece: an equilibrium of meat and whole pickle.

    From a cover brine of LEAST_COVER on the pumped share alone is less than the whole at rest, so the target holds.
    """
    pickle = _brine(replace(recipe, water_share=recipe.pump_fraction + recipe.cover_share), target)
    return replace(pickle, covered=True)


def covered(recipe: Recipe) -> bool:
    """Whether an injected piece lies in a cover brine."""
    return recipe.method == "inject" and recipe.cover_share > 0.0


def _contents(
    recipe: Recipe, cure: Kilograms, salt: Kilograms, sugar: Kilograms, water: Kilograms, rubbed: Kilograms = 0.0
) -> Contents:
    return Contents(
        method=recipe.method,
        meat_kg=recipe.meat_kg,
        cure_kg=cure,
        nitrite_fraction=_strength(recipe) if cure > 0.0 else 0.0,
        salt_kg=salt,
        sugar_kg=sugar,
        water_kg=water,
        nitrate_fraction=recipe.nitrate_fraction,
        pump_fraction=recipe.pump_fraction,
        rubbed_salt_kg=rubbed,
        skin_on=recipe.skin_on,
        product_class=recipe.product_class,
        jurisdiction=recipe.jurisdiction,
    )


def _strength(recipe: Recipe) -> Fraction:
    """The strength that is dosed by; plain salt is weighed by the same sums, with none of whatever cure there is."""
    return STRONGEST_CURE if recipe.nitrite_target == 0.0 else check_strength(recipe.nitrite_fraction)


def _counted(recipe: Recipe) -> Kilograms:
    return nitrite.skin_free(recipe.meat_kg, recipe.skin_on)
