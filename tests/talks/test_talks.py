"""Every talk of this folder, played through the whole house, with what must come back beside each line."""

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.talks.conftest import FOLDER
from tests.talks.performance import Performance
from tests.talks.talk import talk

TALKS = sorted(FOLDER.glob("*.chat"))


@pytest.mark.parametrize("path", TALKS, ids=lambda path: path.stem)
def test_talk(path: Path, played: Callable[[Path], Performance]) -> None:
    """What the talk expects of each line comes."""
    done = played(path)
    assert not done.failed, "\n" + "\n".join(done.failed)


@pytest.mark.parametrize("path", TALKS, ids=lambda path: path.stem)
def test_every_talk_claims_and_expects_something(path: Path) -> None:
    """A talk that expects nothing would prove nothing."""
    found = talk(path)
    assert found.claim.endswith(".")
    assert sum(len(line.expected) for line in found.lines) >= len(found.lines) / 2
