"""«what if i use a kettle»: what another cooker would make of the hours, asked and not told."""

from typing import Final

from bot.intents.context import FALLING, Context
from bot.intents.fields import stated
from bot.intents.intents import Ask, Question
from core import patterns as re

SUPPOSED: Final = re.compile(
    r"\b(?:what if|what about|how about|suppose|what would|what happens if|would (?:it|that) be|would an?"
    r"|was wäre|was wenn|wie wäre|was ist (?:mit|wenn))\b"
    r"|\b(?:should|could|can|shall) (?:i|we)\b|^if (?:i|we)\b"
)


_BEFOREHAND: Final = re.compile(  # «text me an hour before the rinse» puts nothing off that is due now
    r"\b(?:text|ping|remind|call|tell|warn|wake|message|alert|nudge|heads up)\b.*\bbefore (?!\d).*"
    r"\b(?:rins\w*|light\w*|fire|slic\w*|chill\w*|wrap\w*|flip\w*|comes? out|out of|goes? on|cut|dinner|lunch|meal"
    r"|eat)\b"
    r"|^(?:please |pls |can you |could you )*(?:text|ping|remind|call|tell|warn|wake|message|alert|nudge)(?: me| us)?"
    r"(?: (?:about it|for everything|always|please))* (?:an?|half an?|\d{1,3}) ?(?:h|hr|hour|min)\w* (?:earlier"
    r"|sooner)\b"
)


_FINISHED_IN_IT: Final = re.compile(r"\bfinish\w*\b.*\boven\b")  # goes on in it: no other cooker for the whole
_REPEATED: Final = re.compile(  # «same again but less salty» tells nothing of the salt of this one
    r"^(?:(?:can|could|lets|we|i|do|make|want|the) )*same (?:again|thing again|(?:as|like) (?:last|this|that))\b"
    r"(?=\D+$)(?=.*\bsalt)"
)


_TO_COME: Final = re.compile(  # «once it is 165 what then», «165 by when»: a core that is not there yet
    r"^(?:(?:so|and|ok|but|right),? )*(?:once|when|as soon as|say|after)(?: (?:it|we|i|you|thats?|its|is|the \w+|sees?"
    r"|hits?|gets?|shows?|reads?|reaches|passes|at|to|says))+ \d{2,3}\b(?! ?(?:h|hrs?|hours?|min|days?)\b)"
    r"(?=.*\b(?:what|anything|something|then|do i|should i|is there)\b)"
    r"|\b(?:gets|reaches|comes|goes) (?:up |down )?(?:to )?\d{2,3}\b(?: ?[cf]\b)?,? (?:and )?(?:then )?what\b"
    r"|^(?:(?:so|and|ok) )*\d{2,3}(?: ?[cf])? (?:(?:by|roughly|about|at|is|around|comes?) )*when\W*$"
    r"|\b(?:how(?:s| is)? long|when|what time)\b.{0,24}\b(?:un)?till?(?: (?:it|its|is|we|are|hits|at|gets|to))*"
    r" \d{2,3}\b(?=.*\bfor the (?:foil|paper|wrap|fridge)\b)"
)


def is_to_come(text: str, context: Context) -> bool:
    """Whether what is to do at a core is asked, or when it is there: nothing is read of it."""
    return context.phase in ("cooking", *FALLING) and bool(_TO_COME.search(text))


def read_to_come(text: str, context: Context) -> Question | None:
    """A question for a core that is not there yet."""
    return Question(text) if is_to_come(text, context) else None


def read_repeated(text: str, context: Context) -> Ask | None:
    """Another one like this, with other salt."""
    return Ask("again", text=text) if context.phase != "none" and _REPEATED.search(text) else None


def read_beforehand(text: str, context: Context) -> Ask | None:
    """A wish to be called some time before a step."""
    return Ask("call_at", text=text) if context.phase != "none" and _BEFOREHAND.search(text) else None


def read_supposed(text: str, context: Context) -> Ask | None:
    """A question for the hours on another cooker, about the batch in hand."""
    if context.phase in ("none", "resting", "chilling", "stored") or not SUPPOSED.search(text):
        return None
    if _FINISHED_IN_IT.search(text):
        return None
    kind = stated(text).fields.get("cooker")
    return Ask("on_cooker", str(kind), text) if kind and set(stated(text).fields) == {"cooker"} else None
