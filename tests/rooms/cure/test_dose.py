"""The dose of everyday kitchens, and what is refused."""

from dataclasses import replace
from pathlib import Path

import pytest

from core.cure import limits as limits_file
from core.cure.contents import SATURATED_BRINE, Contents, salometer_degrees
from core.cure.dose import Recipe, dose, from_teaspoons, house_target, teaspoons
from core.cure.limits import limit
from core.cure.weighing import PICKLE_STRENGTH, weigh
from core.errors import Gone, OutOfRange, OverLimit, UnknownCure, Unreadable
from core.sources import CFR_9_424, CFR_21_172, EU_2023_2108


def keys(found) -> list[str]:
    return [caution.key for caution in found.cautions]


def test_a_flat_in_a_bag():
    """3.2 kg, half its weight of water, 6.25 %: 150 of meat and whole pickle, 2.25 % of salt in meat and water."""
    found = dose(Recipe("brine", 3.2, 0.0625))
    pickle = found.water_kg + found.salt_kg + found.sugar_kg + found.cure_kg
    assert found.cure_kg * 0.0625 * 1e6 / (3.2 + pickle) == pytest.approx(150)
    assert (found.salt_kg + found.cure_kg * 0.9375) / (3.2 + 1.6) == pytest.approx(0.0225)
    assert (found.water_kg, found.sugar_kg) == pytest.approx((1.6, 0.048))
    assert found.cure_kg * 1000 == pytest.approx(11.9, abs=0.05)
    assert found.nitrite_ingoing == pytest.approx(150)
    assert found.salt_fraction == pytest.approx(0.0225)
    assert found.limit.source is CFR_9_424
    assert "nitrite_weigh_exactly" in keys(found)


def test_a_brine_shows_the_pick_up_figure_beside_and_does_not_use_it():
    """The same tub is a third of it by pick-up: information, and far under what it is held to."""
    found = dose(Recipe("brine", 3.2, 0.0625))
    pickle = found.water_kg + found.salt_kg + found.sugar_kg + found.cure_kg
    assert found.nitrite_by_pickup == pytest.approx(found.cure_kg * 0.0625 * 0.10 * 1e6 / pickle)
    assert found.nitrite_by_pickup < found.nitrite_ingoing / 3
    assert dose(Recipe("dry", 3.2, 0.0625)).nitrite_by_pickup is None


@pytest.mark.parametrize(
    ("recipe", "cure_g"),
    [
        (Recipe("dry", 3.4, 0.0625, nitrite_target=156.25, salt_fraction=0.025), 8.5),
        (Recipe("dry", 3.2, 0.0625, nitrite_target=200), 10.24),
        (Recipe("dry", 3.4, 0.0588, nitrite_target=156, salt_fraction=0.025), 9.0),
        (Recipe("inject", 4.0, 0.0625, nitrite_target=150), 9.6),
        (Recipe("dry", 2.0, 0.005, nitrite_target=150), 60.0),
    ],
)
def test_worked_examples_of_the_trade(recipe: Recipe, cure_g: float):
    """Worked by hand from F7: grams = target x meat / strength / 1e6."""
    assert dose(recipe).cure_kg * 1000 == pytest.approx(cure_g, rel=0.005)


def test_a_weak_curing_salt_is_all_the_salt():
    """0.5 % at 150 is 30 g for a kg: no salt beside it, 2.985 % reached, and the nitrite at the wanted salt is said."""
    found = dose(Recipe("dry", 2.0, 0.005))
    assert found.salt_kg == 0.0
    assert found.salt_fraction == pytest.approx(0.03 * 0.995)
    (said,) = (c for c in found.cautions if c.key == "salt_set_by_cure")
    assert dict(said.facts)["nitrite_at_wanted_salt"] == pytest.approx(0.0225 / 0.995 * 0.005 * 1e6, rel=1e-3)
    wet = dose(Recipe("brine", 2.0, 0.005))
    assert wet.salt_kg == 0.0
    assert wet.nitrite_ingoing == pytest.approx(150)


def test_an_injection_carries_the_cure_and_rubs_on_the_salt_that_would_not_dissolve():
    """10 % of pickle cannot hold 2.25 % of salt: 60 degrees go in, the rest is rubbed on, nothing is lost."""
    found = dose(Recipe("inject", 4.0, 0.0625))
    assert found.brine_strength == pytest.approx(PICKLE_STRENGTH)
    assert salometer_degrees(found.brine_strength) == pytest.approx(60)
    assert found.pickle_kg == pytest.approx(0.4)
    assert found.rubbed_salt_kg > 0.0
    assert found.salt_fraction == pytest.approx(0.0225)
    assert found.nitrite_ingoing == pytest.approx(150)
    mild = dose(Recipe("inject", 4.0, 0.0625, pump_fraction=0.2))
    assert mild.rubbed_salt_kg == 0.0
    assert mild.brine_strength < PICKLE_STRENGTH


