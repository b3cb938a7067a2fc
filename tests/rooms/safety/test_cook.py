"""core.safety.cook: how long it was on, and the modelled core held against the readings."""

import pytest

from core.safety.cook import cook_history, hours_on
from tests.records import at, brisket, history


@pytest.mark.parametrize(
    ("on", "off", "now", "hours"),
    [(0.0, 10.2, 17.0, 10.2), (0.0, None, 5.0, 5.0), (0.0, 10.0, 5.0, 5.0), (None, None, 5.0, None)],
)
def test_hours_on(on, off, now, hours):
    """Up to now while it is on, up to when it came off; an hour off that lies ahead ends nothing yet."""
    times = {"meat_on_at": None if on is None else at(on), "off_at": None if off is None else at(off)}
    assert hours_on(brisket(now=at(now), **times)) == hours


@pytest.mark.parametrize(
    ("model", "believed"),
    [
        (((1.0, 101.8), (3.0, 150.0)), True),  # °F; 1 °C over the reading at 1 h, at the model's first point
        (((1.0, 101.9), (3.0, 150.0)), False),
        (((0.5, 60.0), (1.0, 101.9), (3.0, 150.0)), False),  # at a point between others
        (((0.0, 60.0), (2.0, 143.6), (3.0, 150.0)), True),  # by the line between two: 101.8 °F at 1 h
        (((0.0, 60.0), (2.0, 143.8), (3.0, 150.0)), False),
        (((0.0, 39.0), (0.5, 60.0), (2.0, 143.6), (3.0, 150.0)), True),  # of the two about the hour, not an earlier one
        (((1.1, 150.0), (3.0, 150.0)), True),  # it says nothing of 1 h
        (((0.0, 60.0), (0.9, 150.0)), True),
    ],
)
def test_a_model_over_a_reading_is_not_the_low_side(model, believed):
    """Read 100 °F after an hour: a low side more than 1 °C (1.8 °F) over that is left out whole."""
    record = brisket(((1.0, 100.0), (4.0, 160.0)), now=at(4.1), off_at=None, modelled_low=history(*model))
    assert (len(cook_history(record)) > 2) is believed
