"""Where a brine cools that is made, and holds no meat yet: «stuck it in the fridge for the night», «in the sink».

Nothing was left out that could spoil, and nothing went into its cure: it cools, and is read before the meat goes in.
"""

from typing import Final

from bot.intents.context import Context
from core import patterns as re

_THAT: Final = r"(?:it|the pot|the brine|the whole (?:pot|thing)|that|its|brines?|pot)"
_BOX: Final = r"(?:a |the |my |our )?(?:cold |big |large )?"
_OPENS: Final = r"^(?:(?:ok|so|and|now|then|right|i|we|ive|have|just)[, ]+)*"
_PUT: Final = (
    rf"(?:(?:stuck|put|stood|set|left|popped|got|shoved|moved|placed) {_THAT} |{_THAT} (?:is |stands |sits )?)?"
)
_LIES: Final = r"(?:(?:sitting|standing|cooling|chilling)(?: down| off)? )*"
_WET: Final = rf"in(?:to)? {_BOX}(?:sink|bath(?:tub)?|snow|ice bath|ice water|cold water|bucket of ice|tub of ice)"
_PLACE: Final = (  # where the meat itself might lie, too: only of a pot, or of what cools there
    rf"(?:in(?:to)? {_BOX}(?:garage|shed|cellar|basement|porch|utility room|larder|pantry|freezer|cool ?box|cooler"
    r"|esky)"
    rf"|on {_BOX}(?:counter|bench|side|balcony|porch|deck|patio|window ?sill|doorstep|step|stove|hob|table)|outside"
    r"|out(?:side)? (?:the back|in the (?:cold|garden|yard)))"
)
_STANDS: Final = re.compile(rf"{_OPENS}{_PUT}{_LIES}(?:(?P<wet>{_WET})|{_PLACE})\b[^?\d]*$")
_COOLS: Final = re.compile(r"\b(?:cool\w*|chill\w*|brines?|pot)\b")
_FRIDGE: Final = re.compile(
    rf"{_OPENS}{_PUT}{_LIES}in(?:to)? {_BOX}fridge"
    r"(?P<on>(?: (?:now|to cool|to chill|cooling|chilling|overnight|for the night|for now|till? (?:the )?morning"
    r"|down))*)$"
)
_MADE: Final = re.compile(  # in the same line
    r"\b(?:brine|pickle)s?\b.*\b(?:made|cooked|boiled|done|ready|mixed|dissolved)\b"
    r"|\b(?:made|cooked|boiled|mixed)(?: up)? (?:the |my |a )?(?:brine|pickle)\b"
)
_MEAT: Final = re.compile(
    r"\b(?:meat|brisket|flat|bird|turkey|chicken|duck|pork|belly|ham|fish|loin|joint|piece|raw)\b"
)


def brine_stands(text: str, context: Context) -> str:
    """A plain line that tells where the brine cools as «brine is cooling»; of the fridge alone it is asked which."""
    made = context.brine_made or (context.phase == "waiting" and not context.dry and _MADE.search(text))
    if not made or _MEAT.search(text):
        return text
    return ", ".join(_stands(clause) for clause in text.split(", "))


def _stands(clause: str) -> str:
    if told := _FRIDGE.match(clause):
        return "brine is cooling" if _COOLS.search(told[0]) else "in the fridge now"
    told = _STANDS.match(clause)
    return "brine is cooling" if told and (told["wet"] or _COOLS.search(clause)) else clause
