"""Laws of the fold: what happened gives one batch, whatever the order of the news and however often it was mended."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from random import Random

from hypothesis import given
from hypothesis import strategies as st

from core.batch.batch import Batch, fold
from core.batch.events import Corrected, Done, Event, Probe, Read, Started, What
from core.batch.standing import effective

START = datetime(2027, 3, 1, 7, 0, tzinfo=UTC)
BEGUN = Started("flat", {"product": "pastrami", "cut": "brisket_flat", "mass": 3.2})


def log(*said: What, minutes: list[int] | None = None) -> list[Event]:
    """A log of what was said, numbered in that order, a minute apart unless said otherwise."""
    after = minutes or list(range(1, len(said) + 1))
    times = [START, *(START + timedelta(minutes=m) for m in after)]
    return [
        Event(n, at, at, "ada", f"m{n}", what)
        for n, (at, what) in enumerate(zip(times, (BEGUN, *said), strict=True), 1)
    ]


def read(batch: Batch) -> list[tuple[datetime, Probe, float]]:
    """The readings of a batch without the numbers of their events."""
    return [(r.at, r.probe, r.celsius) for r in batch.readings]


reads = st.builds(Read, st.sampled_from(Probe), st.floats(-20, 200))
minutes = st.integers(0, 3000)


@given(st.lists(st.tuples(minutes, reads), max_size=12, unique_by=lambda pair: pair[0]), st.randoms())
def test_the_order_of_arrival_does_not_matter_to_readings(taken: list[tuple[int, Read]], chance: Random) -> None:
    """Readings told late, or in another order, give the same readings: they are sorted by when they were taken."""
    shuffled = list(taken)
    chance.shuffle(shuffled)
    one, other = (fold("b", log(*(r for _, r in told), minutes=[m for m, _ in told])) for told in (taken, shuffled))
    assert read(one) == read(other)
    assert read(one) == sorted(read(one), key=lambda r: r[0])


@given(st.lists(reads, min_size=1, max_size=6), st.randoms())
def test_the_order_of_the_list_does_not_matter(said: list[Read], chance: Random) -> None:
    """A log that is loaded in another order is the same log: the numbers of the events decide."""
    events = log(*said, Corrected(2))
    shuffled = list(events)
    chance.shuffle(shuffled)
    assert fold("b", shuffled) == fold("b", events)


@given(st.lists(reads, min_size=1, max_size=5), st.data())
def test_taking_back_leaves_what_was_before(said: list[Read], data: st.DataObject) -> None:
    """An event that was taken back might as well never have been said."""
    events = log(*said)
    target = data.draw(st.integers(2, len(events)))
    undone = effective([*events, next_event(events, Corrected(target))])
    assert undone == tuple(e for e in events if e.number != target)


@given(st.lists(reads, min_size=1, max_size=5), st.integers(0, 7), st.data())
def test_taking_back_the_taking_back(said: list[Read], times: int, data: st.DataObject) -> None:
    """Undo of undo restores, and so on: an even number of them changes nothing, an odd number is one."""
    events = log(*said)
    target = data.draw(st.integers(2, len(events)))
    once = effective([*events, next_event(events, Corrected(target))])
    for _ in range(times):
        said_now = next_event(events, Corrected(target))
        events, target = [*events, said_now], said_now.number
    plain = tuple(e for e in events if not isinstance(e.what, Corrected))
    assert effective(events) == (once if times % 2 else plain)


@given(reads, st.lists(reads, min_size=1, max_size=5), st.data())
def test_the_last_correction_stands(first: Read, later: list[Read], data: st.DataObject) -> None:
    """However often it is corrected, and whether the reading or its last correction is named, the last word counts."""
    events = log(first)
    target = 2
    for said in later:
        events = [*events, next_event(events, Corrected(target, said))]
        target = data.draw(st.sampled_from([2, events[-1].number]))
    (_, standing) = effective(events)
    assert standing == replace(events[1], what=later[-1])


@given(reads, reads, minutes, st.booleans(), st.booleans())
def test_corrections_of_different_things_add_up(
    first: Read, value: Read, when: int, value_first: bool, chained: bool
) -> None:
    """ "No, 185" and "that was at nine" are both kept, in either order."""
    at = START + timedelta(minutes=when)
    both = [Corrected(2, value), Corrected(2, None, at)]
    one, two = both if value_first else both[::-1]
    events = log(first, one, replace(two, target=3 if chained else 2))
    (_, standing) = effective(events)
    assert (standing.what, standing.at, standing.number) == (value, at, 2)


@given(reads, reads, reads)
def test_taking_back_one_correction_keeps_the_other(first: Read, second: Read, third: Read) -> None:
    """158, no 185, no 186, undo that: 185 stands."""
    events = log(first, Corrected(2, second), Corrected(2, third), Corrected(4))
    assert effective(events)[-1].what == second


@given(st.lists(st.sampled_from(["brine", "into_cure", "out", "rinse"]), max_size=6))
def test_more_of_the_log_is_a_fold_of_more(steps: list[str]) -> None:
    """A batch folded from a longer log keeps every step that the shorter one knew as done, at its time."""
    events = log(*(Done(step) for step in steps))
    for end in range(1, len(events) + 1):
        known = fold("b", events[:end]).done
        assert {e.what.step for e in events[1:end]} == set(known)


def next_event(events: list[Event], what: What) -> Event:
    """One more line of a log."""
    number = len(events) + 1
    at = START + timedelta(days=1, minutes=number)
    return Event(number, at, at, "ada", f"m{number}", what)
