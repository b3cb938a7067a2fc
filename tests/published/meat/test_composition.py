"""The composition of every cut is the one that is printed under its number in USDA SR28."""

import csv
import tomllib
from importlib import resources
from pathlib import Path

import pytest

from core.meat.cuts import cut

CUTS = tomllib.loads(resources.files("core.meat").joinpath("cuts.toml").read_text("utf-8"))
with (Path(__file__).parent / "composition.csv").open(encoding="utf-8", newline="") as opened:
    PRINTED = {row["ndb_no"]: row for row in csv.DictReader(opened)}


@pytest.mark.parametrize("name", CUTS)
def test_a_cut_is_as_printed(name: str) -> None:
    """Water, protein, fat and ash of each cut, as SR28 prints them: no digit is lost on the way."""
    number = str(CUTS[name]["composition"]["ndb"])
    printed, share = PRINTED[number], cut(name).composition
    assert [share.water, share.protein, share.fat, share.ash] == [
        pytest.approx(float(printed[f"{part}_pct"]) / 100, abs=1e-12) for part in ("water", "protein", "fat", "ash")
    ]
    assert "RAW" in printed["description_sr28"]
    assert cut(name).composition_source.endswith(f" {number}")


@pytest.mark.parametrize("name", CUTS)
def test_the_shares_of_a_cut_make_a_whole(name: str) -> None:
    """The four shares sum to one; SR28 measures each by itself, and carbohydrate and the rounding make up 2 %."""
    share = cut(name).composition
    assert sum((share.water, share.protein, share.fat, share.ash)) == pytest.approx(1.0, abs=0.02)
