"""A deed that was told and is now denied: «didnt flip actually», «i said lit but it isnt», «no spritz today».

What was noted is taken back by its kind; where nothing of the kind was noted it is missed, or still to come.
"""

from typing import Final

from bot.intents.context import SHOWN, Context
from bot.intents.intents import Intent, Unclear, Undo
from bot.intents.small import ASKS, IF
from core import patterns as re
from core.plan.steps import Kind

_DENIES: Final = re.compile(
    r"\b(?:didnt|did not|havent|hasnt|hadnt|have not|has not|had not|never|isnt|wasnt|werent|not|a lie)\b"
)
_TAKES_BACK: Final = re.compile(
    r"\b(?:actually|after all|turns out|i lied|a lie|(?:i|we) said|my mistake|my bad|i was wrong|scratch that)\b"
    r"|\bwrong (?:button|tap|key|one)\b|\bby (?:mistake|accident)\b|\b(?:pressed|hit|tapped) (?:it|done|the wrong)\b"
    r"|\b(?:says?|said|told me|admits?|admitted) (?:he|she|they|it|that)\b"
    r"|^(?:(?:oh|ah) )?(?:no|wait|sorry|oops|hang on)[, ]"
)
_DO_IT: Final = re.compile(
    r"\b(?:didnt|havent|did not|have not|never) (?:do|done|did) (?:it|that)\b"
)  # what is done daily
_NOT_THEN: Final = re.compile(  # «last night, not this morning»: another hour, and no deed denied
    r"\bnot (?:on |until |till |at )?(?:this|last|yesterday|today|tonight|mon|tue|wed|thu|fri|sat|sun|\d)"
)
_IT_IS_NOT: Final = r"\b(?:meat|it|flat|brisket|they) ?(?:is|was|s)?(?:nt| not)"
_PUT: Final = r"\b(?:put|went|go|gone) (?:it |the meat )?"
_KINDS: Final = tuple(
    (kind, re.compile(words))
    for kind, words in (
        (Kind.FLIP, r"\b(?:flip(?:ped)?|turn(?:ed)?)\b"),
        (Kind.RINSE, r"\brins(?:e|ed)\b"),
        (Kind.SOAK, r"\bsoak(?:ed)?\b"),
        (Kind.DRY, r"\bdried\b|\b(?:nt|not|never) (?:pat it |let it )?dry\b|nt dry\b"),
        (Kind.RUB, r"\brub(?:bed)?\b"),
        (Kind.LIGHT, r"\b(?:lit|light|lighted)\b"),
        (Kind.WRAP, r"\bwrap(?:ped)?\b"),
        (Kind.MEAT_ON, rf"{_IT_IS_NOT} on\b(?! the)|{_PUT}on\b"),
        (Kind.INTO_CURE, rf"{_IT_IS_NOT} in\b(?! the (?!cure|brine|bag))|{_PUT}in\b"),
        (Kind.OFF, rf"{_IT_IS_NOT} off\b|\b(?:take|taken|took|pull|pulled|come) (?:it |the meat )?off\b"),
        (Kind.CHILL, r"\b(?:in|into) (?:the |an )?ice\b"),
    )
)
_STAND_FOR_MUCH: Final = (Kind.INTO_CURE, Kind.LIGHT, Kind.MEAT_ON, Kind.OFF, Kind.CHILL)  # hours are counted from it
_EXTRAS: Final = r"(?:spritz\w*|mop(?:s|ping|ped)?|bast(?:e|ed|ing)|(?P<stuffed>stuff(?:ed|ing)))\b"
_WITHOUT: Final = re.compile(
    r"^(?:(?:im|i am|we are|were|i|we|id|just|ok|so|sorry|ive|gonna|going to|will|ill|then|rather|lets) )*"
    r"(?:not (?:gonna |going to |doing )?|no |(?:skip|leav|forget|drop|ditch)(?:p?(?:ing|ed)|e)?(?: out| on)? |without "
    r"|didnt |havent |wont |(?:cant|couldnt) be |giv(?:e|ing) )"
    rf"(?:bother(?:ing|ed)? (?:with |to )?)?(?:be )?(?:the |a |any )?(?:more )?{_EXTRAS}"
)


def read_undone(text: str, context: Context) -> Intent | None:
    """A deed taken back by its kind, or what is left out and is no step; None where a line says neither."""
    if ASKS.search(text) or IF.search(text):
        return None
    if extra := _WITHOUT.match(text):
        return Unclear("stuffing" if extra["stuffed"] else "extra_left_out", text[:SHOWN])
    if (
        context.phase == "none"
        or not (_DENIES.search(text) and _TAKES_BACK.search(text))
        or _NOT_THEN.search(text)
        or re.search(r"\d", text)
    ):
        return None
    kinds = [kind for kind, words in _KINDS if words.search(text)]
    if not kinds and context.phase == "curing" and _DO_IT.search(text):
        kinds = [Kind.FLIP]
    if len(kinds) != 1 or (context.due_step or "").startswith(str(kinds[0])):
        return None  # of what is called for now: not yet, and none that was done before
    back = Undo(step=str(kinds[0]))
    return Unclear("taken_back", text[:SHOWN], (back,)) if kinds[0] in _STAND_FOR_MUCH else back
