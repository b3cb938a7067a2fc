"""What was said of a piece put right: «lbs not kg», «its inches i put cm», «pork loin not belly», «5.88 not 6.25»."""

import re
from typing import Any, Final

from bot.intents.context import Context
from bot.intents.fields import usual_cure
from bot.intents.intents import Change, Correct, Intent, Unclear
from bot.intents.meats import meat
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
_INSTEAD: Final = re.compile(r"^[^\d]{3,40}\bnot (?:a |an |the )?[^\d]{3,30}$")
_SET_UP: Final = ("waiting", "curing")


def read_mended_setup(text: str, context: Context) -> Intent | None:
    """A correction of the unit, the cut or the strength, where a plain text is one."""
    text = text.strip(" .!")
    return _of_unit(text) or _of_strength(text, context) or _of_cut(text, context)


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
    found = _STRENGTH.search(text) if context.phase in _SET_UP else None
    shares = [float(found[name]) / 100 for name in ("new", "was")] if found else []
    if not shares or not all(map(usual_cure, shares)):
        return None
    return Unclear("unit", text[:60], (Change({"cure_nitrite_fraction": shares[0]}),))


def _of_cut(text: str, context: Context) -> Change | None:
    """«pork loin not belly»: before it is in the cure it is planned anew."""
    named = meat(text) if context.phase == "waiting" and _INSTEAD.match(text) else None
    if not named:
        return None
    made_from = product(named.product).cuts if named.product in products() else ()
    cut = named.cut or (made_from[0] if len(made_from) == 1 else "")
    told: dict[str, Any] = {"product": named.product, "cut": cut}
    return Change({name: value for name, value in told.items() if value})
