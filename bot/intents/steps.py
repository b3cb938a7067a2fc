"""Answers to a reminder: done, at what hour, with what; skipped, forgotten, put off."""

import re
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Final

from bot.intents import when
from bot.intents.context import Context
from bot.intents.intents import Intent, Reading, Snooze, StepDone, StepMissed, StepSkipped, Temperature, Unclear
from bot.intents.plausible import Number, meanings
from bot.intents.readings import read_reading
from bot.intents.small import content
from core.batch.events import Probe
from core.plan.steps import Kind

_IT: Final = r"(?:it|them|the (?:bag|meat|flats?|brisket|piece|lot)|both|everything)"
# what was said to be done, in the order in which it is looked for
_DEEDS: Final = tuple(
    (kind, re.compile(words))
    for kind, words in (
        (Kind.FLIP, rf"\b(?:flipp?e?d|turned {_IT}(?! (?:down|up|off|on))|turned over|turnt|massaged"
                    rf"|flip(?:s|ping)? (?:is "
                    rf"|are |was )?(?:done|sorted))\b"
                    r"|^(?:(?:both|bag|bags|meat|it) )*(?:is |are )?turned$|^flip$"),
        (Kind.OUT, r"\b(?:out of the (?:brine|cure|bag|bucket|tub|pickle)|taken out of the bag)\b"
                   r"|\b(?:took|taken|taking) (?:it|them|the meat) out(?! of)\b"
                   r"|^(?:(?:its|meats?|meat is) )?out(?: now)?$"),
        (Kind.INTO_CURE, r"\bin(?:to)? the (?:brine|cure|bag|bucket|tub|pickle)\b|\b(?:bagged (?:it|up)"
                         r"|started curing|its curing)\b|\b(?:put|got) (?:it|them|the meat) in\b(?! the)"
                         r"|\bmeats? (?:went |is |goes )?in\b(?! the)|^(?:its )?in(?: now)?$"),
        (Kind.RINSE, r"\b(?:rinsed|washed (?:it|off)|rins(?:e|ing) (?:is )?done)\b"),
        (Kind.SOAK, r"\b(?:soaked|soak(?:ing)? (?:is )?(?:done|over)|desalted)\b"),
        (Kind.RUB, r"\b(?:rubbed|rub(?:s| is)? (?:now )?on|seasoned)\b"),
        (Kind.DRY, r"\b(?:patted(?: it)? dry|dried(?: it)?|drying (?:is )?(?:done|now)|on the rack(?: uncovered)?)\b"),
        (Kind.LIGHT, r"\b(?:lit|lighted)\b(?! up)|(?<!more )(?<!some )\b(?:fire|charcoal|coals?)(?:s| is"
                     r"| are)? (?:now )?(?:lit|going|on|started)\b"
                     r"|\bstarted the (?:fire|smoker|grill)\b|\b(?:smoker|grill|pit) is (?:on|lit|going)\b"),
        (Kind.WRAP, r"\bwrapped\b|\bwrapping (?:it )?now\b|\bfoiled\b|\b(?:paper|foil) on\b"
                    r"|\bwrapping (?:is )?done\b|\bits in (?:the )?(?:foil|paper)\b"),
        (Kind.OFF, rf"\b(?:pulled (?:{_IT}|at)|took (?:{_IT}|the meat)? ?off|taken off|off the (?:smoker|heat|grill"
                   rf"|pit|fire)|out of the smoker)\b"
                   r"|\b(?:taking |took |pulling )?(?<!washed )(?<!rinsed )(?<!dried )(?:meat|brisket|it"
                   r"|flat)s? (?:is )?(?:now )?off\b"
                   r"|^pulled\b|^off\b|\b(?:from|vom|of) (?:the )?(?:grill|smoker|pit|feuer)(?: genommen| geholt)?$"),
        (Kind.MEAT_ON, rf"\b(?:meat|brisket|flat|it)s? (?:is |are |went |just went )?(?:now )?on(?! (?:the )?(?:rack"
                       rf"|counter|ice|top))\b"
                       rf"|\b(?:put|got) (?:{_IT}|the meat) on\b(?! (?:the )?(?:ice|rack|counter|top|board))"
                       r"|\b(?:has been|been|is|its) on since\b|\bliegt drauf\b|^drauf\b"
                       r"|\bon the (?:smoker|grill|pit|grate)\b|^on(?: now)?$"),
        (Kind.SLICE, r"\b(?:sliced|carved|cut it up)\b"),
        (Kind.SERVE, r"\b(?:eaten|served|we ate|ate (?:it|the)|all gone|scoffed)\b"),
        (Kind.REST, r"\b(?:resting|into the cooler|in the cooler(?: ?box)?|rest started|started (?:the )?rest)\b"),
        (Kind.CHILL, r"(?<!chill )(?<!chill it )(?<!cool )(?<!cool it )\b(?:in (?:the|an) ice(?: ?bath| ?water)?"
                     r"|in the chill(?:er)?|chilling|(?:it|meat) on ice)\b"),
        (Kind.BRINE, r"\b(?:made|mixed|brewed|cooked) (?:up )?(?:the |a )?(?:brine|pickle)\b|\b(?:brine"
                     r"|pickle)s? (?:is )?(?:made|ready|mixed|done)\b"),
        (Kind.BRINE_CHECK, r"\bbrine(?: is|s)? (?:cold|cool|chilled)\b"),
        (Kind.THAW, r"\b(?:its|is|fully|all|meat) (?:now )?(?:thawed|defrosted)\b|^(?:thawed|defrosted)\b"),
        (Kind.FRIDGE_CHECK, r"\b(?:checked|looked at) the fridge\b"),
    )
)  # fmt: skip
_IN_FRIDGE: Final = re.compile(r"\b(?:in|into) the (?:fridge|refrigerator)\b")
_NOUNS: Final = {
    "flip": Kind.FLIP, "flips": Kind.FLIP, "turn": Kind.FLIP, "rinse": Kind.RINSE, "soak": Kind.SOAK,
    "rub": Kind.RUB, "wrap": Kind.WRAP,
    "brine": Kind.BRINE, "slice": Kind.SLICE, "slicing": Kind.SLICE, "light": Kind.LIGHT, "fire": Kind.LIGHT,
    "fridge check": Kind.FRIDGE_CHECK, "brine check": Kind.BRINE_CHECK, "fridge": Kind.FRIDGE_CHECK,
    "mid check": Kind.MID_CHECK, "check": Kind.FRIDGE_CHECK, "drying": Kind.DRY, "rest": Kind.REST, "thaw": Kind.THAW,
}  # fmt: skip
_NOUN: Final = re.compile(rf"\b(?:{'|'.join(sorted(_NOUNS, key=len, reverse=True))})\b")
_DONE: Final = re.compile(
    r"^(?:(?:ok(?:ay)?|yes|yeah|yep|yup|all|its|thats|that|it|is|im|i|ive|we|weve|just|now|have|finally|already|both"
    r"|everything|got|sorry|she|he|they|my|wife|husband|dad|mum|mom|kid|son|daughter|partner) )*"
    r"(?:done|did (?:it|that|so|both|them)|finished|completed|sorted|complete|dun|job done)\b"
    r"|\b(?:is|are|all|got it|just got it|its) done\b|^(?:flip|rinse|soak|rub|wrap|check|brine|fridge check) done\b"
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
    r"|\bdont count\b|\bforgot(?:ten)?$"
)
_WHOLE_DAY: Final = re.compile(r"\bdont count\b|\b(?:all day|whole day)\b")
_SKIP: Final = re.compile(
    r"^(?:(?:lets|ok|please|just|can we|ill|well|i|we|gonna|going to) )*(?:skip(?:ping|ped)?|wont do|not doing"
    r"|leave out|drop|no need for)\b(?! the line)|^überspringen\b"
)
_LATER: Final = re.compile(
    r"^(?:(?:ok(?:ay)?|sure|yes|no|maybe|please|pls|do it|ill do it|will do|wait|just|still|sorry) )*"
    r"(?:later|not now|not yet|snooze|busy|in a (?:bit|while|sec|minute|moment)|one sec|soon|hold on"
    r"|remind me (?:later|again)|"
    r"give me a (?:bit|sec|minute|moment)|cant (?:right )?now|not (?:(?:done|flipped|turned|rinsed|lit"
    r"|wrapped) )?yet|havent (?:done|flipped|rinsed"
    r"|wrapped)\b.{0,20}(?:yet)?)\b"
)
_PUT_OFF: Final = re.compile(
    r"\b(?:remind|ping|ask|tell|nudge|wake) me\b|(?:\b(?:ill|i will|we will|going to|gonna|well)|^will) (?:do"
    r"|flip|rinse|light"
    r"|wrap|turn|be|start|get|check)\b"
    r"|\b(?:give me|wait) (?:un)?til\b|^(?:flip|turn|rinse|light|wrap) (?:it |them )?(?:at|in (?=\d|an? |half)"
    r"|later|tomorrow)\b|\bsnooze\b"
    r"|\bnext (?:one|reading|check|look) (?:in|at)\b"
    r"|\berinner mich\b"
)
_NEVER: Final = re.compile(r"\b(?:dont|do not|stop|never|only|no more)\b")
_GIVE_ME: Final = re.compile(
    r"\b(?:give me|need|gimme|gib mir|snooze|wait) (?:another "
    r"|for )?(?P<minutes>\d{1,3})(?: more)?$"
)
_SPAN_ONLY: Final = re.compile(
    r"^(?:(?:ok(?:ay)?|brb|in|give|gimme|me|need|another|about|for|snooze|sure|yes|yeah|pls|please|wait|later"
    r"|like|noch|still"
    r"|ca|back) ?)*"
    r"(?:half an hour|(?:an?|\d{1,3}(?:\.\d)?) ?(?:more )?(?:m?mins?|minutes?|minuten|h|hrs?|hours?|stunden?|days?"
    r"|tage?))(?: (?:please|pls|more|ok|later|then))*$"
)
_TOO: Final = re.compile(r"\b(?:too|also|as well|auch)\b")
_BOTH_TIMES: Final = re.compile(r"\bboth times\b|\btwice\b")
_EARLIER: Final = re.compile(
    r"\b(?:last (?:night|time|one)|this morning|yesterday|before|previous|earlier|the one before|gestern)\b"
)
_TASTES: Final = re.compile(
    r"\btast\w{0,3} (?:a bit |really |very |too |pretty )?(?P<how>alright|all right|fine|good|ok(?:ay)?|great|nice"
    r"|perfect|salty|bland|off|sour)\b"
)
_AT_NUMBER: Final = re.compile(
    r"(?:\bat|@) ?(?P<value>\d{2,3}(?:\.\d)?)(?! ?(?:am|pm|min|oclock|uhr)\b)(?![:\d])(?: ?(?:°"
    r"|deg(?:rees)?)? ?(?P<unit>[cf])\b)?"
)
_FOREIGN: Final = 3
_WITH_CORE: Final = (Kind.WRAP, Kind.OFF, Kind.REST, Kind.CHILL)


