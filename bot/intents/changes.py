"""What is wanted otherwise: the meal moved, the method swapped, a field of the setup stated or changed."""

import re
from typing import Any, Final

from bot import measures
from bot.intents import when
from bot.intents.context import Context
from bot.intents.fields import odd_strength, stated, usual_cure
from bot.intents.intents import Change, Debrief, Intent, MoveDeadline, Snooze, Start, Unclear
from bot.intents.meats import meat
from bot.intents.plausible import set_point
from bot.intents.small import content
from bot.intents.start import HEAVIEST_KG, assumptions
from bot.intents.thicknesses import thickness_without_unit, two_thicknesses
from core.batch.events import Probe

_MEAL: Final = (
    r"(?:dinner|lunch|supper|breakfast|brunch|the meal|meal|deadline|party|feast|essen|everything|it all"
    r"|the whole (?:thing|plan)|the plan|all)"
)
_MOVE: Final = (
    r"(?:move|moved|moving|push|pushed|shift|shifted|postpone[d]?|delay(?:ed)?|reschedule[d]?|bring"
    r"|brought|verschieb\w{0,3})"
)
_AMOUNT: Final = (
    r"(?:half an|an?|\d{1,3}(?:\.\d)?|a couple of|eine[rn]?) ?(?:h|hrs?|hours?|m?mins?|minutes?|days?"
    r"|weeks?|d|stunden?|tage?)"
)
_WEEKDAY: Final = r"(?:next |this )?(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?\b"
_BY: Final = tuple(
    (sign, re.compile(words))
    for sign, words in (
        (-1, rf"\b{_AMOUNT} (?:earlier|sooner|früher)\b|\b(?:earlier|sooner) by {_AMOUNT}\b"
             rf"|\b{_MOVE} (?:\w{{1,10}} ){{0,2}}(?:forward|up) (?:by )?{_AMOUNT}\b"),
        (1, rf"\b{_MOVE} (?:\w{{1,10}} ){{0,3}}(?:back )?by {_AMOUNT}\b|\b{_MOVE} (?:(?:it|{_MEAL}) )?(?:back "
            rf"|out )?{_AMOUNT}\b"),
        (1, rf"\b(?:guests?|they|people|family|were|we are|im|dinner|lunch)\b.{{0,24}}\b{_AMOUNT} late\b"),
        (1, rf"\b(?:running|run|being|be|are|is|im|i am) (?:about |around )?(?:{_AMOUNT} (?:late|behind)|(?:late"
            rf"|behind) (?:by )?{_AMOUNT})\b"),
        (1, rf"\b{_AMOUNT} (?:later|später)\b"),
    )
)  # fmt: skip
_LATER_SPAN: Final = re.compile(rf"^(?:(?:ok|yes|sure) )?{_AMOUNT} (?:later|später)(?: (?:please|pls|then))?$")
_GUESTS: Final = r"(?:guests?|people|family|they|everyone|everybody|we)"
_TO: Final = tuple(
    re.compile(words)
    for words in (
        rf"\b{_MOVE} (?:\w{{1,10}} ){{0,3}}?(?:to|till?|until|auf|for|on) ",
        rf"\b{_MEAL}(?: is|s)?(?: now)?(?: moved)? (?:to|at|is|on|um|jetzt|now)\b",
        r"\b(?:rather|can we|could we|can i|could i|want to|wanna|lets|like to|well|we|we will|ill|prefer to"
        r"|going to) (?:\w{1,8} )?(?:eat|serve|have (?:it|dinner|lunch))(?:ing)? (?:it )?(?:at|on|by|around|to)?\b"
        r"|\beating (?:at|on)\b|\beat at\b",
        r"^(?:the )?(?:guests?|people|family|everyone|everybody) (?:at|by|for) (?=\d|noon)",
        rf"\b{_GUESTS}(?: (?:are|re|will|now|can|only))* (?:here|com\w{{1,3}}|arriv\w{{1,3}}|be here)(?: at| on)?\b",
        rf"\b(?:{_MEAL}|{_GUESTS})(?: (?:all|can|could|will|is|are|\w{{2,4}}nt|happy|fine|ok|not|to|be))*"
        r" (?:waiting|wait|here|com(?:e|ing)|eat(?:ing)?)(?: for it)? (?:till?|until|before)\b",
        r"\b(?:need|want) it (?:ready )?(?:by|at|for|on)\b|\bready (?:by|at|for)\b|\bserve (?:it )?at\b"
        r"|\bserving (?:at|on)\b",
        r"(?<!ill )(?<!will )(?<! to )(?<!gonna )\b(?:make|do) (?:it|that) (?:for |on |at )?(?!dry|wet)\b",
        r"\binstead\b",
        r"^(?:deadline|serve|meal|eat)\b",
        r"\bsame time\b",
        rf"\b(?:chang(?:e|ed|ing)|switch(?:ed)?|swap(?:ped)?) (?:it|that|the day|the date|{_MEAL})? ?(?:to|for|on"
        rf"|over) (?={_WEEKDAY})",
        rf"^(?:(?:lets|can we|please|so|then) )*(?:do|make) (?={_WEEKDAY})",
    )
)
_INSTEAD_OF: Final = re.compile(r"\b(?:instead of|not|rather than|statt) (?:at |on )?[\w:.]{1,10}(?: ?(?:am|pm))?\s*$")
_DAY_PART: Final = re.compile(r"\b(?:morning|evening|tonight|afternoon|after (?:work|lunch|dinner))\b")
_LOOSE: Final = re.compile(r"instead|make it|do it")
_NOT_THAT: Final = re.compile(r",? (?:and )?(?:not|instead of|rather than) (?:the )?\d.*$")
_STRENGTH_BARE: Final = re.compile(
    r"\b(?:cure|curing salt|pink salt|strength|packet|label)(?: (?:is|says|at|strength|="
    r"|:))* ?(?P<value>\d{1,2}(?:\.\d{1,4})?)$"
    r"|^(?:(?:its|it is|the|a|my|i have|ive got|using|use) )*(?P<before>\d{1,2}\.\d{1,4}) (?:cure|curing salt"
    r"|pink salt)$"
)
_WANTED: Final = re.compile(
    r"^(?:(?:lets|please|pls|we|ill|i|will|to|want|can|you) )*(?:(?:pull|take|cook|bring) (?:it"
    r"|the meat) (?:off )?(?:at|to)|(?:it comes )?off at|target(?: is| temp)?) (?P<target>[4-9]\d|[12]\d\d)"
    r"(?: degrees)?$"
    r"|^(?:(?:lets|please|pls|we|ill|i|will|to|want|can|you) )*(?:(?:smoke|cook|run)(?: it| the pit)? at|(?:set|run"
    r"|keep) (?:the )?(?:pit|smoker|grill) (?:to|at)) (?P<pit>\d{2,3})$"
)
_MEANT_AS_MASS: Final = re.compile(
    r"\b(?:trimm(?:ed|ing)|actually|weighs?|weight|mass|weighed|its|it is|is|really|now"
    r"|only|meat)\b"
)
_AFTER: Final = re.compile(r"\b(?:after(?!(?: \w+){0,2} trim)|cooked|finished|in the end|came out|final|yield)\b")
_CURE_STRENGTH: Final = (
    0.055,
    0.065,
)  # a bare percentage in here is no salt, sugar or pump: cure #1 and its British kin
_BETTER: Final = re.compile(
    r" (?:(?:suits|works|is|would be|suits us|fits) ?(?:too|as well|us|everyone|me|better|best|fine)?|then|please|pls)$"
)
_WISHED: Final = re.compile(
    r"\b(?:set|run|keep|want|turn|hold|target|aim|smoke|cook|go|raise|lower|drop|bring"
    r"|at|to)\b"
)
_FOREIGN: Final = 2  # words of another subject that a statement about a batch may hold
_ASKS: Final = re.compile(r"\b(?:what if|what about)\b")


