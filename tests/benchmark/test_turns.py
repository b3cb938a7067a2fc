"""What a turn computes, by kind of message: beside a turn that finds no batch, and how much of it is the physics.

The floor is what every message costs: its key taken, the line read, a reply worded and put in, all in one transaction.
"""

import os
import statistics
import time
from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any

import pytest

from bot.assembly import Built, build, newcomer
from bot.reply import Message, Outgoing
from core.cure import penetration
from core.heat import doubt, filter, ready, wrap_by
from tests.benchmark.many import begun, monday

ROUNDS = 12
CURING = ("fridge {n} c", "flip done", "undo", "what now", "plan", "is it safe", "help", "settings", "{mm} mm")
COOKING = ("core {core}, pit 110", "what now", "when is it done", "is it safe", "thanks")
TO_THE_FIRE = ("out of the cure", "rinsed", "dried", "lit it", "meat is on", "core 20, pit 108", "core 27, pit 109")
WITHIN = 8.0  # times the floor (itself a third cheaper than when it was 6), for a question about a batch in its cure

pytestmark = pytest.mark.benchmark


class Talker:
    """One chat on a store in memory, on a clock of its own."""

    def __init__(self) -> None:
        async def send(_: Outgoing) -> str:
            return "1"

        self.built: Built = build("sqlite://", newcomer("Europe/Vienna"), send).without_facts()
        self.now: datetime = monday()
        self.said = 0

    def says(self, text: str) -> float:
        """Say a line; what the processor took for it. [ms]"""
        self.said += 1
        self.now += timedelta(seconds=20)
        message = Message(str(self.said), "7", "7", "Ada", self.now, text, ref=f"7:{self.said}")
        began = time.process_time()
        assert self.built.receive(message, self.now)
        return (time.process_time() - began) * 1e3


class Physics:
    """How long the solvers were at work. [ms]"""

    def __init__(self, patch: pytest.MonkeyPatch) -> None:
        self.took = 0.0
        for room, name in ((ready, "simulate"), (filter, "simulate"), (doubt, "simulate"), (wrap_by, "simulate")):
            patch.setattr(room, name, self._timed(getattr(room, name)))
        patch.setattr(penetration, "course", self._timed(penetration.course))

    def _timed(self, solve: Callable[..., Any]) -> Callable[..., Any]:
        def timed(*given: Any, **named: Any) -> Any:
            began = time.process_time()
            try:
                return solve(*given, **named)
            finally:
                self.took += (time.process_time() - began) * 1e3

        return timed


def costs(talker: Talker, kinds: tuple[str, ...], physics: Physics, every: timedelta) -> dict[str, tuple[float, float]]:
    """Of each kind what a turn takes, and the part of it that is the physics. [ms, -]"""
    found: dict[str, list[tuple[float, float]]] = {kind: [] for kind in kinds}
    for number in range(ROUNDS):
        for kind in kinds:
            talker.now += every
            text = kind.format(n=2.5 + 0.1 * number, mm=44 + number, core=55 + number / 2)
            physics.took = 0.0
            took = talker.says(text)
            found[kind].append((took, physics.took / took))
    return {kind: tuple(map(statistics.median, zip(*those[2:], strict=True))) for kind, those in found.items()}  # type: ignore[misc]


def test_what_a_turn_computes(monkeypatch: pytest.MonkeyPatch) -> None:
    """In the cure a question costs no more than a few times the floor; at the fire half of a reading is the physics."""
    physics = Physics(monkeypatch)
    nobody, curing, cooking = Talker(), Talker(), Talker()
    floor = statistics.median(nobody.says("thanks") for _ in range(ROUNDS))
    for talker in (curing, cooking):
        for line in begun(talker.now):
            talker.says(line)
    for line in TO_THE_FIRE:
        cooking.now += timedelta(minutes=40)
        cooking.says(line)
    in_cure = costs(curing, CURING, physics, timedelta(0))
    at_fire = costs(cooking, COOKING, physics, timedelta(minutes=6))
    print(f"\nthe floor: {floor:.1f} ms of the processor; load {os.getloadavg()[0]:.1f}")
    for where, kinds in (("in the cure", in_cure), ("at the fire", at_fire)):
        for kind, (took, share) in kinds.items():
            print(f"{where}: {kind:22} {took:5.1f} ms, {took / floor:4.1f} times, physics {share:4.0%}")
    for talker in (nobody, curing, cooking):
        talker.built.close()

    assert in_cure["what now"][0] <= WITHIN * floor
    assert at_fire["core {core}, pit 110"][1] >= 0.4
