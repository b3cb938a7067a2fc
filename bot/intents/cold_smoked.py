"""A piece that shall be smoked cold: no such plan is made, and what was said of the piece is not lost."""

from dataclasses import replace
from typing import Final

from bot.intents.context import Context
from bot.intents.intents import Start
from bot.intents.start import read_start
from core import patterns as re

COLD_SMOKED: Final = "cold_smoked"  # among what a start assumes: it was wished cold, and can be planned hot
_COLD: Final = re.compile(
    r"\bcold[- ]?(?:smok\w*|cured)|\bsmok\w* (?:it )?cold\b|\b(?:lox|nova|gravlax|gravad)\b(?: style)?"
    r"|\bkaltgeräuchert\w*|\bcold geräuchert\w*"
)
_STYLE: Final = re.compile(r"\bstyle\b|\bfrom (?:a |an |the |some )?|^(?:can|could) (?:i|we) ")


def read_cold_smoked(text: str, context: Context) -> Start | None:
    """A start with what was said of the piece, where its weight or its meal is told; whoever asks is answered."""
    if not _COLD.search(text) or context.asked_of_start:
        return None
    rest = " ".join(_STYLE.sub(" ", _COLD.sub(" ", text)).rstrip(" ?").split())
    start = read_start(f"start {rest}", replace(context, phase="none", deadline=None))
    told = start is not None and {"product", "cut"} & start.said.keys() and {"mass", "pieces"} & start.said.keys()
    return replace(start, assumed=(*start.assumed, COLD_SMOKED)) if start is not None and told else None
