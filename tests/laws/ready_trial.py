"""Trials of the ready time on cooks of the finer model: readings as a cook would send them, and the score."""

from dataclasses import dataclass

import numpy as np

from core.heat.cook import Cook, History, Seen
from core.heat.ready import Estimate, forecast
from core.meat.cuts import cut
from core.meat.piece import piece
from tests.laws.finer_cook import Truth, World

SHARES = (0.0, 0.25, 0.5, 0.75, 0.9)


@dataclass(frozen=True)
class Score:
    """Share of the cook, median error in hours and as share of its length, and what the 80 % band held."""

    share: float
    error_h: float
    error_share: float
    held: float
    below: float  # true time below the band
    width_share: float


def plan_of(world: World, number: int, measured: bool) -> Cook:
    """The cook as its cook would describe it."""
    thickness = float(world.thickness[number]) if measured else None
    meat = piece(cut("brisket_flat"), float(world.mass[number]), thickness)
    return Cook(meat, "ceramic", float(world.pit_set[number]), 4.0, float(world.target[number]))


def readings(world: World, truth: Truth, number: int, seed: int) -> tuple[Seen, ...]:
    """Core and pit every 30 to 60 min, rounded to 1 °F, with the error of a home thermometer."""
    draw = np.random.default_rng(seed * 1000 + number)
    seen, hour = [], draw.uniform(0.4, 0.9)
    while hour < truth.ready[number]:
        for probe, course, error in (("core", truth.core, 0.6), ("pit", truth.pit, 0.5)):
            celsius = float(np.interp(hour, truth.hours, course[:, number])) + draw.normal(0, error)
            seen.append(Seen(hour * 3600, probe, (round(celsius * 1.8 + 32) - 32) / 1.8))
        hour += draw.uniform(0.5, 1.0)
    return tuple(seen)


def history_at(seen: tuple[Seen, ...], seconds: float) -> History:
    """What was known by then."""
    return History(tuple(s for s in seen if s.seconds <= seconds), now_s=seconds)


def estimates(world: World, truth: Truth, seed: int, who: range) -> dict[float, list[tuple[float, Estimate]]]:
    """The estimates of each cook at each share of its true length, with that length."""
    found: dict[float, list[tuple[float, Estimate]]] = {share: [] for share in SHARES}
    for number in who:
        planned = plan_of(world, number, measured=number % 2 == 0)
        seen = readings(world, truth, number, seed)
        ready = float(truth.ready[number])
        for share in SHARES:
            told = history_at(seen, share * ready * 3600) if share else History()
            found[share].append((ready, forecast(planned, told)))
    return found


def scores(found: dict[float, list[tuple[float, Estimate]]]) -> list[Score]:
    """One line a share."""
    lines = []
    for share, pairs in found.items():
        true = np.array([ready for ready, _ in pairs])
        low, middle, high = (np.array([getattr(e.ready, p) for _, e in pairs]) for p in ("p10", "p50", "p90"))
        miss = np.abs(middle - true)
        lines.append(
            Score(
                share,
                float(np.median(miss)),
                float(np.median(miss / true)),
                float(np.mean((low <= true) & (true <= high))),
                float(np.mean(true < low)),
                float(np.median((high - low) / true)),
            )
        )
    return lines


def table(lines: list[Score]) -> str:
    """The scores as text."""
    head = "share  error h  error %  held %  below %  width %"
    rows = [
        f"{s.share:5.2f} {s.error_h:8.2f} {100 * s.error_share:8.1f} {100 * s.held:7.0f} {100 * s.below:8.0f}"
        f" {100 * s.width_share:8.0f}"
        for s in lines
    ]
    return "\n".join([head, *rows])
