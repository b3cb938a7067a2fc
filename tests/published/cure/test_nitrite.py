"""The formulas, limits and scales against what is printed: tests/published/cure/*.csv names the source of each row."""

import csv
from pathlib import Path

import pytest

from core.cure import nitrite
from core.cure.contents import Contents, salometer_degrees
from core.cure.limits import limit, limits, limits_of
from core.units import KILOGRAMS_PER_OUNCE, KILOGRAMS_PER_POUND, LITRES_PER_US_GALLON

HERE = Path(__file__).parent


def rows(name: str) -> list[dict[str, str]]:
    with (HERE / name).open(encoding="utf-8") as file:
        return list(csv.DictReader(file))


EXAMPLES = {row["id"]: row for row in rows("nitrite_examples.csv")}


def example(key: str) -> tuple[float, float]:
    """Expected value and tolerance of a row."""
    return float(EXAMPLES[key]["expected_ppm"]), float(EXAMPLES[key]["tolerance"])


def cases() -> dict[str, float]:
    """Each row of nitrite_examples.csv as our formulas compute it, from the row's own words."""
    lb, oz = KILOGRAMS_PER_POUND, KILOGRAMS_PER_OUNCE
    brine = 1.170  # 1000 g water, 100 salt, 50 sugar, 20 cure, as the row's note says
    mix = 8 * 16 + 3 * 16 + 2 + 0.5  # oz of the extension mix: 8 lb salt, 3 lb sugar, 2 oz nitrate, 1/2 oz nitrite
    return {
        "R1": nitrite.comminuted(0.25 * oz, 100 * lb),
        "R2": nitrite.dry_cured(1 * oz, 100 * lb),
        "R3": nitrite.pumped(2 * lb, 0.10, 1000 * lb),
        "R3x": nitrite.pumped(2 * lb, 0.10, 835 * lb),
        "R4": nitrite.dry_cured(0.32 * oz, 100 * lb),
        "R5": nitrite.dry_cured(1 * oz * 0.0625, 25 * lb),
        "R6": nitrite.potassium_from_sodium(120),
        "R7": nitrite.potassium_from_sodium(200),
        "R8": nitrite.potassium_from_sodium(100),
        "R9": nitrite.sodium_from_ion(80),
        "R10": nitrite.dry_cured(1 * oz * 0.5 / mix, 1 * lb),
        "R11": nitrite.dry_cured(1 * oz * 2 / mix, 1 * lb),
        "R12": nitrite.dry_cured(1.5 * oz * 0.5 / mix, 1 * lb),
        "R13": nitrite.dry_cured(2 * oz, 100 * lb),
        "D1": nitrite.dry_cured(0.0025 * 0.0625, 1.0),
        "D2": nitrite.dry_cured(0.0032 * 0.0625, nitrite.skin_free(1.0, skin_on=True)),
        "D3": nitrite.pumped(0.020 * 0.0625, 0.10, brine),
        "D4": nitrite.by_pickup(0.020 * 0.0625, 0.04, brine),
        "D5": nitrite.by_equilibrium(0.020 * 0.0625, 1.0, brine),
        "D6": nitrite.by_equilibrium(0.0109 * 0.0625, 2.0, 2.5),
        "D7": nitrite.dry_cured(0.0025 * 0.0625, 1.0),
        "D8": nitrite.dry_cured(0.0025 * 0.04, 1.0),
        "D9": nitrite.dry_cured(0.025 * 0.005, 1.0),
        "D10": nitrite.dry_cured(0.025 * 0.0625, 1.0),
    }


def test_every_example_has_a_case():
    """No row of nitrite_examples.csv is left out."""
    assert set(cases()) == set(EXAMPLES)


@pytest.mark.parametrize("key", sorted(EXAMPLES))
def test_examples(key: str):
    """Identities of the regulations and derived vectors, nitrite_examples.csv, each to its tolerance."""
    expected, tolerance = example(key)
    assert cases()[key] == pytest.approx(expected, abs=tolerance)


@pytest.mark.parametrize(
    ("jurisdiction", "product_class", "method", "row", "column"),
    [
        ("US", "whole_muscle", "brine", ("US", "whole muscle not bacon", "pumped / massaged / immersion"), "max_ppm"),
        ("US", "whole_muscle", "inject", ("US", "whole muscle not bacon", "pumped / massaged / immersion"), "max_ppm"),
        ("US", "whole_muscle", "dry", ("US", "home curing mixes", "any"), "max_ppm"),
        ("US", "whole_muscle", "comminuted", ("US", "comminuted (chopped)", "mixed"), "max_ppm"),
        ("US", "bacon", "inject", ("US", "bacon", "pumped or massaged"), "max_ppm"),
        ("US", "bacon", "brine", ("US", "bacon", "immersion"), "max_ppm"),
        ("US", "bacon", "dry", ("US", "bacon", "dry cured"), "max_ppm"),
        ("US", "smoked_salmon", "brine", ("US", "smoked cured salmon sablefish shad", "any"), "max_ppm"),
        ("US", "smoked_tuna", "brine", ("US", "smoked cured tuna", "any"), "max_ppm"),
        ("CA", "whole_muscle", "dry", ("CA", "cured meat", "any"), "max_ppm"),
        ("CA", "bacon", "dry", ("CA", "side bacon", "any"), "max_ppm"),
        ("EU", "whole_muscle", "brine", ("EU from 2025-10-09", "08.3.1 and 08.3.2 meat products", "added"), "max_ppm"),
        ("UK", "whole_muscle", "dry", ("UK (GB)", "meat products general", "added"), "max_ppm"),
    ],
)
def test_limits(jurisdiction: str, product_class: str, method: str, row: tuple[str, str, str], column: str):
    """Every limit that a dose is held to is a row of nitrite_limits.csv, with its figure, substance and status."""
    printed = next(
        r
        for r in rows("nitrite_limits.csv")
        if (r["jurisdiction"], r["product_class"], r["method"]) == row and r["substance"] != "nitrate"
    )
    ours = limit(jurisdiction, product_class, method)
    assert ours.printed_mg_kg == float(printed[column])
    assert ours.status == printed["status"].split()[0]
    assert (ours.expressed_as == "NO2") == (printed["expressed_as"] == "NO2 ion")


