"""What was read and is put right: its number, its unit or its thermometer, «no, 185», «typo 155 not 255», «the pit»."""

from typing import Final
from zoneinfo import ZoneInfo

from bot.intents import when
from bot.intents.context import Context
from bot.intents.deeds import DEEDS
from bot.intents.intents import Correct, Intent, MoveDeadline, Unclear
from bot.intents.meats import as_meat
from core import patterns as re
from core.batch.events import Probe

NUMBER: Final = r"(?P<value>-?\d{1,4}(?:\.\d{1,3})?)(?: ?(?:°|degrees?|deg)? ?(?P<unit>[cf])\b)?"
_FRACTION: Final = re.compile(r"\b(\d{1,2}) ([1-7])/([248])\b(?!/)")
_THAT_ONE: Final = (
    r"(?:(?:no|nah|nope|oops|sorry|wait),? )?(?:(?:the|that|my|a|reading|of|number|pit|core|meat|fridge|brine) )*"
)
_SPOT: Final = (  # where a probe must not sit
    r"(?:(?:too )?(?:by|near|next to|close to|against|touching|in|on|at) (?:the |a |some )?(?:\w+ )?(?:fat|bone|edge"
    r"|rim"
    r"|skin|surface|outside|cap|tail|thin (?:end|bit|part|side)|grate|coals|foil))"
)
_INSIDE: Final = (
    r"(?: (?:in(?:side)?|at|right in) (?:the )?(?:\w+ )?(?:middle|cent(?:er|re)|core|thick\w*|meat)(?: \w+)?)?"
)
_NO_GOOD: Final = (
    rf"(?:was|is|came from|was from) (?:{_SPOT}|wrong|off|a typo|a mistake|a slip|not right|no good|rubbish|nonsense"
    rf"|misread"
    r"|the (?:wrong|other) (?:probe|one|number|reading|thermometer|spot|place|end))"
)
_REALLY: Final = (
    r"(?:(?:no|sorry|oops|it|its|it was|was|is|really|actually|should be|but|and|so|the|real|right|correct|true"
    r"|good|ones?"
    r"|number|reading|probe|meat|core)[, ]+)*"
)
_VALUE: Final = re.Rules(
    (re.compile(pattern), None)
    for pattern in (
        rf"\b(?:not|instead of) (?P<was>\d{{1,4}}(?:\.\d{{1,2}})?) ?[cf]?(?:,? (?:but|its|it was|rather)|,) {NUMBER}$",
        rf"^not (?P<was>\d{{2,3}}) {NUMBER}$",
        rf"^(?:i |we )?(?:said|told you|wrote|typed|put) (?P<was>\d{{1,4}}(?:\.\d{{1,2}})?) ?[cf]?,? (?:but "
        rf"|and )?(?:it was|its|it is|meant|i meant) {NUMBER}$",
        rf"(?<![\w.]){NUMBER},? (?:and )?(?:not|instead of|rather than) (?P<was>\d{{1,4}}(?:\.\d{{1,2}})?)(?![\w.])",
        rf"^(?:no|nope|nah|oops|sorry|typo|correction|wrong|wait|hang on|hold on|scratch that|my bad|my mistake"
        rf"|whoops|argh|ups|nein)\b[,.!: ]*(?:(?:no|sorry|wait|not right|fridge|core|pit|brine|meat"
        rf"|i|we|meant|mean|its|it|was|is|that|thats|should|be|make|temp|number|reading|one|read|to|say|typo"
        rf"|correction|actually|the|ich"
        rf"|meinte)[ ,]*)*{NUMBER}$",
        rf"\b(?:(?:i )?meant|i mean|meant to (?:say|type|write)|should (?:be|have been|say)|make that|correct(?:ion"
        rf"|ed)?(?: to| is)?|supposed to be|typo for|ich meinte)[: ]+"
        rf"(?:(?:the )?(?:pit|core|meat|fridge|brine)(?: temp)? (?:(?:was|is|at|reads|read|to be) )*)?{NUMBER}$",
        rf"^{_THAT_ONE}(?P<was>\d{{1,4}}(?:\.\d{{1,2}})?)(?: ?[cf])? {_NO_GOOD}[,;]? {_REALLY}{NUMBER}{_INSIDE}$",
        rf"^{_REALLY}{NUMBER}[,;]? (?:and )?{_THAT_ONE}(?P<was>\d{{1,4}}(?:\.\d{{1,2}})?)(?: ?[cf])? {_NO_GOOD}$",
        rf"^{_THAT_ONE}(?:last )?{_THAT_ONE}(?:one|number|reading|temp\w*|core|entry) {_NO_GOOD}[,;]? "
        rf"{_REALLY}{NUMBER}$",
        rf"^(?:(?:its|it is|it was|was) )?{NUMBER},? (?:sorry|i mean(?:t)?|typo|oops|i meant to say)$",
        rf"^\*? ?{NUMBER} ?\*$|^\* ?{NUMBER.replace('value', 'star').replace('unit', 'star_unit')}$",
    )
)
_AGAIN: Final = (
    r"^(?:(?:no|oops|sorry|wait|scratch that|wrong(?: one| label| probe)?|typo|correction|actually|that"
    r"|thats|i|meant|mean|was|is|its|it|in|the|not a|should be|ups) ?)+"
)
_UNIT: Final = re.compile(
    rf"(?:{_AGAIN})?\b(?P<unit>celsius|celcius|centigrade|fahrenheit|farenheit|farenheight|[cf])$"
)
_MEANT_TOO: Final = re.compile(
    r"(?<=\w),? (?:(?:i|was|is|thats?|it|sorry|oops|mind|of course|obviously|though"
    r"|meant|mean|reading|the \w+ (?:is|was) set to) ?)+$"
)
_UNIT_ALONE: Final = re.compile(
    r"(?:(?:in|its|it was|that was|thats|was) )?(?:celsius|celcius|centigrade|fahrenheit"
    r"|farenheit|(?<= )[cf])"
)
_PROBE: Final = re.compile(
    r"(?:^|\b)(?<!cover )(?<!cover-)"
    r"(?:the )?(?P<probe>pit|grill|grate|dome|lid|smoker|cooker|meat|core|brisket|flat|fridge|brine|room)(?: (?:probe"
    r"|temp"
    r"|temperature|number|reading|one|not the \w{2,8}|not \w{2,8}))*$"
)
_PUT_AWAY: Final = re.compile(  # «in fridge 120»: what came off the fire, and no fridge of 120
    r"^(?:(?:its|it|is|meats?|the|now|gone|put|straight) )*in(?:to)? (?:the |an? )?(?:fridge|ice|freezer)\b"
)
_HAS_NONE: Final = re.compile(
    r"^(?:(?:i|we|ive|have|got|but|there is|theres) )*no (?:\w+ )?(?:smoker|grill|cooker|lid|fridge|grate)$"
)
_ITS_THE: Final = re.compile(
    r"^(?:its|it is|it was|thats|this is) the (?:pit|grill|smoker|meat|core|fridge|brine|room)(?: (?:temp|one|probe))?"
    r"(?: not the \w{2,8})?$"
)
PROBES: Final = {
    **dict.fromkeys(("pit", "grate", "dome", "lid", "grill", "smoker", "cooker"), Probe.PIT),
    **dict.fromkeys(("meat", "core", "brisket", "flat"), Probe.CORE),
    "fridge": Probe.FRIDGE, "brine": Probe.BRINE, "room": Probe.ROOM,
}  # fmt: skip
_SECOND_THOUGHT: Final = re.compile(
    r"^(?:oh |ah |ok )*(?:no|nope|oops|sorry|wait|scratch that|wrong|typo|correction|actually|ups|whoops|argh"
    r"|nein)\b|\b(?:i meant|meant|i mean|mixed up|wrong (?:one|probe|label|unit|batch))\b|^(?:that|thats|its in"
    r"|it was in|(?:(?:the|my) )?(?:last|previous|(?:one )?before)(?: one| reading| number)? was)\b"
    r"|^(?:the )?(?:pit|meat|core|fridge|brine),? not (?:the )?(?:pit|meat|core|fridge|brine)$"
)
MEAL: Final = re.compile(
    r"\b(?:eat|eating|dinners?|lunch|suppers?|breakfast|meals?|serve|guests?|people|friends|family|folks"
    r"|everyone|everybody|company|visitors|arriv\w+|move|moved|push"
    r"|deadline|reminders?|remind|flips? at|buzz|ping|nudge|text|message|nag|wake|ring)\b"
)
# a number of these is no reading: what stands instead is a change of the setup
_OTHER_QUANTITY: Final = re.compile(
    r"\b(?:thick\w{0,4}|weigh\w{0,3}|mass|trim\w{0,4}|cure|salt|sugar|strength|people|days?)\b|%"
    r"|\d ?(?:kg|g|lbs?|oz|pounds?|kilos?|mm|cm|inch\w{0,2}|percent)\b"
)
_IN_ITS_PART: Final = re.compile(r"(?<=\d) (?:in|at) the thick\w*(?: (?:part|bit|end|spot|side))?$")
_SAID: Final = re.compile(r"^(?:i |we )?(?:said|told you|wrote|typed|put) \d")
_WISHED: Final = re.compile(
    r"\b(?:target|pull|take it off|run|set|cook|smoke|wrap|hold)(?: it| the \w+)? (?:at|to) \d|\btarget(?: is"
    r"| to| at)? \d"
)  # no reading
_MAKE_IT: Final = re.compile(  # an hour as well; plainly one in «12.30 not 1»
    r"^(?:(?:no|ok|please|can you|lets) )*(?=make it |\d{1,2}(?:[:.][0-5]\d| ?[ap]m) not)(?:make it )?"
    r"(?P<new>\d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?) (?:not|instead(?: of)?) (?:at )?(?P<was>\d{1,2})?"
)


