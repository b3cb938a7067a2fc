"""Laws of the cook that hold for every piece and pit."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.heat import ready
from core.heat.cook import Cook, History, Seen, Wrapped
from core.heat.ready import Estimate, forecast
from core.meat.cuts import cut
from core.meat.piece import piece

HOUR = 3600.0
masses = st.floats(1.2, 6.0)
thicknesses = st.floats(0.03, 0.08)
pits = st.floats(105.0, 150.0)
targets = st.floats(60.0, 93.0)
cookers = st.sampled_from(["ceramic", "steel", "kettle", "offset", "pellet", "gas", "electric"])
QUICK = settings(max_examples=15, deadline=None)


def cook_of(mass: float, thickness: float, pit: float, target: float, cooker: str = "ceramic") -> Cook:
    return Cook(piece(cut("brisket_flat"), mass, thickness), cooker, pit, 4.0, target)


def is_ordered(found: Estimate) -> bool:
    bands = [found.ready, found.core_now, found.loss, found.carry_over]
    curve = found.curve
    rows = zip(curve.low, curve.p10, curve.p50, curve.p90, strict=True)
    return all(b.p10 <= b.p50 <= b.p90 for b in bands) and all(a < b <= c <= d for a, b, c, d in rows)


@given(masses, thicknesses, pits, targets, cookers)
@QUICK
def test_quantiles_are_in_order(mass: float, thickness: float, pit: float, target: float, cooker: str) -> None:
    """10 % <= 50 % <= 90 %, for the times, the losses and every point of the curve."""
    assert is_ordered(forecast(cook_of(mass, thickness, pit, target, cooker)))


@given(masses, thicknesses, st.floats(105.0, 140.0), st.floats(3.0, 25.0), targets)
@QUICK
def test_a_hotter_pit_is_never_later(mass: float, thickness: float, pit: float, more: float, target: float) -> None:
    """Same piece, a warmer set point: each quantile is no later."""
    slow = forecast(cook_of(mass, thickness, pit, target)).ready
    fast = forecast(cook_of(mass, thickness, pit + more, target)).ready
    assert fast.p10 <= slow.p10
    assert fast.p50 <= slow.p50
    assert fast.p90 <= slow.p90


@given(st.floats(2.0, 6.0), st.floats(0.03, 0.06), st.floats(1.05, 1.5), pits, targets)
@QUICK
def test_a_thicker_piece_is_never_sooner(mass: float, thin: float, more: float, pit: float, target: float) -> None:
    """Same mass, more thickness: each quantile is no sooner."""
    quick = forecast(cook_of(mass, thin, pit, target)).ready
    late = forecast(cook_of(mass, thin * more, pit, target)).ready
    assert late.p10 >= quick.p10 - 1e-6
    assert late.p50 >= quick.p50 - 1e-6
    assert late.p90 >= quick.p90 - 1e-6


@given(st.floats(2.0, 6.0), st.floats(0.035, 0.08), pits, st.floats(80.0, 93.0), st.floats(0.0, 0.5))
@QUICK
def test_foil_is_never_later_than_bare(mass: float, thickness: float, pit: float, target: float, at: float) -> None:
    """Wrapped in foil in the first half of the cook: each quantile is no later than bare."""
    cook = cook_of(mass, thickness, pit, target)
    bare = forecast(cook).ready
    seconds = at * bare.p50 * HOUR
    foil = forecast(cook, History(wraps=(Wrapped(seconds, "foil"),), now_s=seconds)).ready
    assert foil.p50 <= bare.p50 + 0.02
    assert foil.p90 <= bare.p90 + 0.02


@given(st.lists(st.floats(-6.0, 6.0), min_size=1, max_size=8), st.lists(st.floats(-15, 15), max_size=4))
@QUICK
def test_readings_never_make_the_band_inconsistent(off: list[float], pit_off: list[float]) -> None:
    """Whatever is read within 6 K of the middle curve, the estimate stays ordered and ahead of now."""
    cook = cook_of(3.0, 0.05, 121.0, 90.0)
    curve = forecast(cook).curve
    times = [(n + 1) * 0.7 for n in range(len(off))]
    seen = [
        Seen(h * HOUR, "core", float(np.interp(h, curve.hours, curve.p50)) + e) for h, e in zip(times, off, strict=True)
    ]
    seen += [Seen((n + 1) * HOUR * 0.9, "pit", 121.0 + e) for n, e in enumerate(pit_off)]
    history = History(tuple(seen), now_s=max(s.seconds for s in seen))
    found = forecast(cook, history)
    assert is_ordered(found)
    if all(s.celsius < 89.0 for s in seen):
        assert found.ready.p90 >= history.now / HOUR
    assert found.next_reading_s > history.now


def test_the_band_narrows_as_readings_come() -> None:
    """Readings along the middle curve: each two hours the 80 % band is narrower, under half of it at last."""
    cook = cook_of(3.5, 0.0515, 121.0, 87.0)
    curve = forecast(cook).curve
    widths = []
    for until in (0.0, 2.0, 4.0, 6.0, 7.5):
        hours = np.arange(1.0, until + 0.01, 1.0)
        seen = tuple(Seen(h * HOUR, "core", float(np.interp(h, curve.hours, curve.p50))) for h in hours)
        band = forecast(cook, History(seen, now_s=until * HOUR)).ready
        widths.append(band.p90 - band.p10)
    assert all(late < early for early, late in pairwise(widths))
    assert widths[-1] < 0.5 * widths[0]


def test_the_same_readings_give_the_same_answer() -> None:
    """No chance, no state: asked twice, computed anew, the estimate is equal to the last digit."""
    cook = cook_of(3.0, 0.05, 121.0, 90.0)
    history = History((Seen(HOUR, "core", 38.0), Seen(3 * HOUR, "core", 60.0)), now_s=3 * HOUR)
    first = forecast(cook, history)
    ready._forecast.cache_clear()
    assert forecast(cook, history) == first


@pytest.mark.parametrize("shift", [-0.3, 0.2])
def test_what_past_cooks_taught_moves_the_hours(shift: float) -> None:
    """ln(true / predicted) of earlier cooks moves the median by that much, and a known cooker narrows the band."""
    cook = cook_of(3.0, 0.05, 121.0, 90.0)
    taught = Cook(cook.piece, "ceramic", 121.0, 4.0, 90.0, log_shift=shift, log_sd=0.09)
    plain, learned = forecast(cook).ready, forecast(taught).ready
    assert np.log(learned.p50 / plain.p50) == pytest.approx(shift, abs=0.08)
    assert np.log(learned.p90 / learned.p10) < np.log(plain.p90 / plain.p10)
