"""The files that a cook may write, products and cuts, are held to their schema, to the law and to the safety rules."""

import tomllib
from importlib import resources
from itertools import product as pairs

import pytest

from core.batch.material import dose_of
from core.cure.limits import ROUNDING
from core.heat.cooker import cooker
from core.meat.cuts import cut, cuts
from core.meat.piece import Species
from core.plan.recipe import Product, products
from core.plan.setup import Setup
from core.safety.storage import keeping

METHODS = ("brine", "dry", "inject")
JURISDICTIONS = ("US", "CA", "EU", "UK")
STRENGTHS = (0.0625, 0.0588, 0.006, 0.005)  # as packets print them
DOSES = [
    # so much of the weakest would have to go into a pickle to be injected that it does not dissolve
    (method, where, strength)
    for method, where, strength in pairs(METHODS, JURISDICTIONS, STRENGTHS)
    if not (method == "inject" and strength < 0.006)
]
# USDA FSIS Safe Minimum Internal Temperature Chart: 145 °F and a rest for whole cuts, 165 °F for poultry [°C]
FLOORS = {Species.TURKEY: 165, Species.CHICKEN: 165, Species.DUCK: 165}
WHOLE_CUT_F = 145
KNOWN = {"name", "cuts", "product_class", "storage", "salt_free_rub", "safety_floor_c", "defaults", "purposes", "hours"}
ALL = sorted(products())


def table(name: str) -> dict[str, object]:
    return tomllib.loads(resources.files("core.plan").joinpath("products", f"{name}.toml").read_text("utf-8"))


def setup_of(made: Product, method: str, strength: float = 0.0625) -> Setup:
    """A batch of a product by its own defaults."""
    return made.setup({"mass": cut(made.cuts[0]).mass_low * 2, "method": method, "cure_nitrite_fraction": strength})


@pytest.mark.parametrize("name", ALL)
def test_a_product_says_what_it_may_and_no_more(name: str) -> None:
    """An entry that nobody reads is a slip of the pen: it is named, not ignored."""
    assert set(table(name)) - KNOWN == set()
    made = products()[name]
    assert [c for c in made.cuts if c not in cuts()] == []
    setup_of(made, "brine")  # refuses a default that no setup has


@pytest.mark.parametrize("name", ALL)
def test_the_floor_is_not_under_the_chart(name: str) -> None:
    """The core below which a product is never done is the chart's for its animal, or above."""
    made = products()[name]
    for animal in {cut(c).species for c in made.cuts}:
        assert made.safety_floor_c >= (FLOORS.get(animal, WHOLE_CUT_F) - 32) / 1.8


@pytest.mark.parametrize("name", ALL)
def test_every_purpose_can_be_had(name: str) -> None:
    """Each way to eat it comes off between the floor and boiling, on a pit that is hotter."""
    made = products()[name]
    for purpose in made.purposes:
        setup = made.setup({"mass": 2.0, "purpose": purpose.name})
        assert made.safety_floor_c <= setup.target_c <= 100.0
        assert setup.pit_c > setup.target_c
        assert cooker(setup.cooker)


@pytest.mark.parametrize("name", ALL)
@pytest.mark.parametrize(("method", "where", "strength"), DOSES)
def test_no_default_passes_a_limit(name: str, method: str, where: str, strength: float) -> None:
    """By its own defaults a product gives a dose that the law of every place takes, for every strength sold."""
    made = products()[name]
    found = dose_of(setup_of(made, method, strength), where)
    assert 0.0 < found.nitrite_ingoing <= found.limit.max_mg_kg
    assert found.nitrite_ingoing <= dict(made.defaults)["nitrite_target"] * (1.0 + ROUNDING)


@pytest.mark.parametrize("name", ALL)
def test_how_long_it_keeps_is_on_the_chart(name: str) -> None:
    """The storage line that a product names is one of the chart's, and keeps for days, not weeks."""
    assert 1 <= keeping(products()[name].storage).days <= 14


@pytest.mark.parametrize("name", sorted(cuts()))
def test_every_cut_is_of_a_size_that_can_be(name: str) -> None:
    """Masses and thicknesses are in kilograms and millimetres: a cut is neither a crumb nor a carcass."""
    known = cut(name)
    assert 0.05 <= known.mass_low < known.mass_high <= 30.0
    for mass in (known.mass_low, known.mass_high):
        assert 0.01 <= known.thickness_scale * mass ** (1 / 3) <= 0.20
    assert 0.05 <= known.thickness_log_sd <= 0.4
    assert known.pink_from > 0.0