def of_value(text: str, context: Context) -> Intent | None:
    """«no, 185», «155 not 255»: the number that was meant; asked about where it may be an hour."""
    typed, text = text, _FRACTION.sub(lambda found: f"{int(found[1]) + int(found[2]) / int(found[3]):g}", text)
    if MEAL.search(text) or _OTHER_QUANTITY.search(_IN_ITS_PART.sub("", text)):
        return None
    if _WISHED.search(text):
        return None
    if made := _MAKE_IT.match(text):
        return _made(made, text, context)
    found = next((hit for hit, _ in _VALUE.hits(text)), None)
    if found is None:
        return None
    parts = found.groupdict()
    value, was = float(parts.get("value") or parts["star"]), parts.get("was")
    hours = re.search(r"(?<!\d)(?:1?\d|2[0-3])\.[0-5]\d\b", typed) and not parts.get("unit")
    whole = _SAID.match(text) and value.is_integer()
    if (whole or hours) and value <= 24:  # «i said 8 but it was 7», «not 7.00 but 6.30»
        hour = when.past(f"at {value:.2f}" if hours else f"at {value:g}", context)
        return Unclear("number", text[:60], (Correct(value=value), *((Correct(at=hour.at),) if hour else ())))
    unit = parts.get("unit") or parts.get("star_unit")
    return Correct(value=value, unit=unit, was=float(was) if was else None, probe=_named_probe(text))


