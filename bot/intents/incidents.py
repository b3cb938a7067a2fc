"""What went wrong (fire out, power cut, left out, a leak, a dose twice), and what the slice showed in the end."""

from dataclasses import dataclass
from typing import Any, Final

from bot import measures
from bot.intents import lasting, when
from bot.intents.context import Context
from bot.intents.intents import Debrief, Happened, Intent
from bot.intents.rated import mark
from bot.intents.saltiness import saltiness
from core import patterns as re

_WHAT: Final = re.Rules(
    (re.compile(words), what)
    for what, words in (
        ("fire_out", r"\b(?:fire|smoker|grill|pit|coals?|charcoal|flame|burner|gas|feuer)(?:s| is| has| have"
                     r"| had)? (?:just |all )?(?:went |gone |go |burnt |burned |died |was |ran |ist )?(?:out|died"
                     r"|dead|cold|aus)\b"
                     r"|\blost (?:the |my )?(?:fire|flame) for\b|\b(?:fire|grill|smoker) died\b"
                     r"|\bran out of (?:gas|charcoal|fuel|coal|pellets)\b"
                     r"|\bfire out\b|\bfeuer ist aus\b"
                     r"|\b(?:gas|propane|bottle|tank|charcoal|coals?|fuel|hopper)s? (?:is |are |has |was |all |just )*"
                     r"(?:empty|gone|finished|used up|burn(?:ed|t) (?:out|through|up|down))\b"
                     r"|\b(?:am|im|are|we|its|is|just|run|all) out of (?:gas|charcoal|propane|fuel|pellets|coal|wood)\b"
                     r"|\bno (?:more )?(?:gas|charcoal|propane|fuel|pellets|coal) left\b"
                     r"|^out of (?:gas|charcoal|propane|fuel|pellets|coal|wood)\b"),
        ("power_cut", r"\b(?:power|electricity|current) (?:cut|outage|failure|failed|went|is out"
                      r"|was out|was off|is off|has been off|out|off)\b"
                      r"|\b(?:power|electricity|current) (?:was |is |went |has been |had been )*(?:gone|lost"
                      r"|dead|down)\b"
                      r"|\b(?:no|without) (?:power|electric(?:ity|s)?)\b|\bblackout\b"
                      r"|\b(?:fridge|freezer) (?:broke|died|failed|was off|went off|is off|stopped|off)\b"
                      r"|\bfreezer door (?:was )?(?:left )?open\b"
                      r"|\b(?:fridge|it)(?: was| got| is)? (?:unplugged|switched off|turned off)\b"
                      r"|\bunplugged the fridge\b"
                      r"|\b(?:breaker|fuse|circuit)\b.{0,12}\b(?:tripped|blew|blown|went)\b|\blost power\b"
                      r"|\belectric(?:ity|s)? (?:went|was|is) (?:off|out)\b"
                      r"|\bstromausfall\b|\b(?:black|brown)[ -]?out\b|\bfridge (?:has )?(?:stopped working"
                      r"|packed (?:in|up)|conked out|gave up|is dead|is broken|broke down)\b"),
        ("warm_fridge", r"\bfridge (?:door )?(?:was |is |has been |stood |got )?(?:left )?(?:wide )?(?:open|ajar)\b"
                        r"|\b(?:left|had|kept) (?:the )?fridge (?:door )?(?:wide )?(?:open|ajar)\b"
                        r"|\bopened the fridge (?:all|over|for (?:\d|an?\b|hours))\b"
                        r"|\bdidnt (?:close|shut) the fridge\b"
                        r"|\bfridge (?:is|was|got|ran) (?:too )?warm\b"),
        ("warm_brine", r"\bbrine (?:is|was|got|went) (?:too )?warm\b|\bwarm brine\b"),
        ("left_out", r"\b(?:left|forgot|sat|been|was|sitting|stood) (?:it |them |the (?:meat|bag|brisket"
                     r"|brine) )?(?:out|on the (?:kitchen |garden |work )?(?:counter|table|bench|side|worktop|stove"
                     r"|sink)"
                     r"|in the (?:car|garage|sun|kitchen|sink|hall))\b"),
        ("leaked", r"\ba leak\b|\b(?:bag|tub|bucket) (?:has|had|got) (?:a |an )?(?:slow|small|little|tiny) drip\b"
                   r"|\bleaks? (?:in|from|at|on) the (?:bag|tub|bucket)\b|\b(?:bag|tub|bucket|it|one)(?:s"
                   r"| has| is| was)? (?:been )?(?:leak\w{0,3}|burst|split|ripped"
                   r"|torn)\b"
                   r"|\b(?:bag|tub|bucket|bottle)s? (?:has |have |is )?(?:lost|losing|loses) (?:\w+ ){0,3}(?:liquid"
                   r"|brine|juice|water|fluid)\b"
                   r"|\b(?:bag|tub|bucket|it)(?:s| is| was| has been)? (?:weep|seep|drip)(?:ing|ed|s)\b"
                   r"|(?<!no )(?<!glass of )(?<!cup of )\b(?:(?:juice|liquid|brine|water|fluid|puddle|drips?)\b.{0,10}"
                   r"\b(?:in|on|under|all over) (?:the )?(?:tray|shelf|bottom|plate|dish|drawer|floor)"
                   r"|brine\b.{0,10}\b(?:on|under|all over) (?:the )?fridge"
                   r"|(?:juice|liquid|water|fluid|puddle|drips?)\b.{0,10}\b(?:in|on|under|all over) (?:the )?fridge)\b"
                   r"|\b(?:tipped|knocked|kicked) (?:the )?(?:bag|tub|bucket|it)(?: over| down| off| out)\b"
                   r"|\b(?:bag|tub|bucket|it) (?:has |was |got |is )?(?:tipped|knocked|fell|fallen|toppled)"
                   r"(?: over| down)\b"
                   r"|\b(?:lost|spilled|spilt) (?:(?:about|maybe|some|like|only|just) )*(?:an? |half a |\d\S* ?)"
                   r"(?:cups?|pints?|quarts?|lit(?:re|er)s?|ml|l|tbsps?|tablespoons?|splash|dash|glass)"
                   r"\b(?! of (?:water|beer))"
                   r"|\bleaked\b|\bbag leak\b|\bleaking\b|\b(?:spilled|dripped|dripping|oozing) (?:out of|from"
                   r"|all over|everywhere)|\bhole in the bag\b"
                   r"|\b(?:bag|tub|pouch) (?:has|got|had) (?:a |an? \w+ )?(?:hole|tear|rip|split|leak)s?\b"),
        ("dosed_twice", r"\b(?:double|twice)[ -]?(?:dosed|salted|cured)\b"
                        r"|\b(?:doubled|twice the|double the|double) (?:the )?(?:cure|pink salt|dose|salt)\b"
                        r"|\b(?:dosed|salted|cured|added|put)\b.{0,24}\b(?:twice|two times|2 times|double)\b"
                        r"|\b(?:added|put|gave|threw|tipped|mixed)(?: it| in)? (?:a |the )?"
                        r"(?:second|2nd|other|another) (?:dose|lot of cure)\b"
                        r"|\bboth (?:added|put in) the cure\b"
                        r"|\b(?:added|put|tipped|threw|stirred)(?: in)? (?:\d+(?:\.\d+)? ?(?:g|grams?|oz) )?(?:of )?"
                        r"(?:more|extra|another|additional) (?:\d+(?:\.\d+)? ?(?:g|grams?|oz) )?(?:of )?(?:the )?"
                        r"(?:cure|curing salt|pink salt|pink|dose)\b"),
        ("cure_as_salt", r"\b(?:cure|pink salt|curing salt)\b.{0,20}\b(?:like|as|instead of|in place of|for)"
                         r" (?:the |all the )?(?:table |normal |regular |kosher |cooking )?salt\b"
                         r"|\b(?:all|only) (?:the salt (?:was|is)|of it (?:was|is)) (?:pink|cure|curing)"),
        ("cure_in_rub", r"\b(?:cure|pink salt|curing salt)\b.{0,12}"
                        r"\b(?:in|into|on|to) (?:the |my )?(?:rub|crust|bark|outside)\b"
                        r"|\b(?:rubbed|sprinkled|dusted) (?:it )?(?:with )?(?:the |some |more )?"
                        r"(?:cure|pink salt|curing salt)\b"),
        ("forgot_cure", r"\bforgot (?:to (?:add|put)(?: in)? )?(?:the |any )?(?:cure|curing salt|pink salt|pink)\b"
                        r"|\bno cure in (?:it|the)\b|\bdidnt (?:add|put)(?: in)? (?:the |any )?(?:cure|pink)\b"),
        ("wrong_salt", r"\b(?:used|added|put in|took) (?:the |some )?(?:pink )?(?:himalayan|sea salt"
                       r"|iodi[sz]ed(?: table)?(?: salt)?|regular salt|normal salt|plain salt|rock salt|kosher salt"
                       r"|cure ?(?:#|no\.? ?|number ?)? ?2|table salt|wrong (?:salt|cure)"
                       r"|saltpet\w{1,3}|nitrate)\b|\bwrong (?:salt|cure) (?:in|went)\b"
                       r"|\b(?:its|it is|it was|that is|thats|was) (?:the |really |actually )*(?:pink )?(?:cure|salt) ?"
                       r"(?:#|no\.? ?|number ?)? ?2\b"),
    )
)  # fmt: skip
_PLACE: Final = {"fire_out": "core_c", "left_out": "room_c", "warm_fridge": "room_c", "warm_brine": "room_c"}
_NITRATE: Final = re.compile(r"\b(?:cure|salt) ?(?:#|no\.? ?|number ?)? ?2\b|\bsaltpet|\bnitrate\b")
_NOT_THE_OTHER: Final = re.compile(r",? ?\bnot (?:cure )?(?:#|no\.? ?|number ?)?1\b")  # «its cure no 2, not 1»
_DENIED: Final = re.compile(
    r"\b(?:not|isnt|hasnt|didnt|dont|couldnt|could not|nobody|never|no longer|if|what if|when|should|before)\b"
)
_COOKER: Final = re.compile(r"\b(?:pellets?|grill|smoker|cooker|auger|controller)\b")
_WE_WERE_OUT: Final = re.compile(
    r"^(?:(?:i|we|sorry|ok|just|just back) )*(?:was|were) out(?:,|$| (?:and|so|last|at|with)\b)"
)
_PROBE_OUT: Final = re.compile(
    r"\b(?:probe|thermometer|sensor|display)s? (?:is|was|were|had been|fell|lay|sat|stood"
    r"|out)\b"
)
_SOMEBODY_OUT: Final = re.compile(  # «no flip today was out»: nothing that lies in the cold is said to be out
    r"(?<!it )(?<!meat )(?<!bag )(?<!bags )(?<!they )(?<!that )(?<!brisket )(?<!ham )(?<!flat )(?<!belly )(?<!piece )"
    r"\bwas out$"
)
_NOT_CURE: Final = re.compile(
    r",? (?:and )?(?:not|no|instead of) (?:the )?(?:curing (?:salt|one|stuff)|pink salt"
    r"|curing|pink|cure|right (?:one|stuff))$"
)
_BESIDE_THE_CURE: Final = re.compile(  # more salt, and no other in its place
    r"\b(?:as well|too|also|on top|besides|in addition|plus|along ?side|with (?:it|the cure|the pink"
    r"|the curing salt))\b"
)
_ASKED_TOO: Final = re.compile(r"\b(?:can i|ok\b|safe|is it|what now)\b")
_HOURS: Final = re.compile(r"\b(?:for|about|after|since)? ?(?=(?:\d|half|an? |a couple))")
_BEFORE_THE_COLD: Final = re.compile(
    r",? ?\bbefore (?:(?:it|i|we|she|he|they) (?:went|put|got|started|could|came)[^,;]*|(?:the |its )?(?:ice"
    r"|chill|fridge|bath)\b[^,;\d]*)"
)
_TO_OVEN: Final = re.compile(r"\b(?:in|into|to) (?:the |my )?oven\b")  # where it goes on at once
_ON_FIRE: Final = ("drying", "cooking", "resting")
_OVERNIGHT: Final = re.compile(r"\b(?:overnight|all night|über nacht)\b")
_PINK: Final = re.compile(
    r"\b(?:pink|rosa)\b.{0,24}\b(?:all (?:the way )?through|throughout|through|all over|to the middle|edge to edge"
    r"|everywhere|durch)\b|^(?:all|fully|completely|totally|nice) (?:and )?pink\b|\bno grey\b|\bno gray\b"
    r"|\bpink all the way$|\bnot grey\b|\bdurchgehend rosa\b"
)
_GREY: Final = re.compile(r"\b(?:grey|gray|grau\w{0,2}|brown)\b")
_NO_GREY: Final = re.compile(r"\b(?:no|not|without|never|nothing) (?:any )?(?:grey|gray|brown)\b")
_GREY_INSIDE: Final = re.compile(
    r"\b(?:grey|gray|brown)(?:ish)? (?:\w+ ){0,2}?(?:stripe|line|band|ring|spot|patch|bit|core|streak"
    r"|middle|cent(?:er|re))"
    r"|\b(?:middle|cent(?:er|re)|inside)(?: \w+){0,2} (?:is |was |still )*(?:grey|gray)\b"
)
_CUT_TO_LOOK: Final = re.compile(r"\b(?:cut|cutting|sliced?|slicing|opened it|test (?:cut|slice)|corner)\b")
_OF: Final = re.compile(r"\b(?:of|out of|from|von)\b")
_OF_ANOTHER: Final = re.compile(r"\b(?:last time|next (?:time|one)|same again)\b")
_TRIMMED: Final = re.compile(r"trim|\b(?:took|cut|sliced|shaved)\b.{0,30}\boff\b|\bof fat\b")
_AFTER: Final = re.compile(
    r"\b(?:after(?! (?:the )?trim)|cooked|finished|in the end|at the end|came out|final(?:ly)?|yielded"
    r"|weighs? (?:out|in)|end weight|\d{1,3} ?(?:kg|kilos?|lbs?|pounds?) (?:left )?out of(?= \d)"
    r"|ended(?: up| at)?|\d{1,4}(?:\.\d{1,3})? ?(?:kg|g|gr|grams?|kilos?|lbs?|pounds?) left|when (?:its )?done"
    r"|danach)\b"
)

