"""How much pickle the needle put in: told by its weight, or by that of the piece before and after."""

from typing import Any, Final

from bot import measures
from bot.intents.context import Context
from bot.intents.small import words
from core import patterns as re

NEEDLE: Final = r"(?:pump(?:ed|ing)?|inject(?:ed|ing|ion)?|needled?|syringe)"
_NEEDLED: Final = re.compile(rf"\b{NEEDLE}\b|\bpumped weight\b")
_AFTER: Final = re.compile(  # what the piece weighs with it
    rf"\b(?:after|once|with) (?:(?:the|it|being|was|is|its|all|i|we) )*{NEEDLE}\b|\b{NEEDLE} (?:it )?(?:up )?to\b"
    r"|\bpumped weight\b|\bcame up to\b"
)
_OTHERWISE: Final = re.compile(
    r"\b(?:more|again|another|extra|second|twice|not|didnt|never|should|will|would|how|if|plan\w*|going|gonna|want\w*"
    r"|to be|each|per|cure(?! in)|salt|sugar|grams? of)\b|\?"
)
_SMALL: Final = words(
    """
    i we ive have just only ok so about roughly around some got managed put was is are its it them the a my ham loin
    belly brisket meat piece of brine pickle liquid solution stuff pump pumped pumping inject injected injecting
    injection needle syringe syringed in into with after once weighs weighed weight weigh now up to at all total
    altogether being been then today and done that came went far
    """
)
_MOST: Final = 30.0  # kg


def read_pumped(text: str, context: Context) -> dict[str, Any]:
    """What the needle put in (`put_in_pumped`), or the weight of the piece with it (`pumped_to`). [kg]"""
    if not _NEEDLED.search(text) or _OTHERWISE.search(text):
        return {}
    found = [m for m in measures.find(text) if m.kind in ("mass", "volume") and m.unit not in ("tsp", "tbsp")]
    if len(found) != 1 or found[0].low is not None or not 0.0 < found[0].value <= _MOST:
        return {}
    rest = f"{text[: found[0].start]} {text[found[0].end :]}"
    if not set(re.findall(r"[^\W\d]+", rest)) <= _SMALL:
        return {}
    return {"pumped_to" if _AFTER.search(text) else "put_in_pumped": found[0].value}
