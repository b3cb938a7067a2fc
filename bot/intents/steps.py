"""Answers to a reminder: done, at what hour, with what; skipped, forgotten, put off."""

import re
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Final

from bot.intents import when
from bot.intents.context import Context
from bot.intents.deeds import DEEDS, noun
from bot.intents.intents import (
    Intent,
    MoveDeadline,
    Reading,
    Snooze,
    StepDone,
    StepMissed,
    StepSkipped,
    Temperature,
    Unclear,
)
from bot.intents.meats import as_meat
from bot.intents.plausible import Number, meanings
from bot.intents.readings import read_reading
from bot.intents.small import content
from bot.intents.tastes import read_taste, taste
from core.batch.events import Probe
from core.plan.steps import Kind

_IN_FRIDGE: Final = re.compile(r"\b(?:in|into) the (?:fridge|refrigerator)\b")
_DONE: Final = re.compile(
    r"^(?:(?:ok(?:ay)?|yes|yeah|yep|yup|all|its|thats|that|it|is|im|i|ive|we|weve|just|now|have|finally|already|both"
    r"|everything|got|sorry|she|he|they|my|wife|husband|dad|mum|mom|kid|son|daughter|partner) )*"
    r"(?:done|did (?:it|that|so|both|them)|finished|completed|sorted|complete|dun|job done)\b"
    r"|\b(?:is|are|all|got it|just got it|its) done\b|^(?:flip|rinse|soak|rub|wrap|check|brine|fridge check) (?:done"
    r"|completed?|sorted|finished)\b"
    r"|^yes i did\b"
    r"|\bdid the (?:flips?|turn|rinse|rub|soak|wrap|(?:fridge |brine |mid )?check|morning one|evening one|last one)\b"
)
_NOT: Final = re.compile(
    r"\b(?:not|havent|hasnt|didnt|did not|wont|cant|couldnt|never|forgot(?:ten)?|missed|will|ill|going to|gonna"
    r"|should|shall|about to|when|if|after|before|need to|have to|until)\b"
)
_MISSED: Final = re.compile(
    r"^(?:(?:sorry|oops|damn|ok|ah|i|we|totally|completely|shit|fuck|no|ugh|so) )*(?:forgot|missed|didnt|did not"
    r"|never did|slept through|overslept|vergessen)\b"
    r"|\b(?:and|so|sorry|then|again|we|i|ive|have|,) missed (?:both|them|two|the|that|this|it|a|an|my|one|another"
    r"|\d)\b|\b(?:flip"
    r"|rinse|check|one)s? (?:didnt"
    r"|never|did not) (?:happen(?:ed)?|get done|got done)\b|\bdont count\b|\bforgot(?:ten)?$"
    r"|\b(?:couldnt|could not|wasnt able to|unable to|had no time to|no time to|never got (?:a )?(?:round |around "
    r"|chance )?to|(?:didnt|did not)"
    r" (?:get|manage|find) (?:\w+ )?to) (?:do|flip|turn|rinse|check|get|look)\b"
    r"|^(?:nobody|no ?one|none of us|neither of us)(?: has| have)? (?:flipped|turned|rinsed|checked|did)\b"
)
_NO_STEP: Final = re.compile(  # what was forgotten goes into the meat, or is a thing
    r"\b(?:cure|pink|salt|sugar|honey|syrup|pepper|spices?|coriander|garlic|bay|mustard|juniper|water|ice|thermometer"
    r"|probe|foil|charcoal|mean|count me)\b"
)
_HALF_OUT: Final = re.compile(
    r"\b(?:half|partly|bits?|parts?|corners?|edges?|sticking|stuck|poking|peeking|float\w*|swimming|bobbing|top)\b"
    r".{0,16}\bout\b"
)
_WHOLE_DAY: Final = re.compile(r"\bdont count\b|\b(?:all day|whole day)\b")
_SKIP: Final = re.compile(
    r"^(?:(?:lets|ok|please|just|can we|ill|well|i|we|will|shall|must|have to|gonna|going to) )*(?:skip(?:ping|ped)?"
    r"|wont do|not doing"
    r"|leave out|drop|forget about (?:this|that|it|the flip)|no need for|dont bother(?: with)?|leave (?:this"
    r"|that) one|pass on|give (?:this|that"
    r"|it) (?:one )?a miss)\b"
    r"(?! the line)|^überspringen\b|^no (?:flip|rinse|check) (?:today|tonight|this (?:morning|evening))$"
)
_LATER: Final = re.compile(
    r"^(?:(?:ok(?:ay)?|sure|yes|no|maybe|please|pls|do it|ill do it|will do|wait|just|still|sorry|i|we) )*"
    r"(?:in a (?:mo|jiffy|few)|on my way|almost there|later|not now|not yet|snooze|busy|in a (?:bit|while|sec|minute"
    r"|moment)|one sec|soon|hold (?:on|off)"
    r"|remind me (?:later|again)|"
    r"give me a (?:bit|sec|minute|moment)|cant (?:right )?now|not (?:(?:done|flipped|turned|rinsed|lit"
    r"|wrapped) )?yet|havent (?:done|flipped|rinsed"
    r"|wrapped)\b.{0,20}(?:yet)?)\b"
)
_PUT_OFF: Final = re.compile(
    r"\b(?:remind|ping|ask|tell|nudge|wake|try|message|text) me\b|\b(?:ask|remind|try|ping|check) again\b"
    r"|^(?:(?:ok|sure|yes) )*(?:gimme|give me|need) (?:another |about )?(?:half (?:an? )?|an? |\d{1,3} ?)(?:h|m)\w*\b"
    r"|^(?:i )?(?:wont|not|cant) (?:be )?(?:home|back|in|there|free)? ?(?:un)?till? \d|(?:\b(?:ill|i will|we will"
    r"|going to|gonna|well)|^will) (?:do"
    r"|flip|rinse|light"
    r"|wrap|turn|be(?! late)|start|get|check)\b"
    r"|\b(?:give me|wait) (?:un)?til\b|^(?:(?:ill|gonna|going to|im|we are|were|will|lets) )*"
    r"(?:flip|turn|rins|light|wrapp?|slic)(?:e|p?ing)? (?:(?:it|them|up|the (?:fire|coals?|charcoal|smoker|grill|bags?"
    r"|meat)) )*(?:at|in (?=\d|an? |half)"
    r"|later|tomorrow)\b|\bsnooze\b"
    r"|\bnext (?:one|reading|check|look) (?:in|at)\b"
    r"|\berinner mich\b"
)
_UNTIL: Final = re.compile(r"\b(?:til|till|until) ")
_NEVER: Final = re.compile(r"\b(?:dont|do not|stop|never|only|no more)\b")
_GIVE_ME: Final = re.compile(
    r"\b(?:give me|need|gimme|gib mir|snooze|wait) (?:another "
    r"|for )?(?P<minutes>\d{1,3})(?: more)?$"
)
_SOAKING: Final = re.compile(r"^(?:(?:its|im|now|just|still|it) )*soaking (?:(?:it|them|now) )*for (?=\d|an?\b|half)")
_IN_MINUTES: Final = re.compile(
    r"^(?:(?:ok|ill|be|do|doing|flip|flipping|turning|rinsing|wrapping|back|home|ready|there|it|them"
    r"|that) )*in (?P<minutes>\d{1,3})$"
)
_DOING_IN: Final = re.compile(
    r"^(?:(?:ok|im|we are|just) )*(?:flipping|turning|doing|rinsing|wrapping) (?:it |them |that )?in (?=\d|an?\b|half)"
)
_SPAN_ONLY: Final = re.compile(
    r"^(?:(?:ok(?:ay)?|brb|in|give|gimme|me|need|another|about|for|snooze|sure|yes|yeah|pls|please|wait|later"
    r"|like|noch|still"
    r"|ca|back) ?)*"
    r"(?:half (?:an |a )?(?:hour|hr)|(?:an?|\d{1,3}(?:\.\d)?) ?(?:more )?(?:m?mins?|minutes?|minuten|h|hrs?|hours?"
    r"|stunden?|days?"
    r"|tage?))(?: (?:please|pls|more|ok|later|then))*$"
)
_A_SPAN: Final = re.compile(r"(?:an?|\d{1,3}(?:\.\d)?) ?(?:h|hrs?|hours?|mins?|minutes?|days?|weeks?)")
_LONG: Final = timedelta(hours=1)  # «2 hours» beside the fire may be how long it took, or the meal
_HOT: Final = ("cooking", "resting", "chilling")
_TOO: Final = re.compile(r"\b(?:too|also|as well|auch)\b")
_BOTH_TIMES: Final = re.compile(r"\bboth times\b|\btwice\b")
_EARLIER: Final = re.compile(
    r"\b(?:last (?:night|time|one)|this morning|yesterday|before|previous|earlier|the one before|gestern)\b"
)
_AT_NUMBER: Final = re.compile(
    r"(?:\b(?:at|by|with)|@|^(?:wrapped|pulled|foiled|off|took it off|taken off)(?: it)?"
    r"(?= \d{2,3}(?:\.\d)?(?: ?[cf])?(?:$| (?:in|with|paper|foil|now)))) ?(?P<value>\d{2,3}(?:\.\d)?)(?! ?(?:am|pm"
    r"|min|oclock|uhr)\b)(?![:\d])(?: ?(?:°"
    r"|deg(?:rees)?)? ?(?P<unit>[cf])\b)?"
)
_AT_A_PROBE: Final = ("core", "internal", "meat", "pit", "grill", "smoker", "fridge", "brine")
_KEPT_IN: Final = re.compile(r"\b(?:oven|cooler|cool ?box|warmer|warming drawer)\b.{0,6}\bat \d")
_FOREIGN: Final = 3
_WITH_CORE: Final = (Kind.WRAP, Kind.OFF, Kind.REST, Kind.CHILL)


