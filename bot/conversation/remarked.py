"""A question by what it asks: without the remark beside it, and of several pieces as of one."""

import re
from collections.abc import Collection

from bot.intents.questions import is_question
from bot.intents.rewriting.polite import OF_ONE
from core.answers.find import of_batch

CLEAR = 0.15  # so much likelier than an entry: the remark was left out
_PEOPLE = r"(?! (?:eat|come|arrive|want|like|need to|drink|be here|get here|bring|stay with)\b)"  # and no pieces
_ASKED_OF = re.compile(rf"\b(are|were|do|have) (?:they|those|these|both){_PEOPLE}\b", re.IGNORECASE)
_THEY = re.compile(rf"\b(?:they{_PEOPLE}|them|em|both of (?:it|them))\b", re.IGNORECASE)
_PARTS = re.compile(r"[,;.!?]+(?:\s|$)")


def beside_a_remark(asked: str, far: Collection[str]) -> str | None:
    """The topic of a batch that the one part of a line asks for that asks at all; None where a part brings a figure.

    `far` are the topics of another time than the batch's.
    """
    parts = [part.strip() for part in _PARTS.split(asked) if part.strip()]
    asking = [part for part in parts if is_question(part)]
    if len(parts) < 2 or len(asking) != 1 or any(sign.isdigit() for sign in asked):
        return None
    return of_batch(asking[0], CLEAR, far=far)


def singular(text: str) -> str:
    """«how long do they stay in» as «how long does it stay in»: several pieces are one batch."""
    return _THEY.sub("it", _ASKED_OF.sub(lambda found: f"{OF_ONE[found[1].lower()]} it", text))
