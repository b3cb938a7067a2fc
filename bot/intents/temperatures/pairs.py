"""Two numbers at once that are not simply meat and pit: two places of the meat, or their names the wrong way round."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from bot.intents.context import Context
from bot.intents.intents import Reading, Temperature, Unclear
from bot.intents.temperatures.plausible import Number, can_be, may_be, pair
from bot.intents.temperatures.thermometers import Item
from bot.measures import to_house
from core import patterns as re
from core.batch.events import Probe

_ONE_PIECE: Final = {"f": 20.0, "c": 11.0}  # degrees that two places of a piece lie apart at most; common practice
_LEAST_PIT_C: Final = 60.0  # of a fire that is tended for fish; a colder one is called by its name
_PIT_STAYS_K: Final = 50.0  # 90 °F under its last reading it is no pit that somebody reads out without a word


_SEVERAL: Final = re.compile(  # «165 in one spot 158 in another», «one at 170 others 160», «all of them 165»
    r"\b(?:in )?(?:(?:the )?(?:others?|another)|one(?! (?:h\w*|m\w*)\b))(?: (?:spot|place|bird|piece|one))?\b"
    r"|\b(?:all (?:of )?(?:them|em)|each(?: (?:one|of (?:them|em)))?|every(?: (?:one|bird|piece))|they are(?: all)?"
    r"|they all)\b"
)


def by_piece(text: str, context: Context) -> str:
    """A line of the fire with «core» for what tells several pieces or places of the meat apart, or all of them."""
    return _SEVERAL.sub("core", text) if context.phase == "cooking" else text


def of_the_meat_alone(items: list[Item], context: Context) -> list[Item]:
    """«150 150 148 155»: named as places or pieces of the meat, where none of the numbers can be the pit's."""
    unit = next((item.number.unit for item in items if item.number.unit), context.units.temperature)
    numbers = [Number(item.number.value, unit, Probe.CORE) for item in items]
    meat = (may_be(number, Probe.CORE, context) and not _may_be_pit(number, unit, context) for number in numbers)
    alone = context.phase == "cooking" and all(meat)
    return [replace(item, number=replace(item.number, probe=Probe.CORE)) for item in items] if alone else items


def two_spots(one: Number, two: Number, context: Context) -> tuple[Temperature, Temperature] | None:
    """«124 / 121»: two places of the meat, where neither can be a pit in the cook's own unit."""
    unit = one.unit or two.unit or context.units.temperature
    both = [Number(number.value, unit, Probe.CORE) for number in (one, two)]
    apart = abs(one.value - two.value) > _ONE_PIECE[unit]
    if context.phase != "cooking" or apart or not all(may_be(number, Probe.CORE, context) for number in both):
        return None
    if any(_may_be_pit(number, unit, context) for number in both):
        return None
    return Temperature(one.value, unit, Probe.CORE), Temperature(two.value, unit, Probe.CORE)


def side_by_side(items: Sequence[Item], context: Context) -> list[tuple[Item, Temperature]]:
    """«164 166»: two places of the meat, where the pit was read before, so that no dial in the other unit is meant."""
    spots = two_spots(items[0].number, items[1].number, context) if context.last_pit_c is not None else None
    return list(zip(items, spots, strict=True)) if spots else []


def out_of_the_ice(items: Sequence[Item], context: Context) -> list[tuple[Item, Temperature]]:
    """«124/45» while it chills: the warmer is the meat, and there is no fire; what is colder is asked about."""
    cold, warm = sorted(items, key=lambda item: item.number.value)
    unit = warm.number.unit or cold.number.unit or context.units.temperature
    cools = can_be(Probe.CORE, unit, warm.number.value) and can_be(Probe.FRIDGE, unit, cold.number.value)
    apart = warm.number.value - cold.number.value > _ONE_PIECE[unit]
    if context.phase != "chilling" or not (cools and apart):
        return []
    return [(warm, Temperature(warm.number.value, unit, Probe.CORE))]


