"""What it costs to read a line: every line of the sample and of the unseen sets, the slowest in a hundred counted.

The budget is 5 ms at the 99th percentile, held as a ratio to taking apart one update of the channel in the same run.
"""

import csv
import json
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from bot.intents.context import Context
from bot.intents.read import read
from tests.afresh import afresh
from tests.talk_lines import KILOS, context

ROOM = Path(__file__).parents[1] / "rooms" / "intents"
BUDGET_MS = 5.0
RATIO = 2300  # an update is taken apart in 2.1 to 2.2 us where this was set; a line that took 5 ms would stand at that
UPDATE = json.dumps(
    {
        "update_id": 10_000_000,
        "message": {
            "message_id": 1,
            "date": 1_806_000_000,
            "chat": {"id": 1, "type": "private", "first_name": "Ida"},
            "from": {"id": 1, "is_bot": False, "first_name": "Ida", "language_code": "en"},
            "text": "flipped, fridge 3c, push dinner to 3",
        },
    }
)


def lines() -> list[str]:
    """Every line of the unseen sets."""
    found = []
    for path in sorted(ROOM.glob("unseen*.csv")):
        with path.open(encoding="utf-8", newline="") as file:
            found += [row["line"] for row in csv.DictReader(file, delimiter=";")]
    return found


def slowest(work: Callable[[], object], rounds: int = 5) -> float:
    """The best of a few rounds in seconds of the processor: what else the machine does is no cost of a line."""
    taken = []
    for _ in range(rounds):
        began = time.process_time()
        work()
        taken.append(time.process_time() - began)
    return min(taken)


@pytest.mark.benchmark
@pytest.mark.parametrize("phase", ["none", "curing", "cooking"])
def test_a_line_is_read_at_once(phase: str) -> None:
    """The 99th percentile stays under its ratio to taking one update apart, which every message pays."""
    where: Context = context(phase, KILOS)
    said = lines()
    read(said[0], where)
    each = sorted(slowest(lambda one=one: afresh(one, where)) for one in said)
    floor = slowest(lambda: [json.loads(UPDATE) for _ in range(100)]) / 100
    p99 = each[int(0.99 * len(each))]
    print(
        f"\n{phase}: p50 {1e3 * each[len(each) // 2]:.2f} ms, p99 {1e3 * p99:.2f} ms ({BUDGET_MS:g} ms is the budget)"
    )
    assert p99 / floor < RATIO
