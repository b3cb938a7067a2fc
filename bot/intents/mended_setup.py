"""What was said of a piece, and went into it, put right: «lbs not kg», «pork loin not belly», «8 grams not 18»."""

from math import isclose
from typing import Any, Final

from bot.intents.context import COOKED, RAW, UNCOOKED, Context
from bot.intents.cures import is_cure
from bot.intents.intents import Change, Correct, Intent, Unclear
from bot.intents.meats import Meat, meat
from bot.intents.percents import usual_cure
from bot.intents.sums.figured import figured
from bot.measures import Measure, find, to_house
from core import patterns as re
from core.plan.recipe import product, products

_UNIT_WORDS: Final = {
    "kg": r"kgs?|kilos?|kilograms?",
    "lb": r"lbs?|pounds?",
    "in": r"inch(?:es)?",
    "cm": "cm",
    "mm": "mm",
}
_UNIT: Final = "|".join(_UNIT_WORDS.values())
_THOUGHT: Final = (
    r"(?:(?:no|nope|sorry|oops|i|we|meant|mean|its|it|was|is|that|thats|should|be|have|been|in|wait|actually|typo|ah"
    r"|wrong|unit|to say)[ ,]+)*"
)
_ASKED: Final = r"(?:(?:please|can|could|you|we|i|lets|id like to|want to|ill|im|no|sorry|actually|ok|so)[ ,]+)*"
_AGAIN: Final = re.compile(r"\b(?:not|meant|mean|sorry|oops|wrong|typo|should|put|said|typed|wrote|no)\b")
_ITS: Final = re.compile(r"^(?:its|it was|that was|thats) \w+$")
_UNITS: Final = tuple(
    re.compile(words)
    for words in (
        rf"^{_THOUGHT}(?P<unit>{_UNIT})(?:,? (?:and )?(?:not|instead of|rather than) (?:in )?(?P<was>{_UNIT}))?"
        r"(?:,? (?:sorry|oops|please|i meant|typo))*$",
        rf"^{_THOUGHT}(?P<unit>{_UNIT}),? (?:but )?i (?:put|said|typed|wrote) (?:it in )?(?P<was>{_UNIT})$",
        rf"^{_THOUGHT}not (?P<was>{_UNIT}),? (?:but |its |in )*(?P<unit>{_UNIT})$",
        rf"^(?:i )?(?:put|said|typed|wrote) (?P<was>{_UNIT}),? (?:but )?{_THOUGHT}(?P<unit>{_UNIT})$",
    )
)
_STRENGTH: Final = re.compile(
    r"(?<![\w.])(?P<new>\d{1,2}\.\d{1,2}),? (?:and )?not (?P<was>\d{1,2}(?:\.\d{1,2})?)(?![\w.])"
)
_OTHER_STRENGTH: Final = re.compile(  # «can i use 5.88 instead»
    r"^(?:so )?(?:can|could|may|should) i (?:use|take|weigh) (?:the |my )?(?P<new>\d{1,2}\.\d{1,2})"
    r"(?: (?:cure|curing salt|kind|one|stuff))? (?:instead|for it|for this)[ ?.]*$"
)
_A_MEAT: Final = r"(?:an? |the |some |my )?(?P<new>[a-z]+(?: [a-z]+){0,2})"
_INSTEAD: Final = tuple(  # the meat in place of another one
    re.compile(words)
    for words in (
        r"^(?P<new>[^\d]{3,40}?)[, ]+(?:not|instead of|rather than) (?:a |an |the )?[^\d]{3,30}$",
        rf"^{_ASKED}(?:swap|change|switch|replace)(?:ing)? (?:[a-z]+ ){{1,4}}(?:for|to|with|by) {_A_MEAT}$",
        rf"^{_ASKED}(?:swap|change|switch|go)(?:ing)? (?:over )?(?:to|with|for) {_A_MEAT}(?: instead)?$",
        rf"^{_ASKED}(?:make|do) (?:it|that|this) (?:with )?{_A_MEAT}(?: instead)?$",
        rf"^{_ASKED}(?:use|using|got|have|bought|doing|took|its|it is) (?:now )?{_A_MEAT} (?:instead|now|after all)$",
    )
)
_MOST_NAMES: Final = 6  # words


