"""Questions put to the whole house, each by a stranger of its own with no batch under way."""

import asyncio
import csv
from collections import Counter
from pathlib import Path
from typing import Any

from tests.talks.player import Player

HERE = Path(__file__).parent
Row = dict[str, str]


def table(name: str) -> list[Row]:
    """The rows of a set of questions."""
    return list(csv.DictReader((HERE / name).read_text("utf-8").splitlines()))


def asked(folder: Path, questions: list[str]) -> list[dict[str, Any]]:
    """What the first message back says of itself, question by question; its words are `said`."""

    async def all_of_them() -> list[dict[str, Any]]:
        player = Player(folder, start="2027-03-01T08:00")
        said = [await player.send(chat=f"c{n}", person=f"p{n}", text=text) for n, text in enumerate(questions)]
        player.restart()
        return [messages[0]["facts"] | {"said": messages[0]["text"]} for messages in said]

    return asyncio.run(all_of_them())


def answered_by(facts: dict[str, Any]) -> str:
    """The entry, the sum or the topic that answered."""
    if "sum" in facts:
        return f"sum:{facts['sum']}"
    if facts.get("topic") in ("dose_for", "judge"):
        return "sum:dose" if facts["topic"] == "dose_for" else "ask:judge"
    found = facts.get("entry", "")
    return "poison" if found == "poison_centre" else str(found)


def verdict(expected: str, facts: dict[str, Any]) -> str:
    """right, guessed (right, and named as a guess), offered, wrong, declined; off topic ("") it is right to decline."""
    kind = facts.get("answer_kind", "")
    if not expected:
        return "declined off topic" if kind == "declined" else "off topic answered"
    if answered_by(facts) == expected:
        return "guessed" if facts.get("guessed") else "right"
    offered = facts.get("offered", [])
    if offered:
        return "offered" if expected in offered else "others offered"
    return "declined" if kind in ("declined", "") else "wrong"


def confusion(rows: list[Row], found: list[dict[str, Any]]) -> Counter[str]:
    """How many questions of a set were met how."""
    return Counter(verdict(row["expected"], facts) for row, facts in zip(rows, found, strict=True))
