"""Answers to a question about the setup of a batch: strength, thickness, mass, cut, meal, pit, choices by a word.

While a batch is only half begun the answer is a Choose, which completes the start; later it is a Change.
"""

from collections.abc import Callable
from dataclasses import replace
from typing import Any, Final

from bot import measures
from bot.intents import when
from bot.intents.context import Context
from bot.intents.cures import bare_strength
from bot.intents.doses import BY_RATE
from bot.intents.intents import Change, Choose, Intent, Reading, Start, Unclear
from bot.intents.meats import bone, meat
from bot.intents.percents import odd_strength, open_strength, usual_cure
from bot.intents.small import content
from bot.intents.temperatures.plausible import Number, meanings, set_point
from bot.intents.thicknesses import BY_HAND, thickness_told, thicknesses
from bot.intents.vague import read_vague
from bot.intents.weights import HEAVIEST_KG, counted
from core import patterns as re
from core.batch.events import Probe
from core.meat.cuts import cuts

UNKNOWN: Final = re.compile(
    r"\b(?:dont know|do not know|dunno|no idea|not sure|no clue|idk|unknown|cant tell|doesnt say|does not say"
    r"|not on (?:it|the)|no label|(?:label|sticker|print)(?: is| has|s)? (?:rubbed|worn|washed|torn|peeled|come|came"
    r"|fell|gone|faded|smudged|missing)|(?:bag|packet|label|pouch)s? (?:is |are |was |got )?(?:torn|ripped)"
    r"|(?:cant|dont) (?:read|find|see) (?:it|the|what|an?|any)\b|keine ahnung|weiß nicht)\b|^\?+$"
)
_GUESSED: Final = re.compile(r"\b(?:prob(?:ably)?|something|somewhere|ish|guess\w*|roughly|maybe|perhaps|or so)\b")
_EXACT: Final = re.compile(r"(?<![\d.])\d{1,2}\.\d")  # «6.25 i guess»: nobody makes up the quarter
# «got cure no 2, thats fine right»: a kind of curing salt, and no strength
SECOND_KIND: Final = re.compile(
    r"\b(?:cure|curing salt|pink(?: curing)? salt|powder|packet|it)(?: (?:is|says|called|kind|type))* ?"
    r"(?:#|no\.?|nr\.?|number|type|kind)? ?(?:2|two)\b(?! ?(?:kg|kilos?|g|grams?|lbs?|pounds?|oz|%|days?|weeks?|h|l|tsp"
    r"|tbsp|cups?)\b)(?=.*\b(?:fine|ok|okay|right|good|alright|do|only|instead|safe|work)\b|$)"
)
_ALL_OR_EACH: Final = re.compile(
    r"(?:(?:its|it is|thats|that is|that was|the|of|for|weight|no|oh) )*"
    r"(?:(?P<all>(?:in |all )?(?:all|total|together)|both(?: together| of them)?|(?:all|both) of them|the lot|combined"
    r"|altogether)|each(?: one)?|apiece|per (?:piece|fillet|one)|every one)"
)
_NO_DEADLINE: Final = re.compile(
    r"\b(?:no (?:deadline|rush|hurry|date|idea)|whenever|any ?time|doesnt matter|dont care|open|none|not fixed)\b"
)
_MADE: Final = r"\b(?:made|mixed|done|stirred|chilled|cooled|cooling|ready|boiled|dissolved)\b"  # and no choice
_CHOICES: Final[dict[str, tuple[tuple[str, str], ...]]] = {
    "method": (("inject", r"\b(?:inject\w{0,3}|pump)\b"), ("dry", r"\bdry\b"),
               ("brine", rf"^(?!.*{_MADE}).*\b(?:wet|brine|bag)\b")),
    "purpose": (("thin", r"\b(?:thin|deli)\b"), ("cold", r"\bcold\b"), ("hot", r"\b(?:hot|warm)\b"),
                ("pulled", r"\b(?:pulled|shredded)\b")),
    "wrap": (("none", r"\b(?:no|none|unwrapped|naked|nothing)\b"), ("paper", r"\bpaper\b"), ("foil", r"\bfoil\b")),
    "chill": (("ice", r"\bice\b"), ("fan", r"\bfan\b"), ("rack", r"\brack\b"), ("foil", r"\bfoil\b")),
    "cooker": (("ceramic", r"\b(?:ceramic|kamado)\b"), ("steel", r"\b(?:steel|drum|bullet|barrel)\b"),
               ("kettle", r"\bkettle\b"), ("pellet", r"\bpellets?\b"),
               ("offset", r"\boffset\b"), ("gas", r"\bgas\b"), ("electric", r"\belectric\b")),
}  # fmt: skip
# what may stand around the quantity that was asked for
_AROUND: Final = (
    r"its|it is|it|is|was|thats|that|the|an?|my|about|around|roughly|approx|maybe|probably|exactly|just|ones?|i think"
    r"|i guess|id say|say|says|said|reads|shows|so|yes|yeah|yep|ok|should be|at|of|on"
)
_NAMED: Final = {
    "cure": r"cure|curing salt|pink salt|salt|sodium|nitrite|strength|bag|tub|packet|pack|package|packaging|label|jar",
    "thickness": r"thick|thickness|thickest (?:part|spot|bit)|in the middle",
    "mass": r"weighs?|weight|heavy|meat|piece|scales?",
    "pit_c": r"pit|smoker|grill|cooker|set|runs?",
    "fridge_c": r"fridge|runs?|set",
}
_QUANTITY: Final = re.compile(rf"(?:{measures.NUMBER}) ?(?:[a-z%°\"]+)?")
_A_DEED: Final = re.compile(r":|\b(?:done|made|flipped|turned|rinsed|in|on|off|out|wrapped|read|plan)\b")
_SHORT: Final = 2  # words
FIRST_OR_SECOND: Final = re.compile(  # the kind of a curing salt by its number alone
    r"^(?:(?:its|it is|the|a|my|pink|curing|salt|cure|prague|powder|stuff|kind|type|number|no|nr|grade|says|got) )*#? ?"
    r"(?:1|(?P<second>2)|(?:(?:one|1st|first)|(?P<other>two|2nd|second)) (?:kind|type|sort|stuff|powder|salt|cure))$"
)
_CURING_WORD: Final = re.compile(r"\b(?:cure|curing|prague|pink|powder)\b")
# «6.25 / 5»: of two strengths none is taken
_TWO_NUMBERS: Final = re.compile(r"\d\.\d+ ?(?:/|or|to|-) ?\d|\d ?(?:/|or|to|-) ?\d+\.\d|\d or \d")
_COLD_CHECKS: Final = ("fridge_check", "brine")


