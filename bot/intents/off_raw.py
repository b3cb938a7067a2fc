"""Meat that somebody means to take off the fire too early: what it is then, and no new target and no step done."""

from typing import Final

from bot import measures
from bot.intents.context import Context
from bot.intents.intents import Ask, Intent
from core import patterns as re
from core.person import Units
from core.units import Celsius

_OFF_AT: Final = re.compile(
    r"(?<!not )(?<!never )(?<!dont )\b(?:pull(?:ing)?|tak(?:e|ing)|lift(?:ing)?|whip(?:ping)?|yank(?:ing)?"
    r"|bring(?:ing)?|get(?:ting)?|com(?:e|ing)|stop(?:ping)?) (?:(?:it|them|her|him|this|the \w+) )?(?:(?:off|out) )?"
    r"(?:now,? )?(?:at|its|it is) (?:about |only |just |around )?(?P<core>\d{2,3})(?: ?°? ?(?P<unit>[cf])\b)?"
    r"(?![\w:.%]| ?(?:am|pm|oclock|min\w*|h|hrs?|hours?|lbs?|kg|ppm)\b)"
)
_FINE_AT: Final = re.compile(  # «uncle says 145 is fine pull it», «150 will do, get it off»
    r"(?<![\d.:])(?P<core>\d{2,3})(?: ?°? ?(?P<unit>[cf])\b)? (?:is |its |it is |will |would |should |be )+"
    r"(?:fine|ok|okay|enough|plenty|good|done|do|cooked|safe)(?: enough)?,? (?:so |just |then |now |and |to )*"
    r"(?:pull|take|get|lift|whip|yank|bring|serve|eat|carve)\b"
    r"|\b(?:says?|reckons?|swears?|thinks?|claims?|insists?) (?:that )?(?P<heard>\d{2,3})(?: ?°? ?(?P<there>[cf])\b)?"
    r" (?:is |its |will |would |should |be )+(?:fine|ok|okay|enough|plenty|good|done|do|cooked|safe)\b"
)
_LEAST_C: Final = 38.0  # a number below it is an hour of the day, or nothing that meat is taken off at
_FLOOR_C: Final[Celsius] = 62.7  # 145 °F, as a thermometer of whole degrees shows it
_BIRDS_C: Final[tuple[Celsius, Celsius]] = (73.0, 83.0)  # at what birds, and no other piece, shall come off
_BIRD_FLOOR_C: Final[Celsius] = 73.8  # 165 °F

_COOKED_TO: Final = re.compile(  # «took the turkey to 74 and its rosy», «smoked it till it hit 52 inside, do i fry it»
    r"^(?=.*\b(?:pink|rosy|raw|done|cooked|eat|cold|fry\w*|inside|middle|juicy|dry|tough|touch|underdone)\b)"
    r".*\b(?:took|taken|cooked|smoked|got|brought|reached|came|pulled)\b.{0,40}\b(?:to|at|hit|till?|until|reached) "
    r"(?:about |only |just )?\d{2,3}\b(?! ?(?:k?g|kilos?|lbs?|pounds?|oz|mm|cm|in|inch\w*|h|hrs?|hours?|days?)\b)"
    r"|^(?:i |we |so |ok )*(?:took|cooked|brought) (?:it|the|my|a|our) .{0,30}\bto (?:about |only |just )?\d{2,3}\b"
    r"(?! ?(?:k?g|kilos?|lbs?|pounds?|oz|h|hrs?|hours?|days?)\b)"
)


def is_cooked(plain: str) -> bool:
    """Whether a line tells of meat that came to a core: nothing begins with it."""
    return _COOKED_TO.search(plain) is not None


def off_too_early(text: str, context: Context) -> Intent | None:
    """«gonna pull at 150 so its juicy», of a bird: the question what it is then, where that is under its floor."""
    core = core_to_take_off_at(text, context.units) if context.phase == "cooking" else None
    bird = context.target_c is not None and _BIRDS_C[0] <= context.target_c <= _BIRDS_C[1]
    raw = core is not None and core < (_BIRD_FLOOR_C if bird else _FLOOR_C)
    return Ask("pull_at", text=text) if raw else None


def core_to_take_off_at(plain: str, units: Units) -> Celsius | None:
    """The core at which a plain line takes the meat off, in its own unit, else in the person's, else in the other."""
    found = _OFF_AT.search(plain)
    if found is None and (said := _FINE_AT.search(plain)):
        return _read(said["core"] or said["heard"], said["unit"] or said["there"], units)
    return _read(found["core"], found["unit"], units) if found else None


def _read(number: str, unit: str | None, units: Units) -> Celsius | None:
    """A core in its own unit, else in the person's, else in the other."""
    read = (unit,) if unit else (units.temperature, "c" if units.temperature == "f" else "f")
    fits = (core for one in read if _LEAST_C <= (core := measures.to_house(float(number), one)) <= 100.0)
    return next(fits, None)
