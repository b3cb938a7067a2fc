"""What a finding carries: how the rule stands, the readings that decided, deadline, value, limit, what is missing."""

from dataclasses import replace

import pytest

from core.safety.after import cooling_readings, use_by_of
from core.safety.cook import cook_history, cook_readings
from core.safety.findings import Outcome, Rule, Status
from core.safety.fire_out import FireOut, judge_fire_out
from core.safety.fridge import Window, judge_brine, judge_fridge
from core.safety.incidents import judge_incident
from core.safety.ledger import verdict
from core.safety.left_out import (
    Counter,
    Leak,
    PowerCut,
    Twice,
    judge_leak,
    judge_left_out,
    judge_power_cut,
    judge_twice,
)
from core.safety.lethality import lethality
from core.safety.record import Incident
from core.safety.thaw import thaw
from core.units import KILOGRAMS_PER_POUND
from core.units import celsius_from_fahrenheit as c
from tests.records import BRISKET, CHILL, COOK, at, brisket, history

P, F, R, U = Status.PASSED, Status.FAILED, Status.OPEN, Status.UNKNOWN  # R: it still runs
SAFE, EAT, WAIT, DOUBT, OUT = Outcome
ON_FIRE = {"off_at": None, "chill_started_at": None}
WEEK = Window(at(0.0), at(96.0), at(96.0))


def _only(record, rule):
    (found,) = verdict(record).of(rule)
    return found


def _shape(found):
    return found.status, found.means, found.missing, found.detail, found.advice


def _sum(found):
    return found.value if found.value is None else round(found.value, 9), found.limit, found.unit


def test_the_fridge_that_was_watched():
    """The longest gap between readings, against 60 h, and the last reading."""
    found = _only(BRISKET, Rule.FRIDGE)
    assert _shape(found) == (P, SAFE, "", "watched", "")
    assert _sum(found) == (24.0, 60.0, "h")
    assert (found.readings, found.deadline) == (history((0.0, 38.0)), None)


def test_the_fridge_that_nobody_watched():
    """The gap, when it began plus 60 h, and what is missing."""
    found = judge_fridge(history((10.0, 38.0)), Window(at(0.0), None, at(72.0)))
    assert _shape(found) == (U, DOUBT, "fridge_reading", "not_watched", "")
    assert (_sum(found), found.deadline) == ((62.0, 60.0, "h"), at(70.0))


def test_a_warm_spell_and_its_numbers():
    """Warmest reading, hours at most, the limit that counts, the deadline while it is not settled."""
    found = judge_fridge(history((0.0, 38.0), (10.0, 43.0), (11.0, 44.0), (20.0, 38.0), (60.0, 38.0)), WEEK)
    assert _shape(found) == (P, SAFE, "", "warm_spell", "fridge_colder")
    assert (_sum(found), found.readings, found.deadline) == ((20.0, 24.0, "h"), history((11.0, 44.0)), None)
    assert found.source.key == "SMALL_PLANT_STORAGE"
    edge = judge_fridge(history((0.0, 38.0), (10.0, 44.6), (20.0, 38.0), (60.0, 38.0)), WEEK)
    assert edge.source.key == "SMALL_PLANT_STORAGE"
    warm = judge_fridge(history((0.0, 38.0), (10.0, 45.0), (20.0, 38.0), (60.0, 38.0)), WEEK)
    assert _shape(warm) == (U, DOUBT, "hours_above_40f", "warm_spell", "fridge_colder")
    assert (_sum(warm), warm.deadline, warm.source.key) == ((20.0, 2.0, "h"), at(2.0), "FSIS_DANGER_ZONE")
    out = judge_fridge(history((0.0, 38.0), (10.0, 46.0), (13.0, 46.0), (20.0, 38.0)), WEEK)
    assert _shape(out) == (F, OUT, "", "warm_spell", "throw_away")
    assert out.deadline is None


def test_of_equal_spells_the_longer_is_shown():
    """Two mended spells: the finding is about the longer."""
    found = judge_fridge(history((0.0, 38.0), (1.0, 43.0), (2.0, 38.0), (30.0, 44.0), (40.0, 38.0), (80.0, 38.0)), WEEK)
    assert (found.value, found.readings) == (38.0, history((30.0, 44.0)))


