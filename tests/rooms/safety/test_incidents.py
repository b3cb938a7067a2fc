"""core.safety.fire_out, left_out, incidents: the deviation helper. The policy is in docs/science/safety.md."""

import pytest

from core.safety.findings import Outcome, Rule, Status
from core.safety.fire_out import FireOut, judge_fire_out
from core.safety.incidents import judge_incident, lost_cure, needed
from core.safety.ledger import verdict
from core.safety.left_out import Counter, Leak, PowerCut, judge_leak, judge_left_out, judge_nitrite, judge_power_cut
from core.safety.record import Incident
from core.units import celsius_from_fahrenheit as c
from tests.records import at, brisket

OUT = Outcome.THROW_AWAY


@pytest.mark.parametrize(
    ("core", "hours", "means", "case"),
    [
        (140.0, None, Outcome.SAFE, "still_hot"),
        (140.0, 2.0, Outcome.SAFE, "still_hot"),
        (140.0, 2.1, OUT, "too_long"),
        (139.9, 2.0, Outcome.EAT_NOW, "bring_through"),
        (110.0, 2.0, Outcome.EAT_NOW, "bring_through"),
        (139.0, 2.01, OUT, "too_long"),
        (139.0, None, OUT, "unknown_time"),
        (109.9, 0.5, OUT, "too_cold"),
        (None, 1.0, Outcome.CANNOT_SAY, "no_core"),
    ],
)
def test_the_grid_once_it_was_hot(core, hours, means, case):
    """Core and worst-case hours below 140 °F, row by row."""
    found = judge_fire_out(FireOut(None if core is None else c(core), hours, reached=True, hours_since_on=6.0))
    assert (found.means, found.detail) == (means, case)


@pytest.mark.parametrize(
    ("core", "hours", "since_on", "case"),
    [
        (40.0, None, None, "still_cold"),
        (40.1, 1.0, 1.0, "on_its_way"),
        (60.0, 2.0, 4.0, "on_its_way"),
        (60.0, 2.1, 4.0, "too_long"),
        (60.0, 1.0, 4.1, "never_reached"),
        (60.0, None, 1.0, "unknown_loss"),
        (60.0, 1.0, None, "unknown_time"),
        (110.0, 2.0, 6.0, "bring_through"),
        (110.0, 2.0, 6.1, "never_reached"),
        (109.9, 2.0, 4.1, "never_reached"),
    ],
)
def test_the_grid_before_it_was_hot(core, hours, since_on, case):
    """Never at 140 °F: 4 h from going on (6 h intact, from 110 °F), of which at most 2 h without heat."""
    assert judge_fire_out(FireOut(c(core), hours, reached=False, hours_since_on=since_on)).detail == case


def test_delicate_meat_has_four_hours_in_all():
    """Birds and meat that is not intact: over 4 h between 40 and 140 °F in all is thrown away."""
    facts = {"core": c(130.0), "hours_below": 1.0, "reached": True, "hours_since_on": 6.0}
    assert judge_fire_out(FireOut(**facts, hours_in_all=4.0, delicate=True)).means is Outcome.EAT_NOW
    assert judge_fire_out(FireOut(**facts, hours_in_all=4.1, delicate=True)).means is OUT
    assert judge_fire_out(FireOut(**facts, hours_in_all=4.1, delicate=False)).means is Outcome.EAT_NOW
    assert judge_fire_out(FireOut(**facts, hours_in_all=None, delicate=True)).means is Outcome.EAT_NOW


