"""What is too short to be taken: asked about, each with its own question, since one of the ways may be a danger.

«its out» is the fire or the meat, «its off» is off the heat or smells so; the rest is a table (`remarks`).
"""

from datetime import timedelta
from typing import Final

from bot.intents import spans
from bot.intents.called_at import asks_when
from bot.intents.context import HOT, RAW, UNCOOKED, Context
from bot.intents.debriefs import seen_grey
from bot.intents.early import PULLED_EARLY
from bot.intents.feels import is_spoiled, smells_clean
from bot.intents.intents import (
    Ask,
    Cancel,
    Change,
    Choose,
    Greet,
    Happened,
    Intent,
    MoveDeadline,
    Pause,
    Question,
    Snooze,
    StepDone,
    StepMissed,
    StepSkipped,
    Unclear,
    Undo,
)
from bot.intents.meats import meat
from bot.intents.of_the_answer import of_the_answer
from bot.intents.off_raw import off_too_early
from bot.intents.remarks import remark
from bot.intents.sums.of_heat import IS_IT_ENOUGH
from core import patterns as re
from core.plan.steps import Kind

_DIAL: Final = re.compile(
    r"^(?:(?:ok|i|we|just|have|ive) )*turned (?:(?:it|the fridge|that|the dial) )?(?:down|colder|cooler|lower)"
    r"(?: the fridge)?(?: (?:a|one) (?:bit|notch|tad|touch|little)| now)*$"
)
_GONE_OFF: Final = re.compile(r"^(?:i think |think )?(?:its|it is|it|meats?|the meats?|(?:the )?meat is) off(?: now)?$")
_OUT: Final = re.compile(r"^(?:(?:its|it is|it|oh|now|just|and|all) )*(?:gone |went |is )?(?P<which>out|off)(?: now)?$")
_ADDED: Final = re.compile(  # another piece in the same brine
    r"\b(?:add|adding|put|putting|throw|throwing|chuck|chucking)(?:ing)? (?:in )?(?:a|an|another|one more"
    r"|the other)\b.*"
    r"\b(?:to|in|into|with) (?:the |this )?(?:same )?(?:tub|bag|brine|bucket|cure|batch)\b"
)
_NO_PIECE: Final = re.compile(  # what goes into the brine and is no meat
    r"\b(?:garlic|cloves?|sugar|honey|salt|pepper\w*|herbs?|spices?|bay|coriander|mustard|onions?|juniper|thyme"
    r"|rosemary|water"
    r"|beer|cider|juice|ice|chill?ies|syrup|dose|(?<!the )(?<!same )(?<!this )cure)\b"
)
_ALSO_IN: Final = re.compile(
    r"\b(?:another|second|extra|one more|new)\b.*\b(?:in|into|to|with) the same (?:tub|bag|brine|bucket|cure)\b"
)
_ANOTHER_MEAT: Final = re.compile(  # «add the pork loin too», «can we do a chicken as well»
    r"^(?:(?:can|could|may|shall|should|do) (?:i|we) |(?:i|we) (?:want to|wanna|would like to|will|am) |lets |im "
    r"|gonna )*(?:also )?(?:add(?:ing)?|do(?:ing)?|mak(?:e|ing)|start(?:ing)?|throw in|put in|cure|smoke) (?:in )?"
    r"(?:a|an|the|my|some|another) "
    r"(?:[a-z]+ ){1,3}(?:too|as well|also|besides|on top|alongside)(?: please)?$"
)
_FIGURES: Final = re.compile(r"\d+(?:[.,/]\d+)?")
_THIN_END: Final = re.compile(
    r"\b(?:thin(?:ner|nest)?|skinny|tapered) (?:end|side|part|bit|tip|edge|spot|point|tail)\b"
    r"(?!.*\b(?:thick(?:er|est)?|fat|deep\w*) (?:end|side|part|bit|spot|point)\b)"
)
_OPEN_TO_CHANGE: Final = {  # what of a plan may still be changed, by its button
    "waiting": ("deadline", "mass", "thickness", "method"), "curing": ("deadline", "mass", "thickness", "purpose"),
    "drying": ("deadline", "purpose", "pit_c", "wrap"), "cooking": ("deadline", "purpose", "pit_c", "wrap"),
}  # fmt: skip
_USUAL: Final = timedelta(minutes=30)  # where it is not said how long
_BESIDE_THE_FIRE: Final = (Kind.RUB, Kind.MEAT_ON)
_SHORT_OF_IT_K: Final = 8.0  # a core may climb so far between two readings; common practice, no source
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
_TO_BED: Final = re.compile(
    r"^(?:(?:im|i am|ok|right|well|just|we are|time|its|good ?night|night|and) )*(?:(?:going|off|heading|time"
    r"|gone)(?: up)?"
    r" (?:to|for) (?:bed|sleep|kip)|turning in|calling it a night|hitting the (?:hay|sack))(?: now| soon)?$"
)
_STEPS: Final = {  # told, asked or wished, by where it can be meant
    "flip": ("curing",), "rinse": ("curing", "drying"), "soak": ("curing", "drying"), "rub": ("drying",),
    "wrap": ("cooking",), "slice": ("chilling", "stored"),
}  # fmt: skip
_WHENEVER: Final = re.compile(  # «when the kids are down»: some time, and no question
    r"^(?:(?:ok|ill do it|do it|later|will do|yes) )*(?:when|once|after|as soon as|soon as) (?:im|i am|ive"
    r"|i (?:get|have|finish|come)|we (?:get|have|come|are)|the (?!meat|core|pit|brine|fire|bag"
    r"|feast|party|meal)\w+ (?:are|is|go|goes)"
    r"|kids|hes|shes|theyre|dinner|work|lunch|bed ?time|school)\b[^?\d]*$"
)


