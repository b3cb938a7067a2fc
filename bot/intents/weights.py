"""The weight of what a start is about: one piece, several of them, or what has to be asked about it.

A range, a second number, a share of which nobody says whether it is of each or of all: named as unclear, never guessed.
"""

import itertools
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, Final

from bot import measures
from bot.intents import waits, when
from bot.measures import Measure
from core import patterns as re
from core.units import Kilograms

A_CORE_F: Final = range(101, 213)  # a bare number that is no weight in kilos, and none in grams
CORE_READ: Final = re.compile(
    r"\b(?:breast|thigh|leg|core|middle|inside)s?(?: (?:is|at|reads))? \d{2,3}\b"
    r"(?! ?(?:kgs?|kilos?|g|grams?|lbs?|mm|cm|in)\b)"
)
HEAVIEST_KG: Final = 100.0  # what is heavier is a slip of the unit; what a cut can weigh is the core's to say
_NOT_MEAT: Final = re.compile(
    r" ?(?:of )?(?:the )?(?:coarse |fine |sea |table |kosher |pink |curing |brown )*(?:(?P<dry>salt|cure|sugar)|water"
    r"|pepper"
    r"|rub|brine(?! (?:and|n|it|them|then|smok\w+"
    r"|cured?|hot|cold)\b)(?! (?:for )?\w+day\b| thurs?\b| fri\b| sat\b| sun\b)|ice|charcoal"
    r"|lump|wood|slices?|portion)\b"
)
_NAMED_BEFORE: Final = re.compile(r"\b(?:salt|sugar|cure|water)(?: (?:is|was|were|of))?:? ?$")
_NOUN: Final = (
    r"(?:pieces?|pcs?|slabs?|flats?|points?|briskets?|bell(?:y|ies)|loins?|fillets?|sides?|hams?|breasts?|chickens?"
    r"|trouts?|forellen?|makrelen?|hühner|hähnchen|enten|puten|lachsseiten?|seiten|filets"
    r"|legs|thighs|drum(?:stick)?s|chops|hocks|ducks?|goose|geese|turkeys?|birds?|joints?|roasts?|fish(?:es)?|bits?|ones?|stücke?)"
)
_APIECE: Final = (
    r"\b(?:each|ea|apiece|a piece|(?<=pcs )a(?= {3})|(?<=pieces )a(?= {3})|per (?:piece|fish|bird|slab)"
    r"|the (?:piece|fish))\b"
)
_PIECES: Final = re.compile(rf" ?{_NOUN}\b")
_LISTED: Final = re.compile(
    r"(?<![\w.:])(?<!at )(?<!by )(?<!cure )(?!(?:6\.25|5\.88)\b)"  # no strength of a curing salt
    r"(?:(?:\d{1,2}(?:\.\d{1,3})?|[1-9]\d{2,3}) ?(?:and|&|\+|,|/) ?|\d{1,2}\.\d{1,3} )+$"
)
_BEHIND_HOURS: Final = re.compile(r"\b(?:at|by) \d{1,2} ?(?:(?:and|&|,) ?\d{1,2} ?)+(?:and|&|,) ?$")  # or at weights
_LABELLED: Final = re.compile(  # «salt 2.5, 3 kg», «fridge 4, 2 kg», «for 6, 5 lb», «march 6, 3 kg»: no first piece
    r"\b(?:salt|sugar|cure|nitrite|water|pump|fridge|brine|room|core|pit|grill|smoker|oven|outside|thick\w*|soak|rest"
    r"|grade|number|no|for|feeds?|serves?|people|guests|\w+day|dinner|lunch|meal|mon|tues?|wed|thu\w*|fri|sat|sun"
    r"|jan\w*|feb\w*|mar(?:ch)?|apr\w*|may|june?|july?|aug\w*|sep\w*|oct\w*|nov\w*|dec\w*)"
    r"(?: (?:is|was|at|to|reads?|runs|about|next|by|the))* \d{1,3}(?:\.\d{1,3})?(?=,| \d)"
)
_RUN: Final = re.compile(  # «4 4 and 5 lb» of three that were counted
    r"(?<![\w.:])((?:(?:[1-9]\d{2,3}|\d{1,2}(?:\.\d{1,3})?)(?: ?(?:and|&|\+|,|/))? )+)$"
)
_ONE_LISTED: Final = re.compile(r"[1-9]\d{2,3}|\d{1,2}(?:\.\d{1,3})?")
_TIMES: Final = re.compile(r"(?<![\w.])([2-9]) ?x ?$")
_SEVERAL: Final = re.compile(r"(?<![\w.])(?<!at )(?<!by )([2-9]) ?$")  # «two 3 lb slabs»
MANY: Final = r"(?:[2-9]|1\d|20)"  # pieces of one batch that people count
_COUNT: Final = re.compile(
    rf"(?<![\w.])({MANY}) (?:of (?:them|em|those)\b|(?:(?!people|ppl|guests|persons|friends"
    rf"|adults|days?|hours?|of)\w+ )?{_NOUN}\b)"
)
_COUNTED: Final = re.compile(
    r"(?:(?:its|it is|they are|there are|theres|i have|i got|ive got|we have|thats|make (?:it|that)|really) )*"
    rf"(?P<n>{MANY}) (?:of (?:them|em|those)|{_NOUN})"
    rf"(?: of \w+)?(?:,? (?:and |of )?(?P<weight>\S.*))?"
)
_SAME_WEIGHT: Final = re.compile(r",? ?\b(?:at |for |with )?(?:the )?same (?:total )?weight\b")
_PUT_RIGHT: Final = re.compile(r"(?:,? (?:actually|in fact|sorry|now|though|by the way|not \d{1,2}))+$")
_EACH: Final = re.compile(
    rf"(?<!\d )(?<!\d)\bx ?([2-9])(?![\w.])(?! ?(?:in|inch\w*|cm|mm|\")\b)|(?<![\w.])([2-9])\b.{{0,30}}{_APIECE}"
    rf"|{_APIECE}.{{0,30}}?(?<![\w.])([2-9])\b"
)
_ASKED_FOR_EACH: Final = re.compile(  # «how much cure each» is asked for each piece, and says no weight of it
    r"\bhow (?:much|many)\b(?!.*\d ?(?:kg|kilos?|g|lbs?|pounds?|oz)\b.*\beach\b)"
    r"(?=.*\b(?:each|apiece|(?:per|a) (?:piece|bag|half|slab|one))\b).*"
)
_DIVIDED: Final = re.compile(
    rf"(?<![\w.])({MANY}) (?:\w+ )?(?:{_NOUN}|bags?|halves|parts)\b|\b(?:cut|split|divided|cutting) (?:it )?(?:in|into)"
    rf" ({MANY})\b|\b(?:in|into) (?:half|halves)\b"
)
_OF_EACH: Final = re.compile(_APIECE)
IN_ALL: Final = re.compile(
    r"\b(?:in all|all in all|all up|all told|overall|the lot|in total|total|together"
    r"|altogether|combined|between them)\b"
)
_NO_SALT_KG: Final = 0.5  # nobody weighs so much salt for a piece at home; common practice, no source
_RARELY_OVER: Final = 0.8  # of the heaviest that a cut can be: few pieces are; common practice, no source
_OTHER_ONE: Final = re.compile(
    r"\b(?:other|second|another)(?: one)?(?: is| weighs|s)?(?: (?:about|around|nearly|almost|just|a bit|a little"
    r"|slightly|under|over|less than|more than|between))* \d"
)
_AND_ONE_MORE: Final = re.compile(
    rf" ?{_NOUN}? ?(?:and|&|\+|plus) (?:an? |the |one |other |another |second |is |weighs |about )*"
    r"\d{1,2}(?:\.\d{1,3})?(?=$|[ ,;]*(?:$|[,;]|for\b|flat|point|on\b|dry|wet|each|bag))"
)  # «2 bellies 3 lb and 4»
_JOINED: Final = re.compile(
    r"^ ?(?:,|and|&|\+|plus|, and)? ?(?:an?|the|other|one)? ?(?:flat|point|brisket|piece)? ?(?:,|and|&|\+|plus|of"
    r"|is)? ?$"
)
_BARE: Final = re.compile(
    r"(?<![\w.:/%-])(?<!for )(?<!cure )(?<!number )(?<!brine )(?<!brine is )"
    r"(?<!pit )(?<!pit at )(?<!fridge )-?(?!\d{1,2} ?(?:x|trout|(?!(?:turkeys|thats|lets|weighs|needs|feeds"
    r"|serves|goes|lasts)\b)[a-z]{2,}(?<![sui])s)\b)"  # what is counted is no weight: «9 packs of pastrami»
    r"(?:\d{1,2}(?:\.\d{1,3})?"
    r"|[1-9]\d{3})(?![\w:/%.])(?! ?(?:people|ppl|pax|guests|persons?|of us|adults|folks|friends|heads"
    r"|months?|years?|weeks?|yrs?|days? (?:ago|old))\b)"
)
_OR_ELSE: Final = re.compile(
    r" ?(?:(?:or|to|-|/|,|no|i think|maybe|even|perhaps|possibly|could be|almost|nearer|more like) ?)+\d{1,2}(?:\.\d)?"
    r"(?= ?(?:,|$|kg|kilo|lb|not|brisket|flat|point|each))"
)  # «2.9 kg or maybe 3.1»


