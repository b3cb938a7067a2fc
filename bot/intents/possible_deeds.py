"""What the words for a deed can mean where the meat is: «pulled» before the cook is how it will be eaten."""

from typing import Final

from bot.intents.context import COOKED, FALLING, SET_UP, UNCOOKED, Context
from bot.intents.deeds import DEEDS, OTHER_OFF
from bot.intents.intents import StepDone
from bot.intents.meats import as_meat
from bot.intents.temperatures import set_points
from bot.intents.watered import litres
from core import patterns as re
from core.plan.steps import Kind

NOT_DONE: Final = re.compile(
    r"\b(?:not|havent|hasnt|didnt|did not|wont|cant|couldnt|never|forgot(?:ten)?|missed|will|ill|going to|gonna"
    r"|should|shall|prefer|rather|wish|would like|want to|wanna|about to|when|if|after|before|need to|have to|until)\b"
)
_NO_MEAT_IN: Final = re.compile(r"\b(?:hands?|fingers?|arms?|fly|flies|hair|bug|glass|plastic|spoon|toy|nose)\b")
_A_PART: Final = re.compile(r"\b(?:half|some|part|a bit|(?:a|one) (?:third|quarter)|few|couple|piece|slice)\b")
_HALF_OUT: Final = re.compile(
    r"\b(?:half|partly|bits?|parts?|corners?|edges?|st[iu]ck\w*|pok\w+|peek\w+|float\w*|swimming|bobbing|top)\b"
    r".{0,16}\bout\b"
)
_BACK_ON: Final = re.compile(  # off for a moment
    r"\boff (?:of )?(?:the )?(?:direct|hot side|flames?|hot spot)\b|\bback (?:on|in)\b"
    r"|(?<!been )\b(?:off|out) for (?:\d{1,2} ?m|an? (?:sec|min|moment|bit|few))|\b(?:off|out) (?:to|for) (?:fix"
    r"|clean|sort|stoke|tend|relight|light|add|move|wrap|foil|spritz|mop|baste|probe|check|look|turn|refuel)"
)
_LIQUID_IN: Final = re.compile(  # «theres pink water in the bag»: no meat went in
    r"\b(?:water|liquid|juices?|puddles?|pool|blood|bubbles?|air|gas|foam|scum|spots?|slime|hole|crystals?|bits?"
    r"|fluid|fat)\b.{0,14}"
    r"\b(?:in|inside) the (?:bag|brine|tub|bucket)\b"
)
_STIRRED: Final = re.compile(r"\b(?:stirred|whisked|mixed|dissolved|spil\w+|(?:more|extra|much) (?:salt|sugar))\b")
_STIRRED_UP: Final = re.compile(r"\bstirr\w+ (?:up )?(?:the |my )?(?:brine|pickle|salts?)\b")
_ROUND: Final = re.compile(r"\b(?:spritz\w*|mopp\w*|bast\w*|spray\w*|spun|rotat\w*|round(?! \d)|around(?! \d)|lid)\b")
_SPICE: Final = re.compile(r"\b(?:pepper\w*|coriander|spices?|crust|seasoned|rub|mustard)\b")
_AFTER_THE_CURE: Final = (Kind.RINSE, Kind.SOAK, Kind.DRY, Kind.RUB)
_COOKED: Final = re.compile(r"\boff the (?:smoker|grill|pit|fire)\b|\btook (?:it|them) off$|\bsliced (?:it|them)\b")
_MEAT_ITSELF: Final = re.compile(
    r"\bmeats? (?:(?:is|are|went|just|now) )*on(?! (?:saturday|sunday|\w+day|ice|the (?:counter|table|rack|board)))\b"
    r"|\bon the (?:smoker|grill|pit|fire|bbq|barbecue)\b"
)

_GOES_ON: Final = re.compile(r"\bstill\b|^\W*(?:(?:now|its|down to) )*\d")
_RESTED: Final = re.compile(
    r"\brested\b|\b(?:done|finished|stopped|through) (?:with )?(?:the )?rest|\brest(?:ing)? (?:over|done)"
)


