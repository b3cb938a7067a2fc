"""The record as rows: RFC 4180, units in the head, and no cell that a spreadsheet would compute."""

import csv
import io
from datetime import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.papers.guarded import FORMULA, guarded, rows
from core.batch.batch_record import BatchRecord
from core.batch.events import Read
from tests.kept_week import HOSTILE, NAMES, in_pounds, week


def read(r: BatchRecord) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(rows(r).decode("utf-8-sig"), newline=""), strict=True))


def test_the_form_is_that_of_the_rfc() -> None:
    """Lines end with CR LF, each has as many fields as the head, and letters are UTF-8 with a mark at the front."""
    content = rows(week())
    assert content.startswith("\ufeffpart,".encode())
    lines = list(csv.reader(io.StringIO(content.decode("utf-8-sig"), newline=""), strict=True))
    assert {len(line) for line in lines} == {len(lines[0])}
    assert content.count(b"\r\n") == len(lines)
    assert content.endswith(b"\r\n")
    assert b"\n" not in content.replace(b"\r\n", b"")


def test_figures_have_their_unit_in_the_head() -> None:
    """°C and kg, or °F and lb, by the cook; nitrite in mg/kg for all."""
    metric, pounds = read(week())[0], read(in_pounds())[0]
    assert {"temperature (°C)", "mass (kg)", "nitrite (mg/kg)"} <= metric.keys()
    assert {"temperature (°F)", "mass (lb)", "nitrite (mg/kg)"} <= pounds.keys()


def test_every_reading_is_a_row_with_its_figure() -> None:
    """As many as were read, exact, with the local time and what it is ahead of UTC."""
    stands = [e for e in week().entries if isinstance(e.what, Read)]
    found = [row for row in read(week()) if row["part"] == "temperature"]
    assert [float(row["temperature (°C)"]) for row in found] == [e.what.celsius for e in stands]  # type: ignore[union-attr]
    assert [datetime.fromisoformat(row["time (ISO 8601)"]) for row in found] == [e.at for e in stands]
    assert found[-1]["time (ISO 8601)"].endswith("+01:00")
    fahrenheit = [float(row["temperature (°F)"]) for row in read(in_pounds()) if row["part"] == "temperature"]
    assert fahrenheit == pytest.approx([e.what.celsius * 1.8 + 32 for e in stands])  # type: ignore[union-attr]


def test_dose_limit_rules_and_verdicts_are_rows() -> None:
    """They agree with the ledger's own figures."""
    found, a = read(week()), week().a
    assert a.dose is not None
    assert a.dose.limit is not None
    weights = {row["what"]: float(row["mass (kg)"]) for row in found if row["part"] == "dose" and row["mass (kg)"]}
    assert weights["curing salt of 6.25 % nitrite"] == pytest.approx(a.dose.cure_kg)
    nitrite = [float(row["nitrite (mg/kg)"]) for row in found if row["nitrite (mg/kg)"]]
    assert nitrite == pytest.approx([a.dose.nitrite_ingoing, a.dose.limit.max_mg_kg])
    assert sum(row["part"] == "rule" for row in found) == len(a.ledger.verdict.because)
    assert next(row["what"] for row in found if row["part"] == "verdict").startswith("Safe to serve")
    assert "no licence" in found[0]["what"]


def test_a_name_that_is_a_formula_is_only_a_name() -> None:
    """An apostrophe stands before it; other names are as they are."""
    assert {row["who"] for row in read(week())} - {""} == {NAMES["m"], NAMES["j"], f"'{HOSTILE}"}


@given(st.text(max_size=20), st.sampled_from(FORMULA), st.sampled_from(["", " ", "\u00a0", "\x00", "\u200b", "\ufeff"]))
def test_no_cell_of_words_begins_a_formula(rest: str, sign: str, before: str) -> None:
    """Whatever stands before the sign and cannot be seen."""
    cell = guarded(f"{before}{sign}{rest}")
    assert cell.strip()[:1] not in FORMULA or not cell.strip()


@pytest.mark.parametrize(("value", "shown"), [(-2.5, "-2.5"), (3.0, "3"), (0.0118961844, "0.0118961844")])
def test_a_figure_stays_a_figure(value: float, shown: str) -> None:
    """A minus before a number is no formula."""
    assert guarded(value) == shown
