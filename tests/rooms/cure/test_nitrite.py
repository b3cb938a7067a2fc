"""core.cure.nitrite: what is refused, at which bound and by which name; the ion and the salt, there and back."""

import pytest

from core.cure import nitrite
from core.errors import OutOfRange

NOTHING = {
    "meat": (lambda: nitrite.comminuted(1e-3, 0.0), lambda: nitrite.dry_cured(1e-3, 0.0)),
    "pickle": (lambda: nitrite.pumped(1e-3, 0.1, 0.0), lambda: nitrite.by_pickup(1e-3, 0.1, 0.0)),
    "meat and pickle": (lambda: nitrite.by_equilibrium(1e-3, 0.0, 0.0),),
    "nitrite in the curing salt": (lambda: nitrite.cure_for_dry(150.0, 1.0, 0.0),),
}


@pytest.mark.parametrize(("quantity", "tried"), NOTHING.items())
def test_nothing_to_divide_by_is_refused_by_its_name(quantity, tried):
    """Zero is no weight and no strength; what was wanting is named."""
    for formula in tried:
        with pytest.raises(OutOfRange) as refused:
            formula()
        assert (refused.value.quantity, refused.value.value, refused.value.low) == (quantity, 0.0, 0.0)


def test_a_salt_that_just_reaches_the_target_alone_is_too_weak():
    """150 mg/kg from a salt of 0.015 % would take no meat at all; a little stronger, it can be done."""
    with pytest.raises(OutOfRange) as refused:
        nitrite.cure_for_equilibrium(150.0, 1.0, 150e-6)
    assert (refused.value.quantity, refused.value.value) == ("nitrite in the curing salt", 150e-6)
    assert nitrite.cure_for_equilibrium(150.0, 1.0, 300e-6) == pytest.approx(1.0)
    with pytest.raises(OutOfRange):
        nitrite.cure_for_pumped(150.0, 1.0, 0.1, 1500e-6)


def test_the_ion_and_the_salt_there_and_back():
    """69 g of sodium nitrite hold 46 g of nitrite ion (standard atomic weights): 150 mg/kg are 100 mg/kg of it."""
    assert nitrite.ion_from_sodium(150.0) == pytest.approx(100.0, abs=0.05)
    assert nitrite.sodium_from_ion(nitrite.ion_from_sodium(120.0)) == pytest.approx(120.0, rel=1e-12)
    assert nitrite.sodium_from_potassium(nitrite.potassium_from_sodium(120.0)) == pytest.approx(120.0, rel=1e-12)
