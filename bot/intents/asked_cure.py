"""The answer to which curing salt it is: its strength by what the packet says, its kind, or that there is none."""

from typing import Final

from bot import measures
from bot.intents.context import Context
from bot.intents.cures import bare_strength
from bot.intents.doses import BY_RATE
from bot.intents.intents import Change, Choose, Intent, Unclear
from bot.intents.percents import odd_strength, open_strength, usual_cure
from bot.intents.remarks import remark
from bot.intents.small import content
from core import patterns as re

UNKNOWN: Final = re.compile(
    r"\b(?:dont know|do not know|dunno|no idea|not sure|no clue|idk|unknown|cant tell|doesnt say|does not say"
    r"|not on (?:it|the)|(?:just |only |its |the )*pink (?:kind|sort|type|one|stuff)$|no label"
    r"|(?:label|sticker|print)(?: is| has|s)? (?:rubbed|worn|washed|torn|peeled|come|came"
    r"|fell|gone|faded|smudged|missing)|(?:bag|packet|label|pouch)s? (?:is |are |was |got )?(?:torn|ripped)"
    r"|(?:cant|dont) (?:read|find|see) (?:it|the|what|an?|any)\b|keine ahnung|weiß nicht)\b|^\?+$"
)
_GUESSED: Final = re.compile(
    r"\b(?:prob(?:ably)?|something|somewhere|guess\w*|i (?:think|reckon|believe)|roughly|maybe|perhaps|or so)\b|ish\b"
)
_EXACT: Final = re.compile(r"(?<![\d.])\d{1,2}\.\d")  # «6.25 i guess»: nobody makes up the quarter
# «got cure no 2, thats fine right»: a kind of curing salt, and no strength
SECOND_KIND: Final = re.compile(
    r"\b(?:cure|curing salt|pink(?: curing)? salt|powder|packet|it)(?: (?:is|says|called|kind|type))* ?"
    r"(?:#|no\.?|nr\.?|number|type|kind)? ?(?:2|two)\b(?! ?(?:kg|kilos?|g|grams?|lbs?|pounds?|oz|%|days?|weeks?|h|l|tsp"
    r"|tbsp|cups?)\b)(?=.*\b(?:fine|ok|okay|right|good|alright|do|only|instead|safe|work)\b|$)"
)
FIRST_OR_SECOND: Final = re.compile(  # the kind of a curing salt by its number alone
    r"^(?:(?:its|it is|the|a|my|pink|curing|salt|cure|prague|powder|stuff|kind|type|number|no|nr|grade|says|got) )*#? ?"
    r"(?:1|(?P<second>2)|(?:(?:one|1st|first)|(?P<other>two|2nd|second)) (?:kind|type|sort|stuff|powder|salt|cure))$"
)
_CURING_WORD: Final = re.compile(r"\b(?:cure|curing|prague|pink|powder)\b")
# «6.25 / 5»: of two strengths none is taken
_TWO_NUMBERS: Final = re.compile(r"\d\.\d+ ?(?:/|or|to|-) ?\d|\d ?(?:/|or|to|-) ?\d+\.\d|\d or \d")


def is_second_kind(text: str) -> bool:
    """«cure 2», «prague powder 2»: the kind with nitrate by its number, and no strength."""
    kind = FIRST_OR_SECOND.search(text) if _CURING_WORD.search(text) else None
    return kind is not None and bool(kind["second"] or kind["other"])