def read_vague(text: str, context: Context) -> Intent | None:
    """The question that a short remark has to be met with, where a batch is under way and nothing was asked."""
    bare = text.strip(" .!?")
    if context.brine_made and context.free and (cools := _of_a_warm_brine(bare)):
        return cools
    if context.phase != "none" and is_spoiled(bare):
        return Unclear("spoiled", bare)
    if context.phase != "none" and smells_clean(bare):
        return Unclear("clean_smell", bare)
    if "thin" in bare and _THIN_END.search(bare) and len(_FIGURES.findall(bare)) == 1:
        return Question(text)  # the days go by the thickest spot: no thin end stands in its place
    if found := _of_the_cold(bare, context) or off_too_early(text, context):
        return found
    if context.phase == "none" or not context.free or (context.asked and of_the_answer(bare)):
        return None
    if (out := _OUT.match(bare)) and (context.phase == "cooking" or (context.due_step or "") in _BESIDE_THE_FIRE):
        return _out(out["which"], bare, context)
    if context.phase == "cooking" and context.last_core_c is not None and IS_IT_ENOUGH.match(bare):
        return Ask("pull_at", text=text)
    if _TO_BED.match(bare) and context.phase in HOT:
        return Ask("bed", text=text)
    added = (_ADDED.search(bare) or _ALSO_IN.search(bare)) and not _NO_PIECE.search(bare)
    if added and context.phase in RAW:
        return Unclear("added", bare)
    if _ANOTHER_MEAT.match(bare) and meat(bare).product and not re.search(r"\d", bare):
        return Ask("another_meat", text=text)
    if asks_when(bare) and context.phase != "none":
        return Ask("flip_next", text=text)
    if PULLED_EARLY.search(bare) and context.phase == "curing":
        return Ask("earlier", text=text)
    if text in _STEPS and (step := _step_alone(text, context)):
        return step
    if _WHENEVER.match(text) and (context.due_step or context.soon_step or context.phase == "curing"):
        return Unclear("until", bare, (Snooze(),))
    why = remark(bare, context.phase)
    if why == "put_in" and _all_but(Kind.MEAT_ON, context):
        return StepDone(str(Kind.MEAT_ON))  # it is what the fire waits for
    return Unclear(why, bare, _offered(why, bare, context)) if why and not _told_enough(why, bare, context) else None


