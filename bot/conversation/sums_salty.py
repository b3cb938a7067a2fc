"""How salty a mix is, asked beside the nitrite of it."""

from typing import Final

from bot.intents.rates import rate
from bot.intents.sums.told import Told
from bot.wording import sums_mixed
from core import patterns as re
from core.units import Fraction, Kilograms

_ASKED: Final = re.compile(
    r"\bhow salty\b|\bsalt (?:percent\w*|level|share|content)\b|\bwhat(?:s the)? salt\b|\bsaltiness\b"
)


def how_salty(line: Told, cure: Kilograms, strength: Fraction) -> str:
    """The salt of all that is told, what is in the curing salt counted; "" where nobody asks."""
    whole = 1.0 if rate(line.text) is not None else (line.meat or 0.0) + (line.water or 0.0)
    if not _ASKED.search(line.text) or not whole:
        return ""
    return sums_mixed.salty(((line.salt or 0.0) + cure * (1.0 - strength)) / whole)
