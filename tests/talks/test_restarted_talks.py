"""Every talk of this folder, with a restart of the house after every line: word for word the same."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tests.talks.conftest import FOLDER
from tests.talks.performance import Performance, play
from tests.talks.talk import talk

TALKS = sorted(FOLDER.glob("*.chat"))


def heard(done: Performance) -> list[dict[str, Any]]:
    """What people got, the chance names of batches and invitations by number, without the folders."""
    names: dict[str, str] = {}
    for one in done.said:
        if "batch" in one["facts"]:
            names.setdefault(one["facts"]["batch"], f"batch {len(names) + 1}")
        if "invitation" in one["facts"]:
            names.setdefault(one["facts"]["invitation"], f"invitation {len(names) + 1}")
    files = ("picture", "document")
    plain = json.dumps([{**one, **{each: Path(one.get(each) or "").name for each in files}} for one in done.said])
    for name, number in names.items():
        plain = plain.replace(name, number)
    return list(json.loads(plain))


@pytest.mark.slow
@pytest.mark.parametrize("path", TALKS, ids=lambda path: path.stem)
def test_a_talk_with_a_restart_after_every_line(
    path: Path, tmp_path: Path, played: Callable[[Path], Performance]
) -> None:
    """Texts, buttons, pictures and facts are the same, whether the house ran through or began anew each time."""
    anew = play(talk(path), tmp_path, restart_after=lambda _: True)

    assert heard(anew) == heard(played(path))
