"""The sums of the tub against published figures and general libraries; the source stands beside each check."""

from pathlib import Path

import pytest
from CoolProp.CoolProp import PropsSI

from bot import measures
from bot.intents.cures import nitrite_share
from core.answers import amounts, mixing
from core.errors import OutOfRange
from tests.published.answers.asked import answered_by, asked


def test_thinning_a_brine() -> None:
    """2 kg of 10 % brine hold 0.2 kg of salt, which is 5 % of 4 kg (derived)."""
    assert mixing.water_to_thin(2.0, 0.10, 0.05) == pytest.approx(2.0)
    assert mixing.thinned(2.0, 0.10, 2.0) == pytest.approx(0.05)
    with pytest.raises(OutOfRange):
        mixing.water_to_thin(2.0, 0.05, 0.10)


def test_a_brine_made_stronger() -> None:
    """2 kg of 4 % hold 80 g; with 42.6 g more that is 122.6 of 2042.6 g, 6 % (derived)."""
    salt = mixing.salt_to_raise(2.0, 0.04, 0.06)
    assert (0.08 + salt) / (2.0 + salt) == pytest.approx(0.06)
    with pytest.raises(OutOfRange):
        mixing.salt_to_raise(2.0, 0.06, 0.04)


@pytest.mark.parametrize("strength", [0.05, 0.10, 0.15])
def test_a_brine_is_heavier_than_water(strength: float) -> None:
    """Density of sodium chloride in water at 20 °C by CoolProp (MNA, Melinder 2010), to half a percent."""
    density = PropsSI("D", "T", 293.15, "P", 101325.0, f"INCOMP::MNA[{strength}]")
    assert mixing.brine_mass(1.0, strength) == pytest.approx(density / 1000.0, rel=0.005)


def test_ice_for_a_brisket() -> None:
    """What 1 kg of water gives off from 60 to 4 °C, by the enthalpies of CoolProp, with ice melting at 333.6 kJ/kg."""
    heat = PropsSI("H", "T", 333.15, "P", 101325.0, "Water") - PropsSI("H", "T", 277.15, "P", 101325.0, "Water")
    warmed = PropsSI("H", "T", 277.15, "P", 101325.0, "Water") - PropsSI("H", "T", 273.16, "P", 101325.0, "Water")
    ice = heat / (333.6e3 + warmed)
    assert mixing.ice(mixing.WATER_HEAT / mixing.MEAT_HEAT, 60.0) == pytest.approx(ice, rel=0.01)
    with pytest.raises(OutOfRange):
        mixing.ice(1.0, 2.0)


def test_a_recipe_in_another_size() -> None:
    """Half again as much meat takes half again as much of everything (derived)."""
    found = mixing.scaled(2.0, 3.0, (0.05, 0.005))
    assert (found.factor, found.masses) == (1.5, pytest.approx((0.075, 0.0075)))
    with pytest.raises(OutOfRange):
        mixing.scaled(0.0, 3.0, ())


def test_straight_on() -> None:
    """172 °F at 2 and 180 °F at 3: 8 °F an hour, 23 °F to go, 2.9 h (derived); the band is that of half a degree."""
    first, last, target = ((f - 32.0) / 1.8 for f in (172.0, 180.0, 203.0))
    found = mixing.straight_on(first, last, 1.0, target)
    assert found.usual == pytest.approx(23.0 / 8.0)
    assert found.low < found.usual < found.high
    with pytest.raises(OutOfRange):
        mixing.straight_on(last, last + 0.5, 1.0, target)


def test_what_a_kilo_cooked_takes_raw() -> None:
    """57.5 % is left of tender beef, so 2 kg cooked take 3.3 to 3.6 kg (common practice, no source)."""
    found = amounts.raw_of(2.0)
    assert 3.0 < found.low < found.usual < found.high < 3.7


