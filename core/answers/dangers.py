"""Emergencies and dangerous wishes, known by their words before any likeness is looked at; read from `dangers.toml`."""

import re
import tomllib
from functools import cache
from importlib import resources
from typing import Final

_WORD: Final = re.compile(r"[a-zäöüß0-9%]+")
_APOSTROPHES: Final = str.maketrans({"'": "", "’": ""})


def grave(question: str) -> str | None:
    """The entry for an emergency or a danger that the words name, however the rest of the line is worded."""
    plain = " ".join(_WORD.findall(question.lower().translate(_APOSTROPHES)))
    return next((entry for entry, words in _graves() if words.search(plain)), None)


@cache
def _graves() -> tuple[tuple[str, re.Pattern[str]], ...]:
    told = tomllib.loads((resources.files("core.answers") / "dangers.toml").read_text("utf-8"))
    return tuple((one["entry"], re.compile("|".join(one["words"]))) for one in told["grave"])
