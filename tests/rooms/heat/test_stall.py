"""A stall is one only while the meat is on its way: thin and early pieces are off the fire before it."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from core.batch.assess import assess
from core.batch.batch import Batch
from core.heat.stall import stall, until_done
from core.person import Person
from core.plan.recipe import product
from core.plan.setup import Setup

ON = datetime(2027, 3, 4, 12, tzinfo=UTC)


def _likely(made: str, cut: str, mass: float) -> float:
    """The share of the cooks of a product that stall, as it goes on the fire."""
    purpose = product(made).purposes[0]
    setup = Setup(made, cut, mass, cure_nitrite_fraction=0.0625)
    setup = replace(setup, target_c=purpose.target_c, purpose=purpose.name)
    done = {"into_cure": ON - timedelta(days=9), "out": ON - timedelta(hours=12), "meat_on": ON}
    cook = assess(Batch("b", "b", setup, ON - timedelta(days=9), done=done), Person("p"), ON).cook
    assert cook is not None
    return cook.stall.likely


@pytest.mark.parametrize(
    ("made", "cut", "mass"),
    [
        ("duck", "duck_breast", 0.4),
        ("back_bacon", "pork_loin", 1.4),
        ("bacon", "pork_belly", 2.3),
        ("salmon", "salmon_side", 1.2),
    ],
)
def test_thin_or_early_pieces_hardly_stall(made: str, cut: str, mass: float) -> None:
    """What comes off before its surface holds it up has no stall to be told of."""
    assert _likely(made, cut, mass) < 0.25


def test_a_thick_piece_that_cooks_tender_stalls() -> None:
    """Beef that goes on to 90 °C stalls in nearly every cook."""
    assert _likely("corned_beef", "brisket_flat", 3.4) > 0.8


def test_nothing_stalls_beyond_its_target() -> None:
    """A core that stands still at 70 °C stalls on its way to 90 °C, and not where it came off at 68 °C."""
    hours = np.arange(0.0, 8.0, 0.05)
    core = np.minimum(20.0 + 25.0 * hours, 70.0)[:, None].repeat(3, axis=1)
    assert stall(core, 180.0, 0.0, wrapped=False).likely == 1.0
    assert stall(until_done(core, 90.0), 180.0, 0.0, wrapped=False).likely == 1.0
    assert stall(until_done(core, 68.0), 180.0, 0.0, wrapped=False).likely == 0.0
