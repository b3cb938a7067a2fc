"""Thermal properties against the printed check values and against CoolProp."""

import csv
from pathlib import Path

import pytest
from CoolProp.CoolProp import PropsSI

from core.errors import OutOfRange
from core.heat.properties import PARALLEL_SHARE, component, meat, parallel
from core.meat.piece import Composition

HERE = Path(__file__).parent
COOLPROP = {
    "water": "FoodWater", "protein": "FoodProtein", "fat": "FoodFat", "carbohydrate": "FoodCarbohydrate",
    "fibre": "FoodFiber", "ash": "FoodAsh", "ice": "FoodIce",
}  # fmt: skip
NAMES = {"carb": "carbohydrate", "fiber": "fibre"}
# Raw composition by NDB number, USDA SR28 [% of weight]
SR28 = {
    "13975": (69.47, 20.15, 9.86, 0.96),
    "10005": (36.74, 9.34, 53.01, 0.49),
    "05219": (74.89, 23.66, 1.48, 1.04),
    "15236": (64.89, 20.42, 13.42, 1.13),
}


def rows(kind: str) -> list[dict[str, str]]:
    with (HERE / "choi_okos_check.csv").open(encoding="utf-8") as file:
        return [row for row in csv.DictReader(file) if row["kind"] == kind]


@pytest.mark.parametrize("row", rows("component"), ids=lambda row: f"{row['name']}-{row['T_C']}")
def test_components_are_as_printed(row: dict[str, str]) -> None:
    """Density, heat capacity and conductivity to the printed digits (Choi and Okos 1986; ASHRAE Refrigeration)."""
    found = component(NAMES.get(row["name"], row["name"]), float(row["T_C"]))
    assert float(row["rho_kg_m3"]) == pytest.approx(found.density, abs=1e-6)
    assert float(row["cp_J_kgK"]) == pytest.approx(found.heat_capacity, abs=1e-5)
    assert float(row["k_W_mK"]) == pytest.approx(found.conductivity, abs=1e-8)
    assert float(row["alpha_m2_s"]) == pytest.approx(found.diffusivity, rel=1e-6)


@pytest.mark.parametrize("row", rows("mixture"), ids=lambda row: f"{row['name']}-{row['T_C']}")
def test_meats_are_as_printed(row: dict[str, str]) -> None:
    """Mixtures by the parallel rule, to the printed digits."""
    composition = Composition(*(share / 100 for share in SR28[row["name"].rsplit("_", 1)[1]]))
    found = parallel(composition, float(row["T_C"]))
    assert float(row["rho_kg_m3"]) == pytest.approx(found.density, rel=1e-6)
    assert float(row["cp_J_kgK"]) == pytest.approx(found.heat_capacity, rel=1e-6)
    assert float(row["k_W_mK"]) == pytest.approx(found.conductivity, rel=2e-6)


@pytest.mark.parametrize("name", COOLPROP)
@pytest.mark.parametrize("celsius", [5.0, 33.3, 61.7, 99.0])
def test_coolprop_has_the_same_coefficients(name: str, celsius: float) -> None:
    """CoolProp's food components, an independent transcription of the same source, to 1e-12."""
    kelvin = celsius + 273.15 if name != "ice" else 273.15 - celsius / 10
    found = component(name, kelvin - 273.15)
    for letter, value in (("D", found.density), ("C", found.heat_capacity), ("L", found.conductivity)):
        assert PropsSI(letter, "T", kelvin, "P", 2e5, f"INCOMP::{COOLPROP[name]}") == pytest.approx(value, rel=1e-9)


def test_fat_conducts_at_roasting_heat() -> None:
    """The public misprint of the slope (2.7604e-3) would make the conductivity of fat negative at 80 °C."""
    assert component("fat", 80.0).conductivity == pytest.approx(0.1575, abs=1e-3)


def test_meat_conducts_nine_tenths_of_the_parallel_rule() -> None:
    """What the models take: the parallel conductivity x 0.9, its density and heat capacity whole."""
    flat = Composition(0.6947, 0.2015, 0.0986, 0.0096)
    assert meat(flat, 60.0).conductivity == pytest.approx(PARALLEL_SHARE * 0.531170, rel=1e-5)
    assert meat(flat, 60.0).density == parallel(flat, 60.0).density


def test_outside_the_range_of_the_equations_is_refused() -> None:
    """-40 to 150 °C, as the source says."""
    with pytest.raises(OutOfRange):
        component("water", 151.0)