def test_the_brine_that_is_cold():
    """Its last reading; and the worst of several spells."""
    found = judge_brine(history((1.0, 39.0), (5.0, 38.0)), WEEK)
    assert found is not None
    assert _shape(found) == (P, SAFE, "", "cold", "")
    assert found.readings == history((5.0, 38.0))
    worse = judge_brine(history((0.0, 50.0), (1.0, 39.0), (10.0, 65.0), (14.0, 65.0), (15.0, 39.0)), WEEK)
    assert worse is not None
    assert (worse.means, worse.rule, worse.source.key) == (OUT, Rule.BRINE, "NCHFP_CURING")


def test_the_floor():
    """The first reading that reached it, the hottest of all, and what is wanted before."""
    found = _only(BRISKET, Rule.DONENESS)
    assert _shape(found) == (P, SAFE, "", "", "")
    assert _sum(found) == (round(c(195.0), 9), c(145.0), "°C")
    assert found.readings == history((6.0, 158.0))
    below = _only(brisket(COOK[:4], now=at(4.1), **ON_FIRE), Rule.DONENESS)
    assert _shape(below) == (R, WAIT, "core_reading", "", "")
    assert (_sum(below)[0], below.readings) == (round(c(142.0), 9), history((4.0, 142.0)))


def test_the_kill():
    """In logs, against the column that counts, with the two readings that met it."""
    held = (*COOK[:3], (3.9, 129.0), (4.0, 150.0), (4.01, 150.0), (4.02, 150.0))
    found = _only(brisket(held, now=at(4.1), **ON_FIRE), Rule.LETHALITY)
    assert _shape(found) == (P, SAFE, "", "meat_6.5log", "")
    assert _sum(found) == (round(6.5 * 72.0 / 67.0, 9), 6.5, "log")
    assert found.readings == history(*held[-2:])
    assert _only(BRISKET, Rule.LETHALITY).readings == history((6.0, 158.0))


def test_the_kill_on_its_way():
    """The latest two readings that earned something; none earned yet shows the first reading."""
    found = lethality(history((0.0, 100.0), (1.0, 145.0), (1.01, 146.0), (1.02, 120.0)), "beef")
    assert found.deciding == history((1.0, 145.0), (1.01, 146.0))
    assert (found.met_at, found.met) == (None, False)
    assert lethality(history((0.0, 100.0), (1.0, 110.0)), "beef").deciding == history((0.0, 100.0))
    assert lethality((), "beef").deciding == ()
    met = lethality(history((0.0, 150.0), (0.5, 150.0), (1.0, 150.0)), "beef")
    assert (met.met_at, met.deciding) == (at(0.5), history((0.0, 150.0), (0.5, 150.0)))


def test_a_row_at_once_counts_on():
    """After one reading at 158 °F more time is counted by the shortest printed dwell (14 s)."""
    found = lethality(history((0.0, 160.0), (1.0, 160.0)), "beef")
    assert found.fraction == pytest.approx(1.0 + 3600.0 / 14.0)
    assert lethality(history((0.0, 160.0)), "beef").deciding == history((0.0, 160.0))


def test_smoked_fish_in_hours():
    """Half an hour, and how much of it was shown."""
    fish = {"species": "fish", "product_class": "fish", "put_in_cure_at": None, "out_at": None}
    found = _only(brisket(((0.0, 39.0), (1.0, 160.0), (1.25, 165.0)), now=at(1.3), **ON_FIRE, **fish), Rule.FISH_160)
    assert (_shape(found), _sum(found)) == ((R, WAIT, "core_reading", "", ""), (0.25, 0.5, "h"))


def test_the_partial_cook():
    """Hours since it came off, and the reading that shows how far it got."""
    core = ((0.0, 39.0), (3.0, 120.0), (4.0, 138.0))
    early = _only(brisket(core, now=at(5.2), off_at=at(4.2), chill_started_at=None), Rule.PARTIAL_COOK)
    assert _shape(early) == (R, WAIT, "core_reading", "", "back_on_now")
    assert (_sum(early), early.readings, early.deadline) == ((1.0, 2.0, "h"), history((4.0, 138.0)), at(6.2))
    late = _only(brisket(core, now=at(7.2), off_at=at(4.2), chill_started_at=None), Rule.PARTIAL_COOK)
    assert (_shape(late), late.deadline) == ((F, OUT, "", "", "throw_away"), None)
    blind = _only(brisket(core[:2], now=at(7.2), off_at=at(4.2), chill_started_at=None), Rule.PARTIAL_COOK)
    assert _shape(blind) == (U, DOUBT, "core_reading", "", "throw_away_advised")
    way = ((0.0, 39.0), (2.0, 110.0), (3.0, 130.0))
    bacon = brisket(way, product_class="bacon", cured_centre_mg_kg=100.0, off_at=at(3.0), now=at(9.0))
    assert _shape(_only(bacon, Rule.PARTIAL_COOK))[:2] == (R, WAIT)