def read_step(text: str, context: Context) -> list[Intent]:
    """What a plain text says of a step; nothing where it says none."""
    if missed := _missed(text, context):
        return [missed]
    if _SKIP.search(text):
        return [StepSkipped(_noun(text))]
    if put_off := _put_off(text, context):
        return [put_off]
    if _NOT.search(text) and not text.startswith("not bad"):
        return []
    return _deeds(text, context)


def _missed(text: str, context: Context) -> StepMissed | None:
    if not _MISSED.search(text) or re.search(r"\b(?:cure|pink|salt|mean|count me)\b", text):
        return None
    said = when.past(text, context)
    whole = bool(_WHOLE_DAY.search(text)) or bool(said and not said.hour_said and re.search(r"day\b", text))
    if not (said or _noun(text) or len(text.split()) <= 4):
        return None
    return StepMissed(_noun(text), said.at if said else None, whole)


def _put_off(text: str, context: Context) -> Snooze | None:
    if _GIVE_ME.search(text):
        return Snooze(by=timedelta(minutes=int(_GIVE_ME.search(text)["minutes"])))  # type: ignore[index]
    if _SPAN_ONLY.search(text):
        return Snooze(by=when.span(text))
    if _PUT_OFF.search(text) and not _NEVER.search(text):
        said = when.future(text, context)
        by = when.span(text) if said and not said.hour_said and not said.day_said else None
        return Snooze(until=said.at if said and not by else None, by=by, step=_noun(text))
    if _LATER.search(text):
        by = when.span(text)
        return Snooze(by=by, step=_deed(text, context))
    return None