@pytest.mark.parametrize(("name", "grams"), [("sugar", 4.2), ("black pepper", 2.3), ("garlic powder", 3.1)])
def test_a_teaspoon(name: str, grams: float) -> None:
    """USDA SR28, household weights: a level teaspoon."""
    assert amounts.spice_named(f"2 tsp of {name} in grams") == name
    assert amounts.of_a_teaspoon(name) == pytest.approx(grams / 1000.0)


def test_sugar_tub_and_steam() -> None:
    """1 % of 3 kg are 30 g; 4 kg and as much brine want a tub of some 10 l; 1.5 kg steam 70 to 90 min (practice)."""
    assert mixing.sugar(3.0, 0.01).usual == pytest.approx(0.030)
    assert mixing.vessel(4.0).high == pytest.approx(9.7, abs=0.1)
    assert (mixing.steaming(1.5).low * 60.0, mixing.steaming(1.5).high * 60.0) == pytest.approx((67.5, 90.0))


def test_ice_for_a_boiled_brine() -> None:
    """A quart boiled to a gallon: what it and the tap's water give off down to 4 °C, by the enthalpies of CoolProp."""

    def heat(kelvin: float) -> float:
        return float(PropsSI("H", "T", kelvin, "P", 101325.0, "Water"))

    ice, water = mixing.ice_in_brine(0.946, 3.785)
    cold = heat(277.15)
    given = 0.946 * (heat(373.0) - cold) + water * (heat(288.15) - cold)
    assert ice * (333.6e3 + cold - heat(273.16)) == pytest.approx(given, rel=0.01)
    assert ice + water == pytest.approx(3.785 - 0.946)
    with pytest.raises(OutOfRange):
        mixing.ice_in_brine(2.0, 2.0)


def test_too_much_of_it_boiled() -> None:
    """3 of 4 l boiled take more than the one that is left, were it all ice (derived)."""
    assert mixing.ice_in_brine(3.0, 4.0) == (1.0, 0.0)


def test_shares_of_one_piece_at_once(tmp_path: Path) -> None:
    """2.5 %, 0.25 % and 1 % of 3.2 kg are 80, 8 and 32 g; 0.25 % of the 6.25 % kind is 156 mg/kg (derived)."""
    line = "3.2 kg pork loin dry cure 6.25 % nitrite, 2.5% salt 0.25% cure #1 1% sugar. grams of each?"
    told, plain, over = asked(
        tmp_path,
        [line, "2 percent salt and 1 percent sugar on 4 kg how many grams", "6.25 % nitrite 0.75% cure #1 ok?"],
    )
    assert (told["salt_kg"], told["cure_kg"], told["sugar_kg"]) == pytest.approx((0.080, 0.008, 0.032))
    assert told["nitrite_high_mg_kg"] == pytest.approx(156.25)
    assert (plain["salt_kg"], plain["sugar_kg"]) == pytest.approx((0.080, 0.040))
    assert over["nitrite_high_mg_kg"] == pytest.approx(468.75)
    assert nitrite_share("0.25 % cure #1", [*measures.find("0.25 % cure #1")]) is None


def test_portions_and_brines_of_a_told_size(tmp_path: Path) -> None:
    """3 lb cooked less a twentieth over 2 oz are 22; 80 g a litre for 3 quarts are 227 g (derived)."""
    lines = [
        "i have 3 lb of cooked pastrami how many 2 oz school lunch sandwiches does that make",
        "recipe calls for 80 g salt per liter and i need 3 quarts, how much salt in ounces?",
        "how much raw brisket do i buy to give 12 people 6 oz of pastrami each?",
    ]
    found = asked(tmp_path, lines)
    assert [answered_by(facts) for facts in found] == ["sum:portions", "sum:equilibrium", "sum:shopping"]
    assert found[0]["portions"] == pytest.approx(22.8)
    assert found[1]["salt_kg"] == pytest.approx(0.2271, abs=1e-4)
    assert found[2]["raw_kg"] == pytest.approx(12 * 0.1701 / 0.95 / 0.6, rel=0.01)