def test_at_four_151_at_six_138():
    """151 °F at 4 and 138 °F at 6, fire out: bring it to 165 °F now; eaten today once it read that."""
    core = ((0.0, 39.0), (2.0, 135.0), (4.0, 151.0), (6.0, 138.0))
    out = Incident("fire_out", at(5.9))
    waiting = verdict(brisket(core, now=at(6.1), off_at=None, chill_started_at=None, incidents=(out,)))
    (found,) = waiting.of(Rule.FIRE_OUT)
    assert (waiting.kind, found.detail, found.value, found.deadline) == (Outcome.NOT_YET, "bring_through", 2.0, at(6.0))
    saved = verdict(brisket((*core, (7.0, 165.0)), now=at(7.1), off_at=None, chill_started_at=None, incidents=(out,)))
    assert saved.kind is Outcome.EAT_NOW
    assert "not_for_at_risk" in [k.key for k in saved.cautions]


def test_164_is_not_165():
    """Brought to 164.9 °F only: not yet."""
    core = ((0.0, 39.0), (2.0, 135.0), (4.0, 151.0), (6.0, 138.0), (7.0, 164.9))
    out = Incident("fire_out", at(5.9))
    found = verdict(brisket(core, now=at(7.1), off_at=None, chill_started_at=None, incidents=(out,)))
    assert found.kind is Outcome.NOT_YET


def test_the_worst_case_counts_from_the_last_good_reading():
    """«It went out at 5:50» changes nothing: the last reading at 140 °F was three hours ago."""
    core = ((0.0, 39.0), (2.0, 120.0), (3.0, 150.0), (6.1, 138.0))
    out = Incident("fire_out", at(5.9), {"hours": 0.2})
    assert verdict(brisket(core, now=at(6.2), off_at=None, chill_started_at=None, incidents=(out,))).kind is OUT


def test_140_is_a_good_reading():
    """The clock of the worst case starts at a reading of 140 °F exactly."""
    core = ((0.0, 39.0), (2.0, 135.0), (3.0, 160.0), (5.0, 140.0), (6.5, 130.0))
    record = brisket(core, now=at(6.6), off_at=None, chill_started_at=None)
    found = judge_incident(Incident("fire_out", at(6.0)), record)
    assert found is not None
    assert (found.detail, found.value) == ("bring_through", 1.5)


def test_fire_out_and_nobody_read_the_core():
    """The core decides, so it is asked for."""
    out = Incident("fire_out", at(5.9))
    record = brisket(((0.0, 39.0), (4.0, 150.0)), now=at(6.0), off_at=None, chill_started_at=None, incidents=(out,))
    assert verdict(record).kind is Outcome.CANNOT_SAY
    assert needed(out, record) == ("core_c",)
    told = Incident("fire_out", at(5.9), {"core_c": c(145.0)})
    found = judge_incident(told, record)
    assert found is not None
    assert found.detail == "still_hot"
    assert needed(told, record) == ()


@pytest.mark.parametrize(("facts", "means"), [({}, Outcome.CANNOT_SAY), ({"unknown": True}, OUT)])
def test_fire_out_and_nobody_can_read_the_core(facts, means):
    """Asked and not known is thrown away, until a reading says better."""
    out = Incident("fire_out", at(5.9), facts)
    unread = brisket(((0.0, 39.0), (4.0, 150.0)), now=at(6.0), off_at=None, chill_started_at=None)
    assert judge_incident(out, unread).means is means
    read = brisket(((0.0, 39.0), (5.0, 150.0), (6.0, 145.0)), now=at(6.1), off_at=None, chill_started_at=None)
    assert judge_incident(out, read).detail == "still_hot"


def test_a_fire_that_did_no_harm_ends_with_a_safe_meal():
    """Found at 146 °F soon after, or still fridge-cold, lit again, finished and chilled: safe to serve."""
    early = (0.2, 39.5), (0.6, 50.0), (1.5, 60.0), (3.0, 120.0), (4.0, 142.0)
    late = (1.0, 60.0), (3.0, 120.0), (4.0, 142.0), (5.0, 150.0), (5.6, 146.0)
    rest = (8.0, 175.0), (10.0, 195.0), (11.0, 140.0), (11.5, 130.0), (12.5, 80.0), (16.0, 40.0)
    for points, out_at, case in ((early, 0.1, "still_cold"), (late, 5.5, "still_hot")):
        done = brisket(((0.0, 39.0), *points, *rest), incidents=(Incident("fire_out", at(out_at)),))
        (found,) = verdict(done).of(Rule.FIRE_OUT)
        assert (verdict(done).kind, found.detail) == (Outcome.SAFE, case)


