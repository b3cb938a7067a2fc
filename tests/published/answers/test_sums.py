"""The sums of a kitchen against published figures and general libraries; the source stands beside each check."""

import pytest
from CoolProp.CoolProp import PropsSI

from core.answers import amounts
from core.answers.held import held
from core.errors import OutOfRange
from core.heat.humid_air import boiling_point, height_of, pressure_at


@pytest.mark.parametrize(("height", "pascals"), [(0.0, 101325.0), (1500.0, 84556.0), (3000.0, 70109.0)])
def test_water_boils_colder_higher_up(height: float, pascals: float) -> None:
    """US Standard Atmosphere 1976, its pressures (from memory), with the vapour pressure of CoolProp (IAPWS-95)."""
    assert pressure_at(height) == pytest.approx(pascals, rel=2e-3)
    assert boiling_point(pressure_at(height)) == pytest.approx(
        PropsSI("T", "P", pascals, "Q", 0, "Water") - 273.15, abs=0.1
    )


def test_sodium_in_salt() -> None:
    """IUPAC 2021: Na 22.990, Cl 35.45, so 39.3 % of salt is sodium; 2.5 g salt is about 1 g sodium."""
    assert amounts.sodium(0.0025) == pytest.approx(0.000983, abs=1e-6)


def test_salt_in_the_whole_mix() -> None:
    """200 g in 2 l with 3 kg of meat: 200 / 5200 = 3.8 % (question sample, derived)."""
    assert amounts.salinity(0.2, 2.0, 3.0) == pytest.approx(0.0385, abs=5e-5)
    with pytest.raises(OutOfRange):
        amounts.salinity(0.0, 2.0)


def test_salt_for_a_brine() -> None:
    """60 salometer degrees are 15.8 % (CFIA: 26.395 % is 100 degrees): 188 g of salt in a litre."""
    assert amounts.salt_for(0.6 * 0.26395, 1.0) == pytest.approx(0.188, abs=5e-4)
    with pytest.raises(OutOfRange):
        amounts.salt_for(0.27, 1.0)


def test_a_packer_for_portions() -> None:
    """6 kg, a quarter trimmed, 0.55 left, 150 g each: about 16 (question sample, common practice, no source)."""
    assert amounts.portions(6.0, untrimmed=True).usual == pytest.approx(16.5, abs=1.5)


def test_what_to_buy() -> None:
    """12 sandwiches of 140 g are 3.05 kg trimmed (worked example, common practice, no source)."""
    found = amounts.raw_for(12)
    assert found.low < 3.05 < found.high
    assert found.usual == pytest.approx(3.05, abs=0.15)
    with pytest.raises(OutOfRange):
        amounts.raw_for(0)


def test_a_coarse_scale() -> None:
    """4.3 g on a scale of whole grams is 12 to 23 % out; 43 g of one part in ten are 4.3 g (derived)."""
    found = amounts.coarse(0.0043, 0.001)
    assert (found.error_low, found.error_high) == pytest.approx((0.116, 0.233), abs=1e-3)
    assert found.stock == pytest.approx(0.043)
    assert (found.cure, found.water, found.will_do) == pytest.approx((0.010, 0.090, True))
    more = amounts.coarse(0.014, 0.001)  # ten times 14 g are more than one stock of 100 g holds
    assert more.cure + more.water >= more.stock
    rough = amounts.coarse(0.011, 0.005)  # 50 g weighed to 5 g, and 110 g of the stock: a tenth out at most
    assert (rough.cure, rough.water, rough.stock) == pytest.approx((0.050, 0.450, 0.110))
    assert (rough.error_low, rough.error_high, rough.will_do) == pytest.approx((0.227, 0.455, True), abs=1e-3)
    assert not amounts.coarse(0.003, 0.005).will_do  # 30 g of the stock weighed to 5 g are a sixth out


@pytest.mark.parametrize(
    ("species", "fahrenheit", "seconds"),
    [("beef", 135.0, 36 * 60), ("beef", 138.0, 18 * 60), ("beef", 129.0, None), ("turkey", 150.0, 4.9 * 60)],
)
def test_a_held_temperature(species: str, fahrenheit: float, seconds: float | None) -> None:
    """FSIS Cooking Guideline 2021, tables 2 and 4 (12 % fat): 36 min at 135 °F, 18 min at 138 °F, 4.9 min at 150 °F."""
    found = held(species, (fahrenheit - 32.0) / 1.8)
    assert found is not None
    assert found.asked == (None if seconds is None else pytest.approx(seconds, rel=0.02))
    assert found.enough(None) is None
    assert found.enough(seconds) is (seconds is not None if seconds else None)
    assert found.enough(1.0) is False


def test_fish_has_no_such_table() -> None:
    """Hot-smoked fish has one rule and no table of times."""
    assert held("fish", 63.0) is None


def test_a_cup_of_light_flakes() -> None:
    """A cup of light flakes is about 140 g, just under half a cup of table salt (question sample, common practice)."""
    found = amounts.salt_by_volume(1.0, "light")
    assert found.usual == pytest.approx(0.140)
    assert found.usual / amounts.salt_by_volume(1.0, "table").usual == pytest.approx(0.49, abs=0.03)


def test_salt_of_a_slice() -> None:
    """30 g at 4 % salt are 1.2 g or 470 mg sodium, an upper figure where all of it stays (question sample, derived)."""
    found = amounts.salt_in_slice(0.030, 0.0225)
    assert found.low < found.usual < found.high
    assert amounts.sodium(found.high) == pytest.approx(0.00047, rel=0.05)


@pytest.mark.parametrize(("height", "pascals"), [(1500.0, 84556.0), (3000.0, 70109.0)])
def test_the_height_by_boiling_water(height: float, pascals: float) -> None:
    """US Standard Atmosphere 1976 (from memory), and where water boils under its pressures by CoolProp (IAPWS-95)."""
    boils = PropsSI("T", "P", pascals, "Q", 0, "Water") - 273.15
    assert height_of(boils) == pytest.approx(height, abs=40.0)
    assert height_of(100.5) == pytest.approx(0.0, abs=1.0)
