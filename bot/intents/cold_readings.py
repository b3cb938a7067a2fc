"""What is told of the cold in other words: what moves into the fridge, a brine on its way down, days of the fridge."""

from typing import Final

from bot.intents.context import Context
from bot.intents.intents import Choose, Unclear
from core import patterns as re

_INTO_FRIDGE: Final = re.compile(  # «48 moving to fridge»: of what is moved, and not of the fridge
    r"^((?:core |its |now |meat )*\d{2,3}(?:\.\d)?(?: ?[cf])?),? (?:(?:now|and|so|its|im) )*"
    r"(?:mov\w+|going|goes|gone|put|putting|off)(?: it| them)? (?:in|into|to) (?:the )?fridge(?: now)?$"
)


_FRIDGE_DAYS: Final = re.compile(
    r"^(?:the )?fridge(?: (?:was|is|read|reads|says|has been|were|temps?|readings?))* ?"
    r"(?P<numbers>\d{1,2}(?:\.\d)?(?:,? (?:and |then )?\d{1,2}(?:\.\d)?)+)(?: ?[cf])?$"
)


_COOLS_TO: Final = re.compile(  # «its down to 90f in an ice bath»
    r"^(?:its|it is|now|it) (?:(?:down to|at|still|cooled to|cooling|got to|only|now|dropped to) )+"
    r"(?=\d{1,3}(?:\.\d)?(?: ?[cf])?(?: (?:in|on) (?:an? |the )?(?:ice(?: bath| water)?|sink|fridge|cold water))?$)"
)


def several_days(text: str, context: Context) -> Unclear | None:
    """«fridge was 36 37 37»: of days that nobody named; each is asked for its own, and none is made up."""
    return Unclear("fridge_days", text[:60], (Choose("vouch", "fridge"),)) if _FRIDGE_DAYS.match(text) else None


def of_the_meat(text: str) -> str:
    """«48 moving to fridge» without the fridge: it is what is moved that was read."""
    return _INTO_FRIDGE.sub(r"\1", text)


def of_the_brine(text: str, context: Context) -> str:
    """«its down to 90 in an ice bath» by its name, while a brine cools."""
    return _COOLS_TO.sub("brine ", text) if context.phase == "waiting" and context.brine_made else text