def test_fire_out_early():
    """Out in the first hour, core 60 °F: light it again; it must read 140 °F 4 h after it went on."""
    out = Incident("fire_out", at(1.0))
    record = brisket(((0.0, 39.0), (1.1, 60.0)), now=at(1.2), off_at=None, chill_started_at=None, incidents=(out,))
    found = judge_incident(out, record)
    assert found is not None
    assert (found.detail, found.limit) == ("on_its_way", 4.0)


def _early(core, pit=(), hours=None, now=3.2, **known):
    """A fire that went out 3 h after the meat went on, before the core read 140 °F."""
    out = Incident("fire_out", at(3.0), {} if hours is None else {"hours": hours})
    told = {"off_at": None, "chill_started_at": None, "incidents": (out,), **known}
    record = brisket(core, now=at(now), pit=tuple((at(h), c(f)) for h, f in pit), **told)
    found = judge_incident(out, record)
    assert found is not None
    return found, needed(out, record)


COME_UP = ((1.5, 88.0), (2.6, 115.0), (3.1, 125.0))


def test_a_fire_that_stays_out_after_the_look_goes_on_counting():
    """The look at 3.1 h ends nothing where the pit is read at 90 °F after it; the last sign of heat is at 1.5 h."""
    looked = ((1.5, 88.0), (2.0, 113.0), (3.1, 112.0))
    found, _ = _early(looked, now=3.8)
    assert (found.detail, found.value) == ("on_its_way", 3.8)
    found, _ = _early(looked, pit=((3.4, 90.0), (3.7, 230.0)), now=3.8)
    assert (found.detail, found.means) == ("on_its_way", Outcome.NOT_YET)
    found, _ = _early(looked, pit=((3.6, 90.0), (3.7, 230.0)), now=3.8)
    assert (found.detail, found.means) == ("too_long", OUT)
    assert found.value == pytest.approx(2.1)
    found, _ = _early((*looked, (3.6, 109.0)), now=3.8)
    assert (found.detail, found.means) == ("too_long", OUT)


@pytest.mark.parametrize("known", [{}, {"intact": False}, {"injected": True}])
def test_a_healthy_come_up_is_no_fire_out(known):
    """Three hours on the way up with the fire burning are no hours without heat."""
    found, _ = _early(COME_UP, **known)
    assert (found.detail, found.means) == ("on_its_way", Outcome.NOT_YET)
    found, _ = _early((*COME_UP, (3.9, 141.0)), now=5.0, **known)
    assert (found.detail, found.status) == ("came_through", Status.PASSED)


def test_late_at_140_after_the_fire_is_out():
    """At 140 °F only 4.5 h after going on: thrown away for meat that is not intact; intact, 165 °F and eaten today."""
    late = (*COME_UP, (4.5, 141.0))
    assert _early(late, now=5.0, intact=False)[0].means is OUT
    assert _early(late, now=5.0)[0].means is Outcome.NOT_YET
    assert _early((*late, (5.5, 165.0)), now=5.6)[0].means is Outcome.EAT_NOW


def test_a_hot_pit_is_a_sign_of_heat():
    """A pit at 200 °F shortly before settles it; one at 199 °F or none leaves the question."""
    core = ((3.1, 125.0),)
    assert _early(core, pit=((2.5, 200.0),))[0].detail == "on_its_way"
    for pit in ((), ((2.5, 199.0),), ((3.05, 250.0),)):
        found, asked = _early(core, pit=pit)
        assert (found.means, asked) == (Outcome.CANNOT_SAY, ("hours",))
    assert _early(core, pit=((1.0, 250.0),))[0].means is OUT


