"""One line that asks twice: of each of several batches, or two questions of one in a breath.

«what day are we on and when does it come out» is answered twice only where both are asked for in whole words, neither
brings a figure, and each has a topic of its own.
"""

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import chain
from typing import Final, TypeAlias

from bot.conversation import of_batch
from bot.conversation.closer import closer
from bot.conversation.remarked import ASKS
from bot.conversation.understand import Understood
from bot.intents.intents import Ask, Greet, Help, Question, Unclear
from bot.intents.normal import normal
from bot.intents.questions import find_topic
from bot.reply import Reply
from core.answers.dangers import grave
from core.service import batches
from core.service.turn import Turn

SHORTEST: Final = 2  # words of a question that says what it asks
LONGEST: Final = 12  # lines of two answers that are read as one
NO_ANSWERS: Final = frozenset(
    {"sum", "pull", "picture", "batches", "export", "record", "forget", "settings", "journey"}
)
_AND: Final = re.compile(r"[,;.?!]* (?:and|n|&|plus) (?:also |then )?|[,;.?!]+(?: |$)")
EVERY: Final = re.compile(
    r"\b(?:end|finish|out|take ?out|cure) dates\b"
    r"|\b(?:each|both|they|every(?:thing| one| piece| batch)|all (?:of (?:them|it)|two|three|four))\b"
)
Asking: TypeAlias = Ask | Question | Help | Greet | Unclear


def of_every(
    turn: Turn, meant: Understood, intent: Asking, answer: Callable[[Turn, Understood, Ask | Question], Sequence[Reply]]
) -> Sequence[Reply]:
    """«when do they come out»: from each of several batches, where each has an answer of its own."""
    if meant.sure or not isinstance(intent, Ask | Question) or not EVERY.search(meant.message.text.lower()):
        return ()
    here = sorted(batches.open_here(turn), key=lambda row: row.name)
    each = (replace(meant, batch=row.id, a=batches.look(turn, row.id), sure=True) for row in here)
    found = [reply for one in each for reply in answer(turn, one, intent)]
    return found if all(reply.facts.get("answer_kind") == "batch" for reply in found) else ()


def of_two(
    turn: Turn, meant: Understood, intent: Asking, answer: Callable[[Turn, Understood, Ask], Sequence[Reply]]
) -> Sequence[Reply]:
    """Both of two questions of the batch; nothing where the line has one."""
    if meant.a is None or not isinstance(intent, Ask | Question) or not intent.text:
        return ()
    asks = asked(turn, intent.text, meant.a.batch.phase.value)
    return together([reply for ask in asks for reply in answer(turn, meant, ask)])


def asked(turn: Turn, text: str, phase: str) -> tuple[Ask, ...]:
    """The two questions of a line with their topics; nothing where it is one, or one of them is of no batch."""
    if any(sign.isdigit() for sign in text) or grave(text):
        return ()
    parts = [part.strip() for part in _AND.split(text.lower())]
    asking = [part for part in parts if ASKS.search(part) and len(part.split()) >= SHORTEST]
    found = [_topic(turn, part, phase) for part in asking] if len(asking) == 2 else []
    asks = tuple(ask for ask in found if ask is not None and ask.topic not in NO_ANSWERS)
    return asks if len({ask.topic for ask in asks}) == 2 else ()


def _topic(turn: Turn, part: str, phase: str) -> Ask | None:
    named = find_topic(normal(part, turn.person.language), phase)
    ask = replace(named[1], text=part) if named and isinstance(named[1], Ask) else of_batch.topic_of(turn, part, phase)
    return None if ask is None else closer(turn, ask, phase)


def together(replies: Sequence[Reply]) -> Sequence[Reply]:
    """Two short answers as one, what both say said once; long ones one after the other, and none that is no answer."""
    if len(replies) != 2 or any(reply.facts.get("answer_kind") != "batch" for reply in replies):
        return ()
    first, second = (reply.text.split("\n") for reply in replies)
    last = [line for line in first[1:] if line in second]
    lines = [line for line in first if line not in last] + second
    if len(lines) > LONGEST or any(reply.picture for reply in replies):
        return replies
    body = {**replies[1].facts, **replies[0].facts, "topics": [reply.facts["topic"] for reply in replies]}
    rows = tuple(dict.fromkeys(chain.from_iterable(reply.buttons for reply in replies)))
    return (replace(replies[0], text="\n".join(lines), buttons=rows, facts=body),)
