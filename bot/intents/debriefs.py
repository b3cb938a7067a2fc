"""What a batch came to: the weight after, the grey in the middle, the salt, the hours on the fire, a mark."""

from typing import Final

from bot import measures
from bot.intents import spans
from bot.intents.context import COOKED, UNCOOKED, Context
from bot.intents.intents import Debrief, Intent
from bot.intents.rated import mark
from bot.intents.saltiness import saltiness
from core import patterns as re

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
_OF_ANOTHER: Final = re.compile(r"\b(?:last time|next (?:time|one)|same again)\b")
_FOR_NEXT: Final = re.compile(  # «bit salty, less salt next time»: what it shall be then, and not how it was
    r",? ?\b(?:(?:so|and|but|use|with|ill|will|do|go|an?|bit|lot|much|little) )*(?:less"
    r"|more)\b(?: [a-z]+){0,2} next time\b"
)
_TRIMMED: Final = re.compile(r"trim|\b(?:took|cut|sliced|shaved)\b.{0,30}\boff\b|\bof fat\b")
_AFTER: Final = re.compile(
    r"\b(?:after(?! (?:the )?(?:trim|pump|inject|needl))|cooked|finished|in the end|at the end|came out|final(?:ly)?"
    r"|yielded|weighs? (?:out|in)|end weight|\d{1,3} ?(?:kg|kilos?|lbs?|pounds?) (?:left )?out of(?= \d)"
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
_SURPLUS: Final = re.compile(r"\bleft(?:[- ]?overs?| in the (?:fridge|freezer)| for (?:tomorrow|sandwiches))\b")
_LEAST_LEFT: Final = 0.35  # of the raw mass
_MOST_LEFT: Final = 1.1  # of the raw mass: more than that no cook leaves, a slab that took up brine included
_WEIGHS: Final = re.compile(r"\b(?:weighs?|weighed|its|it is|it was|now|got)\b")


LONGEST_COOK_H: Final = 48.0
_TOOK: Final = re.compile(
    r"\btook (?:us |me )?(?:in all |all in all )?(?:about |around |roughly |nearly |almost |just (?:over|under)"
    r" |only )?(?:\d|an?\b|half\b)[^,;]*?(?:m|min|mins|minutes|h|hrs?|hours?|stunden?)\b"
    r"(?: ?\d{1,2}(?: ?(?:m|min|minutes))?)?"
    r"(?! to (?:light|get|come|heat|slice|cut|carve|eat|clean|trim|rub|wrap|mix|make|find|dry))|^(?:\d[^,;]*?(?:h"
    r"|hrs?|hours?)) (?:on the (?:fire|smoker|grill|pit)"
    r"|in the smoker)(?: in all| altogether)?$"
)


def read_debrief(text: str, context: Context) -> Intent | None:
    """The weight after, the grey in the middle, the salt, where a plain text tells of them."""
    lengths = [m for m in measures.of_kind(text, "length") if m.low is None]
    grey, of = _grey(text, lengths)
    told = _FOR_NEXT.sub("", text)
    salt = saltiness(told)
    raw = context.phase in UNCOOKED and grey is None
    if raw or _OF_ANOTHER.search(told):
        salt = None  # a fry test, or another batch, and not the finished slice
    mass, hours = _mass_after(text, context), _hours_taken(text, context)
    seen = grey is None and seen_grey(text, context)
    rated = mark(text) if context.phase in COOKED else None
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
    looked = context.phase in COOKED or (context.phase in ("curing", "drying") and _CUT_TO_LOOK.search(text))
    return bool(looked and not text.endswith("?") and _GREY_INSIDE.search(_NO_GREY.sub(" ", text)))


def _hours_taken(text: str, context: Context) -> float | None:
    """How long it was on the fire, told when it is off."""
    found = _TOOK.search(text) if context.phase in COOKED else None
    length = spans.span(found[0]) if found else None
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
    if _SURPLUS.search(text) or _too_little_left(text, masses, context):  # what was not eaten, and no yield
        return None
    if _ANOTHER.search(text) or (context.mass and any(m.value > context.mass * _MOST_LEFT for m in masses)):
        return None
    usable = len(masses) == 1 and masses[0].low is None and 0.05 <= masses[0].value <= 50
    cooked = context.phase in COOKED and _WEIGHS.search(text)
    finished = (cooked or _AFTER.search(text)) and not _TRIMMED.search(text)
    return masses[0].value if usable and finished else None


def _too_little_left(text: str, masses: list[measures.Measure], context: Context) -> bool:
    """«1.2 lb left», of a piece that no cook leaves so little of."""
    told = context.mass is not None and len(masses) == 1 and bool(re.search(r"\bleft\b", text))
    return told and context.mass is not None and masses[0].value < _LEAST_LEFT * context.mass
