"""Another piece like the last one: «same as last time but 3 kg», «do the same again for the 23rd»."""

from dataclasses import replace
from typing import Final

from bot.intents.context import Context
from bot.intents.intents import Start
from bot.intents.meats import meat
from bot.intents.start import read_start
from core import patterns as re

LIKE_LAST: Final = "like_last"  # among what a start assumes: the product and the cut are those of the last batch
_AGAIN: Final = re.compile(
    r"^(?:(?:lets|can we|i|we|want|wanna|please|ok|gonna|going to|do|make|start|starting|doing|will|ill|like|to"
    r"|have|the"
    r"|a|an|id|just) )*"
    r"(?:same|repeat|another|one more|it)(?: (?:one|thing|recipe|plan|batch|cut|piece|meat|all over|(?:pork |beef )?"
    r"(?:brisket|flat|point|belly|loin|ham|pastrami|bacon|shoulder|butt|breast|turkey|chicken|duck|salmon|trout)))*,? "
    r"(?:again(?=$|[ ,]+(?!as\b|like\b))|(?:again,? )?(?:as|like) (?:last (?:time|week|month)|before"
    r"|the last(?: one)?|that(?: one)?|this(?: one)?)"
    r"|of (?:those|the same|that))\b"
    r"|^(?:(?:lets|can we|i|we|want|wanna|please|ok|gonna|going to|do|make|start|ill|like|to|have|id|just) )*"
    r"(?:the|my|our) usual(?: (?:one|thing|stuff|batch))?"
    r"(?=$|[ ,]+(?:\d|again|for|but|please|pls|this|next))"
    r"|^(?:pastrami|bacon|ham|corned beef) again,? (?:(?:the )?same )?(?:as|like) (?:last time|before|the last one)\b"
    r"|^(?:the )?next (?:one|time|batch)(?: the| is)* same\b"
    r"|^(?:the )?same(?: (?:one|thing|again))*,? (?=(?:but|just|only|for|with|this time)\b)"
)
_BESIDE: Final = re.compile(r"\b(?:but|and|just|only|with|this time|please|pls|now|then|again)\b|,")
_TOLD: Final = re.compile(r"\b(?:flipped|turned|forgot|missed|happened|read|reads|fridge|pit|core)\b")


def read_again(text: str, context: Context) -> Start | None:
    """A start that is as the last one was but for what is said, where a plain text names its weight or its meal."""
    found = _AGAIN.match(text)
    if found is None or text.endswith("?") or _TOLD.search(text):
        return None
    rest = " ".join(_BESIDE.sub(" ", text[found.end() :]).split())
    afresh = replace(context, phase="none", deadline=None, asked=None)
    start = read_start(f"start {rest}", afresh) if re.search(r"\d|day\b|week", rest) else None
    if start is None and not rest and context.phase == "none" and context.free:
        made = meat(found[0]).product
        return Start({"product": made} if made else {}, assumed=(LIKE_LAST,))
    if start is None or not ({"mass", "deadline"} & start.said.keys() or start.unclear):
        return None
    return replace(start, assumed=(*start.assumed, LIKE_LAST))
