"""Which question of ours a line answers: the speaker's own, or in a group one that was asked of somebody else there."""

from collections.abc import Callable
from datetime import timedelta
from typing import Any, Final

from bot.conversation.half import unpack
from bot.intents.asked import read_answer
from bot.intents.context import Context
from bot.intents.normal import normal
from bot.reply import Message
from core.service.turn import Turn

Asked = dict[str, Any]
# what anybody of a group may answer: the piece, its salt and how it came out; never what ends or vouches for something
SHARED: Final = frozenset(
    {"cure", "mass", "mass_unit", "share", "cut", "deadline", "grey", "salty", "weight_after"}
)  # fmt: skip
# how long the words of a line answer what was asked of something read, smelt or done just then; a tap still does later
ASKED_FOR: Final = {slot: timedelta(hours=3) for slot in ("probe", "pair", "smell")} | {"batch": timedelta(hours=18)}
HOLDS: Final = frozenset({"talk"})  # chosen by a tap, and asks for no words


def own_of(turn: Turn, message: Message) -> Asked | None:
    """The question that the speaker was asked, as far as it may still be what a line is about."""
    own: Asked | None = unpack(turn.open_question())
    passing = ASKED_FOR.get(own.get("slot", "")) if own is not None and not message.pressed else None
    return None if own is None or (passing and message.said_at - own["at"] > passing) else own


def of(turn: Turn, message: Message, context: Callable[[Asked], Context]) -> tuple[Asked | None, bool]:
    """The question that is open to the line, and whether the line answers it.

    `context` is what a line is read against while a question is open. Somebody else's question counts only where the
    line answers it; it is then closed as one's own would be.
    """
    own = own_of(turn, message)
    if own is not None and (own.get("slot") in HOLDS or answers(turn, message, context(own))):
        return own, True
    for person, kept in turn.asked_of_others():
        theirs: Asked = unpack(kept)
        if theirs.get("slot") in SHARED and answers(turn, message, context(theirs)):
            turn.answer_for(person)
            return theirs, True
    return own, False


def answers(turn: Turn, message: Message, context: Context) -> bool:
    """Whether a line answers the question that is open in its context."""
    return read_answer(normal(message.text, turn.person.language), context) is not None
