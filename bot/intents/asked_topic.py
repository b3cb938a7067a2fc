"""A question about the batch in hand, with what was read or done before it in the same breath."""

from dataclasses import replace
from typing import Final

from bot.intents import questions
from bot.intents.clause import is_nothing
from bot.intents.clauses import sentences
from bot.intents.context import Context
from bot.intents.intents import Ask, Change, Happened, Intent, Question, Reading, StepDone, Unclear
from bot.intents.mended_setup import other_strength
from bot.intents.merged import merged
from bot.intents.small import IS_IT
from bot.intents.smelt import smelt
from core import patterns as re

_READ_BEHIND: Final = re.compile(  # «dinner 6, are we gonna make it, its at 110»: no hour, beside the fire
    r"(?<=[,;.?!]) (?:and |but |now )*(?P<read>(?:(?:its|it is|the core is|core(?: is)?|meats?(?: is)?|the meat is)"
    r" (?:(?:only|just|now|still|already|sitting|up) )*(?:at )?)\d{2,3}(?: ?[cf])?)(?: now| already| inside)*[ .!?]*$"
)

_HOT_YET: Final = re.compile(  # «pit at 250 yet»: asked, and no wish
    r"^(?:is )?(?:the |my )?(?:pit|smoker|grill|cooker|fire) (?:up )?(?:at|to) \d{2,3}(?: ?[cf])? (?:yet|by now)\W*$"
)
_MAY_I: Final = re.compile(  # «take it off and leave it in the oven, ok?»: nothing of it is done
    r"^(?:so |and )?(?:take|pull|put|leave|lift|bring|move|let|just leave) (?:it|them|the \w+)\b(?=.{24}).*[ ,;.]"
    r"(?:ok|okay|right|fine|alright|safe|good|yes|bad idea|allowed)\?+$"
)


def asked_topic(plain: str, context: Context) -> list[Intent]:
    """A question about the batch, after what was read or done («158, how much longer»), or before what was read."""
    if strength := other_strength(plain, context):
        return [strength]
    if context.phase in ("drying", "cooking") and _HOT_YET.match(plain):
        return [Ask("fire", text=plain)]
    if context.phase not in ("none", "stored") and _MAY_I.match(plain):
        return [Question(plain)]
    behind = _READ_BEHIND.search(plain) if context.phase == "cooking" else None
    if behind and (read := [one for one in sentences(behind["read"], context) if isinstance(one, Reading)]):
        head = plain[: behind.start()].rstrip(" ,;.")
        asked = asked_topic(head, context) or ([Question(head)] if questions.is_question(head) else [])
        beside = [one for one in asked if not (isinstance(one, Ask) and one.topic == "eta")]  # a reading says that
        return merged([*read, *beside]) if asked else []
    if re.fullmatch(r"(?:(?:is it|all|are we|its) )?(?:done|ready|finished)(?: yet)?\?+", plain):
        return [Ask("eta", text=plain)]
    if smelled := smelt(plain, context):
        return smelled
    found = questions.find_topic(plain, context.phase)
    if found is None:
        return []
    before, ask = found
    told = before and not IS_IT.match(before)
    said = [intent for intent in sentences(before, context) if not is_nothing(intent)] if told else []
    acted = [intent for intent in said if isinstance(intent, Reading | StepDone | Happened | Unclear | Change)]
    if not acted and re.search(r"\d", before):
        return [Question(plain)]  # it brings figures of its own: none about this batch's record
    if isinstance(ask, Ask) and ask.topic == "safe" and any(isinstance(one, Happened) for one in acted):
        return merged(acted)  # what went wrong is judged with its news: the record asked before it knows nothing of it
    deeds = acted and not any(isinstance(intent, Reading) for intent in acted)
    if isinstance(ask, Ask) and ask.topic == "safe" and deeds:  # «resting. is it safe» asks nothing of the rest
        ask = replace(ask, text=plain.removeprefix(before).lstrip(" ,.;") or plain)
    return merged([*acted, ask])
