"""The estimate of a cook, as the batch asks for it."""

import time

import numpy as np
import pytest

from core.errors import Gone, OutOfRange
from core.heat import ready
from core.heat.cook import Cook, History, PitSet, Seen, Wrapped
from core.heat.ready import forecast
from core.meat.cuts import cut
from core.meat.piece import piece

HOUR = 3600.0
FLAT = piece(cut("brisket_flat"), 3.5)
COOK = Cook(FLAT, "ceramic", 121.0, 4.0, 93.0)
ON_THE_WAY = (Seen(HOUR, "core", 38.0), Seen(2 * HOUR, "core", 55.0), Seen(3 * HOUR, "core", 62.0))


def test_before_the_fire_is_lit_there_is_a_band() -> None:
    """With nothing known: a band of hours, the core as cold as the fridge, the stall ahead, both wraps tried."""
    found = forecast(COOK)
    assert 5.0 < found.ready.p10 < found.ready.p50 < found.ready.p90 < 20.0
    assert found.core_now.p50 == pytest.approx(4.0, abs=0.5)
    assert found.stall.phase == "ahead"
    assert [g.kind for g in found.wraps] == ["paper", "foil"]
    assert found.fire.state == "unknown"


def test_a_reading_moves_the_core_and_narrows_it() -> None:
    """The core now lies at the last reading within its error, though the reading was off the middle curve."""
    found = forecast(COOK, History(ON_THE_WAY, now_s=3 * HOUR))
    assert found.core_now.p10 - 1.0 <= 62.0 <= found.core_now.p90 + 1.0
    assert found.core_now.p90 - found.core_now.p10 < 3.0


def test_a_slow_core_is_later_than_a_fast_one() -> None:
    """Readings 5 K lower all along move the ready time back by more than half an hour."""
    cool = tuple(Seen(s.seconds, s.probe, s.celsius - 5.0) for s in ON_THE_WAY)
    assert forecast(COOK, History(cool)).ready.p50 > forecast(COOK, History(ON_THE_WAY)).ready.p50 + 0.5


def test_a_cold_pit_is_later() -> None:
    """A pit that was read 15 K low for hours is expected to stay low in part."""
    pit = tuple(Seen(h * HOUR, "pit", 106.0) for h in (1, 2, 3))
    low = forecast(COOK, History((*ON_THE_WAY, *pit), now_s=3 * HOUR))
    assert low.ready.p50 > forecast(COOK, History(ON_THE_WAY, now_s=3 * HOUR)).ready.p50 + 0.5
    assert low.fire.state == "low"


def test_a_set_point_moved_up_is_sooner_from_then_on() -> None:
    """Pit moved from 121 to 135 °C at 3 h: sooner, and the past is not rewritten."""
    moved = forecast(COOK, History(ON_THE_WAY, now_s=3 * HOUR, pit_sets=(PitSet(3 * HOUR, 135.0),)))
    left = forecast(COOK, History(ON_THE_WAY, now_s=3 * HOUR))
    assert moved.ready.p50 < left.ready.p50 - 0.5
    assert moved.core_now.p50 == pytest.approx(left.core_now.p50, abs=0.3)
    pit = Seen(4 * HOUR, "pit", 135.0)
    set_up = History((*ON_THE_WAY, pit), now_s=4 * HOUR, pit_sets=(PitSet(3 * HOUR, 135.0),))
    assert forecast(COOK, set_up).fire.state == "steady"


def test_wrapped_meat_is_offered_no_wrap() -> None:
    """After the foil no wrap is tried, the stall counts as over, and unwrapping brings the offer back."""
    wrapped = (Wrapped(4 * HOUR, "foil"),)
    found = forecast(COOK, History(ON_THE_WAY, wrapped, 5 * HOUR))
    assert found.wraps == ()
    assert found.stall.phase in ("over", "none")
    opened = forecast(COOK, History(ON_THE_WAY, (*wrapped, Wrapped(5 * HOUR, "none")), 5 * HOUR))
    assert len(opened.wraps) == 2


def test_the_gain_of_a_wrap_is_what_the_wrap_then_brings() -> None:
    """Hours said to be saved by foil now are those between the two forecasts, within a quarter of an hour."""
    history = History(ON_THE_WAY, now_s=4 * HOUR)
    bare = forecast(COOK, history)
    foil = next(g for g in bare.wraps if g.kind == "foil")
    done = forecast(COOK, History(ON_THE_WAY, (Wrapped(4 * HOUR, "foil"),), 4 * HOUR))
    assert bare.ready.p50 - done.ready.p50 == pytest.approx(foil.saves.p50, abs=0.35)
    assert bare.loss.p50 - done.loss.p50 == pytest.approx(foil.weight_kept, abs=0.03)


def test_a_core_at_the_target_is_ready() -> None:
    """Read at the target: ready about now, and the next reading is soon."""
    seen = (*ON_THE_WAY, Seen(8 * HOUR, "core", 88.0), Seen(9 * HOUR, "core", 93.5))
    found = forecast(COOK, History(seen, now_s=9 * HOUR))
    assert found.ready.p50 == pytest.approx(9.0, abs=0.3)
    assert found.next_reading_s - found.now_s <= 20 * 60


