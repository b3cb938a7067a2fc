"""Whose batch is meant, where each of several people began one: «flipped mine», «hers smells sour», «turned his».

The word becomes the name of that batch. Where it may be one of several, or all are of one cook, the line stays.
"""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from bot.conversation import several
from bot.intents.intents import Change, Intent, Snooze, StepDone, StepMissed, StepSkipped
from bot.reply import Message
from core import patterns as re
from core.plan.steps import Kind
from core.service import batches
from core.service.turn import Turn

_SAID_OF: Final = (  # what may follow «his» and «hers» when it is the batch, and no «his fridge»
    r"(?= ?(?:$|[,.!?;:]|\d|(?:is|was|went|are|too|as well|can|needs?|comes?|came|out|in|off|on|at|still|now|again|and"
    r"|reads?|smells?|looks?|feels?|be|just|got|has|this|last|yesterday)\b))"
)
_MINE: Final = re.compile(
    r"(?<!a )(?<!of )(?<!the )(?<!from )\b(?:mine|my (?:one|batch|piece|lot|bit))(?P<is>['’]?s)?\b"
)
_THEIRS: Final = re.compile(
    rf"\b(?:hers|theirs|(?:his|her|their) (?:one|batch|piece|lot|bit))(?P<is>['’]s)?\b|\bhis(?P<too>['’]s)?{_SAID_OF}"
)
_DID: Final = re.compile(r"(?i)^(?:and |i )*(?:did|done) (mine|my one|hers|his|theirs)(?= (?:too|also|as well)$)")
_ANOTHERS: Final = re.compile(  # «my neighbour pulled his at 195»: of no batch here
    r"\b(?:my|our|the|a) (?:neighbou?r|mate|friend|dad|mum|mom|father|mother|uncle|aunt|boss|butcher|guy|son"
    r"|daughter)\b"
)


def named(turn: Turn, message: Message) -> Message:
    """The message with «mine» and «his» by the name of the one batch that is the speaker's, or not."""
    text = _DID.sub(r"\1", message.text)
    if not (_MINE.search(text.lower()) or _THEIRS.search(text.lower())) or _ANOTHERS.search(text.lower()):
        return message
    rows = batches.open_here(turn)
    if len({row.owner for row in rows}) < 2:
        return message
    for words, own in ((_MINE, True), (_THEIRS, False)):
        names = [row.name for row in rows if (row.owner == turn.person.id) is own]
        text = _put(text, words, names[0]) if len(names) == 1 else text
    return replace(message, text=text)


def own_first(turn: Turn, those: tuple[str, ...], intents: Sequence[Intent], talk: str | None) -> tuple[str, ...]:
    """Of several batches that a deed or a measure of the raw meat fits, the speaker's own, where others have theirs.

    So it is of a deed that their own can be meant by, as the batch of the talk. A reading is of none by who sends it:
    one cook may read the thermometers of both.
    """
    mine = own(turn)
    return (mine,) if mine and (not those or mine in those or mine == talk) and all(map(_of_own, intents)) else those


def own(turn: Turn) -> str:
    """The one batch that the speaker began, where others have theirs; else ""."""
    rows = batches.open_here(turn)
    begun = [row.id for row in rows if row.owner == turn.person.id]
    return begun[0] if len(begun) == 1 and len(rows) > 1 else ""


def _of_own(intent: Intent) -> bool:
    raw = isinstance(intent, Change) and intent.changes.keys() <= several.OF_THE_RAW
    deed = isinstance(intent, StepDone | StepMissed | StepSkipped | Snooze)
    return raw or (deed and getattr(intent, "step", None) != Kind.LIGHT)  # one fire may be that of both


def _put(text: str, words: re.Pattern, name: str) -> str:
    """The line with the name in the place of each of the words."""
    found = words.search(text.lower())
    if found is None:
        return text
    it_is = " is" if any(part for part in found.groupdict().values()) else ""
    return f"{text[: found.start()]}{name.lower()}{it_is}{_put(text[found.end() :], words, name)}"