def read_step(text: str, context: Context) -> list[Intent]:
    """What a plain text says of a step; nothing where it says none."""
    text = as_meat(text)
    if missed := _missed(text, context):
        return [missed]
    if _SKIP.search(text):
        return [StepSkipped(noun(text))]
    if put_off := _put_off(text, context):
        return [put_off]
    if _NOT.search(text) and not text.startswith("not bad"):
        return []
    alone = read_taste(text, context)
    return _deeds(text, context) or ([alone] if alone else [])


def _missed(text: str, context: Context) -> StepMissed | None:
    if not _MISSED.search(text) or _NO_STEP.search(text):
        return None
    said = when.past(text, context)
    whole = bool(_WHOLE_DAY.search(text)) or bool(said and not said.hour_said and re.search(r"day\b", text))
    if not (said or noun(text) or len(text.split()) <= 4):
        return None
    return StepMissed(noun(text), said.at if said else None, whole)


def _put_off(text: str, context: Context) -> Snooze | Unclear | None:
    if minutes := _GIVE_ME.search(text) or _IN_MINUTES.search(text):
        return Snooze(by=timedelta(minutes=int(minutes["minutes"])))
    if _SPAN_ONLY.search(text) or _DOING_IN.search(text) or _SOAKING.search(text):
        by = when.span(text)
        days = (
            by is not None and by.days and (not context.due_step or _A_SPAN.fullmatch(text))
        )  # a day more in the cure, or the meal a day later
        hours = by is not None and by >= _LONG and _A_SPAN.fullmatch(text) and context.phase in _HOT
        if by and context.phase != "none" and (days or hours):
            return Unclear("word", text[:60], (Snooze(by=by), MoveDeadline(by=by)))
        return Snooze(by=by)
    if _PUT_OFF.search(text) and not _NEVER.search(text):
        said = when.future(text, context)
        by = when.span(text) if said and not said.hour_said and not said.day_said else None
        return Snooze(until=said.at if said and not by else None, by=by, step=noun(text))
    if _LATER.search(text):
        by = when.span(text)
        said = when.future(text, context) if not by and _UNTIL.search(text) else None
        return Snooze(until=said.at if said else None, by=by, step=_deed(text, context))
    return None


