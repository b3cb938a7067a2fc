"""Days more in the cure than planned, «leave it in 2 more days»."""

from typing import Final

from bot.intents.context import RAW, Context
from bot.intents.intents import Change
from core import patterns as re

_MORE_DAYS: Final = re.compile(
    r"\b(?P<n>an?|one|\d{1,2}(?:\.\d)?) (?:(?:more|extra|further|additional) days?|days? (?:more|longer|extra))\b"
    r"|\b(?:another|extra|add|an extra) (?P<m>an?|one|\d{1,2}(?:\.\d)?)? ?days?\b"
)
_IN_THE_CURE: Final = re.compile(
    r"\b(?:leav(?:e|ing)|keep(?:ing)?|giv(?:e|ing)|let(?:ting)?|stay(?:s|ing)?) (?:it|them|the (?:meat|bag|piece))?"
    r"|\b(?:to|in|of|for) (?:the )?(?:cure|brine|bag|curing|tub)\b|\bcur(?:e|ing) (?:it|for)\b"
)
_IF_IT_MAY: Final = re.compile(  # asked whether it does harm, and nothing wanted
    r"\b(?:ok|okay|fine|alright|bad|safe|a problem) (?:if|when)\b"
    r"|\b(?:does|would|will) (?:it|that|an? \w+ day) (?:hurt|matter)\b"
    r"|\b(?:can|could|may) (?:it|they|the (?:meat|bag|piece)) (?:sit|stay|lie|wait)\b"
)


def more_days(text: str, context: Context) -> Change | None:
    """«leave it in 2 more days»: longer in the cure than planned."""
    told = context.phase in RAW and _IN_THE_CURE.search(text) and not _IF_IT_MAY.search(text)
    found = _MORE_DAYS.search(text) if told else None
    if found is None:
        return None
    many = found["n"] or found["m"] or "1"
    return Change({"cure_days_more": float(many) if many[0].isdigit() else 1.0})
