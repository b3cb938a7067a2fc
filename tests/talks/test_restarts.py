"""A restart between any two lines forgets nothing: the same week says the same things."""

import asyncio
from collections.abc import Callable
from itertools import count
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from core.store import batches
from tests.talks.performance import Performance, play
from tests.talks.player import play_all
from tests.talks.talk import talk
from tests.talks.test_restarted_talks import heard as heard_of

WEEK = Path(__file__).parents[2] / "docs" / "week.chat"
SHORT = (
    "3.2 kg brisket flat for 2 october 13:00",
    "!6.25 %",
    "!Thickness",
    "48 mm",
    "+1h done",
    "+12h brine is 3 c",
    "!Meat into the cure: done",
    "+12h flipped",
    "95",
    "undo",
    "@2027-10-01T07:20 meat is on",
    "+5h 518",
    "!Forget it",
    "64/122",
)


@pytest.fixture
def _known_ids(monkeypatch: pytest.MonkeyPatch) -> None:
    """Batches are named by chance; here by number, so that two weeks can be compared."""
    monkeypatch.setattr(batches, "new_id", _Numbered())


class _Numbered:
    def __init__(self) -> None:
        self.numbers = count(1)

    def __call__(self, _: object) -> str:
        return f"batch{next(self.numbers)}"


def heard(said: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """What a person got, without where a picture was saved."""
    return [{**one, "picture": bool(one["picture"])} for one in said]


async def week(folder: Path, lines: tuple[str, ...], restarts: tuple[int, ...]) -> list[dict[str, Any]]:
    batches.new_id.__init__()  # type: ignore[misc]
    return heard(await play_all(folder, lines, restarts))


@pytest.fixture(scope="module")
def short(tmp_path_factory: pytest.TempPathFactory) -> list[dict[str, Any]]:
    """What the short talk says where nothing is restarted."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(batches, "new_id", _Numbered())
        return asyncio.run(week(tmp_path_factory.mktemp("through"), SHORT, ()))


def test_the_week_with_a_restart_after_every_line(tmp_path: Path, played: Callable[[Path], Performance]) -> None:
    """Texts, buttons and facts of the week are the same, whether the house ran through or began anew each time."""
    through = heard_of(played(WEEK))
    anew = heard_of(play(talk(WEEK), tmp_path, restart_after=lambda _: True))

    assert len(through) > len(talk(WEEK).lines)
    assert anew == through


@pytest.mark.usefixtures("_known_ids")
@settings(max_examples=5, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(restarts=st.sets(st.integers(0, len(SHORT) - 1), min_size=1, max_size=6))
async def test_a_restart_anywhere(
    tmp_path_factory: pytest.TempPathFactory, short: list[dict[str, Any]], restarts: set[int]
) -> None:
    """A half-asked question, a doubted reading, a correction: each survives a restart where it stands."""
    anew = await week(tmp_path_factory.mktemp("anew"), SHORT, tuple(sorted(restarts)))

    assert anew == short
