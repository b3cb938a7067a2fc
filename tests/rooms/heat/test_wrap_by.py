"""Until when a wrap still brings the meat in time."""

from dataclasses import replace

import pytest

from core.heat.cook import Cook, History, Seen, Wrapped
from core.heat.ready import forecast
from core.heat.wrap_by import wrap_by
from core.meat.cuts import cut
from core.meat.piece import piece

HOUR = 3600.0
COOK = Cook(piece(cut("brisket_flat"), 3.2, 0.048), "ceramic", 121.0, 4.0, 90.5)
STALLED = History(
    (
        Seen(HOUR, "core", 40.0),
        Seen(2 * HOUR, "core", 58.0),
        Seen(3 * HOUR, "core", 66.0),
        Seen(3 * HOUR, "pit", 119.0),
    ),
    now_s=3 * HOUR,
)


def test_more_time_lets_the_wrap_wait() -> None:
    """An hour more to the meal never asks for an earlier wrap, and never lowers a chance."""
    found = [wrap_by(COOK, STALLED, hours) for hours in (5.0, 6.0, 7.0, 8.0, 9.0)]
    late = [one.sure or 0.0 for one in found]
    assert late == sorted(late)
    assert [one.bare for one in found] == sorted(one.bare for one in found)
    assert [one.now for one in found] == sorted(one.now for one in found)
    assert all(one.now >= one.bare for one in found)


def test_what_no_wrap_reaches_is_said() -> None:
    """Half an hour from a core of 66 °C to 90 °C there is no such hour."""
    found = wrap_by(COOK, STALLED, 3.5)
    assert (found.sure, found.even, found.now) == (None, None, 0.0)


def test_wrapped_at_that_hour_the_forecast_agrees() -> None:
    """Told to wrap by then, and wrapped then: the band's late end is about the hour that was needed."""
    found = wrap_by(COOK, STALLED, 8.0)
    assert found.sure is not None
    at = found.sure * HOUR
    quick = wrap_by(COOK, STALLED, 8.0, "paper")
    assert quick.sure is None or quick.sure <= found.sure
    told = forecast(COOK, replace(STALLED, wraps=(Wrapped(at, "foil"),), now_s=at))
    assert told.ready.p90 == pytest.approx(8.0, abs=0.6)


@pytest.mark.parametrize("history", [History(), STALLED], ids=["just on", "in the stall"])
def test_the_bare_share_is_that_of_the_forecast(history: History) -> None:
    """Bare, the forecast's own band says how many are in time: one in ten, half, nine in ten at its points."""
    told = forecast(COOK, history).ready
    for hours, share in ((told.p10, 0.1), (told.p50, 0.5), (told.p90, 0.9)):
        assert wrap_by(COOK, history, hours).bare == pytest.approx(share, abs=0.08)
    assert wrap_by(COOK, history, 2.0 * told.p90).bare >= 0.95
