"""A line that asks and tells in one breath: «flipped, what now?», «fridge 46, ok?», «4 c in the middle, done?»."""

import re
from typing import Final

from bot.intents import questions
from bot.intents.clause import clause, is_nothing
from bot.intents.clauses import merged
from bot.intents.context import SHOWN, Context
from bot.intents.intents import Ask, Greet, Intent, Question, Reading
from bot.intents.readings import read_reading

_TAIL_ASKS: Final = re.compile(
    r",? ?\b(?:(?:still )?(?:ok(?:ay)?|safe|right|normal|in time)\s*\?+|(?:(?:is|isnt) (?:that|it|this)|am i|are we)"
    r" (?:still )?(?:ok|okay|safe|alright|all right|fine|good|normal|bad|dangerous|in time|a problem"
    r"|too (?:warm|hot|high|low|cold|much))(?: for it)?\s*\?*)$"
)
_TAIL_DONE: Final = re.compile(
    r",? ?\b(?:is it |is that |are we |all )?(?:done|ready|finished|cooked|chilled|cold enough)(?: now| yet"
    r"| then)? ?\?+$"
)
IS_IT: Final = re.compile(r"(?:is|are|was|would|can|does) (?:an? )?\d")  # «is 149 safe to eat» was read nowhere
_MAY_I: Final = re.compile(r"\b(?:should|shall|can|could|may|must|do) (?:i|we)\b")
_ASKED_CLAUSE: Final = re.compile(r"[,;.!](?:\s|$)+|(?<=\?)\s+|\s+(?:and|then|so)\s+")


def read_asking(plain: str, shown: str, context: Context) -> list[Intent]:
    """A line that asks: «flipped, what now?» does and asks, «fridge 46, ok?» reads and asks whether it is safe."""
    if done := _TAIL_DONE.search(plain):
        read_before = read_reading(plain[: done.start()], context) if context.phase != "none" else None
        if read_before is not None:
            return [read_before, Ask("eta", text=shown[:SHOWN])]
    tail = _TAIL_ASKS.search(plain)
    told = plain[: tail.start()] if tail else plain.rstrip(" ?")
    asks = questions.is_question(told) or IS_IT.match(told)
    reading = read_reading(told, context) if context.phase != "none" and not asks else None
    if isinstance(reading, Reading):
        return [reading, Ask("safe", text=shown[:SHOWN])]
    out: list[Intent] = []
    for part in filter(None, (p.strip(" ,") for p in _ASKED_CLAUSE.split(plain))):
        found = questions.read_topic(part, context) or questions.read_plain(part, context)
        said = [found] if found else [] if questions.is_question(part) else clause(part, context)
        if not said or (any(map(is_nothing, said)) and not isinstance(said[0], Greet)):
            read_before = [i for i in out if isinstance(i, Reading)] if _MAY_I.search(part) else []
            return [*read_before, Question(part if read_before else shown)]
        out.extend(said)
    return merged(out) if any(isinstance(intent, Ask) for intent in out) else [Question(shown)]