_AGE: Final = re.compile(  # «grandma is 84», «hes 71»
    r"\b(?:(?:gran\w*|nana?|mum|mom|mother|dad|father|uncle|aunt\w*)(?: is|s)?|(?:wife|husband|s?he|who|guest|kid) is"
    r"|s?hes|im|i am|aged?) (?:only |just |turning |nearly )?\d{1,2}\b(?![.\d]| ?(?:kg|kilos?|g|lbs?|pounds?|oz)\b)"
)


@dataclass(frozen=True)
class Weighed:
    """The mass of all pieces, those of each, and the slot and words of what has to be asked about them."""

    mass: Kilograms | None = None
    pieces: tuple[Kilograms, ...] = ()
    slot: str = ""
    typed: str = ""


def weighed(text: str, *, may_be_bare: bool) -> Weighed:
    """The weight that a plain text gives; a number without a unit counts only where it can be nothing else."""
    biggest = waits.heaviest(text)
    weights = [m for m in measures.of_kind(text, "mass") if m != biggest and not _of_something_else(text, m)]
    if not weights:
        bare = _BARE.search(when.without_times(_AGE.sub(" ", text))) if may_be_bare else None
        return Weighed(slot="unit" if float(bare[0]) < HEAVIEST_KG else "mass", typed=bare[0]) if bare else Weighed()
    found = [piece for m in weights for piece in pieces(text, m)]
    if len(weights) == len(found) == 1 and _of_each_alone(text, weights[0]):
        return Weighed(slot="each", typed=text[weights[0].start : weights[0].end])
    if _is_open(text, weights, found):
        return Weighed(slot="mass", typed=text[weights[0].start : weights[-1].end])
    count = _count(text, weights)
    if len(found) == 1 and count > 1 and biggest is None and not IN_ALL.search(text):
        return Weighed(slot="share", typed=f"{count} {found[0]:.6g}")
    return Weighed(round(sum(found), 9), tuple(found) if len(found) > 1 else ())


