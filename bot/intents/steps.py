"""Answers to a reminder: done, at what hour, with what; skipped, forgotten, put off."""

from dataclasses import replace
from datetime import datetime
from typing import Final

from bot.intents import when
from bot.intents.context import FALLING, Context
from bot.intents.days import WEEKDAYS
from bot.intents.deeds import DEEDS, called, noun
from bot.intents.intents import (
    Ask,
    Change,
    Intent,
    Reading,
    StepDone,
    StepMissed,
    Temperature,
    Unclear,
)
from bot.intents.meats import as_meat
from bot.intents.possible_deeds import NOT_DONE, possible, there
from bot.intents.put_off import read_put_off
from bot.intents.served import how_it_was
from bot.intents.skipped import read_skipped
from bot.intents.small import content
from bot.intents.tastes import read_taste, taste
from bot.intents.temperatures import set_points
from bot.intents.temperatures.plausible import Number, meanings
from bot.intents.temperatures.readings import read_reading
from bot.intents.watered import told_along
from core import patterns as re
from core.batch.events import Probe
from core.plan.steps import Kind

_IN_FRIDGE: Final = re.compile(r"\b(?:in|into) the (?:fridge|refrigerator)\b")
_DONE: Final = re.compile(
    r"^(?:(?:ok(?:ay)?|yes|yeah|yep|yup|all|its|thats|that|it|is|im|i|ive|we|weve|just|now|have|finally|already|both"
    r"|everything|got|sorry|she|he|they|my|wife|husband|dad|mum|mom|kid|son|daughter|partner) )*"
    r"(?:done|did (?:it|that|so|both|them)|finished|completed|sorted|complete|dun|job done)\b"
    r"|\b(?:is|are|all|got it|just got it|its) done\b|^(?:flip|rinse|soak|rub|wrap|brine|(?:(?:fridge|brine"
    r"|mid) )?check) (?:done|completed?|sorted|finished)\b"
    r"|^yes i did\b"
    r"|^(?!who|what|when|why|how|where|which|never|nobody|if)\w+ (?:has |have |just |already )*(?:did|done|does)"
    r" (?:it|that|them|so)(?: already)?$"
    r"|\bdid the (?:flips?|turn|rinse|rub|soak|wrap|(?:fridge |brine |mid )?check|morning one|evening one|last one)\b"
)
_MISSED: Final = re.compile(
    r"^(?:(?:sorry|oops|damn|ok|ah|i|we|totally|completely|shit|fuck|no|ugh|so|actually|last night|yesterday"
    r"|this morning"
    r"|evening) )*(?:forgot|missed|didnt"
    r"|did not|never (?:did|flipped|turned|rinsed|wrapped|soaked|rubbed)|slept through|overslept|vergessen)\b"
    r"|\b(?:and|so|sorry|then|again|we|i|ive|have|,) missed (?:both|them|two|the|that|this|it|a|an|my|one|another"
    r"|\d)\b"
    r"|\b(?:flip|rinse|check|one)s? (?:didnt|never|did not) (?:happen(?:ed)?|get done|got done)\b|\bdont count\b"
    r"|\bforgot(?:ten)?$|\b(?:couldnt|could not|wasnt able to|unable to|had no time to|no time to"
    r"|never got (?:a )?(?:round |around |chance )?to|(?:didnt|did not) (?:get|manage|find) (?:\w+ )?to)"
    r" (?:do|flip|turn|rinse|check|get|look)\b"
)
_NOBODY: Final = re.compile(
    r"\b(?:nobody|no ?one|none of us|neither of us)(?: has| have| ever)?"
    r" (?:flipped|turned|rinsed|checked|wrapped|did)\b"
)
_NO_STEP: Final = re.compile(  # what was forgotten goes into the meat, or is a thing
    r"\b(?:cure|pink|salt|sugar|honey|syrup|pepper|spices?|coriander|garlic|bay|mustard|juniper|water|ice|thermometer"
    r"|probe|foil|charcoal|mean|count me)\b"
)
_COOLS: Final = re.compile(r"\b(?:cool\w*|chill\w*|getting cold|cold)\b")  # the brine, and no meat yet
_IN_TOWELS: Final = re.compile(r"\b(?:towels?|blankets?|cooler|cool ?box|esky)\b")  # wrapped to rest
_DONE_BY: Final = re.compile(  # a wish
    r"^(?:is |will |it |be |to be |all )*(?:done|ready|finished) by (?=\d|noon|lunch|dinner|supper)"
)
_WHOLE_DAY: Final = re.compile(r"\bdont count\b|\b(?:all day|whole day)\b")
_YESTERDAY: Final = re.compile(r"\byesterday\b(?!.*\b(?:today|now|this morning)\b)")
_TOO: Final = re.compile(r"^(?:yes|yeah|yep|yup|ok|done|now|and|both)\b.*\b(?:too|also|as well|auch)\b")
_BOTH_TIMES: Final = re.compile(r"\bboth times\b|\btwice\b")
_EARLIER: Final = re.compile(
    r"\b(?:last (?:night|time|one)|this morning|yesterday|before|previous|earlier|the one before|gestern)\b"
)
_AT_NUMBER: Final = re.compile(
    r"(?:\b(?:at|by|with)|@|^(?:wrapped|pulled|foiled|off|took it off|taken off)(?: it)?"
    r"(?= (?:\d{2,3}(?:\.\d)?(?: ?[cf])?(?:$| (?:in|with|paper|foil|now))|(?:1[6-9]"
    r"|2[01])\d\b))) ?(?P<value>\d{2,3}(?:\.\d)?)(?! ?(?:am|pm"
    r"|min|oclock|uhr)\b)(?![:\d])(?: ?(?:°"
    r"|deg(?:rees)?)? ?(?P<unit>[cf])\b)?"
)
_AT_A_PROBE: Final = frozenset(("core", "internal", "meat", "pit", "grill", "smoker", "fridge", "brine"))
_KEPT_IN: Final = re.compile(r"\b(?:oven|cooler|cool ?box|warmer|warming drawer)\b.{0,6}\bat \d")
_STILL_UNTIL: Final = re.compile(  # «resting in the oven til 8»: how long it will, and not since when it does
    r"\b((?:resting|holding|drying|sitting|chilling)\b[^,;]*?) (?:until|till?) (?:about "
    r"|around )?(?:\d[\d:.]*(?: ?[ap]m)?|noon)\b"
)
_FOREIGN: Final = 3
_THAWS: Final = re.compile(
    r"\b(?:fridge|sink|cold water|tub)\b.{0,16}\b(?:to |for )?(?:thaw|defrost)(?:ing)?\b"
    r"|^(?:(?:its|it is|meat is|now|im) )*(?:thawing|defrosting)"
    r"(?: (?:it|now|in (?:the )?(?:fridge|sink|cold water)))*$"
)
_ON_THE_FIRE: Final = (Kind.WRAP, Kind.OFF)
_WITH_CORE: Final = (Kind.WRAP, Kind.OFF, Kind.REST, Kind.CHILL)