def test_how_long_it_was_out_by_the_cooks_word():
    """Where nothing shows it the cook's word decides; it never shortens what the readings show."""
    assert _early(((3.1, 125.0),), hours=0.5)[0].detail == "on_its_way"
    assert _early(((3.1, 125.0),), hours=2.5)[0].means is OUT
    assert _early(COME_UP, hours=2.5)[0].means is OUT
    falling = ((0.5, 60.0), (0.9, 62.1), (2.0, 61.0), (3.1, 60.0))
    assert _early(falling, hours=0.1)[0].means is OUT


def test_a_core_that_fell_needs_no_confession():
    """Nobody said that the fire went out, but the readings show it: the same grid."""
    core = ((0.0, 39.0), (2.0, 135.0), (4.0, 151.0), (6.5, 120.0), (8.0, 170.0))
    assert verdict(brisket(core, now=at(8.1), off_at=None, chill_started_at=None)).kind is OUT
    short = ((0.0, 39.0), (2.0, 135.0), (4.0, 151.0), (5.0, 120.0), (6.0, 142.0), (8.0, 170.0))
    found = verdict(brisket(short, now=at(8.1), off_at=None, chill_started_at=None))
    assert (found.kind, found.deciding.rule) == (Outcome.EAT_NOW, Rule.HELD_140)


@pytest.mark.parametrize(
    ("facts", "case"),
    [
        (Counter(2.0), "in_time"),
        (Counter(2.1), "too_long"),
        (Counter(None), "unknown_time"),
        (Counter(1.0, air=c(90.0)), "in_time"),
        (Counter(1.1, air=c(90.0)), "too_long"),
        (Counter(2.0, air=c(89.9)), "in_time"),
        (Counter(12.0, core=c(44.6)), "still_cool"),
        (Counter(24.1, core=c(44.6)), "too_long"),
        (Counter(12.0, core=c(44.7)), "too_long"),
        (Counter(None, core=c(44.0)), "unknown_time"),
    ],
)
def test_left_out(facts, case):
    """Two hours, one from 90 °F up; read at 44.6 °F or below it is judged as a warm fridge; unknown is out."""
    found = judge_left_out(facts)
    assert found.detail == case
    assert found.means is (Outcome.SAFE if case in ("in_time", "still_cool") else OUT)


def test_a_brine_on_the_counter_overnight():
    """72 °F overnight with the brisket in it: throw away; curing does not save it."""
    night = Incident("left_out", at(-100.0), {"hours": 9.0, "room_c": c(72.0)})
    found = verdict(brisket(incidents=(night,)))
    assert (found.kind, found.deciding.rule) == (OUT, Rule.LEFT_OUT)
    assert {"reheating_is_no_repair", "smell_proves_nothing"} <= {k.key for k in found.cautions}


