"""What a running bot depends on is reviewed, pin by pin: a renewed pin is read about before it lands."""

import re
from importlib import metadata
from pathlib import Path

TOP = Path(__file__).parents[2]
TESTS_ONLY = {"test", "check", "server"}


def plain(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name).lower()


def pins() -> dict[str, set[str]]:
    """Each package with the releases that are pinned, one for each Python."""
    found: dict[str, set[str]] = {}
    for line in (TOP / "deploy" / "constraints.txt").read_text("utf-8").splitlines():
        if (pin := re.match(r"([A-Za-z0-9._-]+)==([^ ;]+)", line)) is not None:
            found.setdefault(plain(pin[1]), set()).add(pin[2])
    return found


def reviewed() -> dict[str, set[str]]:
    rows = re.findall(
        r"^\| ([A-Za-z0-9._-]+) \| ([\d., a-z]+) \|", (TOP / "docs" / "dependencies.md").read_text("utf-8"), re.M
    )
    return {plain(name): set(releases.split(", ")) for name, releases in rows if name != "package"}


def needed(package: str, extras: tuple[str, ...] = ()) -> set[str]:
    """What a package needs, and what that needs, on this machine."""
    found: set[str] = set()
    for need in metadata.requires(package) or ():
        name, _, when = need.partition(";")
        extra = re.search(r"extra == ['\"]([^'\"]+)", when)
        if extra is not None and extra[1] not in extras:
            continue
        wanted = plain(re.split(r"[^A-Za-z0-9._-]", name.strip())[0])
        if wanted in pins() and wanted not in found:
            found |= {wanted} | needed(wanted)
    return found


def test_every_package_of_a_running_bot_is_reviewed() -> None:
    """Those that it needs, and those that they need, are in the review."""
    project = (TOP / "pyproject.toml").read_text("utf-8")
    ours = re.search(r"^dependencies = \[(.*?)^\]", project, re.M | re.S)
    assert ours is not None
    direct = {plain(name) for name in re.findall(r"\"([A-Za-z0-9-]+)[>=<\[]", ours[1])}
    everything = direct | {each for name in direct for each in needed(name)}
    assert len(direct) >= 10
    assert everything - set(reviewed()) == set()


def test_the_review_is_of_the_pinned_releases() -> None:
    """A release that differs from the pin was not looked at."""
    assert {name: pins().get(name) for name in reviewed()} == reviewed()
