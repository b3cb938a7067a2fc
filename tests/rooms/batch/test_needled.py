"""A weak curing salt by the needle: what is aimed at, and how much is pumped."""

from dataclasses import replace

import pytest

from core.batch.material import dose_of
from core.cure.contents import SATURATED_BRINE
from core.plan.setup import Setup

HAM = Setup("ham", "ham_boned", 2.8, method="inject", nitrite_target=150.0)


@pytest.mark.parametrize("place", ["US", "EU"])
@pytest.mark.parametrize("strength", [0.004, 0.005, 0.006])
def test_a_weak_salt_dissolves_and_keeps_within_the_law(strength: float, place: str) -> None:
    """Curing salt of 0.4 to 0.6 %: a pickle that water holds, a fifth of it pumped at most, under the limit there."""
    found = dose_of(replace(HAM, cure_nitrite_fraction=strength), place)
    salt = found.cure_kg + found.salt_kg - found.rubbed_salt_kg
    assert salt / (salt + found.water_kg) < SATURATED_BRINE
    assert 0.10 < found.pump_fraction <= 0.20
    assert found.limit is not None
    assert 100.0 <= found.nitrite_ingoing <= found.limit.max_mg_kg


def test_a_weak_salt_brings_little_more_salt_than_is_wanted() -> None:
    """0.5 %: the aim of 150 mg/kg would bring 3 % of salt to the meat; so much comes that 2.25 % is hardly passed."""
    found = dose_of(replace(HAM, cure_nitrite_fraction=0.005), "US")
    assert found.nitrite_ingoing == pytest.approx(0.0225 * 1.1 * 0.005 / 0.995 * 1e6)
    assert (found.cure_kg * 0.995 + found.salt_kg) / (2.8 + found.water_kg) < 0.0235


def test_what_was_said_is_not_touched() -> None:
    """A share to pump and an aim that somebody asked for stand; a usual salt is pumped at a tenth, as ever."""
    said = HAM.change({"pump_fraction": 0.12, "nitrite_target": 100.0})
    found = dose_of(replace(said, cure_nitrite_fraction=0.005), "US")
    assert found.pump_fraction == pytest.approx(0.12)
    assert found.nitrite_ingoing == pytest.approx(100.0)
    assert dose_of(replace(HAM, cure_nitrite_fraction=0.0625), "US").pump_fraction == pytest.approx(0.10)