@pytest.mark.parametrize(
    ("facts", "case", "means"),
    [
        (PowerCut(4.0, door_shut=True), "in_time", Outcome.SAFE),
        (PowerCut(4.1, door_shut=True), "by_clock", OUT),
        (PowerCut(2.0, door_shut=False), "in_time", Outcome.SAFE),
        (PowerCut(2.1, door_shut=False), "by_clock", OUT),
        (PowerCut(2.1, door_shut=None), "by_clock", OUT),
        (PowerCut(1.0, door_shut=False, air=c(90.0)), "in_time", Outcome.SAFE),
        (PowerCut(1.1, door_shut=False, air=c(90.0)), "by_clock", OUT),
        (PowerCut(2.0, door_shut=False, air=c(89.9)), "in_time", Outcome.SAFE),
        (PowerCut(4.0, door_shut=True, air=c(95.0)), "in_time", Outcome.SAFE),
        (PowerCut(None, door_shut=True), "by_clock", OUT),
        (PowerCut(9.0, door_shut=False, core=c(40.0)), "still_cold", Outcome.SAFE),
        (PowerCut(None, core=c(40.0)), "still_cold", Outcome.SAFE),
        (PowerCut(9.0, door_shut=True, core=c(40.1)), "too_long", OUT),
        (PowerCut(4.0, door_shut=True, core=c(44.6)), "in_time", Outcome.SAFE),
        (PowerCut(4.0, door_shut=True, core=c(44.7)), "too_long", OUT),
        (PowerCut(2.0, door_shut=True, core=c(44.7)), "in_time", Outcome.SAFE),
        (PowerCut(48.0, "freezer_full", True), "in_time", Outcome.SAFE),
        (PowerCut(48.1, "freezer_full", True), "by_clock", OUT),
        (PowerCut(24.0, "freezer_half", True), "in_time", Outcome.SAFE),
        (PowerCut(24.1, "freezer_half", True), "by_clock", OUT),
        (PowerCut(72.0, "freezer_full", False, ice_crystals=True), "still_cold", Outcome.SAFE),
        (PowerCut(72.0, "freezer_full", True, c(41.0), ice_crystals=True), "too_long", OUT),
        (PowerCut(72.0, "fridge", True, ice_crystals=True), "by_clock", OUT),
        (PowerCut(72.0, "freezer_full", True, core=c(55.0)), "too_long", OUT),
        (PowerCut(20.0, "freezer_full", True, core=c(40.1)), "too_long", OUT),
        (PowerCut(2.0, "freezer_full", True, core=c(45.0)), "in_time", Outcome.SAFE),
        (PowerCut(20.0, "freezer_full", False, core=c(45.0)), "too_long", OUT),
    ],
)
def test_power_cut(facts, case, means):
    """4 h behind a shut door, 48 and 24 h in a freezer, else two hours; 40 °F or ice overrule (FoodSafety.gov)."""
    found = judge_power_cut(facts)
    assert (found.detail, found.means) == (case, means)


@pytest.mark.parametrize(
    ("facts", "case"),
    [
        (Leak(0.05, 3.0, wet=False), "small"),
        (Leak(0.05, 3.0, wet=True), "top_up"),
        (Leak(0.10, 3.0, wet=False), "partly_cured"),
        (Leak(0.09, 1.0, unnoticed_days=6.0), "top_up"),
        (Leak(0.10, 1.0, unnoticed_days=6.0), "unnoticed"),
        (Leak(0.30, 1.0, wet=True), "top_up"),
        (Leak(None, 2.0), "restart"),
        (Leak(None, 2.0, room=0.99), "no_fresh_dose"),
        (Leak(None, 2.1, room=0.99), "partly_cured"),
        (Leak(None, 2.1), "partly_cured"),
        (Leak(None, None), "when"),
        (Leak(0.5, 1.0, unnoticed_days=5.1), "unnoticed"),
        (Leak(None, 1.0, unnoticed_days=5.0), "restart"),
        (Leak(None, 1.1, unnoticed_days=6.0), "restart"),
    ],
)
def test_leaked_bag(facts, case):
    """How much, when, and how long nobody saw it."""
    found = judge_leak(facts)
    assert found.detail == case
    assert (found.means is OUT) == (case == "unnoticed")


@pytest.mark.parametrize(
    ("ingoing", "limit", "at_risk", "means"),
    [
        (200.0, 200.0, None, Outcome.SAFE),
        (120.00000000000003, 120.0, True, Outcome.SAFE),  # the noise of binary fractions, as in `Limit.passes`
        (120.000001, 120.0, True, OUT),
        (200.1, 200.0, None, Outcome.CANNOT_SAY),
        (120.1, 120.0, False, Outcome.CANNOT_SAY),
        (400.0, 200.0, False, Outcome.CANNOT_SAY),
        (400.1, 200.0, False, OUT),
        (200.1, 200.0, True, OUT),
        (150.0, 200.0, True, Outcome.SAFE),
    ],
)
def test_too_much_nitrite(ingoing, limit, at_risk, means):
    """Over the limit: cannot call it safe; above 400 mg/kg, or for people at risk: throw away."""
    assert judge_nitrite(ingoing, limit, at_risk).means is means


