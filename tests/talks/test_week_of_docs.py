"""The scripted week of the docs, run by the command of the README: it plays to its end, and ends safe."""

import json
import os
import re
import subprocess
import sys
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).parents[2]
COMMAND = re.compile(r"^bash deploy/chat (--script .*)$", re.MULTILINE)


@pytest.fixture(scope="module")
def said(tmp_path_factory: pytest.TempPathFactory) -> list[dict[str, Any]]:
    """Everything that is said to the README's command, with --json."""
    command = COMMAND.search((ROOT / "README.md").read_text("utf-8"))
    assert command is not None
    pictures = {"SALTBELL_PICTURES": str(tmp_path_factory.mktemp("pictures"))}
    done = subprocess.run(
        [sys.executable, "-m", "bot", "chat", *command[1].split(), "--json"],
        cwd=ROOT, env={**os.environ, **pictures}, capture_output=True, timeout=120, text=True, encoding="utf-8",
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert done.stderr == ""
    return [json.loads(line) for line in done.stdout.splitlines()]


def answers(said: list[dict[str, Any]], topic: str) -> list[dict[str, Any]]:
    return [one for one in said if one["facts"].get("topic") == topic]


def test_it_ends_safe(said: list[dict[str, Any]]) -> None:
    """Asked on Saturday, the bot calls the batch safe to serve, by the cooling rule and the core floor."""
    verdict = answers(said, "safe")[-1]

    assert verdict["text"].startswith("Safe to serve")
    assert verdict["facts"]["verdict"] == "safe"
    assert verdict["facts"]["cooling_status"] == "passed"
    assert {"cooling: passed", "doneness_floor: passed", "fridge_40f: passed"} <= set(verdict["facts"]["findings"])


def test_the_dose_is_within_the_limit(said: list[dict[str, Any]]) -> None:
    """150 mg/kg of meat and pickle: the curing salt's nitrite over everything in the bag."""
    plan = next(one["facts"] for one in said if "nitrite_ingoing_mg_kg" in one["facts"])
    bag_kg = sum(plan[part] for part in ("mass_kg", "water_kg", "cure_kg", "salt_kg", "sugar_kg"))

    assert plan["cure_kg"] * plan["cure_nitrite_fraction"] / bag_kg * 1e6 == pytest.approx(150.0, abs=0.5)
    assert plan["nitrite_ingoing_mg_kg"] == pytest.approx(150.0, abs=0.5)
    assert plan["nitrite_ingoing_mg_kg"] < plan["nitrite_limit_mg_kg"]


def test_the_ready_time_is_a_band_that_narrows(said: list[dict[str, Any]]) -> None:
    """Early, middle and late end are in order at every reading, and by the last one they have drawn together."""
    facts = [one["facts"] for one in said if one["facts"].get("intent") == "reading"]
    cooking = [each for each in facts if each["phase"] == "cooking"]
    bands = [[datetime.fromisoformat(each[f"ready_at_p{p}"]) for p in (10, 50, 90)] for each in cooking]
    first, last = bands[0], bands[-1]

    assert all(low <= middle <= high for low, middle, high in bands)
    assert last[2] - last[0] < (first[2] - first[0]) / 4


def test_it_goes_as_a_week_goes(said: list[dict[str, Any]]) -> None:
    """Reminders, pictures and alerts come among the replies, in order of time, over nine days."""
    times = [datetime.fromisoformat(one["at"]) for one in said]

    assert times == sorted(times)
    assert times[-1] - times[0] > timedelta(days=8)
    assert {one["kind"] for one in said} == {"reply", "reminder", "alert"}
    assert all(Path(one["picture"]).read_bytes().startswith(b"\x89PNG") for one in said if one["picture"])
    assert sum(one["picture"] is not None for one in said) >= 2


def test_the_next_plan_learned(said: list[dict[str, Any]]) -> None:
    """The grey middle asks for more days than the first plan, and the salty tongue for less salt."""
    first = next(one["facts"] for one in said if "cure_kg" in one["facts"])
    second = said[-1]["facts"]

    assert second["batch"] != first["batch"]
    assert second["cure_days_p50"] > 1.2 * first["cure_days_p50"]
    assert second["salt_fraction"] < first["salt_fraction"]
