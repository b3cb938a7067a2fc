"""What a cook teaches of its cooker, and what it does not."""

from dataclasses import replace

import numpy as np
import pytest

from core.heat.carried import CARRIED, DRIFT, habits
from core.heat.cook import Cook, History, Seen
from core.heat.ready import forecast
from core.meat.cuts import cut
from core.meat.piece import piece
from core.person import Habit

HOUR = 3600.0
COOK = Cook(piece(cut("brisket_flat"), 3.5, 0.05), "ceramic", 121.0, 4.0, 90.0)


def at_a_pace(factor: float) -> History:
    """Core and pit every hour, along the middle curve run through so many times as fast."""
    curve = forecast(COOK).curve
    hours = np.arange(1.0, 7.0)
    core = np.interp(hours * factor, curve.hours, curve.p50)
    seen = [Seen(h * HOUR, "core", float(c)) for h, c in zip(hours, core, strict=True)]
    return History((*seen, *(Seen(h * HOUR, "pit", 121.0) for h in hours)), now_s=7 * HOUR)


def next_hours(factor: float) -> tuple[float, float]:
    """Middle and log width of the next cook\'s hours, after one at that pace."""
    ready = forecast(replace(COOK, habits=habits(COOK, at_a_pace(factor)))).ready
    return ready.p50, float(np.log(ready.p90 / ready.p10))


def test_a_quick_cook_makes_the_next_one_sooner_and_a_slow_one_later() -> None:
    """A cook a quarter quicker, or slower, than expected moves the next one that way, by less than a quarter."""
    plain = forecast(COOK).ready.p50
    quick, slow = next_hours(1.25)[0], next_hours(0.8)[0]
    assert plain / 1.25 < quick < plain * 0.97
    assert plain * 1.03 < slow < plain / 0.8


def test_a_known_cooker_has_a_narrower_band() -> None:
    """One cook as expected narrows the band of the next a little: the meat is another every time."""
    ready = forecast(COOK).ready
    before, after = float(np.log(ready.p90 / ready.p10)), next_hours(1.0)[1]
    assert 0.7 * before < after < before


def test_only_what_belongs_to_the_cooker_is_carried() -> None:
    """Film, pit, wetness and walls; never surer than what changes from cook to cook, nor wider than over cookers."""
    found = habits(COOK, at_a_pace(1.1))
    assert tuple(habit.name for habit in found) == CARRIED
    assert all(DRIFT <= habit.sd <= 1.0 for habit in found)


@pytest.mark.parametrize("known", [(), (Habit("film", 0.5, 0.6),)])
def test_one_reading_teaches_nothing_of_the_cooker(known: tuple[Habit, ...]) -> None:
    """What was known before stands."""
    lone = History((Seen(HOUR, "core", 60.0),), now_s=8 * HOUR)
    assert habits(replace(COOK, habits=known), lone) == known


def test_what_is_known_of_a_cooker_is_what_its_members_have() -> None:
    """A habit of the pit alone, at its middle: the same hours as a pit set so much hotter."""
    hotter = forecast(replace(COOK, habits=(Habit("pit", 2.0, 1.0),))).ready.p50
    assert hotter == pytest.approx(forecast(replace(COOK, pit_c=121.0 + 2.0 * 3.5)).ready.p50, rel=0.03)
