"""A dose that no scale told: put in by the spoon, noted with both ends of what they may weigh, or told of by nobody."""

from collections.abc import Sequence
from typing import Any, Final

from bot import measures
from bot.conversation.understand import Understood
from bot.facts import facts
from bot.intents.gone_in import of_each
from bot.intents.normal import normal
from bot.intents.sums.figured import figured
from bot.reply import Reply
from bot.wording import mends, put_in
from core import patterns as re
from core.batch.assess import Assessment
from core.cure.dose import from_teaspoons
from core.service import batches
from core.service.turn import Turn

_OF_CURE: Final = re.compile(r"\b(?:cure|curing|pink)\b")


def by_spoon(turn: Turn, meant: Understood, text: str) -> Sequence[Reply]:
    """So many level spoons of curing salt in the batch in hand, or so much on each piece; else nothing.

    A ceiling is held to the heavy end of what they may weigh, the cure to the light one, until it is told by a scale.
    """
    a, line = meant.a, figured(normal(text, turn.person.language))
    if a is not None and a.batch.setup.pieces > 1 and (each := of_each(line)):
        return _noted(turn, a, {name: round(a.batch.setup.pieces * kg, 6) for name, kg in each.items()})
    told = [m for m in measures.find(line) if m.unit in ("tsp", "tbsp")]
    if a is None or a.dose is None or a.dose.limit is None or len(told) != 1 or not _OF_CURE.search(line):
        return ()
    pieces = a.batch.setup.pieces if line.endswith("each") else 1
    light, heavy = from_teaspoons(pieces * measures.from_house(told[0].value, "tsp"))
    changes = {"put_in_cure": light, "put_in_cure_most": heavy}
    return _noted(turn, a, changes, put_in.by_spoon())


def _noted(turn: Turn, a: Assessment, changes: dict[str, float], how: str = "") -> Sequence[Reply]:
    """What went in, and `how` it is told better."""
    noted = batches.change(turn, a.batch.id, dict(changes))
    said = mends.changed(noted, dict(changes))
    said = said if noted.after.ledger.thrown else f"{said}\n{how}".rstrip()
    return (Reply(said, facts=facts(noted.after), about=a.batch.id),)


def without_silence(a: Assessment, changes: dict[str, Any]) -> dict[str, Any]:
    """Without the silence about curing salt (`put_in_cure` None), where it was told or weighed, or none is due."""
    plain = a.dose is not None and a.dose.limit is None
    known = plain or "brine" in a.batch.done or a.batch.put_in.get("put_in_cure") is not None
    return {name: value for name, value in changes.items() if not (name == "put_in_cure" and value is None and known)}