def test_the_home_ceiling():
    """Where nobody says another limit, 200 mg/kg (21 CFR 172.170)."""
    assert [judge_nitrite(ingoing).means for ingoing in (200.0, 200.5)] == [Outcome.SAFE, Outcome.CANNOT_SAY]


def test_dosed_twice():
    """By the computed dose; without one, twice what is in the record; without either, it is asked for."""
    for facts, ingoing, means in (
        ({"mg_kg": 190.0}, 150.0, Outcome.SAFE),
        ({}, 150.0, Outcome.CANNOT_SAY),
        ({}, 99.0, Outcome.SAFE),
        ({}, 201.0, OUT),
        ({}, None, Outcome.CANNOT_SAY),
    ):
        twice = Incident("dosed_twice", at(-100.0), facts)
        found = judge_incident(twice, brisket(ingoing_mg_kg=ingoing))
        assert found is not None
        assert (found.rule, found.means) == (Rule.DOSED_TWICE, means)
    assert needed(Incident("doubled_cure", at(-100.0)), brisket(ingoing_mg_kg=None)) == ("mg_kg",)


@pytest.mark.parametrize(
    ("facts", "status", "means"),
    [
        ({"room_c": c(44.0), "hours": 10.0}, Status.PASSED, Outcome.SAFE),
        ({"room_c": c(44.6), "hours": 24.0}, Status.PASSED, Outcome.SAFE),
        ({"room_c": c(44.0), "hours": 24.1}, Status.FAILED, OUT),
        ({"room_c": c(44.7), "hours": 2.0}, Status.PASSED, Outcome.SAFE),
        ({"room_c": c(44.7), "hours": 2.1}, Status.FAILED, OUT),
        ({"room_c": c(95.0), "hours": 1.1}, Status.FAILED, OUT),
        ({"hours": 2.1}, Status.UNKNOWN, Outcome.CANNOT_SAY),
        ({"hours": 2.1, "room_c": None}, Status.FAILED, OUT),
        ({"hours": 1.0}, Status.PASSED, Outcome.SAFE),
        ({"hours": 1.1}, Status.UNKNOWN, Outcome.CANNOT_SAY),
        ({"hours": 2.0, "unknown": True}, Status.PASSED, Outcome.SAFE),
        ({"hours": 24.1}, Status.FAILED, OUT),
        ({"room_c": c(44.0)}, Status.UNKNOWN, Outcome.CANNOT_SAY),
        ({"room_c": c(44.0), "hours": None}, Status.UNKNOWN, OUT),
    ],
)
def test_warm_fridge_as_told(facts, status, means):
    """Part of a day up to 44.6 °F is mended; above it two hours; asked and not known is thrown away."""
    for what in ("warm_fridge", "fridge_warm", "warm_brine"):
        found = judge_incident(Incident(what, at(-100.0), facts), brisket())
        assert found is not None
        assert (found.status, found.means) == (status, means)


