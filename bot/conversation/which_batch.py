"""Which of several batches is asked for: by its tub or place, by a reading that is named, or by what comes first."""

import re
from collections.abc import Sequence

from bot.conversation import of_a_day
from bot.conversation.understand import Understood
from bot.intents.intents import Ask
from bot.reply import Reply
from bot.wording import batches as several
from bot.wording import turning
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.service import batches
from core.service.turn import Turn

OF_A_TUB = re.compile(
    r"\b(?:which|what|where)\w*\b(?!.*\b(?:flip|turn))"
    r".*\b(?:tubs?|buckets?|bags?|box(?:es)?|containers?|shelf|drawer|fridge|freezer)\b"
)
A_READING = re.compile(r"(?<![\d.:])\d{2,3}(?:\.\d)?(?![\d.:])")
FIRST = re.compile(r"\b(?:first|next|urgent|soon(?:er|est)|before the other|earl(?:y|ier|iest)|do now)\b")
A_FLIP = re.compile(r"\b(?:flip\w*|turn(?:ed|ing)?)\b")
IN_THE_COLD = frozenset({Phase.CURING, Phase.DRYING, Phase.STORED})


def of_these(found: Sequence[Assessment], text: str) -> str:
    """Which of several batches is asked for: by its tub, by a reading that is named, or by what comes first."""
    if OF_A_TUB.search(text):
        cold = [a for a in found if a.batch.phase in IN_THE_COLD] if "fridge" in text else []
        return several.in_the_fridge(cold) if cold and len(cold) < len(found) else several.no_tubs()
    turned = [a for a in found if a.batch.phase is Phase.CURING and turning.flips(a)] if A_FLIP.search(text) else []
    if len(turned) == 1 and len(found) > 1:
        return several.turned(turned[0])
    for a in found:
        if named := several.read_as(a, [float(n) for n in A_READING.findall(text)]):
            return named
    return several.first(found[0]) if len(found) > 1 and FIRST.search(text) else ""


def on_a_day(turn: Turn, meant: Understood, intent: Ask) -> Sequence[Reply]:
    """What stands on a day, in the batch that is named, else in all."""
    rows = [meant.of(intent.batch)] if meant.sure or intent.batch else [row.id for row in batches.open_here(turn)]
    text = of_a_day.on(turn, intent.text, [batches.look(turn, key) for key in rows])
    about = rows[0] if len(rows) == 1 else None
    return (Reply(text, facts={"answer_kind": "batch", "topic": "agenda"}, about=about),)


def every(turn: Turn, text: str) -> Sequence[Reply]:
    """Every batch of the chat, and what is next in each; where a tub is asked for, that none is on record."""
    rows = sorted(batches.open_here(turn), key=lambda row: row.name)
    found = tuple(sorted((batches.look(turn, row.id) for row in rows), key=several.due))
    names = [a.batch.name for a in found]
    said = "\n".join(filter(None, (of_these(found, text.lower()), several.listed(found))))
    return (Reply(said, facts={"answer_kind": "batch", "topic": "batches", "batches": names}),)
