"""The ends of a band of hours, as they are told."""

import pytest

from bot.wording.wraps import _high, _low


@pytest.mark.parametrize(
    ("low", "high", "told"),
    [
        (2.2, 13.2, ("2", "14")),
        (0.9, 2.8, ("0.5", "3")),
        (1.5, 3.7, ("1.5", "4")),
        (4.6, 10.2, ("4", "11")),
        (0.0, 0.2, ("0", "0.5")),
        (-0.3, 3.0, ("0", "3")),
    ],
)
def test_a_band_is_told_coarsely_and_never_narrower(low: float, high: float, told: tuple[str, str]) -> None:
    """To the half hour, from 3 h on to the hour: the short end down, the long end up."""
    assert (_low(low), _high(high)) == told
    assert float(told[0]) <= max(low, 0.0)
    assert float(told[1]) >= high
