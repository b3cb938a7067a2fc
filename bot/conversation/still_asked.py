"""A question that was asked again beside other news: it takes what nobody else understands, and nothing else."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any, Final

from bot.intents.context import Context
from bot.intents.intents import Happened, Intent, Question, Unclear
from bot.intents.questions import is_question
from bot.intents.read import read

SLOT: Final = "still_asked"


def is_it(asked: dict[str, Any] | None) -> bool:
    """Whether the open question is one of these: every line is read as if nothing were asked."""
    return (asked or {}).get("slot") == SLOT


def answered(text: str, asked: dict[str, Any] | None, context: Context, intents: Sequence[Intent]) -> Sequence[Intent]:
    """The intents of a line; of one that says nothing else, the facts that the question wanted."""
    if asked is None or not is_it(asked) or not all(map(_says_nothing, intents)):
        return intents
    facts = read(text, replace(context, asked=asked["what"]))
    return facts if all(isinstance(one, Happened) for one in facts) else intents


def _says_nothing(intent: Intent) -> bool:
    """Whether nobody understood a line, and it asks nothing either."""
    return isinstance(intent, Unclear) or (isinstance(intent, Question) and not is_question(intent.text.lower()))
