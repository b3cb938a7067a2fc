"""What a talk expects of the answers to a line, and whether it came."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime
from itertools import pairwise
from typing import Any

Said = dict[str, Any]
_LINE = re.compile(r"<(@|!|#|\[|=|>|picture$|document\b)?\s*(.*)$", re.DOTALL)
_NUMBER = re.compile(r"-?\d+(?:\.(\d+))?$")
_RANGE = re.compile(r"(\S+) (\S+) to (\S+)$")
_BAND = re.compile(r"(\S+) (band|narrower)$")


class NotMet(Exception):
    """An expectation that was not met, and why."""


@dataclass
class Walk:
    """Where the expectations stand in the messages that came to one line; `widths` is kept through the talk."""

    came: Sequence[Said]
    widths: dict[str, float] = field(default_factory=dict)
    at: int | None = None

    @property
    def here(self) -> Said:
        """The message at which the walk stands: the one matched last, or the last that came."""
        if not self.came:
            raise NotMet("nothing came")
        return self.came[-1 if self.at is None else self.at]


@dataclass(frozen=True)
class Expectation:
    """One `<` line: its number in the file, its sign and what follows it."""

    number: int
    sign: str
    rest: str

    @classmethod
    def read(cls, number: int, text: str) -> "Expectation":
        """The expectation that a line states; raises ValueError where it states none."""
        found = _LINE.match(text)
        if found is None or (not found[2] and found[1] != "picture"):
            raise ValueError(f"nothing is expected by {text!r}")
        return cls(number, found[1] or "", found[2].strip())

    def check(self, walk: Walk) -> None:
        """Raises NotMet where the messages do not hold to it."""
        match self.sign:
            case "" | "@" | ">":
                self._text(walk)
            case "!":
                _demand(not any(self.rest in _flat(said) for said in walk.came), f"«{self.rest}» was said")
            case "#":
                _demand(len(walk.came) == int(self.rest), f"{len(walk.came)} messages came")
            case "[":
                wanted = [label for label in re.findall(r"\[([^\]]*)\]", f"[{self.rest}") if label]
                _demand(walk.here["buttons"] == wanted, f"the buttons are {walk.here['buttons']}")
            case "document":
                _demand((walk.here.get("document") or "").endswith(self.rest), f"it is {walk.here.get('document')}")
            case "picture":
                _demand(bool(walk.here["picture"]), "there is no picture")
            case _:
                _fact(self.rest, walk)

    def _text(self, walk: Walk) -> None:
        mark, text = "", self.rest
        if self.sign:
            mark, _, text = self.rest.partition(" ")
        for place in range(walk.at or 0, len(walk.came)):
            said = walk.came[place]
            marked = said["to"] == mark if self.sign == ">" else _sent_at(said, mark)
            if text.strip() in _flat(said) and marked:
                walk.at = place
                return
        raise NotMet(f"«{self.rest}» did not come")


def _demand(met: bool, why: str) -> None:
    if not met:
        raise NotMet(why)


def _flat(said: Said) -> str:
    """The text on one line: where it breaks is not what a talk is about."""
    return " ".join(said["text"].split())


def _sent_at(said: Said, when: str) -> bool:
    local = datetime.fromisoformat(said["at"])
    return f"{local:%Y-%m-%dT%H:%M}".endswith(when)


def _fact(rest: str, walk: Walk) -> None:
    """One statement about the facts of the message at which the walk stands."""
    facts = walk.here["facts"]
    if found := _BAND.match(rest):
        _band(found[1], found[2], facts, walk.widths)
    elif " < " in rest:
        values = [_value(word, facts) for word in rest.split(" < ")]
        _demand(all(a < b for a, b in pairwise(values)), f"not in order: {values}")
    elif found := _RANGE.match(rest):
        value, low, high = (_value(word, facts) for word in found.groups())
        _demand(low <= value <= high, f"{found[1]} is {value}")
    else:
        _plain(rest, facts)


def _plain(rest: str, facts: dict[str, Any]) -> None:
    key, _, wanted = rest.partition(" ")
    if wanted == "absent":
        _demand(key not in facts, f"{key} is {facts.get(key)!r}")
    elif wanted.startswith("has "):
        entry = wanted.removeprefix("has ")
        _demand(any(str(one).startswith(entry) for one in facts.get(key, ())), f"{key} is {facts.get(key)!r}")
    else:
        _demand(key in facts and _same(facts[key], wanted), f"{key} is {facts.get(key, 'not there')!r}")


def _same(found: Any, wanted: str) -> bool:
    """A number stands for what rounds to it; anything else for itself."""
    number = _NUMBER.match(wanted)
    if number is None or isinstance(found, bool | str):
        return str(found).lower() == wanted.lower()
    half = 0.5 * 10.0 ** -len(number[1] or "")
    return abs(float(found) - float(wanted)) <= half * (1 + 1e-9)


def _value(word: str, facts: dict[str, Any]) -> Any:
    """A number, a time, or the fact of that name as one."""
    if _NUMBER.match(word):
        return float(word)
    found = facts.get(word, word if word[:1].isdigit() else None)
    if found is None:
        raise NotMet(f"{word} is not there")
    return datetime.fromisoformat(found).timestamp() if isinstance(found, str) else float(found)


def _band(key: str, how: str, facts: dict[str, Any], widths: dict[str, float]) -> None:
    low, middle, high = (_value(f"{key}_p{part}", facts) for part in (10, 50, 90))
    _demand(low <= middle <= high, f"{key} is not in order: {low}, {middle}, {high}")
    before, widths[key] = widths.get(key), high - low
    if how == "narrower":
        _demand(before is not None and widths[key] < before, f"{key} is {widths[key]} wide after {before}")