def there(kind: Kind, text: str, context: Context) -> Kind:
    """What was meant where the meat is: out of the cooker is off the fire, rubbed before a dry cure is in it."""
    if kind is Kind.RUB and context.phase == "waiting" and context.dry and not _SPICE.search(text):
        return Kind.INTO_CURE
    from_the_cure = re.search(r"\b(?:brine|cure|bag|bucket|tub|pickle|drained)\b", text)
    return Kind.OFF if kind is Kind.OUT and context.phase == "cooking" and not from_the_cure else kind


def possible(kind: Kind, text: str, context: Context) -> bool:
    """Whether words for a deed can mean it here: «pulled» before the cook is how it will be eaten."""
    sealing = context.phase == "drying" and (context.due_step or "") == "even"
    if kind is Kind.EVEN:  # «resting» may be cooked meat of which nobody said that it went on
        return sealing or (context.phase == "drying" and "resting" not in text)
    if (kind is Kind.OUT and _HALF_OUT.search(text)) or (
        kind is Kind.OFF and (_BACK_ON.search(text) or OTHER_OFF.search(text))
    ):
        return False
    if kind is Kind.CHILL and context.phase == "drying" and "rack" in text:
        return False
    if kind is Kind.SERVE and context.phase in FALLING and _A_PART.search(text):
        return False  # the rest still cools
    if kind is Kind.REST and context.phase == "resting" and _GOES_ON.search(text) and not _RESTED.search(text):
        return False  # «165 still resting»: it goes on
    if kind in (Kind.OFF, Kind.REST, Kind.CHILL, Kind.SLICE, Kind.SERVE):
        if context.phase == "curing" and _COOKED.search(text):  # nobody told of the fire, or that it is out: asked
            return kind in (Kind.OFF, Kind.SLICE)
        return context.phase not in SET_UP and not (sealing and kind is Kind.REST)
    if kind is Kind.OUT and context.phase in COOKED:
        return False  # out of the ice, or of the cooler
    if kind is Kind.INTO_CURE and (_LIQUID_IN.search(text) or litres(text) or _STIRRED.search(text)):
        return False
    if kind is Kind.LIGHT:  # beside the meat the pit only comes up again
        return context.phase != "cooking" or not set_points.HEATING.search(text)
    if kind is Kind.WRAP:  # in the cure it is film, and in the fridge a parcel
        return context.phase in ("none", "drying", "cooking")
    if kind is Kind.RUB:  # before the cure it is the cure that is rubbed on, in the cure the bag
        return context.phase not in SET_UP
    if kind is Kind.BRINE and _STIRRED_UP.search(text):  # it may stand already, and is only stirred
        return context.phase in ("none", "waiting") and not context.brine_made
    if kind is Kind.FLIP and context.phase == "cooking" and _ROUND.search(text):
        return False  # on the grate
    if kind is Kind.DRY:  # a rack in the fridge is where it chills, too
        return context.phase not in ("cooking", "resting", "chilling", "stored")
    if kind is Kind.MEAT_ON:
        named = context.phase != "waiting" or _MEAT_ITSELF.search(text)  # «its on»: the brine on its stove as likely
        return bool(named) and context.phase not in ("resting", "chilling", "stored")
    since = context.phase == "drying" and re.search(r"\b(?:since|went in|was in)\b.*\d", text)  # told afterwards
    if kind is Kind.INTO_CURE and context.phase not in SET_UP and not since:
        return False
    return kind is not Kind.INTO_CURE or not (re.search(r"\d ?(?:days?|d|weeks?)\b", text) or _NO_MEAT_IN.search(text))


def out_of_place(text: str, context: Context) -> tuple[StepDone, ...]:
    """The deed that a plain text tells of where it can be none, «rub is on» in the cure: offered, and not taken."""
    text = as_meat(text)
    kinds = [kind for _, kind in DEEDS.hits(text) if kind in _AFTER_THE_CURE]
    if NOT_DONE.search(text) or context.phase not in UNCOOKED or not kinds:
        return ()
    before = context.phase == "waiting"
    return (StepDone(str(Kind.INTO_CURE if before else kinds[0])),)
