"""What stands behind the answer to a question in the same line: «6.25, its 2 1/4 in thick and i want it dry»."""

from dataclasses import replace
from typing import Any, Final

from bot import measures
from bot.intents.asked_setup import SETUP_READERS
from bot.intents.clauses import sentences
from bot.intents.context import Context
from bot.intents.fields import stated
from bot.intents.intents import Change, Choose, Correct, Debrief, Intent, MoveDeadline, StepDone
from bot.intents.merged import merged
from bot.intents.rated import mark
from bot.intents.start import read_start
from core import patterns as re
from core.plan.steps import Kind

_OF_THE_PIECE: Final = frozenset({"cut", "mass", "thickness", "deadline"})
_SAID_WITH_IT: Final = frozenset({"method", "thickness", "purpose", "skin_on", "frozen"})
_WAY_BEHIND: Final = re.compile(r"\d.* (dry|wet)$")
_SAME_KG: Final = 0.02
_BEHIND: Final = re.compile(r"[,;]\s+|\s(?:and|btw|by the way|also|plus|but|n|&)\s")


def beside_answer(found: Intent, text: str, context: Context) -> list[Intent]:
    """The answer, and what else the line states or tells of the batch; nothing of it twice."""
    parts = [part.strip() for part in _BEHIND.split(text)]
    parts = parts if len(parts) > 1 else []
    if isinstance(found, Choose) and context.asked_of_start:
        return [_of_the_start(found, text, context)]
    if isinstance(found, Choose) and found.slot == "cure":  # «no idea, its 2 in thick»: what they do know is kept
        told = [one for part in parts for one in _told(part, replace(context, asked=None))]
        return merged([*(one for one in told if isinstance(one, Change)), found])
    if not isinstance(found, Change) or context.asked_of_start:
        return [found]
    found = replace(found, changes=found.changes | _by_its_words(text) | found.changes)
    here = replace(context, asked=None)
    told = [one for part in parts for one in _told(part, here)]
    more = [_of_the_weight(one, context) for one in told]
    more = [one for one in more if isinstance(one, Change | Correct | MoveDeadline | StepDone)]
    fields = found.changes.keys()
    return merged([found, *(one for one in more if not (isinstance(one, Change) and fields & one.changes.keys()))])


def _of_the_weight(one: Intent, context: Context) -> Intent:
    """«6.25, the flat is 7.2 not 7.5»: what is denied is its weight as it was typed, so that is put right at once."""
    if not isinstance(one, Correct) or one.value is None or one.was is None or one.probe or not context.mass:
        return one
    for unit in ("lb", "kg"):
        if abs(measures.to_house(one.was, unit) - context.mass) < _SAME_KG:
            return Change({"mass": measures.to_house(one.value, unit)})
    return one


def _of_the_start(found: Choose, text: str, context: Context) -> Intent:
    """The answer alone, or with all else that the line says of the piece: «2.8 kg, boneless, for sunday at 12»."""
    more = read_start(text, context) if found.slot in _OF_THE_PIECE else None
    if more is None or not (more.said.keys() - {found.slot}):
        return found
    unclear = tuple(one for one in more.unclear if not (found.slot == "cut" and one.startswith("meat:")))
    return replace(more, said={**more.said, found.slot: found.value}, unclear=unclear)


def _by_its_words(text: str) -> dict[str, Any]:
    """How it is, and is to be cured, said in one with the answer: «dry cure i think, 6.25 %», «6.25% 2 in dry»."""
    said = {name: value for name, value in stated(text).fields.items() if name in _SAID_WITH_IT}
    ends = _WAY_BEHIND.search(text)
    return {**said, "method": {"dry": "dry", "wet": "brine"}[ends[1]]} if ends else said


def _told(part: str, context: Context) -> list[Intent]:
    method = SETUP_READERS["method"](part, context)  # «i want it dry»
    return [method] if method else sentences(part, context)


def beside_the_meal(found: list[Intent], text: str, context: Context) -> list[Intent]:
    """What was read of a line, with the mark that it gives beside the meal that is eaten, and how it tasted."""
    eaten = any(isinstance(one, StepDone) and one.step == Kind.SERVE for one in found)
    if not eaten or any(isinstance(one, Debrief) for one in found):
        return found
    if given := mark(text):
        return [*found, Debrief(rated=given)]
    parts = _BEHIND.split(text)[1:]
    told = [one for part in parts for one in sentences(part.strip(), replace(context, asked=None))]
    return [*found, *(one for one in told if isinstance(one, Debrief) and one.salt is not None)]
