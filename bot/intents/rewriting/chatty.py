"""How people chat round the matter: who is speaking, who wants to know, a sigh, and the hour that somebody asks for."""

from typing import Final

from bot.intents.rewriting.calls import LANDS
from bot.intents.rewriting.words import rules
from bot.intents.zones import zone_of
from core import patterns as re

_NO_NAME: Final = (  # «nobody here, pause», «guests here, slicing», «fish here, 4 lb»
    rf"(?:{'|'.join(LANDS)}|nobody|no ?one|all|every(?:one|body)|guests?|people|kids|they|family|dinner|lunch|supper"
    r"|its|it|not|is|was|still|are|were|im|be|raining|snow\w*|sunny|windy|cold|hot|warm|stuck|wait|right|meat|bag|fish"
    r"|beef|pork|bird|turkey|chicken|duck|ham|bacon|brisket|belly|salmon|trout|timer?|newbie|beginner)"
)
_KIN: Final = (
    r"(?:wife|husband|missus|hubby|mum|mom|dad|mother|father|sister|brother|son|daughter|nan|gran\w*|aunt\w*|uncle"
    r"|partner|boss|principal|host|pastor|vicar|coach|teacher|neighbou?rs?|guests|kids|girls|boys|lads|in ?laws|parents"
    r"|friends|mates|everyone|everybody|committee|office|school|church|club|she|he|they)"
)
_DAYS: Final = r"(?:mon|tues|wednes|thurs|fri|satur|sun)day"
_HOUR: Final = r"(?:(?:1[0-2]|[1-9])(?:[:.][0-5]\d)?(?: ?[ap]m)?|noon|half past \w+|half [a-z]+)"
_WHO_ASKS: Final = (
    rf"^(?:(?:and|now|so),? )?(?:(?:the|my|our) )?(?:{_KIN}|(?!{_NO_NAME}\b)[a-z]{{3,12}})(?: is| are|s)? (?:asks?"
    r"|asking|wonders?|wondering|wants? to know|would like to know|just asked|asked)(?: me| us)?,?"
)


def _speaks(found: re.Match[str]) -> str:
    """«dave here, turned it» says who speaks, «berlin here, fridge 4» where they are."""
    return found[0] if zone_of(found["who"]) else ""


def _asked(found: re.Match[str]) -> str:
    """«margaret asks whether we may use honey» as «can we use honey»."""
    may = {"may": "can", "might": "can"}.get(found[2], found[2])
    return f"{may} {found[1]} "


