"""How it smells or looks, told beside a question: «smells a bit off, can i eat it» asks about the smell."""

from typing import Final

from bot.intents import questions
from bot.intents.clause import clause
from bot.intents.context import Context
from bot.intents.feels import is_spoiled
from bot.intents.intents import Intent, Reading, StepDone, Unclear
from bot.intents.remarks import remark
from bot.intents.vague import read_vague
from core import patterns as re

_PARTS: Final = re.compile(
    r"[,;.!?]+(?:\s+|$)|\s+(?:and|but|so)\s+|\s+(?=(?:is|isnt|are|can|could|should|shall|do|does|will|would|may)"
    r" (?:it|i|we|this|that|they|the|my)\b)"
)
_LIKE: Final = re.compile(r"\blike\b")  # «smells like pickles, normal?» is answered by what is known of smells
_SAFE: Final = frozenset({"smell", "spoiled"})


def smelt(plain: str, context: Context) -> list[Intent]:
    """What a line tells of a smell, a slime or a mould, with the deeds and readings beside it; its question waits.

    A question that is answered by the record alone would pass over the one thing that the record does not know.
    """
    if context.phase == "none" or not questions.is_question(plain):
        return []
    parts = [part for found in _PARTS.split(plain) if (part := found.strip(" ,"))]
    noses = [_nose(part, context) for part in parts]
    if len(parts) < 2 or not any(noses):
        return []
    rest = (one for part, nose in zip(parts, noses, strict=True) if not nose for one in clause(part, context))
    told = [one for one in rest if isinstance(one, StepDone | Reading)]
    return [*told, *[nose for nose in noses if nose][:1]]


def _nose(part: str, context: Context) -> Intent | None:
    """The question that the words for a smell are met with; None for other words."""
    odd = remark(part, context.phase) == "smell" and not _LIKE.search(part)
    if not is_spoiled(part) and not odd:
        return None
    found = read_vague(part, context)
    return found if isinstance(found, Unclear) and found.why in _SAFE else None
