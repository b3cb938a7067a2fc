"""The wood for the smoke: «using cherry», «hickory this time», «oak and a bit of apple». No hour hangs on it."""

from typing import Final

from bot.intents.context import Context
from bot.intents.intents import Change, Intent
from core import patterns as re
from core.plan.setup import WOODS

_WOOD: Final = rf"(?:post |red |white |sweet |sugar )?(?P<w>{'|'.join(WOODS)})s?"
_NAMED: Final = re.compile(rf"\b{_WOOD}\b")
_BEFORE: Final = (
    r"(?:im|i|we|are|am|will|ill|gonna|going|to|lets|please|use|using|used|with|smoke|smoking|cook|cooking|over|on|swap"
    r"|swapped|switch|switched|change|changed|do|doing|go|have|got|its|it|is|make|the|my|a|an|some|bit|of|and|n|&|or"
    r"|plus|also|mostly|half|wood|this|time|actually|smoked?|for|only|just|little|mix|mixed|chose|picked|took)"
)
_BEHIND: Final = (
    r"(?:woods?|chunks?|chips?|logs?|splits?|pellets?|dust|this|time|now|instead|then|please|for|the|it|smoke|smoking"
    r"|today|tomorrow|again|too|only|flavou?r|on|fire|a|bit|of|n|&|and|with|some|butcher|foil|paper|wrap)"
)
_ALONE: Final = re.compile(
    rf"(?:{_BEFORE},? )*{_WOOD.replace('?P<w>', '?:')}(?:,? (?:{_BEHIND}|{_BEFORE}|{_WOOD.replace('?P<w>', '?:')}))*"
)
_NOT: Final = re.compile(rf",? (?:and )?(?:not|instead of|no) (?:the )?{_WOOD.replace('?P<w>', '?:')}\b(?: wood)?")
_LAID_ON: Final = re.compile(r"\b(?:\d+ |an? )?(?:chunks?|logs?|splits?|handful)(?: of \w+)? (?:on|in)\b|\badded\b")


def read_wood(text: str, context: Context) -> Change | None:
    """The wood that a plain text names, where it says no more than that; wood that is laid on is no plan."""
    if context.phase == "none" or not _NAMED.search(text) or _LAID_ON.search(text):
        return None
    bare = _NOT.sub("", text).strip(" ,.!")
    if not _ALONE.fullmatch(bare):
        return None
    wraps = [{"wrap": one} for one in ("foil", "paper") if one in bare.split()]
    return Change({"wood": woods(bare)} | (wraps[0] if len(wraps) == 1 else {}))


def with_wood(found: list[Intent], text: str) -> list[Intent]:
    """«hickory and paper»: what was read of a plain text, with the wood that it names beside another wish."""
    if len(found) == 1 and isinstance(found[0], Change) and "wood" not in found[0].changes and (wood := woods(text)):
        return [Change({**found[0].changes, "wood": wood}, found[0].batch)]
    return found


def woods(text: str) -> str:
    """The woods that a plain text names, in its order, with «+» between them; "" for none."""
    return "+".join(dict.fromkeys(found["w"] for found in _NAMED.finditer(_NOT.sub("", text))))
