"""What holds for the person within the line of a start: «5 lb flat, saturday 1pm in portland», «flips at 7 and 19»."""

from dataclasses import replace
from typing import Final

from bot.intents.called_at import read_called_at
from bot.intents.context import Context
from bot.intents.intents import Settings
from bot.intents.meats import meat
from bot.intents.zones import named
from core import patterns as re

_AFTER: Final = re.compile(
    r",? ?(?<!bone )(?<!skin )\b(?:here |over |up |down )?(?:in|near|from) (?P<rest>[^\W\d_][\w .]*?)(?: time)?"
    r"(?=$|[,;!?])"
)
_HOUR: Final = (
    r"(?:at |@ ?)?\d{1,2}(?:[:.][0-5]\d)?(?: ?[ap]m\b)?"
    r"(?![\d.,]*\d)(?! ?(?:lbs?|pounds?|k?g|kilos?|oz|in|inch\w*|cm|mm|%|x|of|pieces?|flats?|bell(?:y|ies))\b)"
)
_FLIPS: Final = re.compile(
    rf"(?:\b(?:and|with) )?\bflips? (?P<hours>{_HOUR}(?:(?:,| and| n| &|, and)? {_HOUR})*),?(?: and\b)?"
)
_NO_PLACE: Final = frozenset(
    ("central", "eastern", "mountain", "pacific", "center", "turkey", "east", "west", "bath", "easter", "christmas")
)
_LONGEST: Final = 3  # words of a city's name
_SHORTEST: Final = 4  # letters: «et», «la» are too many other things


def begun_there(text: str, context: Context) -> tuple[str, Settings, Context] | None:
    """The line without its place or its hours of flipping, that setting, and the context with it; None without any."""
    if context.phase != "none" or not (meat(text) or context.asked_of_start):
        return None
    if called := _FLIPS.search(text):
        hours = read_called_at(f"flips at {called['hours']}", context)
        left = f"{text[: called.start()]} {text[called.end() :]}"
        return (" ".join(left.split()).strip(" ,"), hours, context) if hours else None
    for found in _AFTER.finditer(text):
        words = found["rest"].split()
        for many in range(min(_LONGEST, len(words)), 0, -1):
            name = " ".join(words[:many])
            zone = named(name) if len(name) >= _SHORTEST and name not in _NO_PLACE else None
            if zone:
                left = f"{text[: found.start()]} {' '.join(words[many:])}{text[found.end() :]}"
                return " ".join(left.split()).strip(" ,"), Settings({"zone": zone}), replace(context, zone=zone)
    return None
