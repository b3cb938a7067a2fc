"""A line that asks and tells in one breath: «flipped, what now?», «fridge 46, ok?», «4 c in the middle, done?».

What was done and read is never lost over a question of the trade beside it: «flipped it, fridge 37. is cloudy ok?».
"""

from collections.abc import Callable
from typing import Final

from bot.intents import greetings, questions
from bot.intents.clause import clause, is_nothing
from bot.intents.context import SHOWN, Context
from bot.intents.intents import Ask, Greet, Intent, MoveDeadline, Question, Reading, StepDone
from bot.intents.merged import merged
from bot.intents.moves import read_move
from bot.intents.small import IS_IT
from bot.intents.supposed import is_to_come
from bot.intents.temperatures.readings import read_reading
from bot.intents.vague import read_vague
from core import patterns as re
from core.batch.events import Probe

_TAIL_ASKS: Final = re.compile(
    r",? ?\b(?:(?:(?:is )?(?:the |our |my )?(?:meat|food|brisket|batch|lot) )?(?:still )?"
    r"(?:ok(?:ay)?|safe|right|normal|in time|good|fine|alright|bad|(?:a )?problem"
    r"|(?:good|cold|cool|low) enough)\s*\?+"
    r"|(?P<worry>(?:do|should|must|need) (?:i|we) (?:need to |have to )?(?:worry|panic|be worried)\s*\?*"
    r"|(?:have|did) (?:i|we) (?:just )?(?:kill|ruin|wreck|spoil)(?:ed)? (?:it|them|the \w+)\s*\?*)"
    r"|(?:(?:is|isnt) (?:that|it|this|(?:the|our|my)"
    r" (?:meat|food|brisket|flat|ham|bacon|bird|fish|batch|lot|bag))|am i|are we)"
    r" (?:still )?(?:ok|okay|safe|alright|all right|fine|good|normal|slow|fast|bad|dangerous|in time|a problem"
    r"|too (?:warm|hot|high|low|cold|much))(?: for it)?\s*\?*)$"
)
_TAIL_DONE: Final = re.compile(
    r",? ?\b(?:is it |is that |are we |all )?(?:done|ready|finished|cooked|chilled|cold enough)(?: now| yet"
    r"| then)? ?\?+$"
)
_READ_LAST: Final = re.compile(
    r"^(?P<asked>(?:can|may|should|shall|do) (?:i|we) .+?),? (?:the |my )?(?P<read>(?:brine|fridge|core|pit|meat) "
    r"(?:is|reads|at|now|says|its)(?: at| now)? \d{1,3}(?:\.\d)?(?: ?[cf])?)\s*\?*$"
)
_READ_FIRST: Final = re.compile(  # «its 37 now can it go in»
    r"^(?P<read>(?:(?:its|it is|still|only|now|down|to|the|brine|fridge|core|meat|pit|is"
    r"|at) )*\d{1,3}(?:\.\d)?(?: ?[cf])?(?: now)?),?"
    r" (?P<asked>(?:(?:can|may|should|shall) (?:i|we|it|they|the meat) (?:put|go|come|take|be|get|start)"
    r"|how (?:much )?long(?:er)?|how much time|(?:is|are|am|will|does) (?:it|that|this|i|we|they) (?!\d))\b.*)$"
)
_BRINE_AT: Final = re.compile(
    r"^is (?:the |my |our )?brine (?:\w+ ){0,2}?(?:enough|ok|okay|fine|good|safe|right) (?:at|with|now) "
    r"(?P<at>\d{1,3}(?:\.\d)?(?: ?[cf])?)\s*\?*$"
)
_SUPPOSES: Final = re.compile(  # told of no deed of this batch
    r"\b(?:if|would|could have|suppose|say i|imagine|last (?:time|year|one)|always|usually|normally (?:i|we)|used to"
    r"|once|recipe|video|book|heard|read that|says to|friend|neighbou?r|forum)\b"
)
_WISH: Final = re.compile(
    r"^(?:and |so |ok )?(?:can|could|may) (?:we|i|you) (?:please )?(?:have|eat|do|make|move|push|serve)\b"
)
_AND: Final = re.compile(r"^(?:and|then|so|also) (?=\w)")
_ASKED_CLAUSE: Final = re.compile(r"[,;.!](?:\s|$)+|(?<=\?)\s+|\s+(?:and|then|so)\s+")


_A_SPAN: Final = re.compile(  # «nine hours on the smoker, what takes it so long» puts nothing on it
    r"^\d+(?:\.\d)? ?(?:h|hrs?|hours?) (?:on|in|over) the (?:smoker|grill|fire|pit|coals|heat|barbecue|bbq)$"
)
_A_RULE: Final = re.compile(  # «165 for chicken right?», «158 the right temp?»
    r"\d(?: ?°?[cf])? (?:for (?:an? )?\w+(?:,? right| correct)?|the (?:right|magic|target|safe) \w+)\W*$"
)