_PRAISE: Final = re.compile(  # a mark, or a word for how it was
    r"\b(?:10|[0-9](?:\.5)?) ?(?:/|(?:out )?of) ?10\b|\b[1-5] ?(?:/|out of) ?5\b|\b[1-5] stars?\b"
    r"|\b(?:best (?:yet|ever|one|so far)|delicious|lovely|lush|yummy|tasty|banging|fantastic|brilliant|loved it"
    r"|so good|chewy|smoky|juicy)\b|(?<!pat )(?<!pat it )(?<!to )\b(?:dry|tough)\b(?! it\b)"
)
_ANOTHER: Final = re.compile(r"\b(?:again|another|next|same|new)\b")  # the weight of the next piece
_BARE_AFTER: Final = re.compile(  # in the unit in which this person weighs
    r"^(?:the )?(?:final |end |cooked )?(?:weight|weighs|weighed)\b[^\d]{0,24}"
    r"(?P<value>\d{1,2}(?:\.\d{1,3})?)(?: now)?$"
)
_LEAST_LEFT: Final = 0.35  # of the raw mass
_MOST_LEFT: Final = 1.1  # of the raw mass: more than that no cook leaves, a slab that took up brine included
_WEIGHS: Final = re.compile(r"\b(?:weighs?|weighed|its|it is|it was|now|got)\b")


