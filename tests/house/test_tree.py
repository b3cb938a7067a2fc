"""The tree: what may stand at the top, and what no file may name."""

import hashlib
import re
import subprocess
import sys
from pathlib import Path

import pytest

TOP = Path(__file__).parents[2]
ALLOWED = {"README.md", "DEVELOPERS.md", "pyproject.toml", "bot", "core", "tests", "deploy", "docs", "LICENSE"}
REQUIRED = ALLOWED | {".ci/run"}
# addresses of package registries, by the beginning of the SHA-256 of their names, so that this file names none
HOSTS = {
    "a4aa2ac280bb8d1a",
    "c899567ee9068517",
    "0dc11026ac75c015",
    "e680c440a2e92079",
}
HOST = re.compile(r"[a-z0-9-]+(?:\.[a-z0-9-]+)+", re.IGNORECASE)
HOMES = [f"/{place}/" for place in ("root", "home", "Users", "work", "farm", "mnt")]
LARGEST = 1_000_000  # bytes


def tracked() -> list[Path]:
    """The files of the project: those that git knows or would take; without git, all but what tools leave behind."""
    listed = subprocess.run(["git", "ls-files", "-co", "--exclude-standard"], cwd=TOP, capture_output=True, text=True)
    if listed.returncode == 0:
        found = [TOP / name for name in listed.stdout.splitlines()]
    else:
        found = [
            p for p in TOP.rglob("*") if not any(part.startswith(".") or part == "__pycache__" for part in p.parts)
        ]
    return [path for path in found if path.is_file()]


def texts() -> list[tuple[str, str]]:
    """Every text file of the project with its name."""
    found = []
    for path in tracked():
        try:
            found.append((str(path.relative_to(TOP)), path.read_text("utf-8")))
        except UnicodeDecodeError:
            continue
    return found


def digest(host: str) -> str:
    """The beginning of the SHA-256 of a name."""
    return hashlib.sha256(host.encode()).hexdigest()[:16]


def names_a_registry(line: str) -> bool:
    """Whether an address of a registry stands in a line, alone or as the end of a longer name."""
    for found in HOST.findall(line):
        parts = found.lower().split(".")
        ends = (".".join(parts[n:]) for n in range(len(parts) - 1))
        if any(digest(end) in HOSTS for end in ends):
            return True
    return False


def test_the_top_holds_what_it_may() -> None:
    """Nothing but the rooms, the pages and the licence lies at the top, dot-files and the lock aside."""
    tops = {path.relative_to(TOP).parts[0] for path in tracked()}
    assert {name for name in tops if not name.startswith(".")} - ALLOWED == set()


@pytest.mark.parametrize("name", sorted(REQUIRED))
def test_what_has_to_be_there_is_there(name: str) -> None:
    """Every part of the frame exists."""
    assert (TOP / name).exists()


def test_no_file_names_a_registry_or_a_home() -> None:
    """Packages are asked for by name; no address of a registry and no path of somebody's machine is written down."""
    home = re.compile("|".join(map(re.escape, HOMES)))
    found = [
        f"{name}:{n}"
        for name, text in texts()
        for n, line in enumerate(text.splitlines(), 1)
        if home.search(line) or names_a_registry(line)
    ]
    assert found == []


def test_an_address_of_a_registry_is_known(monkeypatch: pytest.MonkeyPatch) -> None:
    """An address is found alone, in a link and under another name; the name of a package is none."""
    monkeypatch.setattr(sys.modules[__name__], "HOSTS", {digest("index.example")})
    assert names_a_registry("https://index.example/simple")
    assert names_a_registry("see test.Index.Example.")
    assert not names_a_registry("python-telegram-bot>=22.6, core.answers.find, example.com")


def test_no_file_is_large() -> None:
    """A clone is quick: nothing is bigger than a megabyte."""
    assert [str(p.relative_to(TOP)) for p in tracked() if p.stat().st_size > LARGEST] == []


def test_every_link_of_a_page_leads_somewhere() -> None:
    """A page that points at a file of the project points at one that is there."""
    dead = []
    for name, text in texts():
        if name.endswith(".md"):
            for target in re.findall(r"\]\(([^)#:]+)(?:#[^)]*)?\)", text):
                if not (TOP / name).parent.joinpath(target).exists():
                    dead.append(f"{name}: {target}")
    assert dead == []


def test_every_file_that_a_page_names_is_there() -> None:
    """A path in `backticks` that begins in a room of the project exists."""
    path = re.compile(r"`((?:bot|core|tests|deploy|docs)/[\w./-]*\w/?)`")
    dead = []
    for name, text in texts():
        if name.endswith(".md"):
            dead += [
                f"{name}: {p}" for p in path.findall(text) if not (TOP / p).exists() and not list(TOP.glob(f"{p}.*"))
            ]
    assert dead == []
