"""The floors of the house: each room imports only what stands below it, and a step upwards is seen."""

import shutil
import subprocess
import sys
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import grimp
import pytest

TOP = Path(__file__).parents[2]
# one fault for each contract of pyproject.toml: the file, and the import that it may not have
FAULTS = {
    "core/meat/piece.py": "core.plan.steps",
    "core/plan/steps.py": "pint",
    "bot/wording/general.py": "core.service.turn",
    "bot/intents/rewriting/words.py": "bot.intents.temperatures.readings",
    "bot/intents/temperatures/bounds.py": "bot.intents.steps",
    "bot/intents/sums/pits.py": "bot.intents.start",
    "bot/notify.py": "telegram",
    "core/service/turn.py": "sqlalchemy",
}


def contracts(folder: Path) -> str:
    """What the checker says of a tree."""
    command = [Path(sys.executable).with_name("lint-imports"), "--no-cache"]
    return subprocess.run(command, cwd=folder, capture_output=True, text=True, timeout=120).stdout


def copy(folder: Path) -> Path:
    for room in ("core", "bot"):
        shutil.copytree(TOP / room, folder / room, ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(TOP / "pyproject.toml", folder)
    return folder


def test_the_floors_hold() -> None:
    """Every contract of pyproject.toml is kept."""
    assert f"Contracts: {len(FAULTS)} kept, 0 broken." in contracts(TOP)


def test_a_step_upwards_is_seen(tmp_path: Path) -> None:
    """One planted import for each contract breaks each contract: none of them is asleep."""
    tree = copy(tmp_path)
    for name, wrong in FAULTS.items():
        with (tree / name).open("a", encoding="utf-8") as opened:
            opened.write(f"\nimport {wrong}\n")
    assert f"Contracts: 0 kept, {len(FAULTS)} broken." in contracts(tree)


def in_order(graph: grimp.ImportGraph) -> None:
    """Raises CycleError where modules import each other in a circle."""
    TopologicalSorter({m: graph.find_modules_directly_imported_by(m) for m in graph.modules}).prepare()


def test_nothing_imports_itself_round_a_corner() -> None:
    """No circle of imports in the house; one that is planted is seen."""
    graph = grimp.build_graph("core", "bot", cache_dir=None)
    in_order(graph)
    graph.add_import(importer="bot.wording.numbers", imported="bot.wording.plans")
    with pytest.raises(CycleError):
        in_order(graph)