_FROM_TO: Final = re.compile(
    r"^(?:(?:please|can you|the|weight|mass|it) )*(?:change|correct|make)(?: (?:the|weight|mass|it"
    r"|from))* \d{1,2}(?:\.\d{1,3})?"
    rf"(?: ?(?:{_UNIT}))? (?:to|into) (?P<new>\d{{1,2}}(?:\.\d{{1,3}})?) ?(?P<unit>kgs?|kilos?|lbs?|pounds?)$"
)


_GRAMS: Final = re.compile(
    r"\b(?:only |actually |really )?(?:put|added|used|weighed"
    r"|dosed)(?: in)? (?:only )?(?P<new>\d{1,3}(?:\.\d{1,2})?) ?(?:g|gr|grams?)?(?: (?:of )?(?:the )?(?:cure"
    r"|pink(?: salt)?|curing salt))?(?: in)?,? (?:not|instead of|rather than) (?P<old>\d{1,3}(?:\.\d{1,2})?) ?(?:g"
    r"|gr|grams?)?\b"
)
_GRAMS_WERE: Final = re.compile(  # «actual cure was 12 g not 12.6»
    r"\b(?:cure|curing salt|pink salt|pink)\b(?:(?P<was> (?:was|were|weighed))|[^\d,;]{0,12})"
    r" (?P<new>\d{1,3}(?:\.\d{1,2})?) ?(?(was)(?:g|gr|grams?)?|(?:g|gr|grams?)),? (?:and )?not"
    r" (?P<old>\d{1,3}(?:\.\d{1,2})?)\b"
)
_GRAMS_BARE: Final = re.compile(r"^(?:i|we) (?:only |just )?(?:put|added)(?: in)? \d{1,3}(?:\.\d{1,2})?(?: in)?$")
_GRAMS_SAID: Final = re.compile(r"\d ?(?:g|gr|grams?)\b|\b(?:put|added|used|weighed|dosed)\b")
_UNIT_SAID: Final = re.compile(r"\d ?(?:g|gr|grams?)\b|\b(?:cure|curing|pink|dosed)\b")
_NOT_SAID: Final = r"(?:,? (?:and |but )?(?:not|instead of|rather than) (?:what|the \d|your|as|like|\d)[^,;]*)?"
_WENT_IN: Final = re.compile(
    r"^(?:(?:only|just|about|ok|so|i|we|ive|put|added) )*(?P<new>\d{1,3}(?:\.\d{1,2})?) ?(?:g|gr|grams?)"
    r"(?: (?:of )?(?:the )?(?:cure|pink salt|curing salt))? (?:(?:went|is|are|was|were) )?in(?:to it)?"
    rf"{_NOT_SAID}$"
)
_EACH: Final = re.compile(r"\beach\b")
_PUT_IN: Final = re.compile(
    r"\b(?:put|puts|added|used|weighed|dosed|measured|dumped|tipped|poured|threw|chucked|dropped|stirred|mixed|shook"
    r"|went|did)\b"
)
_NOT_PUT_IN: Final = re.compile(  # asked or wished for, guessed, on top of what is in, or not done
    r"\?|\b(?:should|shall|can|could|may|might|how|if|when|would|will|going to|gonna|lets|need|want|must|have to"
    r"|more|another|extra|again|twice|second|too (?:much|little)|on top|short|missing|left|over|out of"
    r"|didnt|did not|havent|have not|never|without|forgot|ate|per|think|maybe|perhaps|guess"
    r"|sure|last (?:time|year|one|batch)|usually|normally|always|recipe|says)\b"
)
_DENIED_DOSE: Final = re.compile(r",? (?:and |but )?(?:not|instead of|rather than) .*$")
_WEIGHT: Final = re.compile(
    r"\b(?:i )?said (?P<said>\d{1,3}(?:\.\d{1,3})?) ?(?P<said_unit>kg|kilos?|lbs?"
    r"|pounds?)?\b.{0,30}?(?<![\d.])(?P<new>\d{1,3}(?:\.\d{1,3})?) ?(?P<unit>kg|kilos?|lbs?|pounds?)?$"
    r"|^(?:its |it |the |meat |actually |no |i |sorry )*(?:weighed it wrong,?|trimmed|trimming"
    r"|trimmed weight|weight|mass|weighs)"
    r"(?: its| it is| is| was| to)? (?P<trimmed>\d{1,3}(?:\.\d{1,3})?)(?:,? not \d{1,3}(?:\.\d{1,3})?)?$"
    r"|^(?:(?:its|it is|now|only|down to) )+(?P<cut>\d{1,3}\.\d{1,3}) (?:trimmed|after trimming)$"
)
_NOT_WEIGHT: Final = re.compile(
    r"^(?:(?:its|it is|it was|was|no|sorry|actually|the|weight|is) )*(?P<new>\d{1,2}(?:\.\d{1,3})?) ?(?P<unit>kg"
    r"|kilos?|lbs?|pounds?),? "
    r"(?:and )?(?:not|instead of) \d{1,2}(?:\.\d{1,3})?(?: ?(?:kg|kilos?|lbs?|pounds?))?$"
)
_WEIGHT_NOT: Final = re.compile(  # the same the other way round, and why
    r"^(?:(?:its|it is|it was|was|no|sorry|actually|the|weight|is) )*not \d{1,2}(?:\.\d{1,3})?(?: ?(?:kg|kilos?|lbs?"
    r"|pounds?))?,? (?:(?:but|its|it is|it was|more like|really|is) )*(?P<new>\d{1,2}(?:\.\d{1,3})?) ?(?P<unit>kg"
    r"|kilos?|lbs?|pounds?)(?:[,;.!][^\d]*)?$"
)
_DENIED: Final = re.compile(r"\b(?:not|instead of) (?P<was>\d{1,2}(?:\.\d{1,3})?) ?(?P<unit>kg|kilos?|lbs?|pounds?)?\b")
_SAME_MASS: Final = 0.03  # relative: «7.5 lb» said, 3.40 kg kept
_WEIGHED_ANEW: Final = 1.6  # of what was said, where no knife took anything off: beyond it is a slip. Judgement
_TRIM: Final = (0.5, 1.05)  # a trimmed piece as a share of what was said before