def test_the_way_up():
    """Hours at most, the limit, the readings at both ends, the deadline while it runs."""
    found = _only(BRISKET, Rule.COME_UP)
    assert _shape(found) == (P, SAFE, "", "core_for_surface", "")
    assert (_sum(found), found.readings) == ((4.0, 6.0, "h"), history((0.0, 39.0), (4.0, 142.0)))
    running = _only(brisket(COOK[:3], now=at(3.1), **ON_FIRE, injected=True), Rule.COME_UP)
    assert _shape(running) == (R, WAIT, "core_reading", "core", "")
    assert (_sum(running), running.deadline) == ((3.1, 6.0, "h"), at(6.0))
    assert running.readings == history((0.0, 39.0), (3.0, 120.0))
    reach = _only(brisket(COOK[:3], now=at(3.1), **ON_FIRE, injected=True), Rule.REACH_140)
    assert (_sum(reach), reach.deadline) == ((3.1, 4.0, "h"), at(4.0))


def test_the_cooling():
    """Rule, stage, the two readings, the next deadline."""
    found = _only(BRISKET, Rule.COOLING)
    assert _shape(found) == (P, SAFE, "", "130-80-40", "")
    assert (_sum(found), found.readings) == ((3.5, 5.0, "h"), history((12.5, 80.0), (16.0, 40.0)))
    running = _only(brisket((*COOK, *CHILL[:2]), now=at(13.2)), Rule.COOLING)
    assert (running.status, running.missing) == (U, "cooling_reading")
    slow = brisket((*COOK, (12.0, 130.0), (15.0, 80.0), (24.0, 44.0)), now=at(25.0), cured_centre_mg_kg=120.0)
    assert _shape(_only(slow, Rule.COOLING)) == (U, DOUBT, "", "130-80-45 cured 1999", "reheat_165_today")
    out = _only(brisket((*COOK, (12.0, 130.0), (18.0, 90.0)), now=at(18.1)), Rule.COOLING)
    assert (_shape(out), _sum(out)[1:]) == ((F, OUT, "", "130-80-40", ""), (1.5, "h"))


def test_hot_off_the_fire():
    """Two hours from the last reading at 140 °F; once it was read below that, the cooling rules speak."""
    hot = brisket(COOK, now=at(11.0), chill_started_at=None)
    found = _only(hot, Rule.TWO_HOURS)
    assert _shape(found) == (R, SAFE, "chill", "", "")
    assert (found.deadline, found.readings, found.limit) == (at(12.0), history((10.0, 195.0)), 2.0)
    late = _only(brisket(COOK, now=at(12.5), chill_started_at=None), Rule.TWO_HOURS)
    assert _shape(late) == (U, DOUBT, "cooling_reading", "", "")
    assert verdict(brisket((*COOK, (11.5, 139.0)), now=at(11.6), chill_started_at=None)).of(Rule.TWO_HOURS) == ()
    assert verdict(brisket(COOK, now=at(11.0))).of(Rule.TWO_HOURS) == ()
    assert verdict(brisket(COOK, now=at(11.0), chill_started_at=None, frozen_at=at(10.5))).of(Rule.TWO_HOURS) == ()


def test_the_use_by():
    """Days since it came off, the shorter end, the date, the line of the chart."""
    found = _only(brisket(now=at(10.2 + 36.0)), Rule.USE_BY)
    assert (_shape(found), _sum(found)) == ((P, SAFE, "", "corned_beef", ""), (1.5, 3.0, "d"))
    assert found.deadline == at(10.2 + 72.0)
    for hours in (73.0, 97.0):
        assert _only(brisket(now=at(10.2 + hours)), Rule.USE_BY).status is F


