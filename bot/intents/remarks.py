"""Remarks that leave out the one thing that decides: which salt, what went in and where, pink by which core.

Each is met with its own question; nothing is noted.
"""

from typing import Final

from bot.intents.context import SHOWN, Context
from bot.intents.intents import Ask, Greet, Intent, StepDone, Unclear
from bot.intents.of_the_answer import of_the_answer
from core import patterns as re
from core.plan.steps import Kind

_ICED: Final = re.compile(
    r"(?:(?:ok|yes|right|good|its|it is|the brine is|brine|put it|set it|standing|sitting|its got|in|on|into) )*"
    r"(?:an? |the )?(?:ice ?(?:bath|water)?|ice cubes|sink of ice|sink with ice)"
    r"(?: (?:then|now|it is|going|on|round it|under it))*"
)
_WHY_WAIT: Final = re.compile(
    r"why (?:do|must|should|cant|can not|does|do i have) (?:\w+ ){0,3}(?:wait|cool\w*|go in|be cold|chill\w*)\b[^\d]*"
)
_STILL_WARM: Final = re.compile(  # no fridge and no meat: what cools is the brine
    r"(?:(?:its|it is|the|brine|is|are) )*(?:still|too|not) (?:(?:too|a bit|pretty|quite|very) )*(?:warm|hot|cold|cool)"
    r"(?: enough)?(?: yet| still)?"
)
_HOT: Final = ("cooking", "resting", "chilling")
_RAW: Final = ("waiting", "curing")
_SO: Final = (
    r"(?:(?:a|bit|a bit|little|kinda|kind of|sort of|slightly|rather|quite|very|really|so|too|still|all|is|looks?) )*"
)
_THE_MEAT: Final = r"(?:(?:it|its|it is|that|thats|the|meat|flat|piece|middle|juice|slice) )*"
_PLACE: Final = r"(?: (?:inside|in there|within|still|(?:in|at|near|round|by) the \w+))*"
_WE: Final = r"^(?:(?:oops|i|we|ive|just|think|may have|might have|sorry|oh|ok|now|so) )*"
_ASKED: Final = (
    ("pink", _HOT, re.compile(rf"^{_THE_MEAT}{_SO}(?:pink|red|bloody|rosy)(?:ish)?{_PLACE}$")),
    (
        "other_salt",
        _RAW,
        re.compile(
            rf"{_WE}(?:used|took|grabbed|put in|added|weighed)(?: out)?(?: the| some| a)? "
            r"(?:other|different|new|second) (?:salt|cure|packet|bag|box|jar)"
            r"(?: (?:instead|by mistake|this time|today|in))*$"
        ),
    ),
    (
        "forgot_extra",
        _RAW,
        re.compile(
            rf"{_WE}(?:forgot|left out|missed|didnt (?:add|put in))(?: to add| to put in| about| adding)?"
            r"(?: the| any| my)? (?:sugar|pepper(?:corns)?|spices?|garlic|bay(?: leaves)?|coriander|mustard|honey|syrup"
            r"|herbs|juniper|thyme)$"
        ),
    ),
    (  # how far off it is, and no pit
        "number",
        ("cooking",),
        re.compile(
            r"^(?:the )?(?:pit|smoker|grill)s?[^\d]{0,12}\b[1-5]?\d(?: ?(?:degrees|deg|°|[cf]))?,?"
            r" (?:too (?:low|high|hot|cold|cool)|under|over|below|above|off|short|low|high)$"
        ),
    ),
    (
        "soaking",
        ("curing",),
        re.compile(
            rf"^{_THE_MEAT}(?:(?:im|i am|we are|now|just|put|started) )*soaking(?: (?:it|them|the meat))?"
            r"(?: (?:now|in (?:the |cold |fresh )*(?:water|fridge|sink)))*$"
        ),
    ),
    (
        "swapped",
        (*_HOT, *_RAW),
        re.compile(
            r"^(?=.*\b(?:(?:other|wrong) way (?:a?round|about)|mixed up|swap(?:ped)?|switched|reversed?|confused"
            r"|back to front)\b)(?:(?:sorry|oops|no|wait|ah|its|it|is|that|was|thats|i|we|ive|the|my|had|have|got|mixed"
            r"|up|swap(?:ped)?|switched|reversed?|confused|back|to|front|those|them|these|are|were|two|both|think"
            r"|probes?|thermometers?|numbers|readings|temps|they|other|wrong|way|a?round|about|over|core|pit|and|meat)"
            r"\b[, ]*)+$"
        ),
    ),
    (
        "no_readings",
        _HOT,
        re.compile(
            r"^(?=.*\b(?:stop|quit|dont|do not|no more|enough)\b)"
            r"(?=.*\b(?:ask|remind|ping|call|nag|bug|text|messag|want|no more)\w*\b)"
            r"(?=.*\b(?:readings?|temps?|temperatures?|numbers|core|pit)\b)"
            r"(?:(?:please|pls|can|you|ok|stop|quit|dont|do|not|no|more|enough|keep|me|us|for|about|to|read|check|with"
            r"|all|the|any|anymore|so|many|often|time|these|now|(?:ask|remind|ping|call|nag|bug|text|messag|want)\w*"
            r"|readings?|temps?|temperatures?|numbers|core|pit)\b ?)+$"
        ),
    ),
    (
        "put_in",
        ("drying", *_HOT, "stored"),
        re.compile(
            rf"{_WE}(?:put|got|stuck|popped|chucked) (?:it|them|that|the meat) in(?: now| already)?$"
            r"|^(?:its|they are|meats?|it is|meat is) in(?: now| already)?$"
        ),
    ),
)


def read_remark(text: str, context: Context) -> Intent | None:
    """The question that such a remark has to be met with, where nothing was asked; None for any other line."""
    bare = text.strip(" .!")
    if context.brine_made and context.free and (cools := _of_a_warm_brine(bare)):
        return cools
    if context.asked == "answered" and of_the_answer(bare):
        return None
    if not context.free or len(bare) > SHOWN:
        return None
    why = next((why for why, phases, words in _ASKED if context.phase in phases and words.match(bare)), None)
    if why == "put_in" and (context.due_step or context.soon_step or "").startswith(Kind.MEAT_ON):
        return StepDone(str(Kind.MEAT_ON))  # called for, or all but: it is what the fire waits for
    return Unclear(why, bare, (StepDone(str(Kind.OUT)),) if why == "soaking" else ()) if why else None


def _of_a_warm_brine(text: str) -> Intent | None:
    """While a brine cools, an ice bath is the brine's, and what is waited for is its cold."""
    if _ICED.fullmatch(text):
        return Greet("nod")
    return Ask("why_cold", text=text) if _WHY_WAIT.fullmatch(text) or _STILL_WARM.fullmatch(text) else None
