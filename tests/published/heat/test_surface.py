"""The steady surface against the table computed by another program from the same equations."""

import csv
from pathlib import Path

import numpy as np
import pytest

from core.heat.humid_air import saturation_pressure, vapour_density
from core.heat.surface import Surroundings, pit_vapour, saturated, steady

HERE = Path(__file__).parent


def rows() -> list[dict[str, str]]:
    with (HERE / "surface_balance.csv").open(encoding="utf-8") as file:
        return list(csv.DictReader(file))


def test_the_surface_settles_where_the_table_says() -> None:
    """All rows: surface within 0.1 K, evaporation within 0.4 %: as close as the fit of the vapour density."""
    for row in rows():
        pit, dew = float(row["T_pit_C"]), float(row["T_dew_C"])
        around = Surroundings(
            air_c=pit,
            wall_c=pit,
            film=float(row["hc_W_m2K"]),
            emissivity=float(row["emissivity"]),
            vapour=pit_vapour(dew, pit),
            vapour_pressure=saturation_pressure(dew),
            resistance=float(row["Rv_s_per_m"]),
        )
        surface, water = steady(around)
        assert float(row["T_surface_C"]) == pytest.approx(surface, abs=0.1), row
        assert float(row["evap_kg_m2_h"]) == pytest.approx(3600 * water, rel=4e-3), row


def test_the_fit_of_the_vapour_density_holds_where_meat_is() -> None:
    """Within 0.4 % of ASHRAE eq. 6 from 3 to 108 °C."""
    for celsius in np.linspace(3.0, 108.0, 60):
        expected = vapour_density(saturation_pressure(float(celsius)), float(celsius))
        assert expected == pytest.approx(float(saturated(np.array([celsius]))[0]), rel=4e-3)
