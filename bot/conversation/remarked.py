"""A question by what it asks: without the remark beside it, and of several pieces as of one."""

import re
from collections.abc import Collection

from bot.intents.questions import is_question
from bot.intents.rewriting.polite import OF_ONE
from core.answers.find import LIKELY_OF_BATCH, entry_likeness, of_batch

CLEAR = 0.14  # so much likelier than an entry, beside a remark with a figure
AHEAD = 0.045  # and beside one without
ASKS = re.compile(  # a part of a line that asks, by its first word
    r"^(?:(?:so|and|also|but|well|ok) )*(?:when|what|how|who|where|which|why|is|are|am|do|does|did|can|could|should"
    r"|shall|will|would|has|have|was|were|may|must|any)(?:s|re)?\b"
)
_PEOPLE = r"(?! (?:eat|come|arrive|want|like|need to|drink|be here|get here|bring|stay with)\b)"  # and no pieces
_ASKED_OF = re.compile(rf"\b(are|were|do|have) (?:they|those|these|both){_PEOPLE}\b", re.IGNORECASE)
_THEY = re.compile(rf"\b(?:they{_PEOPLE}|them|em|both of (?:it|them))\b", re.IGNORECASE)
_PARTS = re.compile(r"[,;.!?]+(?:\s|$)")


def beside_a_remark(asked: str, far: Collection[str]) -> str | None:
    """The topic of a batch that the one part of a line asks for that asks at all; None where that part brings a figure.

    It is none either where an entry is likelier for the whole line. `far` are the topics of another time than the
    batch's.
    """
    parts = [part.strip() for part in _PARTS.split(asked) if part.strip()]
    asking = [part for part in parts if is_question(part) or ASKS.search(part)]
    if len(parts) < 2 or len(asking) != 1 or any(sign.isdigit() for sign in asking[0]):
        return None
    figured = any(sign.isdigit() for sign in asked)
    least = max(LIKELY_OF_BATCH, entry_likeness(asked))
    return of_batch(asking[0], CLEAR if figured else AHEAD, far=far, least=least)


def singular(text: str) -> str:
    """«how long do they stay in» as «how long does it stay in»: several pieces are one batch."""
    return _THEY.sub("it", _ASKED_OF.sub(lambda found: f"{OF_ONE[found[1].lower()]} it", text))