def is_second_kind(text: str) -> bool:
    """«cure 2», «prague powder 2»: the kind with nitrate by its number, and no strength."""
    kind = FIRST_OR_SECOND.search(text) if _CURING_WORD.search(text) else None
    return kind is not None and bool(kind["second"] or kind["other"])


def answer(slot: str, value: Any, context: Context) -> Intent:
    """The answer to a question about a field: of the start that is half said, or of the batch in hand."""
    of_start = context.asked_of_start or context.phase == "none"
    return Choose(slot, value) if of_start else Change({slot: value})


# «no curing salt, just a normal brine», asked how strong it is: salted, and not cured
_NONE: Final = re.compile(
    r"\b(?:no|without|zero|not any) (?:(?:pink |curing )?(?:cure|salt cure|curing salt|nitr[ai]tes?)|pink(?: salt)?)\b"
    r"|\b(?:dont|do not|not|wont|arent|are not|isnt|never) (?:be |want |going to |gonna )?"
    r"(?:use|using|want|curing|cure|having)\b"
    r"(?=,|$| (?:any|it|this|that|them|one|the (?:meat|bird|fish))\b| (?:pink|cur|nitr))"
    r"|^(?:(?:its|it is|just|only|with|an?|use|using|regular|normal|plain|ordinary) )*(?:regular|normal|plain|ordinary"
    r"|just|only)(?: an?)? (?:salt|salt brine|salt water|table salt|kosher salt|sea salt)(?: only| alone)?$"
    r"|^none(?:,? (?:of it|just|only|plain|salt|sugar|and|pepper))*$"
    r"|^(?:(?:ill|well|we|i|lets|gonna|will|just|only) )*use (?:just |only )?(?:(?:regular|normal|plain|table|sea"
    r"|kosher) )?salt(?: only| alone| then)?$"
)
_NUMBERED: Final = re.compile(r"(?:#|\b(?:number|no|nr)\.?) ?[12]\b")  # «not cure #2»: then another, and not none
_METHODS: Final = (("brine", re.compile(r"\bbrin(?:e|ing)\b")), ("dry", re.compile(r"\bdry\b")))


