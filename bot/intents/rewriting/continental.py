"""Hours, days and weights as they are written on the Continent: «18.30h», «till 17h», «sa 13:00».

No temperature is touched. «3kg5» is kept as the two weights that it may be.
"""

from typing import Final

from bot.intents.rewriting.words import rewritten, rules
from core import patterns as re

_WEEKDAYS: Final = {
    "mo": "monday",
    "di": "tuesday",
    "mi": "wednesday",
    "do": "thursday",
    "fr": "friday",
    "sa": "saturday",
}
# after these a figure with an h is an hour of the day; «after 2h» and «for 17h» are spans
_AT: Final = (
    r"(?:at|till|until|til|since|by|from|around|before|to|ca|monday|tuesday|wednesday|thursday|friday|saturday|sunday)"
)
_NO_VERB: Final = "".join(  # «will do at 9» is no Thursday
    f"(?<!{word} )"
    for word in ("will", "ill", "well", "to", "can", "lets", "gonna", "must", "should", "i", "we", "you")
)
_RULES: Final = re.Rules(rules(
    (r"(?<![\d.:])([01]?\d|2[0-4])[.:]([0-5]\d) ?h(?:rs?)?\b", r"\1:\2"),
    (rf"\b({_AT}) ([01]?\d|2[0-4]) ?h\b(?! ?\d)", r"\1 \2:00"),
    (rf"{_NO_VERB}\b({'|'.join(_WEEKDAYS)})\.? (?=(?:\d{{1,2}}[:.]\d\d|\d{{1,2}} ?uhr"
     rf"|at \d)\b)", lambda m: f"{_WEEKDAYS[m[1]]} "),
    (r"(?<![\w.])(\d{1,2})kg(\d{3})\b(?! ?(?:g|gr|grams?|ppm|ml|mm|f|c|kg|lb)\b)", r"\1.\2 kg"),
    (r"(?<![\w.])(\d{1,2}) ?kg(\d{1,2})\b(?! ?\w)", r"\1 to \1.\2 kg"),
    (r"(?<![\w.])(\d{1,2}) ?kg(\d{1,2})(?= \w{3,})(?! (?:gr|gram))", r"\1 to \1.\2 kg"),
    # «kühlschrank zeigt 4,5, und …»: the comma of a clause behind that of the number
    (r"(?<![\d.,])(\d{1,3}),(\d),(?= )", r"\1.\2,"),
    (r"(?<=\d )persons\b", "people"),
    (r"\bnitrite salt\b", "curing salt"),
    (r"\bkt\b(?=[ :]*\d)", "core"),
    (r"\bgt\b(?=[ :]*\d)", "pit"),
    (r"(?<=[a-z] )\+(?=\d)", ""),
))  # fmt: skip


def insular(text: str) -> str:
    """A plain line with its hours, days and weights written as in English."""
    return rewritten(text, _RULES)