def test_the_short_dialogue_asks_for_what_decides():
    """The facts that were told are not asked again; a settled matter asks nothing."""
    for what, facts, wanted in (
        ("power_cut", {}, ("hours", "door_shut", "room_c", "core_c")),
        ("power_cut", {"hours": 3.0}, ("door_shut", "core_c")),
        ("power_cut", {"hours": 2.0}, ("door_shut", "room_c", "core_c")),
        ("power_cut", {"hours": 2.0, "door_shut": False}, ("room_c", "core_c")),
        ("power_cut", {"hours": 2.0, "door_shut": False, "room_c": None}, ()),
        ("power_cut", {"hours": 1.0}, ()),
        ("power_cut", {"hours": 6.0}, ("core_c",)),
        ("power_cut", {"hours": 6.0, "core_c": None}, ()),
        ("power_cut", {"hours": 3.0, "unknown": True}, ("core_c",)),
        ("power_cut", {"hours": 3.0, "door_shut": True}, ()),
        ("power_cut", {"hours": 30.0, "door_shut": True, "where": "freezer_half"}, ("ice_crystals", "core_c")),
        ("left_out", {}, ("hours", "room_c", "core_c")),
        ("left_out", {"hours": 1.5}, ("room_c", "core_c")),
        ("left_out", {"hours": 1.0}, ()),
        ("left_out", {"hours": 2.1}, ()),
        ("left_out", {"unknown": True}, ()),
        ("warm_fridge", {}, ("hours", "room_c")),
        ("warm_fridge", {"hours": 5.0}, ("room_c",)),
        ("warm_fridge", {"hours": 24.1}, ()),
        ("warm_fridge", {"room_c": c(44.0)}, ("hours",)),
        ("leaked", {}, ("lost_fraction", "unnoticed_days")),
        ("leaked", {"unknown": True}, ()),
        ("dosed_twice", {}, ("mg_kg",)),
        ("dosed_twice", {"mg_kg": 300.0}, ("at_risk_eaters",)),
        ("forgot_cure", {}, ()),
    ):
        record = brisket(ingoing_mg_kg=150.0, at_risk_eaters=None)
        assert (facts, needed(Incident(what, at(-100.0), facts), record)) == (facts, wanted)


def test_a_leak_takes_its_day_from_the_record():
    """Day of the cure at which the leak was seen, where nobody says it."""
    leak = Incident("leaked", at(-24.0 * 6), {"lost_fraction": None, "unnoticed_days": 0.0})
    found = judge_incident(leak, brisket())
    assert found is not None
    assert (found.detail, found.value) == ("no_fresh_dose", 1.0)


@pytest.mark.parametrize(
    ("facts", "wet", "case"),
    [
        ({}, True, "not_asked"),
        ({"unknown": True}, True, "no_fresh_dose"),
        ({"lost_fraction": 0.33}, True, "top_up"),  # 150 mg/kg and a third more is the limit of 200
        ({"lost_fraction": 0.34}, True, "partly_cured"),
        ({"lost_fraction": 0.5}, False, "not_asked"),
        ({"lost_fraction": 0.05}, False, "small"),
        ({"lost_fraction": 0.5, "unnoticed_days": 0.9}, False, "partly_cured"),
        ({"lost_fraction": 0.5, "unnoticed_days": 1.0}, False, "no_fresh_dose"),
        ({"lost_fraction": 0.5, "unnoticed_days": None}, False, "no_fresh_dose"),
    ],
)
def test_a_leak_began_as_early_as_it_can_have(facts, wet, case):
    """Three days in; the day of the leak counts back from when it was seen, and from the start where nobody knows."""
    found = judge_incident(Incident("leaked", at(-24.0 * 4), facts), brisket(wet=wet))
    assert found is not None
    assert found.detail == case


@pytest.mark.parametrize(
    ("dose", "limit", "case"),
    [
        (150.0, 200.0, "no_fresh_dose"),  # what it took and a whole dose once more could come to 300
        (120.0, 120.0, "no_fresh_dose"),
        (100.0, 200.0, "restart"),  # both are within the limit
        (100.1, 200.0, "no_fresh_dose"),
        (0.0, 200.0, "restart"),  # plain salt
        (None, 200.0, "no_fresh_dose"),
    ],
)
def test_a_cure_is_begun_anew_only_where_both_doses_pass(dose, limit, case):
    """An unknown loss on the second day: whatever went in before may all be in the meat, by whose limit it is held."""
    leak = Incident("leaked", at(-24.0 * 6), {"unknown": True})
    record = brisket(ingoing_mg_kg=dose, nitrite_limit_mg_kg=limit)
    assert judge_incident(leak, record).detail == case


