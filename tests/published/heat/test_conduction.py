"""Conduction against the textbook series: the tabulated cases, the root equation itself, and another solver."""

import csv
from pathlib import Path

import mpmath
import numpy as np
import pytest

from core.heat import conduction
from core.heat.conduction import Geometry
from core.heat.modes import Bodies, modes

HERE = Path(__file__).parent
WITH_ROUGH_ROOT = ("sphere", "0.1")  # the table's root is off by 6e-4 there: see README.md


def rows() -> list[dict[str, str]]:
    with (HERE / "conduction_cases.csv").open(encoding="utf-8") as file:
        return [row for row in csv.DictReader(file) if not row["geometry"].startswith("product")]


def left_by_modes(geometry: Geometry, biot: float, fourier: float, place: float, steps: int = 4000) -> float:
    """What the models' solver leaves of the difference to the surroundings, in short steps of time."""
    one = np.ones(1)
    body = Bodies(modes(geometry, 20), one, one, one, one)
    stride = body.stride(fourier / steps)
    amplitudes, surface, flow = body.modes.uniform(one), one, 0.0 * one
    for _ in range(steps):
        coasting = stride.surface @ (amplitudes * stride.keep)
        flow = -biot * 0.5 * (surface + coasting) / (1.0 + 0.5 * biot * stride.answer)
        surface = coasting + stride.answer * flow
        amplitudes = amplitudes * stride.keep + stride.gain * flow
    at = np.array([place])
    inside = body.modes.at(at).T @ amplitudes + body.modes.settled_at(at) * flow
    return float(surface[0]) if place == 1.0 else float(inside[0, 0])


def test_the_series_give_the_tabulated_cases() -> None:
    """All 225 cases: to 1e-3 everywhere, and to the printed digits but for the rough root (Incropera, ch. 5)."""
    for row in rows():
        geometry, biot, fourier, place = row["geometry"], float(row["Bi"]), float(row["Fo"]), float(row["X"])
        rough = (row["geometry"], row["Bi"]) == WITH_ROUGH_ROOT
        close = pytest.approx
        tolerance = 1e-3 if rough else 2e-9
        assert float(row["zeta1"]) == close(conduction.roots(geometry, biot)[0], abs=tolerance), row
        assert float(row["C1"]) == close(conduction.first_weight(geometry, biot), abs=tolerance), row
        theta = conduction.temperature(geometry, biot, fourier, place)
        assert float(row["theta_full_series"]) == close(theta, abs=1e-3 if rough else 1e-7), row
        given = conduction.heat_given(geometry, biot, fourier)
        assert float(row["Q_over_Qmax"]) == close(given, abs=1e-3 if rough else 1e-7), row


@pytest.mark.parametrize("biot", [0.1, 0.37, 2.0, 15.0])
def test_the_roots_solve_the_textbook_equations(biot: float) -> None:
    """First roots against mpmath: z tan z = Bi; z J1 = Bi J0; 1 - z cot z = Bi (Incropera eqs 5.42, 5.50, 5.51)."""
    equations = {
        "slab": lambda z: z * mpmath.sin(z) - biot * mpmath.cos(z),
        "cylinder": lambda z: z * mpmath.besselj(1, z) - biot * mpmath.besselj(0, z),
        "sphere": lambda z: (1 - biot) * mpmath.sin(z) - z * mpmath.cos(z),
    }
    for geometry, equation in equations.items():
        for z in conduction.roots(geometry, biot, 4):
            assert float(abs(equation(mpmath.mpf(z)))) < 1e-9


def test_the_product_rule_gives_the_brick_and_the_short_cylinder() -> None:
    """Products of one-dimensional solutions (Incropera, section 5.6), the last two rows of the table."""
    left = conduction.temperature
    brick = left("slab", 2.4, 0.1, 0) * left("slab", 1.6, 0.225, 0) * left("slab", 1.0, 0.576, 0)
    assert brick == pytest.approx(0.6556126368, abs=1e-7)
    assert left("cylinder", 2.0, 0.4, 0) * left("slab", 2.0, 0.4, 0) == pytest.approx(0.3556803532, abs=1e-7)


@pytest.mark.parametrize("geometry", ["slab", "cylinder", "sphere"])
@pytest.mark.parametrize(("biot", "fourier"), [(0.1, 2.0), (0.5, 0.5), (1.0, 0.2), (10.0, 0.2), (100.0, 0.5)])
def test_the_models_solver_follows_the_series(geometry: Geometry, biot: float, fourier: float) -> None:
    """The modes of the finite volumes against the series, to 1e-4 at the middle, half-way and at the surface."""
    for place in (0.0, 0.5, 1.0):
        expected = conduction.temperature(geometry, biot, fourier, place)
        assert expected == pytest.approx(left_by_modes(geometry, biot, fourier, place), abs=1e-4)


def test_the_models_seven_modes_and_long_steps_are_enough() -> None:
    """As the cook uses it (7 modes, steps of 240 s): the middle of a 51 mm slab within 2e-3 of the series after 1 h."""
    length, diffusivity, conductivity, film = 0.0257, 1.37e-7, 0.48, 16.0
    body = Bodies(modes("slab"), *(np.array([x]) for x in (length, conductivity, conductivity / diffusivity, 1.0)))
    stride = body.stride(240.0)
    amplitudes, surface, flow = body.modes.uniform(np.ones(1)), np.ones(1), np.zeros(1)
    for _ in range(15):
        coasting = stride.surface @ (amplitudes * stride.keep)
        flow = -film * 0.5 * (surface + coasting) / (1.0 + 0.5 * film * stride.answer)
        surface = coasting + stride.answer * flow
        amplitudes = amplitudes * stride.keep + stride.gain * flow
    middle = float((body.modes.at(np.zeros(1)).T @ amplitudes + body.modes.settled[0] * body.scale * flow)[0, 0])
    biot, fourier = film * length / conductivity, diffusivity * 3600 / length**2
    assert conduction.temperature("slab", biot, fourier, 0.0) == pytest.approx(middle, abs=2e-3)


@pytest.mark.filterwarnings("ignore")
def test_another_solver_agrees_off_the_table() -> None:
    """FiPy on a slab at Bi 0.8, Fo 0.37, which no table holds: the middle within 1e-3."""
    fipy = pytest.importorskip("fipy")
    cells, steps = 100, 370
    mesh = fipy.Grid1D(nx=cells, dx=1.0 / cells)
    left = fipy.CellVariable(mesh=mesh, value=1.0, hasOld=True)
    edge = mesh.facesRight
    half = 0.5 / cells
    through = 0.8 / (1 + 0.8 * half)  # film and half a cell in a row
    equation = fipy.TransientTerm() == fipy.DiffusionTerm(coeff=1.0) - fipy.ImplicitSourceTerm(
        (edge * through * mesh.faceNormals).divergence
    )
    for _ in range(steps):
        left.updateOld()
        equation.solve(var=left, dt=0.37 / steps)
    assert float(left.value[0]) == pytest.approx(left_by_modes("slab", 0.8, 0.37, 0.0), abs=1e-3)