def read_move(text: str, context: Context) -> Intent | None:
    """A meal that is moved, where a plain text says so: to a time, or by a while."""
    for sign, words in _BY:
        if words.search(text):
            return _moved_by(sign, text, context)
    target = _INSTEAD_OF.sub("", text)
    verb = next((found for words in _TO if (found := words.search(text))), None)
    if (
        verb is None
        or (_LOOSE.match(verb[0]) and _about_a_deed(text))
        or (meat(text).product and measures.of_kind(text, "mass"))
    ):
        return None
    said = _time_of(target[min(verb.start(), len(target)) :], context) or _time_of(target, context)
    if said is None:
        return None
    if (
        verb[0] == "instead" and context.due_step and _DAY_PART.search(text)
    ):  # the step that was called for, or the meal
        put_off = when.future(text, context)
        return Unclear("word", text[:60], (Snooze(until=put_off.at if put_off else None), MoveDeadline(to=said.at)))
    if said.day_said and not said.hour_said and (open_words := when.open_hour(target, context)):  # «eat sunday 2»
        hour = when.meal(when.hour_after_day(open_words, context), context)
        return Unclear("word", text[:60], tuple(MoveDeadline(to=one.at) for one in (hour,) if one))
    if context.due_step and verb[0].startswith("do ") and not said.day_said:  # «do it at 9»: the step, or the meal
        put_off = when.future(text, context)
        return Unclear("word", text[:60], (Snooze(until=put_off.at if put_off else None), MoveDeadline(to=said.at)))
    if said.others:
        both = (said.at, *said.others)
        return Unclear("word", text[:60], tuple(MoveDeadline(to=at) for at in both))
    return MoveDeadline(to=said.at, assumed=tuple(assumptions(said)))


