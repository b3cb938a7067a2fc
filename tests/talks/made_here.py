"""What is made apart is made here, of the same plain data: a talk is about its words, and a process takes a second."""

import pickle
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pkgutil import resolve_name

import pytest

from bot import pictures
from bot.papers import forms


@contextmanager
def made_here() -> Iterator[None]:
    """Pictures and papers are made in this process meanwhile."""
    with pytest.MonkeyPatch.context() as patch:
        for room in (pictures, forms):
            patch.setattr(room, "apart", _here)
        yield


def _here(work: str, *given: object) -> bytes:
    return _made(work, pickle.dumps(given))


@cache
def _made(work: str, given: bytes) -> bytes:
    """The same of the same: a talk that is played again with restarts draws its pictures once."""
    made: bytes = resolve_name(work)(*pickle.loads(given))  # noqa: S301 - our own
    return made