_KIND: Final = re.compile(
    r"(?:#|\b(?:no|nr|number|type|kind)\.?) ?[12]\b(?![.,]?\d)|\bcure [12]\b(?! ?(?:kg|lbs?|g|oz)\b)"
)


def pieces(text: str, measure: Measure) -> list[Kilograms]:
    """The masses that a measure stands for; what other measures say counts none: «8 g cure, 2 flats 3 kg each»."""
    text = _KIND.sub(lambda found: " " * len(found[0]), text)  # «cure #1, 1.5 kg»: of one kind, and no piece
    text = _blanked(text, [other for other in measures.find(text) if other != measure])
    return _pieces(_ASKED_FOR_EACH.sub(lambda found: " " * len(found[0]), text), measure)


def asked_for_each(text: str) -> int:
    """Into how many pieces a weight is divided of which something is asked for each; 0 where nothing is asked so."""
    found = _DIVIDED.search(_blanked(text, list(measures.find(text)))) if _ASKED_FOR_EACH.search(text) else None
    return int(found[1] or found[2] or 2) if found else 0


def _of_something_else(text: str, mass: Measure) -> bool:
    """«12 g cure», «2 kg brine»; but a kilo and more before «cure #1» is meat."""
    found = _NOT_MEAT.match(text, mass.end)
    if found is None and mass.value < _NO_SALT_KG and _NAMED_BEFORE.search(text[: mass.start]):
        return True  # «salt was 80 g», «sugar: 20 g»
    return bool(found) and not (found["dry"] and mass.value >= _NO_SALT_KG)  # type: ignore[index]


def shared(told: Weighed, ranges: Sequence[tuple[Kilograms, Kilograms]]) -> Weighed:
    """«4 trout 1.4 kg»: of all, where a piece of that cut is never so heavy; else it stays to be asked."""
    if told.slot != "share":
        return told
    count, mass = share_of(told.typed)
    of_each = any(low <= mass <= _RARELY_OVER * high for low, high in ranges) or not ranges
    of_all = any(low <= mass / count <= high for low, high in ranges) or not ranges
    return Weighed(mass) if of_all and not of_each else told


