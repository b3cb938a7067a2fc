"""A record with a field changed is what `dataclasses.replace` makes of it."""

from dataclasses import FrozenInstanceError, dataclass, fields, replace
from datetime import UTC, datetime
from functools import cached_property

import pytest

from core.batch.batch import Batch
from core.batch.events import Event, Finished
from core.but import but
from core.plan.recipe import product
from core.plan.steps import Kind, State, Step

NOW = datetime(2027, 3, 1, 8, tzinfo=UTC)
RECORDS = (
    Step("out", Kind.OUT, NOW),
    Batch("b", "flat", product("pastrami").setup({"mass": 3.2}), NOW),
    Event(1, NOW, NOW, "7", "m", Finished("eaten")),
)


@pytest.mark.parametrize("record", RECORDS, ids=lambda record: type(record).__name__)
def test_it_is_the_same_as_replaced(record: object) -> None:
    """In every field, equal and of the same hash; the first stays as it was, and so does that nobody may change it."""
    before = repr(record)
    for field in fields(record):  # type: ignore[arg-type]
        other = but(record, **{field.name: "other"})
        assert other == replace(record, **{field.name: "other"})  # type: ignore[type-var]
        assert repr(other) == repr(replace(record, **{field.name: "other"}))  # type: ignore[type-var]
    assert repr(record) == before
    with pytest.raises(FrozenInstanceError):
        but(record, **{fields(record)[0].name: "x"}).name = "y"  # type: ignore[arg-type, attr-defined]


def test_a_field_that_is_not_there_is_refused() -> None:
    """A slip of the pen is not kept in silence."""
    with pytest.raises(TypeError, match="stat"):
        but(RECORDS[0], stat=State.DONE)


def test_a_record_that_is_more_than_its_fields_is_refused() -> None:
    """What is worked out from the old fields must not go along."""

    @dataclass(frozen=True)
    class Square:
        side: float

        @cached_property
        def area(self) -> float:
            return self.side**2

    @dataclass(frozen=True)
    class Checked:
        side: float

        def __post_init__(self) -> None:
            assert self.side > 0

    for record in (Square(2.0), Checked(2.0)):
        with pytest.raises(TypeError, match="more than its fields"):
            but(record, side=3.0)
    assert replace(Square(2.0), side=3.0).area == 9.0
