"""What the rules of this package have in common: how one is written, and days, meals and deeds in words."""

from collections.abc import Callable
from typing import Final, TypeAlias

from bot.intents import days
from core import patterns as re

Put: TypeAlias = str | Callable[[re.Match[str]], str]

TOLD: Final = "told"  # taken out only of a line that tells of something done or read
DEED: Final = (
    r"(?:flipped|turned|done|did|rinsed|wrapped|lit|pulled|took|taken|put|checked|soaked|rubbed|bagged|finished|sorted"
    r"|forgot|missed|sliced|\d{1,3}(?:\.\d)?(?: ?[cf]\b)?)"
)
UNIT_NEXT: Final = (
    r"(?! ?(?:%|°|/|:|\.\d|\d|c\b|f\b|kg|kilo|g\b|gr|lb|pound|oz|ounce|mm|cm|in\b|inch|\"|h\b|hr|hour|min|day|week"
    r"|people|ppl|flats?|points?|pieces?|slabs?|sides?|fillets?|racks?|chunks?|bell(?:y|ies)|breasts?|packs?|x\b|am\b"
    r"|pm\b|ppm|tsp|tbsp|deg|celsius|fahr|oclock|uhr|st\b|nd\b|rd\b|th\b|of\b"
    r"|jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|okt|dez|mai))"
)
WEEKDAY: Final = rf"(?:{days.WEEKDAY}|(?:mon|diens|donners|frei|sams|sonn)tag|mittwoch)"
DAY: Final = rf"{WEEKDAY}|today|tomorrow|tonight|the \d{{1,2}}(?:st|nd|rd|th)"
CLOCK: Final = r"(?:1[0-2]|[1-9])(?:[:.][0-5]\d)?(?: ?[ap]m)?"
SPAN: Final = r"(?:\d{1,3}|an?|half an?) ?(?:m?mins?|minutes?|h|hrs?|hours?)"
MEAL: Final = r"(?:lunch|dinner|supper|breakfast|brunch)"


def rules(*pairs: tuple[str, Put]) -> tuple[tuple[re.Pattern, Put], ...]:
    """What is looked for, and what is written in its place; used in this order."""
    return tuple((re.compile(pattern), written) for pattern, written in pairs)


def rewritten(text: str, by: re.Rules[Put]) -> str:
    """A text with what each rule looks for written anew, in their order."""
    return by.in_turn(text, lambda line, pattern, put: pattern.sub(put, line))