def test_vacuum_fish_shows_the_warmest():
    """The warmest reading against 38 °F."""
    cook = ((0.0, 39.0), (1.0, 120.0), (1.5, 160.0), (2.1, 161.0), (3.0, 79.0), (6.0, 38.0))
    fish = brisket(
        cook, now=at(30.0), species="fish", product_class="fish", vacuum=True, off_at=at(2.2),
        fridge=(*BRISKET.fridge, *history((20.0, 36.0), (24.0, 39.0))),
    )  # fmt: skip
    found = _only(fish, Rule.VACUUM_FISH)
    assert _shape(found) == (F, DOUBT, "", "", "throw_away_advised")
    assert (_sum(found), found.readings) == ((round(c(39.0), 9), c(38.0), "°C"), history((24.0, 39.0)))


def test_raw_days():
    """Days against the shorter end of the chart's line."""
    raw = {"core": (), "meat_on_at": None, "off_at": None, "chill_started_at": None}
    found = _only(brisket(now=at(-1.0), **{**raw, "out_at": at(-1.0 - 24.0 * 6)}), Rule.RAW_KEEPING)
    assert (_shape(found), _sum(found)) == ((U, DOUBT, "", "corned_beef", ""), (6.0, 5.0, "d"))
    long = brisket(
        now=at(0.0), **{**raw, "put_in_cure_at": at(-24.0 * 30), "out_at": at(-1.0)}, vouched={"fridge_cold"}
    )
    assert _sum(_only(long, Rule.LONGEST_CURE)) == (round(30.0 - 1.0 / 24.0, 9), 28.0, "d")
    assert verdict(brisket(put_in_cure_at=None, out_at=None)).of(Rule.FRIDGE) == ()
    assert verdict(brisket(now=at(-200.0), **{**raw, "out_at": None})).of(Rule.FRIDGE) == ()


def test_a_dose_that_nobody_told():
    """Meat in a cure of which nobody knows how much went in is never called safe; plain meat has no ceiling."""
    found = _only(brisket(ingoing_mg_kg=None), Rule.NITRITE_CEILING)
    assert (_shape(found), _sum(found)) == ((U, DOUBT, "mg_kg", "unknown_dose", ""), (None, 200.0, "mg/kg"))
    assert verdict(brisket(ingoing_mg_kg=None)).kind is DOUBT
    assert verdict(brisket(ingoing_mg_kg=None, put_in_cure_at=None)).of(Rule.NITRITE_CEILING) == ()
    assert verdict(brisket(ingoing_mg_kg=None, without_cure=True)).of(Rule.NITRITE_CEILING) == ()


GRID = {
    "no_core": (FireOut(None, 1.0, True, 6.0), U, DOUBT, "core_reading", "read_the_core"),
    "still_hot": (FireOut(c(150.0), 1.0, True, 6.0), P, SAFE, "", "relight_and_finish"),
    "still_cold": (FireOut(c(39.0), 1.0, False, 1.0), P, SAFE, "", "relight_and_finish"),
    "on_its_way": (FireOut(c(60.0), 1.0, False, 1.0), R, WAIT, "", "through_140f_now"),
    "unknown_loss": (FireOut(c(60.0), None, False, 3.0), U, DOUBT, "hours_out", "say_how_long_out"),
    "bring_through": (FireOut(c(120.0), 1.0, True, 6.0), R, EAT, "", "to_165f_now_eat_today"),
    "never_reached": (FireOut(c(60.0), 1.0, False, 5.0), F, OUT, "", "throw_away"),
    "unknown_time": (FireOut(c(120.0), None, True, 6.0), U, OUT, "last_good_reading", "throw_away"),
    "too_long": (FireOut(c(120.0), 3.0, True, 6.0), F, OUT, "", "throw_away"),
    "too_cold": (FireOut(c(100.0), 1.0, True, 6.0), F, OUT, "", "throw_away"),
    "delicate_too_long": (FireOut(c(120.0), 1.0, True, 6.0, 5.0, True), F, OUT, "", "throw_away"),
}


def test_came_through_by_the_clock_of_the_come_up():
    """Read at 140 °F again within 4 h of going on: that clock is what was met."""
    found = judge_fire_out(FireOut(c(60.0), 1.0, False, 3.5, again=True))
    assert _shape(found) == (P, SAFE, "", "came_through", "")
    assert (found.value, found.limit, found.unit) == (3.5, 4.0, "h")


