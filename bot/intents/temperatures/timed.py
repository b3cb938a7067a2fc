"""The hours of the temperatures of one line: a series in its order, one look at both, the latest first or last."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from typing import TypeAlias

from bot.intents import when
from bot.intents.context import Context
from bot.intents.intents import Temperature
from bot.intents.temperatures.thermometers import Item, Line

Found: TypeAlias = Sequence[tuple[Item, Temperature]]


def timed(found: Found, line: Line, context: Context) -> tuple[Temperature, ...]:
    """Each temperature with its hour; read from the last backwards, so that a series stays in order."""
    if line.over and len(found) > 1:
        step = line.over / (len(found) - 1)
        ago = [step * (len(found) - 1 - i) for i in range(len(found))]
        return tuple(replace(t, at=context.now - back) for (_, t), back in zip(found, ago, strict=True))
    hours = {item.time for item, _ in found if item.time}
    if len(hours) == 1 and len({t.probe for _, t in found}) == len(found):  # «17:30 158/245»: one look at both
        found = [(replace(item, time=next(iter(hours))), t) for item, t in found]
    if told := _latest_first(found, context):
        return told
    out: list[Temperature] = []
    limit: datetime = context.now
    for item, temperature in reversed(found):
        at = _at(item, context, limit)
        limit = at or limit
        out.append(replace(temperature, at=at))
    return tuple(reversed(out))


def _latest_first(found: Found, context: Context) -> tuple[Temperature, ...]:
    """«36 this morning, 41 last night»: told backwards, where no hour says that one came before the other."""
    if any(any(sign.isdigit() for sign in item.time) or not item.time for item, _ in found):
        return ()
    own = [_at(item, context, context.now) or context.now for item, _ in found]
    if own != sorted(own, reverse=True):
        return ()
    return tuple(replace(t, at=at) for (_, t), at in zip(found, own, strict=True))


def _at(item: Item, context: Context, limit: datetime) -> datetime | None:
    if item.ago:
        return context.now - item.ago
    if not item.time:
        return None
    said = when.past(item.time, context, limit)
    return said.at if said else None
