"""The survivors that are explained: each is a line that still stands, and docs/science/safety.md counts as many."""

import re
import tomllib
from pathlib import Path

ROOT = Path(__file__).parents[2]
EXPLAINED = tomllib.loads((ROOT / "tests" / "mutants" / "explained.toml").read_text(encoding="utf-8"))


def test_every_explained_line_stands():
    """A line that was changed has no explanation any more: its survivors are looked at anew."""
    for module, reasons in EXPLAINED.items():
        (source,) = (p for p in (ROOT / "core").rglob(f"{module}.py") if p.parent.name in ("safety", "cure"))
        lines = {line.strip() for line in source.read_text(encoding="utf-8").splitlines()}
        assert {one["place"].split(" :: ")[0] for one in reasons} <= lines, module


def test_the_docs_count_as_many():
    """The table of docs/science/safety.md names each module that has such lines, and how many."""
    text = (ROOT / "docs" / "science" / "safety.md").read_text(encoding="utf-8")
    told = text.split("## Changes that no test can tell apart")[1]
    counted: dict[str, int] = {}
    for module, many in re.findall(r"^\| (\w+) \| (\d+) \|", told, re.MULTILINE):
        counted[module] = counted.get(module, 0) + int(many)
    assert counted == {module: len(reasons) for module, reasons in EXPLAINED.items()}
