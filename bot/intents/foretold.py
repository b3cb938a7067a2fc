"""What is planned beside the fire or instead of the chill, and what else lies there: told, and not done.

«gonna wrap at 165 in paper», «forget chilling, were eating it now», «put chicken thighs on too».
"""

from typing import Final

from bot.intents.context import FALLING, RAW, Context
from bot.intents.intents import Ask, Change, Intent, Unclear
from bot.intents.small import ASKS
from core import patterns as re

_WRAP: Final = re.compile(
    r"\bwrap(?:ping)?\b(?: (?:it|her|them|up|the \w+))*(?: in (?:the |butcher )*(?P<before>paper|foil))?"
    r"(?: (?:at|when it (?:hits|gets to|reaches|is at|is)|once it (?:hits|is at)|around|about|by))+ (?:1[4-7]\d"
    r"|[67]\d)\b"
    r"(?: ?[cf]\b)?(?: (?:in|with) (?:the |butcher )*(?P<after>paper|foil))?"
)
_NO_CHILL: Final = re.compile(
    r"\b(?:(?:forget|skip|skipping|instead of|never ?mind|scrap)(?: (?:the|about the"
    r"|about))? (?:chill|cool|ice)\w*|(?:no|not|without) (?:the )?chill\w*)\b"
)
_ELSEWHERE: Final = re.compile(
    r"\b(?:fridge|rack|freezer|snow|fan|water)\b"
)  # chilled all the same, and in another way
_EATS: Final = re.compile(
    r"\b(?:eat|eating|serve|serving|having|have) (?:it|this|them|some)?(?: all)?(?: right| straight)? ?(?:now|hot"
    r"|warm|tonight|today|away)\b"
)
_AT: Final = re.compile(r"\b\d{1,2}[:.]\d\d\b|\bat \d{1,2}\b")  # «eat it hot today 17:45»: a meal that is moved
_TOO: Final = re.compile(r"\b(?:too|as well|also|alongside|next to (?:it|the)|beside (?:it|the))\b")
_PUT: Final = re.compile(r"^(?:(?:i|we|just|ive|also) )*(?:added|put|threw|chucked|popped|stuck|laid)\b")
_ON: Final = re.compile(r"\b(?:on|in|into|onto)\b")
_OTHER_MEAT: Final = re.compile(
    r"\b(?:chicken|turkey|duck|thighs?|wings?|drumsticks?|sausages?|ribs?|burgers?|salmon|trout|fish|pork (?:butt"
    r"|chops?|steaks?)"
    r"|lamb|meatballs?)\b"
)
_SPICED: Final = re.compile(
    r"^(?:(?:i|we|ive|just|also) )*(?:added|put in|threw in|chucked in|popped in|put)(?: (?:some|a few|a|the|more"
    r"|in|extra|crushed|whole|fresh))*"
    r" (?:bay(?: lea(?:f|ves))?|pepper(?:corns)?|coriander|mustard seeds?|thyme|rosemary|herbs|spices?|cloves"
    r"|juniper(?: berries)?"
    r"|chill?i(?:es)?|allspice|cinnamon|star anise|onions?)(?: (?:to it|in|to the bag|to the brine))?$"
)
_LEAVES: Final = re.compile(
    r"^(?:(?:i|we|ill|well|im|just) )*(?:have to|need to|must|got to|gotta|had to|going to|will)"
    r" (?:leave|go out|pop out|nip out|step out|run out)\b(?! (?:of|it)\b)"
)
_FUELLED: Final = re.compile(
    r"\b(?:put|added|threw|chucked|loaded|shovelled|topped (?:it )?up with|filled)\b(?: (?:an?|some|more|another"
    r"|a bit of|a few|the|in"
    r"|on|fresh|new|\d+))* (?:charcoal|coals?|lump|briquettes?|wood|logs?|splits?|chunks?|fuel|pellets)\b"
    r"|^(?:\d|an?|some|another|new)(?: more)? (?:chunks?|splits?|logs?|chimney) (?:of [a-z]+(?: on)?|on|in)(?: now)?$"
    r"|^(?:a )?new chimney$"
    r"|^(?:the )?(?:wood|chunks?|splits?|logs?|coals?|charcoal)s? (?:(?:is|are|now) )*(?:on|in)(?: now)?$"
    r"|^(?:(?:i|we|ive|just|have) )*(?:refuel+ed|restoked|stoked|topped (?:it )?up)(?: (?:it|the fire"
    r"|the coals))?(?: now)?$"
)
_PIT_READ: Final = re.compile(r"\bpit\b[^\d,;]{0,20}\d{3}\b")
_DONE: Final = re.compile(r"\b(?:wrapped|ate|eaten|served|flipped)\b")


def read_foretold(text: str, context: Context) -> Intent | None:
    """A plan, or another meat on the same fire, where a plain text tells of one and asks nothing."""
    if context.phase in ("none", "stored") or ASKS.search(text) or _DONE.search(text):
        return None
    if context.phase not in FALLING and (wrap := _WRAP.search(text)):
        how = wrap["before"] or wrap["after"]
        return Change({"wrap": how}) if how else Ask("wrap", text=text)
    if context.phase == "drying":
        return None
    if context.phase in FALLING and _EATS.search(text) and not (context.phase == "resting" and _AT.search(text)):
        return Unclear("eat_now", text[:60])
    if context.phase in FALLING and _NO_CHILL.search(text) and not _ELSEWHERE.search(text):
        return Unclear("eat_now", text[:60])
    if context.phase in RAW and _SPICED.match(text):
        return Unclear("spiced", text[:60])
    if context.phase == "cooking" and _LEAVES.match(text):
        return Ask("bed", text=text)
    if context.phase == "cooking" and _FUELLED.search(text) and not _PIT_READ.search(text):
        return Unclear("fuelled", text[:60])
    return _beside(text, context)


def is_fuelled(text: str) -> bool:
    """«added two chunks and mopped it»: wood or coals were put on, and nothing is asked."""
    return bool(_FUELLED.search(text)) and not ASKS.search(text)


def _beside(text: str, context: Context) -> Unclear | None:
    """«put chicken thighs on too theyre 120»: a number of another meat is none of this one."""
    named = _OTHER_MEAT.search(text)
    own = any(named[0].rstrip("s") in name.lower() for _, name in context.batches) if named else True
    if (
        context.phase not in ("cooking", "resting")
        or own
        or not (_ON.search(text) and (_TOO.search(text) or _PUT.search(text)))
    ):
        return None
    return Unclear("other_meat", text[:60])
