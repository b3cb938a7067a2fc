"""What is grave whatever stands around it: an emergency at any time, a dangerous wish, a mishap that no deed hides."""

import re
from typing import Final

from bot.intents.context import Context
from bot.intents.cures import ATE
from bot.intents.intents import Ask, Choose, Correct, Happened, Intent, Question
from core.answers.dangers import abroad, grave

_AT_ANY_TIME: Final = frozenset({"poison", "co-symptoms", "sick", "pet-salt"})
_JUDGED: Final = frozenset({"more-cure", "too-much-cure", "fire-out"})  # with figures these are sums, and the sum warns
_MISHAPS: Final = frozenset(
    {"left-out", "power-cut", "too-much-cure", "fire-out", "himalayan", "room-cure", "grease-fire"}
)
_COMPUTED: Final = frozenset({"judge", "poison", "law"})


def read_danger(text: str, shown: str, context: Context) -> Intent | None:
    """The question or call for help of a plain text that is grave by its words."""
    named = _named(text, shown)
    if named == "poison" and ATE.search(text):
        return None  # who reads of cures calls for help at once
    if named in _AT_ANY_TIME or (named and context.phase == "none" and not _figured(named, text)):
        return Question(text)
    return None


def warned(found: list[Intent], text: str, shown: str, context: Context) -> list[Intent]:
    """What was read of a line about a batch: none of it where its words are grave, unless it tells of that mishap."""
    named = None if context.phase == "none" else _named(text, shown)
    corrects = any(isinstance(intent, Correct) for intent in found)  # «60 instead of 48 g of cure» mends no reading
    if named is None or (_figured(named, text) and not corrects) or any(_weighed(intent, named) for intent in found):
        return found
    return [Question(text)]


def _named(text: str, shown: str) -> str | None:
    """The danger that a line names by its words as understood, or as typed: mending may lose one."""
    return abroad(shown) or grave(text) or grave(shown)


def _figured(named: str, text: str) -> bool:
    return named in _JUDGED and bool(re.search(r"\d", text))


def _weighed(intent: Intent, named: str) -> bool:
    """Whether an intent tells of that mishap, so that the rules of safety judge it, or answers what was asked."""
    told = isinstance(intent, Happened) and named in _MISHAPS
    return told or isinstance(intent, Choose) or (isinstance(intent, Ask) and intent.topic in _COMPUTED)