# «no curing salt, just a normal brine», asked how strong it is: salted, and not cured
_NONE: Final = re.compile(
    r"\b(?:no|without|zero|not any) (?:(?:pink |curing )?(?:cure|salt cure|curing salt|nitr[ai]tes?)|pink(?: salt)?)\b"
    r"|\b(?:dont|do not|not|wont|arent|are not|isnt|never) (?:be |want |going to |gonna )?"
    r"(?:use|using|want|curing|cure|having)\b"
    r"(?=,|$| (?:any|it|this|that|them|one|the (?:meat|bird|fish))\b| (?:pink|cur|nitr))"
    r"|^(?:(?:its|it is|just|only|with|an?|use|using|regular|normal|plain|ordinary) )*(?:regular|normal|plain|ordinary"
    r"|just|only)(?: an?)? (?:salt|salt brine|salt water|table salt|kosher salt|sea salt)(?: only| alone)?$"
    r"|^(?:(?:no|nah|nope|none)?,? ?)(?:(?:i|we|ill|have|got|want|its|it is),? )*(?:just|only)(?: an?| the)?"
    r" (?:(?:regular|normal|plain|table|kosher|sea) )?(?:salt(?: (?:brine|water))?|wet brine|brine)"
    r"(?: (?:only|alone|please|and (?:sugar|water|pepper)))*$"
    r"|^none(?:,? (?:of it|just|only|plain|salt|sugar|and|pepper))*$"
    r"|^(?:(?:ill|well|we|i|lets|gonna|will|just|only) )*use (?:just |only )?(?:(?:regular|normal|plain|table|sea"
    r"|kosher) )?salt(?: only| alone| then)?$"
)
_NUMBERED: Final = re.compile(r"(?:#|\b(?:number|no|nr)\.?) ?[12]\b")  # «not cure #2»: then another, and not none
_METHODS: Final = (("dry", re.compile(r"\bdry\b")), ("brine", re.compile(r"\bbrin(?:e|ing)\b")))
_WHAT_FOR: Final = re.compile(  # asked back, of what was asked
    r"(?:so |and |but )?(?:(?:why )?(?:does|do|would) (?:it|that|this) matter|why(?: do you (?:ask|need (?:it|that)))?"
    r"|how (?:do|can|would) i (?:find (?:it |that )?out|know(?: that)?|tell|check)"
    r"|where (?:do i find|is|does it say) (?:it|that)|what (?:does (?:that|it)|do you) mean"
    r"|(?:where|what(?! does)|which)\b[^,;\d]*\b(?:percent\w*|strength|number|figure)\b[^,;\d]*)"
)
_NEEDED: Final = re.compile(  # asked back: whether it takes any
    r"(?:so |and |but |ok |wait,? )*(?:do|must|should|does) (?:i|we|you|it|the \w+|a \w+) (?:really |even |actually )?"
    r"(?:need|have to (?:use|have)|use|take)(?: (?:any|some|it|that|this|the|curing|cure|pink|salt|nitr[ai]tes?|one"
    r"|stuff|for \w+|at all))*"
    r"|(?:is|are) (?:it|that|curing salt|nitrites?|cure|pink salt)(?: really)? (?:needed|necessary|required|a must)"
    r"|(?:can|could) i (?:do (?:it )?without|skip (?:it|that|the (?:cure|curing salt|pink salt)))"
    r"|(?:and |but )?what if i (?:dont|havent)(?: (?:have|got|use|want))+(?: (?:any|it|that|some|one))?"
    r"|(?:i |we )?(?:dont|havent)(?: (?:have|got))+(?: (?:any|some|it|that))?(?: yet| here)?"
)
_WHAT_IS_IT: Final = re.compile(
    r"(?:so |and |sorry |er |um )*(?:what is|whats) (?:that|this|it|curing salt|pink salt|cure)"
)
# «no idea how long», «put 2 tsp in it»: said beside the question, and no answer to it
_OF_ANOTHER: Final = re.compile(
    r"\b(?:idea|know|sure|clue|dunno|idk|say|tell) (?:how (?!strong)|when|why|who|if|whether)\b"
    r"|\b(?:put|added|used|threw|stirred)\b[^,;]*\b(?:tsps?|tbsps?|(?:tea|table)?spoon\w*|cups?|pinch\w*|g|grams?|oz)\b"
)


def asked_back(text: str) -> Choose | None:
    """«do i need any», «whats that»: asked of the curing salt where its strength was asked for."""
    bare = text.strip(" ?.!")
    about = "needed" if _NEEDED.fullmatch(bare) else "what" if _WHAT_IS_IT.fullmatch(bare) else ""
    return Choose("cure", about) if about else None


def strength_said(text: str, context: Context) -> Intent | None:
    """What a plain text says of the curing salt that was asked for; None where it speaks of something else."""
    if _OF_ANOTHER.search(text):
        return None
    if _NONE.search(text) and not _NUMBERED.search(text) and not measures.of_kind(text, "fraction"):
        way = next(({"method": name} for name, said in _METHODS if said.search(text)), {})
        return Change({"nitrite_target": 0.0, **way})
    share = measures.sole(text, "fraction")
    value = share.value if share else None
    if share is None and (kind := FIRST_OR_SECOND.search(text)):  # «pink salt 1», and no 1 %: which, not how strong
        return Choose("cure", "second" if kind["second"] or kind["other"] else "unknown")
    if guesses(text) or _WHAT_FOR.fullmatch(text.strip(" ?")):  # a guess gives no dose
        return Choose("cure", "unknown")
    if value is None and (number := measures.number(text)) is not None:
        if number < 0.1:  # 0.0625 may be a fraction or a percentage: a hundredfold dose
            options = tuple(Change({"cure_nitrite_fraction": v}) for v in (number, number / 100) if usual_cure(v))
            return Unclear("number", text[:60], options)
        if not usual_cure(number / 100) or number.is_integer():  # «4» or «5» may be the fridge
            odd = odd_strength(number / 100)
            return odd if odd.options else Unclear("number", text[:60])
        value = number / 100
    if (
        value is None
        and len(shares := measures.find(text)) == 1
        and shares[0].kind == "fraction"
        and len(content(text)) <= 1
    ):
        value = shares[0].value  # «it's 6.25 % I think»
    value = value or (None if _TWO_NUMBERS.search(text) else bare_strength(text))  # «pink salt from the store, 6.25»
    if value is not None:
        return Change({"cure_nitrite_fraction": value}) if usual_cure(value) else odd_strength(value)
    lengths = measures.of_kind(text, "length")
    if len(lengths) == 1 and UNKNOWN.search(text):  # «dunno about two inches»: what they do know is how thick it is
        return Change({"thickness": lengths[0].value})
    if SECOND_KIND.search(text):
        return Choose("cure", "second")
    if remark(bare := text.strip(" .!?"), "waiting") == "grams":  # told by the spoon
        return Unclear("grams", bare)
    if open_strength(text) or UNKNOWN.search(text) or BY_RATE.search(text):
        return Choose("cure", "unknown")
    return None


def guesses(text: str) -> bool:
    """Whether a number is told that nobody read on the packet: «dunno, prob 6 something»."""
    doubts = (UNKNOWN.search(text) or _GUESSED.search(text)) and not _EXACT.search(text)
    return bool(doubts) and bool(re.search(r"\d", text)) and not measures.of_kind(text, "length")