def test_home_dry_cure_is_held_to_the_home_ceiling_and_not_to_the_plants_625():
    """21 CFR 172.175(a)(3): 200 in the finished product; 9 CFR 424.21(c) lets plants put 625 into long dry cures."""
    plant = next(r for r in rows("nitrite_limits.csv") if r["method"] == "dry cured" and r["max_ppm"] == "625")
    assert limit("US", "whole_muscle", "dry").max_mg_kg == 200.0 < float(plant["max_ppm"])


def test_the_floor_of_cured_is_the_handbooks():
    """FSIS Directive 7620.3 p. 12: 120 ppm for "keep refrigerated"; Canada's table starts at 100."""
    floor = next(r for r in rows("nitrite_limits.csv") if r["product_class"] == 'cured "Keep Refrigerated"')
    assert limit("US", "whole_muscle", "brine").floor_mg_kg == float(floor["min_ppm"])
    assert limit("CA", "whole_muscle", "brine").floor_mg_kg == 100.0


def test_nitrate_at_home_is_500_and_none_in_bacon():
    """21 CFR 172.170(a)(2); 9 CFR 424.21(c): cured products other than bacon."""
    (of_muscle,) = (one for one in limits_of("US", "whole_muscle", "dry") if "nitrate" in one.counts)
    (of_bacon,) = (one for one in limits_of("US", "bacon", "dry") if "nitrate" in one.counts)
    assert (of_muscle.max_mg_kg, of_bacon.max_mg_kg) == (500.0, 0.0)


def test_the_potassium_levels_of_the_regulation_agree_with_its_sodium_levels():
    """9 CFR 424.22(b) prints KNO2 148 beside NaNO2 120, 123 beside 100, 246 beside 200 (it cuts off the decimals)."""
    for sodium, potassium in ((120, 148), (100, 123), (200, 246)):
        assert int(nitrite.potassium_from_sodium(sodium)) == potassium
        assert nitrite.sodium_from_potassium(nitrite.potassium_from_sodium(sodium)) == pytest.approx(sodium)


def test_a_limit_from_memory_says_so():
    """EU and UK figures were not seen in a text; nothing that rests on memory is called confirmed."""
    assert {one.status for one in limits() if one.jurisdiction in ("EU", "UK") and "nitrite" in one.counts} == {
        "MEMORY"
    }


def test_each_handbook_formula_has_its_function():
    """handbook_formulas.csv, F1 to F9: each inverse gives back the target, by the printed form of the formula."""
    meat, others, strength, pump, target = 2.0, 1.1, 0.0625, 0.1, 150.0
    assert {"F1", "F2", "F3", "F4", "F5", "F6", "F7", "F8", "F9"} <= {
        row["id"] for row in rows("handbook_formulas.csv")
    }
    dry = nitrite.cure_for_dry(target, meat, strength)
    assert dry * strength * 1e6 / meat == pytest.approx(target)  # F2, F6, F7
    wet = nitrite.cure_for_equilibrium(target, meat + others, strength)
    assert wet * strength * 1e6 / (meat + others + wet) == pytest.approx(target)  # F5, F9
    needle = nitrite.cure_for_pumped(target, others, pump, strength)
    assert needle * strength * pump * 1e6 / (others + needle) == pytest.approx(target)  # F3, F8


def test_recipe_of_a_public_thread_reads_sevenfold_apart_by_the_two_official_ways():
    """5 tsp of 6.25 % cure (1 oz on the pack), 1 US gal of water, 5 lb of meat: about 40 by pick-up, 293 by system.

    The pick-up figure depends on the salt in the pickle, which the thread does not say; 10 % pick-up is taken.
    """
    tub = Contents("brine", 5 * KILOGRAMS_PER_POUND, KILOGRAMS_PER_OUNCE, 0.0625, water_kg=LITRES_PER_US_GALLON)
    assert tub.ingoing().nitrite == pytest.approx(293, rel=0.01)
    assert tub.by_pickup() == pytest.approx(43, abs=5)


@pytest.mark.parametrize("row", rows("salometer.csv"), ids=lambda row: row["salometer_deg"])
def test_salometer(row: dict[str, str]):
    """salometer.csv: degrees from the salt of a brine, by weight and to a kg of water, to its printed digits."""
    by_weight = float(row["pct_salt_by_weight"]) / 100
    assert salometer_degrees(by_weight) == pytest.approx(float(row["salometer_deg"]), abs=0.003)
    grams = float(row["g_salt_per_kg_water"])
    assert salometer_degrees(grams / (grams + 1000)) == pytest.approx(float(row["salometer_deg"]), abs=0.02)
