"""The chill and the rest: marks, readings, ways, and the pot of brine."""

import numpy as np
import pytest

from core.errors import OutOfRange
from core.heat.brine_pot import hours_to, ice_into, mixed, with_ice
from core.heat.cook import Seen
from core.heat.cooling import CHILL_FILM, chill, rest
from core.heat.ways import ways
from core.meat.cuts import cut
from core.meat.piece import piece

HOUR = 3600.0
FLAT = piece(cut("brisket_flat"), 3.5, 0.05)


def test_the_marks_come_in_order() -> None:
    """60 °C at once when it starts there, then each colder mark later; all bands in order."""
    found = chill(FLAT, "rack")
    hours = [band for _, band in found.hours if band is not None]
    assert hours[0].p50 == 0.0
    assert [b.p50 for b in hours] == sorted(b.p50 for b in hours)
    assert all(b.p10 <= b.p50 <= b.p90 for b in hours)


def test_each_method_is_quicker_than_the_one_before() -> None:
    """Foil, rack, fan, ice."""
    to_cold = [chill(FLAT, method).to(5.0) for method in CHILL_FILM]
    hours = [band.p50 for band in to_cold if band is not None]
    assert hours == sorted(hours, reverse=True)
    assert len(hours) == 4


def test_readings_correct_the_chill() -> None:
    """A middle warmer than expected after 2 h moves the rest back, a colder one forward; the band narrows."""
    plain = chill(FLAT, "rack")
    at_two = float(np.interp(2.0, plain.curve.hours, plain.curve.p50))
    slow = chill(FLAT, "rack", seen=(Seen(2 * HOUR, "core", at_two + 5.0),)).to(4.4)
    fast = chill(FLAT, "rack", seen=(Seen(2 * HOUR, "core", at_two - 5.0),)).to(4.4)
    open_band = plain.to(4.4)
    assert slow is not None
    assert fast is not None
    assert open_band is not None
    assert fast.p50 < open_band.p50 < slow.p50
    assert slow.p90 - slow.p10 < open_band.p90 - open_band.p10


def test_a_warm_fridge_never_gets_there() -> None:
    """4.4 °C is not reached in a fridge at 5 °C: None, not a number."""
    found = chill(FLAT, "rack", ambient_c=5.0)
    assert found.to(4.4) is None
    assert found.to(7.2) is not None


def test_a_mark_there_is_not_is_refused() -> None:
    """Only the marks of the rules are kept."""
    with pytest.raises(OutOfRange):
        chill(FLAT, "rack").to(35.0)


def test_meat_colder_than_the_fridge_is_refused() -> None:
    """There is no chill to compute."""
    with pytest.raises(OutOfRange):
        chill(FLAT, "rack", start_c=2.0, ambient_c=3.0)


def test_a_cylinder_cools_as_a_cylinder() -> None:
    """A loin-like roll of the same thickness is cold sooner than a flat."""
    roll = piece(cut("brisket_flat"), 3.5, 0.05)
    round_cut = type(roll.cut)(**{**vars(roll.cut), "shape": type(roll.cut.shape)("cylinder")})
    rolled = type(roll)(**{**vars(roll), "cut": round_cut})
    flat, cylinder = chill(roll, "rack").to(5.0), chill(rolled, "rack").to(5.0)
    assert flat is not None
    assert cylinder is not None
    assert cylinder.p50 < flat.p50


def test_foil_fails_whole_and_ice_passes() -> None:
    """A whole flat in foil fails the 1.5 h rule at every thickness; an ice bath passes to 70 mm (computed in 3-D)."""
    for thickness in (0.035, 0.05, 0.07):
        whole = {w.method: w for w in ways(piece(cut("brisket_flat"), 3.5, thickness)) if w.cut_to is None}
        assert not whole["foil"].passes
        assert whole["ice"].passes


def test_cutting_helps_and_slowest_stands_first() -> None:
    """25 mm slices on a rack pass where the whole piece does not; the list runs from slow to quick."""
    found = ways(FLAT)
    whole = next(w for w in found if w.method == "rack" and w.cut_to is None)
    thin = next(w for w in found if w.method == "rack" and w.cut_to == pytest.approx(0.025))
    assert not whole.passes
    assert dict(thin.chances)[thin.chances[0][0]] > dict(whole.chances)[whole.chances[0][0]]
    assert found[0].method == "foil"
    assert found[-1].method == "ice"


def test_towels_hold_longer_than_foil() -> None:
    """Rest above 60 °C: bare, foil, towels, box, in that order; towels about 5 h (common practice 5 to 7)."""
    hours = [rest(FLAT, m, 93.0).to(60.0) for m in ("bare", "foil", "towels", "box")]
    middles = [band.p50 for band in hours if band is not None]
    assert middles == sorted(middles)
    assert 4.5 <= middles[2] <= 7.0


@pytest.mark.parametrize(
    ("start", "ambient", "to", "lidded", "expected"),
    [(96.0, 21.0, 25.0, True, 19.0), (25.0, 3.0, 5.0, False, 12.0), (25.0, 3.0, 5.0, True, 19.0),
     (25.0, 3.0, 4.0, False, 15.0), (25.0, 3.0, 4.0, True, 26.0)],
)  # fmt: skip
def test_a_pot_of_brine_takes_its_hours(start: float, ambient: float, to: float, lidded: bool, expected: float) -> None:
    """4 l in a bare pot, computed elsewhere to 30 %: the other figure lies in the band."""
    found = hours_to(4.0, start, ambient, to, lidded)
    assert found is not None
    assert found.p10 <= expected <= found.p90


def test_a_pot_never_gets_below_the_fridge() -> None:
    """4 °C in a fridge at 4 °C: None."""
    assert hours_to(4.0, 25.0, 4.0, 4.0) is None


def test_ice_cools_brine_at_once() -> None:
    """2.0 kg ice into 2.0 kg at 90 °C: about 5 °C; 1.5 into 2.5: 26 °C (heat balance); and the share backwards."""
    assert mixed(2.0, 90.0, 2.0) == pytest.approx(5.0, abs=0.2)
    assert mixed(2.5, 90.0, 1.5) == pytest.approx(26.3, abs=0.2)
    share = with_ice(4.0, 90.0, 5.0)
    assert mixed(share.hot, 90.0, share.ice) == pytest.approx(5.0, abs=1e-9)


def test_ice_for_a_brine_that_was_boiled() -> None:
    """2 l from 100 to 4.4 °C: 2 x 4.18 x 95.6 / (334 + 4.18 x 4.4) = 2.27 kg (heat balance); and the mix backwards."""
    assert ice_into(2.0, 100.0, 4.4) == pytest.approx(2.27, abs=0.005)
    assert mixed(2.0, 100.0, ice_into(2.0, 100.0, 4.4)) == pytest.approx(4.4, abs=1e-9)
    with pytest.raises(OutOfRange):
        ice_into(2.0, 3.0, 4.4)