_WHAT_FOR: Final = re.compile(  # asked back, of what was asked
    r"(?:so |and |but )?(?:(?:why )?(?:does|do|would) (?:it|that|this) matter|why(?: do you (?:ask|need (?:it|that)))?"
    r"|how (?:do|can|would) i (?:find (?:it |that )?out|know(?: that)?|tell|check)"
    r"|where (?:do i find|is|does it say) (?:it|that)|what (?:does (?:that|it)|do you) mean"
    r"|(?:where|what(?! does)|which)\b[^,;\d]*\b(?:percent\w*|strength|number|figure)\b[^,;\d]*)"
)


def _cure(text: str, context: Context) -> Intent | None:
    if _NONE.search(text) and not _NUMBERED.search(text) and not measures.of_kind(text, "fraction"):
        way = next(({"method": name} for name, said in _METHODS if said.search(text)), {})
        return Change({"nitrite_target": 0.0, **way})
    share = measures.sole(text, "fraction")
    value = share.value if share else None
    if share is None and (kind := FIRST_OR_SECOND.search(text)):  # «pink salt 1», and no 1 %: which, not how strong
        return Choose("cure", "second" if kind["second"] or kind["other"] else "unknown")
    if _guesses(text) or _WHAT_FOR.fullmatch(text.strip(" ?")):  # a guess gives no dose
        return Choose("cure", "unknown")
    if value is None and (number := measures.number(text)) is not None:
        if number < 0.1:  # 0.0625 may be a fraction or a percentage: a hundredfold dose
            options = tuple(Change({"cure_nitrite_fraction": v}) for v in (number, number / 100) if usual_cure(v))
            return Unclear("number", text[:60], options)
        if not usual_cure(number / 100):  # «4» may be the fridge
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
    if (
        isinstance(by_spoon := read_vague(text, replace(context, asked=None, phase="waiting")), Unclear)
        and by_spoon.why == "grams"
    ):
        return by_spoon
    if open_strength(text) or UNKNOWN.search(text) or BY_RATE.search(text):
        return Choose("cure", "unknown")
    return _choice("method")(text, context) if len(text.split()) <= _SHORT else None  # «dry», said beside the question


def _guesses(text: str) -> bool:
    """Whether a number is told that nobody read on the packet: «dunno, prob 6 something»."""
    doubts = (UNKNOWN.search(text) or _GUESSED.search(text)) and not _EXACT.search(text)
    return bool(doubts) and bool(re.search(r"\d", text)) and not measures.of_kind(text, "length")


def _thickness(text: str, context: Context) -> Intent | None:
    length = measures.sole(text, "length") or measures.sole(f"{text} thick", "length")
    if length:
        return answer("thickness", length.value, context)
    if BY_HAND.search(text):
        return Unclear("ruler", text[:60])
    if told := thickness_told(text, context):
        return _either("thickness", told, text, context, why="thickest")
    number = measures.number(text)
    if number is None:
        return Choose("thickness", "unknown") if UNKNOWN.search(text) else None
    if 33 <= number <= 46 and (context.due_step or "").startswith(_COLD_CHECKS):
        both = (answer("thickness", measures.to_house(number, "mm"), context), *_cold_readings(number, context))
        return Unclear("number", text[:60], both)
    return _either("thickness", thicknesses(number, text, context), text, context)


def _either(slot: str, values: tuple[float, ...], text: str, context: Context, *, why: str = "unit") -> Intent:
    """The one value that was told, or the question which of several."""
    options = tuple(answer(slot, value, context) for value in values)
    return options[0] if len(options) == 1 else Unclear(why, text[:60], options)


def _cold_readings(number: float, context: Context) -> tuple[Reading, ...]:
    """A number as the reading that was called for while another question was open."""
    return tuple(Reading((t,)) for t in meanings(Number(number), context))


def _mass(text: str, context: Context) -> Intent | None:
    mass = measures.sole(text, "mass")
    if mass and 0 < mass.value <= HEAVIEST_KG:
        return answer("mass", mass.value, context)
    if context.asked_of_start and (said := counted(text)):
        return Start(said)
    number = measures.number(text)
    if number is None or mass:
        return None
    fits = 0 < number <= HEAVIEST_KG
    return _either("mass", tuple(measures.to_house(number, u) for u in ("kg", "lb")) if fits else (), text, context)


