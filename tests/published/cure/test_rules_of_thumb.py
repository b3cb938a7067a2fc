"""Rules of thumb beside our days. The table of docs/science/curing.md is computed here, so it cannot go stale.

Rules: curing_time_rules.csv by its rule_id (their status is there), and common practice (PRACTICE, no source).
"""

import csv
import re
from dataclasses import dataclass, replace
from functools import cache
from math import isfinite
from pathlib import Path

import pytest

from core.cure.course import Immersion
from core.cure.dose import Recipe, dose, house_target
from core.cure.penetration import Penetration, penetration
from core.meat.cuts import cut
from core.meat.piece import Composition, Piece, Shape, Species, piece
from core.units import KILOGRAMS_PER_POUND, METRES_PER_INCH

HERE = Path(__file__).parent
PAGE = HERE.parents[2] / "docs" / "science" / "curing.md"


@cache
def printed() -> dict[str, float]:
    """The figure of each rule, the lower where it is a range."""
    with (HERE / "curing_time_rules.csv").open(encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    figures = {row["rule_id"]: re.match(r"[\d.]+", row["value"]) for row in rows}
    return {rule: float(found.group()) for rule, found in figures.items() if found}


@dataclass(frozen=True)
class Beside:
    """One row of the table: the rule, its days for this piece, and the piece in our cure."""

    rule: str
    rule_days: float
    what: Piece
    method: str
    product_class: str = "whole_muscle"

    @property
    def ours(self) -> Penetration:
        target = house_target("US", self.product_class, self.method)
        recipe = Recipe(self.method, self.what.mass, 0.0625, self.product_class, nitrite_target=target)
        return penetration(Immersion(self.what, dose(recipe)))


def flat() -> Piece:
    return piece(cut("brisket_flat"), 3.4, 0.045)


def pork(mass_lb: float, thickness: float, shape: Shape, composition: Composition, sealed: int = 0) -> Piece:
    """Pork is pink from 4 mg/kg (sources.HEATON_2000); composition by sources.USDA_SR28."""
    kind = replace(
        cut("brisket_flat"), species=Species.PORK, shape=shape, composition=composition, pink_from=4.0, mass_high=20.0
    )
    return piece(kind, mass_lb * KILOGRAMS_PER_POUND, thickness, sealed_faces=sealed)


BELLY = Composition(0.3674, 0.0934, 0.5301, 0.0049)
SHOULDER = Composition(0.6402, 0.1718, 0.1799, 0.0088)
HAM = Composition(0.6247, 0.1743, 0.1887, 0.0088)


def table() -> dict[str, Beside]:
    """The rows, by the name that stands in the page."""
    rule, inch, pound = printed(), METRES_PER_INCH, KILOGRAMS_PER_POUND
    inches = flat().thickness / inch
    return {
        "half an inch a day, from each face": Beside("PRACTICE", inches / 2 / 0.5, flat(), "brine"),
        "four days in a bag": Beside("PRACTICE", 4.0, flat(), "brine"),
        "a quarter inch a day from each face, and two": Beside("PRACTICE", inches / 2 / 0.25 + 2, flat(), "brine"),
        "thickness in mm, squared, over 200": Beside("PRACTICE", 45**2 / 200, flat(), "brine"),
        "two days a pound": Beside("PRACTICE", 2 * 3.4 / pound, flat(), "brine"),
        "days a pound, sweet pickle": Beside("FB-1", rule["FB-1"] * 3.4 / pound, flat(), "brine"),
        "seven days an inch, dry": Beside("EXT-1", rule["EXT-1"] * inches, flat(), "dry"),
        "10 lb belly, rind off": Beside("FB-1c", rule["FB-1c"], pork(10, 0.040, Shape.SLAB, BELLY), "brine", "bacon"),
        "10 lb belly, rind on": Beside(
            "FB-1c", rule["FB-1c"], pork(10, 0.040, Shape.SLAB, BELLY, sealed=1), "brine", "bacon"
        ),
        "6 lb shoulder": Beside("FB-1a", rule["FB-1a"], pork(6, 0.090, Shape.CYLINDER, SHOULDER), "brine"),
        "15 lb ham": Beside("FB-1b", rule["FB-1b"], pork(15, 0.150, Shape.CYLINDER, HAM), "brine"),
    }


def days(value: float) -> str:
    return f"{value:.1f}" if isfinite(value) else "never"


def line(name: str, row: Beside) -> str:
    """The row as the page has it: rule, id, thickness, rule's days, ours at 50 and 90 %, even salt."""
    ours = row.ours
    figures = (row.rule_days, ours.days_p50, ours.days_p90, ours.even_days)
    return f"| {name} | {row.rule} | {row.what.thickness * 1000:.0f} mm {row.method} | " + " | ".join(
        days(v) for v in figures
    )


@pytest.mark.parametrize("name", table())
def test_the_page_shows_what_is_computed(name: str):
    """Each row of the page is what the rule and the solver say today."""
    assert line(name, table()[name]) in PAGE.read_text(encoding="utf-8")


def test_no_rule_by_weight_or_inch_fits_at_two_thicknesses():
    """Why they disagree: time goes with the square, so a rule that fits at 25 mm is out by half or more at 75."""
    thin, thick = (
        penetration(Immersion(piece(cut("brisket_flat"), 3.4, t), dose(Recipe("brine", 3.4, 0.0625)), cook_hours=0.0))
        for t in (0.025, 0.075)
    )
    assert thick.days_p50 / thin.days_p50 == pytest.approx(9.0, rel=0.15)


def test_the_kitchen_rule_of_the_square_aims_at_even_salt_and_ours_at_pink():
    """T²/200 lies between our 90 % of pink and our even salt for every flat of 25 to 60 mm."""
    for thickness in (0.025, 0.038, 0.045, 0.050, 0.060):
        ours = penetration(Immersion(piece(cut("brisket_flat"), 3.2, thickness), dose(Recipe("brine", 3.2, 0.0625))))
        rule = (thickness * 1000) ** 2 / 200
        assert ours.days_p90 < rule < ours.even_days * 1.15
