"""What is grave whatever stands around it: an emergency at any time, a dangerous wish, a mishap that no deed hides."""

from typing import Final

from bot.intents import lasting
from bot.intents.cold_smoked import COLD_SMOKED, read_cold_smoked
from bot.intents.context import Context
from bot.intents.cures import ATE
from bot.intents.incidents import WARM_PLACE, not_the_meat
from bot.intents.intents import (
    Ask,
    Change,
    Choose,
    Correct,
    HandOver,
    Happened,
    Intent,
    Question,
    Reading,
    Start,
    StepDone,
    Temperature,
    Unclear,
)
from bot.intents.questions import is_question
from bot.intents.sums.of_heat import HOT_CORE
from bot.measures import to_house
from core import patterns as re
from core.answers.dangers import as_typed, grave
from core.batch.events import Probe
from core.plan.steps import Kind

_AT_ANY_TIME: Final = frozenset({"poison", "co-symptoms", "sick", "pet-salt", "harm"})
_AMOUNT: Final = re.compile(
    r"\d ?(?:g|grams?|mg|kg|kilos?|lbs?|pounds?|oz|ounces?|ppm|ml|l|lit(?:re|er)s?|[a-z]*sp|[a-z]* ?spoons?|cups?)\b"
)
_WENT_INTO: Final = re.compile(  # what it went into, or a level: of grams alone that went in no sum can judge
    r"\d ?(?:mg|kg|kilos?|lbs?|pounds?|oz|ounces?|ppm|l|lit(?:re|er)s?|gal|gallons?|qts?|quarts?)\b"
    r"|\d{3} ?(?:g|grams?|ml)\b|\b(?:per|an?|each|every) (?:kg|kilo|lb|pound|lit(?:er|re)|gallon|gal|quart)\b"
)
_TIMED: Final = re.compile(
    r"^(?!\D*\b(?:all night|overnight|for hours)\b\D*\d+\D*$).*\d"
)  # a night with no hour is no sum
_JUDGED: Final = {  # then a sum warns
    "more-cure": _AMOUNT,
    "by-eye": _AMOUNT,
    "too-much-cure": re.compile(rf"^(?!.*\b(?:heap\w+|rounded|piled)\b).*(?:{_WENT_INTO.pattern})"),  # no level spoon
    "fire-out": _TIMED,
    "pregnant": re.compile(r"\bhow (?:much|many)\b.*\b(?:brine|cure|curing|salt|water|grams?)\b"),
    "low-uncured": re.compile(r"\d{2,3} ?[cf]? at \d.*\b\d{2,3} ?[cf]? (?:now )?at \d"),  # as it cooled
}
_MISHAPS: Final = frozenset(
    {
        "left-out",
        "power-cut",
        "too-much-cure",
        "fire-out",
        "himalayan",
        "room-cure",
        "grease-fire",
        "warm-brine",
        "thaw-warm",
    }
)
_OUT_OF_THE_COLD: Final = frozenset({"left-out", "room-cure"})
_HAS_STOOD: Final = re.compile(
    r"\b(?:was|were|been|sat|stood|lay|left|forgot\w*|stayed|found|took)\b.*"
    rf"\b(?:out|outside|room temp\w*|{WARM_PLACE})\b"
)
_WISHES: Final = re.compile(
    r"\b(?:can|could|may|will|would|should|shall|if|gonna|going|want|plan\w*|tonight|tomorrow|till?|until|phone|keys)\b"
)
_GREASE_FIRE: Final = "grease-fire"
_FIRE_OUT: Final = "fire-out"
_AT_THE_FIRE: Final = frozenset({_GREASE_FIRE, "open-lid", "fire-spreads", "burn"})
_WENT_OUT: Final = re.compile(
    r"\b(?:went|gone|is|its|was|put it|now) (?:all )?out\b(?! (?:of|the)\b)|\bdied\b|\bno fire\b"
)
_COLD: Final = frozenset({Probe.FRIDGE, Probe.BRINE})  # too warm there is told with the reading
COLD_SMOKE: Final = "cold-smoke"
_SWOLLEN: Final = "swollen"  # gas in a bag: something lives in it
_STUCK: Final = "stuck-low"
_UNDERDONE: Final = frozenset({"bird-under", "fish-raw"})  # told by what was read, which is noted too
_EATERS: Final = frozenset({"pregnant", "kids-eat"})  # who is at risk is noted, and warned of with it
PUT_IN: Final = frozenset({"grams", "spoons"})  # of a dose that no scale weighed
_COMPUTED: Final = frozenset({"judge", "poison", "law"})


