"""What a line tells in passing that no reader took: a clause, or a weight, is said back and asked about, not lost.

A remark stays a remark: said back is only what weighs or measures something, and what is like the ways in which a deed
or a mishap of this phase is told.
"""

from collections.abc import Callable, Sequence
from typing import Final
from zoneinfo import ZoneInfo

from bot import measures
from bot.intents.clause import clause, is_nothing
from bot.intents.composed import TOLD, clauses_of
from bot.intents.context import SHOWN, Context
from bot.intents.feels import is_spoiled
from bot.intents.heard import of_values
from bot.intents.intents import Happened, Intent, Settings, Start, StepDone, Unclear
from bot.intents.likely import likely
from bot.intents.remarks import remark
from bot.intents.small import content
from bot.intents.vague import read_vague
from core import patterns as re

_SAID_ALIKE: Final = 0.18  # from here on a clause tells a deed of the phase; measured over the lines of the tests
_UNSAID: Final = frozenset({"mid_check"})  # «all good», «looks fine»: a look, and nothing is kept of it
_NEAR: Final = 0.006  # of a value: what a change of units leaves of it
_LONGEST: Final = 1.5  # m; «154 in flat» are no inches
_KINDS: Final = frozenset({"mass", "volume", "length", "fraction"})
_NOT_SO: Final = re.compile(r"\b(?:not|was|from|instead of|over|under|than|per|or|of|every|each|recipe \w+)(?: the)? $")
_A_DIAL: Final = re.compile(r"\bturn\w*(?: (?:it|that|them|the \w+))? (?:up|down|on|off)\b")  # of a fridge, and no bag
_A_RATE: Final = re.compile(
    r"^[a-z ]{0,16}\b(?:per|an?|each|to (?:the|an?|each)) (?:l|lit\w+|kg|kilo\w*|lb|pound|quart|gal\w*)\b"
)
_END: Final = re.compile(r"[,;]|\.(?!\d)|\s(?:and|but|for|at|in|on)\s|$")


def left_over(
    text: str, found: Sequence[Intent], context: Context, again: Callable[[str], list[Intent]]
) -> list[Intent]:
    """The question about what was left of a plain text, where all else of it was taken; nothing where nothing was.

    `again` reads another text in the same context: what goes without its clause as well as with it was not heard.
    """
    if not context.free or not found or not all(isinstance(one, (*TOLD, Start)) for one in found):
        return []
    if not any(isinstance(one, Unclear) for one in found) and (nose := _smelt(text, context)):
        return [nose]
    if weighed := _weighed(text, found, context):
        return [Unclear("rest", weighed[:SHOWN])]
    for part, others in clauses_of(text):
        if (like := _deeds(part, found, context)) and again(others) == list(found):
            return [Unclear("rest", part[:SHOWN], like)]
    return []


def _smelt(text: str, context: Context) -> Intent | None:
    """«flipped both, one smells off»: what a nose tells beside a deed is never passed over."""
    if context.phase == "none":
        return None
    for part, _ in clauses_of(text):
        bare = part.strip(" .!,")
        if is_spoiled(bare) or remark(bare, context.phase) == "smell":
            return read_vague(bare, context)
    return None


def _weighed(text: str, found: Sequence[Intent], context: Context) -> str:
    """All that has a weight or a size and is in nothing of what was taken, with the words behind it."""
    if any(_asks_itself(one) for one in found):
        return ""
    sizes = [m for m in measures.find(text) if m.kind in _KINDS and not _NOT_SO.search(text[: m.start])]
    sizes = [m for m in sizes if not (_A_RATE.match(text[m.end :]) or (m.kind == "length" and m.value > _LONGEST))]
    known = of_values(found, ZoneInfo(context.zone)) if sizes else ()
    left = [m for m in sizes if not any(abs(m.value - value) <= _NEAR * abs(value) for value in known)]
    ends = [_END.search(text, m.end) for m in left]
    return ", ".join(text[m.start : end.start() if end else len(text)] for m, end in zip(left, ends, strict=True))


def _asks_itself(one: Intent) -> bool:
    """What asks about its weights already, or where a scale is told of: «a scale that shows 1 g»."""
    begun = isinstance(one, Start) and (bool(one.unclear) or "mass" not in one.said)
    return begun or isinstance(one, Happened | Settings)


def _deeds(part: str, found: Sequence[Intent], context: Context) -> tuple[Intent, ...]:
    """What a clause that nobody read is like, but for what the rest of the line tells already."""
    if not content(part) or _A_DIAL.search(part) or not all(map(is_nothing, clause(part, context))):
        return ()
    told = {str(getattr(one, "step", None) or getattr(one, "what", "")).partition("/")[0] for one in found}
    like = likely(part, context.phase, _SAID_ALIKE)
    names = [str(one.step if isinstance(one, StepDone) else getattr(one, "what", "")) for one in like]
    if not like or not isinstance(like[0], StepDone | Happened) or names[0] in told | _UNSAID:
        return ()
    return tuple(one for one, name in zip(like, names, strict=True) if name and name not in told)[:2]
