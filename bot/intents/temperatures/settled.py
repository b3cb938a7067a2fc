"""What the numbers of one line are together: meat and pit, one thermometer at several hours, or one by one."""

from dataclasses import replace
from typing import Final, TypeAlias

from bot.intents.context import Context
from bot.intents.intents import Intent, Reading, Temperature, Unclear
from bot.intents.temperatures.lone import besides, strengths
from bot.intents.temperatures.pairs import (
    behind_its_name,
    beyond_its_pit,
    both_named,
    of_the_meat_alone,
    out_of_the_ice,
    side_by_side,
    swapped,
    two_spots,
)
from bot.intents.temperatures.plausible import Number, everything, may_be, meanings, pair
from bot.intents.temperatures.thermometers import Item, Line, as_of_then
from core.batch.events import Probe

Found: TypeAlias = list[tuple[Item, Temperature]]
EARLIER: Final = frozenset(("was", "then", "now", "from", "before"))  # one thermometer at two times, perhaps


def settled(items: list[Item], line: Line, context: Context) -> Found | Unclear:
    """Each number of a line with the temperature that it is; Unclear with what they may be where that is open."""
    labels = [item.number.probe for item in items]
    hours = sum(1 for item in items if item.time or item.ago)
    if (
        len(items) == 2
        and hours < 2
        and not (hours and line.words & EARLIER)
        and not line.over
        and set(labels) <= {None, Probe.CORE, Probe.PIT}
        and None in labels
    ):
        if any(labels):
            return _half_labelled(items, line, context)
        at_once = out_of_the_ice if line.slashed else side_by_side
        if found := at_once(items, context) or _pair(items, context):
            return found
        if line.slashed and context.phase == "cooking":
            return Unclear("pair")
    if len(items) > 2 and not hours and not line.over and not any(labels):
        return _several(items, context)
    return swapped(items, context) or both_named(items, context) or _one_by_one(items, context)


def _half_labelled(items: list[Item], line: Line, context: Context) -> Found | Unclear:
    """«70c pit 120»: the one without a name is the meat, or the pit; «pit was 245 now 260» is one of them twice."""
    named = next(item.number.probe for item in items if item.number.probe)
    other = Probe.PIT if named is Probe.CORE else Probe.CORE
    unit = _unit_of(items, context)
    earlier = line.words & EARLIER  # «pit was 225, 250 now»
    if beyond := (None if earlier else behind_its_name(items, unit)) or beyond_its_pit(items, unit):
        return beyond
    bare = [replace(i.number, unit=i.number.unit or unit) for i in items if not i.number.probe]
    fits = [probe for probe in (other, named) if all(may_be(number, probe, context) for number in bare)]
    ways = [_one_by_one(_named(items, probe), context) for probe in fits]
    if len(ways) > 1 and earlier:
        readings = (Reading(tuple(t for _, t in way)) for way in ways if not isinstance(way, Unclear))
        return Unclear("number", options=tuple(readings))
    return ways[0] if ways else _one_by_one(_named(items, other), context)


def _unit_of(items: list[Item], context: Context) -> str | None:
    """The unit of the one that has a name, where it is clear."""
    found = meanings(next(i.number for i in items if i.number.probe), context)
    return found[0].unit if len(found) == 1 else None


def _named(items: list[Item], probe: Probe) -> list[Item]:
    return [i if i.number.probe else replace(i, number=replace(i.number, probe=probe)) for i in items]


def _pair(items: list[Item], context: Context) -> Found | Unclear | None:
    one, two = (item.number for item in items)
    fits, spots = pair(one, two, context), two_spots(one, two, context)
    if len(fits.pairs) > 1 or (fits.pairs and fits.doubtful):
        return Unclear("pair", options=tuple(Reading(p) for p in (*((spots,) if spots else ()), *fits.pairs)))
    if not fits.pairs:
        return list(zip(items, spots, strict=True)) if spots else None
    core, pit = fits.pairs[0]
    return list(zip(items, (core, pit) if core.value == one.value else (pit, core), strict=True))


def _several(items: list[Item], context: Context) -> Found | Unclear:
    """Three bare numbers: a series of the same thermometer, or pit and meat in an order that must be confirmed."""
    values = [item.number.value for item in items]
    if max(values) - min(values) <= 20:  # degrees: a series of one thermometer
        return _one_by_one(of_the_meat_alone(items, context), context)
    rest = dict.fromkeys(values)
    both = pair(Number(max(rest)), Number(min(rest)), context).pairs if len(rest) == 2 else ()
    return Unclear("number", options=tuple(Reading(b) for b in both))


def _one_by_one(items: list[Item], context: Context) -> Found | Unclear:
    out: Found = []
    for item in items:
        found = _next_of_series(item, out) or meanings(item.number, as_of_then(item, context))
        found = found if len(found) == 1 else _as_the_others(found, items, context)
        if len(found) != 1:
            others = tuple(t for _, t in out)
            return Unclear("number", options=_options(found, others, item.number, context))
        out.append((item, found[0]))
    return out


def _as_the_others(found: tuple[Temperature, ...], items: list[Item], context: Context) -> tuple[Temperature, ...]:
    """«breast 98 thigh 104 pit 270»: in the cook's own unit, where the others of the line can be in no other."""
    sure = [one[0].unit for one in (meanings(item.number, context) for item in items) if len(one) == 1]
    own = context.units.temperature
    if len(items) <= 2 or not sure or set(sure) != {own} or len({t.probe for t in found}) != 1:
        return found
    return tuple(t for t in found if t.unit == own)


def _next_of_series(item: Item, before: Found) -> tuple[Temperature, ...]:
    """«was 82f at 9, 44 at 7am»: one thermometer at several hours."""
    if not before or not item.time or item.number.probe or not before[-1][0].time:
        return ()
    last = before[-1][1]
    return (Temperature(item.number.value, item.number.unit or last.unit, last.probe),)


def _options(
    found: tuple[Temperature, ...], others: tuple[Temperature, ...], number: Number, context: Context
) -> tuple[Intent, ...]:
    found = found or everything(number.value, context, number.unit)
    out = tuple(Reading((*others, t)) for t in found[:4])
    if number.unit is not None:
        return out
    more = besides(number.value, context) if number.probe is None else ()
    return (*strengths(number.value, context), *out, *more)
