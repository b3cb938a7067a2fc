"""The dose: what a cook wants, weighed out within the law, with what it comes to and what to beware of."""

from dataclasses import dataclass, field
from math import floor
from typing import Final

from core.cure import nitrite
from core.cure.beware import cautions_of, uncured
from core.cure.contents import SATURATED_BRINE, Contents, check_method, check_strength
from core.cure.limits import Limit, check, limit, limits_of
from core.cure.weighing import HOUSE_TARGET, Recipe, check_ranges, covered, weigh
from core.errors import ByTheClock, OutOfRange
from core.safety.cautions import Caution
from core.sources import FSIS_COOLING_1999, FSIS_HANDBOOK_1995, Source
from core.units import Grams, Kilograms, MilligramsPerKilogram

__all__ = ["Dose", "Recipe", "dose", "from_teaspoons", "house_target", "passing_cure", "teaspoons"]

HOUSE_TARGET_BACON: Final[MilligramsPerKilogram] = 120.0
SPOON_LIGHT: Final[Grams] = 5.6  # a level teaspoon as weighed; public texts put 5 and even 4 to the ounce
SPOON_HEAVY: Final[Grams] = 7.1
SMALLEST_STEP: Final[Kilograms] = 1e-5  # the dose that passes is told to the lower 0.01 g


@dataclass(frozen=True)
class Dose(Contents):
    """What is weighed out, and what it comes to.

    `nitrite_ingoing` is by the formula of the method and is what the limit is held against; `nitrite_by_pickup` is
    the other official figure of a brine, as information. `teaspoons` is a sanity band for the curing salt (low,
    high), never a measure. `limit` is None where no nitrite goes in. `salt_fraction` says what salt is reached, where
    a weak curing salt brings more than asked.
    """

    nitrite_ingoing: MilligramsPerKilogram = field(kw_only=True)
    nitrate_ingoing: MilligramsPerKilogram = field(kw_only=True)
    nitrite_by_pickup: MilligramsPerKilogram | None = field(kw_only=True)
    limit: Limit | None = field(kw_only=True)
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
    ByTheClock
        Nitrite was asked for in a strong brine that is left by the clock.
    OverLimit
        The target is over a limit; `passing_cure_kg` of the same curing salt would pass.
    OutOfRange
        A quantity is not one that a cure can have, or the pickle cannot dissolve its salt.
    Gone
        There is no such method, jurisdiction or product class.
    """
    check_method(recipe.method)
    if recipe.brine_strength is not None and recipe.nitrite_target > 0.0:
        raise ByTheClock(recipe.brine_strength)
    if recipe.nitrite_target == 0.0:
        return _plain_salt(recipe)
    check_strength(recipe.nitrite_fraction)
    check_ranges(recipe)
    against = _limits(recipe)
    contents = weigh(recipe, recipe.nitrite_target)
    check(contents.ingoing(), against, passing_cure(recipe))
    _check_dissolves(contents)
    return _as_dose(contents, recipe, against)


def passing_cure(recipe: Recipe) -> Kilograms | None:
    """The most curing salt of this kind that every limit lets pass, to the lower 0.01 g; None: none passes. [kg]

    It passes both with everything weighed anew and with the other ingredients of the refused dose left as they are.
    """
    strength = check_strength(recipe.nitrite_fraction)
    shares = {"nitrite": 1.0, "nitrate": recipe.nitrate_fraction / strength}
    against = _limits(recipe)
    counted = ((one.max_mg_kg, sum(shares[substance] for substance in one.counts)) for one in against)
    target = min(highest / share for highest, share in counted if share > 0.0)
    if target <= 0.0:
        return None
    most = weigh(recipe, target).cure_kg
    if recipe.method == "brine" or covered(recipe):
        refused = weigh(recipe, recipe.nitrite_target)
        others = refused.counted_meat_kg + refused.pickle_kg - refused.cure_kg
        most = min(most, nitrite.cure_for_equilibrium(target, others, strength))
    return floor(most / SMALLEST_STEP) * SMALLEST_STEP


def teaspoons(cure: Kilograms) -> tuple[float, float]:
    """How many level teaspoons that much curing salt may be, low and high: a sanity check, never a measure."""
    return cure * 1000.0 / SPOON_HEAVY, cure * 1000.0 / SPOON_LIGHT


def from_teaspoons(spoons: float) -> tuple[Kilograms, Kilograms]:
    """What that many teaspoons of curing salt may weigh, low and high. [kg] Judge by the high one."""
    return spoons * SPOON_LIGHT / 1000.0, spoons * SPOON_HEAVY / 1000.0


def _limits(recipe: Recipe) -> tuple[Limit, ...]:
    return limits_of(recipe.jurisdiction, recipe.product_class, recipe.method, covered=covered(recipe))


def _as_dose(contents: Contents, recipe: Recipe, against: tuple[Limit, ...]) -> Dose:
    ingoing = contents.ingoing()
    return Dose(
        **vars(contents),
        nitrite_ingoing=ingoing.nitrite,
        nitrate_ingoing=ingoing.nitrate,
        nitrite_by_pickup=contents.by_pickup(),
        limit=against[0],
        teaspoons=teaspoons(contents.cure_kg),
        cautions=cautions_of(contents, recipe, against),
        sources=(FSIS_HANDBOOK_1995, *dict.fromkeys(one.source for one in against)),
    )


def _plain_salt(recipe: Recipe) -> Dose:
    """Salt, sugar and water without any nitrite: no law limits it, and nothing of it counts as cured."""
    check_ranges(recipe)
    contents = weigh(recipe, 0.0)
    _check_dissolves(contents)
    return Dose(
        **vars(contents),
        nitrite_ingoing=0.0,
        nitrate_ingoing=0.0,
        nitrite_by_pickup=None,
        limit=None,
        teaspoons=(0.0, 0.0),
        cautions=(uncured(),),
        sources=(FSIS_COOLING_1999,),
    )


def _check_dissolves(contents: Contents) -> None:
    if contents.brine_strength > SATURATED_BRINE:
        raise OutOfRange("salt in the pickle", contents.brine_strength, 0.0, SATURATED_BRINE)
