"""What is grave whatever stands around it: an emergency at any time, a dangerous wish where no batch is under way."""

import re
from typing import Final

from bot.intents.context import Context
from bot.intents.cures import ATE
from bot.intents.intents import Intent, Question
from core.answers.dangers import grave

_AT_ANY_TIME: Final = frozenset({"poison", "co-symptoms", "sick", "pet-salt"})
_JUDGED: Final = frozenset({"more-cure", "fire-out"})  # with figures these are sums, and the sum warns


def read_danger(text: str, context: Context) -> Intent | None:
    """The question or call for help of a plain text that is grave by its words."""
    named = grave(text)
    if named == "poison" and ATE.search(text):
        return None  # who reads of cures calls for help at once
    figured = named in _JUDGED and re.search(r"\d", text)
    if named in _AT_ANY_TIME or (named and context.phase == "none" and not figured):
        return Question(text)
    return None
