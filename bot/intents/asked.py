"""A line as the answer to the question that is open. What does not fit is read as if nothing had been asked."""

from collections.abc import Callable
from dataclasses import replace
from typing import Final

from bot import measures
from bot.intents import spans, when
from bot.intents.asked_cure import UNKNOWN
from bot.intents.asked_setup import SETUP_READERS
from bot.intents.context import Context
from bot.intents.debriefs import read_debrief
from bot.intents.deeds import DEEDS
from bot.intents.deviations import DEVIATION_READERS
from bot.intents.feels import how_it_smells
from bot.intents.intents import Change, Choose, Debrief, Intent, Settings, Snooze, StepDone, Unclear
from bot.intents.meats import may_be, meat
from bot.intents.of_the_answer import of_the_answer
from bot.intents.questions import is_question
from bot.intents.small import words
from bot.intents.sums.which import sum_of
from bot.intents.temperatures.plausible import Number, meanings
from bot.intents.weights import HEAVIEST_KG
from bot.intents.zones import jurisdiction_of, law_of, zone_of
from core import patterns as re
from core.batch.events import Probe
from core.plan.steps import Kind

_YES: Final = re.compile(
    r"^(?:(?:yes|yeah|yep|yup|ya|sure|ok(?:ay)?|right|correct|true|please|pls|do it|go ahead|confirm(?:ed)?"
    r"|definitely|aye|y|drop it|it is|thats right|exactly|there (?:is|are)|some) ?)+$"
)
_NO: Final = re.compile(
    r"^(?:(?:no|nope|nah|not|never|dont|n|keep it|keep|false|none|nobody|no one|leave it|thanks|wrong|negative"
    r"|there (?:is|are)nt any|all healthy) ?)+$"
)
_PLACES: Final = (
    (Probe.CORE, r"\b(?:meat|core|brisket|internal|inside|probe|middle|flat|point)\b"),
    (Probe.PIT, r"\b(?:pit|grill|smoker|cooker|air|grate|dome)\b"),
    (Probe.FRIDGE, r"\b(?:fridge|refrigerator)\b"),
    (Probe.BRINE, r"\b(?:brine|pickle|bucket)\b"),
)
_ORDINALS: Final = {
    "first": 0,
    "1st": 0,
    "1": 0,
    "second": 1,
    "2nd": 1,
    "2": 1,
    "third": 2,
    "3rd": 2,
    "3": 2,
    "other": 1,
    "last": -1,
}
_YIELD: Final = (0.4, 1.1)  # of the raw mass: what a cook leaves, a cured slab before the smoke included
_WIDEST_GREY_IN: Final = 3.0
_LIES_THERE: Final = re.compile(r"\b(?:in|into) (?:the |my )?fridge\b")
_WARMEST_FRIDGE: Final = {"f": 60.0, "c": 15.0}  # a core that is asked about is hotter
_GOOD: Final = re.compile(r"^(?:(?:yes|yep|yeah|its|it is|out|taken out) ?)*(?:for good|permanently|done curing|out)$")
_MEATS: Final = frozenset({"beef", "pork", "chicken", "turkey", "duck", "fish", "brisket", "ham"})
_DROPS: Final = re.compile(
    r"\b(?:forget|drop|delete|wrong|ignore|scratch|typo)\b"
    r"|\b(?:not|isnt|aint|wasnt) (?:quite |really )?(?:right|correct|true)\b"
)
_KEEPS: Final = re.compile(  # from end to end: neither «how long do they keep» nor «not sure» vouches for a number
    r"(?:(?:yes|yep|yeah|yup|aye|ok|its|it|is|thats|that|the|this|one|number|reading|core|meat|im|i|ive|am|was|really"
    r"|quite|for|all|double|twice|checked|and|please)[, ]*)*"
    r"(?:right(?: one| number)?|correct|true|yes|yep|yeah|yup|it is|really|sure|certain|real|checked"
    r"|keep(?: (?:it|that|this))?)"
)


def read_answer(text: str, context: Context) -> Intent | None:
    """The answer to `context.asked` that a plain line is; None where it is about something else."""
    reader = _READERS.get(context.asked or "")
    bare = text.strip(" .!")
    return reader(bare, context) if reader and bare and not _begins_another(bare, context) else None


def _begins_another(text: str, context: Context) -> bool:
    """«4 kg turkey breast without nitrite», while the salt of a duck is asked for: another meat, with its weight."""
    named = meat(text)
    if not (named and context.of_what and measures.of_kind(text, "mass")) or context.asked_of_start:
        return False
    return not any(may_be(named, product, cut) for _, product, cut in context.of_what)


