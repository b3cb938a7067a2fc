"""A talk on paper: what is said, what happens on stage, and what must come back. The format is in README.md here."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from tests.talks.expecting import Expectation

DEFAULT_START = ("2027-09-23T18:00", "Europe/Vienna")
_STAGE = re.compile(r"~\s*(start|restart|sends|again)\b\s*(.*)$")


@dataclass
class Line:
    """A line of a talk with its number in the file, and what is expected of the answers to it."""

    number: int
    text: str
    stage: tuple[str, str] | None = None
    expected: list[Expectation] = field(default_factory=list)


@dataclass(frozen=True)
class Talk:
    """A whole talk: the claim of its first comment, when and where it begins, and its lines."""

    path: Path
    claim: str
    start: str
    zone: str
    lines: tuple[Line, ...]


def talk(path: Path) -> Talk:
    """The talk of a file; raises ValueError, naming the line, where it cannot be read."""
    lines: list[Line] = []
    claim: list[str] = []
    for number, text in enumerate(path.read_text("utf-8").splitlines(), start=1):
        try:
            _read(number, text.strip(), lines, claim)
        except ValueError as wrong:
            raise ValueError(f"{path.name}:{number}: {wrong}") from wrong
    start, zone = _start(lines)
    return Talk(path, " ".join(claim), start, zone, tuple(line for line in lines if not _is_start(line)))


def script(path: Path) -> list[str]:
    """Only what people type and press in a talk."""
    return [line.text for line in talk(path).lines if line.stage is None]


def _read(number: int, text: str, lines: list[Line], claim: list[str]) -> None:
    if text.startswith("#") and not lines:
        claim.append(text.lstrip("# "))
    elif not text or text.startswith("#"):
        return
    elif text.startswith("<"):
        if not lines:
            raise ValueError("an expectation before anything was said")
        lines[-1].expected.append(Expectation.read(number, text))
    elif text.startswith("~"):
        lines.append(Line(number, text, _stage(text)))
    else:
        lines.append(Line(number, text))


def _stage(text: str) -> tuple[str, str]:
    found = _STAGE.match(text)
    if found is None:
        raise ValueError(f"no such stage business: {text}")
    return found[1], found[2].strip()


def _is_start(line: Line) -> bool:
    return line.stage is not None and line.stage[0] == "start"


def _start(lines: list[Line]) -> tuple[str, str]:
    first = next(_starts(lines), None)
    if first is None:
        return DEFAULT_START
    when, _, zone = first.partition(" ")
    return when, zone.strip() or DEFAULT_START[1]


def _starts(lines: list[Line]) -> Iterator[str]:
    return (line.stage[1] for line in lines if line.stage is not None and line.stage[0] == "start")