_MEANT: Final = re.compile(
    r"^(?:(?:no|sorry|oops|it|i|should|be|make|that|meant|mean|change|to|correction|wait|typo|whoops|actually"
    r"|weight|its|was)[ ,:]+)+"
    r"(?P<new>\d{1,2}(?:\.\d{1,3})?) ?(?P<unit>kgs?|kilos?|lbs?|pounds?)(?P<of> of (?:the )?[a-z ]+)?$"
)
_NOT_UNIT: Final = re.compile(  # «3.2 kg sorry not lbs»
    rf"^(?:(?:its|it is|no|sorry|oops|wait|weight"
    rf"|actually)[, ]+)*(?P<new>\d{{1,2}}(?:\.\d{{1,3}})?) ?(?P<unit>{_UNIT}),?"
    rf"(?: (?:sorry|oops|i meant|and|but))*,? (?:not|instead of) (?:in )?(?:{_UNIT})$"
)


def read_mended_setup(text: str, context: Context) -> Intent | None:
    """A correction of the unit, the cut or the strength, where a plain text is one."""
    text = text.strip(" .!")
    if found := _of_dose(text, context) or _of_weight(text, context):
        return found
    stated = _MEANT.match(text) if context.phase in UNCOOKED else None
    if stated and _is_of(stated["of"] or "", context):
        return Change({"mass": to_house(float(stated["new"]), _name(stated["unit"]))})
    if (stated := _NOT_UNIT.match(text)) and context.phase in UNCOOKED:
        field = "mass" if _name(stated["unit"]) in ("kg", "lb") else "thickness"
        return Change({field: to_house(float(stated["new"]), _name(stated["unit"]))})
    if moved := _FROM_TO.match(text):  # «change 7 to 7.5 lb»
        return Change({"mass": to_house(float(moved["new"]), _name(moved["unit"]))})
    unit = _of_unit(text) if context.phase != "none" or context.asked_of_start else None  # else a wish for all to come
    return unit or _of_strength(text, context) or _of_cut(text, context)