def _yes_no(text: str) -> bool | None:
    return True if _YES.match(text) else False if _NO.match(text) else None


def _weight_after(text: str, context: Context) -> Intent | None:
    mass = measures.sole(text, "mass")
    number = measures.number(text)
    value = mass.value if mass else _after_cooking(number, context) if number else None
    if value is not None and 0 < value <= HEAVIEST_KG:
        return Debrief(mass=value)
    return Choose("weight_after", "unknown") if UNKNOWN.search(text) else None


def _after_cooking(number: float, context: Context) -> float:
    """A weight without a unit: in the unit in which a cook leaves it of this piece, else in the person's own."""
    both = (context.units.mass, "lb" if context.units.mass == "kg" else "kg")
    low, high = _YIELD
    fits = [u for u in both if context.mass and low <= measures.to_house(number, u) / context.mass <= high]
    return measures.to_house(number, fits[0] if fits else context.units.mass)


def _grey(text: str, context: Context) -> Intent | None:
    told = read_debrief(text, replace(context, phase="stored"))
    if isinstance(told, Debrief) and told.grey is not None:
        return told
    length = measures.sole(text, "length")
    number = measures.number(text)
    if length or (number is not None and number >= 0):
        unit = "in" if context.units.length == "in" and (number or 0.0) <= _WIDEST_GREY_IN else "mm"
        return Debrief(grey=length.value if length else measures.to_house(number or 0.0, unit))
    if re.fullmatch(r"(?:no|none|nope|nothing|pink|all pink|fully pink|not at all|no it was pink|zero)", text):
        return Debrief(grey=0.0)
    return Debrief(unmeasured=True) if _YES.match(text) or UNKNOWN.search(text) else None


def _salty(text: str, context: Context) -> Intent | None:
    told = read_debrief(text, replace(context, phase="stored"))
    if isinstance(told, Debrief) and told.salt is not None:
        return Debrief(salt=told.salt)
    if re.fullmatch(r"(?:a (?:bit|little)|very|too much|yes.{0,20}|way too|much too|yeah.{0,20}|more)", text):
        return Debrief(salt=1)
    if re.fullmatch(
        r"(?:no(?:pe)?|fine|perfect|right|good|ok(?:ay)?|great|spot on|lovely|just right|no .{0,12}(?:right|fine"
        r"|good|perfect))",
        text,
    ):
        return Debrief(salt=0)
    return Debrief(salt=-1) if re.fullmatch(r"(?:too little|not enough|less|needs more|the opposite)", text) else None


def _zone(text: str, context: Context) -> Intent | None:
    if len(text.split()) > 6 or re.search(r"\d", text):
        return None
    place = re.sub(r"^(?:(?:its|it is|i live in|i am in|im in|in|we are in|near) )+", "", text)
    zone = zone_of(place)
    if zone is None:
        return None
    law = jurisdiction_of(place) or law_of(zone)  # a first guess, and said; who travels later keeps the law of home
    return Settings({"zone": zone, "jurisdiction": law} if law else {"zone": zone})


def _when(text: str, context: Context) -> Intent | None:
    number = re.fullmatch(r"(?:at )?(\d{1,2}(?:[:.]\d\d)?)", text)
    said = when.past(f"at {number[1]}" if number else text, context)
    return Choose("when", said.at) if said and len(text.split()) <= 6 else None


_BESIDE_A_NAME: Final = words("the my it is was its that thats for i meant mean of in one ones batch please")


def _batch(text: str, context: Context) -> Intent | None:
    if re.fullmatch(r"(?:both|all|beide|alle)(?: of them)?", text):
        return Choose("batch", "all")
    names = [(key, name.lower()) for key, name in context.batches]
    exact = [key for key, name in names if name == text]
    said = set(re.findall(r"\w+", text)) - _BESIDE_A_NAME  # «flipped the bacon» is said of it, and answers nothing
    part = [key for key, name in names if said and said <= set(name.split())]
    found = exact or part
    if len(found) == 1:
        return Choose("batch", found[0])
    word = re.fullmatch(r"(?:the )?(\w+)(?: one)?", text)
    place = _ORDINALS.get(word[1]) if word else None
    return Choose("batch", names[place][0]) if place is not None and -1 <= place < len(names) and names else None


_BESIDE_A_PLACE: Final = words(
    "the my it its is was that thats this of in meant mean from for at temp temps temperature reading number"
    " thermometer fahrenheit celsius minutes minute one and on yes yeah sorry oh duh lol obviously thickest part centre"
    " center ham belly bird fish breast thigh"
)


