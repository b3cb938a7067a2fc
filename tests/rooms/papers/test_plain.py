"""The record as plain data: a schema with a version, one unit a quantity, and the ledger's own figures."""

import json
from typing import Any

import pytest

from bot.papers.plain import SCHEMA, plain
from core.batch.events import Read
from tests.kept_week import FIRE, NAMES, in_pounds, week

ENDINGS = ("_kg", "_c", "_m", "_h", "_mg_kg", "_fraction", "_f", "_s", "_days")


def read() -> dict[str, Any]:
    return dict(json.loads(plain(week())))


def test_it_names_its_form_and_says_what_it_is_not() -> None:
    """A reader knows the version before anything else, and that it is no licence."""
    found = read()
    assert next(iter(found)) == "schema"
    assert found["schema"] == SCHEMA == {"name": "saltbell batch record", "version": 1}
    assert "no licence" in found["notice"]
    assert found["zone"] == "Europe/Vienna"


def test_the_keys_of_version_one_stay() -> None:
    """Whoever reads version 1 finds these; a change of them is version 2."""
    found = read()
    assert set(found) == {
        "schema", "notice", "zone", "made_at", "judged_as_of", "members", "figures", "dose_sum", "log", "verdict",
        "verdicts_then", "rules", "cooling",
    }  # fmt: skip
    assert set(found["log"][0]) == {
        "number", "at", "said_at", "by_member", "what", "taken_back", "said_first", "amended_at", "amended_by_member",
    }  # fmt: skip
    assert set(found["rules"][0]) == {
        "rule", "status", "means", "value", "limit", "unit", "deadline", "readings", "missing", "source",
    }  # fmt: skip


def test_it_is_the_same_whatever_units_the_cook_reads() -> None:
    """°C, kg and mg/kg for everybody."""
    other = json.loads(plain(in_pounds()))
    for key in ("figures", "dose_sum", "rules", "cooling", "log"):
        assert other[key] == read()[key]


def test_figures_are_those_of_the_ledger() -> None:
    """Dose, limit, readings, rules and verdict are what the assessment holds; a kill is no more than is printed."""
    found, a = read(), week().a
    assert a.dose is not None
    assert found["figures"]["nitrite_ingoing_mg_kg"] == a.dose.nitrite_ingoing
    assert found["dose_sum"]["nitrite_kg"] / found["dose_sum"]["base_kg"] * 1e6 == pytest.approx(150.0)
    read_c = [e["what"]["temperature_c"] for e in found["log"] if e["what"] and e["what"]["kind"] == "read"]
    assert read_c == [e.what.celsius for e in week().entries if isinstance(e.what, Read)]
    assert [(f["rule"], f["status"]) for f in found["rules"]] == [
        (f.rule.value, f.status.value) for f in a.ledger.verdict.because
    ]
    assert found["verdict"]["kind"] == a.ledger.verdict.kind.value == "safe"
    kill = next(f for f in found["rules"] if f["unit"] == "log")
    assert kill["value"] == kill["limit"] == 6.5


def test_corrections_and_what_was_taken_back_are_marked() -> None:
    """What stands, what was said first, when and by whom it was changed."""
    log = read()["log"]
    slip = next(e for e in log if e["said_first"] and e["said_first"]["kind"] == "read")
    assert (slip["said_first"]["temperature_c"], slip["what"]["temperature_c"]) == (53.0, 55.0)
    assert (slip["taken_back"], slip["amended_by_member"]) == (False, 2)
    gone = [e for e in log if e["taken_back"]]
    assert [(e["what"], e["said_first"]["step"]) for e in gone] == [(None, "flip/6")]


def test_times_are_utc_and_names_are_numbered() -> None:
    """Nobody's id of a channel is in it."""
    found = read()
    assert [m["name"] for m in found["members"]][:2] == [NAMES["m"], NAMES["j"]]
    assert all(e["at"].endswith("+00:00") for e in found["log"])
    on = next(e for e in found["log"] if e["what"] and e["what"].get("step") == "meat_on")
    assert on["at"] == FIRE.isoformat()
    assert "b1" not in [found["figures"].get("batch"), found.get("batch")]
    assert "by" not in found["log"][0]
