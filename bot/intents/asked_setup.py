"""Answers to a question about the setup of a batch: strength, thickness, mass, cut, meal, pit, choices by a word.

While a batch is only half begun the answer is a Choose, which completes the start; later it is a Change.
"""

from collections.abc import Callable
from typing import Any, Final

from bot import measures
from bot.intents import when
from bot.intents.asked_cure import UNKNOWN, asked_back, guesses, strength_said
from bot.intents.context import Context
from bot.intents.intents import Change, Choose, Intent, Reading, Start, Unclear
from bot.intents.meats import OTHER_CUT, bone, meat
from bot.intents.temperatures.plausible import Number, meanings, set_point
from bot.intents.thicknesses import BY_HAND, thickness_told, thicknesses
from bot.intents.weights import A_CORE_F, HEAVIEST_KG, counted
from core import patterns as re
from core.batch.events import Probe
from core.meat.cuts import cuts

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
_COLD_CHECKS: Final = ("fridge_check", "brine")


def answer(slot: str, value: Any, context: Context) -> Intent:
    """The answer to a question about a field: of the start that is half said, or of the batch in hand."""
    of_start = context.asked_of_start or context.phase == "none"
    return Choose(slot, value) if of_start else Change({slot: value})


def _cure(text: str, context: Context) -> Intent | None:
    """The curing salt; or «dry», said beside the question."""
    short = len(text.split()) <= _SHORT
    return asked_back(text) or strength_said(text, context) or (_choice("method")(text, context) if short else None)


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
    if context.asked_of_start and (other := OTHER_CUT.search(text)):  # «pork neck, 2.2 kg»
        return Start({"mass": mass.value} if mass else {}, (f"meat:{other[0]}",))
    if mass and 0 < mass.value <= HEAVIEST_KG:
        return answer("mass", mass.value, context)
    if context.asked_of_start and (said := counted(text)):
        return Start(said)
    number = measures.number(text)
    if number is None or mass or number in A_CORE_F:
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
    if _NO_DEADLINE.search(text) and when.meal(_NO_DEADLINE.sub("", text), context) is None:
        return answer("deadline", None, context)
    text = _NO_DEADLINE.sub("", text).strip(" ,.;")  # «no rush, maybe sunday the 10th»
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
        alone = _QUANTITY.fullmatch(left) and not (slot == "cure" and guesses(text))
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