def test_the_next_reading_is_asked_for_within_two_hours_and_not_under_twenty_minutes() -> None:
    """20 min to 2 h ahead; under an hour from ready at most 20 min."""
    for history in (History(), History(ON_THE_WAY, now_s=3 * HOUR)):
        found = forecast(COOK, history)
        assert 20 * 60 <= found.next_reading_s - found.now_s <= 2 * HOUR


def test_a_dead_pit_never_gets_there_and_says_so() -> None:
    """Pit read at 80 °C for hours: most members never reach 93 °C, and stand at the horizon."""
    pit = tuple(Seen(h * HOUR, "pit", 70.0) for h in range(1, 9))
    seen = (*ON_THE_WAY, Seen(8 * HOUR, "core", 60.0), *pit)
    found = forecast(Cook(FLAT, "ceramic", 100.0, 4.0, 93.0), History(seen, now_s=8 * HOUR))
    assert found.reaches < 0.5
    assert found.ready.p90 == pytest.approx(40.0)
    assert found.fire.state == "out"


def test_a_cook_past_every_horizon_is_still_told() -> None:
    """60 h after the meat went on: an answer, not an error."""
    found = forecast(COOK, History((*ON_THE_WAY, Seen(60 * HOUR, "core", 70.0)), now_s=60 * HOUR))
    assert found.ready.p90 <= 72.1


def test_the_low_curve_is_below_what_was_read() -> None:
    """For lethality the low side counts: at each reading it lies below it, by no more than 4 K."""
    found = forecast(COOK, History(ON_THE_WAY, now_s=3 * HOUR))
    for seen in ON_THE_WAY:
        low = float(np.interp(seen.seconds / HOUR, found.curve.hours, found.curve.low))
        assert seen.celsius - 4.0 <= low <= seen.celsius - 0.3


def test_higher_up_the_same_cook_is_a_little_different() -> None:
    """At 2000 m water leaves faster through thinner air: the cook is not sooner."""
    high = Cook(FLAT, "ceramic", 121.0, 4.0, 90.0, altitude_m=2000.0)
    assert forecast(high).ready.p50 >= forecast(Cook(FLAT, "ceramic", 121.0, 4.0, 90.0)).ready.p50 - 0.05


@pytest.mark.parametrize(
    ("change", "quantity"),
    [({"pit_c": 40.0}, "pit"), ({"target_c": 100.0}, "target"), ({"pit_c": 90.0, "target_c": 93.0}, "target"),
     ({"start_c": 95.0}, "start")],
)  # fmt: skip
def test_what_the_model_does_not_hold_for_is_refused(change: dict[str, float], quantity: str) -> None:
    """Pit, target and start outside the model's range raise, none is clamped."""
    with pytest.raises(OutOfRange) as refused:
        Cook(FLAT, **change)
    assert refused.value.quantity == quantity


def test_a_cooker_there_is_not_is_said() -> None:
    """An unknown cooker raises Gone."""
    with pytest.raises(Gone):
        forecast(Cook(FLAT, "volcano"))


@pytest.mark.benchmark
def test_an_update_is_quick() -> None:
    """One reading more on a cook of 12 h, 200 members, computed anew: under 60 ms, best of five."""
    seen = tuple(Seen(h * HOUR, "core", t) for h, t in enumerate((38, 55, 62, 65, 67, 69, 71), start=1))
    spent = []
    for _ in range(5):
        ready._forecast.cache_clear()
        begun = time.perf_counter()
        forecast(COOK, History(seen, now_s=7 * HOUR))
        spent.append(time.perf_counter() - begun)
    assert min(spent) < 0.060


@pytest.mark.parametrize("now_s", [3 * HOUR + 1, 3 * HOUR + 149, 3 * HOUR + 151, 3 * HOUR + 299, 30 * HOUR + 10])
def test_who_asks_again_is_told_as_if_for_the_first_time(now_s: float) -> None:
    """What is remembered of the run of a moment ago changes no figure, whether a step has passed meanwhile or not."""
    for earlier in (now_s - 1.0, now_s - 60.0):
        forecast(COOK, History(ON_THE_WAY, now_s=earlier))
    again = forecast(COOK, History(ON_THE_WAY, now_s=now_s))
    for remembered in (ready._forecast, ready._outcome):
        remembered.cache_clear()
    assert forecast(COOK, History(ON_THE_WAY, now_s=now_s)) == again


def test_a_core_that_climbs_fast_is_read_before_it_can_be_there() -> None:
    """A loin of 80 mm at 14 K/h, 9.5 K short: read when that pace would end it, though the members expect a stall."""
    loin = Cook(piece(cut("pork_loin"), 2.3, 0.08), "kettle", 107.0, 4.0, 65.5)
    cores = ((3600.0, 38.0), (6000.0, 49.0), (7800.0, 56.0))
    seen = (*(Seen(at, "core", celsius) for at, celsius in cores), Seen(6000.0, "pit", 120.0))
    found = forecast(loin, History(seen))
    assert found.ready.p50 * HOUR > 12_000.0
    assert found.next_reading_s == pytest.approx(7800.0 + 9.5 / 7.0 * 1800.0, abs=1.0)
    later = forecast(loin, History((*seen, Seen(9000.0, "pit", 118.0))))  # a pit that was read since puts nothing off
    assert later.next_reading_s == pytest.approx(found.next_reading_s)
