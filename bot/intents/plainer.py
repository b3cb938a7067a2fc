"""How people talk into a phone, as they would have written it: «hey so i flipped it b4 work lol» is «flipped it».

Each rule takes one kind of thing out of the way of the readers or writes it as they know it: greetings and asides,
shorthand, split hours and weights, a half that is spelled apart, a clause that says only when or why. Nothing here
makes or drops a number that a reader would have taken for a temperature or a dose.
"""

import unicodedata
from typing import Final

from bot.intents.loosely import LOOSE_RULES
from bot.intents.plainer_rules import DEED, RULES, TOLD
from bot.intents.rephrased import REPHRASED
from bot.intents.reworded import REWORDED
from core import patterns as re

_CHECKED: Final = "\u2705\u2714\u2611\U0001f44d\U0001f44c\U0001f197\U0001f4af"
_STEP_AND_CHECK: Final = re.compile(rf"^(?P<step>[^\W\d_][\w ]{{1,30}}?) ?[{_CHECKED}]\ufe0f?$")
_CHECK_BETWEEN: Final = re.compile(rf"(?<=\w)() ?[{_CHECKED}]\ufe0f? ?(?=\w)")
_CHECK_AT: Final = re.compile(rf"^ ?[{_CHECKED}][\ufe0f\U0001f3fb-\U0001f3ff]? ?(?=(?:[01]?\d|2[0-3])[.:][0-5]\d)")
_TOLD_DEED: Final = re.compile(rf"\b{DEED}\b")
_ASKS: Final = re.compile(r"\?|^(?:what|why|how|when|where|who|which|is|are|do|does|did|can|could|should|will|would)\b")


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
    return " ".join(_ALL.in_turn(text, _put).split())


_ALL: Final = re.Rules((*RULES, *LOOSE_RULES, *REPHRASED, *REWORDED))


def _put(text: str, pattern: re.Pattern, written: str) -> str:
    if written != TOLD:
        return pattern.sub(written, text)
    return pattern.sub("", text) if _TOLD_DEED.search(text) and not _ASKS.search(text) else text


def _is_picture(sign: str) -> bool:
    return sign > "\u00bf" and unicodedata.category(sign) in ("So", "Sk", "Cn")
