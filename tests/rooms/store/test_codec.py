import json
from dataclasses import fields
from datetime import UTC, date, datetime, time, timedelta, timezone
from types import UnionType
from typing import Any, get_args, get_origin, get_type_hints

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.batch.events import Corrected, Probe, Read, Started, What
from core.errors import Unreadable
from core.person import Habit, Learned, Person, Runs, Units
from core.store import codec

INSTANTS = st.datetimes(timezones=st.just(UTC))
NUMBERS = st.floats(allow_nan=False, allow_infinity=False)
LEAVES = st.one_of(
    st.none(), st.booleans(), st.integers(), NUMBERS, st.text(), INSTANTS, st.dates(), st.times(), st.timedeltas()
)
ANYTHING = st.recursive(
    LEAVES,
    lambda inner: st.one_of(
        st.lists(inner, max_size=3),
        st.tuples(inner, inner),
        st.frozensets(st.text(max_size=4), max_size=3),
        st.dictionaries(st.one_of(st.text(max_size=4), st.just("$at"), st.integers()), inner, max_size=3),
    ),
    max_leaves=6,
)
PLAIN = {str: st.text(), float: NUMBERS, int: st.integers(), bool: st.booleans(), datetime: INSTANTS, time: st.times()}
KINDS = get_args(What)


def of_hint(hint: Any) -> st.SearchStrategy[Any]:
    """Values for the type of a field; fails for a type that nobody thought of."""
    if hint in PLAIN:
        return PLAIN[hint]
    if hint is Probe:
        return st.sampled_from(Probe)
    if hint in (Units, Learned, Runs, Habit):
        return made(hint)
    origin, inner = get_origin(hint), get_args(hint)
    if origin is dict:
        return st.dictionaries(st.text(max_size=6), ANYTHING, max_size=3)
    if origin is tuple:
        return st.lists(of_hint(inner[0]), max_size=3).map(tuple)
    if set(KINDS) <= set(inner):
        return st.none() | st.one_of([made(kind) for kind in KINDS if kind is not Corrected])
    if origin is UnionType or type(None) in inner:
        return st.one_of([st.none() if part is type(None) else of_hint(part) for part in inner])
    raise AssertionError(f"no values for {hint}")


def made(kind: type) -> st.SearchStrategy[Any]:
    return st.deferred(lambda: st.builds(kind, **{n: of_hint(h) for n, h in get_type_hints(kind).items()}))


def there_and_back(value: Any) -> Any:
    return codec.decode(json.loads(json.dumps(codec.encode(value), allow_nan=False)))


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.__name__)
def test_every_kind_of_event_comes_back_as_it_was_kept(kind: type) -> None:
    """Whatever an event of any kind holds, the store gives back an equal event with the same types."""

    @given(made(kind))
    def holds(what: Any) -> None:
        back = codec.build(kind.__name__, json.loads(json.dumps(codec.body(what), allow_nan=False)))
        assert back == what
        assert [type(getattr(back, f.name)) for f in fields(kind)] == [
            type(getattr(what, f.name)) for f in fields(kind)
        ]

    holds()


@given(made(Person))
def test_a_person_comes_back_as_they_were_kept(person: Person) -> None:
    """A person's settings and what was learned of them survive the store."""
    assert there_and_back(person) == person


@given(ANYTHING)
def test_whatever_a_question_or_a_setup_holds_comes_back(value: Any) -> None:
    """Times, spans, tuples and sets keep their type, and an object that looks like a mark is not taken for one."""
    back = there_and_back(value)
    assert back == value
    assert type(back) is type(value)


def test_a_correction_keeps_what_stands_instead() -> None:
    """A correction holds another event, whose probe is still a probe after the store."""
    back = there_and_back(Corrected(3, Read(Probe.PIT, 121.0)))
    assert back == Corrected(3, Read(Probe.PIT, 121.0))
    assert isinstance(back.instead.probe, Probe)


def test_a_time_of_another_zone_is_the_same_instant() -> None:
    """A time comes back in UTC, whatever zone it was said in."""
    said = datetime(2027, 3, 1, 9, tzinfo=timezone(timedelta(hours=1)))
    assert there_and_back(said) == said
    assert there_and_back(said).tzinfo is UTC


def test_a_set_is_kept_in_order() -> None:
    """The same set is kept as the same text, so that two backups can be compared."""
    assert codec.encode(frozenset({"b", "a", "c"})) == {"$set": ["a", "b", "c"]}


@pytest.mark.parametrize("value", [datetime(2027, 3, 1), {"deadline": datetime(2027, 3, 1)}, object(), 1j])  # noqa: DTZ001
def test_what_cannot_be_kept_is_refused(value: Any) -> None:
    """A time without a zone, or a thing that no JSON says, is refused before anything is kept."""
    with pytest.raises(ValueError, match="cannot be kept"):
        codec.encode(value)


def test_a_field_added_later_has_its_default() -> None:
    """What an older version kept is read by a newer one; a field it does not know any more is passed over."""
    assert codec.build("Started", {"name": "flat", "setup": {}, "forgotten": 1}) == Started("flat", {})
    assert codec.build("Read", {"probe": "core", "celsius": 70.0}) == Read(Probe.CORE, 70.0)


@pytest.mark.parametrize("kept", [{"$kind": "Exploded"}, {"$at2": "x"}])
def test_what_a_newer_version_kept_is_named_not_guessed(kept: dict[str, Any]) -> None:
    """A kind or a mark that is not known is an error that names it."""
    with pytest.raises(Unreadable) as refused:
        codec.decode(kept)
    assert refused.value.where in ("Exploded", "$at2")


def test_a_date_is_not_a_time() -> None:
    """A day without an hour stays a day."""
    assert type(there_and_back(date(2027, 3, 6))) is date
