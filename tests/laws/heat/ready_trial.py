"""Trials of the ready time on cooks of the finer model, and the score.

`finer_cooks.json` keeps cooks of the finer model (seed 5), so that the ordinary tests need not run it; the slow
test runs it anew and holds the two equal.
"""

import json
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from core.heat.cook import Cook, History, Seen
from core.heat.ready import Estimate, forecast
from core.meat.cuts import cut
from core.meat.piece import piece
from tests.laws.heat.finer_cook import Truth, World
from tests.laws.heat.yard_readings import readings

KEPT = Path(__file__).parent / "finer_cooks.json"
KEPT_SEED, KEPT_COUNT = 5, 24
SHARES = (0.0, 0.25, 0.5, 0.75, 0.9)


@dataclass(frozen=True)
class Trial:
    """One cook: as its cook would describe it, what was read, when it truly was ready [h], what it truly lost."""

    cook: Cook
    seen: tuple[Seen, ...]
    ready: float
    lost: float


@dataclass(frozen=True)
class Score:
    """Share of the cook, median error in hours and as share of its length, and what the 80 % band held."""

    share: float
    error_h: float
    error_share: float
    held: float
    below: float  # true time below the band
    width_share: float


def trials(world: World, truth: Truth, seed: int) -> list[Trial]:
    """A trial of each cook; every other cook measured the thickness."""
    found = []
    for number, ready in enumerate(truth.ready):
        thickness = float(world.thickness[number]) if number % 2 == 0 else None
        meat = piece(cut("brisket_flat"), float(world.mass[number]), thickness)
        planned = Cook(meat, "ceramic", float(world.pit_set[number]), 4.0, float(world.target[number]))
        found.append(Trial(planned, readings(planned, truth, number, seed), float(ready), float(truth.lost[number])))
    return found


def known(trial: Trial, share: float) -> History:
    """What was known by a share of the cook's true length; nothing at 0."""
    if share == 0.0:
        return History()
    seconds = share * trial.ready * 3600.0
    return History(tuple(s for s in trial.seen if s.seconds <= seconds), now_s=seconds)


def estimates(cooks: Sequence[Trial], shares: Sequence[float] = SHARES) -> dict[float, list[tuple[Trial, Estimate]]]:
    """The estimates of each cook at each share of its true length."""
    return {share: [(t, forecast(t.cook, known(t, share))) for t in cooks] for share in shares}


def scores(found: dict[float, list[tuple[Trial, Estimate]]]) -> dict[float, Score]:
    """One line a share."""
    return {share: _score(share, pairs) for share, pairs in found.items()}


def _score(share: float, pairs: list[tuple[Trial, Estimate]]) -> Score:
    true = np.array([trial.ready for trial, _ in pairs])
    low, middle, high = (np.array([getattr(e.ready, p) for _, e in pairs]) for p in ("p10", "p50", "p90"))
    miss = np.abs(middle - true)
    return Score(
        share,
        float(np.median(miss)),
        float(np.median(miss / true)),
        float(np.mean((low <= true) & (true <= high))),
        float(np.mean(true < low)),
        float(np.median((high - low) / true)),
    )


def table(lines: dict[float, Score]) -> str:
    """The scores as text."""
    head = "share  error h  error %  held %  below %  width %"
    rows = [
        f"{s.share:5.2f} {s.error_h:8.2f} {100 * s.error_share:8.1f} {100 * s.held:7.0f} {100 * s.below:8.0f}"
        f" {100 * s.width_share:8.0f}"
        for s in lines.values()
    ]
    return "\n".join([head, *rows])


def keep(cooks: Sequence[Trial]) -> None:
    """Write the cooks beside this file."""
    rows = [
        {
            "mass_kg": t.cook.piece.mass,
            "thickness_m": t.cook.piece.thickness if t.cook.piece.measured else None,
            "pit_c": t.cook.pit_c,
            "target_c": t.cook.target_c,
            "ready_h": round(t.ready, 4),
            "lost": round(t.lost, 4),
            "seen": [[s.seconds, s.probe, s.celsius] for s in t.seen],
        }
        for t in cooks
    ]
    lines = ",\n".join(json.dumps(row) for row in rows)
    KEPT.write_text(f"[\n{lines}\n]\n", "utf-8")


def kept() -> list[Trial]:
    """The cooks that are kept beside this file."""
    return [_trial(row) for row in json.loads(KEPT.read_text("utf-8"))]


def _trial(row: dict) -> Trial:
    meat = piece(cut("brisket_flat"), row["mass_kg"], row["thickness_m"])
    planned = Cook(meat, "ceramic", row["pit_c"], 4.0, row["target_c"])
    return Trial(planned, tuple(Seen(*s) for s in row["seen"]), row["ready_h"], row["lost"])
