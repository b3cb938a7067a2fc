"""What cannot be, by its size: an hour of 25, a piece of 900 kg, a thickness of 5 m, two kilos of moon."""

from typing import Final

from bot import measures
from bot.intents.context import Context
from bot.intents.intents import Unclear
from bot.intents.meats import meat
from bot.intents.weights import HEAVIEST_KG
from core import patterns as re

_AFTER: Final = (
    r"(?:^|\b(?:at|from|to|until|till|by|since|um|ab|bis|gegen|and|for|off|on|it|dinner|lunch|meal|supper"
    r"|mon|tue|wed|thu|fri|sat|sun|\w{3,6}day|today|tomorrow|tonight|yesterday) ?|@)"
)
_NO_HOUR: Final = re.compile(rf"{_AFTER}(?P<typed>(?:2[5-9]|[3-9]\d|24):[0-5]\d(?<!24:00)|\d{{1,2}}:[6-9]\d)(?![\d:%])")
_TOO_THICK: Final = re.compile(
    r"\bthick\w{0,4}\b.{0,12}?(?P<typed>\d{1,4}(?:\.\d{1,2})? ?(?:m|met(?:er|re)s?|ft|feet|foot|yards?|km|miles?))\b"
    r"|(?P<before>\d{1,4}(?:\.\d{1,2})? ?(?:m|met(?:er|re)s?|ft|feet|foot|yards?|km|miles?)) thick\b"
)
_MASS_OF: Final = re.compile(
    r"^(?:(?:its|i have|ive got|we have|we got|make it|another|with) )?.{1,24} of (?:the )?(?P<what>[^\W\d_]{3,20})$"
)
_NO_MEAT: Final = re.compile(
    r"\b(?:salt|cure|sugar|water|ice|charcoal|coals?|wood|rub|brine|pickle|spices?|it|this|that|meat|raw"
    r"|pellets?|nitrite)\b"
)
_OF_MASS: Final = re.compile(r"\b(?:mass|weigh\w{0,3}|its|it is|piece|meat|trimmed|flat|point|brisket)\b")


def read_impossible(text: str, context: Context) -> Unclear | None:
    """What a plain text states that cannot be; nothing of the line is taken then, and it is asked once."""
    if found := _NO_HOUR.search(text):
        return Unclear("hour", found["typed"])
    if context.phase == "none" or text.endswith("?"):
        return None
    if found := _TOO_THICK.search(text):
        return Unclear("thickness", found["typed"] or found["before"])
    masses = measures.of_kind(text, "mass")
    if len(masses) != 1:
        return None
    if masses[0].value > HEAVIEST_KG and _OF_MASS.search(text):
        return Unclear("mass", text[masses[0].start : masses[0].end])
    of = _MASS_OF.match(text)
    strange = of is not None and not meat(text) and not _NO_MEAT.search(text)
    return Unclear("meat", of["what"]) if of and strange else None
