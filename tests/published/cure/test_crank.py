"""The solver and the series against Crank's: ten-digit values computed to high precision, crank_slab_finite_bath.csv.

The solver's tolerance of 1e-4 is that of its 128 cells at the earliest Fourier number of the table; what a cook acts
on lies at ten times that number, where the error is a tenth.
"""

import csv
from pathlib import Path

import numpy as np
import pytest

from core.cure import diffusion, series
from core.cure.diffusion import CELLS, Field, Stage
from core.meat.piece import Shape

HERE = Path(__file__).parent
IN_BATH = {Shape.SLAB: series.slab_in_bath, Shape.CYLINDER: series.cylinder_in_bath}
TAKEN_UP = {Shape.SLAB: series.slab_taken_up, Shape.CYLINDER: series.cylinder_taken_up}


def rows(name: str) -> list[dict[str, str]]:
    with (HERE / name).open(encoding="utf-8") as file:
        return list(csv.DictReader(file))


FINITE_BATH = rows("crank_slab_finite_bath.csv")
DRY = rows("dry_cure_slab.csv")


def halfway(field: Field) -> float:
    """Concentration half-way between middle and surface: a cubic through the four cells around it."""
    left, near_left, near_right, right = field.cells[0, CELLS // 2 - 2 : CELLS // 2 + 2]
    return float((9 * (near_left + near_right) - (left + right)) / 16)


def at_surface(field: Field) -> float:
    return float(1.125 * field.cells[0, -1] - 0.125 * field.cells[0, -2])


def name(row: dict[str, str]) -> str:
    return f"{row['geometry']}-{row['alpha']}-{row['Fo']}"


@pytest.mark.parametrize("row", FINITE_BATH, ids=name)
def test_series_in_a_bath(row: dict[str, str]):
    """Our series agree with the table to its digits: roots, uptake, bath, middle, half-way and surface."""
    shape, alpha, fourier = Shape(row["geometry"]), float(row["alpha"]), float(row["Fo"])
    taken_up = TAKEN_UP[shape](alpha, fourier)
    ours = [
        *series.roots(shape, alpha)[:3],
        taken_up,
        series.bath_left(alpha, taken_up),
        *(IN_BATH[shape](alpha, fourier, place) for place in (0.0, 0.5, 1.0)),
    ]
    columns = [
        "q1",
        "q2",
        "q3",
        "Mt_over_Minf",
        "Cbath_over_C0",
        "Ccentre_over_Cinf",
        "Cx0.5_over_Cinf",
        "Csurface_over_Cinf",
    ]
    assert ours == pytest.approx([float(row[column]) for column in columns], abs=1e-8)


@pytest.mark.parametrize("row", FINITE_BATH, ids=name)
def test_solver_in_a_bath(row: dict[str, str]):
    """The cells agree with the table to 1e-4 of the final level: uptake, bath, middle and half-way."""
    shape, alpha, fourier = Shape(row["geometry"]), float(row["alpha"]), float(row["Fo"])
    field = diffusion.run(shape, diffusion.in_brine(1, alpha), Stage(np.array([fourier]), alpha))
    assert field.bath is not None
    ours = [
        float(diffusion.mean(shape, field)[0]),
        float(field.bath[0]) * alpha / (1 + alpha),
        float(diffusion.centre(field)[0]),
        halfway(field),
    ]
    columns = ["Mt_over_Minf", "Cbath_over_C0", "Ccentre_over_Cinf", "Cx0.5_over_Cinf"]
    assert ours == pytest.approx([float(row[column]) for column in columns], abs=1e-4)


@pytest.mark.parametrize("row", DRY, ids=lambda row: row["Fo"])
def test_series_of_a_surface_dose(row: dict[str, str]):
    """Crank's limit of no bath, dry_cure_slab.csv, to its digits."""
    fourier = float(row["Fo"])
    ours = [series.slab_surface_dose(fourier, place) for place in (0.0, 0.5, 1.0)]
    columns = ["centre_over_Cinf", "X0.5_over_Cinf", "surface_over_Cinf"]
    assert ours == pytest.approx([float(row[column]) for column in columns], abs=1e-8)


@pytest.mark.parametrize("row", DRY, ids=lambda row: row["Fo"])
def test_solver_of_a_surface_dose(row: dict[str, str]):
    """A dry dose agrees with dry_cure_slab.csv to 1e-6 at the middle, half-way and at the surface."""
    field = diffusion.run(Shape.SLAB, diffusion.at_surface(Shape.SLAB, 1), Stage(np.array([float(row["Fo"])])))
    ours = [float(diffusion.centre(field)[0]), halfway(field), at_surface(field)]
    columns = ["centre_over_Cinf", "X0.5_over_Cinf", "surface_over_Cinf"]
    assert ours == pytest.approx([float(row[column]) for column in columns], abs=1e-6)


@pytest.mark.parametrize("row", DRY, ids=lambda row: row["Fo"])
def test_a_very_small_bath_is_nearly_a_dry_dose(row: dict[str, str]):
    """The last column of dry_cure_slab.csv is a bath of one part in a hundred: a third road to the same middle."""
    field = diffusion.run(Shape.SLAB, diffusion.in_brine(1, 0.01), Stage(np.array([float(row["Fo"])]), 0.01))
    assert float(diffusion.centre(field)[0]) == pytest.approx(float(row["centre_finite_bath_alpha_0.01"]), abs=1e-4)
