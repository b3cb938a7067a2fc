"""Readings that cannot be true are asked about, with the likely slip."""

import pytest

from core.heat.cook import Cook, History, Seen
from core.heat.doubt import doubt
from core.meat.cuts import cut
from core.meat.piece import piece
from core.units import celsius_from_fahrenheit as c_of_f

HOUR = 3600.0
COOK = Cook(piece(cut("brisket_flat"), 3.5), "ceramic", 121.0, 4.0, 93.0)
HISTORY = History(
    (Seen(HOUR, "core", 38.0), Seen(2 * HOUR, "core", 55.0), Seen(3 * HOUR, "core", 62.0), Seen(4 * HOUR, "core", 66.0),
     Seen(4 * HOUR, "pit", 120.0)),
    now_s=4 * HOUR,
)  # fmt: skip


@pytest.mark.parametrize("celsius", [61.0, 66.0, 68.0, 72.0, 76.0])
def test_what_may_well_be_true_is_taken(celsius: float) -> None:
    """A stall, a small dip, a quick rise: no doubt an hour after 66 °C."""
    assert doubt(COOK, HISTORY, Seen(5 * HOUR, "core", celsius)) is None


@pytest.mark.parametrize(
    ("said_c", "meant_c"),
    [(155.0, c_of_f(155.0)), (c_of_f(68.0), 68.0)],
    ids=["158 read as °C", "68 read as °F"],
)
def test_the_other_unit_is_suggested(said_c: float, meant_c: float) -> None:
    """°F read as °C, and °C read as °F."""
    found = doubt(COOK, HISTORY, Seen(5 * HOUR, "core", said_c))
    assert found is not None
    assert found.reason == "unit"
    assert found.suggested_c == pytest.approx(meant_c)


def test_a_slip_of_two_digits_is_found() -> None:
    """518 for 158 °F."""
    found = doubt(COOK, HISTORY, Seen(5 * HOUR, "core", c_of_f(518.0)))
    assert found is not None
    assert found.reason == "digits"
    assert found.suggested_c == pytest.approx(c_of_f(158.0))


def test_a_digit_too_many_is_found() -> None:
    """1550 for 155 °F."""
    found = doubt(COOK, HISTORY, Seen(5 * HOUR, "core", c_of_f(1550.0)))
    assert found is not None
    assert found.suggested_c == pytest.approx(c_of_f(155.0))


def test_a_probe_in_the_air_reads_like_the_pit() -> None:
    """Core equals pit while the meat is at 68 °C."""
    found = doubt(COOK, HISTORY, Seen(5 * HOUR, "core", 118.0))
    assert found is not None
    assert found.reason == "air"


def test_pit_and_meat_swapped_are_told_apart() -> None:
    """Core says the pit, and the pit of that minute says the core."""
    history = History((*HISTORY.seen, Seen(5 * HOUR, "pit", 68.0)), now_s=5 * HOUR)
    found = doubt(COOK, history, Seen(5 * HOUR + 60, "core", 119.0))
    assert found is not None
    assert found.reason == "swapped"
    assert found.suggested_probe == "pit"


def test_a_pit_that_says_the_core_beside_a_core_that_says_the_pit() -> None:
    """The same the other way round: the pit is doubted when the core of that minute read like the pit."""
    history = History((*HISTORY.seen, Seen(5 * HOUR, "core", 119.0)), now_s=5 * HOUR)
    found = doubt(COOK, history, Seen(5 * HOUR, "pit", 68.0))
    assert found is not None
    assert found.reason == "swapped"
    assert found.suggested_probe == "core"
    assert doubt(COOK, history, Seen(5 * HOUR, "pit", 119.0)) is None


def test_ten_fahrenheit_in_ten_minutes_is_a_moved_probe() -> None:
    """66 to 77 °C within 10 min: meat does not do that."""
    found = doubt(COOK, HISTORY, Seen(4 * HOUR + 600, "core", 77.0))
    assert found is not None
    assert found.reason in ("jump", "digits")


def test_a_reading_of_an_hour_ago_is_taken_for_a_wrong_time() -> None:
    """45 °C at 5 h was true in the second hour: the clock is doubted or the probe, never swallowed."""
    found = doubt(COOK, HISTORY, Seen(5 * HOUR, "core", 45.0))
    assert found is not None
    assert found.reason in ("clock", "jump")