RULES: Final = rules(
    # who speaks
    (rf"^(?:(?:hi|hello|hey|good morning|good evening),? )?(?:(?:this is|its) )?(?!{_NO_NAME}\b)"
     r"(?P<who>[a-z]{2,12}) here(?: again)?[,:.!-]+ (?=\w)", _speaks),
    (r"^(?:(?:hi|hello|hey|good morning|good evening),? )this is [a-z]{2,12}(?: (?:speaking|again))?[,:.!-]+ (?=\w)",
     ""),
    # who wants to know
    (rf"{_WHO_ASKS} (?:if|whether) (i|we|you|he|she|they|one) (may|might|can|could|should|must) ", _asked),
    (rf"{_WHO_ASKS} (?:if|whether) (it|this|that|the \w+) (is|was|will|can|should|has|needs to) ", r"\2 \1 "),
    (rf"{_WHO_ASKS} (?=(?:what|how|when|why|which|where)\b)", ""),
    (r"^(?:(?:oh no|help|so|oops|uh oh|hey),? )*(?:did (?:i|we) (?:mess|screw|muck|stuff|ruin) (?:it |this )?(?:up)?"
     r"|is it ruined|have (?:i|we) ruined it)[,.?!]* (?=(?:i|we|ive|weve) [a-z])", ""),
    (r"^(?:so |and |now )?(?:i|we) have (?:now |just |already |both )*(?=(?:put|taken|lit|turned|flipped|carved|sliced"
     r"|rinsed|wrapped|pulled)\b)", ""),
    (r"\b(?:so )?(?:we|there) (?:shall|will) be (?=(?:\d{1,2}|two|three|four|five|six|seven|eight|nine|ten|eleven"
     r"|twelve)\b(?! (?:oclock|[ap]m|minutes|hours|mins|late)))", "we are "),
    # what is being done just now is not done yet
    (r"(?:^|(?<=[.,;!] ))(?:(?:im|i am|we are|were|just|now|ok) )*(?:making|mixing|weighing(?: out)?"
     r"|measuring(?: out)?|stirring)(?: up| together)? (?:the |my )?(?:rub|cure|brine|salts?|spices|dose|pickle)"
     r"(?: (?:up|together|now|right now))*(?=$|[,.;!])", "ok"),
    # the hour that somebody asks for, instead of that of the plan
    (rf"^(?:(?:the|my|our) )?{_KIN}(?: now)? (?:says?|said|wants?|reckons?|asked? for|prefers?|would rather(?: eat)?)"
     rf"(?: (?:it|us|lunch|dinner|to eat|now|for|at|by))* (?P<to>{_HOUR}),? (?:now,? )?(?:and )?(?:not|instead of"
     rf"|rather than) {_HOUR}$", r"dinner is at \g<to>"),
    # a sigh in the middle, and why it is in a hurry
    (r"(?<=[a-z0-9]),? (?:u+gh+|a+rgh+|gah+|meh|grr+|dammit|damn ?it|sigh|yikes|phew)[,.!]* (?=[a-z])", ", "),
    (r"(?<=\w)[,.]? (?:u+gh+|a+rgh+|gah+|grr+|dammit|damn ?it|sigh|yikes|phew)[ .!]*$", ""),
    (r"(?: then)?\?+ (?:(?:i|we|im|i am|we are|were) )(?:have to|gotta|need to|got to|must|about to|off to|going to)"
     r" (?:run|go|leave|head|dash|pop|nip|rush|get to|the (?:store|shop))\b[^?\d]*$", "?"),
    # seen to, and what it reads again
    (r"^(?:(?:i|we|ive|weve|have|just|now|so|and),? )*(?:closed|shut) (?:it|that|the (?:door|fridge|lid))(?: (?:again"
     r"|properly|now))*,? (?:and |so |now )*(?=(?:its|it is|it|back|now|fridge|reads|down)\b[^,;?]*\d)", ""),
    (r"^(?:(?:and|but|so|now|its|it is|it|already|has|gone) )+(?P<n>\d{1,2}(?:\.\d)?(?: ?(?:degrees|deg|°|[cf]\b))*)"
     r" again(?: now)?(?:(?=$|[,;])| (?:after|within)? ?(?:half an|an?|\d+) (?:h\w*|min\w*)(?: later)?$)",
     r"back to \g<n>"),
    (r"^(?:(?:the|a|my) )?(?:new|latest|current|next) reading(?: is| was|:|,)* (?=\d)", ""),
    (r"\b(\d|[1-5]\d)(?: ?(?:degrees|deg|[cf]))? in (?:the )?(?:middle|centre|center) of the (?:pot|bucket|brine|tub"
     r"|pan)\b", r"brine \1"),
    (r"(?:^|(?<=[,.;!] ))(?:(?:theyre|they are|its|all of (?:them|it)|everything|both) )?(?:all|both) off"
     r"(?: now)?$", "they are off"),
    (r"^(?:(?:i|we|ive|just) )*(?:refilled|topped up|filled up)(?: (?:it|the hopper|the pellets|the charcoal|pellets))?"
     r"(?=$|,| and)", "added charcoal"),
    (r"^(?P<one>(?:the |my )?[a-z]+(?: [a-z]+)?)(?: is| are)? (?P<deed>(?:all |now )?(?:in|out|on|off|flipped|turned"
     r"|rinsed|wrapped|done|drying|soaking)\b[^,;?]*?),? (?:and )?so (?:is|are) (?P<two>(?:the |my )?[a-z]+"
     r"(?: [a-z]+)?)(?: too)?$", r"\g<one> \g<deed>, \g<two> \g<deed>"),
    (r"^(?:(?:ok|right|and|so),? )?(?:ill|i will|i can|we will|we can) (?:do|take|handle|cover)"
     rf" {_DAYS}s?(?: (?:flips?|turns?|ones?))?(?: (?:then|instead|for you))*$", "ok"),
    (r"\bbellys\b", "belly"),
    # it is done after all, measured, and until about when
    (r"\b(?:i |we )?(?:forgot|didnt (?:get round|remember|manage)) to (?:flip|turn)\b[^,;.?]*? (?:un)?til+ (?:just "
     r"|right |only )*now$", "flipped it just now"),
    (r"^(?:it|the (?:joint|piece|meat|ham|flat|loin|belly|brisket|roast)|ours|mine) (?:measures"
     r"|comes (?:out )?(?:at|to))(?: (?:about|around|roughly|some|just|only|over|exactly))*"
     r" (?=\d+(?:\.\d+)? ?(?:cm|cent|mm|mill|in\b|inch|\"))",
     "its "),
    (r"\b(un)?(till?) (?:about|around|roughly) (?=\d|noon|mid)", r"\1\2 "),
    (r"^(?:so |and )?(?:we|i) (?:shall|will) (?:all |both )?be (?=(?:at|on|in|out|away)\b)", "we are "),
)  # fmt: skip
