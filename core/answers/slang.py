"""Words that mean the same to a cook, and words that say nothing of what is asked; read from `slang.toml`."""

import tomllib
from collections.abc import Mapping
from functools import cache
from importlib import resources


@cache
def alike() -> Mapping[str, str]:
    """What people type, as the word of the trade that it means."""
    return {said: word for word, others in _told()["alike"].items() for said in others}


@cache
def empty() -> frozenset[str]:
    """Words that say nothing of what is asked."""
    return frozenset(_told()["empty"]["words"])


def _told() -> dict[str, dict[str, list[str]]]:
    return tomllib.loads((resources.files("core.answers") / "slang.toml").read_text("utf-8"))
