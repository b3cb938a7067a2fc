"""Each talk is played once for all the tests that look at it."""

from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path

import pytest

from tests.talks.made_here import made_here
from tests.talks.performance import Performance, play
from tests.talks.player import Player
from tests.talks.talk import talk

FOLDER = Path(__file__).parent


@pytest.fixture(scope="package", autouse=True)
def _made_here() -> Iterator[None]:
    """A picture costs a talk no process."""
    with made_here():
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
