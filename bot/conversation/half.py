"""What waits for an answer, as plain data: the open question with the half intent that it belongs to.

It is kept with the person, so that a restart between question and answer forgets nothing.
"""

from datetime import datetime
from typing import Any


def pack(value: Any) -> Any:
    """Plain data for what an intent holds: times become text that can be told apart."""
    match value:
        case datetime():
            return {"$at": value.isoformat()}
        case dict():
            return {key: pack(v) for key, v in value.items()}
        case list() | tuple():
            return [pack(v) for v in value]
        case frozenset() | set():
            return sorted(value)
        case _:
            return value


def unpack(value: Any) -> Any:
    """The inverse of `pack`."""
    match value:
        case {"$at": str(text)}:
            return datetime.fromisoformat(text)
        case dict():
            return {key: unpack(v) for key, v in value.items()}
        case list():
            return [unpack(v) for v in value]
        case _:
            return value