def _deed(text: str, context: Context) -> str | None:
    return next((str(kind) for kind, words in DEEDS if words.search(text)), None)


def _deeds(text: str, context: Context) -> list[Intent]:
    kinds = [_there(kind, text, context) for kind, words in DEEDS if words.search(text)]
    kinds = [kind for kind in kinds if _possible(kind, text, context)]
    if (
        not kinds
        and context.phase != "curing"
        and _IN_FRIDGE.search(text)
        and not re.search(r"\d", when.without_times(_IN_FRIDGE.sub("", text)))
    ):
        kinds = [
            Kind.INTO_CURE if context.phase == "waiting" else Kind.DRY if context.phase == "drying" else Kind.CHILL
        ]
    if not (kinds or _DONE.search(text)) or _about_something_else(text):
        return []
    rest, core = _core_said(text, kinds, context)
    also = bool(_TOO.search(text) and _EARLIER.search(text)) or bool(_BOTH_TIMES.search(text))
    said = None if also else when.past(rest, context)
    at = said.at if said else None
    if at and when.still_ahead(rest, context):
        name = str(kinds[0]) if kinds else noun(text)
        return [Unclear("ahead", text[:60], (StepDone(name, context.now, _detail(text, name)), StepDone(name, at)))]
    names: list[str | None] = [str(kind) for kind in kinds[:2]] or [noun(text)]
    done: list[Intent] = [StepDone(name, at, _detail(text, name), also) for name in names]
    beside = _reading_beside(rest if core else text, context)
    return done + _reading(core, text, at) + beside


