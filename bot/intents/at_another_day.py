"""A deed that was on another day, or in another part of it: «it went in thursday night, not friday»."""

from typing import Final

from bot.intents import when
from bot.intents.context import SHOWN, Context
from bot.intents.intents import Correct, StepDone, Unclear
from bot.intents.steps import noun, read_step
from core import patterns as re

_NOT_THEN: Final = re.compile(
    r"^(?:(?:no|sorry|oops|wait|actually)[, ]+)*(?P<told>[^?]+?)[,;]? (?:actually |really |and |but )*"
    r"not (?:on |until |till )?(?:this |last |yesterday )?"
    r"(?:mon|tue|wed|thu|fri|sat|sun|yesterday|today|tonight|morning|night|evening|afternoon|now)"
    r"[a-z]*(?: (?:morning|night|evening|afternoon))?(?:,? (?:sorry|soz|actually))*$"
)
_AT_THAT_HOUR: Final = re.compile(  # «flip was 6.30 not 7»
    r"^(?:(?:no|sorry|oops|wait|actually|the|that|my|last|this|morning|evening|tonights)[, ]+)*"
    r"(?P<deed>flip|turn|rinse|wrap|soak|rub) was (?:(?:done|really|actually|more like|about|at) )*"
    r"(?P<at>\d{1,2}(?:[:.][0-5]\d)?(?: ?[ap]m)?)(?:,? (?:and )?not (?:at )?\d{1,2}(?:[:.][0-5]\d)?(?: ?[ap]m)?)?$"
)
_BEGAN: Final = re.compile(r"\b(?:the )?cur(?:e|ing) (?:started|began|start was)\b")
_PART: Final = re.compile(r"\b(?:morning|noon|afternoon|evening|night|midnight)\b")


def read_another_day(text: str, context: Context) -> Correct | Unclear | None:
    """The step with the time that is right; a day without its hour is asked about, since hours are counted from it."""
    if context.phase != "none" and (deed := _AT_THAT_HOUR.match(text)):
        then = when.past(f"at {deed['at']}", context)
        return Correct(at=then.at, step=noun(deed["deed"])) if then else None
    found = _NOT_THEN.match(text) if " not " in text and context.phase != "none" else None
    if found is None:
        return None
    told = _BEGAN.sub("meat went in", found["told"])
    said, steps = when.past(told, context), read_step(told, context)
    done = steps[0] if len(steps) == 1 else None
    if said is None or not isinstance(done, StepDone) or done.step is None:
        return None
    if not (said.hour_said or _PART.search(told)):
        return Unclear("which_hour", text[:SHOWN])
    return Correct(at=said.at, step=done.step)
