"""Short remarks that may be several things, one of them perhaps a danger: asked about, each with its own question.

«its out» is the fire or the meat, «its off» is off the heat or smells so, «forgot» is a flip or the cure.
"""

from datetime import timedelta
from typing import Final

from bot.intents import spans
from bot.intents.called_at import asks_when
from bot.intents.context import Context
from bot.intents.debriefs import seen_grey
from bot.intents.early import PULLED_EARLY
from bot.intents.feels import A_BIT, IT, is_spoiled
from bot.intents.intents import (
    Ask,
    Cancel,
    Change,
    Choose,
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
from core import patterns as re
from core.plan.steps import Kind

_ODD: Final = r"(?:bit|fun[nk]y|weird|strange|odd|different|off|interesting|strong|not right|wrong|iffy|dodgy)"
_CLEAN: Final = r"(?:spic\w+|smok\w+|bacon|ham|garlic|pepper\w*|heaven|dinner|meat|beef|pork|fish|it should|always)"
_COLOUR: Final = r"(?:gr[ea]y|brown|dark|pale|dull|blotchy|patchy)(?:ish)?"
_ONE: Final = r"(?:big|small|little|thick|thin|first|second|other)"
_A_WHILE: Final = r"(?:half (?:an )?hour|(?:\d{1,2} ?)?(?:hours?|hrs?|h|min(?:ute)?s?))"
_DEED: Final = r"(?:flipped|turned|did|do|done|doing|rinsed|wrapped|changed|swapped|switched|adjusted|altered)"
_WENT: Final = (
    r"(?:drop(?:p?ed|ping)?|f(?:ell|all(?:ing)?)|r(?:ose|is(?:e|ing))|jump(?:ed|ing)?|climb(?:ed|ing)?|dip(?:ped|ping)?"
    r"|(?:went|go(?:ing|ne)?) (?:up|down))"
)
_MAY_I: Final = r"(?:(?:can|could|may|should|shall|please|lets|just|how|do|i|we|you|still|want to|need to|have to) )*"
_DIAL: Final = re.compile(
    r"^(?:(?:ok|i|we|just|have|ive) )*turned (?:(?:it|the fridge|that|the dial) )?(?:down|colder|cooler|lower)"
    r"(?: the fridge)?(?: a bit| now)*$"
)
_GONE_OFF: Final = re.compile(r"^(?:i think |think )?(?:its|it is|it|meats?|the meats?|(?:the )?meat is) off(?: now)?$")
_OUT: Final = re.compile(r"^(?:(?:its|it is|it|oh|now|just|and|all) )*(?:gone |went |is )?(?P<which>out|off)(?: now)?$")
_REMARKS: Final = re.Rules(
    (re.compile(words), why)
    for why, words in (
        ("smell", rf"^{IT}(?:smells?|smelling|stinks?|whiffs?|pongs?|reeks?)(?: is)?(?: {A_BIT}(?:like |of )?"
                  rf"(?:{_ODD}|burnt|bitter|bad|nasty|horrible|awful|disgusting|terrible|gross)| a bit| a little"
                  rf"| {A_BIT}like (?:the )?(?!{_CLEAN}\b)[a-z]+(?: [a-z]+)?)?(?: now"
                  rf"| to me)?$"
                  rf"|^(?:(?:theres|it has|has|got|an?|the|bit of|slight) )*{_ODD} (?:smell|odou?r|whiff)(?: to it)?$"),
        ("look", rf"^{IT}(?:looks?|looking|went|gone|going|turned|turning|is|are)? ?{A_BIT}(?:{_ODD} )?{_COLOUR}$"
                 rf"|^{IT}(?:still )?(?:pink|red|raw|{_COLOUR})(?: (?:in|at|on|near) the (?:middle|centre|center"
                 rf"|edges?|bone))?$"
                 rf"|^{IT}(?:looks?|looking) {A_BIT}{_ODD}$"),
        ("late", r"^(?:(?:its|it is|we are|were|im|i am|getting|running|so|a bit|a little|too|very) )+"
                 r"(?:late|behind|slow)$"),
        ("odd", rf"^{IT}(?:has |is |have |s )?(?:gone|went|going|got|turned|turning|come out|came out|is|looks?"
                rf"|seems?|acting|feels?) {A_BIT}(?:{_ODD}|green(?:ish)?|bad|sticky|slippery|mushy|tacky|soggy)"
                r"(?: on me| now)?$"
                r"|^(?:something|somethings|its something) (?:is )?(?:wrong|off|not right|up|funny)(?: with it"
                r"| here)?$"),
        ("ready", r"^(?:(?:its|it is|meats|the meats?|everything|all|that|thats|i think its|think its|is|now) )*"
                  r"(?:ready|good to go|all set|set)(?: now| to go| i think)?$"),
        ("grams", r"^(?:(?:i|we|just|only|used|put|put in|added|like|about|roughly|maybe|around|ok) )*"
                  r"(?:an?|one|[1-9]|two|three|half an?|a half|the whole|a couple of|couple|some) (?:heaped|heaping"
                  r"|level|big|small|good|full)? ?(?:(?:tea|table|soup|dessert)? ?spoon(?:ful)?s?|pinch(?:es)?"
                  r"|handfuls?|scoops?|(?:bags?|pack(?:et)?s?|box|cups?|jars?|tubs?)(?=.* (?:salt|cure|pink|powder)\b))"
                  r"(?:(?: of)? (?:(?:the|pink|curing|kosher|sea|table|plain) )*(?:it|cure|salt|pink|powder|stuff"
                  r"|that))?(?: in| i think)?$"
                  r"|^(?:(?:i|we|ive|just|ok) )*(?:put|added|threw|chucked|tipped|poured) (?:the |my |all the )?"
                  r"(?:salts?|pink salt|pink|curing salt|cure|powder)(?: all)? in(?: now| already)?$"
                  r"|^(?:the )?(?:salts?|pink|cure|powder)(?: is|s)? in(?: now| already)?$"
                  r"|^(?:only |just )?(?:half|part|some|most|a third|a quarter|two thirds) (?:of )?(?:the |my )?"
                  r"(?:cure|curing salt|pink salt|pink|salt) (?:went|is|got|has gone) in(?: so far| yet| now)?$"
                  r"|^(?:(?:i|we|ive|just|ok) )*(?:put|weighed|used|added|measured)(?: in| out)? \d{1,3}(?:\.\d\d?)? ?"
                  r"(?:g|gr|grams?)(?: in| out)?(?: of it)?$"),
        ("halved", r"^(?:(?:i|we|ive|just|had to|have|ok|so|oh) )*(?:cut|split|chopped|sliced|divided)"
                   r" (?:it|them|the (?:meat|flat|brisket|piece|slab|belly|ham|joint))(?: up)?"
                   r"(?: (?:in(?:to)? (?:half|two|2|3|three|4|halves|thirds|bits|pieces|chunks)|down the middle"
                   r"|length(?:wise|ways)|across))+(?: (?:so|and|now|theres|there|its|are|is|it is|have|has|i|we|got|in"
                   r"|the|bags?|two|three|2|3|4|smaller|bits|pieces|halves|fits?|to|it))*$"),
        ("halved", r"^(?:(?:i|we|ive|just|had to|have) )*halved(?: (?:it|them|the [a-z]+))?$"),
        ("meal_off", r"^(?:(?:its|it is|we|weve|everything|all|the whole thing|whole thing) )+(?:is |has |have |been )*"
                     r"(?:cancelled|canceled|called it off|called off)(?: it)?(?: now| sorry)?$"),
        ("meal_off", r"^(?:the |my )?(?:dinner|lunch|party|meal|supper|bbq|barbecue|do|event)s? (?:is |has been "
                     r"|been )?(?:off|cancelled|canceled|called off|not happening|scrapped)(?: now| sorry)?$"),
        ("watch", r"^(?:please |pls |can you |just )?(?:only )?(?:text|message|ping|call|tell|alert|warn|buzz|wake"
                  r"|notify|shout at|watch|let)(?: me| us)?(?: know)? (?:only )?(?:if|when) (?:the |it |my )?(?:pit"
                  r"|core|meat|temps?|grill|smoker|fridge|internal|fire|goes|gets|drops|falls|hits|reaches)\b.*\d"),
        ("more", r"^(?:(?:its|it is|it was|that was|thats|was|only|just|maybe|about|i|we|it|needs?|do) )*(?:a |the )?"
                 r"(?:little |tiny |wee )?(?:bit|little|lot|touch)? ?(?:more|less)(?: of it)?$"),
        ("more_in", r"^(?:(?:a (?:bit|little|touch)|some|bit|any|little|even) )*more "
                    r"(?:salt|sugar|honey|water)(?: in(?: it)?)?$"),
        ("more_in", r"^(?:(?:i|we|ive|just|should i|can i|shall i|do i|have) )*(?:put|add|added|threw|throw|chucked"
                    r"|tipped|poured|stirred|mixed|give it|gave it)(?: in)?"
                    r" (?:(?:a|bit|little|touch|some|any|even|lot) )*more(?: (?:salt|sugar|honey|water))?"
                    r"(?: (?:in|to it|into it|in it|in there))*$"),
        ("word", r"^(?:(?:thats|that is|that was|its|it is|no|it was|you got it) )*(?:wrong|incorrect|not right)$"),
        ("longer", r"^(?:(?:just|(?:give|leave|keep) it|go|it|needs?|a|bit|little|while|touch|some|few|for|even) )*"
                   r"(?:longer|more time)(?: (?:please|pls|i think|then))*$"
                   rf"|^(?:(?:just|for|about|maybe) )*(?:another|(?:1|one) more) {_A_WHILE}(?: (?:please|pls|then))*$"),
        ("salty", rf"^{IT}(?:brine |mix |(?:the )?whole thing )?(?:is |was |tastes? )?(?:far |way |much )?too salty$"),
        ("move", rf"^{_MAY_I}(?:move|shift) (?:it|that|them|this)$"),
        ("change", rf"^{_MAY_I}(?:change|alter|adjust|edit|tweak|fix|switch|swap)"
                   r"(?: (?:it|that|them|this|things?|something|stuff|the (?:plan|settings?)))?"
                   r"(?: (?:a bit|still|now|later|up|please|pls|somehow|around))*$"),
        ("size", rf"^{IT}(?:(?:is|was|looks?|seems?|gonna be|takes?|taking) )*{A_BIT}(?:(?:way|far|much|just) )*"
                 r"(?:too|(?<=takes )so|(?<=taking )so) (?:long|short|big|small|large|wide|fat|heavy)(?: now)?$"),
        ("half", r"^(?:(?:about|its|just|only|ok|a) )*(?:half|halves)(?: of it)?$"),
        ("enough", r"^(?:(?:is|that|this|it|its|be|will|thats|way) )*(?:enough|too (?:much|little|many))$"),
        ("hotter", r"^(?:(?:i want|run|make|get|turn|crank|cook|bring) )?(?:it |the (?:pit|heat|smoker) )?"
                   r"(?:hotter|cooler|warmer|(?<=it )(?:up|down))(?: a bit| a little| now)?$"),
        ("again", r"^(?:the |my |do the |do )?(?:same(?: (?:again|as (?:last time|before)))?|again|usual)$"),
        ("which", rf"^(?:(?:i|we|just|ok|only) )*{_DEED} (?:one|half|(?:the|that|a|my) (?:thing|stuff|half"
                  rf"|{_ONE}(?: (?:one|piece|bag))?))$"
                  r"|^(?:(?:i|we|ive|just|have) )*(?:changed|swapped|switched|adjusted|altered) (?:it|that"
                  r"|them)(?: now)?$"
                  rf"|^(?:(?:oh|no|its|it is|it was|that was|i meant) )*(?:the )?{_ONE}"
                  r" (?:one|piece|bag|batch|flat|point|ham|belly|slab)$"
                  rf"|^(?:only )?{_DEED} (?:only )?(?:the )?(?:one|{_ONE} one)(?: but)? not (?:the )?"
                  rf"(?:{_ONE}|rest)(?: one)?$"
                  r"|^(?:(?:im|i am|am|still|really) )*not sure(?: (?:about|of|on) (?:it|this|that)(?: one)?)?$"
                  r"|^\d (?:of (?:them|it|those)|more|left)$"),
        ("grams", r"^(?:(?:i|we|only|just|have|ive) )*(?:used|put|added|weighed|gave it)(?: in)? (?:only |just "
                  r"|about )?(?:half|part|some|most|a third|a quarter|two thirds|the rest) (?:of )?(?:the |my )?"
                  r"(?:cure|curing salt|pink salt|pink|salt)(?: in| so far)?$"),
        ("leave", r"^(?:(?:so|can|could|may|should|shall|ill|do|i|we|just|ok) )*leave (?:it|them"
                  r"|that)(?: (?:alone|be|there|as|it|is|like|that|in|for now))*$"),
        ("moved", r"^(?:(?:it|its|has|a|temp|just|suddenly|now|why|how come|did|does|is|what made|so|and|the) )*"
                  rf"{_WENT}"
                  r"(?: (?:a|bit|a bit|a little|lots?|again|fast|off|slightly|so|much|now|like that))*$"),
    )
)  # fmt: skip
_ADDED: Final = re.compile(  # another piece in the same brine
    r"\b(?:add|adding|put|putting|throw|throwing|chuck|chucking)(?:ing)? (?:in )?(?:a|an|another|one more"
    r"|the other)\b.*"
    r"\b(?:to|in|into|with) (?:the |this )?(?:same )?(?:tub|bag|brine|bucket|cure|batch)\b"
)
_NO_PIECE: Final = re.compile(  # what goes into the brine and is no meat
    r"\b(?:garlic|cloves?|sugar|honey|salt|pepper\w*|herbs?|spices?|bay|coriander|mustard|onions?|juniper|thyme"
    r"|rosemary|water"
    r"|beer|cider|juice|ice|chill?ies|syrup|cure)\b"
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
_EITHER: Final = re.compile(r"^\d{1,3} or \d{1,3}(?: (?:i (?:think|reckon|guess)|maybe|ish|ok))?$")  # of what is open
_ONLY_IN: Final = {  # where such words can mean it at all
    **dict.fromkeys(("grams", "more_in", "halved"), ("waiting", "curing", "drying")), "hotter": ("cooking",),
    "salty": ("waiting", "curing"),
}  # fmt: skip
_OPEN_TO_CHANGE: Final = {  # what of a plan may still be changed, by its button
    "waiting": ("deadline", "mass", "thickness", "method"), "curing": ("deadline", "mass", "thickness", "purpose"),
    "drying": ("deadline", "purpose", "pit_c", "wrap"), "cooking": ("deadline", "purpose", "pit_c", "wrap"),
}  # fmt: skip
_BESIDE_THE_FIRE: Final = (Kind.RUB, Kind.MEAT_ON)
_SHORT_OF_IT_K: Final = 8.0  # a core may climb so far between two readings; common practice, no source
_TO_BED: Final = re.compile(
    r"^(?:(?:im|i am|ok|right|well|just|we are|time|its|good ?night|night|and) )*(?:(?:going|off|heading|time"
    r"|gone)(?: up)?"
    r" (?:to|for) (?:bed|sleep|kip)|turning in|calling it a night|hitting the (?:hay|sack))(?: now| soon)?$"
)
_WATCHED: Final = ("cooking", "resting", "chilling")  # something burns or cools that wants a look
_STEPS: Final = {  # told, asked or wished, by where it can be meant
    "flip": ("curing",), "rinse": ("curing", "drying"), "soak": ("curing", "drying"), "rub": ("drying",),
    "wrap": ("cooking",), "slice": ("chilling", "stored"),
}  # fmt: skip
_WHENEVER: Final = re.compile(  # «when the kids are down»: some time, and no question
    r"^(?:(?:ok|ill do it|do it|later|will do|yes) )*(?:when|once|after|as soon as|soon as) (?:im|i am|ive"
    r"|i (?:get|have|finish|come)|we (?:get|have|come|are)|the (?!meat|core|pit|brine|fire|bag)\w+ (?:are|is|go|goes)"
    r"|kids|hes|shes|theyre|dinner|work|lunch|bed ?time|school)\b[^?\d]*$"
)
_TURNED: Final = ("turned", "its turned", "it turned", "has turned", "all turned", "turned now")  # the bag, or gone off
_FORGOT: Final = re.compile(r"^(?:(?:oops|sorry|oh no|damn|ah) )*forgot$")


def read_vague(text: str, context: Context) -> Intent | None:
    """The question that such a remark has to be met with, where a batch is under way and nothing was asked."""
    bare = text.strip(" .!?")
    if context.phase != "none" and is_spoiled(bare):
        return Unclear("spoiled", bare)
    if "thin" in bare and _THIN_END.search(bare) and len(_FIGURES.findall(bare)) == 1:
        return Question(text)  # the days go by the thickest spot: no thin end stands in its place
    if found := _of_the_cold(bare, context):
        return found
    if context.phase == "none" or not context.free or (context.asked and of_the_answer(bare)):
        return None
    if (out := _OUT.match(bare)) and (context.phase == "cooking" or (context.due_step or "") in _BESIDE_THE_FIRE):
        return _out(out["which"], bare, context)
    if _TO_BED.match(bare) and context.phase in _WATCHED:
        return Ask("bed", text=text)
    added = (_ADDED.search(bare) or _ALSO_IN.search(bare)) and not _NO_PIECE.search(bare)
    if added and context.phase in ("waiting", "curing"):
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
    if _EITHER.match(bare):
        return Unclear("number", bare)
    if bare in _TURNED and context.phase == "curing" and not _flip_is_due(context):
        return Unclear("turned", bare, (StepDone(str(Kind.FLIP)),))
    if _FORGOT.match(bare):
        missed = (StepMissed(),) if context.due_step else ()
        return Unclear("forgot", bare, (*missed, Happened("forgot_cure")))
    why = next((name for words, name in _REMARKS.fitting(bare) if words.match(bare)), None)
    return Unclear(why, bare, _due(why, bare, context)) if why and not _told_enough(why, bare, context) else None


def _of_the_cold(bare: str, context: Context) -> Unclear | None:
    """«turned it down» of a fridge with raw meat in it, «its off» of meat that is off the fire long since."""
    if _DIAL.match(bare) and context.phase in ("waiting", "curing", "drying"):
        return Unclear("dial", bare)
    return Unclear("gone_off", bare) if _GONE_OFF.match(bare) and context.phase in ("chilling", "stored") else None


def _out(which: str, typed: str, context: Context) -> Unclear | None:
    """«its out», «off»: the meat, the fire, or how it smells; plain where the meat is called for, or nearly done."""
    if which == "off" and ((context.due_step or "") == Kind.OFF or (_nearly_done(context) and typed == "off")):
        return None
    away = (Pause(),) if typed == "gone out" else ()
    return Unclear(which, typed, (StepDone(str(Kind.OFF)), Happened("fire_out"), *away))


def _flip_is_due(context: Context) -> bool:
    """Whether a flip was called for, or all but."""
    return any((step or "").startswith(str(Kind.FLIP)) for step in (context.due_step, context.soon_step))


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
    """Whether such words are no remark here, or tell enough to be kept."""
    if why == "look":
        return bool(seen_grey(bare, context))  # of cooked meat
    if why == "longer":  # what was called for waits so long; more days in the cure
        return bool(context.due_step) if _more(bare) else context.phase == "curing"
    return context.phase not in _ONLY_IN.get(why, (context.phase,))


def _more(bare: str) -> timedelta | None:
    """How much longer, where that is said: «another hour»."""
    return spans.span(re.sub(r"\b(?:another|(?:1|one) more) (?=\D)", "an ", bare))


def _due(why: str, bare: str, context: Context) -> tuple[Intent, ...]:
    if why == "change":
        return tuple(Choose("change", name) for name in _OPEN_TO_CHANGE.get(context.phase, ("deadline",)))
    if why == "leave" and (context.due_step or "").startswith(str(Kind.FLIP)):
        return (StepSkipped(),)
    if why == "ready" and context.phase == "cooking":
        return (StepDone(str(Kind.OFF)),)
    if why == "word":
        return (Undo(),)
    if why in ("half", "longer"):
        by = _more(bare) or timedelta(minutes=30)
        return (Snooze(by=by), MoveDeadline(by=by)) if why == "longer" else (Snooze(by=by),)
    if why == "meal_off":
        return (Cancel(), Change({"deadline": None}))
    return (StepDone(),) if why in ("which", "ready") and context.due_step else ()
