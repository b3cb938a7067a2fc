"""Ramps with an exact answer (lethality_integration.csv, DERIVED): coarse steps must err to the safe side."""

from math import exp

import pytest

from core.safety.history import Reading
from core.safety.lethality import lethality
from tests.records import at, table

ROWS = table("lethality_integration")
STEPS = (0.25, 1.0, 5.0, 15.0, 30.0)  # min; each divides every duration of the file


def _temperature(row, minutes):
    """The core of a profile at a time. [°C]"""
    if row["profile"] == "linear":
        start, end = float(row["T0_C"]), float(row["T1_C"])
        return start + (end - start) * minutes / float(row["duration_min"])
    air, tau = (float(part.split("=")[1]) for part in row["profile"].split()[1:])
    return air + (float(row["T0_C"]) - air) * exp(-minutes / tau)


def _sampled(row, step):
    count = int(float(row["duration_min"]) / step)
    return tuple(Reading(at(i * step / 60.0), _temperature(row, i * step)) for i in range(count + 1))


@pytest.mark.parametrize("row", ROWS, ids=lambda r: f"{r['profile']}-{r['T0_C']}-{r['T1_C']}")
def test_coarse_steps_err_to_the_safe_side(row):
    """However coarse the readings, the credit never exceeds the exact integral, nor that of finer readings."""
    exact = float(row["log_reduction(D60=12/6.5 min)"])
    credits = [lethality(_sampled(row, step), "beef").log_reduction for step in STEPS]
    assert all(credit <= exact for credit in credits)
    assert credits == sorted(credits, reverse=True)


@pytest.mark.parametrize("row", ROWS, ids=lambda r: f"{r['profile']}-{r['T0_C']}-{r['T1_C']}")
def test_the_trapezoid_would_err_to_the_unsafe_side(row):
    """Why nothing is interpolated: the trapezoid on the lethal rate overstates, in the file's own columns."""
    exact = float(row["F60_min_exact(z=5.556)"])
    assert all(float(row[f"trapezoid_{m}min"]) > exact for m in (1, 5, 15))


def test_the_credit_is_not_idle():
    """On the 5 to 65 °C ramp the step function with readings each minute keeps at least half of the exact kill.

    Rows are 1 °F apart (a factor of 1.26), and nothing under 130 °F counts.
    """
    row = next(r for r in ROWS if r["T1_C"] == "65")
    exact = float(row["log_reduction(D60=12/6.5 min)"])
    assert 0.5 * exact < lethality(_sampled(row, 1.0), "beef").log_reduction < exact