def test_a_weak_curing_salt_cannot_be_pumped():
    """Six times the salt in the same pickle would not dissolve: said with the range, never rounded."""
    with pytest.raises(OutOfRange) as refused:
        dose(Recipe("inject", 4.0, 0.005))
    assert refused.value.high == SATURATED_BRINE


def test_over_the_limit_is_refused_with_what_passes():
    """210 in a US brine: the limit, its source and status, and a weight that passes."""
    recipe = Recipe("brine", 3.2, 0.0625, nitrite_target=210)
    with pytest.raises(OverLimit) as refused:
        dose(recipe)
    error = refused.value
    assert (error.substance, error.limit_mg_kg, error.jurisdiction) == ("nitrite", 200.0, "US")
    assert (error.source, error.status) == (CFR_9_424.key, "CONFIRMED")
    assert error.found_mg_kg == pytest.approx(210)
    assert error.passing_cure_kg is not None
    anew = replace(weigh(recipe, 200.0), cure_kg=error.passing_cure_kg)
    assert 199 < anew.ingoing().nitrite <= 200


def test_the_625_of_plants_is_no_target_at_home():
    """21 CFR 172.175: a dry cure of 625 is refused at the home ceiling of 200."""
    with pytest.raises(OverLimit) as refused:
        dose(Recipe("dry", 3.2, 0.0625, nitrite_target=625))
    assert (refused.value.limit_mg_kg, refused.value.source) == (200.0, CFR_21_172.key)


def test_bacon_has_limits_of_its_own():
    """120 wet or pumped, 200 dry, on skin-free weight; pumped bacon wants ascorbate."""
    with pytest.raises(OverLimit):
        dose(Recipe("brine", 2.0, 0.0625, "bacon", nitrite_target=121))
    assert dose(Recipe("dry", 2.0, 0.0625, "bacon", nitrite_target=200)).nitrite_ingoing == pytest.approx(200)
    assert "pumped_bacon_wants_ascorbate" in keys(dose(Recipe("inject", 2.0, 0.0625, "bacon", nitrite_target=120)))


def test_a_skin_is_not_meat():
    """A belly with its skin on gets the dose of 0.9 of its weight, and what looks like 200 is 222: refused."""
    bare, skinned = (dose(Recipe("dry", 2.0, 0.0625, "bacon", nitrite_target=120, skin_on=s)) for s in (False, True))
    assert skinned.cure_kg == pytest.approx(0.9 * bare.cure_kg)
    assert "skin_counted_out" in keys(skinned)
    looks_200 = Contents("dry", 1.0, 0.0032, 0.0625, skin_on=True, product_class="bacon")
    assert looks_200.ingoing().nitrite == pytest.approx(222.22, abs=0.01)


def test_cure_with_nitrate_is_named_and_kept_out_of_bacon():
    """6.25 % nitrite with 4 % nitrate: 96 mg/kg of nitrate beside 150, said; in bacon no dose of it passes."""
    found = dose(Recipe("dry", 2.0, 0.0625, nitrate_fraction=0.04))
    assert found.nitrate_ingoing == pytest.approx(96)
    assert "nitrate_in_short_cure" in keys(found)
    with pytest.raises(OverLimit) as refused:
        dose(Recipe("dry", 2.0, 0.0625, "bacon", nitrate_fraction=0.04, nitrite_target=120))
    assert (refused.value.substance, refused.value.passing_cure_kg) == ("nitrate", None)


def test_canada_counts_nitrite_and_nitrate_together():
    """150 and 96 are 246: over the Canadian 200 of both, within the US limits of each."""
    with pytest.raises(OverLimit) as refused:
        dose(Recipe("dry", 2.0, 0.0625, jurisdiction="CA", nitrate_fraction=0.04))
    assert refused.value.substance == "nitrite+nitrate"
    assert refused.value.found_mg_kg == pytest.approx(246)


def test_the_eu_counts_the_ion():
    """80 of the ion are 119.98 of sodium nitrite; 150 is refused there, from memory and said so."""
    with pytest.raises(OverLimit) as refused:
        dose(Recipe("dry", 2.0, 0.0625, jurisdiction="EU"))
    assert (refused.value.source, refused.value.status) == (EU_2023_2108.key, "MEMORY")
    assert house_target("EU", "whole_muscle", "dry") == 119.0
    assert "limit_from_memory" in keys(dose(Recipe("dry", 2.0, 0.0625, jurisdiction="EU", nitrite_target=119)))


