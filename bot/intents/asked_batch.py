"""More ways to ask about the batch in hand: is anything late, may I go to bed, did it cool in time, when do I slice."""

from typing import Final

from bot.intents.context import IN_THE_COLD
from core import patterns as re

_I: Final = r"(?:i|we)"
_IT: Final = r"(?:it|this|that|the (?:meat|brisket|flat|ham|belly|bird|piece|batch|pastrami))"
_DAY: Final = (
    r"(?:today|tonight|tomorrow|this (?:morning|afternoon|evening)|(?:on |this |next )?(?:mon|tues?|wed(?:nes)?"
    r"|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?|(?:on )?the \d{1,2}(?:st|nd|rd|th))"
    r"(?: (?:morning|night|evening|afternoon))?"
)
# topic -> its words; before those of the other files, and only ways that no step or reading is told by
TOPICS: Final = (
    ("agenda", rf"^(?:so |and |ok )*(?:whats|what is|(?:is there )?anything|what have {_I} got|what do {_I} have"
               r"|what happens|whats happening)(?: (?:on|up|due|planned|to do|left|coming up|happening))*"
               rf"(?: for)? {_DAY}$"
               rf"|^(?:so |and |ok )*what (?:do|must|should|shall) {_I} (?:have to |need to |still have to )?do"
               rf"(?: for)? {_DAY}$|^(?:so |and |ok )*what needs (?:doing|to be done) {_DAY}$"),
    ("catch_up", r"^catch me up$"),
    ("use_by", r"^(?:the |any )?left ?overs$"),
    ("weight", rf"\bhow (?:heavy|big) (?:is|was) {_IT}\b|\bwhat did {_I} weigh (?:it|the \w+)(?: at| in at)?$"
               rf"|^.*\b(?:kg|lbs?|kilos?|pounds?) or (?:\d[\d.]* ?)?(?:kg|lbs?|kilos?|pounds?)\b.{{0,12}}\b(?:{_I} "
               r"(?:entered|typed|said|put|gave|told|noted)|did (?:i|we)|we have (?:in|noted))\b"
               rf"|\bdid {_I} (?:put|type|enter|say|give|note)(?: (?:it|in))* (?:kg|lbs?|kilos?|pounds?) or\b"
               rf"|\bwhat (?:weight|mass) did {_I} (?:say|give|type|enter)\b|\bwhats the weight$"),
    ("got", r"\bdid (?:you|u|ya|it|i|we) (?:get|log|note|save|catch|hear|take|record|see|have)"
            r" (?:down )?(?:the|my|that)? ?"
            r"(?:last |core |pit |fridge |reading |of |at )*\d{2,3}\b(?! ?(?:min|h\b|hours?))"),
    ("away", r"\b(?:away|gone|out of town|on (?:holiday|vacation)|travelling)\b.*\bwhat (?:happens|then|do i do)\b"
             r"|\bwhat happens (?:when|if|while) (?:im|i am|we are|were|nobody is) (?:away|gone|out|home|here)\b"),
    ("batches", r"\bwhich (?:(?:one|bag|batch|meat|tub|piece)s? )?(?:is|do|does|needs?|gets?|am|are) (?:\w+ ){0,4}?"
                r"(?:flip(?:ped|ping)?|turn(?:ed|ing)?)\b"),
    ("skip_flip", r"\b(?:missed|flipped|turned|did) (?:it |the |a |my )?(?:flip |turn |one )?(?:by |about |some )*"
                  r"(?:\d{1,2}|a few|a couple of|some|several) ?(?:h|hrs?|hours?) (?:late|too late|after)\b"
                  r"|\bmissed (?:it|the|a|my) ?(?:flip|turn|one)? by\b"),
    ("late", rf"^(?:is|are) (?:it|we|i|this) (?:running )?late(?: (?:now|already|yet))?$"
             rf"|\b(?:am|are) {_I} (?:running )?(?:late|behind|overdue)\b"
             r"|^(?:(?:we|it)(?:re| is|s)? )?running (?:late|behind)(?: here| now)?$"),
    ("now", rf"\bis (?:any(?:thing|step)|something) (?:late|overdue|due"
            r"|open|missing)\b|\banything (?:late|overdue|i (?:forgot|missed)|still open)\b"
            rf"|\bdid {_I} (?:miss|forget) (?:any(?:thing)?|something|a step)\b|\bhave {_I} (?:missed|forgotten) any"
            rf"|\bwhat(?: have| did|ve)? {_I} (?:missed?|forget|forgotten)$"
            rf"|\bdo {_I} (?:still |really )?(?:have to|need to|got to|gotta) (?:flip|turn|check|read|rinse|do"
            rf" anything)"
            r"\b.{0,20}\b(?:tonight|today|now|again|this (?:evening|morning)|tomorrow)\b"
            rf"|\b(?:whats|what is) (?:still )?(?:open|due|to do)\b|\bwhats the next thing\b"),
    ("plan", rf"\bwhen (?:can|may|should|shall|must|will) {_I} (?:be able to )?(?:slice|carve|chill|rinse|dry"
             rf" it|take {_IT} out"
             rf"|get {_IT} out|put {_IT} (?:on|in))\b"
             r"|\b(?:ready|time|when does it|when will it|when is it) (?:to )?(?:come|come out|go|go on|be) ?(?:out)?"
             r" ?(?:of the (?:brine|cure|bag|tub)|on the (?:smoker|fire|grill))\b"
             rf"|\b(?:what|which) day (?:of|in) (?:the )?(?:cure|brine|curing)\b"
             rf"|\bwhat day is it (?:of|in) the (?:cure|brine)\b"
             rf"|\bwhat day of (?:the )?cur(?:e|ing) (?:is it|are {_I})\b"
             rf"|\bhow far (?:along|in) (?:is it|are {_I})\b"),
    ("dose", rf"\bhow much (?:cure|curing salt|pink(?: salt)?|salt|sugar) (?:did|was|should|have) (?:you|{_I}|it)"
             r"(?: (?:say|tell|told|said|give|gave|put|add|use|need|want|weigh|have)\w*)?(?: me)?(?: in| to"
             r" use| to add)?\b"
             rf"|\bhow much (?:brine|pickle|liquid|of it) (?:do|should|must) {_I} (?:inject|pump)\b"
             r"|^(?:so )?how (?:strong|salty) (?:is |should |does |do i make |must )?(?:a |the |my |this )?brine"
             r"(?: (?:be|need to be))?$"
             rf"|\bwhat (?:was|is) (?:the|my) (?:dose|amount of (?:cure|salt))\b"),
    ("rest", r"^(?:so )?how long (?:to|(?:do|should) i|(?:should|does|must) it)(?: need to| have to| let it)* rest\b"),
    ("since", rf"^(?:so )?(?:is|are) (?:{_IT}|they|the \w+) (?:all )?in"
              r"(?: (?:yet|already|now|there|the (?:cure|brine|bag)))*$"),
    ("safe", rf"\bdid {_IT} (?:cool|chill|get cold|come down|go down)\b.{{0,20}}\b(?:fast|quick\w*|in"
             rf" time|enough|soon|ok(?:ay)?)\b"
             rf"|\b(?:was|is) the (?:chill|cooling|cool down) (?:fast|quick|ok|okay|good|in time)\b"
             rf"|\bdid {_IT} (?:get|reach|stay) (?:hot|cold|safe|warm) enough\b"
             r"|^(?:so |ok )*(?:should|shall|must|do) (?:i|we)(?: just| have to| need to)*"
             rf" (?:bin|chuck|throw|toss|dump) {_IT}(?: all)?(?: away| out| in the bin)?$"),
    ("dose", r"^(?:so |and )?(?:is|was) (?:that|it|this|there)(?: now)? too (?:much|strong)(?: in)?"
             r" (?:of )?(?:the |a )?(?:cure|dose|nitrite|pink salt|curing salt)$"),
    ("chill", r"\bhow long (?:un)?til+ (?:its|it is|it gets|it goes|it comes|the core is)? ?(?:down"
              r" |cold|under|below|to|cool)"
              r"|\bhow long (?:does|will|do) (?:it|the meat|the chill) (?:take )?(?:to )?(?:cool|chill|get"
              r" cold|be cold)"),
    ("take_back", r"\b(?:that|the|my|this)(?: last)? (?:reading|number|temp(?:erature)?)\b(?: \w+){0,3}? (?:rubbish"
                  r"|nonsense|daft|silly|garbage|a (?:mistake|typo)|not right)\b"
                  r"|\b(?:delete|remove|scrub|scrap|bin|scratch) (?:that|the|my)(?: last)?"
                  r" (?:reading|number|temp(?:erature)?|one)\b"),
    ("log", r"\bhow hot is it(?: now| inside| in the middle)?$|\bwhats (?:it|the core|core)(?: at| now| temp)+$"
            r"|\bwhat was the last (?:core|number|temp\w*|one)\b"),
)  # fmt: skip
# after the ways of the other files: beside the fire they know better
LATER: Final = (("plan", r"\bwhen (?:do|should|must|shall|to) (?:i |we )?(?:light|start the fire|fire (?:it )?up)\b"),)
_LEAVE: Final = re.compile(
    r"\b(?:can|may|could|should) (?:i|we) (?:now )?(?:go (?:to )?(?:bed|sleep|out|home|away|shopping|to work)"
    r"|sleep|turn in|leave (?:it|the house|now)(?: alone| be| overnight)?)\b"
    r"(?! (?:in|on|out|there|longer|till?|until)\b)"
)


def may_leave(text: str, phase: str) -> bool:
    """Whether somebody asks if they may go, while nothing burns or cools: what is next, and when, goes with the yes."""
    return phase in IN_THE_COLD and bool(_LEAVE.search(text))