def _noun(text: str) -> str | None:
    found = _NOUN.search(text)
    return str(_NOUNS[found[0]]) if found else None


def _deed(text: str, context: Context) -> str | None:
    return next((str(kind) for kind, words in _DEEDS if words.search(text)), None)


def _deeds(text: str, context: Context) -> list[Intent]:
    kinds = [kind for kind, words in _DEEDS if words.search(text) and _possible(kind, text, context)]
    if not kinds and _IN_FRIDGE.search(text) and not re.search(r"\d", _IN_FRIDGE.sub("", text)):
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
        name = str(kinds[0]) if kinds else _noun(text)
        return [Unclear("ahead", text[:60], (StepDone(name, context.now, _detail(text, name)), StepDone(name, at)))]
    names: list[str | None] = [str(kind) for kind in kinds[:2]] or [_noun(text)]
    done: list[Intent] = [StepDone(name, at, _detail(text, name), also) for name in names]
    return done + (_reading(core, text, at) or _reading_beside(text, context))


def _possible(kind: Kind, text: str, context: Context) -> bool:
    """Whether words for a deed can mean it here: «pulled» before the cook is how it will be eaten."""
    if kind in (Kind.OFF, Kind.REST, Kind.CHILL, Kind.SLICE, Kind.SERVE):
        return context.phase not in ("none", "waiting", "curing")
    if kind is Kind.MEAT_ON:
        return context.phase not in ("resting", "chilling", "stored")
    return kind is not Kind.INTO_CURE or not re.search(r"\d ?(?:days?|d|weeks?)\b", text)


