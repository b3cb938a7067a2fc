"""Laws of the cure that hold for every piece, dose and stage: nothing is lost, thicker is never sooner, and so on."""

from dataclasses import replace
from math import inf

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.cure import diffusion, nitrite
from core.cure.contents import Contents
from core.cure.course import Immersion
from core.cure.diffusion import Field, Stage
from core.cure.dose import Recipe, dose, house_target, passing_cure
from core.cure.judgement import Verdict, judge
from core.cure.limits import jurisdictions, limit, limits_of
from core.cure.penetration import penetration
from core.cure.soak import soak
from core.cure.weighing import weigh
from core.errors import OverLimit
from core.meat.cuts import cut
from core.meat.piece import Piece, Shape, piece

quick = settings(max_examples=40, deadline=None)
few = settings(max_examples=12, deadline=None)

shapes = st.sampled_from(list(Shape))
ratios = st.floats(0.05, 50.0)
fouriers = st.floats(1e-4, 3.0)
methods = st.sampled_from(["brine", "dry", "inject"])
masses = st.floats(0.4, 8.0)
thicknesses = st.floats(0.02, 0.07)
strengths = st.sampled_from([0.0588, 0.0625])
stages = st.lists(st.tuples(st.sampled_from(["soak", "rest"]), ratios, fouriers), max_size=5)
places = st.sampled_from(
    [(j, c, m) for j in jurisdictions() for c in ("whole_muscle", "bacon") for m in ("brine", "dry", "inject")]
)


def flat(thickness: float, mass: float = 3.2) -> Piece:
    return piece(cut("brisket_flat"), mass, thickness)


def cured(method: str, thickness: float, **changes: float) -> Immersion:
    return Immersion(flat(thickness), dose(Recipe(method, 3.2, 0.0625)), **changes)


@quick
@given(shapes, ratios, fouriers, stages)
def test_nothing_is_lost_in_any_chain_of_stages(
    shape: Shape, brine: float, first: float, chain: list[tuple[str, float, float]]
):
    """Meat and bath together hold after each stage what they held before it, to rounding."""
    field = diffusion.run(shape, diffusion.in_brine(1, brine), Stage(np.array([first]), brine))
    assert diffusion.mean(shape, field) + brine * field.bath == pytest.approx(1.0 + brine, rel=1e-11)
    for kind, size, fourier in chain:
        ratio = size if kind == "soak" else 0.0
        before = diffusion.mean(shape, field)
        field = diffusion.run(shape, Field(field.cells), Stage(np.array([fourier]), ratio, 0.0))
        outside = ratio * field.bath if field.bath is not None else 0.0
        assert diffusion.mean(shape, field) + outside == pytest.approx(before, rel=1e-9)


@quick
@given(shapes, fouriers, st.floats(0.02, 0.5))
def test_a_dose_brings_the_whole_to_one(shape: Shape, fourier: float, depth: float):
    """A dry dose and an injected layer hold exactly what they will bring the meat to, from the first moment on."""
    for start in (diffusion.at_surface(shape, 1), diffusion.in_layer(shape, 1, depth)):
        after = diffusion.run(shape, start, Stage(np.array([fourier])))
        assert diffusion.mean(shape, start) == pytest.approx(1.0, rel=1e-12)
        assert diffusion.mean(shape, after) == pytest.approx(1.0, rel=1e-10)


@quick
@given(shapes, ratios, st.floats(0.01, 1.0), st.floats(1.05, 3.0))
def test_a_brine_never_overfills_the_middle_and_never_empties_it(
    shape: Shape, ratio: float, fourier: float, longer: float
):
    """Beside a brine the middle only gains, and never passes what it tends to."""
    stage = Stage(np.array([fourier, fourier * longer]), ratio)
    sooner, later = diffusion.centre(diffusion.run(shape, diffusion.in_brine(2, ratio), stage))
    assert -1e-6 <= sooner <= later + 1e-9 <= 1.0 + 1e-6


@few
@given(st.sampled_from(["brine", "dry"]), thicknesses, st.floats(1.02, 1.5))
def test_thicker_is_never_sooner(method: str, thickness: float, thicker: float):
    """At every confidence, a thicker piece in the same cure takes at least as long to be pink in the middle."""
    thin, thick = (penetration(cured(method, t)) for t in (thickness, thickness * thicker))
    assert thin.days_p10 <= thick.days_p10
    assert thin.days_p50 <= thick.days_p50
    assert thin.days_p90 <= thick.days_p90
    assert thin.advice <= thick.advice


@few
@given(st.sampled_from(["brine", "dry"]), st.floats(0.03, 0.06), st.floats(-1.0, 3.0), st.floats(0.5, 4.0))
def test_colder_is_never_sooner(method: str, thickness: float, fridge: float, warmer: float):
    """A colder fridge never brings pink sooner, by the middle piece."""
    cold, warm = (penetration(cured(method, thickness, fridge_c=c)) for c in (fridge, fridge + warmer))
    assert cold.days_p50 >= warm.days_p50


@few
@given(methods, thicknesses, st.floats(0.05, 0.6))
def test_days_are_in_order_and_a_wider_doubt_widens_the_band(method: str, thickness: float, doubt: float):
    """10 % before 50 % before 90 %; and who knows less plans longer."""
    sure, unsure = (penetration(cured(method, thickness, diffusivity_log_sd=sd)) for sd in (doubt, doubt + 0.3))
    for found in (sure, unsure):
        assert 0.0 < found.days_p10 <= found.days_p50 <= found.days_p90
        assert found.advice >= max(found.days_p90, 2.0)
    assert unsure.days_p90 >= sure.days_p90 * (1.0 - 1e-6)


