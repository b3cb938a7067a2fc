"""How many batches one account can carry: real plans, their reminders all at their own wall hours, sent at the pace.

What is measured is how late a reminder leaves since others fell due in the same minute. The worst case is one zone,
where everybody's flip is due at eight; beside it the same people spread over the zones of the world.
"""

from datetime import UTC, datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import numpy as np
import pytest
from sqlalchemy import select

from core.store.tables import outgoing
from tests.talks.player import Player

pytestmark = pytest.mark.benchmark

VIENNA = ZoneInfo("Europe/Vienna")
BEGUN = {
    "2027-09-23T18:00": "3.2 kg brisket flat for 2 october 13:00, 48 mm, cure is 6.25 %",
    "2027-08-30T08:00": "2.3 kg pork belly for 12 september 9:00, skin off, cure is 6.25 %",
    "2027-11-30T08:00": "8 kg ham bone in for 25 december 13:00, cure is 6.25 %",
    "2027-02-26T18:00": "1.8 kg turkey breast for 8 march 13:00, cure is 6.25 %, 70 mm",
    "2027-03-03T08:00": "3 kg corned beef brisket for 17 march 18:00, cure is 6.25 %, 50 mm",
}
A_SECOND = 29 / 1.03  # the pace of one account, bot/channels/telegram/traffic.py
DAY = 86_400
SPREAD = 12 * 3_600  # people of the whole world; hardly anybody lives around the date line


async def seconds_of(folder: Path, start: str, line: str) -> list[float]:
    """When the reminders of one batch are due, in seconds since the midnight before it was begun."""
    player = Player(folder, start=start)
    await player.play(line)
    with player.house().house.reading() as tx:
        firsts = outgoing.c.sort == "reminder", outgoing.c.occurrence == 0
        due = tx.execute(select(outgoing.c.due_at).where(*firsts)).scalars().all()
    player.restart()
    midnight = datetime.fromisoformat(start).replace(hour=0, minute=0, tzinfo=VIENNA).astimezone(UTC)
    return [(at - midnight).total_seconds() for at in due]


def lateness(plans: list[list[float]], batches: int, spread: float) -> np.ndarray:
    """How late each reminder of a day leaves, where so many batches of these plans are always under way. [s]"""
    dice = np.random.default_rng(8)
    days = max(max(plan) for plan in plans) // DAY + 1
    arrivals = []
    for plan in plans:
        # a batch that is under way began on any of the days before: today it has what its plan has for that day
        shift = dice.uniform(0, spread, batches // len(plans)) // 900 * 900
        began = dice.integers(0, int(days), batches // len(plans)) * DAY
        for at in plan:
            today = at - began + shift
            arrivals.append(today[(today >= 0) & (today < DAY)])
    due = np.sort(np.concatenate(arrivals))
    # each leaves a beat after the one before it, or when it is due
    beats = np.arange(len(due)) / A_SECOND
    return np.maximum.accumulate(due - beats) + beats - due


async def test_what_one_account_carries(tmp_path: Path) -> None:
    """The table of docs/science/scale.md: lateness by how many batches are under way, in one zone and in many."""
    plans = [await seconds_of(tmp_path / start[:10], start, line) for start, line in BEGUN.items()]
    assert all(plans), [len(plan) for plan in plans]
    print(f"\nreminders of a batch: {[len(plan) for plan in plans]}")
    for name, spread in (("one zone", 1.0), ("the world", SPREAD)):
        for batches in (1_000, 10_000, 100_000, 1_000_000):
            late = lateness(plans, batches, spread)
            p50, p99, last = np.percentile(late, [50, 99, 100])
            print(f"{name}, {batches:>9,} batches, {len(late):>9,} reminders a day: late by p50 {p50:.1f} s, "
                  f"p99 {p99:.0f} s, the last {last:.0f} s")  # fmt: skip
    assert np.percentile(lateness(plans, 10_000, 1.0), 99) <= 120
