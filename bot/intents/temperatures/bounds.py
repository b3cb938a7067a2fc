"""A number that nobody read: a bound («core over 160», «under 40 now», «nearly 165»), or one that is to come.

Where the truth can only lie on the safe side of it, it counts as the number; else the number itself is asked for.
"""

from typing import Final

from bot.intents.context import SHOWN, Context
from bot.intents.intents import Intent, Reading, Temperature, Unclear
from core import patterns as re
from core.batch.events import Probe

_BOUND: Final = re.compile(
    r"\b(?:well |just |a (?:bit|hair|touch|tad|little|smidge|notch) |still |slightly )*(?:(?P<above>over|above"
    r"|past|beyond|more than|at least|higher than)"
    r"|(?P<below>under|below|less than|lower than|not quite|(?:just )?(?:shy|short) of)"
    r"|(?P<near>nearly|almost|close to|nearing|approaching|not far (?:off|from)|getting (?:close|near) to))"
    r"(?: about| around| at)? (?=-?\d{1,3}(?:\.\d)?(?: ?(?:°|degrees?|deg)? ?[cf]\b)?(?![\w:%.]|[ -]?(?:h|hrs?|hours?|m"
    r"|m?mins?|minutes?|days?|[ap]m|oclock|lbs?|kg|g|grams?|pounds?|ml|l|mm|in|inch\w*|people|guests|times)\b))"
)
_WISHED: Final = re.compile(
    r"\b(?:keep|target|until|till?|want|should|need|min|max|set|if|when|will|aim|always|never|wont|cant|must|stays?"
    r"|get(?: it)?|before|after|once|by|limit|rule|supposed|has to|have to|remind|tell|wake|call|ping"
    r"|not(?! quite))\b|\?$"
)
_COLD: Final = re.compile(r"\b(?:fridge|freezer|brine|pickle|room|kitchen|garage|outside)\b")
_CAME_OFF: Final = re.compile(r"\b(?:off|pulled|hit|reached|made it to|peaked|topped out|cooked)\b")
_PIT: Final = re.compile(r"\b(?:pit|grill|smoker|cooker|grate|dome|lid|chamber)\b")
_FORESEEN: Final = re.compile(
    r"\bin (?:about |another |under )?(?:an?|half an?|\d{1,3}) ?(?:h|hrs?|hours?|m?mins?|minutes?)$"
    r"|\bby (?:about )?\d{1,2}"
    r"(?:[:.]\d\d)?(?: ?[ap]m)?$"
)
_GOT_THERE: Final = re.compile(
    r"\b(?:still|stuck|stalled|was|were|hit|got|reached|went|took|down|up|fell|dropped|cooled|climbed|has"
    r"|had|made)\b"
)
_VALUE: Final = re.compile(r"-?\d{1,3}(?:\.\d)?")
_SEPARATOR: Final = re.compile(r"[,;]")
_HOT_PHASES: Final = ("cooking", "resting")  # there too warm is safe


def bounded(text: str, context: Context) -> tuple[str, bool]:
    """A plain line with the number in place of its bound, and whether the truth may lie on the unsafe side of it."""
    found = _BOUND.search(text)
    if found is None or _PIT.search(text) or _WISHED.search(text):
        return text, False
    return f"{text[: found.start()]}{text[found.end() :]}", _is_unsafe(found, text, context)


def not_read(intent: Intent, text: str, context: Context) -> Intent:
    """The intent; of a reading whose number is no more than a bound on the unsafe side, the question for it."""
    told = [t.value for t in readings_in(intent) if t.probe is not Probe.PIT]
    if not told:
        return intent
    loose = {float(_VALUE.match(text[f.end() :])[0]) for f in _BOUND.finditer(text) if _is_unsafe(f, text, context)}
    return intent if loose.isdisjoint(told) else Unclear("bound", text[:SHOWN])


def readings_in(intent: Intent) -> list[Temperature]:
    """What it reads, or may read where that is asked about."""
    ways = intent.options if isinstance(intent, Unclear) else (intent,)
    return [told for way in ways if isinstance(way, Reading) for told in way.temperatures]


def _is_unsafe(found: re.Match[str], text: str, context: Context) -> bool:
    before = _SEPARATOR.split(text[: found.start()])[-1]
    kept_cold = bool(_COLD.search(before))
    hot = not kept_cold and (context.phase in _HOT_PHASES or bool(_CAME_OFF.search(before)))
    above = bool(found["above"] or (found["near"] and not hot and not kept_cold))  # what cools comes down to it
    return above is not hot


def is_foreseen(text: str) -> bool:
    """Whether a number is to come, or tells how long it took: «40 in 3 hours»."""
    return bool(_FORESEEN.search(text)) and not _GOT_THERE.search(text)
