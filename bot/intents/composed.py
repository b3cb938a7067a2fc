"""A line of several clauses: what one of them tells when it stands alone is not lost over what another one tells.

The readers look at a line as a whole first, and whichever knows it takes it. Here each clause is looked at alone, and
what it says beyond what was taken is added; where that would gainsay what was taken, nothing is.
"""

from collections.abc import Iterator, Sequence
from typing import Final

from bot.intents.clause import clause, is_nothing
from bot.intents.context import Context
from bot.intents.intents import (
    Change,
    Correct,
    Debrief,
    HandOver,
    Happened,
    Intent,
    MoveDeadline,
    Pause,
    Question,
    Reading,
    Settings,
    Snooze,
    Start,
    StepDone,
    StepMissed,
    StepSkipped,
    Undo,
)
from bot.intents.small import words
from core import patterns as re
from core.plan.steps import Kind

_TOLD_TWICE: Final = (  # pairs of which the second is the first in other words
    {("happened", "left_out"), ("step", Kind.OUT)},
    {("step", Kind.BRINE), ("step", Kind.INTO_CURE)},  # «brine made and in the fridge»
    {("step", Kind.THAW), ("field", "frozen")},
    {("happened", "lid"), ("step", Kind.FLIP)},  # «spritzed and turned it», on the grate
    {("happened", "frozen"), ("field", "frozen")},
)
TOLD: Final = (
    Change, Debrief, HandOver, Happened, MoveDeadline, Pause, Reading, Settings, Snooze, StepDone, StepMissed,
    StepSkipped,
)  # fmt: skip
_GAINSAYS: Final = (Correct, Undo, Question)  # beside a second thought a clause is read by that, and not alone
_BETWEEN: Final = re.compile(r",(?!\d\d?(?!\d))\s*|[;!]+\s*|(?<!\d)\.\s+|\s+(?:and|&|n|but|plus)\s+")
_SCRAPS: Final = words(  # what makes no clause of its own: an hour, a size, a day, a word without a deed
    """
    a an at to in on or from about around like only please pls then half quarter three maybe uhr am pm kg lb lbs oz
    g mm cm c f oclock h hr hrs later earlier morning evening night noon mon tue wed thu fri sat sun tomorrow flip flips
    it me ping pepper coriander ready good fine great nice perfect calm resting soaking cooling holding climbing
    dropping rising no rush hurry degree degrees
    """
)
_SCRAP: Final = re.compile(r"[\d./:]+(?:[ap]m|h|kg|lbs?|g|mm|cm|c|f)?|(?:inch|hour|day|week|min)\w*|\w+day")
_AN_ASIDE: Final = re.compile(  # told of what was told, denied, gone by, or asked
    r"\b(?:tell|told|say|said|mention\w*|forgot to|not|was|were|came back|power)\b"
    r"|\?|^(?:may|can|could|should|shall|would|do|does|did|is|are|what|when|how|why|where|who|if|ok to)\b"
    r"|\bhalf (?:past )?\d|^(?:after|before|with) \w+$"
)
_THERMOMETER: Final = re.compile(r"\b(?:pit|smoker|grill|core|meat|fridge|brine|internal)\b|^\d{3}$")
_WEIGHS: Final = re.compile(r"\b(?:weigh\w*|after|yield|finished|cooked|came out)\b")
MOST: Final = 4  # clauses of a line


def composed(text: str, found: list[Intent], context: Context) -> list[Intent]:
    """What was read of a plain text, with what its clauses tell beyond it."""
    if not context.free or not found or any(isinstance(one, _GAINSAYS) for one in found):
        return found
    if not any(isinstance(one, (*TOLD, Start)) for one in found):
        return found
    have, more = set(signs(found)), []
    for part, _ in clauses_of(text):
        alone = sure(clause(part, context))
        told = set(signs(alone))
        if context.phase == "none" and not all(isinstance(one, Settings) for one in alone):
            continue  # «remind me at 7am and 9pm»: nothing is under way that could be put off
        if alone and not told & have and not _at_odds(alone, found, part):
            more += alone
            have |= told
    settings = [one for one in more if isinstance(one, Settings)]
    return [*settings, *found, *(one for one in more if one not in settings)]


def clauses_of(text: str) -> Iterator[tuple[str, str]]:
    """Each clause of a line of several that is no scrap and no aside, and the line without it."""
    parts = [part for part in _BETWEEN.split(text) if part]
    if not 2 <= len(parts) <= MOST:
        return
    for place, part in enumerate(parts):
        if not (_is_scrap(part) or _AN_ASIDE.search(part)):
            yield part, ", ".join(parts[:place] + parts[place + 1 :])


def _is_scrap(part: str) -> bool:
    return all(word in _SCRAPS or _SCRAP.fullmatch(word) for word in part.strip(" .?,").split())


def sure(said: Sequence[Intent]) -> list[Intent]:
    """What a clause tells, where it tells nothing else that would have to be asked about."""
    return list(said) if all(isinstance(one, TOLD) and _tells(one) for one in said) else []


def _tells(one: Intent) -> bool:
    """Whether it is more than a nod or a plan: a deed by its name, a setting by its value, a call by its hour."""
    match one:
        case StepDone(step=None) | StepMissed(step=None) | StepSkipped(step=None) | Snooze(until=None, by=None):
            return False
        case Debrief(mass=None, grey=None, salt=None, hours=None, rated=None):
            return False
        case StepDone(step=Kind.RINSE, detail=taste):
            return not taste
        case Settings(changes=changes):
            return bool(changes)
        case _:
            return not is_nothing(one)


def _at_odds(alone: Sequence[Intent], found: Sequence[Intent], part: str) -> bool:
    """Whether what a clause tells would be taken in two senses, or is none of what was begun beside it."""
    if any(isinstance(one, Start) for one in found):
        return not all(isinstance(one, Settings) for one in alone)
    if any(isinstance(one, Reading) for one in alone) and not _THERMOMETER.search(part):
        return True  # «fridge 38 and 41 in the door»
    if any(isinstance(one, Debrief) and one.mass for one in alone) and not _WEIGHS.search(part):
        return True
    told = set(signs((*alone, *found)))
    return any(pair <= told for pair in _TOLD_TWICE) or _two_hours(alone, found)


def _two_hours(alone: Sequence[Intent], found: Sequence[Intent]) -> bool:
    """Whether two hours are told of what can have one: a meal, a call, how long somebody minds it."""
    timed = [one for one in (*alone, *found) if isinstance(one, MoveDeadline | Snooze)]
    undated = any(isinstance(one, Change) and one.changes.get("deadline", "") is None for one in (*alone, *found))
    minded = any(isinstance(one, HandOver) and one.at is None for one in found)
    away = minded and any(isinstance(one, Pause) for one in alone)
    return len(timed) > 1 or (undated and bool(timed)) or away


def signs(intents: Sequence[Intent]) -> Iterator[tuple[str, str]]:
    """By what two readings of a line are told to say the same."""
    for intent in intents:
        match intent:
            case Change(changes=fields) | Settings(changes=fields) | Start(said=fields):
                yield from (("field", "put_in_water" if name == "water_kg" else name) for name in fields)
            case MoveDeadline():
                yield "field", "deadline"
            case Reading(temperatures=temperatures):
                yield from (("read", str(t.probe)) for t in temperatures)
            case (
                StepDone(step=str(step))
                | StepMissed(step=str(step))
                | StepSkipped(step=str(step))
                | Snooze(step=str(step))
            ):
                yield "step", step.partition("/")[0]
            case Happened(what=what):
                yield "happened", what
            case _:
                yield type(intent).__name__, ""