def _probe(text: str, context: Context) -> Intent | None:
    """«meat», «the pit», «it was f»: with the number that was asked about, only what it can be."""
    if len(text.split()) > 6 or re.search(r"\d", text) or any(DEEDS.hits(text)):
        return None  # «meat in» is a deed, and names no thermometer
    if is_question(text):
        return None  # «how long in fridge and freezer» asks, and names none either
    if _LIES_THERE.search(text) and (
        context.phase == "waiting" or (context.asked_value or 0.0) > _WARMEST_FRIDGE[context.units.temperature]
    ):
        return None  # «in the fridge» after a core, or before the meat is in: there it is put
    if set(re.findall(r"\w+", _without_places(text))) - _BESIDE_A_PLACE and not re.search(
        r"\b(?:f|c|fahrenheit|celsius|minutes?)\b", text
    ):
        return None  # «bag and fridge sorted» answers nothing
    probe = next((p for p, words in _PLACES if re.search(words, text)), None)
    unit = "f" if re.search(r"\b(?:f|fahrenheit)\b", text) else "c" if re.search(r"\b(?:c|celsius)\b", text) else None
    if probe is None and re.search(r"\bminutes?\b", text) and context.asked_value:
        return Snooze(by=spans.span(f"{context.asked_value:g} minutes"))
    if context.asked_value is None or (probe is None and unit is None):
        return Choose("probe", f"{probe.value}/{unit}") if probe and unit else None
    found = meanings(Number(context.asked_value, unit, probe or context.asked_probe), context)
    choices = [Choose("probe", f"{t.probe.value}/{t.unit}") for t in found if t.probe and t.unit]
    return choices[0] if len(choices) == 1 else Unclear("unit", text[:60], tuple(choices)) if choices else None


def _without_places(text: str) -> str:
    for _, places in _PLACES:
        text = re.sub(places, " ", text)
    return text


def _eaters(text: str, context: Context) -> Intent | None:
    yes = _yes_no(text)
    return None if yes is None else Change({"at_risk_eaters": yes})


def _confirm(text: str, context: Context) -> Intent | None:
    yes = _yes_no(text)
    return None if yes is None else Choose("confirm", yes)


def _forget(text: str, context: Context) -> Intent | None:
    yes = True if re.fullmatch(r"forget me(?: please)?", text) else _yes_no(text)
    return None if yes is None else Choose("forget", yes)


def _doubt(text: str, context: Context) -> Intent | None:
    if re.search(r"\d", text) or len(text.split()) > 5 or is_question(text):
        return None
    if _DROPS.search(text):
        return Choose("doubt", "drop")
    return Choose("doubt", "keep") if _KEEPS.fullmatch(text) else None


def _hot_instead(text: str, context: Context) -> Intent | None:
    """«yes», «hot then»: the piece that was wished cold is planned hot; «no» leaves it."""
    if re.match(r"(?:(?:ok|yes|fine|then|plan|make|do|smoke|it|go|lets|with|the) )*hot\b", text):
        return Choose("hot_instead", "hot")
    yes = _yes_no(text)
    return None if yes is None else Choose("hot_instead", "hot") if yes else Choose("keep", "")


def _for_good(text: str, context: Context) -> Intent | None:
    """Of meat that is out, whether for good; «no» and «back in» note nothing."""
    return StepDone(str(Kind.OUT)) if _yes_no(text) or _GOOD.match(text) else None


def _answered(text: str, context: Context) -> Intent | None:
    """«why», «wrong», «more» of the answer that was given last."""
    slot = of_the_answer(text)
    return Choose(slot, "last") if slot else None


def _sum(text: str, context: Context) -> Intent | None:
    """What a sum still needed: a figure, or a meat; a new question is none, and neither is a sum of its own."""
    if len(text.split()) > 5 or is_question(text) or sum_of(text) is not None:
        return None
    return Choose("sum", text) if re.search(r"\d", text) or text in _MEATS else None


def _smell(text: str, context: Context) -> Intent | None:
    """How it smells, asked of a smell that may be either: «more on the sour side», «just like spice»."""
    told = how_it_smells(text)
    return None if told is None else Unclear(told, text)


_READERS: Final[dict[str, Callable[[str, Context], Intent | None]]] = {
    **SETUP_READERS, **DEVIATION_READERS,
    "weight_after": _weight_after, "grey": _grey, "salty": _salty, "zone": _zone, "when": _when,
    "batch": _batch, "probe": _probe, "eaters": _eaters, "confirm": _confirm, "forget": _forget, "doubt": _doubt,
    "sum": _sum, "answered": _answered, "hot_instead": _hot_instead, "took_out": _for_good,
    "smell": _smell,
}  # fmt: skip