LONGEST_COOK_H: Final = 48.0
_TOOK: Final = re.compile(
    r"\btook (?:us |me )?(?:in all |all in all )?(?:about |around |roughly |nearly |almost |just (?:over|under)"
    r" |only )?(?:\d|an?\b|half\b)[^,;]*?(?:m|min|mins|minutes|h|hrs?|hours?|stunden?)\b"
    r"(?: ?\d{1,2}(?: ?(?:m|min|minutes))?)?"
    r"(?! to (?:light|get|come|heat))|^(?:\d[^,;]*?(?:h|hrs?|hours?)) (?:on the (?:fire|smoker|grill|pit)"
    r"|in the smoker)(?: in all| altogether)?$"
)


@dataclass(frozen=True)
class Told:
    """An incident, and the text without the words for it."""

    happened: Happened
    rest: str


def read_happened(text: str, context: Context) -> Told | None:
    """An incident, where a plain text tells of one."""
    text = _NOT_THE_OTHER.sub("", _NOT_CURE.sub("", _BEFORE_THE_COLD.sub("", text)))
    if _DENIED.search(text) and not text.startswith(("i didnt", "we didnt", "didnt")):
        return None
    hit = next(_WHAT.hits(text), None)
    if hit is None:
        return None
    found, what = hit
    if what == "power_cut" and context.phase == "cooking" and _COOKER.search(text):
        what = "fire_out"  # what burns by the mains stands still
    if what == "wrong_salt" and _BESIDE_THE_CURE.search(text):
        return None
    if what == "left_out" and (_PROBE_OUT.search(text) or _WE_WERE_OUT.match(text) or _SOMEBODY_OUT.search(text)):
        return None
    if what == "fire_out" and (context.phase not in _ON_FIRE or _TO_OVEN.search(text)):
        return None
    if what == "cure_in_rub" and context.phase in ("none", "waiting") and found[0].startswith("rubbed"):
        return None  # before it is in the cure that is how a dry one goes in
    facts, lasted = _facts(what, text), lasting.plainly(text)
    if lasted:
        facts["hours"] = lasted
    said = when.past(text, context) if not lasted else None
    rest = f"{text[: found.start()]} {text[found.end() :]}".strip(" ,")
    return Told(Happened(what, facts, said.at if said else None), rest)


