"""Fuel, and what the pit readings say of the fire."""

import pytest

from core.errors import Gone, Unreadable
from core.heat import cooker as cooker_room
from core.heat.cook import Cook, History, Seen
from core.heat.cooker import cooker, cookers
from core.heat.fire import Weather, burn_rate, chunks, fuel
from core.heat.lighting import hours, minutes
from core.heat.ready import forecast
from core.heat.vents import advise
from core.meat.cuts import cut
from core.meat.piece import piece

FLAT = cut("brisket_flat")


def pit(*pairs: tuple[float, float]) -> tuple[Seen, ...]:
    """Readings of the pit: (minutes, °C)."""
    return tuple(Seen(60.0 * minutes, "pit", celsius) for minutes, celsius in pairs)


def test_ceramic_burns_what_the_heat_balance_says() -> None:
    """46 cm ceramic at 121 °C: 0.13 kg/h (0.10 to 0.18), less at 107 °C and more at 163 °C (computed elsewhere)."""
    stove = cooker("ceramic")
    rate = burn_rate(stove, 121.0, Weather())
    assert rate.p50 == pytest.approx(0.13, abs=0.01)
    assert 0.09 <= rate.p10 <= 0.13 <= rate.p90 <= 0.18
    assert burn_rate(stove, 107.0, Weather()).p50 < rate.p50 < burn_rate(stove, 163.0, Weather()).p50


def test_eleven_hours_want_three_to_four_kilograms_loaded() -> None:
    """Common practice: 3 to 4 kg for 10 to 12 h at 121 °C on ceramic, reserve included; about 1.4 kg of it burn."""
    found = fuel("ceramic", 121.0, 11.0, FLAT)
    assert 3.0 <= found.load <= 4.2
    assert found.burnt.p10 <= 1.4 <= found.burnt.p90
    assert found.warm_up == pytest.approx(0.1, abs=0.03)
    assert found.burnt.p90 + found.warm_up < found.load


def test_wind_and_frost_cost_charcoal() -> None:
    """15 mph wind adds 10 to 20 % on ceramic and 50 to 100 % on steel; frost adds too."""
    for kind, low, high in (("ceramic", 1.05, 1.25), ("kettle", 1.4, 2.0)):
        stove = cooker(kind)
        calm = burn_rate(stove, 121.0, Weather()).p50
        assert low <= burn_rate(stove, 121.0, Weather(wind_m_s=6.7)).p50 / calm <= high
        assert burn_rate(stove, 121.0, Weather(outside_c=-10.0)).p50 > calm


def test_gas_and_current_by_the_same_balance() -> None:
    """The heat of an hour is the same whatever it comes from: 46.3 MJ in a kg of propane, 3.6 MJ in a kWh."""
    gas, current = fuel("gas", 121.0, 8.0, FLAT), fuel("electric", 121.0, 8.0, FLAT)
    assert (gas.kind, current.kind) == ("propane", "electricity")
    # by hand: 17.5 W/K (middle of 10 and 25 is their root, 15.8), 17.3 kg/h of air, 101 K over the yard, 100 W of meat
    watts = (10.0 * 25.0) ** 0.5 * 101.0 + (10.0 * 30.0) ** 0.5 / 3600.0 * 1010.0 * 101.0 + 100.0
    assert gas.burnt.p50 == pytest.approx(8.0 * 3600.0 * watts / 46.3e6, rel=1e-6)
    watts = (3.0 * 8.0) ** 0.5 * 101.0 + (1.0 * 4.0) ** 0.5 / 3600.0 * 1010.0 * 101.0 + 100.0
    assert current.burnt.p50 == pytest.approx(8.0 * watts / 1000.0, rel=1e-6)
    assert gas.load > gas.burnt.p90
    assert gas.practice.high == 0.0


def test_a_chimney_saves_ceramic_no_time_and_a_torch_some() -> None:
    """Cubes 35 to 60 min on ceramic; a chimney 15 to 20 min and the walls after it; gas takes its own time."""
    stove = cooker("ceramic")
    assert (minutes(stove).low, minutes(stove).high) == (35, 60)
    assert (minutes(stove, "chimney").low, minutes(stove, "chimney").high) == pytest.approx((36, 56))
    assert hours(stove, "torch") < hours(stove)
    assert minutes(cooker("gas"), "chimney") == cooker("gas").stable_minutes
    with pytest.raises(Gone):
        minutes(stove, "petrol")


def test_a_brisket_wants_three_to_five_chunks() -> None:
    """Common practice: brisket and shoulder 3 to 5."""
    assert (chunks(FLAT).low, chunks(FLAT).high) == (3, 5)


@pytest.mark.parametrize(
    ("readings", "state", "direction"),
    [
        (pit((200, 123)), "steady", 0),
        (pit((200, 132)), "high", -1),
        (pit((200, 145)), "far_high", -1),
        (pit((200, 111)), "low", 1),
        (pit((180, 118), (200, 104)), "dying", 1),
        (pit((180, 120), (200, 110)), "dying", 1),
        (pit((150, 90), (200, 75)), "out", 1),
        (pit((180, 90), (200, 104)), "coming", 0),
        (pit((180, 145), (200, 136)), "coming", 0),
        (pit((180, 99), (200, 101)), "low", 1),  # far under, and yet it climbs
        (pit((180, 101), (200, 99)), "dying", 1),
        (pit((100, 101), (200, 99)), "low", 1),  # far under for hours, and it holds
        (pit((200, 82)), "out", 1),
        ((), "unknown", 0),
    ],
)
def test_the_state_of_the_fire(readings: tuple[Seen, ...], state: str, direction: int) -> None:
    """Drift of 10 °F is left alone; more is a step of a vent; a falling fire is looked at."""
    found = advise(readings, 121.0, "ceramic")
    assert (found.state, found.direction) == (state, direction)


