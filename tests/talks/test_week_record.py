"""The record of a whole week, as the chat hands it out, against what the chat itself said in that week."""

import json
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any

import pypdfium2
import pytest

from tests.talks.conftest import FOLDER
from tests.talks.performance import Performance

WEEK = FOLDER / "pastrami_week.chat"


@pytest.fixture
def said(played: Callable[[Path], Performance]) -> list[dict[str, Any]]:
    """Everything that the bot sent in the week."""
    return played(WEEK).said


def sent(said: list[dict[str, Any]], ending: str) -> Path:
    """The one document of that ending."""
    (found,) = [Path(one["document"]) for one in said if one.get("document", "").endswith(ending)]
    return found


def test_its_figures_are_those_that_the_chat_told(said: list[dict[str, Any]]) -> None:
    """Dose, limit, verdict and rules of the last «is it safe» before it, figure by figure."""
    record = json.loads(sent(said, ".json").read_text("utf-8"))
    told = [one["facts"] for one in said if one["facts"].get("topic") == "safe"][-1]
    same = ("cure_kg", "salt_kg", "sugar_kg", "water_kg", "nitrite_ingoing_mg_kg", "nitrite_limit_mg_kg", "mass_kg",
            "thickness_m", "verdict", "findings", "cooling_rule", "cooling_status", "log_reduction")  # fmt: skip
    assert {key: record["figures"][key] for key in same} == {key: told[key] for key in same}
    assert [f"{f['rule']}: {f['status']}" for f in record["rules"]] == told["findings"]
    total = record["dose_sum"]
    assert total["nitrite_kg"] / total["base_kg"] * 1e6 == pytest.approx(told["nitrite_ingoing_mg_kg"])


def test_every_reading_of_the_week_is_in_it(said: list[dict[str, Any]]) -> None:
    """Each core that the chat counted stands in the log at its time, corrections as corrected."""
    record = json.loads(sent(said, ".json").read_text("utf-8"))
    log = [e for e in record["log"] if e["what"] and e["what"]["kind"] == "read" and e["what"]["probe"] == "core"]
    found = {(e["at"], e["what"]["temperature_c"]) for e in log}
    told = {(one["facts"]["core_at"], one["facts"]["core_c"]) for one in said if one["facts"].get("intent") == "reading"
            and "core_c" in one["facts"] and one["facts"]["batch_name"] == "flat"}  # fmt: skip
    assert len(told) > 8
    amended = {e["at"] for e in record["log"] if e["amended_at"]}  # put right later, or taken back
    assert {(at, c) for at, c in told if at not in amended} <= found
    assert amended


def test_times_are_in_order_and_whole(said: list[dict[str, Any]]) -> None:
    """From the first line to the last, in UTC, none without its zone."""
    record = json.loads(sent(said, ".json").read_text("utf-8"))
    times = [datetime.fromisoformat(e["at"]) for e in record["log"]]
    assert times == sorted(times)
    assert (times[-1] - times[0]).days == 8
    assert {t.utcoffset() for t in times} == {times[0].utcoffset()}


def test_the_print_opens_and_ends_safe(said: list[dict[str, Any]]) -> None:
    """Another hand's reader reads the verdict and the dose in the PDF."""
    document = pypdfium2.PdfDocument(sent(said, ".pdf").read_bytes())
    text = " ".join(" ".join(page.get_textpage().get_text_range().split()) for page in document)
    document.close()
    assert "Safe to serve, as far as the record shows." in text
    assert "It is no licence" in text
    assert "= 150 mg/kg" in text
