"""A bare word or number that is the whole of a line: «yes», «its hot», «7.5», «1 tsp pink»."""

from typing import Final

from bot import measures
from bot.intents import spans, when
from bot.intents.asked_cure import is_second_kind
from bot.intents.context import FALLING, SHOWN, Context
from bot.intents.feels import hot_words
from bot.intents.incidents import read_happened
from bot.intents.intents import (
    Help,
    Intent,
    Question,
    Reading,
    Snooze,
    Start,
    StepDone,
    StepMissed,
    StepSkipped,
    Unclear,
)
from bot.intents.normal import SILENT
from bot.intents.temperatures.lone import read_lone
from bot.intents.temperatures.plausible import everything
from bot.intents.temperatures.readings import WISHES
from bot.intents.temperatures.swings import APART
from bot.intents.yard import read_feel
from core import patterns as re

_LONE: Final = re.compile(
    r"(?<![\w.:/%-])\d{2,3}(?:\.\d)?(?![\w.:/%])(?! ?(?:people|guests|more|bags|pieces|slices"
    r"|ppl|sandwich(?:es)?|plates?|portions?|servings?|briquettes?|coals|logs|years?|to go))"
)
_YES: Final = re.compile(r"^(?:yes|yep|yeah|yup|y|ja|aye)$")
_NO: Final = re.compile(r"^(?:no|nope|nah|nein|n)$")
_OK: Final = re.compile(r"^(?:ok(?:ay)?|k|sure|alright|right)$")
_SPOON_OF_CURE: Final = re.compile(
    r"^(?:(?:i|we|ive|just|put|used|added|put in) )*(?:\d[\d./ ]{0,6}|an?|half an?|half|a? ?quarter(?: of an?)?)"
    r" ?(?:tsps?|tbsps?|teaspoons?|tablespoons?"
    r"|cups?|spoons?|pinch(?:es)?)\b"
    r"(?:.{0,24}\b(?:pink|cure|salt)\b.{0,12}| more)?$"
)
_THAT_ONE: Final = re.compile(
    r"(?:(?:its|the|my|that|this) )*(?:big|small|other|first|second|last|thick|thin)\w* (?:one|piece)"
)
_WEIGHTS: Final = (0.3, 30.0)  # a number alone, with no batch under way, that can be the weight of a piece in kg or lb


def lone_number(text: str, context: Context) -> Unclear | None:
    """The one number of a remark beside the fire that nobody understood: offered as what it may have read."""
    if context.phase not in ("cooking", *FALLING) or spans.span(text) or WISHES.search(text) or APART.search(text):
        return None
    found = _LONE.findall(when.without_times(text))
    options = everything(float(found[0]), context) if len(found) == 1 else ()
    return Unclear("number", text[:60], tuple(Reading((t,)) for t in options[:4])) if options else None


def read_bare(plain: str, context: Context) -> Intent | None:
    """Bare words that may be several things, by whether a step was just called for."""
    bare = plain.strip(" .!?")
    weight = measures.number(bare) if context.phase == "none" else None
    if weight is not None and _WEIGHTS[0] <= weight <= _WEIGHTS[1]:
        return Start(unclear=(f"unit:{weight:g}",))
    if context.phase == "none" and context.free and _THAT_ONE.fullmatch(bare):
        return Unclear("which_new", bare)
    if asked := read_lone(bare, context):
        return asked
    if feel := read_feel(bare, context):
        return feel
    if is_second_kind(bare):
        return Question(bare)
    if hot_words(bare):
        return Unclear("number", bare)
    if _SPOON_OF_CURE.match(bare) and not read_happened(bare, context):  # «2 tsp more pink» is no dose in all
        return Unclear("spoons", bare)
    if context.due_step is None:  # what is done is asked, beside a step that is next
        return StepDone() if _YES.match(bare) and context.phase != "none" and context.free else None
    return _yes_or_no(bare)


def signs_only(shown: str) -> Intent:
    """A line without a letter or digit."""
    bare = SILENT.sub("", shown).strip()
    if "?" in bare:
        return Help()
    return Unclear("other", shown[:SHOWN]) if bare.strip(".!-_ ") else Unclear("empty", shown[:SHOWN])


def _yes_or_no(bare: str) -> Intent | None:
    if _YES.match(bare):
        return StepDone()
    if _OK.match(bare):
        return Unclear("word", bare, (StepDone(), Snooze()))
    return Unclear("word", bare, (Snooze(), StepMissed(), StepSkipped())) if _NO.match(bare) else None