def _is_of(named: str, context: Context) -> bool:
    """Whether a meat that is named is that of the one batch in hand; where none is, it is meant."""
    told = meat(named)
    return not named or any(
        {told.product, told.cut} & {name, made, cut} - {""} for name, made, cut in context.of_what[:1] if context.batch
    )


def _of_unit(text: str) -> Correct | None:
    found = next((hit for words in _UNITS if (hit := words.match(text))), None)
    if found is None or not (_AGAIN.search(text) or _ITS.match(text)):
        return None
    was = _name(found["was"]) if found["was"] else None
    return Correct(unit=_name(found["unit"]), unit_was=was)


def _name(typed: str) -> str:
    return next(unit for unit, words in _UNIT_WORDS.items() if re.fullmatch(words, typed))


def _of_strength(text: str, context: Context) -> Unclear | None:
    """«just read the jar, 5.88 not 6.25»: offered, since no strength is taken without its percent sign."""
    found = _STRENGTH.search(text) if context.phase in RAW else None
    if not found or not _shares(found["new"], found["was"]):
        return None
    return Unclear("unit", found["new"], (Change({"cure_nitrite_fraction": float(found["new"]) / 100}),))


def other_strength(text: str, context: Context) -> Unclear | None:
    """«can i use 5.88 instead», before anything lies in it: offered, as any strength without its sign."""
    found = _OTHER_STRENGTH.match(text) if context.phase in RAW else None
    if found is None or not _shares(found["new"]):
        return None
    return Unclear("unit", found["new"], (Change({"cure_nitrite_fraction": float(found["new"]) / 100}),))


def _shares(*told: str) -> bool:
    """Whether all these numbers are the strengths of curing salts [%], and so no grams."""
    return all(usual_cure(float(number) / 100) and "." in number for number in told)


def _of_cut(text: str, context: Context) -> Change | None:
    """«pork loin not belly», «swap salmon for trout»: before it is in the cure it is planned anew."""
    hits = (words.match(text) for words in _INSTEAD) if context.phase == "waiting" else ()
    found = next((hit for hit in hits if hit), None)
    named = meat(found["new"]) if found else _the_other(text) if context.phase == "waiting" else None
    if named is None or not (named.product or named.cut):
        return None
    made_from = product(named.product).cuts if named.product in products() else ()
    cut = named.cut or (made_from[0] if len(made_from) == 1 else "")
    told: dict[str, Any] = {"product": named.product, "cut": cut}
    return Change({name: value for name, value in told.items() if value})


def _the_other(text: str) -> Meat | None:
    """«not pastrami corned beef»: the second of two meats, where the first is denied."""
    told = text.removeprefix("sorry ").removeprefix("not ").split()
    cuts = range(1, len(told)) if "not " in text[:10] and len(told) <= _MOST_NAMES else ()
    both = ((meat(" ".join(told[:at])), meat(" ".join(told[at:]))) for at in cuts)
    return next(
        (new for old, new in both if (old.product or old.cut) and (new.product or new.cut) and old != new), None
    )


