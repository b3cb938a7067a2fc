"""A step that is left out on purpose: «skip that one», «not doing the flip», «skip the morning one»."""

from datetime import UTC, time, timedelta
from typing import Final
from zoneinfo import ZoneInfo

from bot.intents import when
from bot.intents.context import Context
from bot.intents.deeds import called, noun
from bot.intents.intents import StepSkipped
from core import patterns as re
from core.plan.steps import Kind

_SKIP: Final = re.compile(
    r"^(?:(?:lets|ok|please|just|can we|ill|well|i|we|will|shall|must|have to|gonna|going to) )*(?:skip(?:ping|ped)?"
    r"|not (?:flipping|turning)(?: (?:it|them|the bags?))?(?= (?:tonight|today|this (?:morning|evening)))"
    r"|wont do|not doing|cant do (?=(?:this|that|it|tonights?|todays?)(?: one| flip)?$)"
    r"|leave out|drop|forget about (?:this|that|it|the flip)|no need for|dont bother(?: with)?(?! (?:me|us)\b)"
    r"|leave (?:this|that) one|pass on|give (?:this|that|it) (?:one )?a miss)\b"
    r"(?! the line)(?! (?:the |all |any )?(?:cure|curing salt|pink|nitrite|salt|sugar)\b)|^überspringen\b"
    r"|^(?:(?:sorry|i|we|really|just) )*(?:cant|cannot|wont be able to|unable to|not able to) (?:do |make )?"
    r"(?:the |this |tonights? |todays? )?(?:flip|turn)(?: (?:it|them|one|the (?:bags?|meat)))?"
    r"(?: (?:today|tonight|this (?:morning|evening)|sorry))*$"
    r"|^(?:(?:sorry|no|nope|oh|i|we) )*(?:not|cant|cannot|wont)(?: (?:do|make) it)?"
    r" (?:tonight|this (?:evening|morning))(?: sorry)?$|^no time (?:tonight|this evening)(?: sorry)?$"
    r"|^no (?:flip|rinse|check) (?:today|tonight|this (?:morning|evening))$|^no rub(?: (?:this time|for us"
    r"|for me|today|thanks))*$"
)
_ASKED: Final = re.compile(r"\b(?:ok|okay|fine|allowed|bad|alright)\W*$")  # «skip rinsing ok» is asked first
_DAYS: Final = re.compile(r"\bdays\b|\b(?:a|one|last|final|whole) day\b|\bthe rest\b")  # of the cure, which are no step
_NO_STEP: Final = re.compile(r"\b(?:fry(?:ing)?|taste|tasting|test)\b(?! (?:the )?flip)")  # of no plan, and no flip
_OF_DAY: Final = re.compile(  # «skip til morning» is the one before it
    r"(?<!til )(?<!till )(?<!until )(?<!until the )(?<!till the )(?<!til the )\b(?:morning|evening|tonight)\b"
)
_FLIP_AT: Final = {"morning": time(8), "evening": time(20), "tonight": time(20)}  # about then; habit, no source


def read_skipped(text: str, context: Context) -> StepSkipped | None:
    """A step left out, where a plain text says so; «skip the morning one» is the flip of then."""
    not_a_step = _DAYS.search(text) or _NO_STEP.search(text)
    if not _SKIP.search(text) or _ASKED.search(text) or not_a_step:
        return None
    part = _OF_DAY.search(text) if context.phase == "curing" else None
    if part is None:
        return StepSkipped(called(text, context))
    local = context.now.astimezone(ZoneInfo(context.zone))
    midnight = (local + timedelta(days=1)).replace(hour=0, minute=0)
    begins = midnight.astimezone(UTC) if "tomorrow" in text else context.now
    at = when.next_at(_FLIP_AT[part[0]], begins, context.zone).at
    return StepSkipped(noun(text) or str(Kind.FLIP), at=at)
