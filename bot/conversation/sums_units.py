"""A quantity in another unit, and one that is held against a number of another unit."""

from bot import measures
from bot.conversation.sums_hot import Answer
from bot.intents.sums.conversions import compared, converted, in_pounds_and_ounces, per_kilo, share_of, spread_from
from bot.intents.sums.elsewhere import Volume, gas_mark, rise, volume, water
from bot.intents.sums.told import Told
from bot.wording import numbers, sums, sums_elsewhere, sums_mixed
from core.errors import Missing
from core.service.turn import Turn


def _of_elsewhere(line: Told) -> Answer | None:
    """A unit of another kitchen: a gas mark, a difference of degrees, a gallon or a pint of two countries, water."""
    if mark := gas_mark(line.text):
        celsius = measures.to_house(mark[1], "f")
        return sums_elsewhere.gas_mark(mark[0], mark[1], celsius), (), {"value": celsius, "unit": "c"}
    if step := rise(line.text):
        return sums_elsewhere.rise(*step), (), {"value": step[2], "unit": "f" if step[1] == "c" else "c"}
    if found := water(line.text):
        said = sums_elsewhere.water(_so_many(found), (found.us, found.uk), found.land)
        return said, (), {"value": found.uk if found.land == "uk" else found.us, "unit": "kg"}
    if found := volume(line.text):
        said = sums_elsewhere.volume(_so_many(found), (found.us, found.uk), found.land)
        return said, (), {"value": found.uk if found.land == "uk" else found.us, "unit": "l"}
    return None


def _so_many(found: Volume) -> str:
    return f"{numbers.plain(round(found.many, 2))} {found.unit}"


def _convert(turn: Turn, line: Told) -> Answer:
    if elsewhere := _of_elsewhere(line):
        return elsewhere
    if mass := in_pounds_and_ounces(line.text):
        return sums_mixed.pounds_and_ounces(mass.typed, mass.unit, mass.value), (), {"value": mass.value, "unit": "lb"}
    if held := compared(line.text):
        value, unit, limit, below = held
        other = "f" if unit == "c" else "c"
        there = measures.from_house(measures.to_house(value, unit), other)
        said = sums_mixed.compared((value, unit), (there, other), (limit, below))
        return said, (), {"value": there, "unit": other}
    if (grams := per_kilo(line.text)) is not None:
        return sums_mixed.per_kilo(grams), (), {"value": grams / 10.0, "unit": "%"}
    if part := share_of(line.text):
        share, mass = part
        return sums_mixed.share_of(share, mass, share / 100.0 * mass.value), (), {"value": share / 100.0 * mass.value}
    found = converted(line.text)
    if found is None:
        raise Missing("body")
    quantity, wanted = found
    value = measures.from_house(quantity.value, wanted)
    said, body = sums.converted(quantity.typed, quantity.unit, value, wanted), {"value": value, "unit": wanted}
    low = spread_from(line.text) if wanted in ("c", "f") else None
    if low is None:
        return said, (), body
    there = measures.from_house(measures.to_house(low, quantity.unit), wanted)
    return f"{sums.converted(low, quantity.unit, there, wanted)}\n{said}", (), body | {"from": there}


SUMS = {"convert": _convert}
