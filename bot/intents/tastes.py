"""What a slice of the fresh cured meat tasted like: «rinsed, tastes fine», «fried a piece, bit salty»."""

from typing import Final

from bot.intents.context import Context
from bot.intents.intents import StepDone
from core import patterns as re
from core.plan.steps import Kind

_SAID: Final = {
    "tastes salty": r"(?:over)?salt(?:y|ed)|like (?:(?:sea ?water|the sea)|(?:pure )?salt|brine)",
    "tastes bland": r"bland|flat|weak|(?:not salty|no salt|unsalted)",
    "tastes off": r"off|sour|bad|rotten|foul|funny|weird|strange|metallic",
    "tastes fine": r"alright|all right|fine|good|ok(?:ay)?|great|nice|perfect|right|lovely",
}
_HOW: Final = r"(?:(?:it|its|is|was|a|bit|little|really|very|too|pretty|quite|just|way|about|nice and|came out|and) )*"
_TASTED: Final = tuple((said, re.compile(rf"\btast\w{{0,4}} {_HOW}(?:{words})\b")) for said, words in _SAID.items())
_FRIED: Final = tuple(
    (said, re.compile(rf"\b(?:fried|fry test|test slice|test piece|tasted)\b[\w ,]{{0,24}}?\b{_HOW}(?:{words})\b"))
    for said, words in _SAID.items()
)
_ASKS: Final = re.compile(r"\?|\b(?:how|why|what|should|can|do i|is it|does)\b")


def taste(text: str) -> str:
    """What a plain text says of the taste («tastes fine»), or ""; a bad one counts before a good one."""
    return next((said for said, words in (*_TASTED, *_FRIED) if words.search(text)), "")


def read_taste(text: str, context: Context) -> StepDone | None:
    """A taste told by itself, once the meat is out of the cure and not on the fire: it belongs to the rinse."""
    if context.phase != "drying" or _ASKS.search(text):
        return None
    said = taste(text)
    return StepDone(str(Kind.RINSE), detail=said) if said else None
