"""How thick the piece is, where the unit, the place or the number is left open: asked about, never guessed."""

from typing import Final

from bot import measures
from bot.intents.context import SET_UP, Context
from bot.intents.intents import Change, Intent, Unclear
from bot.intents.lengths import THICK_AND_THIN
from core import patterns as re
from core.units import Metres

_A_NUMBER: Final = rf"(?<![\w./])(?P<value>{measures.NUMBER})(?![\w./])"
_NUMBERS: Final = re.compile(rf"(?<![\w./])(?P<value>{measures.NUMBER})(?![./\d])")
_INCH: Final = r"(?: ?(?:in|inch(?:es)?|\"))?"
_THICK: Final = r"(?:thick\w*|fat\w*|deep\w*|tall\w*|big\w*|wide\w*)"
_BARE: Final = tuple(
    re.compile(words)
    for words in (
        rf"^(?:(?:its|the|actually|sorry|no) )*thick(?:ness)?(?: (?:is|was|of|at|about|=))* {_A_NUMBER}$",
        rf"^(?:(?:its|it is|make|it|thats|only|really|actually|no|just|more|turns out|now|about|bout|around|say|like"
        rf"|roughly) )*{_A_NUMBER} (?:thick|deep)$",
        rf"^(?:(?:i|we|just|so) )*(?:re)?measured(?: it)?(?: again| anew)?[,:]? (?:(?:and|its|it is|more|like|turns out"
        rf"|about|really|nearer|closer to|at|to be) )*{_A_NUMBER}{_INCH}$",
        # «1 3/4 at the fat end», «thick end is 2»: the thickest spot is the one that counts
        rf"^(?:(?:its|it is|about|around|say|like) )*{_A_NUMBER}{_INCH} (?:at|on|in) (?:the |its )?{_THICK}"
        r"(?: (?:end|part|bit|point|spot|side|place))?$",
        rf"^(?:the )?{_THICK} (?:end|part|bit|point|spot|side)(?: (?:is|was|of|at|about|=))* {_A_NUMBER}{_INCH}$",
    )
)
_ENDS: Final = re.compile(
    r"\b(?:thick(?:est)?|fat(?:test)?|one) (?:end|side|part|bit|spot)\b|\bmiddle\b|\btaper\w*|\bthin\w*\b.*\bthick"
    r"|\bthick\w*\b.*\bthin"
)
_IN_INCHES: Final = re.compile(r"\d ?in\b")
_OR_ELSE: Final = re.compile(
    r"^[ ,]*(?:(?:or|maybe|perhaps|possibly|nearer|closer to|more like|could be|might be|i think|i guess|even|its"
    rf"|its more|no|to|well) )+{_A_NUMBER}"
)
BY_HAND: Final = re.compile(
    r"\b(?:fingers?|thumbs?|fists?|palms?|hands?(?:breadths?)?|decks? of cards|bricks?|books?) ?(?:thick|wide|deep)?\b"
)
_INCHES: Final = (0.5, 5.0)  # a thickness that people give in inches, in mm; between them it may be cm
_MILLIMETRES: Final = (12.0, 150.0)


def thicknesses(value: float, typed: str, context: Context) -> tuple[Metres, ...]:
    """What a thickness without a unit can be: millimetres from 12, inches by a fraction or the person's own."""
    if _MILLIMETRES[0] <= value <= _MILLIMETRES[1]:
        return (measures.to_house(value, "mm"),)
    if _INCHES[0] <= value <= _INCHES[1] and ("/" in typed or context.units.length == "in"):
        return (measures.to_house(value, "in"),)
    return tuple(measures.to_house(value, unit) for unit in ("in", "cm") if _INCHES[0] <= value <= _MILLIMETRES[0])


def thickness_told(text: str, context: Context) -> tuple[Metres, ...]:
    """What a text may say of the thickness beyond a plain length: one, several to be asked about, or none."""
    return _two(text, context) or _one_or_another(text) or _without_unit(text, context)


def read_thickness(text: str, context: Context) -> Intent | None:
    """The thickness that a text states, or what it may be."""
    if BY_HAND.search(text) and "thick" in text:
        return Unclear("ruler", text[:60])
    options = tuple(Change({"thickness": metres}) for metres in thickness_told(text, context))
    if len(options) == 1:
        return options[0]
    why = "thickest" if len(options) == 2 and not _without_unit_typed(text) else "unit"
    return Unclear(why, text[:60], options) if options or _without_unit_typed(text) else None


def _two(text: str, context: Context) -> tuple[Metres, ...]:
    """«thickest bit 55, thinnest 40 mm»: the cure has to reach the middle of the thickest; which that is, is asked."""
    lengths = measures.of_kind(text, "length")
    typed = {measures.number(found["value"]) or 0.0 for found in _NUMBERS.finditer(text)}
    if context.phase not in SET_UP or measures.of_kind(text, "temperature"):
        return ()
    if len(typed) < 2 or not THICK_AND_THIN.search(text) or not (lengths or _ENDS.search(text)):
        return ()
    unit = lengths[0].unit if lengths else "in" if _IN_INCHES.search(text) else None
    both = sorted(typed, reverse=True)[:2]
    ways = [(measures.to_house(value, unit),) if unit else thicknesses(value, text, context) for value in both]
    return tuple(metre for way in ways for metre in way)


def _one_or_another(text: str) -> tuple[Metres, ...]:
    """«1.6in i think maybe 1.7»: the larger first."""
    lengths = measures.of_kind(text, "length")
    other = _OR_ELSE.match(text[lengths[0].end :]) if len(lengths) == 1 else None
    value = measures.number(other["value"]) if other else None
    if value is None or lengths[0].low is not None:
        return ()
    return tuple(sorted((lengths[0].value, measures.to_house(value, lengths[0].unit)), reverse=True))


def _without_unit_typed(text: str) -> str:
    return next((found["value"] for words in _BARE if (found := words.search(text))), "")


def _without_unit(text: str, context: Context) -> tuple[Metres, ...]:
    """«thickness is 48»: in the unit that fits, several where two do."""
    typed = _without_unit_typed(text)
    value = measures.number(typed) if typed else None
    if value is None:
        return ()
    return (measures.to_house(value, "in"),) if _IN_INCHES.search(text) else thicknesses(value, typed, context)