def test_house_targets():
    """150, bacon 120, and never over the limit of the place."""
    assert house_target("US", "whole_muscle", "brine") == 150.0
    assert house_target("US", "bacon", "dry") == 120.0
    assert house_target("US", "smoked_tuna", "brine") == 10.0


@pytest.mark.parametrize("strength", [None, 0.0, -0.1])
def test_unknown_cure_gets_no_dose(strength: float | None):
    """No strength, no dose: neither a guess nor a default."""
    with pytest.raises(UnknownCure):
        dose(Recipe("brine", 3.2, strength))


@pytest.mark.parametrize("strength", [0.0005, 0.09, 0.99, 6.25])
def test_strengths_that_no_curing_salt_has(strength: float):
    """A slip (6.25 for 6.25 %) and pure nitrite are outside the range and are asked about."""
    with pytest.raises(OutOfRange):
        dose(Recipe("brine", 3.2, strength))


@pytest.mark.parametrize(
    "change",
    [
        {"meat_kg": 0.0},
        {"meat_kg": 300.0},
        {"nitrite_target": -1.0},
        {"salt_fraction": 0.5},
        {"sugar_fraction": -0.1},
        {"water_share": 0.0},
        {"pump_fraction": 0.9},
        {"nitrate_fraction": 0.5},
        {"meat_kg": float("nan")},
    ],
)
def test_quantities_that_no_cure_has(change: dict[str, float]):
    """Each quantity is held to its range; the error names it."""
    with pytest.raises(OutOfRange):
        dose(replace(Recipe("brine", 3.2, 0.0625), **change))


def test_names_that_there_are_not():
    """A method, a product or a place without rules gets no dose."""
    for recipe in (
        Recipe("osmosis", 3.2, 0.0625),
        Recipe("brine", 3.2, 0.0625, "biltong"),
        Recipe("brine", 3.2, 0.0625, jurisdiction="XX"),
        Recipe("comminuted", 3.2, 0.0625, "bacon"),
    ):
        with pytest.raises(Gone):
            dose(recipe)


def test_a_small_dose_calls_for_a_finer_scale():
    """4.3 g on a scale of 1 g is out by 12 to 23 %; 43 g of a tenth solution is not, and 38.7 g of it is water."""
    small = dose(Recipe("dry", 4.3 * 0.0625 / 150 * 1000, 0.0625))
    (said,) = (c for c in small.cautions if c.key == "scale_too_coarse")
    facts = dict(said.facts)
    assert facts["cure_g"] == pytest.approx(4.3)
    assert (facts["error_low"], facts["error_high"]) == pytest.approx((0.116, 0.233), abs=0.001)
    assert (facts["solution_g"], facts["water_in_solution_g"]) == pytest.approx((43, 38.7))
    assert "scale_too_coarse" not in keys(dose(Recipe("dry", 5.0, 0.0625)))


def test_too_little_nitrite_to_be_called_cured_is_said():
    """Under the 120 of the US floor."""
    assert "under_cured_floor" in keys(dose(Recipe("dry", 3.2, 0.0625, nitrite_target=100)))
    assert "under_cured_floor" not in keys(dose(Recipe("dry", 3.2, 0.0625, nitrite_target=120)))


def test_spoons_are_a_band():
    """An ounce is 4 to 5 teaspoons by public texts: the band holds both, and from spoons it goes both ways."""
    low, high = teaspoons(0.02835)
    assert low <= 4.0
    assert high >= 5.0
    light, heavy = from_teaspoons(5)
    assert light < 0.02835 < heavy


def test_brine_strength_has_an_end():
    """Past saturation there is no degree."""
    with pytest.raises(OutOfRange):
        salometer_degrees(0.27)


@pytest.mark.parametrize(
    ("text", "where"),
    [
        ('[[limit]]\njurisdiction = "US"\n', "limit 1"),
        ("[[limit]\n", "the file"),
        ("[table]\n", "the file"),
    ],
)
def test_a_broken_limit_file_names_the_entry(monkeypatch: pytest.MonkeyPatch, tmp_path: Path, text: str, where: str):
    """A cook who mends the file is told which entry is wrong."""
    (tmp_path / "limits.toml").write_text(text, encoding="utf-8")
    monkeypatch.setattr(limits_file.resources, "files", lambda _: tmp_path)
    limits_file.limits.cache_clear()
    try:
        with pytest.raises(Unreadable) as broken:
            limit("US", "whole_muscle", "dry")
    finally:
        limits_file.limits.cache_clear()
    assert (broken.value.file, broken.value.where) == ("limits.toml", where)