@pytest.mark.parametrize("case", GRID)
def test_every_case_of_the_grid(case):
    """How it stands, what it means, what is missing, what to do; the clock that decided."""
    facts, status, means, missing, advice = GRID[case]
    found = judge_fire_out(facts)
    assert _shape(found) == (status, means, missing, case, advice)
    by_come_up = case in ("on_its_way", "never_reached")
    expected = (facts.hours_since_on, 4.0, "h") if by_come_up else (facts.hours_below, 2.0, "h")
    assert (found.value, found.limit, found.unit) == expected


DEVIATIONS = [
    (judge_left_out(Counter(1.0)), (P, SAFE, "", "in_time", "into_the_fridge_now"), (1.0, 2.0, "h")),
    (judge_left_out(Counter(3.0)), (F, OUT, "", "too_long", "throw_away"), (3.0, 2.0, "h")),
    (judge_left_out(Counter(3.0, c(95.0))), (F, OUT, "", "too_long", "throw_away"), (3.0, 1.0, "h")),
    (judge_left_out(Counter(None)), (U, OUT, "hours_out", "unknown_time", "throw_away"), (None, 2.0, "h")),
    (judge_left_out(Counter(9.0, None, c(44.0))), (P, SAFE, "", "still_cool", "into_the_fridge_now"), (9.0, 24.0, "h")),
    (judge_power_cut(PowerCut(3.0, door_shut=True)), (P, SAFE, "", "in_time", "ice_and_go_on"), (3.0, 4.0, "h")),
    (judge_power_cut(PowerCut(9.0, "fridge", True)), (F, OUT, "", "by_clock", "unless_core_is_cold"), (9.0, 4.0, "h")),
    (judge_power_cut(PowerCut(9.0)), (F, OUT, "", "by_clock", "unless_core_is_cold"), (9.0, 2.0, "h")),
    (judge_power_cut(PowerCut(9.0, core=c(38.0))), (P, SAFE, "", "still_cold", "ice_and_go_on"), (9.0, 2.0, "h")),
    (judge_power_cut(PowerCut(9.0, core=c(48.0))), (F, OUT, "", "too_long", "throw_away"), (9.0, 2.0, "h")),
    (
        judge_power_cut(PowerCut(20.0, "freezer_half", True, c(48.0))),
        (F, OUT, "", "too_long", "throw_away"),
        (20.0, 2.0, "h"),
    ),
    (
        judge_twice(Twice(300.0, None, True), 200.0, None),
        (R, WAIT, "", "not_in_yet", "make_it_anew"),
        (300.0, 200.0, "mg/kg"),
    ),
    (
        judge_twice(Twice(300.0, 24.0, True), 200.0, None),
        (R, WAIT, "", "pour_off", "pour_off_no_more_cure"),
        (300.0, 200.0, "mg/kg"),
    ),
    (
        judge_twice(Twice(300.0, 1.0, False), 200.0, None),
        (F, OUT, "", "over_dry", "throw_away"),
        (300.0, 200.0, "mg/kg"),
    ),
    (
        judge_twice(Twice(300.0, 24.1, True), 200.0, None),
        (U, DOUBT, "", "over_limit", "throw_away_advised"),
        (300.0, 200.0, "mg/kg"),
    ),
    (
        judge_twice(Twice(400.1, 1.0, True), 200.0, None),
        (F, OUT, "", "over_400", "throw_away"),
        (400.1, 200.0, "mg/kg"),
    ),
    (judge_twice(Twice(200.0, 1.0, False), 200.0, None), (P, SAFE, "", "within_limit", ""), (200.0, 200.0, "mg/kg")),
    (judge_leak(Leak(0.05, 1.0, wet=False)), (P, SAFE, "", "small", "bag_again"), (0.05, 0.1, "-")),
    (judge_leak(Leak(0.5, 4.0)), (P, SAFE, "", "top_up", "top_up_same_strength"), (0.5, 0.1, "-")),
    (judge_leak(Leak(None, 1.0)), (R, WAIT, "", "restart", "rinse_weigh_restart"), (1.0, 2.0, "d")),
    (judge_leak(Leak(None, 6.0)), (P, SAFE, "", "partly_cured", "uncured_rules"), (6.0, 2.0, "d")),
    (judge_leak(Leak(None, None)), (U, DOUBT, "day_of_the_leak", "when", ""), (None, 2.0, "d")),
    (judge_leak(Leak(None, 0.5, 6.0)), (F, OUT, "", "unnoticed", "throw_away"), (6.0, 5.0, "d")),
]