def read_step(text: str, context: Context) -> list[Intent]:
    """What a plain text says of a step; nothing where it says none."""
    text = as_meat(text)
    if told := _missed(text, context) or read_skipped(text, context) or read_put_off(text, context):
        return [told]
    if _THAWS.search(text) and not NOT_DONE.search(text):  # into the fridge to thaw is into no cure
        return [StepDone(str(Kind.THAW))] if context.phase == "waiting" else []
    if (NOT_DONE.search(text) and not text.startswith("not bad")) or _DONE_BY.match(text):
        return []
    alone = read_taste(text, context)
    return _deeds(text, context) or ([alone] if alone else [])


def _missed(text: str, context: Context) -> StepMissed | None:
    nobody = bool(_NOBODY.search(text))
    if not (nobody or _MISSED.search(text)) or _NO_STEP.search(text) or " yet" in text:
        return None  # what is not done yet will be
    said = when.past(text, context)
    whole = bool(_WHOLE_DAY.search(text)) or bool(said and not said.hour_said and re.search(r"day\b", text))
    if not (nobody or said or noun(text) or len(text.split()) <= 4):
        return None
    named = called(text, context) or next((str(kind) for _, kind in DEEDS.hits(text)), None)
    if said and not context.due_step and context.phase == "curing":  # «forgot last night»: what comes at night
        named = named or str(Kind.FLIP)
    return StepMissed(named, said.at if said else None, whole)


def _deeds(text: str, context: Context) -> list[Intent]:
    kinds = [there(kind, text, context) for _, kind in DEEDS.hits(text)]
    kinds = [kind for kind in kinds if possible(kind, text, context)]
    if Kind.WRAP in kinds and _IN_TOWELS.search(text):
        kinds = [kind for kind in kinds if kind not in (Kind.WRAP, Kind.REST)] + [Kind.REST]
    kinds = kinds or _in_the_fridge(text, context)
    if not (kinds or _DONE.search(text)) or _about_something_else(text):
        return []
    text, wanted = set_points.heated_to(text) if Kind.LIGHT in kinds else (text, {})
    rest, core = _core_said(text, kinds, context)
    gone = _BOTH_TIMES.search(text) and _YESTERDAY.search(text)  # both of another day
    also = not gone and (bool(_TOO.search(text) and _EARLIER.search(text)) or bool(_BOTH_TIMES.search(text)))
    hour = when.begun(_STILL_UNTIL.sub(r"\1", rest), context, lasts=kinds == [Kind.CHILL])
    also = also and not (hour and hour.hour_said and not _BOTH_TIMES.search(text))  # «last night at 9 too» is that one
    said = None if also else hour
    at = said.at if said else None
    if at and (when.still_ahead(rest, context) or _before_the_fire(kinds, at, context)):
        name = str(kinds[0]) if kinds else noun(text)
        then = () if _before_the_fire(kinds, at, context) else (StepDone(name, at),)
        return [Unclear("ahead", text[:60], (StepDone(name, context.now, _detail(text, name)), *then))]
    names: list[str | None] = [str(kind) for kind in kinds[:2]] or [noun(text)]
    any_hour = said is not None and said.words in WEEKDAYS and not said.hour_said
    if names == [None] and said is not None and not said.hour_said and _comes_daily(context):  # «did it this morning»
        names = [str(Kind.FLIP)]
    done: list[Intent] = [StepDone(name, at, _detail(text, name), also, some_time=any_hour) for name in names]
    wanted |= told_along(text, kinds)
    beside = _reading_beside(rest if core else text, context)
    if Kind.BRINE in kinds and _AT_A_PROBE.isdisjoint(text.split()):  # «weighed it, 11.9»: grams as likely as degrees
        beside = [Unclear("number", text[:60], tuple(beside))] if beside else []
    if Kind.OUT in kinds and "soaking" in text:  # how long, and how the water is changed
        beside = [*beside, Ask("soak", text=text)]
    return done + ([Change(wanted)] if wanted else []) + _reading(core, text, at) + beside


