"""An update of the ready time with a reading, beside the bare array work that it cannot do without, in one run.

Goal of the project: at most 60 ms on one core for a cook of 12 h with 200 members. The roofline is numpy alone: for as
many steps and members as the update runs, the seven modes kept and pushed, the surface found and its balance evaluated.
"""

import time
from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from core.heat import filter as learning
from core.heat import ready
from core.heat.cook import Cook, History, Seen
from core.heat.filter import STEP_S
from core.heat.prior import MEMBERS
from core.heat.smoking import Run, simulate
from core.meat.cuts import cut
from core.meat.piece import piece

pytestmark = pytest.mark.benchmark

GOAL_MS = 60.0
HOUR = 3600.0
COOK = Cook(piece(cut("brisket_flat"), 5.2, 0.07), "ceramic", 121.0, 4.0, 90.0)
MODES = 7
FLUX = 14  # array operations of the balance at the surface: four powers, saturation, Lewis, Stefan, two slopes


def read(hours: int) -> History:
    """Core and pit once an hour, along the middle curve."""
    curve = ready.forecast(COOK).curve
    seen: list[Seen] = []
    for hour in range(1, hours + 1):
        seen += [
            Seen(hour * HOUR, "core", float(np.interp(hour, curve.hours, curve.p50))),
            Seen(hour * HOUR, "pit", 121.0),
        ]
    return History(tuple(seen), now_s=hours * HOUR)


def update(history: History, nudge: float) -> None:
    """The estimate after one more reading, nothing remembered of it."""
    last = history.seen[-2]
    moved = replace(last, celsius=last.celsius + nudge)
    ready.forecast(COOK, replace(history, seen=(*history.seen[:-2], moved, history.seen[-1])))


def best(work: Callable[[float], None], rounds: int = 15) -> float:
    """The best of some rounds on the processor's own clock, each a new reading. [ms]"""
    taken = []
    for number in range(rounds):
        began = time.process_time()
        work(0.01 * number)
        taken.append(time.process_time() - began)
    return 1000.0 * min(taken)


def steps_of(history: History, monkeypatch: pytest.MonkeyPatch) -> list[tuple[int, int]]:
    """Steps and members of every run that an update makes."""
    ran: list[tuple[int, int]] = []

    def counted(*told: object) -> Run:
        run = simulate(*told)  # type: ignore[arg-type]
        ran.append(run.core.shape)
        return run

    with monkeypatch.context() as patch:
        patch.setattr(ready, "simulate", counted)
        patch.setattr(learning, "simulate", counted)
        update(history, 0.5)
    return ran


def bare(ran: list[tuple[int, int]]) -> None:
    """The same arrays moved by numpy alone."""
    for steps, count in ran:
        amplitudes, keep = np.ones((MODES, count)), np.full((MODES, count), 0.9)
        gain, probe, surface = keep.copy(), keep.copy(), np.full(MODES, 0.5)
        row, core = np.ones(count), np.empty((steps, count))
        for step in range(steps):
            amplitudes *= keep
            row = surface @ amplitudes
            for _ in range(FLUX):
                row = row * 0.5
            amplitudes += gain * row
            core[step] = np.einsum("km,km->m", probe, amplitudes)


def test_an_update_is_quick(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    """With 3, 6 and 10 hourly readings; told in ms and as a multiple of the bare work, the latter held to 12."""
    assert MEMBERS == 200
    for hours in (3, 6, 10):
        history = read(hours)
        ran = steps_of(history, monkeypatch)
        ours, roof = best(lambda nudge, h=history: update(h, 1.0 + nudge)), best(lambda _, r=ran: bare(r), 5)
        length = ready.forecast(COOK, history).ready.p50
        with capsys.disabled():
            print(
                f"\n{hours} readings, cook of {length:.1f} h, {sum(s for s, _ in ran)} steps of {STEP_S:.0f} s: "
                f"{ours:.1f} ms, goal {GOAL_MS:.0f} ms; bare numpy {roof:.1f} ms, {ours / roof:.1f} times"
            )
        assert ours <= 12.0 * roof