def _time_of(text: str, context: Context) -> when.When | None:
    said = when.meal(text, context)
    return said if said and (said.day_said or said.hour_said) else None


def _about_a_deed(text: str) -> bool:
    """«take it out tomorrow instead» moves a step, and no meal."""
    return bool(content(when.without_times(_INSTEAD_OF.sub("", text))))


def _moved_by(sign: int, text: str, context: Context) -> Intent | None:
    by = when.span(text)
    if by is None:
        return None
    if _LATER_SPAN.search(text) and context.due_step:  # an answer to a reminder, or a meal that is moved
        return Unclear("word", text[:60], (Snooze(by=by), MoveDeadline(by=by)))
    return MoveDeadline(by=sign * by)


def read_change(text: str, context: Context) -> list[Intent]:
    """Fields of the setup that a plain text states; Unclear where something in it may mean several."""
    text = _NOT_THAT.sub("", text)
    alone = (
        two_thicknesses(text, context)
        or thickness_without_unit(text, context)
        or _strength_without_percent(text)
        or _lone_percent(text)
        or _lone_mass(text, context)
    )
    if found := alone or _wanted_temperature(text):
        return [found]
    told = stated(text)
    if len(content(told.rest)) > _FOREIGN:
        return []
    fields: dict[str, Any] = dict(told.fields)
    if context.phase == "cooking" and not _WISHED.search(text):  # «161 pit 255 windy» is read off, and no wish
        fields.pop("pit_c", None)
    open_ones: list[Intent] = [open_field(slot, words) for slot, words in told.unclear.items()]
    if "thickness" in fields and _may_be_grey(text, context):
        options = (Debrief(grey=fields["thickness"]), Change({"thickness": fields["thickness"]}))
        return [Unclear("number", text[:60], options)]
    if fields.get("wrap") == "none" and context.phase in ("resting", "chilling"):
        fields = {**{k: v for k, v in fields.items() if k != "wrap"}, "chill": "rack"}  # out of its foil to cool
    fields.update({} if "heaviest" in fields else _mass(text, context))
    named = meat(text)
    if (
        named.cut in ("brisket_flat", "brisket_point")
        and context.phase != "none"
        and len(text.split()) <= 6
        and not re.search(r"\d", text)
    ):
        fields["cut"] = named.cut
    if not fields and len(content(told.rest)) > 1:
        return []
    return [Change(fields), *open_ones] if fields else open_ones


def open_field(slot: str, typed: str) -> Unclear:
    """A field that was typed and not taken."""
    share = measures.sole(typed, "fraction")
    lengths = measures.of_kind(typed, "length") if slot == "thickness" else ()
    if len(lengths) == 1 and lengths[0].low:  # «50 or 55 mm»
        return Unclear("unit", typed, (Change({"thickness": lengths[0].value}), Change({"thickness": lengths[0].low})))
    if slot == "strength" and share:
        return odd_strength(share.value)
    return Unclear("unit" if slot in ("percent", "strength") else "word", typed)


