"""A quantity in another unit, and one that is held against a number of another unit."""

from bot import measures
from bot.conversation.sums_hot import Answer
from bot.intents.sums.conversions import compared, converted, in_pounds_and_ounces, per_kilo, share_of, spread_from
from bot.intents.sums.told import Told
from bot.wording import sums, sums_mixed
from core.errors import Missing
from core.service.turn import Turn


def _convert(turn: Turn, line: Told) -> Answer:
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
