"""A fridge that has read too warm since a time: how long is what decides it, and the number is that of now."""

from typing import Final

from bot.intents import lasting, when
from bot.intents.context import RAW, Context
from bot.intents.intents import Happened, Intent, Reading
from bot.intents.temperatures.plausible import Number, meanings
from bot.measures import to_house
from core import patterns as re
from core.batch.events import Probe
from core.units import Hours

COLD: Final = 4.45  # °C, 40 °F: read now, it says nothing of how warm it was
_FRIDGE: Final = re.compile(
    r"^(?:(?:the|my|our|its|it is|been) )*fridges?(?: (?:is|was|has been|been|at|reads?|sat|stood|temp|on|up at"
    r"|stuck at))*"
    r" (?P<n>\d{1,2}(?:\.\d)?)(?: ?°? ?(?P<unit>[cf])\b)?,? (?:ever )?(?:(?:since|from) (?P<when>.+?)|for (?P<for>.+?))"
    r"(?: (?:to|til|till|until|up to) (?:now|just now))?$"
)

_ROSE: Final = re.compile(
    r"^(?:(?:the|my|our) )*fridges? (?:(?:temp|went|got|was|shot|rose|climbed|crept|hit|jumped|up|to|as high as"
    r"|at|just|briefly) ?)+"
    r"(?P<n>\d{1,2}(?:\.\d)?)(?: ?°? ?(?P<unit>[cf])\b)?(?P<why>[^\d;]*?),? (?:and |but |its |it is |now |back "
    r"|down |to |at )*"
    r"(?P<now>\d{1,2}(?:\.\d)?)(?: ?°? ?(?P<now_unit>[cf])\b)?(?P<again> (?:again|now|again now|now again))?$"
)


_PART_OF_DAY: Final = (
    r"(?:this morning|last night|yesterday(?: (?:morning|noon|afternoon|evening|night))?|tonight|earlier today"
    r"|(?:at |around |about )(?:breakfast|lunch|noon|midnight|\d{1,2}(?:[:.]\d\d)? ?(?:am|pm|h)?))"
)
_COLD_THEN: Final = re.compile(
    rf"\b(?:(?P<before>{_PART_OF_DAY}) (?:it|the fridge|fridge)?(?: still)? ?(?:was|read|said|showed|had)"
    r"|(?:it|the fridge|fridge)(?: still)? (?:was|read|said|showed|had)|was|read)"
    rf" (?:at |still )?(?P<n>\d{{1,2}}(?:\.\d)?)(?: ?°? ?(?P<unit>[cf])\b)?(?: (?P<after>{_PART_OF_DAY}))?"
)


_DOOR: Final = re.compile(  # «44 since last night, door was open»: of the fridge, and why
    r",? ?(?:(?:and|but|because) )?(?:(?:the )?(?:fridge )?door (?:(?:was|is|got|been|left|stood|wasnt|not) )*"
    r"|(?:(?:the|my|our) )?(?:kids?|boys?|girls?|some(?:body|one)|i|we|he|she|they|wife|husband|son|daughter) left"
    r" (?:the |it |fridge |door )*)(?:open|ajar|shut|closed)(?: (?:a bit|a crack|again|properly|right))*$"
)


def cold_then(text: str, context: Context) -> tuple[Hours, ...]:
    """«no idea, this morning it was 38»: how long at most a fridge can have been warm that was read cold then. [h]"""
    found = _COLD_THEN.search(text)
    told = (found["before"] or found["after"]) if found else None
    if found is None or told is None:
        return ()
    read = meanings(Number(float(found["n"]), found["unit"], Probe.FRIDGE), context)
    if len(read) != 1 or to_house(read[0].value, read[0].unit or "c") > COLD:
        return ()
    return lasting.since(told, context)


def read_warm_once(text: str, context: Context) -> list[Intent]:
    """«fridge went up to 47, 38 again now»: what it reads now, and a while that was too warm; how long is asked."""
    found = _ROSE.match(text) if context.phase not in ("none", "cooking") else None
    if found is None or not re.search(r"\b(?:back|now|again)\b", text):
        return []
    said = when.past(found["why"], context)
    if said and (said.hour_said or not re.search(r"\b(?:open|ajar|door)\b", found["why"])):
        return []  # with its hour it is a reading of then
    told = ((found["n"], found["unit"]), (found["now"], found["now_unit"]))
    then, now = (meanings(Number(float(n), unit, Probe.FRIDGE), context) for n, unit in told)
    if len(then) != 1 or len(now) != 1 or (celsius := to_house(then[0].value, then[0].unit or "c")) <= COLD:
        return []
    hours = lasting.plainly(found["why"])
    return [Reading(now), Happened("warm_fridge", {"room_c": celsius, **({"hours": hours} if hours else {})})]


_ALONE: Final = re.compile(r"fridge (?:(?:is|was|at) )*(?P<n>\d{1,2}(?:\.\d)?)(?: ?°? ?(?P<unit>[cf])\b)?(?: now)?")


def _of_the_door(text: str) -> str:
    """A line that ends with the door that was open, as one of the fridge without that; any other as it is."""
    why = _DOOR.search(text)
    rest = re.sub(r"^(?:the |its |it is |it was )*(?=\d)", "fridge ", text[: why.start()].strip(" ,")) if why else ""
    return rest if rest.startswith(("fridge", "the fridge")) else text


def read_warm_since(text: str, context: Context) -> list[Intent]:
    """The reading of now, and for how long it has been so; nothing where it was cold or no time can be read."""
    told = _of_the_door(text) if context.phase in RAW else text
    found = _FRIDGE.match(told) if context.phase != "none" else None
    if found is None:
        alone = _ALONE.fullmatch(told) if told != text else None
        warm = meanings(Number(float(alone["n"]), alone["unit"], Probe.FRIDGE), context) if alone else ()
        return [Reading(warm)] if len(warm) == 1 else []
    lasted = lasting.told(found["for"], context).get("hours") if found["for"] else None
    began = lasting.since(found["when"], context) if found["when"] else (lasted,) if lasted else ()
    if not began:
        return []
    warm = meanings(Number(float(found["n"]), found["unit"], Probe.FRIDGE), context)
    if len(warm) != 1 or (celsius := to_house(warm[0].value, warm[0].unit or "c")) <= COLD:
        return []
    if len(began) > 1:
        return [Reading(warm)]  # an hour without its half of the day: how long is asked
    return [Reading(warm), Happened("warm_fridge", {"room_c": celsius, "hours": began[0]})]
