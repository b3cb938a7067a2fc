"""One of two numbers that nobody could read for sure: «155 or 165, cant read it in this sun» asks which."""

from typing import Final

from bot import measures
from bot.intents.context import SHOWN, Context
from bot.intents.intents import Reading, Unclear
from bot.intents.temperatures.plausible import everything
from core import patterns as re

_TWO: Final = re.compile(
    r"(?<![\d.:/])(?P<one>\d{2,3}(?:\.\d)?)(?: ?(?P<unit>[cf]))?,? (?:or|oder|maybe|might be|could be|or maybe"
    r"|or is it)"
    r" (?P<two>\d{2,3}(?:\.\d)?)(?: ?[cf])?(?![\d:/]| ?(?:%|kg|lb|g\b|oz|mm|cm|in\b|min|h\b|hours?|days?|people"
    r"|guests))"
)
_DOUBT: Final = re.compile(
    r"\b(?:cant|cannot|can not|couldnt|couldn|hard to|not able to|kann (?:es |das )?nicht) (?:really |quite "
    r"|properly )?"
    r"(?:read|tell|see|make (?:it )?out|say|lesen|sehen|erkennen)\b"
    r"|\b(?:not sure|unsure|dunno|no idea|idk|hard to say|who knows|smudg\w*|glare|blurr\w*|fogg\w*|steam\w*"
    r"|dark in here"
    r"|without my glasses|no glasses|display|screen|sun|flicker\w*|jump\w*|keeps (?:chang|flick|jump)\w*|or so i think"
    r"|schwer zu (?:lesen|erkennen)|weiß nicht)\b"
)
_ASIDE: Final = re.compile(
    r"(?:(?:it|its|it is|that|thats|says?|reads?|reading|shows?|either|maybe|about|like|core|meat|the"
    r"|probe|now|fridge|brine)[, ]+)*"
)


def read_in_doubt(text: str, context: Context) -> Unclear | None:
    """The question which of two numbers was read, where a plain text doubts itself; none of them is noted."""
    found = _TWO.search(text) if " or " in text or " oder " in text or "be" in text else None
    if found is None or context.phase == "none" or not context.free:
        return None
    rest = f"{text[: found.start()]} {text[found.end() :]}"
    if "?" in text or not (_DOUBT.search(rest) or _ASIDE.fullmatch(f"{rest.strip()} ".lstrip())):
        return None
    numbers = (measures.number(found["one"]), measures.number(found["two"]))
    options = tuple(Reading(everything(number, context)[:1]) for number in numbers if number is not None)
    return Unclear("number", text[:SHOWN], tuple(option for option in options if option.temperatures))
