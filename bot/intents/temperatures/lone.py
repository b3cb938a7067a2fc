"""A number that is the whole of a line: what it can be in the phase, offered where nothing called for it.

«40» in the cure is a fridge, a brine, minutes or a thickness: a guess would stand in the record as a reading.
"""

from datetime import timedelta
from typing import Final
from zoneinfo import ZoneInfo

from bot import measures
from bot.intents import when
from bot.intents.context import IN_THE_COLD, RAW, SET_UP, Context
from bot.intents.intents import Ask, Change, Intent, Reading, Snooze, Unclear
from bot.intents.percents import usual_cure
from bot.intents.temperatures.plausible import Number, everything, meanings
from core import patterns as re

_LONE: Final = re.compile(
    r"(?:(?:its|it is|it|been|was|at|about|like|now|ok|hm+|um|uh|maybe|prob|probably|not sure|i think|i guess"
    r"|only|just|still|still at) )*"
    r"(?P<value>\d{1,2} [1-9]\d?/(?:2|4|8|16)|\d{1,3}(?:\.\d{1,3})?)(?: (?:now|ish|again|ok|today|still|or so))*"
)
_FINGERS: Final = re.compile(r"(?:(?:its|about|like|maybe|roughly) )*\d (?:fingers?|thumbs?)(?: (?:wide|or so))?")
_FOR_A_READING: Final = ("fridge", "brine", "reading", "chill_check")
_HOURS: Final = range(1, 13)  # on the clock
_AWAKE: Final = range(6, 23)
_LONGEST: Final = 31.0  # hours or days that somebody counts without their unit
_THICK: Final = {"mm": (25.0, 150.0), "in": (0.75, 5.0)}  # a piece that is cured
_HEAVY: Final = {"lb": (1.0, 20.0), "kg": (0.5, 9.0)}


def read_lone(bare: str, context: Context) -> Unclear | None:
    """A bare number in the cold that no step called for: asked about, with what it may be; None where it is told."""
    if context.phase in RAW and _FINGERS.fullmatch(bare):
        return Unclear("ruler", bare[:60])
    found = _LONE.fullmatch(bare) if context.phase in IN_THE_COLD else None
    if found is None:
        return None
    value = measures.number(found["value"]) or 0.0
    by_parts = "/" in found["value"] or bool(re.search(r"\.\d{3}", found["value"]))  # «2 1/8»: no thermometer reads so
    read = () if by_parts else tuple(Reading((t,)) for t in everything(value, context)[:3])
    called = (context.due_step or "").startswith(_FOR_A_READING) or (
        bool(context.probe_asked)
        and context.free
        and {t.probe for t in meanings(Number(value), context)} == {context.probe_asked}
    )
    if not by_parts and (called or not read):
        return None
    return Unclear("number", bare[:60], (*strengths(value, context), *read, *besides(value, context)))


def strengths(value: float, context: Context) -> tuple[Intent, ...]:
    """«its 6.25», read off the packet before the meat is cured."""
    usual = context.phase in SET_UP and not value.is_integer() and usual_cure(value / 100)
    return (Change({"cure_nitrite_fraction": value / 100}),) if usual else ()


def besides(value: float, context: Context) -> tuple[Intent, ...]:
    """What a number without a unit may be that is no temperature: how thick, how heavy, since when, in how long."""
    out: list[Intent] = []
    if context.phase == "none":
        return ()
    if context.phase in RAW:
        out += _sizes("thickness", value, {unit: _THICK[unit] for unit in dict.fromkeys(("mm", context.units.length))})
    if context.phase == "waiting":
        out += _sizes("mass", value, {context.units.mass: _HEAVY[context.units.mass]})
    if value.is_integer() and 1 <= value <= _LONGEST and context.phase != "waiting":
        out.append(Ask("since"))
    if value % 5 == 0 and 5 <= value <= 120:
        out.append(Snooze(by=timedelta(minutes=value)))
    hour = when.future(f"at {value:g}", context) if value in _HOURS and context.phase == "curing" else None
    if hour and hour.at.astimezone(ZoneInfo(context.zone)).hour in _AWAKE:
        out.append(Snooze(until=hour.at))
    return tuple(out)


def _sizes(field: str, value: float, units: dict[str, tuple[float, float]]) -> list[Intent]:
    fits = (unit for unit, (low, high) in units.items() if low <= value <= high)
    return [Change({field: measures.to_house(value, unit)}) for unit in fits]