def _in_the_fridge(text: str, context: Context) -> list[Kind]:
    """What «in the fridge» is: into the cure, to dry or to cool; nothing of what lies in it, or beside a number."""
    here = context.phase != "curing" and _IN_FRIDGE.search(text)
    cools = context.phase == "waiting" and _COOLS.search(text)
    if not here or cools or re.search(r"\d", when.without_times(_IN_FRIDGE.sub("", text))):
        return []
    return [{"waiting": Kind.INTO_CURE, "drying": Kind.DRY}.get(context.phase, Kind.CHILL)]


def _comes_daily(context: Context) -> bool:
    """Whether the flip is what comes next: a deed that is told without its name is that of every day."""
    return context.phase == "curing" and (context.due_step or str(Kind.FLIP)).startswith(str(Kind.FLIP))


def _before_the_fire(kinds: list[Kind], at: datetime, context: Context) -> bool:
    """Whether a deed of the fire is told of an hour at which the meat was not on it: then it is of no such hour."""
    return bool(kinds) and kinds[0] in _ON_THE_FIRE and context.on_at is not None and at < context.on_at


def _about_something_else(text: str) -> bool:
    """«wild boar cured, no cook, sliced thin»: a deed among too many words of another subject."""
    return len(content(_without_deeds(text))) > _FOREIGN


def _without_deeds(text: str) -> str:
    return DEEDS.in_turn(text, lambda line, words, _: words.sub(" ", line))


_CHILLED_IN = {"ice": "ice", "fan": "fan", "rack": "rack", "foil": "foil", "fridge": "fridge"}  # the first that fits


def _detail(text: str, step: str | None) -> str:
    if step == Kind.WRAP:
        return "foil" if "foil" in text else "paper" if "paper" in text else ""
    if step == Kind.CHILL:
        return next((way for word, way in _CHILLED_IN.items() if re.search(rf"\b{word}\b", text)), "")
    return how_it_was(text) if step == Kind.SERVE else taste(text) if step in (Kind.RINSE, Kind.SOAK) else ""


def _core_said(text: str, kinds: list[Kind], context: Context) -> tuple[str, tuple[Temperature, ...]]:
    """«wrapped in foil at 162»: what the number can be of the core; and the text without it, for the hour."""
    found = _AT_NUMBER.search(text)
    if not found or not (found["unit"] or any(kind in _WITH_CORE for kind in kinds)):
        return text, ()
    value = float(found["value"])
    if value <= 24 and not found["unit"]:
        return text, ()
    probe = Probe.PIT if Kind.LIGHT in kinds else Probe.CORE  # «lit at 60 c»: how far the fire has come
    return text[: found.start()] + text[found.end() :], meanings(Number(value, found["unit"], probe), context)


def _reading_beside(text: str, context: Context) -> list[Intent]:
    """«203 tender, taking it off»: a number beside a deed, where it is no hour."""
    aside = r"\b(?:the )?meat\b" if context.brine_made else r"\bin (?:the |butcher )?(?:paper|foil)\b"
    text = re.sub(aside, " ", _without_deeds(text))  # raw meat is as cold as what it goes into
    if when.past(text, context):
        text = when.without_times(text) if any(word in text.split() for word in _AT_A_PROBE) else ""
    found = read_reading(" ".join(text.split()), context) if re.search(r"\d\d", text) else None
    asked = isinstance(found, Unclear) and found.options and context.phase in FALLING
    return [found] if found and (asked or isinstance(found, Reading)) else []


def _reading(core: tuple[Temperature, ...], text: str, at: datetime | None) -> list[Intent]:
    readings = tuple(Reading((replace(t, at=at),)) for t in core)
    if readings and _KEPT_IN.search(text):  # «resting in the oven at 150»: the oven, or the meat in it
        return [Unclear("number", text[:60], readings)]
    return list(readings) if len(readings) < 2 else [Unclear("number", text[:60], readings)]
