"""The set-up: a fresh clone has what it needs, and every package that we ask for is pinned."""

import re
import subprocess
import tomllib
from pathlib import Path

import pytest

TOP = Path(__file__).parents[2]
PROJECT = tomllib.loads((TOP / "pyproject.toml").read_text())["project"]
PIN = re.compile(r"([A-Za-z0-9_.-]+)==([A-Za-z0-9_.]+)( ; python_version (?:<|>=) '3\.\d+')?")


def pins() -> list[str]:
    lines = (TOP / "deploy/constraints.txt").read_text().splitlines()
    return [line for line in lines if line and not line.startswith("#")]


def plain(name: str) -> str:
    return re.sub(r"[-_.]+", "-", re.split(r"[\[<>=~! ;]", name)[0]).lower()


def test_every_pin_is_a_name_and_a_version() -> None:
    """A pin says which release of which package, for which Python, and no address to fetch it from."""
    assert [line for line in pins() if not PIN.fullmatch(line)] == []


def test_every_package_that_we_ask_for_is_pinned() -> None:
    """No dependency, of the chat, the tests or the checks, is left to the day of the installation."""
    extras = PROJECT["optional-dependencies"]
    asked = {plain(name) for name in [*PROJECT["dependencies"], *extras["test"], *extras["check"]]}
    assert asked - {plain(line) for line in pins()} == set()


def test_a_package_is_pinned_once_for_each_python() -> None:
    """Where a package stands twice, its two lines part the Pythons between them."""
    twice: dict[str, list[str]] = {}
    for line in pins():
        twice.setdefault(plain(line), []).append(line.partition(" ; ")[2])
    wrong = {
        name: marks
        for name, marks in twice.items()
        if marks != [""] and sorted(marks) != ["python_version < '3.12'", "python_version >= '3.12'"]
    }
    assert wrong == {}


@pytest.mark.parametrize("script", ["deploy/install", "deploy/chat", "deploy/test", ".ci/run"])
def test_the_scripts_are_sound_bash(script: str) -> None:
    """Every script parses, stops at the first error, and may be run as it is."""
    path = TOP / script
    text = path.read_text()
    assert text.startswith("#!/usr/bin/env bash\n")
    assert "set -euo pipefail" in text
    assert path.stat().st_mode & 0o111
    assert subprocess.run(["bash", "-n", path], capture_output=True, text=True).stderr == ""


def test_the_readme_says_the_commands_that_ci_runs() -> None:
    """The README's two commands stand alone on their lines, and CI calls the one for the tests."""
    readme = (TOP / "README.md").read_text().splitlines()
    assert "bash deploy/chat" in readme
    assert "bash deploy/test" in readme
    assert "bash deploy/test" in (TOP / ".ci/run").read_text()