def _may_be_pit(number: Number, unit: str, context: Context) -> bool:
    """Whether the pit can stand there: no pit has come down so far since it was read, unless somebody said so."""
    fallen = context.last_pit_c is not None and context.last_pit_c - to_house(number.value, unit) > _PIT_STAYS_K
    return can_be(Probe.PIT, unit, number.value) and not fallen


def swapped(items: Sequence[Item], context: Context) -> Unclear | None:
    """«core 250 pit 125»: the names the wrong way round, where no core can be so warm; asked about."""
    named = {item.number.probe: item.number for item in items}
    core, pit = named.get(Probe.CORE), named.get(Probe.PIT)
    if len(items) != 2 or core is None or pit is None:
        return None
    if any(can_be(Probe.CORE, unit, core.value) for unit in ((core.unit,) if core.unit else ("f", "c"))):
        return None
    ways = pair(replace(pit, probe=None), replace(core, probe=None), context).pairs
    return Unclear("pair", options=tuple(Reading(way) for way in ways)) if ways else None


def beyond_its_pit(items: Sequence[Item], unit: str | None) -> list[tuple[Item, Temperature]] | Unclear | None:
    """«85 now, core 41»: so far over the meat it is the pit, though a cool one; «95 pit 62» may be named either way.

    None where the one without a name lies near the other or under it, or where their unit is not clear.
    """
    named, bare = sorted(items, key=lambda item: item.number.probe is None)
    degrees = named.number.unit or bare.number.unit or unit
    if degrees is None or bare.number.value - named.number.value <= _ONE_PIECE[degrees]:
        return None
    if to_house(bare.number.value, degrees) < _LEAST_PIT_C:
        return None
    low = Temperature(named.number.value, degrees, Probe.CORE)
    high = Temperature(bare.number.value, degrees, Probe.PIT)
    if named.number.probe is Probe.PIT and can_be(Probe.PIT, degrees, named.number.value):
        return None  # «pit was 225, 250 now» is one of them twice
    if named.number.probe is Probe.PIT:
        return Unclear("pair", options=(Reading((low, high)),))
    return [(item, low if item is named else high) for item in items]


def behind_its_name(items: Sequence[Item], unit: str | None) -> list[tuple[Item, Temperature]] | Unclear | None:
    """«245 pit 152»: the name may belong to the number before it, where that is far over the one behind."""
    first, last = items
    degrees = last.number.unit or first.number.unit or unit
    behind = last.number.probe is Probe.PIT and first.number.probe is None and degrees is not None
    if not behind or degrees is None or first.number.value - last.number.value <= _ONE_PIECE[degrees]:
        return None
    ways = [
        (Temperature(core.number.value, degrees, Probe.CORE), Temperature(pit.number.value, degrees, Probe.PIT))
        for core, pit in ((last, first), (first, last))
        if can_be(Probe.CORE, degrees, core.number.value) and can_be(Probe.PIT, degrees, pit.number.value)
    ]
    if len(ways) == 1 and ways[0][1].value == first.number.value:
        return [(first, ways[0][1]), (last, ways[0][0])]
    return Unclear("pair", options=tuple(Reading(way) for way in ways)) if len(ways) > 1 else None


def both_named(items: Sequence[Item], context: Context) -> list[tuple[Item, Temperature]]:
    """«meat 65 grill 120»: the two of one look in the one unit in which both can be; nothing where that is open."""
    named = {item.number.probe: item.number for item in items}
    core, pit = named.get(Probe.CORE), named.get(Probe.PIT)
    told_apart = any(item.number.unit or item.time or item.ago for item in items)
    if len(items) != 2 or core is None or pit is None or told_apart:
        return []
    found = pair(Number(core.value), Number(pit.value), context)
    fits = [way for way in found.pairs if [t.value for t in way] == [core.value, pit.value]]
    if len(fits) != 1 or found.doubtful or fits[0][0].unit != fits[0][1].unit:
        return []
    both = dict(zip((Probe.CORE, Probe.PIT), fits[0], strict=True))
    return [(item, both[item.number.probe]) for item in items if item.number.probe in both]
