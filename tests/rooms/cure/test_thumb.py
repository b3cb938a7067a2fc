"""The trade's rule beside our days: which rule for which piece, and its days."""

import pytest

from core.cure.course import Immersion
from core.cure.dose import Recipe, dose, house_target
from core.cure.thumb import Thumb, thumb
from core.meat.cuts import cut
from core.meat.piece import piece
from core.sources import COMMON_PRACTICE, EXTENSION_LEAFLETS, FARM_BULLETIN, Source


def rule(name: str, mass: float, thickness: float, method: str, kind: str = "whole_muscle") -> Thumb | None:
    target = house_target("US", kind, method)
    recipe = Recipe(method, mass, 0.0625, kind, nitrite_target=target)
    return thumb(Immersion(piece(cut(name), mass, thickness), dose(recipe)))


@pytest.mark.parametrize(
    ("name", "mass", "thickness", "method", "days", "source"),
    [
        ("brisket_flat", 3.2, 0.0508, "dry", 14.0, EXTENSION_LEAFLETS),
        ("brisket_flat", 3.2, 0.0508, "brine", 6.0, COMMON_PRACTICE),
        ("pork_shoulder", 2.72, 0.090, "brine", 24.0, FARM_BULLETIN),
    ],
)
def test_the_rule_of_each_way(name: str, mass: float, thickness: float, method: str, days: float, source: Source):
    """curing_time_rules.csv: 7 days an inch (EXT-1), 24 days for a 6 lb shoulder (FB-1a); faces by common practice."""
    found = rule(name, mass, thickness, method)
    assert found is not None
    assert found.days == pytest.approx(days, abs=0.1)
    assert found.source is source


def test_belly_and_loin_have_their_days_whatever_they_weigh():
    """curing_time_rules.csv, FB-1c and FB-1d: 15 days for a belly of 10 lb, 21 for a heavier one and for a loin."""
    pieces = (("pork_belly", 3.0, 0.040), ("pork_belly", 5.5, 0.045), ("pork_loin", 3.0, 0.090))
    found = [rule(name, mass, thickness, "brine", "bacon") for name, mass, thickness in pieces]
    assert [one.days for one in found if one] == [15.0, 21.0, 21.0]


def test_an_injected_piece_has_no_rule_but_the_trade_s_days():
    """Its days are those of the product file already."""
    assert rule("brisket_flat", 3.2, 0.050, "inject") is None


@pytest.mark.parametrize(("name", "mass"), [("turkey_breast", 2.0), ("duck_breast", 0.35)])
def test_a_bird_has_no_rule(name: str, mass: float):
    """The rules were made for beef and pork: no raw bird is left for weeks by them."""
    assert rule(name, mass, 0.030, "dry") is None
