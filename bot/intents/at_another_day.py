"""A deed that was on another day, or in another part of it: «it went in thursday night, not friday»."""

from typing import Final

from bot.intents import when
from bot.intents.context import SHOWN, Context
from bot.intents.intents import Correct, StepDone, Unclear
from bot.intents.steps import read_step
from core import patterns as re

_NOT_THEN: Final = re.compile(
    r"^(?:(?:no|sorry|oops|wait|actually)[, ]+)*(?P<told>[^?]+?)[,;]? (?:actually |really |and |but )*"
    r"not (?:on |until |till )?(?:this |last |yesterday )?"
    r"(?:mon|tue|wed|thu|fri|sat|sun|yesterday|today|tonight|morning|night|evening|afternoon)"
    r"[a-z]*(?: (?:morning|night|evening|afternoon))?(?:,? (?:sorry|soz|actually))*$"
)
_BEGAN: Final = re.compile(r"\b(?:the )?cur(?:e|ing) (?:started|began|start was)\b")
_PART: Final = re.compile(r"\b(?:morning|noon|afternoon|evening|night|midnight)\b")


def read_another_day(text: str, context: Context) -> Correct | Unclear | None:
    """The step with the time that is right; a day without its hour is asked about, since hours are counted from it."""
    found = _NOT_THEN.match(text) if " not " in text and context.phase != "none" else None
    if found is None:
        return None
    told = _BEGAN.sub("meat went in", found["told"])
    said, steps = when.past(told, context), read_step(told, context)
    deed = steps[0] if len(steps) == 1 else None
    if said is None or not isinstance(deed, StepDone) or deed.step is None:
        return None
    if not (said.hour_said or _PART.search(told)):
        return Unclear("which_hour", text[:SHOWN])
    return Correct(at=said.at, step=deed.step)
