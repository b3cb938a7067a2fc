"""A question with a remark beside it: «feels firm, can i take it out now» asks what its one question asks."""

import re
from collections.abc import Collection

from bot.intents.questions import is_question
from core.answers.find import of_batch

CLEAR = 0.15  # so much likelier than an entry: the remark was left out
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
