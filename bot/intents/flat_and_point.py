"""A whole brisket that was parted: «split it, flat 6.1 lb point 5.2» are two batches, each with its days and hours."""

from typing import Any, Final

from bot import measures
from bot.intents.intents import Start
from core import patterns as re

_UNIT: Final = r"(?:kgs?|kilos?|lbs?|pounds?|#)"
_NUMBER: Final = r"\d{1,2}(?:\.\d{1,3})?"
_IS: Final = r"(?:(?: (?:is|was|at|of|about|weigh(?:s|ed)?|now|comes?|in|to|=))*|:)"
_PIECE: Final = r"(?:the |a |an )?(?:brisket )?(?P<{n}>flat|point)s?(?: (?:cut|end|half|side))?"
_BETWEEN: Final = r"(?: ?[,;.+])?(?: (?:and|&|plus|then))* "
_NAMED_FIRST: Final = re.compile(
    rf"\b{_PIECE.format(n='one')}{_IS} ?(?P<m1>{_NUMBER}) ?(?P<u1>{_UNIT})?\b{_BETWEEN}"
    rf"{_PIECE.format(n='two')}{_IS} ?(?P<m2>{_NUMBER}) ?(?P<u2>{_UNIT})?\b(?! ?(?:in|inch|cm|mm|f|c|\d|/|\"))"
)
_WEIGHED_FIRST: Final = re.compile(
    rf"(?<![\d.])(?P<m1>{_NUMBER}) ?(?P<u1>{_UNIT})? {_PIECE.format(n='one')}{_BETWEEN}"
    rf"(?:a )?(?P<m2>{_NUMBER}) ?(?P<u2>{_UNIT})? {_PIECE.format(n='two')}\b"
)
_CUTS: Final = {"flat": "brisket_flat", "point": "brisket_point"}
_OF_ONE: Final = frozenset({"mass", "pieces", "heaviest", "thickness", "cut"})


def parted(text: str, whole: Start | None) -> Start | None:
    """Two starts of one, where a plain text weighs a flat and a point; what else it says is said of both.

    A weight without a unit has the other's; where neither has one, neither is taken.
    """
    found = _NAMED_FIRST.search(text) or _WEIGHED_FIRST.search(text)
    if whole is None or found is None or found["one"] == found["two"]:
        return None
    units = (found["u1"] or found["u2"], found["u2"] or found["u1"])
    if not all(units):
        return None
    shared: dict[str, Any] = {key: value for key, value in whole.said.items() if key not in _OF_ONE}
    each = [
        {"product": "pastrami"} | shared | {"cut": _CUTS[name], "mass": measures.to_house(float(mass), _unit(unit))}
        for name, mass, unit in zip((found["one"], found["two"]), (found["m1"], found["m2"]), units, strict=True)
    ]
    unclear = tuple(one for one in whole.unclear if not one.startswith(("cut:", "mass:", "unit:", "share:", "each:")))
    return Start(each[0], unclear, whole.assumed, then=(each[1],))


def _unit(typed: str) -> str:
    return "kg" if typed.startswith("k") else "lb"
