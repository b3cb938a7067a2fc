"""The files that a cook may write, products and cuts, are held to their schema, to the law and to the safety rules."""

from itertools import product as pairs

import pytest

from core.batch.material import dose_of
from core.cure.limits import ROUNDING
from core.errors import OtherWay
from core.heat.cooker import cooker
from core.meat.cuts import cut, cuts
from core.meat.piece import Species
from core.plan.recipe import Product, called_by_weight, product_of_cut, products
from core.plan.setup import Setup
from core.safety.storage import keeping
from core.units import fahrenheit_from_celsius

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
# hot-smoked fish at home: 160 °F held for 30 min (PNW 238 and others, tests/published/safety/safe_temps.csv)
FLOORS = {Species.TURKEY: 165, Species.CHICKEN: 165, Species.DUCK: 165, Species.FISH: 160}
WHOLE_CUT_F = 145
ALL = sorted(products())
MADE = sorted((made.name, c) for made in products().values() for c in made.cuts)


def setup_of(made: Product, of: str, method: str, strength: float = 0.0625) -> Setup:
    """A batch of a product by its own defaults."""
    said = {"mass": cut(of).mass_low * 2, "cut": of, "method": method, "cure_nitrite_fraction": strength}
    return made.setup(said)


@pytest.mark.parametrize(("name", "of"), MADE)
def test_a_product_is_made_of_cuts_that_there_are(name: str, of: str) -> None:
    """Every cut of a product is known, and may be cured in at least one way, which is the way of its defaults."""
    made = products()[name]
    assert of in cuts()
    assert made.setup({"mass": 1.0, "cut": of}).method in made.methods(of)


def test_every_cut_is_made_into_something() -> None:
    """No cut is without a product, and only what is called for by name is not found by its cut."""
    assert {of for _, of in MADE} == set(cuts())
    unasked = {made.name for made in products().values() if not made.only_by_name}
    assert {product_of_cut(of).name for of in cuts()} == unasked


def test_a_heavier_one_begins_where_it_can_be_told_from_the_other() -> None:
    """«duck»: no breast weighs as much as the lightest bird, so the weight tells which is meant."""
    pairs_ = [(made, products()[made.heavier]) for made in products().values() if made.heavier]
    assert pairs_
    for made, other in pairs_:
        lightest = min(cut(of).mass_low for of in other.cuts)
        assert lightest > max(cut(of).mass_high for of in made.cuts)
        assert called_by_weight(made.name, lightest) == other.name
        assert called_by_weight(made.name, lightest / 2) == made.name


@pytest.mark.parametrize("name", ALL)
def test_the_floor_is_not_under_the_chart(name: str) -> None:
    """The core below which a product is never done is the chart's for its animal, or above."""
    made = products()[name]
    for animal in {cut(c).species for c in made.cuts}:
        floor_f = fahrenheit_from_celsius(made.safety_floor_c)  # a core of just that passes, as it is printed
        assert round(floor_f, 6) >= FLOORS.get(animal, WHOLE_CUT_F)


@pytest.mark.parametrize("name", ALL)
def test_every_purpose_can_be_had(name: str) -> None:
    """Each way to eat it comes off between the floor and boiling, on a pit that is hotter."""
    made = products()[name]
    for purpose in made.purposes:
        setup = made.setup({"mass": 2.0, "purpose": purpose.name})
        assert made.safety_floor_c <= setup.target_c <= 100.0
        assert setup.pit_c >= setup.target_c + 5.0  # what the model of the cook holds for
        assert cooker(setup.cooker)


@pytest.mark.parametrize(("name", "of"), MADE)
@pytest.mark.parametrize(("method", "where", "strength"), DOSES)
def test_no_default_passes_a_limit(name: str, of: str, method: str, where: str, strength: float) -> None:
    """By its own defaults a product gives a dose that the law of every place takes, for every strength sold."""
    made = products()[name]
    if method not in made.methods(of):
        with pytest.raises(OtherWay):
            setup_of(made, of, method)
        return
    setup = setup_of(made, of, method, strength)
    found = dose_of(setup, where)
    if setup.nitrite_target == 0.0:  # fish: salt alone, which no law limits and every place takes
        assert (found.nitrite_ingoing, found.limit, found.cure_kg) == (0.0, None, 0.0)
        assert found.salt_fraction == pytest.approx(setup.salt_fraction, rel=0.01)
        return
    assert found.limit is not None
    assert found.nitrite_ingoing > 0.0
    assert found.limit.passes(found.nitrite_ingoing)
    assert found.nitrite_ingoing <= setup.nitrite_target * (1.0 + ROUNDING)


@pytest.mark.parametrize(("name", "of"), MADE)
def test_bacon_has_its_own_limit_and_fish_its_own_class(name: str, of: str) -> None:
    """9 CFR 424.22(b): 120 mg/kg in pumped and immersed bacon, which the house holds all bacon to; none in fish."""
    made = products()[name]
    target = made.setup({"mass": 1.0, "cut": of}).nitrite_target
    assert target <= 150.0
    if "bacon" in name:
        assert (made.product_class, target) == ("bacon", 120.0)
    plain = cut(of).species is Species.FISH or of in ("chicken_leg", "chicken_breast")  # done in an hour or two
    assert (target == 0.0) is plain


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
