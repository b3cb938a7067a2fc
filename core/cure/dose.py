"""The dose: what a cook wants, weighed out within the law, with what it comes to and what to beware of."""

from dataclasses import dataclass, field
from math import floor
from typing import Final

from core.cure import nitrite
from core.cure.contents import SATURATED_BRINE, Contents, check_method, check_strength
from core.cure.limits import Limit, check, limit, limits_of
from core.errors import OutOfRange
from core.safety.cautions import Caution, Severity
from core.sources import (
    CFR_9_424,
    COMMON_PRACTICE,
    FSIS_HANDBOOK_1995,
    JUDGEMENT,
    SALOMETER,
    Source,
)
from core.units import Fraction, Grams, Kilograms, MilligramsPerKilogram

HOUSE_TARGET: Final[MilligramsPerKilogram] = 150.0  # owner's policy: under the 156 of the retail label, 1 oz to 25 lb
HOUSE_TARGET_BACON: Final[MilligramsPerKilogram] = 120.0
PICKLE_STRENGTH: Final[Fraction] = 0.6 * SATURATED_BRINE  # 60 salometer degrees, the strongest usual pump pickle
SPOON_LIGHT: Final[Grams] = 5.6  # a level teaspoon as weighed; public texts put 5 and even 4 to the ounce
SPOON_HEAVY: Final[Grams] = 7.1
SCALE_STEP: Final[Grams] = 1.0  # a common kitchen scale
COARSE: Final[Fraction] = 0.05  # half a step that is more of the dose than this calls for a finer way
SMALLEST_STEP: Final[Kilograms] = 1e-5  # the dose that passes is told to the lower 0.01 g


@dataclass(frozen=True)
class Recipe:
    """What a cook wants. `nitrite_fraction` is None while the strength of the curing salt is unknown.

    `nitrite_target` is mg/kg by the formula of the method: of meat plus whole pickle for a brine, of green meat
    otherwise. `salt_fraction` (the curing salt's included) and `sugar_fraction` are of meat plus water. `water_share`
    is kg of water for a kg of meat; `pump_fraction` the gain by injection.
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
    skin_on: bool = False


@dataclass(frozen=True)
class Dose(Contents):
    """What is weighed out, and what it comes to.

    `nitrite_ingoing` is by the formula of the method and is what the limit is held against; `nitrite_by_pickup` is
    the other official figure of a brine, as information. `teaspoons` is a sanity band for the curing salt (low,
    high), never a measure. `salt_fraction` says what salt is reached, where a weak curing salt brings more than asked.
    """

    nitrite_ingoing: MilligramsPerKilogram = field(kw_only=True)
    nitrate_ingoing: MilligramsPerKilogram = field(kw_only=True)
    nitrite_by_pickup: MilligramsPerKilogram | None = field(kw_only=True)
    limit: Limit = field(kw_only=True)
    teaspoons: tuple[float, float] = field(kw_only=True)
    cautions: tuple[Caution, ...] = field(kw_only=True)
    sources: tuple[Source, ...] = field(kw_only=True)


def house_target(jurisdiction: str, product_class: str, method: str) -> MilligramsPerKilogram:
    """What is aimed for unless the cook says otherwise: 150, bacon 120, never over the limit of the place. [mg/kg]

    Raises
    ------
    Gone
        There is no limit known for this product there.
    """
    wanted = HOUSE_TARGET_BACON if product_class == "bacon" else HOUSE_TARGET
    return min(wanted, float(floor(limit(jurisdiction, product_class, method).max_mg_kg)))


def dose(recipe: Recipe) -> Dose:
    """The dose for a recipe, held to the limits of its jurisdiction.

    Parameters
    ----------
    recipe
        What the cook wants.

    Returns
    -------
    The dose, in kg, exact: rounding belongs to the scale, and downwards.

    Raises
    ------
    UnknownCure
        The strength of the curing salt is not known.
    OverLimit
        The target is over a limit; `passing_cure_kg` of the same curing salt would pass.
    OutOfRange
        A quantity is not one that a cure can have, or the pickle cannot dissolve its salt.
    Gone
        There is no such method, jurisdiction or product class.
    """
    check_method(recipe.method)
    check_strength(recipe.nitrite_fraction)
    _check_ranges(recipe)
    against = limits_of(recipe.jurisdiction, recipe.product_class, recipe.method)
    contents = weigh(recipe, recipe.nitrite_target)
    check(contents.ingoing(), against, passing_cure(recipe))
    _check_dissolves(contents)
    return _as_dose(contents, recipe, against)


def weigh(recipe: Recipe, target: MilligramsPerKilogram) -> Contents:
    """What has to be weighed out for a target, no limit asked. The curing salt's own salt is taken off the salt."""
    match recipe.method:
        case "brine":
            return _brine(recipe, target)
        case "inject":
            return _injected(recipe, target)
        case _:
            return _dry(recipe, target)