@pytest.mark.parametrize(("found", "shape", "numbers"), DEVIATIONS, ids=lambda v: getattr(v, "detail", ""))
def test_every_deviation(found, shape, numbers):
    """How it stands, what it means, what is missing, what to do, and the numbers against the limit."""
    assert _shape(found) == shape
    assert _sum(found) == numbers


@pytest.mark.parametrize(
    ("facts", "detail", "readings", "source", "advice"),
    [
        ({"room_c": c(44.0), "hours": 5.0}, "mended", ((-50.0, 44.0),), "SMALL_PLANT_STORAGE", "fridge_colder"),
        ({"room_c": c(50.0), "hours": 5.0}, "two_hours", ((-50.0, 50.0),), "FSIS_DANGER_ZONE", "throw_away"),
        ({"hours": 1.0}, "two_hours", (), "FSIS_DANGER_ZONE", "fridge_colder"),
    ],
)
def test_a_warm_fridge_as_told_and_its_numbers(facts, detail, readings, source, advice):
    """What was said of it stands as its reading."""
    found = judge_incident(Incident("warm_fridge", at(-50.0), facts), BRISKET)
    assert found is not None
    assert (found.detail, found.readings, found.source.key, found.advice) == (
        detail, history(*readings), source, advice,
    )  # fmt: skip
    assert (found.value, found.missing, found.deadline) == (facts["hours"], "", None)
    unsaid = judge_incident(Incident("warm_fridge", at(-50.0), {"room_c": c(44.0)}), BRISKET)
    assert unsaid is not None
    assert (unsaid.missing, unsaid.deadline) == ("hours_above_40f", at(-26.0))


def test_a_dry_leak():
    """A dry bag that lost a little is bagged again; a brine is topped up."""
    for wet, case in ((False, "small"), (True, "top_up")):
        leak = Incident("leaked", at(-100.0), {"lost_fraction": 0.05})
        found = judge_incident(leak, replace(BRISKET, wet=wet))
        assert found is not None
        assert found.detail == case


def test_brought_through():
    """Waiting for 165 °F: open, not yet, two hours from the last good reading; then it is settled."""
    core = ((0.0, 39.0), (2.0, 135.0), (4.0, 151.0), (5.0, 120.0))
    waiting = _only(brisket(core, now=at(5.1), **ON_FIRE), Rule.HELD_140)
    assert (waiting.status, waiting.means, waiting.missing, waiting.deadline) == (R, WAIT, "core_reading", at(6.0))
    assert waiting.readings == history((4.0, 151.0), (5.0, 120.0))
    saved = _only(brisket((*core, (5.5, 142.0), (6.5, 165.0)), now=at(6.6), **ON_FIRE), Rule.HELD_140)
    assert (saved.status, saved.means, saved.missing, saved.deadline) == (P, EAT, "", None)
    lost = _only(brisket((*core, (7.0, 165.0)), now=at(7.1), **ON_FIRE), Rule.HELD_140)
    assert (lost.status, lost.means, lost.deadline) == (F, OUT, None)


def test_165_before_the_fall_does_not_count():
    """It read 166 °F, fell to 120 °F, came back to 150 °F: it was not brought through since."""
    core = ((0.0, 39.0), (2.0, 135.0), (4.0, 166.0), (5.0, 120.0), (5.5, 150.0))
    assert _only(brisket(core, now=at(5.6), **ON_FIRE), Rule.HELD_140).means is WAIT
    out = Incident("fire_out", at(4.5))
    told = brisket(core, now=at(5.6), **ON_FIRE, incidents=(out,))
    assert _only(told, Rule.FIRE_OUT).means is WAIT


def _line(record):
    dates = use_by_of(record)
    return dates.keeping.line if dates else ""


