"""Hours of cooling against the three-dimensional computation in cooling_predictions.csv (cooling_options' marks)."""

import csv
from pathlib import Path

import pytest

from core.heat.cooling import CHILL_FILM, FOOTPRINT_LEFT, ChillMethod, RestMethod, chill, rest
from core.meat.cuts import cut
from core.meat.piece import Piece

HERE = Path(__file__).parent
SCENARIOS: dict[str, ChillMethod] = {
    "fridge 3C, foil, still air": "foil",
    "fridge 3C, unwrapped still (no evap credit)": "rack",
    "fridge 3C fan": "fan",
    "ice bath still": "ice",
}
SPANS = {"t_130_80F_h": (54.4, 26.7), "t_80_40F_h": (26.7, 4.4), "t_80_45F_h": (26.7, 7.2), "t_135_70F_h": (57.2, 21.1),
         "t_135_41F_h": (57.2, 5.0), "t_120_55F_h": (48.9, 12.8)}  # fmt: skip


def table(first: str) -> list[dict[str, str]]:
    """The rows of the first table (chill), or of the second (rest), which follows after an empty line."""
    parts = (HERE / "cooling_predictions.csv").read_text("utf-8").strip().split("\n\n")
    return list(csv.DictReader(parts[0 if first == "chill" else 1].splitlines()))


def cooked_piece(thickness: float) -> Piece:
    """A flat that is 160 x 280 mm after the cook, as computed there."""
    mass = 0.160 * 0.280 * thickness * 1045 / FOOTPRINT_LEFT
    return Piece(cut("brisket_flat"), mass, thickness, 0.05, True)


@pytest.mark.parametrize("row", [r for r in table("chill") if r["scenario"] in SCENARIOS], ids=str)
def test_the_chill_agrees_with_three_dimensions(row: dict[str, str]) -> None:
    """Hours between the marks: the median within 15 % or 0.12 h of the three-dimensional result, and it in the band."""
    found = chill(cooked_piece(float(row["thickness_mm"]) / 1000), SCENARIOS[row["scenario"]], 60.0, 3.0)
    for column, (high, low) in SPANS.items():
        expected = float(row[column])
        hours = found.between(high, low)
        assert hours is not None
        assert expected == pytest.approx(hours.p50, rel=0.15, abs=0.12), column
        assert hours.p10 <= expected <= hours.p90, column


@pytest.mark.parametrize("row", table("rest"), ids=lambda row: row["thickness_mm"])
def test_the_rest_agrees_with_three_dimensions(row: dict[str, str]) -> None:
    """Rest from 88 to 60 °C, bare, in foil, in towels, in a box: within 18 %, and within the band."""
    columns: dict[str, RestMethod] = {
        "bare_h10.5": "bare", "foil_h5": "foil", "foil_towel_h2": "towels", "insulated_box_h1.2": "box",
    }  # fmt: skip
    for column, method in columns.items():
        hours = rest(cooked_piece(float(row["thickness_mm"]) / 1000), method, 88.0).to(60.0)
        assert hours is not None
        assert float(row[column]) == pytest.approx(hours.p50, rel=0.18), column
        assert hours.p10 <= float(row[column]) <= hours.p90, column


def test_the_coefficients_are_those_of_the_table() -> None:
    """5.5, 9, 15 and 70 W/m2 K, as the table names them."""
    named = {SCENARIOS[r["scenario"]]: float(r["h_W_m2K"]) for r in table("chill") if r["scenario"] in SCENARIOS}
    assert named == CHILL_FILM
