"""How salty a mix is, asked beside the nitrite of it."""

from typing import Final

from bot import measures
from bot.intents.rates import rate
from bot.intents.sums.told import Told
from bot.wording import sums, sums_mixed
from core import patterns as re
from core.cure.contents import STRONG_CURES, WEAKEST_CURE
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


def packet_strength(line: Told) -> Fraction:
    """The nitrite of the curing salt as its packet may print it; a share as small as a dose is none. [-]"""
    told = line.strength
    return told if told is not None and told >= WEAKEST_CURE else STRONG_CURES[0]


def share_named(line: Told) -> Fraction:
    """«incl cure at 0.25 %»: the curing salt as its share of the meat, no strength of a packet; 0 where none is. [-]"""
    named = re.search(r"\b(?:cure|pink|prague)(?: salt)? (?:at|of|is) ", line.text)
    return line.nitrite if named and line.nitrite is not None and line.nitrite < WEAKEST_CURE else 0.0


def ounces_too(text: str, said: str, salt: Kilograms) -> str:
    """The salt of a brine in ounces first, where they are asked for."""
    if not re.search(r"\b(?:oz|ounces?)\b", text):
        return said
    return f"{sums.converted(round(salt * 1000.0), 'g', measures.from_house(salt, 'oz'), 'oz')}\n{said}"