def _facts(what: str, text: str) -> dict[str, Any]:
    facts: dict[str, Any] = {"overnight": True} if _OVERNIGHT.search(text) else {}
    if what == "wrong_salt":
        facts["salt"] = "nitrate" if _NITRATE.search(text) else "no_cure"
    temperatures = measures.of_kind(text, "temperature")
    if len(temperatures) == 1:
        place = _PLACE.get(what, "celsius")
        facts[place] = temperatures[0].value
    return facts


def read_debrief(text: str, context: Context) -> Intent | None:
    """The weight after, the grey in the middle, the salt, where a plain text tells of them."""
    lengths = [m for m in measures.of_kind(text, "length") if m.low is None]
    grey, of = _grey(text, lengths)
    salt = saltiness(text)
    raw = context.phase in ("waiting", "curing", "drying") and grey is None
    if raw or _OF_ANOTHER.search(text):
        salt = None  # a fry test, or another batch, and not the finished slice
    mass, hours = _mass_after(text, context), _hours_taken(text, context)
    seen = grey is None and seen_grey(text, context)
    rated = mark(text) if context.phase in ("resting", "chilling", "stored") else None
    if mass is None and (grey is not None or salt is not None or rated is not None):
        mass = _mass_beside(text, context)
    if grey is None and salt is None and mass is None and hours is None and not seen and rated is None:
        praised = context.phase in ("chilling", "stored") and _PRAISE.search(text) and not text.endswith("?")
        return Debrief() if praised else None
    return Debrief(mass, grey, of, salt, hours=hours, unmeasured=seen, rated=rated)