def _about_something_else(text: str) -> bool:
    """«wild boar cured, no cook, sliced thin»: a deed among too many words of another subject."""
    for _, words in _DEEDS:
        text = words.sub(" ", text)
    return len(content(text)) > _FOREIGN


_CHILLED_IN = {"ice": "ice", "fan": "fan", "rack": "rack", "foil": "foil", "fridge": "fridge"}  # the first that fits


def _detail(text: str, step: str | None) -> str:
    if step == Kind.WRAP:
        return "foil" if "foil" in text else "paper" if "paper" in text else ""
    if step == Kind.CHILL:
        return next((way for word, way in _CHILLED_IN.items() if re.search(rf"\b{word}\b", text)), "")
    tastes = _TASTES.search(text)
    if tastes and step in (Kind.RINSE, Kind.SOAK):
        return {"salty": "tastes salty", "bland": "tastes bland", "off": "tastes off", "sour": "tastes off"}.get(
            tastes["how"], "tastes fine"
        )
    return ""


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
    for _, words in _DEEDS:
        text = words.sub(" ", text)
    text = re.sub(r"\bin (?:the |butcher )?(?:paper|foil)\b", " ", text)
    if not re.search(r"\d\d", text) or when.past(text, context):
        return []
    found = read_reading(" ".join(text.split()), context)
    return [found] if isinstance(found, Reading) else []


def _reading(core: tuple[Temperature, ...], text: str, at: datetime | None) -> list[Intent]:
    readings = tuple(Reading((replace(t, at=at),)) for t in core)
    return list(readings) if len(readings) < 2 else [Unclear("number", text[:60], readings)]
