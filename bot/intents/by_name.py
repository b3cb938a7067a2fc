"""Batches by their names: «the second flat», «the other flat», and what a name alone asks for."""

from collections.abc import Sequence
from typing import Final

from bot.intents.context import Context
from bot.intents.intents import Ask
from core import patterns as re

_ORDINALS: Final = ("first|1st", "second|2nd", "third|3rd", "fourth|4th")
_SPOKEN: Final = ("one", "two", "three", "four")
_NUMBERED: Final = re.compile(r"(?P<base>.+) (?P<number>[2-9])")
_NO_FIGURE: Final = r"(?![.,:]?\d| ?(?:kg|g|kilos?|lbs?|pounds?|oz|c|f|%|°|mm|cm|in|inch|inches|h|hours?|min|days?)\b)"
_TOO: Final = re.compile(r"\b(?:same|ditto|likewise|dasselbe|too|also|as well)\b")
_ADDS: Final = (
    r"(?:(?:and|the|same|ditto|likewise|dasselbe|also|for|with|goes) )*(?:the )?{name}(?: (?:too|also|as well|got it))*"
)
_OPENS: Final = r"(?:(?:so|and|hey|ok|now|but) )*"
_SAYS: Final = (
    (
        "now",
        r"(?:(?:hows|how is|how are|whats up with|what about|how about|how is it going with|hows it going with"
        r"|where are we with|where is|wheres|any news (?:on|of|about)|news (?:on|of|about)|update on|show(?: me)?"
        r"|check(?: on)?|status of|state of) )?(?:the |my |our )?{name}(?: (?:doing|going|coming along|getting on"
        r"|looking|now|today|at|so far))*",
    ),
    ("plan", r"(?:(?:show|give) me )?(?:the |my )?(?:plan|timetable|schedule|timeline) (?:for|of) (?:the |my )?{name}"),
    ("eta", r"when(?:s| is| will| are) (?:the |my )?{name} (?:going to )?(?:be )?(?:ready|done|finished)"
            r"|(?:is|are) (?:the |my )?{name} (?:done|ready|finished|cooked)(?: yet| now)?"),
)  # fmt: skip


def by_number(text: str, names: Sequence[str], in_hand: str = "") -> str:
    """A plain line with «the first flat», «flat one», «the second flat», «the other flat» by the batches' own names."""
    for base, those in _series(names).items():
        for place, name in enumerate(those):
            number = place + 1
            text = re.sub(rf"\b(?:the )?(?:{_ORDINALS[place]}) {re.escape(base)}\b", name, text)
            spoken = rf"\b{re.escape(base)} (?:(?:number|no|nr) ?)?#?(?:{number}|{_SPOKEN[place]})\b{_NO_FIGURE}"
            text = re.sub(spoken, name, text)
        if len(those) == 2 and in_hand in those:
            other = those[1 - those.index(in_hand)]
            text = re.sub(rf"\b(?:the )?other {re.escape(base)}\b", other, text)
    return text


def added(text: str, context: Context) -> str | None:
    """The batch that a plain line adds to what was said before: «the bacon too», «same for flat 2»; it says no more."""
    bare = text.strip(" ?.!")
    if not _TOO.search(bare):
        return None
    fits = (
        key for key, name in context.batches if re.fullmatch(_ADDS.replace("{name}", re.escape(name.lower())), bare)
    )
    return next(fits, None)


def read_named(text: str, context: Context) -> Ask | None:
    """«how's the bacon doing», «plan for bacon»: of the batch that is called so, and the start of no other."""
    bare = text.strip(" ?.!")
    for key, name in context.batches:
        if name.lower() not in bare or (not context.free and bare.removeprefix("the ") == name.lower()):
            continue  # a name alone is the answer to what was asked
        for topic, words in _SAYS:
            if re.fullmatch(_OPENS + words.replace("{name}", re.escape(name.lower())), bare):
                return Ask(topic, text=text, batch=key)
    return None


def _series(names: Sequence[str]) -> dict[str, list[str]]:
    """The names of those that are told apart by a number alone: «flat» and «flat 2»."""
    lower = [name.lower() for name in names]
    bases = [found["base"] for name in lower if (found := _NUMBERED.fullmatch(name)) and found["base"] in lower]
    return {
        base: [base, *sorted(name for name in lower if re.fullmatch(rf"{re.escape(base)} [2-4]", name))]
        for base in bases
    }
