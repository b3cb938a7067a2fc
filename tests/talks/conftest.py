"""Each talk is played once for all the tests that look at it."""

import pickle
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from pkgutil import resolve_name

import pytest

from bot import pictures
from bot.papers import forms
from tests.talks.performance import Performance, play
from tests.talks.player import Player
from tests.talks.talk import talk

FOLDER = Path(__file__).parent


@pytest.fixture(scope="session", autouse=True)
def made_here() -> Iterator[None]:
    """What is made apart is made here, of the same plain data: a talk is about its words; a process takes a second."""

    def here(work: str, *given: object) -> bytes:
        made: bytes = resolve_name(work)(*pickle.loads(pickle.dumps(given)))  # noqa: S301 - our own
        return made

    with pytest.MonkeyPatch.context() as patch:
        for room in (pictures, forms):
            patch.setattr(room, "apart", here)
        yield


@pytest.fixture(scope="session")
def played(tmp_path_factory: pytest.TempPathFactory) -> Callable[[Path], Performance]:
    """The performance of the talk in a file."""

    @cache
    def once(path: Path) -> Performance:
        return play(talk(path), tmp_path_factory.mktemp(path.stem))

    return once


@pytest.fixture
def player(tmp_path: Path) -> Iterator[Player]:
    """A house of one's own, spoken to line by line."""
    talking = Player(tmp_path)
    yield talking
    talking.restart()