def _strength_without_percent(text: str) -> Intent | None:
    """«cure is 6.25»: a strength is never taken without its percent sign, but it can be offered."""
    found = _STRENGTH_BARE.search(text)
    if not found:
        return None
    value = float(found["value"] or found["before"]) / 100
    if not usual_cure(value):
        return odd_strength(value)
    return Unclear("unit", text[:60], (Change({"cure_nitrite_fraction": value}),))


def _wanted_temperature(text: str) -> Intent | None:
    """«smoke at 225», «pull it at 195»: in the unit that alone fits, else asked about."""
    found = _WANTED.search(text)
    if not found:
        return None
    name, probe = ("target_c", Probe.CORE) if found["target"] else ("pit_c", Probe.PIT)
    value = float(found["target"] or found["pit"])
    options = tuple(Change({name: measures.to_house(value, unit)}) for unit in set_point(probe, value))
    return options[0] if len(options) == 1 else Unclear("unit", text[:60], options)


def _lone_percent(text: str) -> Intent | None:
    share = measures.sole(text, "fraction")
    if share is None:
        return None
    if _CURE_STRENGTH[0] <= share.value <= _CURE_STRENGTH[1]:
        return Change({"cure_nitrite_fraction": share.value})
    options = [Change({"cure_nitrite_fraction": share.value})] if 0 < share.value <= 0.1 else []
    options += [Change({"salt_fraction": share.value})] if 0.01 <= share.value <= 0.05 else []
    return Unclear("number", text[:60], tuple(options))


def _lone_mass(text: str, context: Context) -> Intent | None:
    """A mass alone: of the piece before it is in the cure, of the finished piece once it is cooked, else asked."""
    mass = measures.sole(text, "mass")
    if mass is None:
        return None
    if not 0 < mass.value <= HEAVIEST_KG:
        return Start(unclear=(f"mass:{text}",)) if context.phase == "none" else Unclear("number", text[:60])
    match context.phase:
        case "none":
            return Start({"mass": mass.value})
        case "waiting":
            return Change({"mass": mass.value})
        case "resting" | "chilling" | "stored":
            return Debrief(mass=mass.value)
        case _:
            return Unclear("number", text[:60], (Change({"mass": mass.value}), Debrief(mass=mass.value)))


def _mass(text: str, context: Context) -> dict[str, Any]:
    masses = measures.of_kind(text, "mass")
    if (
        len(masses) != 1
        or context.phase not in ("waiting", "curing", "drying")
        or _AFTER.search(text)
        or not _MEANT_AS_MASS.search(text)
    ):
        return {}
    if re.match(r"^i weigh \d", text):  # who says it, not what lies in the cure
        return {}
    mass = masses[0]
    salts = re.search(r"\b(?:salt|cure|sugar|pink|water|charcoal|rub)\b", text)
    fits = mass.low is None and 0.1 <= mass.value <= HEAVIEST_KG
    return {"mass": mass.value} if fits and not salts else {}


def _may_be_grey(text: str, context: Context) -> bool:
    """A length alone after the slice may be the width of the grey."""
    return context.phase == "stored" and measures.sole(text, "length") is not None


def read_word(text: str, context: Context) -> Intent | None:
    """A single day or hour without a verb: «sat» may be a new day for the meal, or how long it sat."""
    bare = _BETTER.sub("", text.strip(" .!"))
    preferred = bare != text.strip(" .!")
    said = when.meal(when.hour_after_day(bare, context), context)
    meal = re.match(_MEAL, bare)
    if said is None or len(bare.split()) > (6 if meal else 3) or not (said.day_said or said.hour_said):
        return None
    if content(when.without_times(bare)):
        return None
    to = MoveDeadline(to=said.at, assumed=tuple(assumptions(said)))
    if (
        context.due_step and said.hour_said and not said.day_said and not meal
    ):  # «at 20:30 please»: the step, or the meal
        put_off = when.future(bare, context)
        return Unclear("word", bare, (Snooze(until=put_off.at if put_off else None), to))
    named = said.hour_said and (said.day_said or preferred or meal)
    certain = (named or (said.day_said and meal)) and not when.open_hour(bare, context)
    if context.phase == "none":
        return Unclear("word", bare, (Start({"deadline": said.at}),))
    return to if certain else Unclear("word", bare, (to,))
