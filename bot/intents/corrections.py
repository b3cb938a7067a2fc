"""Second thoughts: «no, 185», «typo 155 not 255», «that was yesterday's», «wrong one, it's the pit», «undo»."""

from collections.abc import Callable
from typing import Final

from bot.intents import when
from bot.intents.at_another_day import read_another_day
from bot.intents.bones import read_bone
from bot.intents.called import names_meat
from bot.intents.context import Context
from bot.intents.corrected_numbers import MEAL, NUMBER, PROBES, of_probe, of_unit, of_value
from bot.intents.in_a_pot import read_in_a_pot
from bot.intents.intents import Correct, Intent, Unclear, Undo
from bot.intents.mended_setup import read_mended_setup
from bot.intents.other_meant import other_meant
from bot.intents.steps import read_step
from bot.intents.withdrawn import read_withdrawn
from core import patterns as re
from core.plan.steps import Kind

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
    rf"^(?:(?:no|sorry|oops|wait|actually)[, ]+)*(?:(?:the|that|my) )?{NUMBER.replace('value', 'was')}(?: \w+)? was "
    r"(?:read |taken |from )?(?P<when>(?:at|around|about) (?:noon|midnight|\d{1,2}(?:[:.][0-5]\d)?(?: ?[ap]m)?)"
    r"|noon|\d{1,3} ?(?:m|min\w*|h|hrs?|hours?) ago|an hour ago|half an hour ago)$"
)
_AT_NOT: Final = re.compile(
    r"\bat (?P<at>\d{1,2}(?:[:.]\d{2})? ?(?:am"
    r"|pm)?)(?: oclock)?,? (?:and )?not (?:at )?(?P<was>\d{1,2}(?:[:.]\d{2})? ?(?:am"
    r"|pm)?)\b"
)
_CLOCK_NOT: Final = re.compile(  # «it was 12 not 12:40»
    r"^(?:(?:no|sorry|oops|it|that|its|was|is|i|meant|actually)[, ]+)+(?P<at>\d{1,2}(?::\d\d)?(?: ?[ap]m)?),? "
    r"(?:and )?not (?P<was>\d{1,2}:\d\d|\d{1,2} ?[ap]m)$"
)
_OF_READING: Final = re.compile(
    rf"^(?:(?:no|sorry|oops|wait)[, ]+)*(?:the|that"
    rf"|my) {NUMBER.replace('value', 'was')}(?: \w+)? was at\b"
)
_FOR_BATCH: Final = re.compile(
    r"(?:^(?:(?:sorry|oops|no|nah|wait),? )+was"
    r"|\b(?:(?:that|it|this)(?: one| reading)? (?:was|is)|thats|wrong batch,?|i meant|meant)) (?:it )?(?:for )?"
    r"the (?P<name>[\w ]{2,24}?)(?: (?:that |which )?(?:i|we) (?:flipped|turned|did|meant|read))?$"
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
_UNDO_THAT: Final = re.compile(
    r"^(?:(?:oops|sorry|wrong|no|nope|damn|shit|ah|oh|please|pls|my bad|mistake|that was wrong)[, .]+)+"
    r"(?:undo|take back|take)(?: (?:that|it|this|the last(?: one)?|back))+[ .]*$"
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
    if (found := _AT_NOT.search(text) or _CLOCK_NOT.match(text)) and not MEAL.search(text):
        if to_number(found["at"]) > 24:
            return None
        said = when.past(f"at {found['at']}", context)
        read = _OF_READING.match(text)
        was = float(read["was"]) if read else None
        return Correct(at=said.at, step=_step(text, context), was=was) if said else None
    if (found := _MEANT_HOUR.search(text)) and not MEAL.search(text):
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
    if name.split()[0] in PROBES and not any(name == called.lower() for _, called in context.batches):
        return None
    known = next((id_ for id_, called in context.batches if called.lower() == name), None)
    part = next((id_ for id_, called in context.batches if set(name.split()) & set(called.lower().split())), None)
    return Correct(to_batch=known or part or name) if known or part or names_meat(name) else None  # «it was the scale»


_READERS: Final[tuple[Callable[[str, Context], Intent | None], ...]] = (
    read_bone, read_in_a_pot, read_mended_setup, read_withdrawn, _of_hour, _of_day, read_another_day, _of_batch,
    of_value, of_unit, of_probe,
)  # fmt: skip