def read_danger(text: str, shown: str, context: Context) -> Intent | None:
    """The question or call for help of a plain text that is grave by its words."""
    named = as_typed(text, shown)
    if named == COLD_SMOKE and (wished := read_cold_smoked(text, context)):
        return wished  # refused all the same, and what was said of the piece is kept
    if named == "poison" and ATE.search(text):
        return None  # who reads of cures calls for help at once
    if named in _AT_ANY_TIME or (named and context.phase == "none" and not _figured(named, text)):
        return Question(text if grave(text) else shown)  # what was left out as idle may be what is grave
    return None


def warned(found: list[Intent], text: str, shown: str, context: Context) -> list[Intent]:
    """What was read of a line about a batch: none of it where its words are grave, unless it tells of that mishap."""
    named = None if context.phase == "none" else as_typed(text, shown)
    named = None if named == _STUCK and found else named  # its own record says for how long, and in which degrees
    told = any(isinstance(intent, Happened) for intent in found)
    if len(found) == 1 and isinstance(found[0], Unclear) and found[0].why == "melted":  # asked how warm it is now
        return found
    if not told and (stood := _stood_out(named, text, context)):
        return [stood]
    if named == _SWOLLEN and context.phase != "waiting" and not is_question(text) and not _WISHES.search(text):
        found = [Happened("spoiled")]
    corrects = any(isinstance(intent, Correct) for intent in found)  # «60 instead of 48 g of cure» mends no reading
    if named in _AT_THE_FIRE:  # «grease fire, its out now» takes no meat off, «fat is on fire» hands nothing over
        burns = named == _GREASE_FIRE and not _WENT_OUT.search(text)
        found = [i for i in found if not isinstance(i, StepDone | HandOver) and not (burns and _is_out(i))]
        found = found or [Question(text)]
    if named == _FIRE_OUT and context.phase == "cooking" and not told and _WENT_OUT.search(text):
        return [Happened("fire_out"), *found]  # with the core that it was read at, the rules judge it
    if named is None or (_figured(named, text) and not corrects) or any(_weighed(intent, named) for intent in found):
        return found
    if named in _EATERS and any(isinstance(i, Change) and i.changes.get("at_risk_eaters") for i in found):
        return found
    if context.asked == "cure" and not re.search(r"\d", text) and any(map(_uncured, found)):
        return found  # «we brine it overnight, with no pink salt»: asked for its strength, and the plan is one without
    mixed = [i for i in found if isinstance(i, StepDone) and i.step == Kind.BRINE]  # wherever it stands, it is made
    mixed += [i for i in found if isinstance(i, Reading) and named in _UNDERDONE]
    return [*mixed, *(i for i in found if isinstance(i, Happened)), Question(text)]


def _is_out(intent: Intent) -> bool:
    return isinstance(intent, Happened) and intent.what == "fire_out"


def _stood_out(named: str | None, text: str, context: Context) -> Happened | None:
    """Meat that was found or left out of the cold, however it is told: noted and asked about, not only warned of."""
    tells = named in _OUT_OF_THE_COLD and _HAS_STOOD.search(text) and not _WISHES.search(text)
    if not tells or is_question(text) or not_the_meat(text):
        return None
    return Happened("left_out", lasting.told(text, context))


def _uncured(intent: Intent) -> bool:
    return isinstance(intent, Change) and intent.changes.get("nitrite_target") == 0.0


def needs_no_sum(text: str) -> bool:
    """Whether a line is grave by its words, and brings nothing that a sum would judge."""
    named = grave(text)
    return named is not None and not _figured(named, text.lower())


def grave_only_so(plain: str, shown: str) -> bool:
    """Whether a line is grave once it is written out, and not as it was typed: «finish it tmrw?»."""
    return grave(plain) is not None and grave(shown) is None


def _figured(named: str, text: str) -> bool:
    return bool(_JUDGED[named].search(text)) if named in _JUDGED else False


def _weighed(intent: Intent, named: str) -> bool:
    """Whether an intent tells of that mishap, so that the rules of safety judge it, or answers what was asked."""
    told = (isinstance(intent, Happened) and named in _MISHAPS) or (
        isinstance(intent, Unclear) and intent.why == "spoiled"
    )
    read = named in _MISHAPS and isinstance(intent, Reading) and {one.probe for one in intent.temperatures} <= _COLD
    cold = isinstance(intent, Start) and COLD_SMOKED in intent.assumed
    asked = isinstance(intent, Ask) and (
        intent.topic in _COMPUTED or (intent.topic, named) == ("dose", "too-much-cure")
    )
    spooned = isinstance(intent, Unclear) and intent.why in PUT_IN and named == "too-much-cure"  # by its meat
    hot = named in _OUT_OF_THE_COLD and isinstance(intent, Reading) and all(map(_is_hot, intent.temperatures))
    return told or read or hot or cold or spooned or asked or isinstance(intent, Choose)


def _is_hot(read: Temperature) -> bool:
    """A middle above the band in which anything grows: what stands there rests."""
    return read.probe is Probe.CORE and read.unit is not None and to_house(read.value, read.unit) >= HOT_CORE
