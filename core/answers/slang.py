"""Words that mean the same to a cook, and words that say nothing of what is asked; read from `slang.toml`."""

import re
import tomllib
from collections.abc import Mapping
from functools import cache
from importlib import resources
from typing import Any


@cache
def alike() -> Mapping[str, str]:
    """What people type, as the word of the trade that it means."""
    return {said: word for word, others in _told()["alike"].items() for said in others}


@cache
def empty() -> frozenset[str]:
    """Words that say nothing of what is asked."""
    return frozenset(_told()["empty"]["words"])


@cache
def urgent() -> Mapping[str, tuple[str, ...]]:
    """Words of an emergency, by the entry that answers it before anything else is looked at."""
    return {entry: tuple(words) for entry, words in _told()["urgent"].items()}


@cache
def danger() -> Mapping[str, re.Pattern[str]]:
    """How a dangerous wish or a mishap is worded, by the entry that answers it."""
    return {entry: re.compile(words) for entry, words in _told()["danger"].items()}


def _told() -> dict[str, dict[str, Any]]:
    return tomllib.loads((resources.files("core.answers") / "slang.toml").read_text("utf-8"))