def _of_dose(text: str, context: Context) -> Intent | None:
    """«i only put 8 grams not 18»: what really went in."""
    if context.phase in RAW and _GRAMS_BARE.match(text):
        return Unclear("grams", text)
    found = _GRAMS.search(text) or _GRAMS_WERE.search(text)
    if found and not _UNIT_SAID.search(text) and (unit := _unit_of_its_weight(found["old"], context)):
        return Change({"mass": to_house(float(found["new"]), unit)})  # «it weighed 7.3 not 7» of a piece of 7 lb
    if found and (_shares(found["new"], found["old"]) or not _UNIT_SAID.search(text)):
        some = not _shares(found["new"], found["old"]) and "." in found["new"] + found["old"]
        return Unclear("grams", text) if some and context.phase in UNCOOKED else None  # «i used 12 not 12.6», of what
    if found and not _GRAMS_SAID.search(text) and any(usual_cure(float(found[n]) / 100) for n in ("new", "old")):
        return None  # «cure is 6.25 not 6»: how strong it is, as likely as how much went in
    if found is None and context.phase in UNCOOKED:
        if more := _put_in(text):
            weighed = more.kind == "mass" and not _EACH.search(text)
            return Change({"put_in_cure": more.value}) if weighed else Unclear("grams", text)
        found = _WENT_IN.match(text)
    return Change({"put_in_cure": to_house(float(found["new"]), "g")}) if found else None


def _unit_of_its_weight(number: str, context: Context) -> str | None:
    """The unit in which a bare number is what the piece weighs by the record; None where it is that in neither."""
    if context.mass is None:
        return None
    mass = context.mass
    return next((u for u in ("kg", "lb") if abs(to_house(float(number), u) / mass - 1.0) < _SAME_MASS), None)


def _put_in(text: str) -> Measure | None:
    """«oops 25 g cure went in the brine»: the one amount that is told, by the cure's word; a spoon is no scale."""
    told = _DENIED_DOSE.sub("", figured(text))  # «tbsp instead of tsp» is one of cure
    if not _PUT_IN.search(told) or _NOT_PUT_IN.search(told):
        return None
    amounts = find(told)
    alone = len(amounts) == 1 and amounts[0].low is None
    return amounts[0] if alone and is_cure(told, amounts[0], list(amounts)) else None


def _of_weight(text: str, context: Context) -> Intent | None:
    """«i said 7.5 but trimmed is 6.9»: in the unit in which it was said before, asked about where that is not known."""
    if stated := _NOT_WEIGHT.match(text) or _WEIGHT_NOT.match(text):
        unit = "lb" if stated["unit"][0] in "lp" else "kg"
        change = Change({"mass": to_house(float(stated["new"]), unit)})
        return change if _denies_what_is_noted(text, unit, context) else Unclear("other_weight", text[:60], (change,))
    found = _WEIGHT.search(text) if context.phase not in COOKED else None  # then it is what is left
    if not found or not re.search(
        r"\b(?:trim\w{0,4}|weigh\w{0,3}|scale|really|actually|its|kg|lbs?|pounds?|kilos?)\b", text
    ):
        return None
    new = float(found["new"] or found["trimmed"] or found["cut"])
    typed = found["unit"] or found["said_unit"]
    units = [("lb" if typed[0] in "lp" else "kg")] if typed else _likely_units(found, new, context)
    masses = [Change({"mass": to_house(new, unit)}) for unit in units]
    return masses[0] if len(masses) == 1 else Unclear("unit", text[:60], tuple(masses))


def _denies_what_is_noted(text: str, unit: str, context: Context) -> bool:
    """Whether the weight that is taken back is the one that was noted; of another a tap decides: a dose hangs on it."""
    denied = _DENIED.search(text)
    if denied is None or context.mass is None:
        return True
    was = to_house(float(denied["was"]), _name(denied["unit"]) if denied["unit"] else unit)
    return isclose(was, context.mass, rel_tol=_SAME_MASS)


def _likely_units(found: re.Match[str], new: float, context: Context) -> list[str]:
    both = [context.units.mass, "lb" if context.units.mass == "kg" else "kg"]
    if context.mass is None:
        return both
    if said := found["said"]:
        same = [u for u in both if abs(to_house(float(said), u) / context.mass - 1) < _SAME_MASS]
    else:
        most = _TRIM[1] if "trim" in found[0] else _WEIGHED_ANEW  # «actually it weighs 2.7» of 2.3 kg is no 2.7 lb
        same = [u for u in both if _TRIM[0] <= to_house(new, u) / context.mass <= most]
    return same if len(same) == 1 else both