def test_a_brine_is_topped_up_again_only_by_what_is_left_of_the_limit():
    """A third of 150 mg/kg may go in under 200: a fifth and then a tenth, not a fifth twice."""
    first, again = Incident("leaked", at(-24.0 * 5), {"lost_fraction": 0.2, "unnoticed_days": 0.5}), at(-24.0 * 4)
    for lost, case in ((0.13, "top_up"), (0.2, "partly_cured")):
        second = Incident("leaked", again, {"lost_fraction": lost, "unnoticed_days": 0.5})
        record = brisket(incidents=(first, second))
        assert judge_incident(first, record).detail == "top_up"
        assert judge_incident(second, record).detail == case
        assert lost_cure(record) == {"top_up", case}


@pytest.mark.parametrize(("facts", "means"), [({}, Outcome.CANNOT_SAY), ({"unknown": True}, OUT)])
def test_a_leak_that_nobody_saw_for_days(facts, means):
    """Half of it gone, six days in: thrown away where it can have begun on the first day."""
    leak = Incident("leaked", at(-24.0), {"lost_fraction": 0.5, **facts})
    assert judge_incident(leak, brisket()).means is means
    seen = Incident("leaked", at(-24.0), {"lost_fraction": 0.5, "unnoticed_days": 4.9})
    assert judge_incident(seen, brisket()).detail == "partly_cured"


@pytest.mark.parametrize(
    ("after", "core", "case"), [(1.0, 40.0, "still_cold"), (1.1, 40.0, "by_clock"), (1.1, 51.0, "too_long")]
)
def test_a_cold_core_long_after_proves_nothing(after, core, case):
    """It was cooled again: only what was read within the hour clears a power cut. A warm one counts always."""
    cut = Incident("power_cut", at(-100.0), {"hours": 6.0, "core_c": c(core), "core_after_h": after})
    assert judge_incident(cut, brisket()).detail == case


@pytest.mark.parametrize(
    ("hours_ago", "wet", "facts", "means"),
    [
        (-24.0 * 7 + 23.0, True, {}, Outcome.CANNOT_SAY),
        (-24.0 * 7 + 23.0, True, {"mg_kg": 300.0}, Outcome.NOT_YET),
        (-24.0 * 7 + 25.0, True, {"mg_kg": 300.0}, Outcome.CANNOT_SAY),
        (-24.0 * 7 + 25.0, False, {"mg_kg": 300.0}, OUT),
        (-24.0 * 7 + 1.0, True, {"mg_kg": 401.0}, OUT),
        (-24.0 * 7 + 25.0, False, {"mg_kg": 200.0}, Outcome.SAFE),
    ],
)
def test_a_doubled_cure_that_can_be_poured_off(hours_ago, wet, facts, means):
    """A brine within a day is made anew; a rub is in it whole; over 400 mg/kg nothing is saved."""
    twice = Incident("dosed_twice", at(hours_ago), facts)
    assert judge_incident(twice, brisket(ingoing_mg_kg=150.0, wet=wet)).means is means


def test_a_doubled_cure_before_the_meat_is_in():
    """Nothing is lost: it is weighed out anew."""
    twice = Incident("dosed_twice", at(-100.0), {})
    found = judge_incident(twice, brisket(ingoing_mg_kg=150.0, put_in_cure_at=None))
    assert (found.detail, found.means) == ("not_in_yet", Outcome.NOT_YET)


def test_what_happens_later_does_not_count_yet():
    """An incident of tomorrow says nothing today."""
    assert verdict(brisket(incidents=(Incident("left_out", at(100.0), {"hours": 9.0}),))).kind is Outcome.SAFE