def _mass_beside(text: str, context: Context) -> float | None:
    """«pink through, bit salty, 5.1 lb»: a weight with no word of its own, told of the finished piece. [kg]"""
    masses = measures.of_kind(text, "mass")
    finished = context.phase in ("chilling", "stored") and context.mass is not None and len(masses) == 1
    if not finished or masses[0].low is not None or _TRIMMED.search(text) or context.mass is None:
        return None
    return masses[0].value if _LEAST_LEFT * context.mass <= masses[0].value <= _MOST_LEFT * context.mass else None


def seen_grey(text: str, context: Context) -> bool:
    """Whether a grey middle is told of without its width: of cooked meat, or of raw meat that was cut to look."""
    looked = context.phase in ("resting", "chilling", "stored") or (
        context.phase in ("curing", "drying") and _CUT_TO_LOOK.search(text)
    )
    return bool(looked and not text.endswith("?") and _GREY_INSIDE.search(_NO_GREY.sub(" ", text)))


def _hours_taken(text: str, context: Context) -> float | None:
    """How long it was on the fire, told when it is off."""
    found = _TOOK.search(text) if context.phase in ("resting", "chilling", "stored") else None
    length = when.span(found[0]) if found else None
    hours = length.total_seconds() / 3600 if length else 0.0
    return round(hours, 4) if 0.25 <= hours <= LONGEST_COOK_H else None


def _grey(text: str, lengths: list[measures.Measure]) -> tuple[float | None, float | None]:
    if _PINK.search(text) and not _GREY.search(_NO_GREY.sub(" ", text)):
        return 0.0, None  # not «all through except a grey stripe», nor «one is pink all through, the other grey inside»
    if not _GREY.search(text) or not lengths:
        return None, None
    of = lengths[1].value if len(lengths) > 1 else _whole(text, lengths[0])
    if of is not None and of < lengths[0].value:
        return None, None
    return lengths[0].value, of


def _whole(text: str, grey: measures.Measure) -> float | None:
    """The «48» of «12 mm in the middle of 48»: in the unit of the first."""
    found = re.search(r"\b(?:of|out of|von) (?:the )?(\d{1,3}(?:\.\d)?)(?![\w.])", text[grey.end :])
    return measures.to_house(float(found[1]), grey.unit) if found else None


def _mass_after(text: str, context: Context) -> float | None:
    masses = measures.of_kind(text, "mass")
    bare = _BARE_AFTER.match(text) if context.phase in ("chilling", "stored") and not masses else None
    if bare and context.mass:
        kilos = measures.to_house(float(bare["value"]), context.units.mass)
        return kilos if _LEAST_LEFT * context.mass <= kilos <= _MOST_LEFT * context.mass else None
    if _ANOTHER.search(text) or (context.mass and any(m.value > context.mass * _MOST_LEFT for m in masses)):
        return None
    usable = len(masses) == 1 and masses[0].low is None and 0.05 <= masses[0].value <= 50
    cooked = context.phase in ("resting", "chilling", "stored") and _WEIGHS.search(text)
    finished = (cooked or _AFTER.search(text)) and not _TRIMMED.search(text)
    return masses[0].value if usable and finished else None