def _made(made: re.Match[str], text: str, context: Context) -> Unclear | MoveDeadline:
    """«make it 2 not 1»: what was read, or the hour of the meal; plainly the meal's where that is the hour denied."""
    meal = when.meal(f"at {made['new']}", context)
    planned = context.deadline.astimezone(ZoneInfo(context.zone)) if context.deadline else None
    if meal and planned and made["was"] and planned.hour % 12 == int(made["was"]) % 12 and not planned.minute:
        return MoveDeadline(to=meal.at)
    readings = () if re.search(r"[:apm]", made["new"]) else (Correct(value=float(made["new"])),)
    return Unclear("number", text[:60], (*readings, *((MoveDeadline(to=meal.at),) if meal else ())))


def _named_probe(text: str) -> Probe | None:
    found = re.search(r"\b(pit|meat|core|fridge|brine)\b", text)
    return PROBES[found[0]] if found else None


def of_unit(text: str, context: Context) -> Intent | None:
    """«celsius», «that was in f»: the unit that was meant."""
    text = _MEANT_TOO.sub("", text)
    found = _UNIT.search(text)
    if not found or context.phase == "none" or re.search(r"\d", text):
        return None
    if not (_SECOND_THOUGHT.search(text) or _UNIT_ALONE.fullmatch(text)):
        return None
    return Correct(unit="f" if found["unit"].startswith("f") else "c")


def of_probe(text: str, context: Context) -> Intent | None:
    """«no, it's the pit»: the thermometer that was meant."""
    found = _PROBE.search(text)
    told = _SECOND_THOUGHT.search(text) or (context.phase != "none" and _ITS_THE.match(text))
    if (
        not found
        or not told
        or _HAS_NONE.match(text)
        or tells_deed(text)
        or re.search(r"\bin the\b|\bice\b|\bjust\b", text)
        or re.search(r"\d", text)
        or len(text.split()) > 9
    ):
        return None
    return Correct(probe=PROBES[found["probe"]])


def tells_deed(text: str) -> bool:
    """Whether a plain line tells of a deed too («110, bird on»): then its number is no second thought."""
    return any(DEEDS.hits(as_meat(text))) or bool(_PUT_AWAY.match(text))