def passing_cure(recipe: Recipe) -> Kilograms | None:
    """The most curing salt of this kind that every limit lets pass, to the lower 0.01 g; None: none passes. [kg]"""
    strength = check_strength(recipe.nitrite_fraction)
    shares = {"nitrite": 1.0, "nitrate": recipe.nitrate_fraction / strength}
    against = limits_of(recipe.jurisdiction, recipe.product_class, recipe.method)
    counted = ((one.max_mg_kg, sum(shares[substance] for substance in one.counts)) for one in against)
    target = min(highest / share for highest, share in counted if share > 0.0)
    return floor(weigh(recipe, target).cure_kg / SMALLEST_STEP) * SMALLEST_STEP if target > 0.0 else None


def teaspoons(cure: Kilograms) -> tuple[float, float]:
    """How many level teaspoons that much curing salt may be, low and high: a sanity check, never a measure."""
    return cure * 1000.0 / SPOON_HEAVY, cure * 1000.0 / SPOON_LIGHT


def from_teaspoons(spoons: float) -> tuple[Kilograms, Kilograms]:
    """What that many teaspoons of curing salt may weigh, low and high. [kg] Judge by the high one."""
    return spoons * SPOON_LIGHT / 1000.0, spoons * SPOON_HEAVY / 1000.0


def _brine(recipe: Recipe, target: MilligramsPerKilogram) -> Contents:
    """F9 with the salt depending on the cure: pickle = water + sugar + wanted salt + the nitrite and nitrate."""
    meat, strength = _counted(recipe), check_strength(recipe.nitrite_fraction)
    water = recipe.water_share * meat
    base = meat + water
    sugar, salt = recipe.sugar_fraction * base, recipe.salt_fraction * base
    active = strength + recipe.nitrate_fraction
    cure = target * (base + sugar + salt) / (nitrite.MILLIGRAMS * strength - target * active)
    added = salt - cure * (1.0 - active)
    if added < 0.0:  # a weak curing salt is all the salt there is
        cure, added = nitrite.cure_for_equilibrium(target, base + sugar, strength), 0.0
    return _contents(recipe, cure, added, sugar, water)


def _dry(recipe: Recipe, target: MilligramsPerKilogram) -> Contents:
    meat, strength = _counted(recipe), check_strength(recipe.nitrite_fraction)
    cure = nitrite.cure_for_dry(target, meat, strength)
    brought = cure * (1.0 - strength - recipe.nitrate_fraction)
    added = max(recipe.salt_fraction * meat - brought, 0.0)
    return _contents(recipe, cure, added, recipe.sugar_fraction * meat, 0.0)


def _injected(recipe: Recipe, target: MilligramsPerKilogram) -> Contents:
    """All the cure in a pickle of `pump_fraction` of the meat, as salt as it can be up to 60 degrees; the rest rubbed.

    A pickle of 10 % that carried all the salt of a 2.25 % cure would be past saturation.
    """
    meat, strength = _counted(recipe), check_strength(recipe.nitrite_fraction)
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


