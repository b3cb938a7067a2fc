"""What is told of the cold in other words: what moves into the fridge, a brine on its way down, days of the fridge."""

from typing import Final

from bot.intents.context import IN_THE_COLD, RAW, Context
from bot.intents.intents import Choose, Reading, Temperature, Unclear
from bot.intents.temperatures.lone import besides
from bot.intents.temperatures.plausible import COLD, everything
from bot.intents.temperatures.thermometers import Item
from core import patterns as re
from core.batch.events import Probe

_INTO_FRIDGE: Final = re.compile(  # «48 moving to fridge»: of what is moved, and not of the fridge
    r"^((?:core |its |now |meat )*\d{2,3}(?:\.\d)?(?: ?[cf])?),? (?:(?:now|and|so|its|im) )*"
    r"(?:mov\w+|going|goes|gone|put|putting|off)(?: it| them)? (?:in|into|to) (?:the )?fridge(?: now)?$"
)


_SIZE: Final = 12.0  # inches or pounds of a piece, told without their unit, are fewer
_FRIDGE_DAYS: Final = re.compile(
    r"^(?:the )?fridge(?: (?:was|is|read|reads|says|has been|were|temps?|readings?))* ?"
    r"(?P<numbers>\d{1,2}(?:\.\d)?(?:,? (?:and |then )?\d{1,2}(?:\.\d)?)+)(?: ?[cf])?$"
)


_COOLS_TO: Final = re.compile(  # «its down to 90f in an ice bath»
    r"^(?:its|it is|now|it) (?:(?:down to|at|still|cooled to|cooling|got to|only|now|dropped to) )+"
    r"(?=\d{1,3}(?:\.\d)?(?: ?[cf])?(?: (?:in|on) (?:an? |the )?(?:ice(?: bath| water)?|sink|fridge|cold water))?$)"
)


SPOTS: Final = frozenset(
    ["door", "shelf", "drawer", "top", "bottom", "back", "front", "upper", "lower", "rack", "middle"]
)  # of a fridge
_IN_A_FRIDGE: Final = re.compile(r"\b(?:fridge|door|shelf|drawer)\b")
_OF_ANOTHER: Final = re.compile(r"\b(?:brine|pickle|meat|core|room|pit|bag)\b")
_TWO_NUMBERS: Final = re.compile(r"(?<![\d.:])(?P<one>\d{1,2}(?:\.\d)?)(?![\d.:])")
_SPOT: Final = re.compile(rf"\b(?:{'|'.join(sorted(SPOTS))})\b")
_HOURS: Final = re.compile(
    r"\b(?:at|since|by|around) \d|\d ?[ap]m\b|\d (?:m?mins?|h|hrs?|hours?)\b|\b(?:was|then|now)\b"
)


def of_one_fridge(text: str, context: Context) -> str:
    """«38 in the fridge 41 in the door», «top shelf 41 bottom 37»: each number by the name of the fridge."""
    here = context.phase in IN_THE_COLD and _IN_A_FRIDGE.search(text) and _SPOT.search(text)
    if not here or _OF_ANOTHER.search(text) or _HOURS.search(text) or len(_TWO_NUMBERS.findall(text)) != 2:
        return text
    return _TWO_NUMBERS.sub(r"fridge \g<one>", _IN_A_FRIDGE.sub(" ", text).replace("middle", "rack")) + " door"


_LIES_IN_IT: Final = re.compile(
    r"(?:(?:its|it is|now|at|still|down to) )*(?P<n>\d{2,3}(?:\.\d)?)(?: ?°? ?(?P<unit>[cf]))?,? (?:now |already )?"
    r"in (?:the |my )?fridge(?: (?:now|already|atm))*"
)


_OF_THE_BATH: Final = re.compile(
    r"^(?:the )?(?:ice ?(?:bath|water)|bath(?: ?water)?|water)(?: (?:temp|in the bath|is|at|now|reads"
    r"|says))* \d(?!.*\b(?:core|meat|middle)\b)"
    r"|^\d{1,2}(?: ?[cf])? (?:ice ?(?:bath|water)|water)$"
)


def cooling(text: str, context: Context) -> Unclear | None:
    """While it chills: how cold the water is tells nothing of the core; «50 in the fridge» may be the fridge or it."""
    if _OF_THE_BATH.match(text):
        return Unclear("number", text[:60])
    found = _LIES_IN_IT.fullmatch(text)
    value = float(found["n"]) if found else 0.0
    if found is None or any(low <= value <= high for low, high in COLD):
        return None
    own = found["unit"] or context.units.temperature
    those = [t for t in everything(value, context, own) if t.probe in (Probe.CORE, Probe.FRIDGE)]
    return Unclear("number", text[:60], tuple(Reading((t,)) for t in those))


def several_days(text: str, context: Context) -> Unclear | None:
    """«fridge was 36 37 37»: of days that nobody named; each is asked for its own, and none is made up."""
    return Unclear("fridge_days", text[:60], (Choose("vouch", "fridge"),)) if _FRIDGE_DAYS.match(text) else None


def of_the_meat(text: str) -> str:
    """«48 moving to fridge» without the fridge: it is what is moved that was read."""
    return _INTO_FRIDGE.sub(r"\1", text)


def of_the_brine(text: str, context: Context) -> str:
    """«its down to 90 in an ice bath» by its name, while a brine cools."""
    return _COOLS_TO.sub("brine ", text) if context.phase == "waiting" and context.brine_made else text


def raw_sizes(items: list[Item], context: Context) -> Unclear | None:
    """«flat is 2», «flat is 1.5 to 2» of raw meat: as likely how thick or how heavy it is as how cold."""
    small = [i.number for i in items if not i.number.unit and i.number.value < _SIZE]
    of_meat = {number.probe for number in small}
    if context.phase not in RAW or len(small) < len(items) or not {Probe.CORE} <= of_meat <= {Probe.CORE, None}:
        return None
    cold = tuple(Reading((Temperature(n.value, "c", Probe.CORE),)) for n in small[: 2 - len(small)])
    return Unclear("number", options=(*(one for n in small for one in besides(n.value, context)), *cold))
