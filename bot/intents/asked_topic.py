"""A question about the batch in hand, with what was read or done before it in the same breath."""

from dataclasses import replace

from bot.intents import questions
from bot.intents.clause import is_nothing
from bot.intents.clauses import sentences
from bot.intents.context import Context
from bot.intents.intents import Ask, Change, Happened, Intent, Question, Reading, StepDone, Unclear
from bot.intents.merged import merged
from bot.intents.small import IS_IT
from bot.intents.smelt import smelt
from core import patterns as re


def asked_topic(plain: str, context: Context) -> list[Intent]:
    """A question about the batch, after what was read or done («158, how much longer»)."""
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
