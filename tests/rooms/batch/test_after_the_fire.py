"""Off the fire: what to do now so that the chill keeps its rule, and how long meat that is eaten hot has to be held."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from itertools import pairwise

import pytest

from core.batch.assess import Assessment, assess
from core.batch.batch import fold
from core.batch.events import Done, Event, Incident, Probe, Read, Started, What
from core.batch.hot import HOT_C, WORTH_TELLING, by_itself, hold
from core.batch.pass_now import EASE, help_now
from core.person import Person
from core.units import celsius_from_fahrenheit as c_of_f

BEGAN = datetime(2027, 9, 18, 16, tzinfo=UTC)
OFF = datetime(2027, 10, 1, 15, tzinfo=UTC)
MEAL = datetime(2027, 10, 2, 11, tzinfo=UTC)
HEDDA = Person("hedda", zone="UTC", zone_known=True, cure_nitrite_fraction=0.0625)
WEEK = (("brine", -13 * 24.0), ("into_cure", -12 * 24.0), ("out", -22.0), ("light", -12.0), ("meat_on", -11.0))


def assessed(*told: tuple[What, float], now_h: float, purpose: str = "thin", thick: float = 0.05) -> Assessment:
    """A flat whose week was kept, and what was said of it since it came off. [h after that]"""
    setup = {"product": "pastrami", "cut": "brisket_flat", "mass": 3.2, "thickness": thick, "purpose": purpose}
    setup |= {"cure_nitrite_fraction": 0.0625, "deadline": MEAL}
    said = [(Started("flat", setup), (BEGAN - OFF) / timedelta(hours=1)), *((Done(key), h) for key, h in WEEK), *told]
    events = [
        Event(n, OFF + timedelta(hours=h), OFF + timedelta(hours=h), "hedda", f"m{n}", what)
        for n, (what, h) in enumerate(said, 1)
    ]
    return assess(fold("b", events), HEDDA, OFF + timedelta(hours=now_h))


def chilled(fahrenheit: float, hours: float, way: str = "foil", thick: float = 0.05) -> Assessment:
    """Off at 195 °F, in the chill an hour later at 140 °F, and the core read so warm so long after it came off."""
    return assessed(
        (Read(Probe.CORE, c_of_f(195.0)), -0.1),
        (Done("off"), 0.0),
        (Done("chill", way), 1.0),
        (Read(Probe.CORE, c_of_f(140.0)), 1.0),
        (Read(Probe.CORE, c_of_f(129.0)), 1.5),
        (Read(Probe.CORE, c_of_f(fahrenheit)), hours),
        now_h=hours,
        thick=thick,
    )


def test_help_comes_only_while_a_corner_is_open() -> None:
    """Before the chill, and cold in the end, there is nothing to do."""
    assert help_now(assessed((Done("off"), 0.0), now_h=0.5)) is None
    assert help_now(chilled(38.0, 7.0)) is None


def test_in_the_rest_nothing_is_open_yet() -> None:
    """Meat that rests above 60 °C has not begun its chill: nobody is told to cut it."""
    rests = assessed((Read(Probe.CORE, 90.0), -0.1), (Done("off"), 0.0), (Read(Probe.CORE, 85.0), 0.3), now_h=0.3)
    assert help_now(rests) is None


def cut(facts: dict[str, float]) -> Assessment:
    """Off, in the chill in its foil, cut half an hour later at 50 °C."""
    return assessed(
        (Read(Probe.CORE, 90.0), -0.1),
        (Done("off"), 0.0),
        (Done("chill", "foil"), 1.0),
        (Read(Probe.CORE, 60.0), 1.0),
        (Read(Probe.CORE, 50.0), 1.5),
        (Incident("cut", dict(facts)), 1.5),
        now_h=1.5,
    )


def test_a_cut_piece_cools_as_its_layers_do() -> None:
    """A layer of half the thickness is cold sooner than the whole, from the hour of the cut on.

    Under a film the time goes with volume over surface (lumped heat capacity, Incropera section 5.1): about 0.6 here.
    """
    whole, thin = cut({}).cooling, cut({"thickness": 0.025}).cooling
    assert (thin.since, whole.since) == (OFF + timedelta(hours=1.5), OFF + timedelta(hours=1))
    assert whole.forecast is not None
    assert thin.forecast is not None
    slow, fast = whole.forecast.to(5.0), thin.forecast.to(5.0)
    assert slow is not None
    assert fast is not None
    assert 0.4 * (slow.p50 - 0.5) < fast.p50 < 0.8 * (slow.p50 - 0.5)


def test_a_cut_never_makes_a_piece_thicker() -> None:
    """«cut it to 10 cm» leaves a flat of 5 cm as it is."""
    thick, whole = cut({"thickness": 0.1}).cooling.forecast, cut({}).cooling.forecast
    assert thick is not None
    assert whole is not None
    assert thick.thickness == whole.thickness == 0.05


@pytest.mark.parametrize(("fahrenheit", "hours"), [(128.0, 1.6), (110.0, 2.0), (78.0, 2.6)])
def test_what_is_advised_is_in_time_in_nine_of_ten(fahrenheit: float, hours: float) -> None:
    """The slow end lies before the corner, the band is in order and ahead of now."""
    a = chilled(fahrenheit, hours)
    found, stage = help_now(a), a.ledger.cooling.next_stage if a.ledger.cooling else None
    assert found is not None
    assert stage is not None
    assert stage.deadline is not None
    assert a.now < found.reached[0] <= found.reached[1] <= found.reached[2] <= stage.deadline


def test_the_later_it_is_the_more_has_to_be_done() -> None:
    """From what costs nothing to ice, and at last to the knife; once nothing helps, nothing is promised."""
    found = [help_now(chilled(fahrenheit, 1.6)) for fahrenheit in (84.0, 100.0, 128.0)]
    assert all(found)
    effort = [(one.cut_to is not None, EASE.index(one.method)) for one in found if one]
    assert all(easy <= hard for easy, hard in pairwise(effort))
    assert effort[0] < effort[-1]
    assert help_now(chilled(125.0, 2.95)) is None


def test_a_thicker_piece_is_never_helped_by_less() -> None:
    """80 mm wants at least what 50 mm wants."""
    thin, thick = (help_now(chilled(110.0, 2.0, thick=thickness)) for thickness in (0.045, 0.08))
    assert thin is not None
    if thick is not None:
        assert (thick.cut_to is not None, EASE.index(thick.method)) >= (
            thin.cut_to is not None,
            EASE.index(thin.method),
        )


def hot(off_core_f: float, *more: tuple[What, float], now_h: float = 0.1, knife_in_h: float = 5.0) -> Assessment:
    """A flat for hot slices that is off, its knife so many hours later."""
    a = assessed((Read(Probe.CORE, c_of_f(off_core_f)), -0.05), (Done("off"), 0.0), *more, now_h=now_h, purpose="hot")
    knife = a.plan.step("slice") if a.plan else None
    assert knife is not None
    assert a.plan is not None
    moved = replace(knife, due=OFF + timedelta(hours=knife_in_h))
    steps = tuple(moved if step.key == "slice" else step for step in a.plan.steps)
    return replace(a, plan=replace(a.plan, steps=steps))


def test_a_hold_is_told_where_it_is_one() -> None:
    """Five hours are a hold, half an hour is a rest, and what is chilled is neither."""
    found = hold(hot(195.0))
    assert found is not None
    assert found.hours.p10 <= found.hours.p50 <= found.hours.p90
    assert hold(hot(195.0, knife_in_h=WORTH_TELLING - 1.0)) is None
    assert hold(assessed((Done("off"), 0.0), now_h=0.1)) is None


def test_towels_hold_longer_than_foil_and_a_box_longer_than_both() -> None:
    """Hours above 60 °C (140 °F) of each way, all bands in order."""
    ways = dict(by_itself(hot(195.0)))
    assert ways["foil"].p50 < ways["towels"].p50 < ways["box"].p50
    assert all(0.0 < hours.p10 <= hours.p50 <= hours.p90 for hours in ways.values())


def test_a_cooler_core_stays_hot_for_less_long() -> None:
    """From 170 °F fewer hours than from 203 °F; from 60 °C none to speak of."""
    cool, warm, barely = (dict(by_itself(hot(f)))["towels"].p50 for f in (170.0, 203.0, 140.5))
    assert barely < cool < warm
    assert barely < 1.0


def test_the_simplest_way_that_lasts_is_taken_and_heat_where_none_does() -> None:
    """Nine in ten stay hot for the wait by the way that is named; a wait beyond all of them asks for heat."""
    found = hold(hot(203.0, knife_in_h=2.0))
    assert found is not None
    assert found.enough is not None
    stays = dict(found.by_itself)
    assert stays[found.enough].p10 >= found.hours.p50
    long = hold(hot(203.0, knife_in_h=12.0))
    assert long is not None
    assert long.enough is None


def test_hot_is_140_fahrenheit() -> None:
    """The Food Code\'s hot holding is 135 °F (57 °C); the house holds 140 °F (60 °C), as USDA tells households."""
    assert pytest.approx(c_of_f(140.0)) == HOT_C
