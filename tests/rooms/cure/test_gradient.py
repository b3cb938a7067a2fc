"""A strong brine by the clock: the hour is the series' own, and nitrite never goes in this way."""

from dataclasses import replace

import pytest
from scipy.optimize import brentq

from core.cure.course import Immersion, holds, way
from core.cure.diffusivity import LEAN, warming
from core.cure.dose import Dose, Recipe, dose
from core.cure.gradient import brining
from core.cure.series import cylinder_taken_up, slab_taken_up
from core.errors import ByTheClock, OutOfRange
from core.meat.cuts import cut
from core.meat.piece import Piece, piece


def strong(strength: float = 0.10, water: float = 1.5) -> Dose:
    """Plain salt of a strength, in so much water for a kilo of meat."""
    return dose(Recipe("brine", 2.0, None, nitrite_target=0.0, water_share=water, brine_strength=strength))


def known(name: str, thickness: float) -> Piece:
    """A piece of which everything is known."""
    return replace(piece(cut(name), 2.0, thickness), thickness_log_sd=0.0)


def immersion(name: str = "pork_shoulder", thickness: float = 0.05, **changes: float) -> Immersion:
    return Immersion(known(name, thickness), strong(**changes), diffusivity_log_sd=1e-9)


@pytest.mark.parametrize(
    ("name", "taken_up"), [("pork_shoulder", slab_taken_up), ("pork_loin", cylinder_taken_up)]
)  # fmt: skip
@pytest.mark.parametrize("wanted", [0.01, 0.02])
def test_the_hour_is_that_of_the_series(name: str, taken_up, wanted: float):
    """Crank 1975, sections 4.3.5 and 5.3.3: uptake from a stirred bath of limited volume, solved for the time."""
    brine = immersion(name)
    share = wanted / way(brine).salt
    alpha = brine.dose.water_kg / holds(brine)
    fourier = brentq(lambda fo: taken_up(alpha, fo) - share, 1e-4, 5.0)
    exact = fourier * 0.025**2 / (LEAN.diffusivity * warming(brine.fridge_c)) / 3600.0

    found = brining(brine, wanted).hours
    assert found.p50 == pytest.approx(exact, rel=0.01)
    assert found.p10 == pytest.approx(found.p90, rel=1e-3)  # nothing is unknown of this piece


def test_the_brine_is_weighed_as_strong_as_said():
    """10 % is salt in salt plus water, whatever the meat; and no curing salt goes in."""
    tub = strong(0.10)
    assert tub.salt_kg / (tub.salt_kg + tub.water_kg) == pytest.approx(0.10)
    assert (tub.cure_kg, tub.limit) == (0.0, None)


def test_stronger_and_thinner_is_sooner():
    """And more salt wanted is later: the clock runs the right way."""
    usual = brining(immersion(), 0.015).hours.p50
    assert brining(immersion(strength=0.15), 0.015).hours.p50 < usual
    assert brining(immersion(thickness=0.03), 0.015).hours.p50 < usual
    assert brining(immersion(), 0.02).hours.p50 > usual


def test_what_the_clock_cannot_say():
    """As much salt as the brine brings in the end, or meat so thick that it takes over four days."""
    with pytest.raises(OutOfRange, match="salt wanted"):
        brining(immersion(strength=0.03, water=0.5), 0.02)
    with pytest.raises(OutOfRange, match="hours"):
        brining(immersion(thickness=0.12), 0.03)


def test_no_nitrite_in_a_brine_that_is_left_by_the_clock():
    """Refused, however much or little of it."""
    with pytest.raises(ByTheClock) as refused:
        dose(Recipe("brine", 2.0, 0.0625, brine_strength=0.10))
    assert refused.value.strength == 0.10
