"""Where the front of pink stands in a slice."""

from dataclasses import replace

import pytest

from core.cure.contents import Contents
from core.cure.course import Immersion
from core.cure.dose import Recipe, dose
from core.cure.penetration import penetration
from core.cure.profile import front
from core.meat.cuts import cut
from core.meat.piece import Species, piece

TUB = Contents("brine", 3.2, 0.011, 0.0625, salt_kg=0.200, water_kg=3.79)


def immersion(thickness: float = 0.15, **changes: float) -> Immersion:
    return Immersion(piece(cut("brisket_flat"), 3.2, thickness), TUB, **{"cook_hours": 0.0, **changes})


@pytest.mark.parametrize(("days", "millimetres"), [(1, 10), (2, 14), (3, 17), (4, 19), (7, 24), (14, 31)])
def test_front_goes_as_the_root_of_time(days: float, millimetres: float):
    """DERIVED by an independent trial computation in a thick piece: 10 mm on day 1, 31 on day 14, to 2 mm and a half.

    The trial's piece was not named; ours is 150 mm thick, where the faces do not yet know of each other.
    """
    assert front(immersion(), days)[1] * 1000 == pytest.approx(millimetres, abs=2.5)


def test_the_front_meets_in_the_middle_on_the_middle_day():
    """When half of the pieces are pink all through, the middle front has just come the whole way."""
    tub = immersion(0.05, cook_hours=3.5)
    day = penetration(tub).days_p50
    assert front(tub, day * 0.97)[1] < 0.025
    assert front(tub, day * 1.05)[1] == pytest.approx(0.025)


def test_front_is_in_order_and_wider_for_stranger_meat():
    """The slow end before the middle before the quick end; a bird's band is wider than beef's."""
    beef = immersion(0.08)
    bird = replace(beef, piece=replace(beef.piece, cut=replace(beef.piece.cut, species=Species.TURKEY)))
    low, middle, high = front(beef, 4.0)
    assert 0.0 < low < middle < high <= 0.04
    wide = front(bird, 4.0)
    assert wide[2] - wide[0] > high - low


def test_before_and_with_the_needle():
    """Nothing before the first day; an injected piece has no front from its faces."""
    assert front(immersion(), 0.0) == (0.0, 0.0, 0.0)
    pumped = replace(immersion(0.08), dose=dose(Recipe("inject", 3.2, 0.0625)))
    assert front(pumped, 3.0) == (0.04, 0.04, 0.04)