@pytest.mark.parametrize("at_risk", [False, True])
def test_fish_that_came_off_early(at_risk):
    """Under 145 °F it is a partly cooked fish; from 145 °F on it is cooked (FSIS chart), and keeps as leftovers do."""
    fish = {"species": "fish", "product_class": "fish", "put_in_cure_at": None, "out_at": None, "fridge": ()}
    for core, partly, kind in ((144.9, 1, WAIT), (145.0, 0, SAFE)):
        cook = ((0.0, 39.0), (1.0, 120.0), (1.5, core))
        record = brisket(cook, now=at(2.0), off_at=at(1.6), at_risk_eaters=at_risk, **fish)
        found = verdict(record)
        assert (found.kind, len(found.of(Rule.PARTIAL_COOK))) == (kind, partly)
        assert _line(record) == "leftovers"
        assert found.of(Rule.FISH_160)[0].status is (Status.OPEN if partly else Status.FAILED)


def test_fish_that_was_held_as_smoked_fish_keeps_by_its_line():
    """30 min at 160 °F on end (PNW 238), shown by its readings: two weeks of the chart; a minute less, three days."""
    fish = {"species": "fish", "product_class": "fish", "put_in_cure_at": None, "out_at": None, "fridge": ()}
    for minutes, line in ((30, "fish"), (29, "leftovers")):
        cook = ((0.0, 39.0), (1.0, 120.0), (1.5, 160.0), (1.5 + minutes / 60.0, 160.0))
        record = brisket(cook, now=at(2.2), off_at=at(2.1), **fish)
        assert (_line(record), verdict(record).kind) == (line, SAFE)


def test_a_fall_ends_when_it_comes_off():
    """It fell at 4 and came off at 5:30: an hour and a half, however much later it is asked."""
    core = ((0.0, 39.0), (2.0, 135.0), (4.0, 151.0), (5.0, 120.0))
    assert _only(brisket(core, now=at(9.0), off_at=at(5.5), chill_started_at=None), Rule.HELD_140).value == 1.5


def test_since_when_it_is_kept():
    """At 41 °F after it came off, or as said; what was said before it came off does not count."""
    for last, since in ((41.1, None), (41.0, at(16.0))):
        assert brisket((*COOK, *CHILL[:3], (16.0, last))).stored_since == since
    assert brisket(storage_started_at=at(14.0)).stored_since == at(14.0)
    assert brisket(storage_started_at=at(10.2)).stored_since == at(16.0)
    assert brisket((*COOK, (10.2, 40.0), (16.0, 40.0))).stored_since == at(16.0)
    assert brisket(off_at=None).stored_since is None


@pytest.mark.parametrize(
    ("reading", "model", "kept"),
    [
        ((1.0, 100.0), ((0.0, 39.0), (2.0, 160.0)), True),
        ((1.0, 97.0), ((0.0, 39.0), (2.0, 160.0)), False),
        ((1.0, 60.0), ((2.0, 150.0), (3.0, 160.0)), True),
        ((2.0, 140.0), ((2.0, 150.0), (3.0, 160.0)), False),
        ((2.0, 104.0), ((2.0, 105.8), (3.0, 160.0)), True),
        ((2.0, 104.0), ((2.0, 105.9), (3.0, 160.0)), False),
    ],
)
def test_a_model_is_held_against_each_reading(reading, model, kept):
    """Between its points by a line, to 1 °C (1.8 °F); where it says nothing it contradicts nothing."""
    core = ((0.0, 39.0), reading, (9.0, 170.0))
    found = cook_history(brisket(core, **ON_FIRE, modelled_low=history(*model)))
    assert (len(found) > len(core)) == kept


def test_by_the_chart_alone():
    """150 °F once, three minutes ago: the chart is met, and the table, which is not, is not held against it."""
    core = (*COOK[:3], (3.8, 129.0), (3.9, 150.0))
    found = verdict(brisket(core, now=at(4.0), **ON_FIRE))
    assert (found.kind, found.of(Rule.LETHALITY)) == (SAFE, ())
    assert found.lethality is not None
    assert not found.lethality.met


def test_pork_on_its_way():
    """Trichinae are not dead yet at 100 °F."""
    found = _only(brisket(((0.0, 39.0), (2.0, 100.0)), now=at(2.1), **ON_FIRE, species="pork"), Rule.PARASITES)
    assert (_shape(found), _sum(found)) == ((R, WAIT, "core_reading", "", ""), (0.0, 1.0, "-"))