def test_a_reading_before_the_meat_went_on_is_a_wrong_time() -> None:
    """Negative seconds."""
    found = doubt(COOK, HISTORY, Seen(-60.0, "core", 20.0))
    assert found is not None
    assert found.reason == "clock"


def test_a_pit_in_the_other_unit_is_suggested() -> None:
    """250 read as °C for a pit set to 121 °C."""
    found = doubt(COOK, HISTORY, Seen(5 * HOUR, "pit", 250.0))
    assert found is not None
    assert found.suggested_c == pytest.approx(c_of_f(250.0))


@pytest.mark.parametrize("celsius", [60.0, 95.0, 110.0, 150.0])
def test_a_fire_may_be_anywhere(celsius: float) -> None:
    """A dying fire or an overshoot of 30 K is believed: it is the fire's business, not a slip."""
    assert doubt(COOK, HISTORY, Seen(5 * HOUR, "pit", celsius)) is None


@pytest.mark.parametrize("celsius", [400.0, -40.0])
def test_what_no_pit_can_be_is_doubted(celsius: float) -> None:
    """Out of every range."""
    found = doubt(COOK, HISTORY, Seen(5 * HOUR, "pit", celsius))
    assert found is not None


@pytest.mark.parametrize("hours", [1.0, 1.5, 2.0, 2.5, 3.0])
@pytest.mark.parametrize("celsius", [30.0, 42.0, 48.0])
def test_a_core_that_is_far_behind_is_believed(hours: float, celsius: float) -> None:
    """42 °C two hours in, from a thick piece on a cool fire: slow is possible, so it is kept."""
    history = History((Seen(hours * HOUR, "pit", 120.0),), now_s=hours * HOUR)
    assert doubt(COOK, history, Seen(hours * HOUR, "core", celsius)) is None


def test_a_core_that_runs_ahead_of_every_fire_is_asked_about() -> None:
    """80 °C an hour after the fridge is no core of 60 mm."""
    found = doubt(COOK, History((), now_s=HOUR), Seen(HOUR, "core", 80.0))
    assert found is not None


def test_a_slip_is_looked_for_in_the_unit_that_was_typed() -> None:
    """669 in °C is 66.9 without its point; 669 in °F is nothing that a finger makes of a core of 66 °C."""
    metric = doubt(COOK, HISTORY, Seen(5 * HOUR, "core", 669.0))
    assert metric is not None
    assert metric.suggested_c in (66.0, 66.9, 69.0)
    customary = doubt(COOK, HISTORY, Seen(5 * HOUR, "core", c_of_f(669.0)))
    assert customary is not None
    assert (customary.reason, customary.suggested_c) == ("range", None)


def test_what_is_told_afterwards_must_lie_under_what_was_read_later() -> None:
    """75 °C at two hours, told after 62 °C at three: another time was meant."""
    found = doubt(COOK, HISTORY, Seen(2 * HOUR, "core", 75.0))
    assert found is not None
    assert found.reason in ("clock", "jump")
    assert doubt(COOK, HISTORY, Seen(2.5 * HOUR, "core", 59.0)) is None


@pytest.mark.parametrize(("minutes", "celsius", "doubted"), [(5.0, 75.5, True), (5.0, 72.0, False), (45.0, 72.0, True)])
def test_what_was_warmer_than_what_came_after_it_is_doubted(minutes: float, celsius: float, doubted: bool) -> None:
    """A core told late was no warmer than the next one: by 8 K within the quarter hour, by 5 K before that."""
    found = doubt(COOK, HISTORY, Seen(4 * HOUR - minutes * 60.0, "core", celsius))
    assert (found is not None) == doubted
    if found is not None:
        assert found.reason == "clock"


def test_a_slip_is_looked_for_in_the_digits_that_were_typed() -> None:
    """518 °F is 270 °C as well: at 27 °C its digits are not to be turned into «27 °C», which nobody typed."""
    early = History((Seen(0.6 * HOUR, "core", 22.0),), now_s=0.7 * HOUR)
    found = doubt(COOK, early, Seen(0.8 * HOUR, "core", c_of_f(518.0)))
    assert found is not None
    assert found.suggested_c != pytest.approx(27.0)
