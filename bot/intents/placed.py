"""A place that is named within the line of a start: «5 lb flat, saturday 1pm in portland» is on that city's clock."""

from dataclasses import replace
from typing import Final

from bot.intents.context import Context
from bot.intents.intents import Settings
from bot.intents.meats import meat
from bot.intents.zones import named
from core import patterns as re

_AFTER: Final = re.compile(
    r",? ?(?<!bone )(?<!skin )\b(?:here |over |up |down )?(?:in|near|from) (?P<rest>[^\W\d_][\w .]*?)(?: time)?"
    r"(?=$|[,;!?])"
)
_NO_PLACE: Final = frozenset(
    ("central", "eastern", "mountain", "pacific", "center", "turkey", "east", "west", "bath", "easter", "christmas")
)
_LONGEST: Final = 3  # words of a city's name
_SHORTEST: Final = 4  # letters: «et», «la» are too many other things


def begun_there(text: str, context: Context) -> tuple[str, Settings, Context] | None:
    """The line without its place, the clock of that place, and the context on it; None where it names none."""
    if context.phase != "none" or not (meat(text) or context.asked_of_start):
        return None
    for found in _AFTER.finditer(text):
        words = found["rest"].split()
        for many in range(min(_LONGEST, len(words)), 0, -1):
            name = " ".join(words[:many])
            zone = named(name) if len(name) >= _SHORTEST and name not in _NO_PLACE else None
            if zone:
                left = f"{text[: found.start()]} {' '.join(words[many:])}{text[found.end() :]}"
                return " ".join(left.split()).strip(" ,"), Settings({"zone": zone}), replace(context, zone=zone)
    return None