def read_asking(plain: str, shown: str, context: Context) -> list[Intent]:
    """A line that asks: «flipped, what now?» does and asks, «fridge 46, ok?» reads and asks whether it is safe."""
    if done := _TAIL_DONE.search(plain):
        read_before = read_reading(plain[: done.start()], context) if context.phase != "none" else None
        if read_before is not None:
            return [read_before, Ask("eta", text=shown[:SHOWN])]
    if beside := _read_last(plain, context):
        return beside
    tail = None if _A_RULE.search(plain) else _TAIL_ASKS.search(plain)
    told = plain[: tail.start()].rstrip(" ?") if tail else plain.rstrip(" ?")
    asks = questions.is_question(told) or IS_IT.match(told) or _A_RULE.search(plain)
    reading = read_reading(told, context) if context.phase != "none" and not asks else None
    if isinstance(reading, Reading):
        of_the_fire = all(one.probe is Probe.PIT for one in reading.temperatures)  # what is to do is said with it
        asked = [] if tail and tail["worry"] and of_the_fire else [Ask("safe", text=shown[:SHOWN])]
        return [reading, *asked]
    parts = [part for part in (_AND.sub("", p.strip(" ,")) for p in _ASKED_CLAUSE.split(plain)) if part]
    said = [_said_or_asked(part, context) for part in parts]
    if all(said):
        out = [intent for one in said for intent in one]
        return merged(out) if any(isinstance(intent, Ask | MoveDeadline) for intent in out) else [Question(shown)]
    found = _told_and_asked(parts, said, shown) if context.phase != "none" else []
    return found or [Question(shown)]


_READ_TO: Final = re.compile(r"(?<![\d.:/])\d{2,3}(?:\.\d)?(?: ?°?[cf])?(?![\w.:/%-])")
_NOT_READ: Final = re.compile(  # «165 for chicken right», «160 or 165»: a rule that is asked about, and no reading
    r"^ ?(?:for|is|are|was|or|to|then|as|means|max|min\w*|per|more|not|h|hrs?|hours?|people|guests|of|kg|lbs?|g"
    r"|degrees?|days?|pit|smoker|grill|fire"
    r"|(?:the|an?) (?:number|right|temp\w*|target|mark|magic|goal|rule|limit|minimum|safe)\w*)\b"
    r"|^ ?[-+*/%?]|\b(?:right|correct)\W*$|\b(?:different|apart|difference|boiling|ice ?water)\b"
)


_TO_COME: Final = re.compile(r"^(?:at|bei|ab|from|above|after|until|till?|once|when|if|by|over|under)\b")


def read_before(plain: str, found: list[Intent], context: Context, read: Callable[[str], list[Intent]]) -> list[Intent]:
    """«160 everyone is here can i serve»: the core read before what else was `found`; nothing where none is sure.

    A core that nobody read would clear a bird: a bare number counts only while the rest speaks of now.
    """
    unread = all(isinstance(one, Question | MoveDeadline) or is_nothing(one) for one in found)
    if context.phase != "cooking" or not unread or is_to_come(plain, context):
        return []
    for number in reversed(list(_READ_TO.finditer(plain))):
        told, rest = plain[: number.end()], plain[number.end() :].strip(" ,;.")
        reading = None if IS_IT.match(told) or _TO_COME.match(told) else read_reading(told, context)
        if not rest or not isinstance(reading, Reading) or any(t.probe is not Probe.CORE for t in reading.temperatures):
            continue
        return [] if _NOT_READ.search(plain[number.end() :]) or _SUPPOSES.search(plain) else [reading, *read(rest)]
    return []


def _read_last(plain: str, context: Context) -> list[Intent]:
    """«can i put it in now brine is 39», «is the brine cold enough at 44»: what was read says what may be done."""
    found = _READ_LAST.match(plain) or _BRINE_AT.match(plain) or _READ_FIRST.match(plain)
    if found is None or context.phase == "none":
        return []
    reading = read_reading(found.groupdict().get("read") or f"brine {found['at']}", context)
    if not isinstance(reading, Reading):
        return []
    asked = (found.groupdict().get("asked") or "").rstrip(" ?")
    topic = questions.read_topic(asked, context) if asked else None
    return merged([reading, topic]) if topic else [reading]


def _said_or_asked(part: str, context: Context) -> list[Intent]:
    """What a clause of a line that asks says or asks of the batch; empty where that is a question of the trade."""
    if context.phase == "drying" and _A_SPAN.match(part):
        return []
    found = _wished(part, context) or questions.read_topic(part, context) or greetings.read_plain(part, context)
    found = found or read_vague(part, context)
    said = [found] if found else [] if questions.is_question(part) else clause(part, context)
    nothing = any(map(is_nothing, said)) and not isinstance(said[0], Greet)
    return [] if nothing else said


def _wished(part: str, context: Context) -> Intent | None:
    """«can we have it saturday at 1, and use foil»: the meal at another hour is wished for, beside something else."""
    wish = _WISH.match(part) and ("instead" in part or not questions.NO_MOVE.search(part))
    found = read_move(part, context) if wish else None
    return found if isinstance(found, MoveDeadline) else None


def _told_and_asked(parts: list[str], said: list[list[Intent]], shown: str) -> list[Intent]:
    """The deeds and readings before a question of the trade, and that; nothing where a figure before is unclear."""
    asked = next((n for n, one in enumerate(said) if not one and questions.is_question(parts[n])), len(parts))
    told = [n for n in range(asked) if said[n] and all(isinstance(i, StepDone | Reading) for i in said[n])]
    if not told or told[-1] + 1 == len(parts) or _SUPPOSES.search(" ".join(parts)):
        return []
    if any(re.search(r"\d", part) for part, one in zip(parts[: told[-1]], said, strict=False) if not one):
        return []
    rest = _as_typed(shown, len(parts), told[-1] + 1)
    return merged([*(intent for n in told for intent in said[n]), Question(rest)])


def _as_typed(shown: str, parts: int, first: int) -> str:
    """The clauses from one on in the person's own words; the whole line where these are cut in other places."""
    cuts = [found for found in _ASKED_CLAUSE.finditer(shown) if shown[found.end() :].strip(" ,.!?")]
    return shown[cuts[first - 1].end() :] if len(cuts) == parts - 1 else shown
