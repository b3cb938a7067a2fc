"""«not the flat, the bacon», «bacon not flat», «no, the bacon»: the batch that was meant, where another was taken."""

from typing import Final

from bot.intents.context import Context
from core import patterns as re

_BESIDE: Final = re.compile(
    r"(?:no|nope|not|sorry|oops|i|we|meant|mean|the|that|thats|was|is|it|its|this|for|wrong|one|batch|instead|of|but|wait)"
)
_PUTS_RIGHT: Final = re.compile(r"\b(?:no|nope|not|meant|mean|wrong|instead)\b")
_DENIES: Final = ("not", "of")  # «the bacon, instead of the flat»


def other_meant(text: str, context: Context) -> str | None:
    """The id of the one batch that a plain text names and does not deny, where it says nothing else."""
    if len(context.batches) < 2 or not _PUTS_RIGHT.search(text):
        return None
    ids = {}
    for number, (id_, name) in enumerate(sorted(context.batches, key=lambda one: -len(one[1]))):
        ids[sign := f"<{'x' * (number + 1)}>"] = id_
        text = re.sub(rf"\b{re.escape(name.lower())}\b", sign, text)
    words = [one for one in text.replace(",", " ").split() if one != "the"]
    if any(one not in ids and not _BESIDE.fullmatch(one) for one in words):
        return None
    meant = {one for before, one in zip(["", *words], words, strict=False) if one in ids and before not in _DENIES}
    return ids[meant.pop()] if len(meant) == 1 else None
