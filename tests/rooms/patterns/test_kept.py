"""What patterns need is kept for the next start, and never stands in for what this version would read."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from core.patterns import kept
from core.patterns.kept import Kept, place
from core.patterns.needed import needs
from tests.house.measure import TOP

PATTERNS = (r"\bgrease\b", r"smok\w*|fire", r"^(?:so |and )?when\b", r"[^x]|fire", r"(?i)grease", r"\d+%$")
ASK = "import sys; from core import patterns; patterns.compile('smok|fire'); patterns.keep(); print(len(sys.modules))"


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / "deep" / "needs.json"


def filled(file: Path) -> Kept:
    first = Kept(file)
    for pattern in PATTERNS:
        assert first.needs(pattern, 0) == needs(pattern)
    first.keep()
    return first


def test_the_next_start_finds_the_same(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Without a look into any pattern, and in the same order."""
    filled(file)
    monkeypatch.setattr(kept, "needs", lambda *_: pytest.fail("it was kept"))
    second = Kept(file)
    assert [second.needs(pattern, 0) for pattern in PATTERNS] == [needs(pattern) for pattern in PATTERNS]


def test_flags_are_part_of_a_pattern(file: Path) -> None:
    """The same letters under another flag need something else."""
    first = filled(file)
    assert first.needs("grease", 2) == needs("grease", 2) != first.needs("grease", 0)


@pytest.mark.parametrize("found", ["", "[]", "{", '{"by": "another", "needs": {"0 smok": [["fire"]]}}', "\0\xff"])
def test_what_another_version_kept_counts_for_nothing(file: Path, found: str) -> None:
    """Nor does what is no such file; it is written anew."""
    file.parent.mkdir()
    file.write_text(found, "latin-1")
    one = Kept(file)
    assert one.needs("smok", 0) == needs("smok")
    one.keep()
    assert json.loads(file.read_text("utf-8"))["needs"] == {"0 smok": [sorted(need) for need in needs("smok")]}
    assert [each.name for each in file.parent.iterdir()] == [file.name]


@pytest.mark.skipif(os.geteuid() == 0, reason="nothing is forbidden to the superuser")
def test_where_nothing_may_be_written_all_goes_on(file: Path) -> None:
    """A folder of somebody else."""
    file.parent.mkdir()
    file.parent.chmod(0o500)
    assert Kept(file).needs("smok", 0) == filled(file).needs("smok", 0)


def test_a_folder_that_cannot_be_made_is_no_trouble(tmp_path: Path) -> None:
    """Where a file is in its way."""
    (tmp_path / "deep").write_text("in the way")
    filled(tmp_path / "deep" / "needs.json")


@pytest.mark.parametrize(("forbidden", "written"), [("1", 0), ("", 1)])
def test_it_is_kept_where_bytecode_is(tmp_path: Path, forbidden: str, written: int) -> None:
    """And only where that may be written."""
    said = {
        "PYTHONDONTWRITEBYTECODE": forbidden,
        "PYTHONPYCACHEPREFIX": str(tmp_path),
        "PYTHONPATH": str(TOP),
    }
    subprocess.run([sys.executable, "-c", ASK], env=os.environ | said, check=True, capture_output=True)
    assert len(list(tmp_path.rglob(kept.NAME))) == written
    assert place() is None or place().name == kept.NAME  # type: ignore[union-attr]
