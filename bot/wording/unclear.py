"""Words for what may be several things, or cannot be: asked once, with what works and the taps for it."""

import re

from bot.intents.intents import Unclear
from bot.wording import asking, language, options, refusals
from core.person import Person


def say(intent: Unclear, person: Person) -> tuple[str, asking.Rows]:
    """What was typed and could not be taken, with what works."""
    rows = tuple((asking.button(options.label(o, person), o),) for o in intent.options[:4])
    if intent.why in _CANNOT_BE:
        return _CANNOT_BE[intent.why](intent.text), rows
    if intent.why in ("unit", "number") and not rows and re.search(r"%|salt|cure|percent", intent.text):
        return refusals.no_strength(intent.text), rows
    texts = _texts(intent.text, person)
    return texts.get(intent.why, texts["word"]), rows


def _texts(typed: str, person: Person) -> dict[str, str]:
    degree = "158/245" if person.units.temperature == "f" else "70/120"
    core, pit = ("158 f", "245 f") if person.units.temperature == "f" else ("70 c", "120 c")
    return {
        "number": language.say(
            "What is «{typed}»? Say what it was, like «core {split}», «fridge 3 c» or «pit {split2}».",
            typed=typed,
            split=degree.split("/")[0],
            split2=degree.split("/")[1],
        ),
        "too_long": language.say(
            "That is more than I can take in at once. Say it in one short line, like «core 158» or «what now»."
        ),
        "empty": language.say("I got nothing to read there. Type it in words, like «flipped» or «what now»."),
        "unit": language.say(
            "In which unit is {typed}? Type it with its unit, like 3.2 kg, 48 mm or 70 c.", typed=typed
        ),
        "word": language.say(
            "I am not sure what «{typed}» means here. Type «help» for what I understand.", typed=typed
        ),
        "at": language.say(
            "«{typed}»: is that the hour, or what it read? Tap it, or type it like «brine 3 c».", typed=typed
        ),
        "ahead": language.say(
            "«{typed}»: that hour is still to come today. When was it? Tap it, or type the hour anew.", typed=typed
        ),
        "pair": language.say(
            "Which is which in «{typed}»? Tap it, or type each by its name, like «core {core} pit {pit}».",
            typed=typed,
            core=core,
            pit=pit,
        ),
        "other": language.say("I cannot read that. Type it in words, like «flipped» or «core 158»."),
    }


def _no_hour(typed: str) -> str:
    return language.say("There is no {typed} on the clock. Type the hour like 8:00 or 20:00, or 8 pm.", typed=typed)


_CANNOT_BE = {
    "hour": _no_hour,
    "strength": refusals.odd_strength,
    "mass": lambda typed: asking.again("mass", typed),
    "thickness": lambda typed: asking.again("thickness", typed),
    "meat": asking.unknown_meat,
}