def _share(text: str, context: Context) -> Intent | None:
    """Whether one weight of several pieces is that of each or of all; else a weight anew."""
    found = _ALL_OR_EACH.fullmatch(text)
    return Choose("share", "all" if found["all"] else "each") if found else _mass(text, context)


def _mass_unit(text: str, context: Context) -> Intent | None:
    found = re.fullmatch(
        r"(?:in |its |it is |the )?(?P<kg>kgs?|kilos?|kilograms?)|(?:in |its |it is |the )?(?:lbs?|pounds?)", text
    )
    return Choose("mass_unit", "kg" if found["kg"] else "lb") if found else _mass(text, context)


def _deadline(text: str, context: Context) -> Intent | None:
    if _NO_DEADLINE.search(text):
        return answer("deadline", None, context)
    if len(text.split()) > 7:
        return None
    if when.open_hour(text, context) and (said := when.meal(when.hour_after_day(text, context), context)):
        return Unclear("word", text[:60], (answer("deadline", said.at, context),))
    said = when.meal(text, context)
    number = re.fullmatch(r"(?:at )?(\d{1,2})", text)
    said = when.meal(f"at {number[1]}", context) if number else said
    if said is None:
        return None
    options = tuple(answer("deadline", at, context) for at in (said.at, *said.others))
    return options[0] if len(options) == 1 else Unclear("word", text[:60], options)


def _cut(text: str, context: Context) -> Intent | None:
    if _A_DEED.search(text):  # «flat: made the brine» is about another batch, and no answer
        return None
    named = meat(text)
    if found := bone(text):
        return Choose("cut", found)
    if re.fullmatch(r"(?:the |a )?(?:beef )?round", text):
        return Choose("cut", "beef_round")
    known = named.cut in cuts() and not re.search(r"\d", text)
    if named.cut == "brisket" and len(text.split()) <= 2:
        return Unclear("word", text, (Choose("cut", "brisket_flat"), Choose("cut", "brisket_point")))
    return Choose("cut", named.cut) if known else None


def _field(name: str) -> Callable[[str, Context], Intent | None]:
    """A temperature of the setup: in the unit that was said, else in the person's own where only that can be."""

    def reader(text: str, context: Context) -> Intent | None:
        if said := measures.sole(text, "temperature"):
            return Change({name: said.value})
        if (number := measures.number(text)) is None:
            return None
        probe = Probe.PIT if name == "pit_c" else Probe.FRIDGE
        units = set_point(probe, number)
        options: tuple[Intent, ...] = tuple(Change({name: measures.to_house(number, unit)}) for unit in units)
        return options[0] if len(options) == 1 else Unclear("unit", text[:60], options)

    return reader


def _choice(slot: str) -> Callable[[str, Context], Intent | None]:
    """One of the words of a slot, in a short answer."""

    def reader(text: str, context: Context) -> Intent | None:
        hits: list[Any] = [value for value, words in _CHOICES[slot] if re.search(words, text)]
        return Change({slot: hits[0]}) if hits and len(text.split()) <= 5 and not re.search(r"\d", text) else None

    return reader


def _said_short(slot: str, reader: Callable[[str, Context], Intent | None]) -> Callable[[str, Context], Intent | None]:
    """The reader, with «the packet says 6.25» or «about 2 inches i think» as the quantity alone."""
    filler = re.compile(rf"\b(?:{_AROUND}|{_NAMED[slot]})\b")

    def short(text: str, context: Context) -> Intent | None:
        left = " ".join(filler.sub(" ", text).split()).strip(" ,.!:=")
        alone = _QUANTITY.fullmatch(left)
        return reader(left if alone else text, context)

    return short


SETUP_READERS: Final[dict[str, Callable[[str, Context], Intent | None]]] = {
    "cure": _said_short("cure", _cure), "thickness": _said_short("thickness", _thickness),
    "mass": _said_short("mass", _mass), "mass_unit": _mass_unit, "share": _share, "cut": _cut, "deadline": _deadline,
    "pit_c": _said_short("pit_c", _field("pit_c")), "fridge_c": _said_short("fridge_c", _field("fridge_c")),
    "method": _choice("method"),
    "purpose": _choice("purpose"),
    "wrap": _choice("wrap"), "chill": _choice("chill"), "cooker": _choice("cooker"),
}  # fmt: skip
