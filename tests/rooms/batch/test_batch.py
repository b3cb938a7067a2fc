"""One batch: what each thing that happened does to it."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from core.batch.batch import Batch, Phase, fold
from core.batch.events import (
    Changed,
    Corrected,
    Done,
    Event,
    Finished,
    Incident,
    Missed,
    Paused,
    Probe,
    Read,
    Resumed,
    Skipped,
    Sliced,
    Snoozed,
    Started,
    Tasted,
    Weighed,
    What,
)
from core.errors import Gone, OutOfRange

START = datetime(2027, 3, 1, 7, 0, tzinfo=UTC)
FLAT = {"product": "pastrami", "cut": "brisket_flat", "mass": 3.2}


def after(*said: What) -> Batch:
    """A flat, and an hour between one thing said and the next."""
    told: tuple[What, ...] = (Started("flat", FLAT), *said)
    times = [START + timedelta(hours=n) for n in range(len(told))]
    return fold(
        "b", [Event(n, at, at, "ada", f"m{n}", what) for n, (at, what) in enumerate(zip(times, told, strict=True), 1)]
    )


def hour(n: int) -> datetime:
    return START + timedelta(hours=n)


@pytest.mark.parametrize(
    ("done", "phase"),
    [
        ([], Phase.WAITING),
        (["brine"], Phase.WAITING),
        (["brine", "into_cure"], Phase.CURING),
        (["brine", "into_cure", "out"], Phase.DRYING),
        (["into_cure", "out", "rinse", "light", "meat_on"], Phase.COOKING),
        (["meat_on", "off"], Phase.RESTING),
        (["off", "chill"], Phase.CHILLING),
        (["chill", "slice"], Phase.STORED),
    ],
)
def test_the_phase_is_the_furthest_thing_done(done: list[str], phase: Phase) -> None:
    """Where the batch is in its week follows from what was done, in whatever order it was told."""
    assert after(*map(Done, done)).phase is phase
    assert after(*map(Done, reversed(done))).phase is phase


@pytest.mark.parametrize("how", ["eaten", "cancelled", "thrown_away"])
def test_a_finished_batch_is_over(how: str) -> None:
    """Whatever was done before, a batch that was finished is over."""
    assert after(Done("into_cure"), Finished(how)).phase is Phase.OVER


def test_what_was_said_is_set_up_and_the_rest_is_the_products() -> None:
    """The cook's words are marked as said; the product's defaults are not."""
    setup = after().setup
    assert (setup.mass, setup.method, setup.target_c) == (3.2, "brine", 90.55)
    assert setup.said == {"cut", "mass"}


def test_a_change_is_said_from_then_on() -> None:
    """A change replaces the assumption and is marked as the cook's word."""
    setup = after(Changed({"thickness": 0.048})).setup
    assert (setup.thickness, "thickness" in setup.said) == (0.048, True)


def test_the_purpose_moves_the_target_unless_the_cook_named_one() -> None:
    """«Pulled» comes off at its own core; a core that the cook named stays."""
    assert after(Changed({"purpose": "pulled"})).setup.target_c == 95.0
    assert after(Changed({"target_c": 92.0}), Changed({"purpose": "pulled"})).setup.target_c == 92.0


def test_a_target_under_the_floor_is_refused() -> None:
    """No change of words sets the core under the product's safety floor."""
    with pytest.raises(OutOfRange):
        after(Changed({"target_c": 60.0}))


def test_a_field_that_is_none_is_refused() -> None:
    """A change of something that no batch has is refused by its name."""
    with pytest.raises(Gone, match="hat_size"):
        after(Changed({"hat_size": 7}))


def test_a_step_that_is_done_is_not_skipped() -> None:
    """Done after all: the skip is forgotten, and the detail is kept."""
    batch = after(Skipped("rinse"), Done("rinse", "tastes fine"))
    assert batch.skipped == frozenset()
    assert batch.done == {"rinse": hour(2)}
    assert batch.details == {"rinse": "tastes fine"}


def test_what_was_missed_is_passed_over() -> None:
    """Forgotten flips are neither asked for again nor counted as done."""
    batch = after(Missed(("flip/20270302a", "flip/20270302b")))
    assert batch.skipped == batch.missed == {"flip/20270302a", "flip/20270302b"}
    assert batch.done == {}


@pytest.mark.parametrize(
    ("planned", "said", "wrap"),
    [("none", "foil", "foil"), ("none", "", "foil"), ("paper", "", "paper"), ("foil", "paper", "paper")],
)
def test_it_is_wrapped_in_what_was_said(planned: str, said: str, wrap: str) -> None:
    """The plan goes on from how it was wrapped; without a word from how it was planned, and that is foil by default."""
    assert after(Changed({"wrap": planned}), Done("wrap", said)).setup.wrap == wrap


def test_the_dose_that_is_in_stays_in() -> None:
    """Once the brine is made, another weight changes the batch, not what was weighed out for it."""
    batch = after(Done("brine"), Changed({"mass": 2.0}))
    assert batch.dosed is not None
    assert (batch.dosed.mass, batch.setup.mass) == (3.2, 2.0)


def test_the_last_reading_is_the_latest_taken() -> None:
    """A reading told late does not become the last one."""
    batch = after(Read(Probe.CORE, 70.0), Read(Probe.PIT, 120.0))
    events = [
        Event(1, START, START, "ada", "m1", Started("flat", FLAT)),
        Event(2, hour(5), hour(5), "ada", "m2", Read(Probe.CORE, 80.0)),
        Event(3, hour(4), hour(6), "ada", "m3", Read(Probe.CORE, 75.0)),
    ]
    last = fold("b", events).last(Probe.CORE)
    assert last is not None
    assert (last.celsius, last.number) == (80.0, 2)
    assert [r.celsius for r in batch.of_probe(Probe.CORE)] == [70.0]
    assert batch.last(Probe.FRIDGE) is None


def test_the_rest_of_what_may_happen_is_kept() -> None:
    """Put off, paused, gone wrong, weighed, sliced, tasted: each is where one looks for it."""
    trouble, slice_ = Incident("fire_out", {"minutes": 40}), Sliced(0.012, 0.048)
    batch = after(Snoozed("out", hour(9)), Paused(hour(12)), trouble, Weighed(1.9), slice_, Tasted(1))
    assert batch.snoozed == {"out": hour(9)}
    assert (batch.paused, batch.paused_until) == (True, hour(12))
    assert batch.incidents == ((hour(3), trouble),)
    assert (batch.weighed_after, batch.sliced, batch.tasted) == (1.9, slice_, 1)
    resumed = after(Paused(hour(12)), Resumed())
    assert (resumed.paused, resumed.paused_until) == (False, None)


@pytest.mark.parametrize(("done", "off"), [(["off", "chill"], 1), (["chill"], 1), (["rest", "slice"], 1), ([], None)])
def test_off_the_fire_is_the_first_that_says_so(done: list[str], off: int | None) -> None:
    """Who forgot to say that it came off has said so by resting, chilling or slicing it."""
    assert after(*map(Done, done)).off_at == (None if off is None else hour(off))


def test_a_batch_that_was_never_begun_is_gone() -> None:
    """Without its beginning, or with the beginning taken back, there is no batch."""
    begun = Event(1, START, START, "ada", "m1", Started("flat", FLAT))
    undone = replace(begun, number=2, what=Corrected(1))
    for log in ([], [begun, undone]):
        with pytest.raises(Gone):
            fold("b", log)
