"""Plain data there and back: what the store keeps as JSON.

JSON knows no times, tuples or sets; those are kept as an object with one marked key, {"$at": "2027-03-01T08:00…"},
so that what comes back equals what was kept. Our own dataclasses are kept by name and field: a field
that was added later has its default in what was kept before.
"""

from collections.abc import Callable, Mapping
from dataclasses import fields, is_dataclass
from datetime import UTC, date, datetime, time, timedelta
from enum import StrEnum
from functools import cache
from typing import Any, Final, get_args, get_type_hints

from core.batch import events
from core.errors import Unreadable
from core.person import Habit, Learned, Person, Runs, Units

MARK: Final = "$"
KIND: Final = "$kind"

PLAIN: Final = frozenset({str, int, float, bool, type(None)})  # as they are, and nearly all that is kept
KEPT: Final[dict[str, type]] = {
    kind.__name__: kind for kind in (*get_args(events.What), Person, Learned, Runs, Habit, Units)
}

READ: Final[dict[str, Callable[[Any], Any]]] = {
    "$at": lambda kept: datetime.fromisoformat(kept).astimezone(UTC),
    "$date": date.fromisoformat,
    "$time": time.fromisoformat,
    "$microseconds": lambda kept: timedelta(microseconds=kept),
    "$tuple": lambda kept: tuple(decode(value) for value in kept),
    "$set": lambda kept: frozenset(decode(value) for value in kept),
    "$pairs": lambda kept: {decode(key): decode(value) for key, value in kept},
}


def encode(value: Any) -> Any:
    """JSON for a value; raises ValueError for a time without a zone and for what cannot be kept."""
    if type(value) in PLAIN:
        return value
    match value:
        case StrEnum():
            return value.value
        case None | bool() | int() | float() | str():
            return value
        case list():
            return [encode(v) for v in value]
        case Mapping():
            return _mapping(value)
    if is_dataclass(value) and type(value).__name__ in KEPT:
        return {KIND: type(value).__name__, **body(value)}
    return _marked(value)


def decode(kept: Any) -> Any:
    """The value that was kept. Raises Unreadable for a mark that is not known."""
    if type(kept) in PLAIN:
        return kept
    if isinstance(kept, list):
        return [decode(v) for v in kept]
    if KIND in kept:
        return build(kept[KIND], kept)
    for mark in kept:
        if mark.startswith(MARK):
            return _reader(mark)(kept[mark])
    return {key: decode(v) for key, v in kept.items()}


def body(value: Any) -> dict[str, Any]:
    """The fields of one of our dataclasses, as JSON."""
    return {f.name: encode(getattr(value, f.name)) for f in fields(value)}


def build(kind: str, kept: Mapping[str, Any]) -> Any:
    """One of our dataclasses from its name and the fields that were kept."""
    if kind not in KEPT:
        raise Unreadable("store", kind, "a kind that this version does not know")
    made = KEPT[kind]
    words = _words(made)
    found = {f.name: decode(kept[f.name]) for f in fields(made) if f.name in kept}
    return made(**{name: words[name](v) if name in words else v for name, v in found.items()})


def _mapping(value: Mapping[Any, Any]) -> Any:
    if all(isinstance(key, str) and not key.startswith(MARK) for key in value):
        return {str(key): encode(v) for key, v in value.items()}
    return {"$pairs": [[encode(key), encode(v)] for key, v in value.items()]}


def _marked(value: Any) -> dict[str, Any]:
    match value:
        case datetime():
            return {"$at": _instant(value)}
        case date():
            return {"$date": value.isoformat()}
        case time():
            return {"$time": value.isoformat()}
        case timedelta():
            return {"$microseconds": value // timedelta(microseconds=1)}
        case tuple():
            return {"$tuple": [encode(v) for v in value]}
        case frozenset() | set():
            return {"$set": sorted((encode(v) for v in value), key=repr)}
    raise ValueError(f"cannot be kept: {value!r}")


def _instant(value: datetime) -> str:
    if value.tzinfo is None:
        raise ValueError(f"a time without a zone cannot be kept: {value!r}")
    return value.astimezone(UTC).isoformat()


def _reader(mark: str) -> Callable[[Any], Any]:
    if mark not in READ:
        raise Unreadable("store", mark, "a mark that this version does not know")
    return READ[mark]


@cache
def _words(made: type) -> dict[str, type[StrEnum]]:
    """The fields of a dataclass that are one of a list of words."""
    hints = get_type_hints(made)
    return {name: hint for name, hint in hints.items() if isinstance(hint, type) and issubclass(hint, StrEnum)}
