"""A start that tells of meat in its cure already: since when is no meal, and the plan must call for no second dose."""

from typing import Final

from bot.intents.days import WEEKDAY
from core import patterns as re

_CURE: Final = r"(?:(?:the|its|a|my|dry|wet|salt) )*(?:bag|brine|cure|tub|bucket|salt)"
_WEEKDAY: Final = rf"(?:last )?{WEEKDAY}(?: (?:night|evening|morning|noon|at \d+))?"
_GONE: Final = r"yesterday(?: (?:night|evening|morning|noon|afternoon))?|last night|this morning"
_IN: Final = re.compile(
    rf"\b(?:in {_CURE}|curing|brining)\b.{{0,24}}\b(?:since|already)\b"
    rf"|\b(?:already|been) (?:in {_CURE}|curing|brining)\b"
)
_WENT_IN: Final = re.compile(
    rf"(?P<it>\b(?:went|gone|was put|been put)\b(?: \w+)? (?:in|into) {_CURE}) (?:on |at )?(?:{_WEEKDAY}|{_GONE})\b"
    rf"|(?P<put>\bput\b.{{0,40}} (?:in|into) {_CURE}) (?:{_GONE})\b"
)
_SINCE: Final = re.compile(rf"\bsince (?:{_WEEKDAY}|{_GONE})\b")


def already_in(text: str) -> bool:
    """Whether the meat that is told of lies in its cure."""
    return bool(_IN.search(text) or _WENT_IN.search(text))


def without_since(text: str) -> str:
    """The text without the time since when it lies there."""
    went = _WENT_IN.search(text)
    return _SINCE.sub(" ", text.replace(went[0], went["it"] or went["put"]) if went else text)
