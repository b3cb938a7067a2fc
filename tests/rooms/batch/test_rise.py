"""A plan never leads into its own verdict on the way up: the clocks of core.safety.come_up, by the slow tenth."""

from datetime import UTC, datetime, timedelta

import pytest

from core.batch.assess import Assessment, assess
from core.batch.batch import fold
from core.batch.events import Done, Event, Incident, Probe, Read, Started, What
from core.batch.rise import rise
from core.person import Person
from core.plan.recipe import products
from core.plan.steps import Kind
from core.safety.findings import Outcome, Rule
from core.units import celsius_from_fahrenheit

MONDAY = datetime(2027, 3, 1, 7, 0, tzinfo=UTC)
ADA = Person("ada", zone="Europe/Vienna", zone_known=True)
HAM = {"product": "ham", "cut": "ham_bone_in", "mass": 4.2, "cure_nitrite_fraction": 0.0625}


def stands(said: dict[str, object], *told: tuple[float, What], day: float = 0.0) -> Assessment:
    """A batch of Ada's, with what was told so many hours after Monday morning, as it stands on a day."""
    events = [Event(1, MONDAY, MONDAY, "ada", "m1", Started("it", said))]
    for number, (hours, what) in enumerate(told, 2):
        at = MONDAY + timedelta(hours=hours)
        events.append(Event(number, at, at, "ada", f"m{number}", what))
    return assess(fold("b", events), ADA, MONDAY + timedelta(days=day))


CURED = ((24.0, Done("brine")), (26.0, Done("into_cure")), (240.0, Done("out")), (264.0, Done("meat_on")))


def test_a_cured_ham_has_six_hours_and_a_salted_one_four() -> None:
    """FSIS 2021 (50 to 130 °F in 6 h) alone for the cured; for the other the trade's 140 °F in 4 h (PRACTICE) too."""
    climb = [(266.0, 60.0), (268.5, 125.0), (269.2, 141.0)]
    reads = [(hour, Read(Probe.CORE, celsius_from_fahrenheit(f))) for hour, f in climb]
    cured = stands(HAM, *CURED, *reads, day=269.5 / 24)
    salted = stands({**HAM, "nitrite_target": 0.0}, *CURED, *reads, day=269.5 / 24)
    assert not cured.ledger.verdict.of(Rule.REACH_140)
    assert cured.ledger.verdict.kind is not Outcome.THROW_AWAY
    assert salted.ledger.verdict.of(Rule.REACH_140)[0].means is Outcome.THROW_AWAY


NOT_CURED = [
    (Done("out"), 98.0),  # after three days: 87 mg/kg in the middle by the model
    (Incident("forgot_cure"), 30.0),
    (Incident("wrong_salt", {"salt": "no_cure"}), 30.0),
]


@pytest.mark.parametrize(("what", "hour"), NOT_CURED)
def test_the_clock_that_is_told_is_the_one_by_which_it_is_judged(what: What, hour: float) -> None:
    """Out too early, or cured with nothing: the trade's 4 h (PRACTICE) are told before they are judged."""
    rest = [step for step in CURED if step[1] != Done("out") or what != Done("out")]
    told = sorted([*rest, (hour, what)], key=lambda step: step[0])
    for pit_c in (107.0, 149.0):
        a = stands({**HAM, "pit_c": pit_c, "method": "inject"}, *told, day=264.5 / 24)
        found = rise(a)
        assert a.ledger.record.hurried
        assert found is not None
        assert (found.within, found.to_c) == (4.0, pytest.approx(60.0))
    late = stands({**HAM, "pit_c": 149.0}, *told, (268.2, Read(Probe.CORE, 57.0)), day=268.5 / 24)
    assert late.ledger.verdict.of(Rule.REACH_140)[0].means is Outcome.THROW_AWAY


def test_a_colder_spot_takes_the_clock_up_again() -> None:
    """131 °F, and 77 °F at the next spot: the core has yet to come up, and the pit that is too low is told again."""
    slow = {**HAM, "pit_c": 107.0}
    spots = [(268.0, Read(Probe.CORE, 55.0)), (268.1, Read(Probe.CORE, 25.0))]
    assert rise(stands(slow, *CURED, spots[0], day=268.2 / 24)) is None
    assert rise(stands(slow, *CURED, *spots, day=268.2 / 24)) is not None


