"""After the cure: a soak and a sealed rest, carried back as weights, against the same stages run one by one."""

from dataclasses import replace

import numpy as np
import pytest

from core.cure import diffusion
from core.cure.afterwards import SOAK_WATER
from core.cure.course import Immersion, course, ensemble, holds, way
from core.cure.diffusion import Array, Field, Stage
from core.cure.dose import Recipe, dose
from core.cure.penetration import penetration
from core.cure.profile import front
from core.cure.soak import soak
from core.meat.cuts import cut
from core.meat.piece import piece
from core.units import SECONDS_PER_DAY, SECONDS_PER_HOUR

DAYS = 4.0


def bag(method: str, **stages: float) -> Immersion:
    return Immersion(piece(cut("brisket_flat"), 3.2, 0.05), dose(Recipe(method, 3.2, 0.0625)), **stages)


def one_by_one(immersion: Immersion) -> tuple[Array, Array]:
    """Salt of the middle and of the mean by running cure, soak and rest as stages of the cells. [-]"""
    along = way(immersion)
    pace = ensemble(immersion, along).pace
    field = diffusion.run(along.shape, along.start(pace.size), Stage(pace * DAYS * SECONDS_PER_DAY, along.bath_ratio))
    if immersion.soak_hours:
        ratio = SOAK_WATER * immersion.dose.counted_meat_kg / holds(immersion)
        water = Stage(pace * immersion.soak_hours * SECONDS_PER_HOUR, ratio, bath=0.0)
        field = diffusion.run(along.shape, Field(field.cells), water)
    field = diffusion.run(along.shape, Field(field.cells), Stage(pace * immersion.rest_hours * SECONDS_PER_HOUR))
    return diffusion.centre(field) * along.salt, diffusion.mean(along.shape, field) * along.salt


@pytest.mark.parametrize("method", ["brine", "dry"])
@pytest.mark.parametrize(("soak", "rest"), [(0.0, 48.0), (3.0, 0.0), (12.0, 72.0), (0.0, 0.0)])
def test_weights_are_the_stages_run_one_by_one(method: str, soak: float, rest: float):
    """Cure, soak, rest: salt in the middle and on average, for every member, as the cells have it."""
    found = course(bag(method, soak_hours=soak, rest_hours=rest), np.array([1.0, DAYS]))
    centre, mean = one_by_one(bag(method, soak_hours=soak, rest_hours=rest))
    assert found.salt_centre[-1] == pytest.approx(centre, abs=2e-6)
    assert found.salt_mean[-1] == pytest.approx(mean, abs=2e-6)


def test_a_sealed_rest_brings_the_middle_nearer_and_takes_nothing_away():
    """Two days sealed: the mean stays to the last digit, the middle gains, and the days in the cure grow fewer."""
    plain, rested = (penetration(bag("brine", rest_hours=h)) for h in (0.0, 48.0))
    before, after = plain.after(3.0), rested.after(3.0)
    assert after.salt_mean.p50 == pytest.approx(before.salt_mean.p50, rel=1e-9)
    assert after.salt_centre.p50 > 1.1 * before.salt_centre.p50
    assert after.probability_pink > before.probability_pink
    assert rested.days_p90 < plain.days_p90
    assert after.ingoing_centre == before.ingoing_centre  # the cooling rule is not helped by a model of the rest


def test_a_soak_takes_salt_out_and_leaves_the_middle_for_last():
    """Three hours in fresh water: the mean falls, more than the middle does."""
    before, after = (penetration(bag("brine", soak_hours=h)).after(5.0) for h in (0.0, 3.0))
    assert after.salt_mean.p50 < before.salt_mean.p50
    assert before.salt_mean.p50 - after.salt_mean.p50 > before.salt_centre.p50 - after.salt_centre.p50


def test_an_injected_piece_soaks_by_its_faces_not_between_its_needles():
    """What lies between two needles gives nothing off there; the mean falls by what the faces give to the water."""
    plain, soaked = (penetration(bag("inject", soak_hours=h)).after(3.0) for h in (0.0, 3.0))
    assert soaked.salt_centre.p50 == pytest.approx(plain.salt_centre.p50, rel=1e-6)
    assert soaked.salt_mean.p50 < 0.95 * plain.salt_mean.p50


def test_an_injected_piece_is_as_salty_after_its_soak_as_the_hours_were_asked_for():
    """The hours to a wanted mean, and the mean after those hours, are one sum."""
    found = soak(bag("inject"), 3.0, 0.018)
    after = penetration(bag("inject", soak_hours=found.hours.p50)).after(3.0)
    assert after.salt_mean.p50 == pytest.approx(0.018, rel=0.01)


def test_the_picture_of_a_slice_knows_the_rest():
    """The front stands further in once it has rested."""
    short = replace(bag("brine"), cook_hours=0.0)
    assert front(replace(short, rest_hours=72.0), 1.5)[1] > front(short, 1.5)[1]
    assert front(replace(short, soak_hours=6.0), 1.5)[1] < front(replace(short, rest_hours=6.0), 1.5)[1]