def _contents(
    recipe: Recipe, cure: Kilograms, salt: Kilograms, sugar: Kilograms, water: Kilograms, rubbed: Kilograms = 0.0
) -> Contents:
    return Contents(
        method=recipe.method,
        meat_kg=recipe.meat_kg,
        cure_kg=cure,
        nitrite_fraction=check_strength(recipe.nitrite_fraction),
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


def _as_dose(contents: Contents, recipe: Recipe, against: tuple[Limit, ...]) -> Dose:
    ingoing = contents.ingoing()
    return Dose(
        **vars(contents),
        nitrite_ingoing=ingoing.nitrite,
        nitrate_ingoing=ingoing.nitrate,
        nitrite_by_pickup=contents.by_pickup(),
        limit=against[0],
        teaspoons=teaspoons(contents.cure_kg),
        cautions=tuple(_cautions(contents, recipe, against)),
        sources=(FSIS_HANDBOOK_1995, *dict.fromkeys(one.source for one in against)),
    )


def _cautions(contents: Contents, recipe: Recipe, against: tuple[Limit, ...]) -> list[Caution]:
    grams = contents.cure_kg * 1000.0
    found = [Caution("nitrite_weigh_exactly", Severity.WARNING, FSIS_HANDBOOK_1995, (("cure_g", grams),))]
    if COARSE * grams < SCALE_STEP / 2.0:
        found.append(_scale_too_coarse(grams))
    for one in against:
        if one.status == "MEMORY":
            found.append(Caution("limit_from_memory", Severity.WARNING, one.source, (("limit_mg_kg", one.max_mg_kg),)))
    least = against[0].floor_mg_kg
    if least is not None and recipe.nitrite_target < least:
        facts = (("nitrite_mg_kg", recipe.nitrite_target), ("floor_mg_kg", least))
        found.append(Caution("under_cured_floor", Severity.WARNING, against[0].source, facts))
    if contents.salt_fraction > recipe.salt_fraction * (1.0 + 1e-9):
        found.append(_salt_set_by_cure(contents, recipe))
    if contents.nitrate_fraction > 0.0:
        nitrate = (("nitrate_mg_kg", contents.ingoing().nitrate),)
        found.append(Caution("nitrate_in_short_cure", Severity.WARNING, COMMON_PRACTICE, nitrate))
    if contents.skin_on:
        found.append(Caution("skin_counted_out", Severity.NOTE, FSIS_HANDBOOK_1995, (("skin", nitrite.SKIN_SHARE),)))
    if (recipe.jurisdiction, recipe.product_class, recipe.method) == ("US", "bacon", "inject"):
        found.append(Caution("pumped_bacon_wants_ascorbate", Severity.NOTE, CFR_9_424, (("ascorbate_mg_kg", 550.0),)))
    return found


def _scale_too_coarse(grams: Grams) -> Caution:
    """A kitchen scale is off by half a step to a step; 1 part of cure in 9 parts of water is ten times finer."""
    facts = (
        ("cure_g", grams),
        ("error_low", SCALE_STEP / 2.0 / grams),
        ("error_high", SCALE_STEP / grams),
        ("solution_g", 10.0 * grams),
        ("water_in_solution_g", 9.0 * grams),
    )
    return Caution("scale_too_coarse", Severity.WARNING, JUDGEMENT, facts)


def _salt_set_by_cure(contents: Contents, recipe: Recipe) -> Caution:
    """More salt than asked, brought by a weak curing salt; and the nitrite that the wanted salt would come with."""
    share = recipe.salt_fraction / contents.salt_fraction
    facts = (("salt_fraction", contents.salt_fraction), ("nitrite_at_wanted_salt", recipe.nitrite_target * share))
    return Caution("salt_set_by_cure", Severity.NOTE, FSIS_HANDBOOK_1995, facts)


def _counted(recipe: Recipe) -> Kilograms:
    return nitrite.skin_free(recipe.meat_kg, recipe.skin_on)


def _check_ranges(recipe: Recipe) -> None:
    ranges = (
        ("meat", recipe.meat_kg, 0.05, 30.0, "kg"),
        ("nitrite target", recipe.nitrite_target, 1.0, 2000.0, "mg/kg"),
        ("nitrate in the curing salt", recipe.nitrate_fraction, 0.0, 0.08, ""),
        ("salt", recipe.salt_fraction, 0.0, 0.06, ""),
        ("sugar", recipe.sugar_fraction, 0.0, 0.10, ""),
        ("water for a kg of meat", recipe.water_share, 0.1, 10.0, "kg"),
        ("pump", recipe.pump_fraction, 0.03, 0.30, ""),
    )
    for name, value, low, high, unit in ranges:
        if not low <= value <= high:
            raise OutOfRange(name, value, low, high, unit)


def _check_dissolves(contents: Contents) -> None:
    if contents.brine_strength > SATURATED_BRINE:
        raise OutOfRange("salt in the pickle", contents.brine_strength, 0.0, SATURATED_BRINE, SALOMETER.key)
