"""A line in the words that the readers know: «hey so i flipped it b4 work lol» is «flipped it»."""

import unicodedata
from typing import Final

from bot.intents.rewriting import (
    at_work,
    calls,
    chatty,
    courtesies,
    deeds,
    eaters,
    fires,
    free_deeds,
    free_wishes,
    hours,
    in_passing,
    kitchen_talk,
    meals,
    mishaps,
    shorthand,
    sizes,
    thermometers,
    wishes,
    yard_talk,
)
from bot.intents.rewriting.words import DEED, TOLD
from bot.intents.small import ASKS
from core import patterns as re

_CHECKED: Final = "\u2705\u2714\u2611\U0001f44d\U0001f44c\U0001f197\U0001f4af"
_STEP_AND_CHECK: Final = re.compile(rf"^(?P<step>[^\W\d_][\w ]{{1,30}}?) ?[{_CHECKED}]\ufe0f?$")
_CHECK_BETWEEN: Final = re.compile(rf"(?<=\w)() ?[{_CHECKED}]\ufe0f? ?(?=\w)")
_CHECK_AT: Final = re.compile(rf"^ ?[{_CHECKED}][\ufe0f\U0001f3fb-\U0001f3ff]? ?(?=(?:[01]?\d|2[0-3])[.:][0-5]\d)")
_TOLD_DEED: Final = re.compile(rf"\b{DEED}\b")


def unsigned(text: str) -> str:
    """A line without its pictures; a picture of a check after a few words says that they are done."""
    if text.isascii():
        return text
    checked = _STEP_AND_CHECK.match(text.strip())
    if checked:
        text = f"{checked['step']} done" if len(checked["step"].split()) <= 2 else checked["step"]
    text = _CHECK_AT.sub("done at ", text)
    text = _CHECK_BETWEEN.sub(r"\1, ", text)
    return "".join(" " if _is_picture(sign) else sign for sign in text)


def plainer(text: str) -> str:
    """A plain line with its asides gone and its shorthand written out; never empty where there was a word."""
    return " ".join(RULES.in_turn(text, _put).split())


_SUBJECTS: Final = (  # each sees what those before it wrote
    shorthand, in_passing, chatty, yard_talk, free_deeds, free_wishes, kitchen_talk, wishes, courtesies, at_work,
    eaters, hours, deeds, fires, mishaps, thermometers, sizes, meals, calls,
)  # fmt: skip
RULES: Final = re.Rules(rule for subject in _SUBJECTS for rule in subject.RULES)


def _put(text: str, pattern: re.Pattern, written: str) -> str:
    if written != TOLD:
        return pattern.sub(written, text)
    return pattern.sub("", text) if _TOLD_DEED.search(text) and not ASKS.search(text) else text


def _is_picture(sign: str) -> bool:
    return sign > "\u00bf" and unicodedata.category(sign) in ("So", "Sk", "Cn")