def test_heavy_walls_want_more_patience() -> None:
    """15 to 20 min on ceramic, 10 on thin steel."""
    assert advise(pit((200, 132)), 121.0, "ceramic").wait_minutes == (15, 20)
    assert advise(pit((200, 132)), 121.0, "steel").wait_minutes == (10, 10)


def test_what_is_read_after_the_lid_was_open_is_not_chased() -> None:
    """A dip within the waiting time of the lid, or within 40 min of cold meat, waits; a dead fire does not."""
    assert advise(pit((200, 100)), 121.0, "ceramic", lids=(190 * 60.0,)).state == "wait"
    assert advise(pit((20, 100)), 121.0, "ceramic", lids=(0.0,)).state == "wait"
    assert advise(pit((20, 80)), 107.0, "ceramic", lids=(0.0,)).state == "wait"
    assert advise(pit((10, 90), (20, 60)), 121.0, "ceramic", lids=(0.0,)).state == "out"
    assert advise(pit((20, 55)), 107.0, "ceramic", lids=(0.0,)).state == "out"


def test_a_pit_that_is_meant_to_be_cool_is_not_out() -> None:
    """82 °C is low for 93 °C, and no dead fire; for 121 °C it is one."""
    assert advise(pit((200, 82)), 93.0, "ceramic").state == "low"
    assert advise(pit((200, 55)), 93.0, "ceramic").state == "out"


def test_a_vent_that_was_moved_is_given_its_time() -> None:
    """132 °C at 200 min asks for a step; at 210 it is still 131: no second step before 220, unless it runs away."""
    assert advise(pit((200, 132)), 121.0, "ceramic").judge_s == 220 * 60.0
    found = advise(pit((200, 132), (210, 131)), 121.0, "ceramic")
    assert (found.state, found.direction, found.judge_s) == ("settling", 0, 220 * 60.0)
    assert advise(pit((200, 132), (210, 140)), 121.0, "ceramic").state == "far_high"
    assert advise(pit((200, 132), (221, 132)), 121.0, "ceramic").state == "high"


def test_a_lid_that_is_opened_over_and_over_is_named() -> None:
    """Three times within the hour is more than a fire makes good."""
    lids = (0.0, 160 * 60.0, 175 * 60.0, 190 * 60.0)
    assert advise(pit((200, 100)), 121.0, "ceramic", lids=lids).lid_often
    assert not advise(pit((200, 100)), 121.0, "ceramic", lids=lids[:3]).lid_often


def test_a_dip_after_the_lid_does_not_move_the_ready_time() -> None:
    """90 °C five minutes after the lid was open says nothing of the hours; the same reading unexplained does."""
    cook = Cook(piece(FLAT, 3.2, 0.048), "ceramic", 121.0, 4.0, 90.5)
    seen = (*pit((120, 120), (185, 90)), Seen(7200.0, "core", 58.0))
    told = forecast(cook, History(seen, now_s=11100.0, lids=(10800.0,)))
    untold = forecast(cook, History(seen, now_s=11100.0))
    assert told.fire.state == "wait"
    assert untold.ready.p50 > told.ready.p50 + 0.5


def test_every_cooker_of_the_file_can_be_read() -> None:
    """Six kinds and the pot, each with film, walls, dew point and times that make sense."""
    assert set(cookers()) == {"ceramic", "steel", "kettle", "offset", "pellet", "gas", "electric", "pot"}
    for name, stove in cookers().items():
        film, dew = ((300.0, 900.0), 100.0) if name == "pot" else ((4.0, 10.0), 60.0)  # in water, or in air
        assert film[0] <= stove.film.centre <= film[1]
        assert stove.dew_point.low < stove.dew_point.high < dew
        assert stove.stable_minutes.low <= stove.stable_minutes.high


def test_a_cooker_there_is_not_is_said() -> None:
    """Unknown names raise Gone."""
    with pytest.raises(Gone):
        cooker("volcano")


def test_a_broken_entry_is_named() -> None:
    """A file mended wrongly says which cooker and what."""
    with pytest.raises(Unreadable) as broken:
        cooker_room._cooker("ceramic", {"film_w_m2k": [6.0]})
    assert broken.value.where == "ceramic"


def test_pellets_weigh_more_than_charcoal_for_the_same_heat() -> None:
    """Wood pellets of class A1 hold 16.5 MJ in a kilo at the least, and a pellet cooker has no coals to light."""
    pellets, coals = fuel("pellet", 121.0, 10.0, FLAT), fuel("steel", 121.0, 10.0, FLAT)
    assert pellets.kind == "pellets"
    assert coals.kind == "charcoal"
    assert pellets.load > 10.0 * 0.4
    assert [source.key for source in pellets.sources] == ["PELLET_HEAT", "COMMON_PRACTICE"]
