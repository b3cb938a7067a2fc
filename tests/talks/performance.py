"""A talk played through the whole house, line by line, and what did not come as it should."""

import asyncio
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from bot.channels.lines import BadLine
from tests.talks.expecting import NotMet, Walk
from tests.talks.player import Player
from tests.talks.talk import Line, Talk


@dataclass
class Performance:
    """What came to each line of a talk, and the expectations that were not met."""

    talk: Talk
    came: list[tuple[Line, list[dict[str, Any]]]] = field(default_factory=list)
    failed: list[str] = field(default_factory=list)

    @property
    def said(self) -> list[dict[str, Any]]:
        """Everything that the bot sent."""
        return [said for _, came in self.came for said in came]


def play(talk: Talk, folder: Path, *, restart_after: Callable[[int], bool] = lambda _: False) -> Performance:
    """A talk from its first line to its last, with a restart after each line whose place in it is named."""
    return asyncio.run(_play(talk, folder, restart_after))


async def _play(talk: Talk, folder: Path, restart_after: Callable[[int], bool]) -> Performance:
    player = Player(folder, talk.start, talk.zone)
    done, widths = Performance(talk), dict[str, float]()
    for place, line in enumerate(talk.lines):
        came = await _act(player, line, done)
        done.came.append((line, came))
        done.failed += _unmet(talk, line, Walk(came, widths))
        if restart_after(place):
            player.restart()
    player.restart()
    return done


async def _act(player: Player, line: Line, done: Performance) -> list[dict[str, Any]]:
    match line.stage:
        case None:
            try:
                return await player.play(_with_code(line.text, done))
            except BadLine as wrong:
                done.failed.append(f"{done.talk.path.name}:{line.number}: «{line.text}»: {wrong.why}")
                return []
        case ("restart", _):
            player.restart()
            return []
        case ("again", _):
            return await player.again()
        case ("sends", kind):
            return await player.send(other=kind)
        case business:
            raise ValueError(f"line {line.number}: {business}")


def _with_code(text: str, done: Performance) -> str:
    """The line with the invitation that was given last, which nobody knows beforehand."""
    codes = (said["facts"]["invitation"] for said in reversed(done.said) if "invitation" in said["facts"])
    return text.replace("CODE", next(codes)) if "CODE" in text else text


def _unmet(talk: Talk, line: Line, walk: Walk) -> list[str]:
    """The expectations of a line that were not met, each with what came instead."""
    failed = []
    for expectation in line.expected:
        try:
            expectation.check(walk)
        except NotMet as why:
            came = "".join(f"\n    | {said['at'][:16]} {said['text']}" for said in walk.came)
            failed.append(f"{talk.path.name}:{expectation.number}: to «{line.text}»: {why}{came}")
    return failed