def _of_the_cold(bare: str, context: Context) -> Unclear | None:
    """«turned it down» of a fridge with raw meat in it, «its off» of meat that is off the fire long since."""
    if _DIAL.match(bare) and context.phase in UNCOOKED:
        return Unclear("dial", bare)
    return Unclear("gone_off", bare) if _GONE_OFF.match(bare) and context.phase in ("chilling", "stored") else None


def _out(which: str, typed: str, context: Context) -> Unclear | None:
    """«its out», «off»: the meat, the fire, or how it smells; plain where the meat is called for, or nearly done."""
    if which == "off" and ((context.due_step or "") == Kind.OFF or (_nearly_done(context) and typed == "off")):
        return None
    away = (Pause(),) if typed == "gone out" else ()
    return Unclear(which, typed, (StepDone(str(Kind.OFF)), Happened("fire_out"), *away))


def _all_but(step: str, context: Context) -> bool:
    """Whether a step was called for, or all but."""
    return any((key or "").startswith(step) for key in (context.due_step, context.soon_step))


def _step_alone(name: str, context: Context) -> Unclear | None:
    """«flip», where none was called for: done, or asked about; of several batches it may be another's."""
    called = (context.due_step or context.soon_step or "").startswith(name)
    here = context.phase in _STEPS[name] or len(context.batches) > 1
    return None if called or not here else Unclear("step", name, (StepDone(name), Ask("now")))


def _nearly_done(context: Context) -> bool:
    """Whether the last core is near the one at which it shall come off; without either nothing speaks against it."""
    last, target = context.last_core_c, context.target_c
    return last is None or target is None or last >= target - _SHORT_OF_IT_K


def _told_enough(why: str, bare: str, context: Context) -> bool:
    """Whether such words tell enough here to be kept."""
    match why:
        case "look":
            return bool(seen_grey(bare, context))  # of cooked meat
        case "longer":  # what was called for waits so long; more days in the cure
            return bool(context.due_step) if _more(bare) else context.phase == "curing"
        case _:
            alone = context.phase == "curing" and re.fullmatch(r"(?:(?:ok|yes|yep|just|i|ive|all) )*turned", bare)
            return why == "turned" and bool(alone or _all_but(Kind.FLIP, context))


def _more(bare: str) -> timedelta | None:
    """How much longer, where that is said: «another hour»."""
    return spans.span(re.sub(r"\b(?:another|(?:1|one) more) (?=\D)", "an ", bare))


def _offered(why: str, bare: str, context: Context) -> tuple[Intent, ...]:
    """What such words may mean, to tap."""
    match why:
        case "change":
            return tuple(Choose("change", name) for name in _OPEN_TO_CHANGE.get(context.phase, ("deadline",)))
        case "leave" if (context.due_step or "").startswith(Kind.FLIP):
            return (StepSkipped(),)
        case "ready" if context.phase == "cooking":
            return (StepDone(str(Kind.OFF)),)
        case "ready" | "which" if context.due_step:
            return (StepDone(),)
        case "forgot":
            return (*((StepMissed(),) if context.due_step else ()), Happened("forgot_cure"))
        case "turned":
            return (StepDone(str(Kind.FLIP)),)
        case "soaking":
            return (StepDone(str(Kind.OUT)),)
        case "word":
            return (Undo(),)
        case "half":
            return (Snooze(by=_USUAL),)
        case "longer":
            by = _more(bare) or _USUAL
            return (Snooze(by=by), MoveDeadline(by=by))
        case "meal_off":
            return (Cancel(), Change({"deadline": None}))
        case _:
            return ()


def _of_a_warm_brine(text: str) -> Intent | None:
    """While a brine cools, an ice bath is the brine's, and what is waited for is its cold."""
    if _ICED.fullmatch(text):
        return Greet("nod")
    return Ask("why_cold", text=text) if _WHY_WAIT.fullmatch(text) or _STILL_WARM.fullmatch(text) else None