def share_of(typed: str) -> tuple[int, Kilograms]:
    """What "share" holds: how many pieces, and the mass that was said [kg]."""
    count, mass = typed.split()
    return int(count), float(mass)


def _is_open(text: str, weights: list[Measure], pieces: list[float]) -> bool:
    """Whether the weights of a text leave open which of them counts, or of how many pieces."""
    rest = _blanked(text, weights)
    count = _count(text, weights)
    return (
        any(m.low is not None or not 0 < m.value <= HEAVIEST_KG or _OR_ELSE.match(text[m.end :]) for m in weights)
        # «3.2 kg, was 3.6 before trimming», «3 lb and 4»
        or not all(_JOINED.match(text[a.end : b.start]) for a, b in itertools.pairwise(weights))
        or bool(_AND_ONE_MORE.match(text, weights[-1].end) or _BEHIND_HOURS.search(text[: weights[0].start]))
        # «4 flats 6 and 7 lb»: a weight is missing, or is none
        or (len(pieces) > 1 and count > 0 and count != len(pieces))
        # «one is 6 pounds the other one is 7»
        or (len(pieces) == 1 and bool(_OTHER_ONE.search(rest)))
    )


def _of_each_alone(text: str, mass: Measure) -> bool:
    """«4 lb each»: of pieces that were counted before, or that nobody counted yet."""
    fits = mass.low is None and 0 < mass.value <= HEAVIEST_KG and not _OR_ELSE.match(text[mass.end :])
    rest = _blanked(text, [mass])
    return fits and bool(_OF_EACH.search(rest)) and not _OTHER_ONE.search(rest)


def _count(text: str, weights: list[Measure]) -> int:
    """How many pieces are counted beside their weights; 0 where none are."""
    found = _COUNT.search(_blanked(text, weights))
    return int(found[1]) if found else 0


def counted(text: str) -> dict[str, Any]:
    """«2 pieces», «its two of them, 5 kg in all» as an answer: how many, and their weight together where it is said."""
    found = _COUNTED.fullmatch(_PUT_RIGHT.sub("", _SAME_WEIGHT.sub(" ", IN_ALL.sub(" ", text)).strip(" ,")).strip(" ,"))
    weight = measures.sole(found["weight"] or "", "mass") if found else None
    if found is None or (found["weight"] and weight is None):
        return {}
    return {"pieces": int(found["n"])} | ({"mass": weight.value} if weight else {})


def _blanked(text: str, weights: list[Measure]) -> str:
    for m in weights:
        text = text[: m.start] + " " * (m.end - m.start) + text[m.end :]
    return text


def _pieces(text: str, measure: Measure) -> list[float]:
    """The masses that one measure stands for: «5.2 5.5 and 6 lb» three, «2 x 3 kg» two, «2 flats of 3 kg each» two."""
    before = _LABELLED.sub(lambda found: " " * len(found[0]), text[: measure.start])
    run, counts = _RUN.search(before), _COUNT.findall(before)
    if run and len(counts) == 1 and int(counts[0]) == len(_ONE_LISTED.findall(run[1])) + 1:
        return [*(measures.to_house(float(n), measure.unit) for n in _ONE_LISTED.findall(run[1])), measure.value]
    if listed := _LISTED.search(before):
        return [*(measures.to_house(float(n), measure.unit) for n in _ONE_LISTED.findall(listed[0])), measure.value]
    if (several := _SEVERAL.search(before)) and _PIECES.match(text, measure.end):
        return [measure.value] * int(several[1])
    if IN_ALL.search(text):  # «x4 1.4 kg total»
        return [measure.value]
    if times := _TIMES.search(before) or _EACH.search(_blanked(text, [measure])):  # «4 lb each» is no four pieces
        return [measure.value] * int(next(group for group in times.groups() if group))
    return [measure.value] * _far_count(text, measure)


def _far_count(text: str, measure: Measure) -> int:
    """«got 6 of them from the farm, gutted, about 350 g each»: how many, where one count alone stands in the text."""
    rest = _blanked(text, [measure])
    counts = {int(n) for n in _COUNT.findall(rest)}
    return counts.pop() if len(counts) == 1 and _OF_EACH.search(rest) else 1
