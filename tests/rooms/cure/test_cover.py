"""An injected piece in a cover brine: one pickle, a part of it pumped, the rest about the piece."""

from dataclasses import replace

import numpy as np
import pytest

from core.cure import diffusion, series
from core.cure.contents import Contents
from core.cure.course import Immersion, way
from core.cure.diffusion import Stage
from core.cure.dose import Recipe, dose
from core.cure.judgement import Verdict, judge
from core.cure.limits import limits_of
from core.cure.penetration import penetration
from core.errors import OutOfRange, OverLimit
from core.meat.cuts import cut
from core.meat.piece import Shape, piece

HAM = Recipe("inject", 3.0, 0.0625, cover_share=0.5)


def ham(recipe: Recipe = HAM) -> Immersion:
    return Immersion(piece(cut("ham_boned"), recipe.meat_kg, 0.09, intact=False), dose(recipe))


def test_both_are_counted_in_the_dose():
    """150 mg/kg and 2.25 % salt of meat and the whole pickle, by hand; nothing is left to be rubbed on."""
    found = dose(HAM)
    pickle = found.water_kg + found.salt_kg + found.sugar_kg + found.cure_kg
    assert found.water_kg == pytest.approx(3.0 * 0.6)
    assert found.cure_kg * 0.0625 * 1e6 / (3.0 + pickle) == pytest.approx(150)
    assert (found.salt_kg + found.cure_kg * 0.9375) / (3.0 + found.water_kg) == pytest.approx(0.0225)
    assert (found.pumped_kg, found.rubbed_salt_kg, found.pickle_kg) == pytest.approx((0.3, 0.0, pickle))
    assert found.nitrite_ingoing == pytest.approx(150)


def test_what_the_needles_put_in_is_counted_where_it_is_more():
    """A wide pump from little pickle: 25 % of it at 781 mg/kg is 195 of green meat, over the 164 at rest."""
    told = Contents("inject", 3.0, 0.01, 0.0625, water_kg=0.79, pump_fraction=0.25, covered=True)
    concentration = told.nitrite_kg * 1e6 / told.pickle_kg
    assert told.ingoing().nitrite == pytest.approx(0.25 * concentration)
    assert replace(told, pump_fraction=0.10).ingoing().nitrite == pytest.approx(told.nitrite_kg * 1e6 / (3.0 + 0.8))


def test_a_cover_brine_is_held_to_both_limits_and_the_dose_that_passes_does():
    """210 mg/kg is refused; the curing salt that is told instead comes in under the limit of needle and of bath."""
    with pytest.raises(OverLimit) as refused:
        dose(replace(HAM, nitrite_target=210.0))
    passing = refused.value.passing_cure_kg
    assert passing is not None
    there = replace(dose(HAM), cure_kg=passing)
    assert 195.0 < there.ingoing().nitrite <= 200.0
    for place in ("US", "CA", "EU", "UK"):
        both = limits_of(place, "whole_muscle", "inject", covered=True)
        assert set(limits_of(place, "whole_muscle", "brine")) <= set(both)


def test_a_cover_too_small_to_cover_is_refused():
    with pytest.raises(OutOfRange) as refused:
        dose(replace(HAM, cover_share=0.05))
    assert "cover" in refused.value.quantity


def test_a_doubled_pickle_is_judged_with_its_cover():
    """Twice the curing salt in the same pickle is 300 mg/kg at rest: nothing to eat, whatever the pump says."""
    twice = replace(dose(HAM), cure_kg=2.0 * dose(HAM).cure_kg)
    assert judge(Contents(**{k: getattr(twice, k) for k in Contents.__dataclass_fields__})).verdict is (
        Verdict.CANNOT_CALL_SAFE
    )


@pytest.mark.parametrize("fourier", [0.02, 0.1, 0.4, 1.5])
@pytest.mark.parametrize("within", [0.0, 0.2, 0.7])
def test_the_pumped_part_and_cranks_bath_add_up(fourier: float, within: float):
    """Even at the start plus the rest of the way from a bath: f + (1 - f) of Crank's series, by superposition."""
    start = diffusion.in_brine(1, 0.8, within)
    field = diffusion.run(Shape.SLAB, start, Stage(np.array([fourier]), 0.8))
    assert field.bath is not None
    expected = within + (1.0 - within) * series.slab_in_bath(0.8, fourier, 0.0)
    assert float(diffusion.centre(field)[0]) == pytest.approx(expected, abs=1e-4)
    assert diffusion.mean(Shape.SLAB, field) + 0.8 * field.bath == pytest.approx(1.8, rel=1e-11)


def test_penetration_from_the_needles_and_from_the_cover():
    """Pink at once in pork, as the needles bring 36 mg/kg; the rest creeps in; the whole tends to what was weighed."""
    along = way(ham())
    inside = along.within * along.nitrite
    found = ham().dose
    assert inside == pytest.approx(
        found.nitrite_kg * 1e6 * (0.3 / found.pickle_kg) / (3.0 + 0.3 * 1.8 / found.pickle_kg)
    )
    early, later = penetration(ham()).after(1.0), penetration(ham()).after(60.0)
    assert early.ingoing_centre.p50 == pytest.approx(inside, rel=0.02)
    assert later.ingoing_centre.p50 > 1.5 * inside
    assert later.salt_mean.p50 == pytest.approx(along.salt, rel=0.05)
    assert penetration(ham()).advice == 2.0


def test_a_cover_brine_is_weaker_in_the_middle_than_the_same_dose_pumped_whole():
    """What lies outside has to creep in: by a week the middle of the pumped one holds more."""
    pumped = penetration(ham(replace(HAM, cover_share=0.0))).after(7.0)
    assert penetration(ham()).after(7.0).ingoing_centre.p50 < pumped.ingoing_centre.p50
