"""Which of several batches is asked for: by its tub or place, by a reading that is named, or by what comes first."""

import re
from collections.abc import Sequence

from bot.wording import batches as several
from core.batch.assess import Assessment
from core.batch.batch import Phase

OF_A_TUB = re.compile(
    r"\b(?:which|what|where)\w*\b(?!.*\b(?:flip|turn))"
    r".*\b(?:tubs?|buckets?|bags?|box(?:es)?|containers?|shelf|drawer|fridge|freezer)\b"
)
A_READING = re.compile(r"(?<![\d.:])\d{2,3}(?:\.\d)?(?![\d.:])")
FIRST = re.compile(r"\b(?:first|next|urgent|soon(?:er|est)|before the other|earl(?:y|ier|iest)|do now)\b")
IN_THE_COLD = frozenset({Phase.CURING, Phase.DRYING, Phase.STORED})


def of_these(found: Sequence[Assessment], text: str) -> str:
    """Which of several batches is asked for: by its tub, by a reading that is named, or by what comes first."""
    if OF_A_TUB.search(text):
        cold = [a for a in found if a.batch.phase in IN_THE_COLD] if "fridge" in text else []
        return several.in_the_fridge(cold) if cold and len(cold) < len(found) else several.no_tubs()
    for a in found:
        if named := several.read_as(a, [float(n) for n in A_READING.findall(text)]):
            return named
    return several.first(found[0]) if len(found) > 1 and FIRST.search(text) else ""