@pytest.mark.parametrize(("celsius", "possible"), [(105.0, True), (105.5, False)])
def test_the_hottest_core(celsius, possible):
    """Wet meat boils at 100 °C; 105 °C is the most that is believed."""
    record = brisket(core=[*history(*COOK[:3]), (at(3.5), celsius)], now=at(3.6), **ON_FIRE)
    found = verdict(record).of(Rule.CORE_POSSIBLE)
    assert (found == ()) == possible
    assert possible or _shape(found[0]) == (U, DOUBT, "corrected_reading", "", "")


def test_raw_meat_is_open():
    """Nothing failed, nothing is unknown: it is not cooked yet."""
    raw = {"core": (), "meat_on_at": None, "off_at": None, "chill_started_at": None}
    assert _shape(_only(brisket(now=at(-1.0), **raw), Rule.DONENESS)) == (R, WAIT, "cook_it", "raw", "")
    bird = brisket(now=at(-1.0), **raw, species="duck")
    assert _shape(_only(bird, Rule.POULTRY_165)) == (R, WAIT, "cook_it", "raw", "")


def test_a_reheat_is_no_cook():
    """Chilled and heated again the next day, though nobody said that it came off: the cook ends at the cold reading."""
    end = (*COOK, *CHILL)
    assert cook_readings(brisket((*end, (30.0, 165.0)), **ON_FIRE, now=at(31.0))) == history(*end)
    cool = (*COOK, (12.0, 40.5), (13.0, 60.0))
    assert cook_readings(brisket(cool, **ON_FIRE, now=at(31.0))) == history(*cool)


def test_where_the_cooling_begins():
    """With the last reading before it came off, and with all that follow."""
    assert cooling_readings(BRISKET) == history(COOK[-1], *CHILL)
    at_off = brisket((*COOK, (10.2, 190.0)), now=at(10.3))
    assert cooling_readings(at_off) == history(COOK[-1], (10.2, 190.0))


def test_crystals_say_nothing_of_a_fridge():
    """Ice crystals clear a freezer; where nobody said which, it is a fridge."""
    told = {"hours": 9.0, "ice_crystals": True}
    for where, case in ((None, "by_clock"), ("fridge", "by_clock"), ("freezer_full", "still_cold")):
        found = judge_incident(Incident("power_cut", at(-50.0), {**told, "where": where}), BRISKET)
        assert found is not None
        assert found.detail == case


def test_thawing_in_water_by_the_pound():
    """30 min a pound; a 3 lb package by its row takes up to 3 h."""
    twelve, three, one = (thaw(p * KILOGRAMS_PER_POUND, "water") for p in (12.0, 3.0, 1.0))
    assert (round(twelve.low, 9), round(twelve.high, 9)) == (6.0, 6.0)
    assert (round(three.low, 9), three.high, one.high) == (1.5, 3.0, 1.0)
    assert round(thaw(5.0 * KILOGRAMS_PER_POUND, "water").high, 9) == 2.5


def test_what_is_said_of_now_counts():
    """A reading, an incident, the end of the cook at this very moment are known."""
    assert len(brisket(COOK, now=at(10.0)).possible_core) == len(COOK)
    now = Incident("left_out", at(17.0), {"hours": 9.0})
    assert verdict(brisket(incidents=(now,))).kind is OUT
    assert verdict(brisket(COOK, now=at(10.2), chill_started_at=None)).cooling is not None
    assert verdict(brisket(COOK, now=at(10.1), chill_started_at=None)).cooling is None


def test_when_doubt_is_said_out_loud():
    """Throw away and cannot say bring the two cautions; safe and not yet do not."""
    loud = {"reheating_is_no_repair", "smell_proves_nothing"}
    for record, expected in (
        (brisket(ingoing_mg_kg=250.0), loud),
        (brisket(ingoing_mg_kg=450.0), loud),
        (BRISKET, set()),
        (brisket(COOK[:3], now=at(3.1), **ON_FIRE), set()),
    ):
        assert {k.key for k in verdict(record).cautions} & loud == expected
    assert "non_intact" in [k.key for k in verdict(brisket(intact=False)).cautions]
    assert verdict(BRISKET).cautions == ()
    old = verdict(brisket(now=at(10.2 + 80.0)))
    assert {k.key for k in old.cautions} == {"not_for_at_risk", "danger_zone"}
