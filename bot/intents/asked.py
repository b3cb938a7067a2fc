"""A line as the answer to the question that is open. What does not fit is read as if nothing had been asked."""

import re
from collections.abc import Callable
from dataclasses import replace
from typing import Any, Final

from bot import measures
from bot.intents import when
from bot.intents.context import Context
from bot.intents.fields import STRONGEST_CURE, open_strength
from bot.intents.incidents import read_debrief
from bot.intents.intents import Change, Choose, Debrief, Intent, Settings, Snooze, Unclear
from bot.intents.meats import meat
from bot.intents.plausible import Number, meanings, set_point
from bot.intents.small import content
from bot.intents.start import HEAVIEST_KG
from bot.intents.zones import jurisdiction_of, zone_of
from core.batch.events import Probe

_YES: Final = re.compile(
    r"^(?:(?:yes|yeah|yep|yup|ya|sure|ok(?:ay)?|right|correct|true|please|pls|do it|go ahead|confirm(?:ed)?"
    r"|definitely|aye|y|drop it|it is|thats right|exactly|there (?:is|are)|some) ?)+$"
)
_NO: Final = re.compile(
    r"^(?:(?:no|nope|nah|not|never|dont|n|keep it|keep|false|none|nobody|no one|leave it|thanks|wrong|negative"
    r"|there (?:is|are)nt any|all healthy) ?)+$"
)
_UNKNOWN: Final = re.compile(
    r"\b(?:dont know|do not know|dunno|no idea|not sure|no clue|idk|unknown|cant tell|doesnt say|does not say"
    r"|not on (?:it|the)|no label|keine ahnung|weiß nicht)\b|^\?+$"
)
_PLACES: Final = (
    (Probe.CORE, r"\b(?:meat|core|brisket|internal|inside|probe|middle|it|flat|point)\b"),
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
_NO_DEADLINE: Final = re.compile(
    r"\b(?:no (?:deadline|rush|hurry|date|idea)|whenever|any ?time|doesnt matter|dont care|open|none|not fixed)\b"
)
_INCHES: Final = (0.5, 5.0)  # a thickness that people give in inches, in mm, and where neither is certain
_MILLIMETRES: Final = (12.0, 150.0)
_YIELD: Final = (0.4, 1.1)  # of the raw mass: what a cook leaves, a cured slab before the smoke included
_WIDEST_GREY_IN: Final = 3.0
_CHOICES: Final[dict[str, tuple[tuple[str, str], ...]]] = {
    "method": (("inject", r"\b(?:inject\w{0,3}|pump)\b"), ("dry", r"\bdry\b"), ("brine", r"\b(?:wet|brine|bag)\b")),
    "purpose": (("thin", r"\b(?:thin|deli)\b"), ("cold", r"\bcold\b"), ("hot", r"\b(?:hot|warm)\b"),
                ("pulled", r"\b(?:pulled|shredded)\b")),
    "wrap": (("none", r"\b(?:no|none|unwrapped|naked|nothing)\b"), ("paper", r"\bpaper\b"), ("foil", r"\bfoil\b")),
    "chill": (("ice", r"\bice\b"), ("fan", r"\bfan\b"), ("rack", r"\brack\b"), ("foil", r"\bfoil\b")),
    "cooker": (("ceramic", r"\b(?:ceramic|kamado)\b"), ("steel", r"\b(?:steel|drum|bullet|barrel)\b"),
               ("kettle", r"\bkettle\b"),
               ("offset", r"\boffset\b"), ("gas", r"\bgas\b"), ("electric", r"\belectric\b")),
}  # fmt: skip
_DOUBTS: Final = (
    ("drop", r"\b(?:forget|drop|delete|wrong|ignore|scratch|typo)\b"),
    ("keep", r"\b(?:right|correct|keep|true|yes|it is|really|sure)\b"),
)


def read_answer(text: str, context: Context) -> Intent | None:
    """The answer to `context.asked` that a plain line is; None where it is about something else."""
    reader = _READERS.get(context.asked or "")
    bare = text.strip(" .!")
    return reader(bare, context) if reader and bare else None


def _yes_no(text: str) -> bool | None:
    return True if _YES.match(text) else False if _NO.match(text) else None


def _cure(text: str, context: Context) -> Intent | None:
    share = measures.sole(text, "fraction")
    value = share.value if share else None
    if value is None and (number := measures.number(text)) is not None:
        if number < 0.1:  # 0.0625 may be a fraction or a percentage: a hundredfold dose
            options = tuple(Change({"cure_nitrite_fraction": v}) for v in (number, number / 100) if v > 0)
            return Unclear("number", text[:60], options)
        value = number / 100
    if (
        value is None
        and len(shares := measures.find(text)) == 1
        and shares[0].kind == "fraction"
        and len(content(text)) <= 1
    ):
        value = shares[0].value  # «it's 6.25 % I think»
    if value is not None:
        fits = 0 < value <= STRONGEST_CURE
        return Change({"cure_nitrite_fraction": value}) if fits else Unclear("number", text[:60])
    if open_strength(text) or _UNKNOWN.search(text):
        return Choose("cure", "unknown")
    return None


def _thickness(text: str, context: Context) -> Intent | None:
    length = measures.sole(text, "length") or measures.sole(f"{text} thick", "length")
    if length:
        return Change({"thickness": length.value})
    number = measures.number(text)
    if number is None:
        return Choose("thickness", "unknown") if _UNKNOWN.search(text) else None
    if _MILLIMETRES[0] <= number <= _MILLIMETRES[1]:
        return Change({"thickness": measures.to_house(number, "mm")})
    if _INCHES[0] <= number <= _INCHES[1] and ("/" in text or context.units.length == "in"):
        return Change({"thickness": measures.to_house(number, "in")})
    options = tuple(Change({"thickness": measures.to_house(number, u)}) for u in ("in", "cm") if 0.5 <= number <= 15)
    return Unclear("unit", text[:60], options)


def _mass(text: str, context: Context) -> Intent | None:
    mass = measures.sole(text, "mass")
    if mass and 0 < mass.value <= HEAVIEST_KG:
        return Choose("mass", mass.value) if context.phase == "none" else Change({"mass": mass.value})
    number = measures.number(text)
    if number is None or mass:
        return None
    made: Callable[[float], Intent] = (
        (lambda kg: Choose("mass", kg)) if context.phase == "none" else (lambda kg: Change({"mass": kg}))
    )
    fits = 0 < number <= HEAVIEST_KG
    return Unclear("unit", text[:60], tuple(made(measures.to_house(number, u)) for u in ("kg", "lb")) if fits else ())


def _mass_unit(text: str, context: Context) -> Intent | None:
    found = re.fullmatch(
        r"(?:in |its |it is |the )?(?P<kg>kgs?|kilos?|kilograms?)|(?:in |its |it is |the )?(?:lbs?|pounds?)", text
    )
    return Choose("mass_unit", "kg" if found["kg"] else "lb") if found else _mass(text, context)


def _weight_after(text: str, context: Context) -> Intent | None:
    mass = measures.sole(text, "mass")
    number = measures.number(text)
    value = mass.value if mass else _after_cooking(number, context) if number else None
    if value is not None and 0 < value <= HEAVIEST_KG:
        return Debrief(mass=value)
    return Choose("weight_after", "unknown") if _UNKNOWN.search(text) else None


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
    return Choose("grey", True) if _YES.match(text) else None


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
    zone, law = zone_of(place), jurisdiction_of(place)
    if zone is None:
        return None
    return Settings({"zone": zone, "jurisdiction": law} if law else {"zone": zone})


def _deadline(text: str, context: Context) -> Intent | None:
    if _NO_DEADLINE.search(text):
        return Change({"deadline": None})
    if len(text.split()) > 7:
        return None
    if when.open_hour(text, context) and (said := when.meal(when.hour_after_day(text, context), context)):
        return Unclear("word", text[:60], (Change({"deadline": said.at}),))
    said = when.meal(text, context)
    number = re.fullmatch(r"(?:at )?(\d{1,2})", text)
    said = when.meal(f"at {number[1]}", context) if number else said
    if said is None:
        return None
    options = tuple(Change({"deadline": at}) for at in (said.at, *said.others))
    return options[0] if len(options) == 1 else Unclear("word", text[:60], options)


def _when(text: str, context: Context) -> Intent | None:
    number = re.fullmatch(r"(?:at )?(\d{1,2}(?:[:.]\d\d)?)", text)
    said = when.past(f"at {number[1]}" if number else text, context)
    return Choose("when", said.at) if said and len(text.split()) <= 6 else None


def _batch(text: str, context: Context) -> Intent | None:
    names = [(key, name.lower()) for key, name in context.batches]
    exact = [key for key, name in names if name == text]
    part = [key for key, name in names if set(name.split()) & set(text.split())]
    found = exact or part
    if len(found) == 1:
        return Choose("batch", found[0])
    word = re.fullmatch(r"(?:the )?(\w+)(?: one)?", text)
    place = _ORDINALS.get(word[1]) if word else None
    return Choose("batch", names[place][0]) if place is not None and -1 <= place < len(names) and names else None


def _probe(text: str, context: Context) -> Intent | None:
    """«meat», «the pit», «it was f»: with the number that was asked about, only what it can be."""
    if len(text.split()) > 6 or re.search(r"\d", text):
        return None
    probe = next((p for p, words in _PLACES if re.search(words, text)), None)
    unit = "f" if re.search(r"\b(?:f|fahrenheit)\b", text) else "c" if re.search(r"\b(?:c|celsius)\b", text) else None
    if probe is None and re.search(r"\bminutes?\b", text) and context.asked_value:
        return Snooze(by=when.span(f"{context.asked_value:g} minutes"))
    if context.asked_value is None or (probe is None and unit is None):
        return Choose("probe", f"{probe.value}/{unit}") if probe and unit else None
    found = meanings(Number(context.asked_value, unit, probe), context)
    choices = [Choose("probe", f"{t.probe.value}/{t.unit}") for t in found if t.probe and t.unit]
    return choices[0] if len(choices) == 1 else Unclear("unit", text[:60], tuple(choices)) if choices else None


def _eaters(text: str, context: Context) -> Intent | None:
    yes = _yes_no(text)
    return None if yes is None else Change({"at_risk_eaters": yes})


def _confirm(text: str, context: Context) -> Intent | None:
    yes = _yes_no(text)
    return None if yes is None else Choose("confirm", yes)


def _cut(text: str, context: Context) -> Intent | None:
    named = meat(text)
    known = named.cut in ("brisket_flat", "brisket_point") and not re.search(r"\d", text)
    if named.cut == "brisket" and len(text.split()) <= 2:
        return Unclear("word", text, (Choose("cut", "brisket_flat"), Choose("cut", "brisket_point")))
    return Choose("cut", named.cut) if known else None


def _doubt(text: str, context: Context) -> Intent | None:
    if re.search(r"\d", text) or len(text.split()) > 5:
        return None
    return next((Choose("doubt", value) for value, words in _DOUBTS if re.search(words, text)), None)


def _field(name: str) -> Callable[[str, Context], Intent | None]:
    """A temperature of the setup: in the unit that was said, else in the person's own where only that can be."""

    def reader(text: str, context: Context) -> Intent | None:
        said = measures.sole(text, "temperature")
        if said:
            return Change({name: said.value})
        number = measures.number(text)
        if number is None:
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


_READERS: Final[dict[str, Callable[[str, Context], Intent | None]]] = {
    "cure": _cure, "thickness": _thickness, "mass": _mass, "mass_unit": _mass_unit, "weight_after": _weight_after,
    "grey": _grey,
    "salty": _salty, "zone": _zone, "deadline": _deadline, "when": _when, "batch": _batch, "probe": _probe,
    "eaters": _eaters,
    "confirm": _confirm, "cut": _cut, "doubt": _doubt, "pit_c": _field("pit_c"), "fridge_c": _field("fridge_c"),
    "method": _choice("method"), "purpose": _choice("purpose"), "wrap": _choice("wrap"), "chill": _choice("chill"),
    "cooker": _choice("cooker"),
}  # fmt: skip