def test_once_the_clock_has_run_out_nothing_is_told_of_it() -> None:
    """What could be done was to be done before; the verdict speaks then."""
    slow = {**HAM, "pit_c": 107.0}
    read = (267.0, Read(Probe.CORE, 30.0))
    assert rise(stands(slow, *CURED, read, day=269.9 / 24)) is not None
    assert rise(stands(slow, *CURED, read, day=270.1 / 24)) is None


def test_a_pit_that_is_too_low_is_told_with_one_that_is_not() -> None:
    """At 107 °C the slow tenth of such hams takes over 6 h; on the hotter pit it does not, by the same computation."""
    low = rise(stands({**HAM, "pit_c": 107.0}))
    assert low is not None
    assert (low.within, low.to_c) == (6.0, pytest.approx(54.4, abs=0.1))
    assert low.slow > 6.0
    assert low.pit_c is not None
    assert rise(stands({**HAM, "pit_c": low.pit_c})) is None


def test_where_no_pit_helps_none_is_told() -> None:
    """A ham of 11 kg comes up too slowly at any heat of the house."""
    found = rise(stands({**HAM, "mass": 11.0}))
    assert found is not None
    assert found.pit_c is None


def test_intact_meat_is_not_judged_by_its_core() -> None:
    """However slowly it comes up, nothing is told of it."""
    brisket = {
        "product": "pastrami",
        "cut": "brisket_flat",
        "mass": 8.0,
        "cure_nitrite_fraction": 0.0625,
        "pit_c": 100.0,
    }
    assert rise(stands(brisket)) is None


USUAL = [
    ("ham", "ham_boned", 4.0), ("ham", "ham_bone_in", 6.0), ("chicken", "chicken_whole", 2.0),
    ("turkey", "turkey_breast", 2.5),
    ("whole_turkey", "turkey_whole", 6.3), ("shoulder", "pork_shoulder", 2.5), ("back_bacon", "pork_loin", 2.5),
]  # fmt: skip


@pytest.mark.parametrize(("name", "of", "mass"), USUAL)
def test_every_usual_piece_is_planned_so_that_it_keeps_its_clock(name: str, of: str, mass: float) -> None:
    """Injected or a bird, at the pit of its product: nothing to tell."""
    assert name in products()
    assert (
        rise(stands({"product": name, "cut": of, "mass": mass, "method": "inject", "cure_nitrite_fraction": 0.0625}))
        is None
    )


@pytest.mark.parametrize(
    ("said", "read", "due"),
    [
        (HAM, (268.6, 49.0), 269.75),  # 4.6 h on; the estimate alone would ask for it after the sixth hour
        ({**HAM, "nitrite_target": 0.0}, (267.0, 30.0), 267.75),  # its 4 h end first
    ],
)
def test_a_reading_is_asked_for_while_it_can_still_show_the_rule_kept(
    said: dict[str, object], read: tuple[float, float], due: float
) -> None:
    """Only readings count where the core is judged: a quarter of an hour before the clock ends one is due."""
    a = stands({**said, "pit_c": 149.0}, *CURED, (read[0], Read(Probe.CORE, read[1])), day=read[0] / 24)
    assert a.plan is not None
    assert [s.due for s in a.plan.of_kind(Kind.READING)] == [MONDAY + timedelta(hours=due)]
    assert a.on_at is not None
    assert a.cook.next_reading_s / 3600 > due - 264.0


def test_of_intact_meat_and_after_the_clock_a_reading_is_asked_for_where_it_tells_most() -> None:
    """No last call for a clock by which it is not judged, nor for one that has been met."""
    whole = {"product": "pastrami", "cut": "brisket_flat", "mass": 3.0, "cure_nitrite_fraction": 0.0625}
    for said, celsius in ((whole, 49.0), ({**HAM, "pit_c": 149.0}, 56.0)):
        a = stands(said, *CURED, (268.6, Read(Probe.CORE, celsius)), day=268.6 / 24)
        assert a.plan is not None
        (step,) = a.plan.of_kind(Kind.READING)
        assert step.due - MONDAY == timedelta(hours=264.0, seconds=a.cook.next_reading_s)