@few
@given(st.sampled_from(["brine", "dry"]), thicknesses, st.floats(0.5, 10.0), st.floats(1.1, 3.0))
def test_what_has_come_in_never_goes_out(method: str, thickness: float, days: float, longer: float):
    """Ingoing nitrite and salt in the middle only grow with the days of a cure."""
    found = penetration(cured(method, thickness))
    early, late = found.after(days), found.after(days * longer)
    assert late.ingoing_centre.p10 >= early.ingoing_centre.p10 - 1e-6
    assert late.salt_centre.p50 >= early.salt_centre.p50 - 1e-9
    assert early.ingoing_centre.p10 <= early.ingoing_centre.p50 <= early.ingoing_centre.p90


@few
@given(thicknesses, st.floats(0.3, 2.0), st.floats(1.1, 3.0), st.floats(1.0, 12.0))
def test_more_of_the_same_brine_never_weakens(thickness: float, share: float, more: float, days: float):
    """More brine of one strength leaves at least as much nitrite in the middle, on any day."""

    def middle(water: float) -> float:
        tub = Contents("brine", 3.2, water * 0.003, 0.0625, salt_kg=water * 0.05, water_kg=water)
        return penetration(Immersion(flat(thickness), tub)).after(days).nitrite_centre.p50

    assert middle(3.2 * share * more) >= middle(3.2 * share) - 1e-9


@quick
@given(methods, masses, strengths, st.floats(50.0, 200.0), st.floats(1.1, 3.0))
def test_a_dose_scales_with_the_weight(method: str, mass: float, strength: float, target: float, more: float):
    """Twice the meat, twice of everything; the same figure by the law."""
    small, large = (dose(Recipe(method, m, strength, nitrite_target=target)) for m in (mass, mass * more))
    for part in ("cure_kg", "salt_kg", "sugar_kg", "water_kg"):
        assert getattr(large, part) == pytest.approx(more * getattr(small, part), rel=1e-9, abs=1e-12)
    assert small.nitrite_ingoing == pytest.approx(target, rel=1e-9)
    assert large.nitrite_ingoing == pytest.approx(target, rel=1e-9)


@quick
@given(places, masses, st.floats(0.04, 0.08), st.booleans(), st.floats(1.0, 400.0))
def test_a_dose_is_given_exactly_when_every_limit_passes(
    place: tuple[str, str, str], mass: float, strength: float, skin_on: bool, target: float
):
    """Up to the limit a dose, beyond it a refusal with a dose that passes, whether the rest is weighed anew or not."""
    jurisdiction, product_class, method = place
    recipe = Recipe(method, mass, strength, product_class, jurisdiction, nitrite_target=target, skin_on=skin_on)
    ceiling = limit(jurisdiction, product_class, method).max_mg_kg
    if target <= ceiling:
        assert dose(recipe).nitrite_ingoing == pytest.approx(target, rel=1e-9)
        return
    with pytest.raises(OverLimit) as refused:
        dose(recipe)
    passing = refused.value.passing_cure_kg
    assert passing is not None
    for rest in (ceiling, target):
        put_in = replace(weigh(recipe, rest), cure_kg=passing)
        assert judge(put_in).verdict in (Verdict.WITHIN, Verdict.UNDER_FLOOR)
        assert put_in.ingoing().nitrite == pytest.approx(ceiling, rel=0.05)


@quick
@given(places, st.sampled_from([0.01, 0.04]), masses)
def test_nitrate_is_held_to_its_own_limit(place: tuple[str, str, str], nitrate: float, mass: float):
    """What `dose` lets through passes every limit of the place, nitrate and the sum of both where a rule sums."""
    jurisdiction, product_class, method = place
    target = house_target(jurisdiction, product_class, method)
    recipe = Recipe(method, mass, 0.0625, product_class, jurisdiction, nitrate, target)
    against = limits_of(jurisdiction, product_class, method)
    ingoing = weigh(recipe, target).ingoing()
    if all(one.passes(ingoing.counted(one)) for one in against):
        assert dose(recipe).nitrate_ingoing == pytest.approx(target * nitrate / 0.0625, rel=1e-9)
    else:
        with pytest.raises(OverLimit):
            dose(recipe)
        most = passing_cure(recipe)
        cleared = replace(weigh(recipe, target), cure_kg=most or 0.0).ingoing()
        assert all(one.passes(cleared.counted(one)) for one in against)


@quick
@given(st.floats(0.0, 1e4))
def test_salts_of_nitrite_go_there_and_back(amount: float):
    """Sodium, potassium and ion: each way back returns the amount."""
    assert nitrite.sodium_from_potassium(nitrite.potassium_from_sodium(amount)) == pytest.approx(amount)
    assert nitrite.ion_from_sodium(nitrite.sodium_from_ion(amount)) == pytest.approx(amount)
    assert nitrite.ion_from_sodium(amount) <= amount <= nitrite.potassium_from_sodium(amount)


@few
@given(st.sampled_from(["brine", "dry"]), st.floats(1.0, 10.0), st.floats(0.004, 0.02), st.floats(0.001, 0.01))
def test_less_salt_wanted_is_never_a_shorter_soak(method: str, days: float, wanted: float, less: float):
    """A milder wish takes at least as long, and what no water reaches is never."""
    immersion = cured(method, 0.045)
    salty, mild = soak(immersion, days, wanted + less), soak(immersion, days, wanted)
    assert mild.hours.p50 >= salty.hours.p50
    assert mild.salt_before == salty.salt_before
    assert soak(immersion, days, mild.salt_lowest * 0.5).hours.p50 == inf
