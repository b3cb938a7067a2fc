"""A temperature that nobody read: «core is probably 165», «i think the fridge is 38», «didnt check but 38».

It is asked whether it was read; the tap says so, and a guess is not kept.
"""

from typing import Final

from bot.intents.context import SHOWN, Context
from bot.intents.intents import Correct, Intent, Reading, Unclear
from core import patterns as re
from core.batch.events import Probe

_UNREAD: Final = re.compile(  # of the whole line
    r"\b(?:no|without (?:an?|the|my)|lost (?:the|my)|(?:dont|do not) have an?) thermometer\b"
    r"|\b(?:didnt|did not|havent|have not|not|couldnt|cant) (?:actually |really )?(?:check|measure|read|look|probe"
    r"|test)\w*\b|\bby (?:feel|guess|now)\b"
)
_GUESS: Final = re.compile(  # of the part that holds the number
    r"\b(?:probably|prob(?:s|ly)?|maybe|perhaps|presumably|i (?:think|guess|reckon|suppose|assume|bet|imagine)"
    r"|id (?:say|guess)|guess(?:ing|ed)?|my guess|feels? (?:like|about)|(?:must|should|ought to)"
    r" (?:have (?:been|hit) |be )|usually|normally|most likely|if i had to)\b"
)
_PARTS: Final = re.compile(r"[,;]| (?:and|but) (?!maybe|probably|i )")
_NUMBER: Final = re.compile(r"(?<![\w.])-?\d{1,3}(?:\.\d+)?")


def guessed(intent: Intent, text: str, context: Context) -> Intent:
    """The intent; of a temperature that was guessed, the question whether it was read."""
    unread, parts = _UNREAD.search(text), _PARTS.split(text)
    values = {float(n) for part in parts if unread or _GUESS.search(part) for n in _NUMBER.findall(part)}
    match intent:
        case Reading(temperatures=told) if any(t.value in values and t.probe is not Probe.PIT for t in told):
            return Unclear("guessed", text[:SHOWN], (intent,))
        case Correct(value=value, probe=probe) if value in values and probe is not Probe.PIT and "by now" in text:
            return Unclear("guessed", text[:SHOWN])
        case _:
            return intent
