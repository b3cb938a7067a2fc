"""What waits for an answer, as plain data: the open question with the half intent that it belongs to.

It is kept with the person, so that a restart between question and answer forgets nothing.
"""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from bot.intents.intents import Start
from core.plan.recipe import product


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


def adds_to(intent: Start, asked: dict[str, Any] | None) -> bool:
    """Whether a start adds to a half one: asked for the cut, a meat that is named answers and begins nothing new."""
    half = (asked or {}).get("said") or {}
    return bool(half) and ((asked or {}).get("slot") == "cut" or of_the_same(half, intent.said))


def of_the_same(half: Mapping[str, Any], said: Mapping[str, Any]) -> bool:
    """Whether what is said of a start may be of the meat of a half one: «bacon for saturday», then «belly 3 kg»."""
    if not {"cut", "product"} & said.keys():
        return True
    both = {**half, **said}
    same = all(half.get(key, value) == value for key, value in said.items() if key in ("cut", "product", "mass"))
    return same and "product" in both and both.get("cut", "") in ("", *product(both["product"]).cuts)
