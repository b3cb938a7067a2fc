"""Two numbers that are no two readings: between which a pit swings, and how far two thermometers stand apart."""

from typing import Final

from bot.intents.context import Context
from bot.intents.intents import Temperature
from bot.intents.temperatures.plausible import Number, meanings
from core import patterns as re
from core.batch.events import Probe

APART: Final = re.compile(  # «lid and probe 40 apart», «the dial says 40 higher than the probe»: a difference
    r"\d(?: ?[cf])?(?: ?(?:degrees?|deg))? (?:apart|differen(?:t|ce)|(?:off|out) (?:from|of each)"
    r"|(?:higher|lower|hotter|cooler|warmer|colder|more|less|above|below|over|under|off|out) (?:than )?(?:the|my|what) "
    r"(?:probe|lid|dome|dial|grate|thermometer|other|pit|meat|grill|smoker|gauge|display)\b)"
    r"|\bboiling(?: water)?\b"
    r"|\b(?:(?:apart|difference|differ|disagree) (?:by|of|is)|swing\w*|bounc\w*|fluctuat\w*|var(?:y|ies|ying))"
    r" (?:(?:about|like|by|of|a|up|down|and|or|to) )*\d{1,2}\b(?! ?to\b)"
)
_SWINGS: Final = re.compile(
    r"(?:\b(?:the )?(?P<pit>pit|smoker|grill|grate|cooker|fire|it|temp)s? )?"
    r"(?:(?:is|are|keeps?|been|has|its|going|goes|all|over|the|place|now|somewhere|anything|anywhere) )*"
    r"(?P<how>(?:swing\w*|bounc\w*|up and down|jump\w*|back and forth|hunt\w*|fluctuat\w*|var\w+|wander\w*|rang\w*"
    r"|over the place|all over) (?:(?:the|place|between|from|a lot|lots|and) )*)?(?:(?:from|between) )?"
    r"(?P<low>\d{2,3})(?: ?[cf])?(?: (?:to|and|up to) |-)(?P<high>\d{3})(?: ?(?P<unit>[cf])\b)?(?! ?(?:min|h|for"
    r"|in|at)\b)"
)
_BEFORE: Final = re.compile(
    r"\b(?:went|gone|rose|risen|fell|dropped|climbed|came|now|was|core|meat|internal|pull|off)\b"
)


def swings(text: str, context: Context) -> tuple[str, tuple[Temperature, ...]] | None:
    """A plain line without the two between which its pit swings, and these; None where it tells no such thing."""
    found = _SWINGS.search(text) if context.phase in ("drying", "cooking") else None
    if found is None or not (found["how"] or found["pit"] in ("pit", "smoker", "grill", "grate", "cooker", "fire")):
        return None
    if _BEFORE.search(found[0]) or ("-" in found[0] and not found["how"]):
        return None
    ends = (Number(float(found[end]), found["unit"], Probe.PIT) for end in ("low", "high"))
    rest = f"{text[: found.start()]} {text[found.end() :]}"
    return " ".join(rest.split()).strip(" ,"), tuple(one for end in ends for one in meanings(end, context)[:1])
