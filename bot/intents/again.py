"""Another piece like the last one: «same as last time but 3 kg», «another ham», «do the same again for the 23rd»."""

from dataclasses import replace
from typing import Final

from bot import measures
from bot.intents.context import Context
from bot.intents.intents import Start
from bot.intents.meats import meat, without
from bot.intents.small import content, words
from bot.intents.start import read_start
from bot.intents.when import without_times
from core import patterns as re

LIKE_LAST: Final = "like_last"  # among what a start assumes: the product and the cut are those of the last batch
_LAST: Final = (
    r"(?:last (?:time|week|month|year|one|batch)\b|last$|(?:the|my|our|that|this) (?:last|previous|other)(?: one| time"
    r"| batch| cook)?\b|before\b|always\b|that(?: one)?\b|this(?: one)?\b|those\b)"
)
_AGAIN: Final = re.compile(
    rf"\b(?:same|like|as|repeat|redo|copy|one of)\b(?: (?:as|like|of|we did|i did|it was|again|thing|one|recipe|batch"
    rf"|plan|exactly|just|the|my))*,? {_LAST}"
    r"|\b(?:repeat|redo)(?= (?:it|that|please|pls)\b|$)|\b(?:the|my|our) usual\b|\b(?:same|another|one more|it) again\b"
    r"|\bsame (?:one|thing|recipe|batch|plan|cut|piece|all over|(?:pork |beef )?\w+) again\b"
    r"|^(?:(?:the )?next (?:one|time|batch) )?(?:the |is )*same(?: one| thing| again)*(?=,? (?:but|just|only"
    r"|for|with|this time)\b)"
    r"|^(?:(?:lets|please|ok|can we|we|do|make|start|want|i|id|like|to|have|gonna) )*(?:another(?= )"
    r"|one more(?= )|again(?=,? ))"
    r"|(?<=\w)(?<!back)(?<!here)(?<!there)(?<!home) again(?= for\b|$)"
)
_SMALL: Final = words(
    """
    same like last time before repeat redo copy usual another previous always week month year one ones batch cook
    recipe plan lets want wanna can gonna going this that please pls now next exactly size half again use used side
    sliced slicing hot cold thin bone skin dry wet frozen thawed
    """
)
_TOLD: Final = re.compile(
    r"\b(?:flipped|turned|forgot|missed|happened|read|reads|fridge|pit|core|hour|hr|min|mins|minutes?|day|flip)\b"
)
_UNITS: Final = re.compile(r"[^\d]*\b(?:celsius|fahrenheit|metric|imperial|kilos|pounds|inches) again\b")
_ASKS: Final = re.compile(r"(?:how|what|why|when|where|is|are|does|did|do (?:i|we)|should|can i|could i|may i)\b")


def read_again(text: str, context: Context) -> Start | None:
    """A start that is as the last one was but for what is said: its meat, its weight, its meal.

    Beside a batch only with a weight or a meal, since «again» may be said of a step there; a question is none.
    """
    found = _AGAIN.search(text)
    if found is None or text.endswith("?") or _ASKS.match(text) or _UNITS.match(text):
        return None
    rest = _AGAIN.sub(" ", text)
    bare = without_times(without(_blank(rest)))
    if _TOLD.search(bare) or any(word not in _SMALL for word in content(bare)):
        return None
    afresh = replace(context, phase="none", deadline=None, asked=None)
    more = " ".join(word for word in rest.replace(",", " ").split() if word not in ("but", "again", "size"))
    start = read_start(f"start {more}", afresh) or Start()
    named = {"product", "cut"} & start.said.keys() or meat(text)
    tells = {"mass", "deadline"} & start.said.keys() or start.unclear
    another = bool(named) and bool(re.search(r"\b(?:another|one more|a new)\b", text))  # of a step none would say so
    if not (tells or another) and (context.phase != "none" or not context.free):
        return None
    if found[0].endswith("another") and not named:
        return None  # «another one» of what
    return replace(start, assumed=(*start.assumed, LIKE_LAST))


def _blank(text: str) -> str:
    for one in reversed(measures.find(text)):
        text = f"{text[: one.start]} {text[one.end :]}"
    return text
