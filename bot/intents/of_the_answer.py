"""What is said of the answer that was given last: why, that it is wrong, or that more is wanted."""

from typing import Final

from core import patterns as re

_WORDS: Final = (
    ("sources", re.compile(r"why|how come|how do you know(?: that)?|says who|sources?|where is that from|really")),
    ("wrong", re.compile(
        r"(?:no )?(?:(?:thats|that is|this is|(?:that|the|your|this) answer is) )?"
        r"(?:wrong|not true|incorrect|nonsense)(?: answer)?"
    )),
    ("more", re.compile(r"(?:tell me )?more")),
)  # fmt: skip


def of_the_answer(text: str) -> str | None:
    """Which of these a plain line is; None for any other."""
    bare = text.strip(" ?.")
    return next((slot for slot, words in _WORDS if words.fullmatch(bare)), None)
