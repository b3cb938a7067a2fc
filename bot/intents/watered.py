"""So much water for the brine, as it is stated: before it is made, and once it is mixed."""

from collections.abc import Collection
from typing import Any, Final

from bot import measures
from bot.intents.context import Context
from bot.intents.fields import stated
from bot.intents.small import words
from core import patterns as re
from core.plan.steps import Kind
from core.units import Kilograms

MADE: Final = re.compile(r"\b(?:made|mixed|used|put|took|taken|poured|filled|went)\b")
_WET: Final = re.compile(r"\b(?:water|brine|pickle|tub|bucket|bag|pot)\b")
_SMALL: Final = words(
    "i we ill will can lets to use used using put take took have has need needs want wants make made mixed mix with of"
    " the a my our in into it its is was about only just cold tap fresh clean brine pickle water tub bucket bag pot"
    " container box for and poured filled fill pour up so said went instead now please do does holds takes got ok this"
    " that at taken wait whatever you said not told me no of what actually oops"
)
_LEAST: Final = 0.2  # l; less is no brine: a splash, or a cup to drink


def litres(text: str) -> Kilograms | None:
    """The one volume of a plain text that says nothing else; a litre of water is a kilo. [kg]"""
    found = measures.of_kind(text, "volume")
    if len(found) != 1 or found[0].low is not None or found[0].value < _LEAST:
        return None
    rest = text[: found[0].start] + " " + text[found[0].end :]
    return found[0].value if set(re.findall(r"\w+", rest)) <= _SMALL else None


def read_water(text: str, context: Context) -> dict[str, Any]:
    """The water of a brine that a plain text states: wanted (`water_kg`), or gone in (`put_in_water`). [kg]"""
    if context.phase != "waiting":
        return {}
    alone = measures.sole(text, "volume") is not None
    kg = litres(text) if alone or _WET.search(text) or MADE.search(text) else None
    if kg is None:
        return {}
    return {"put_in_water" if context.brine_made or MADE.search(text) else "water_kg": kg}


def told_along(text: str, kinds: Collection[Kind]) -> dict[str, Any]:
    """What a deed says of the batch by the way: «made the brine with 4 l of water», «lit the kettle»."""
    water = litres(text) if Kind.BRINE in kinds else None
    cooker = stated(text).fields.get("cooker") if Kind.LIGHT in kinds else None
    return ({"put_in_water": water} if water else {}) | ({"cooker": cooker} if cooker else {})