def _there(kind: Kind, text: str, context: Context) -> Kind:
    """What was meant where the meat is: out of the cooker is off the fire."""
    from_the_cure = re.search(r"\b(?:brine|cure|bag|bucket|tub|pickle|drained)\b", text)
    return Kind.OFF if kind is Kind.OUT and context.phase == "cooking" and not from_the_cure else kind


def _possible(kind: Kind, text: str, context: Context) -> bool:
    """Whether words for a deed can mean it here: «pulled» before the cook is how it will be eaten."""
    sealing = context.phase == "drying" and (context.due_step or "") == "even"
    if kind is Kind.EVEN:  # «resting» may be cooked meat of which nobody said that it went on
        return sealing or (context.phase == "drying" and "resting" not in text)
    if kind is Kind.OUT and _HALF_OUT.search(text):
        return False
    if kind is Kind.CHILL and context.phase == "drying" and "rack" in text:
        return False
    if kind in (Kind.OFF, Kind.REST, Kind.CHILL, Kind.SLICE, Kind.SERVE):
        return context.phase not in ("none", "waiting", "curing") and not (sealing and kind is Kind.REST)
    if kind is Kind.RUB:  # before the cure it is the cure that is rubbed on, in the cure the bag
        return context.phase not in ("none", "waiting", "curing")
    if kind is Kind.DRY:  # a rack in the fridge is where it chills, too
        return context.phase not in ("cooking", "resting", "chilling", "stored")
    if kind is Kind.MEAT_ON:
        return context.phase not in ("resting", "chilling", "stored")
    if kind is Kind.INTO_CURE and context.phase not in ("none", "waiting", "curing"):
        return False
    return kind is not Kind.INTO_CURE or not re.search(r"\d ?(?:days?|d|weeks?)\b", text)


def _about_something_else(text: str) -> bool:
    """«wild boar cured, no cook, sliced thin»: a deed among too many words of another subject."""
    for _, words in DEEDS:
        text = words.sub(" ", text)
    return len(content(text)) > _FOREIGN


_CHILLED_IN = {"ice": "ice", "fan": "fan", "rack": "rack", "foil": "foil", "fridge": "fridge"}  # the first that fits


def _detail(text: str, step: str | None) -> str:
    if step == Kind.WRAP:
        return "foil" if "foil" in text else "paper" if "paper" in text else ""
    if step == Kind.CHILL:
        return next((way for word, way in _CHILLED_IN.items() if re.search(rf"\b{word}\b", text)), "")
    return taste(text) if step in (Kind.RINSE, Kind.SOAK) else ""


def _core_said(text: str, kinds: list[Kind], context: Context) -> tuple[str, tuple[Temperature, ...]]:
    """«wrapped in foil at 162»: what the number can be of the core; and the text without it, for the hour."""
    found = _AT_NUMBER.search(text)
    if not found or not (found["unit"] or any(kind in _WITH_CORE for kind in kinds)):
        return text, ()
    value = float(found["value"])
    if value <= 24 and not found["unit"]:
        return text, ()
    rest = text[: found.start()] + text[found.end() :]
    return rest, meanings(Number(value, found["unit"], Probe.CORE), context)


def _reading_beside(text: str, context: Context) -> list[Intent]:
    """«203 tender, taking it off»: a number beside a deed, where it is no hour."""
    for _, words in DEEDS:
        text = words.sub(" ", text)
    text = re.sub(r"\bin (?:the |butcher )?(?:paper|foil)\b", " ", text)
    if when.past(text, context):
        text = when.without_times(text) if any(word in text.split() for word in _AT_A_PROBE) else ""
    if not re.search(r"\d\d", text):
        return []
    found = read_reading(" ".join(text.split()), context)
    asked = isinstance(found, Unclear) and found.options and context.phase in ("resting", "chilling")
    return [found] if found and (asked or isinstance(found, Reading)) else []


def _reading(core: tuple[Temperature, ...], text: str, at: datetime | None) -> list[Intent]:
    readings = tuple(Reading((replace(t, at=at),)) for t in core)
    if readings and _KEPT_IN.search(text):  # «resting in the oven at 150»: the oven, or the meat in it
        return [Unclear("number", text[:60], readings)]
    return list(readings) if len(readings) < 2 else [Unclear("number", text[:60], readings)]
