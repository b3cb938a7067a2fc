"""What to beware of with a dose. Words are made at the rim, by the key of the caution."""

from collections.abc import Iterator
from typing import Final

from core.cure.contents import Contents
from core.cure.limits import Limit
from core.cure.nitrite import SKIN_SHARE
from core.cure.weighing import Recipe
from core.safety.cautions import Caution, Severity
from core.safety.record import CURED_FROM
from core.sources import CFR_9_424, COMMON_PRACTICE, FSIS_COOLING_1999, FSIS_HANDBOOK_1995, JUDGEMENT
from core.units import Fraction, Grams, MilligramsPerKilogram

SCALE_STEP: Final[Grams] = 1.0  # a common kitchen scale
COARSE: Final[Fraction] = 0.05  # half a step that is more of the dose than this calls for a finer way
ASCORBATE: Final[MilligramsPerKilogram] = 550.0  # 9 CFR 424.22(b)(1), pumped bacon


def cautions_of(contents: Contents, recipe: Recipe, against: tuple[Limit, ...]) -> tuple[Caution, ...]:
    """What to beware of, the gravest matters first; `against` has the nitrite limit in front."""
    return (
        *_of_the_scale(contents.cure_kg * 1000.0),
        *_of_the_law(contents, recipe, against),
        *_of_the_salt(contents, recipe),
    )


def uncured() -> Caution:
    """Plain salt: under the 100 mg/kg of nitrite that the cooling rule for cured meat asks for."""
    facts = (("nitrite_mg_kg", 0.0), ("floor_mg_kg", CURED_FROM))
    return Caution("under_cured_floor", Severity.WARNING, FSIS_COOLING_1999, facts)


def _of_the_scale(grams: Grams) -> Iterator[Caution]:
    """A kitchen scale is off by half a step to a step; 1 part of cure in 9 parts of water is ten times finer."""
    yield Caution("nitrite_weigh_exactly", Severity.WARNING, FSIS_HANDBOOK_1995, (("cure_g", grams),))
    if COARSE * grams < SCALE_STEP / 2.0:
        facts = (
            ("cure_g", grams),
            ("error_low", SCALE_STEP / 2.0 / grams),
            ("error_high", SCALE_STEP / grams),
            ("solution_g", 10.0 * grams),
            ("water_in_solution_g", 9.0 * grams),
        )
        yield Caution("scale_too_coarse", Severity.WARNING, JUDGEMENT, facts)


def _of_the_law(contents: Contents, recipe: Recipe, against: tuple[Limit, ...]) -> Iterator[Caution]:
    for one in against:
        if one.status == "MEMORY":
            yield Caution("limit_from_memory", Severity.WARNING, one.source, (("limit_mg_kg", one.max_mg_kg),))
    least = against[0].floor_mg_kg
    if least is not None and recipe.nitrite_target < least:
        facts = (("nitrite_mg_kg", recipe.nitrite_target), ("floor_mg_kg", least))
        yield Caution("under_cured_floor", Severity.WARNING, against[0].source, facts)
    if contents.nitrate_fraction > 0.0:
        nitrate = contents.ingoing().nitrate
        yield Caution("nitrate_in_short_cure", Severity.WARNING, COMMON_PRACTICE, (("nitrate_mg_kg", nitrate),))
    if contents.skin_on:
        yield Caution("skin_counted_out", Severity.NOTE, FSIS_HANDBOOK_1995, (("skin_share", SKIN_SHARE),))
    if (recipe.jurisdiction, recipe.product_class, recipe.method) == ("US", "bacon", "inject"):
        yield Caution("pumped_bacon_wants_ascorbate", Severity.NOTE, CFR_9_424, (("ascorbate_mg_kg", ASCORBATE),))


def _of_the_salt(contents: Contents, recipe: Recipe) -> Iterator[Caution]:
    """More salt than asked, brought by a weak curing salt; and the nitrite that the wanted salt would come with."""
    if contents.salt_fraction > recipe.salt_fraction * (1.0 + 1e-9):
        at_wanted = recipe.nitrite_target * recipe.salt_fraction / contents.salt_fraction
        facts = (("salt_fraction", contents.salt_fraction), ("nitrite_at_wanted_salt", at_wanted))
        yield Caution("salt_set_by_cure", Severity.NOTE, FSIS_HANDBOOK_1995, facts)
