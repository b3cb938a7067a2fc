"""Second thoughts: «no, 185», «typo 155 not 255», «that was yesterday's», «wrong one, it's the pit», «undo»."""

from collections.abc import Callable
from typing import Final
from zoneinfo import ZoneInfo

from bot.intents import when
from bot.intents.at_another_day import read_another_day
from bot.intents.context import Context
from bot.intents.deeds import DEEDS
from bot.intents.intents import Correct, Intent, MoveDeadline, Unclear, Undo
from bot.intents.meats import as_meat
from bot.intents.mended_setup import read_mended_setup
from bot.intents.other_meant import other_meant
from bot.intents.steps import read_step
from bot.intents.withdrawn import read_withdrawn
from core import patterns as re
from core.batch.events import Probe
from core.plan.steps import Kind

_NUMBER: Final = r"(?P<value>-?\d{1,4}(?:\.\d{1,2})?)(?: ?(?:°|degrees?|deg)? ?(?P<unit>[cf])\b)?"
_UNDO: Final = re.compile(
    r"^(?:(?:please|pls|can you|oops|no) )*(?:undo|rückgängig|zurück|revert|take (?:that|it) back|(?:delete"
    r"|remove|scrap|bin|strike) (?:(?:that |the |my )?(?:last|latest)|that)(?: one"
    r"| entry| reading)?|cancel (?:that|the last) (?:flip|reading|entry|one)|"
    r"scratch that|never ?mind that|cancel that|(?:ignore|forget|disregard)(?: (?:that|my|the|what (?:i"
    r"|we) (?:just )?(?:said|wrote|typed|told you))(?: last)?(?: message"
    r"| one| entry)?)?)(?: (?:please|pls|last"
    r"|that|it|one))*$"
    r"|^(?:that|the last)(?: one| done| flip| entry| reading)? was (?:a |my |all )?(?:mistake|slip|wrong|an accident)\b"
    r"(?!.*\d)"
)
_THAT_ONE: Final = r"(?:(?:the|that|my|a|reading|of|number|pit|core|meat|fridge|brine) )*"
_NO_GOOD: Final = r"(?:was|is) (?:wrong|off|a typo|a mistake|a slip|not right|no good|rubbish|nonsense|misread)"
_REALLY: Final = r"(?:(?:no|sorry|oops|it|its|it was|was|is|really|actually|should be|but)[, ]+)*"
_VALUE: Final = re.Rules(
    (re.compile(pattern), None)
    for pattern in (
        rf"\b(?:not|instead of) (?P<was>\d{{1,4}}(?:\.\d{{1,2}})?) ?[cf]?(?:,? (?:but|its|it was|rather)|,) {_NUMBER}$",
        rf"^not (?P<was>\d{{2,3}}) {_NUMBER}$",
        rf"^(?:i |we )?(?:said|told you|wrote|typed|put) (?P<was>\d{{1,4}}(?:\.\d{{1,2}})?) ?[cf]?,? (?:but "
        rf"|and )?(?:it was|its|it is|meant|i meant) {_NUMBER}$",
        rf"(?<![\w.]){_NUMBER},? (?:and )?(?:not|instead of|rather than) (?P<was>\d{{1,4}}(?:\.\d{{1,2}})?)(?![\w.])",
        rf"^(?:no|nope|nah|oops|sorry|typo|correction|wrong|wait|hang on|hold on|scratch that|my bad|my mistake"
        rf"|whoops|argh|ups|nein)\b[,.!: ]*(?:(?:no|sorry|wait|not right|fridge|core|pit|brine|meat"
        rf"|i|we|meant|mean|its|it|was|is|that|thats|should|be|make|temp|number|reading|one|read|to|say|typo"
        rf"|correction|actually|the|ich"
        rf"|meinte)[ ,]*)*{_NUMBER}$",
        rf"\b(?:(?:i )?meant|i mean|meant to (?:say|type|write)|should (?:be|have been|say)|make that|correct(?:ion"
        rf"|ed)?(?: to| is)?|supposed to be|typo for|ich meinte)[: ]+"
        rf"(?:(?:the )?(?:pit|core|meat|fridge|brine)(?: temp)? (?:(?:was|is|at|reads|read|to be) )*)?{_NUMBER}$",
        rf"^{_THAT_ONE}(?P<was>\d{{1,4}}(?:\.\d{{1,2}})?)(?: ?[cf])? {_NO_GOOD}[,;]? {_REALLY}{_NUMBER}$",
        rf"^{_REALLY}{_NUMBER}[,;]? (?:and )?{_THAT_ONE}(?P<was>\d{{1,4}}(?:\.\d{{1,2}})?)(?: ?[cf])? {_NO_GOOD}$",
        rf"^{_THAT_ONE}(?:last )?{_THAT_ONE}(?:one|number|reading|temp\w*|core|entry) {_NO_GOOD}[,;]? "
        rf"{_REALLY}{_NUMBER}$",
        rf"^(?:(?:its|it is|it was|was) )?{_NUMBER},? (?:sorry|i mean(?:t)?|typo|oops|i meant to say)$",
        rf"^\*? ?{_NUMBER} ?\*$|^\* ?{_NUMBER.replace('value', 'star').replace('unit', 'star_unit')}$",
    )
)
_AGAIN: Final = (
    r"^(?:(?:no|oops|sorry|wait|scratch that|wrong(?: one| label| probe)?|typo|correction|actually|that"
    r"|thats|i|meant|mean|was|is|its|it|in|the|not a|should be|ups) ?)+"
)
_UNIT: Final = re.compile(
    rf"(?:{_AGAIN})?\b(?P<unit>celsius|celcius|centigrade|fahrenheit|farenheit|farenheight|[cf])$"
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
_HAS_NONE: Final = re.compile(
    r"^(?:(?:i|we|ive|have|got|but|there is|theres) )*no (?:\w+ )?(?:smoker|grill|cooker|lid|fridge|grate)$"
)
_ITS_THE: Final = re.compile(
    r"^(?:its|it is|it was|thats|this is) the (?:pit|grill|smoker|meat|core|fridge|brine|room)(?: (?:temp|one|probe))?"
    r"(?: not the \w{2,8})?$"
)
_PROBES: Final = {
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
_YESTERDAY: Final = re.compile(
    r"\b(?:(?:that|those|this)(?: (?:one|reading|flip|\w{3,8}))?(?: was|s| is| were)?|it was) (?:for "
    r"|from )?(?P<when>yesterdays?|last nights?|gestern)\b|^(?:oops )?yesterdays$"
)
_NOT_TODAY: Final = re.compile(r"\b(?:flipped|turned|did|rinsed)\b.{0,12}\byesterday,? (?:and )?not today$")
_THAT_WAS: Final = re.compile(
    r"(?:\b(?:that|it)|^(?:(?:the|my) )?last)(?: one| reading| flip)? was (?P<when>(?:(?:at|about|around) )*(?:1?\d"
    r"|2[0-4])(?:[:.][0-5]\d)?(?: ?[ap]m| oclock)?|\d{1,3} ?(?:m|min\w*|h|hrs?|hours?) ago|(?:half )?an? \w{3,8} ago"
    r"|at noon|this morning|last night|yesterday (?:morning|evening))(?:,? not .{3,20})?$"
)
_NUMBER_WAS: Final = re.compile(  # «sorry 147 was at noon»: of that reading, another hour
    rf"^(?:(?:no|sorry|oops|wait|actually)[, ]+)*(?:(?:the|that|my) )?{_NUMBER.replace('value', 'was')}(?: \w+)? was "
    r"(?:read |taken |from )?(?P<when>(?:at|around|about) (?:noon|midnight|\d{1,2}(?:[:.][0-5]\d)?(?: ?[ap]m)?)"
    r"|noon|\d{1,3} ?(?:m|min\w*|h|hrs?|hours?) ago|an hour ago|half an hour ago)$"
)
_AT_NOT: Final = re.compile(
    r"\bat (?P<at>\d{1,2}(?:[:.]\d{2})? ?(?:am|pm)?),? (?:and )?not (?:at )?(?P<was>\d{1,2}(?:[:.]\d{2})? ?(?:am"
    r"|pm)?)\b"
)
_CLOCK_NOT: Final = re.compile(  # «it was 12 not 12:40»
    r"^(?:(?:no|sorry|oops|it|that|its|was|is|i|meant|actually)[, ]+)+(?P<at>\d{1,2}(?::\d\d)?(?: ?[ap]m)?),? "
    r"(?:and )?not (?P<was>\d{1,2}:\d\d|\d{1,2} ?[ap]m)$"
)
_OF_READING: Final = re.compile(
    rf"^(?:(?:no|sorry|oops|wait)[, ]+)*(?:the|that"
    rf"|my) {_NUMBER.replace('value', 'was')}(?: \w+)? was at\b"
)
_FOR_BATCH: Final = re.compile(
    r"\b(?:(?:that|it|this)(?: one| reading)? (?:was|is)|thats|wrong batch,?|i meant"
    r"|meant) (?:it )?(?:for )?the (?P<name>[\w ]{2,24})$"
)
_WRONG_TAP: Final = re.compile(
    r"^(?:(?:oops|sorry|no|i|just|have|ive) )*(?:didnt mean (?:that|it|to)|wrong (?:button|tap|key)|(?:pressed|hit"
    r"|tapped|pushed"
    r"|touched) (?:the )?wrong \w+"
    r"|mis ?tap(?:ped)?)$"
    r"|^(?:(?:oops|sorry|no|wait)[, ]+)*(?:that|it|this)? ?(?:was|is)?(?:nt| not) done(?: yet)?"
    r"(?:,? (?:sorry|oops|my bad|my mistake|wrong button|by mistake))+$"
)
_WRONG_BATCH: Final = re.compile(
    r"^(?:(?:no|oops|sorry|ups|i|that was|thats|this was|it was) )*(?:(?:for|about|meant for|flipped"
    r"|turned) )*(?:the |a |my "
    r"|an)?(?:wrong|other|different) (?:batch"
    r"|one|meat|bag|piece)$"
)
_MEANT_HOUR: Final = re.compile(
    r"^(?!at \d)(?!make )(?:(?:no|sorry|oops|typo|i|we|meant|mean|to|say|type|it|was|make|that|should|be|have|been"
    r"|thats"
    r"|actually|at) )+"
    r"(?P<at>(?:1[0-2]|0?\d)(?:[:.][0-5]\d)? ?(?:am|pm)|(?:[01]?\d|2[0-3]):[0-5]\d)$"
)
_MEAL: Final = re.compile(
    r"\b(?:eat|eating|dinners?|lunch|suppers?|breakfast|meals?|serve|guests?|people|friends|family|folks"
    r"|everyone|everybody|company|visitors|arriv\w+|move|moved|push"
    r"|deadline|reminders?|remind|flips? at|buzz|ping|nudge|text|message|nag|wake|ring)\b"
)
# a number of these is no reading: what stands instead is a change of the setup
_OTHER_QUANTITY: Final = re.compile(
    r"\b(?:thick\w{0,4}|weigh\w{0,3}|mass|trim\w{0,4}|cure|salt|sugar|strength|people|days?)\b|%"
    r"|\d ?(?:kg|g|lbs?|oz|pounds?|kilos?|mm|cm|inch\w{0,2}|percent)\b"
)
_UNDO_THAT: Final = re.compile(
    r"^(?:(?:oops|sorry|wrong|no|nope|damn|shit|ah|oh|please|pls|my bad|mistake|that was wrong)[, .]+)+"
    r"(?:undo|take back|take)(?: (?:that|it|this|the last(?: one)?|back))+[ .]*$"
)
_SAID: Final = re.compile(r"^(?:i |we )?(?:said|told you|wrote|typed|put) \d")
_WISHED: Final = re.compile(
    r"\b(?:target|pull|take it off|run|set|cook|smoke|wrap|hold)(?: it| the \w+)? (?:at|to) \d|\btarget(?: is"
    r"| to| at)? \d"
)  # no reading
_MAKE_IT: Final = re.compile(  # an hour as well; plainly one in «12.30 not 1»
    r"^(?:(?:no|ok|please|can you|lets) )*(?=make it |\d{1,2}(?:[:.][0-5]\d| ?[ap]m) not)(?:make it )?"
    r"(?P<new>\d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?) (?:not|instead(?: of)?) (?:at )?(?P<was>\d{1,2})?"
)


def read_correction(text: str, context: Context) -> Intent | None:
    """A correction of what was said before, where a plain text is one."""
    if _UNDO.search(text) or _UNDO_THAT.match(text):
        return Undo(step=str(Kind.FLIP)) if re.search(r"\bflip\b", text) and context.phase == "curing" else Undo()
    if _WRONG_TAP.match(text):
        return Unclear("word", text, (Undo(),))
    return next((found for reader in _READERS if (found := reader(text, context))), None)


def _of_hour(text: str, context: Context) -> Intent | None:
    """«i flipped at 7 not 8», «that was 20 min ago»."""
    if (found := _AT_NOT.search(text) or _CLOCK_NOT.match(text)) and not _MEAL.search(text):
        if to_number(found["at"]) > 24:
            return None
        said = when.past(f"at {found['at']}", context)
        read = _OF_READING.match(text)
        was = float(read["was"]) if read else None
        return Correct(at=said.at, step=_step(text, context), was=was) if said else None
    if (found := _MEANT_HOUR.search(text)) and not _MEAL.search(text):
        said = when.past(f"at {found['at']}", context)
        return Correct(at=said.at) if said else None
    found = _NUMBER_WAS.match(text) or _THAT_WAS.search(text)
    said = when.past(found["when"], context) if found else None
    if said and found and found.groupdict().get("was"):
        return Correct(at=said.at, was=float(found["was"]))
    step = str(Kind.FLIP) if found and re.search(r"\b(?:flip|turn)\b", found[0]) else None
    return Correct(at=said.at, step=step) if said else None


def to_number(text: str) -> float:
    """The leading number of a clock time as typed."""
    found = re.match(r"\d+", text)
    return float(found[0]) if found else 0.0


def _step(text: str, context: Context) -> str | None:
    done = read_step(re.sub(r"\bnot\b.*$", "", text), context)
    return getattr(done[0], "step", None) if done else None


def _of_day(text: str, context: Context) -> Intent | None:
    found = _YESTERDAY.search(text) or _NOT_TODAY.search(text)
    return Correct(days_back=1, step="flip" if "flip" in text else None) if found else None


def _of_batch(text: str, context: Context) -> Intent | None:
    if _WRONG_BATCH.match(text):
        return Correct(to_batch="") if len(context.batches) > 1 else Unclear("word", text, (Undo(),))
    if meant := other_meant(text, context):
        return Correct(to_batch=meant)
    found = _FOR_BATCH.search(text)
    if not found:
        return None
    name = found["name"].strip()
    if name.split()[0] in _PROBES and not any(name == called.lower() for _, called in context.batches):
        return None
    known = next((id_ for id_, called in context.batches if called.lower() == name), None)
    part = next((id_ for id_, called in context.batches if set(name.split()) & set(called.lower().split())), None)
    return Correct(to_batch=known or part or name)


def _of_value(text: str, context: Context) -> Intent | None:
    if _MEAL.search(text) or _OTHER_QUANTITY.search(text):
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
    hours = re.search(r"(?<!\d)(?:1?\d|2[0-3])\.[0-5]\d\b", text) and not parts.get("unit")
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
    return _PROBES[found[0]] if found else None


def _of_unit(text: str, context: Context) -> Intent | None:
    found = _UNIT.search(text)
    if not found or context.phase == "none" or re.search(r"\d", text):
        return None
    if not (_SECOND_THOUGHT.search(text) or _UNIT_ALONE.fullmatch(text)):
        return None
    return Correct(unit="f" if found["unit"].startswith("f") else "c")


def _of_probe(text: str, context: Context) -> Intent | None:
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
    return Correct(probe=_PROBES[found["probe"]])


_READERS: Final[tuple[Callable[[str, Context], Intent | None], ...]] = (
    read_mended_setup, read_withdrawn, _of_hour, _of_day, read_another_day, _of_batch, _of_value, _of_unit, _of_probe,
)  # fmt: skip


def tells_deed(text: str) -> bool:
    """Whether a plain line tells of a deed too («110, bird on»): then its number is no second thought."""
    return any(DEEDS.hits(as_meat(text)))
