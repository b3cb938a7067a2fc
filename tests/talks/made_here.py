"""What is made apart is made here, of the same plain data: a talk is about its words, and a process takes a second."""

import pickle
from collections.abc import Iterator
from contextlib import contextmanager
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
    made: bytes = resolve_name(work)(*pickle.loads(pickle.dumps(given)))  # noqa: S301 - our own
    return made
