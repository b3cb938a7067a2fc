"""Hours of fish on the fire against what is published and told; none of it steered the model of its surface."""

import csv
from dataclasses import replace
from math import exp, pi, sqrt
from pathlib import Path

import pytest

from core.heat import prior
from core.heat.cook import Cook
from core.heat.humid_air import saturation_pressure, vapour_density
from core.heat.ready import Estimate, forecast
from core.meat.cuts import cut
from core.meat.piece import piece
from core.units import celsius_from_fahrenheit

HERE = Path(__file__).parent
GAS = 8.314462618  # [J/mol K]
MAY_LEAVE = 530.0  # [kg/m3] of 650 to 680 of water in the flesh, less what stays in a dry pellicle; judgement


def rows() -> list[dict[str, str]]:
    with (HERE / "smoked_fish.csv").open(encoding="utf-8") as file:
        return list(csv.DictReader(file))


def smoked(row: dict[str, str], pit_f: float) -> Estimate:
    fish = replace(piece(cut(row["cut"]), float(row["mass_kg"]), float(row["thickness_mm"]) / 1000), skin_on=True)
    pit, core = celsius_from_fahrenheit(pit_f), celsius_from_fahrenheit(float(row["core_F"]))
    return forecast(Cook(fish, "ceramic", pit, float(row["start_C"]), core))


@pytest.mark.parametrize("row", rows(), ids=lambda row: row["case"])
def test_fish_is_there_in_the_hours_that_are_told(row: dict[str, str]) -> None:
    """The band meets the range; where a thickness is told too, the middle is within a third of it."""
    ready = smoked(row, float(row["pit_F"])).ready
    low, high = float(row["hours_low"]), float(row["hours_high"])
    assert ready.p10 <= high
    assert ready.p90 >= low
    assert "thickness not given" in row["source"] or low / 1.34 <= ready.p50 <= high * 1.34


def test_air_too_cool_to_cook_fish_by_the_leaflet_does_not_do_it_here() -> None:
    """WSU (CONFIRMED): air that cannot reach 200 to 225 °F does not bring fish to 160 °F; the oven has to.

    At 175 °F one cook in four is not there within a working day, at 225 °F every one within half of it.
    """
    row = rows()[1]
    assert smoked(row, 175.0).ready.p90 > 12.0
    assert smoked(row, 225.0).ready.p90 < 4.0


def test_the_pellicle_resists_as_much_as_diffusion_makes_it() -> None:
    """pi rho_v / (2 c^2 D) at 65 °C, with D by Jason's fish muscle (MEMORY) and by what Torry's fillets lose.

    Torry (CONFIRMED): 7 to 9 % in 4 to 10 h at 27 °C; a fillet of 30 mm whose flesh side dries has 0.033 m2/kg of it.
    """
    warmer = exp(30e3 / GAS * (1 / 300.15 - 1 / 338.15))
    lost = 0.08 / 0.033  # kg/m2 in six hours
    by_torry = pi * (lost / (2 * MAY_LEAVE)) ** 2 / (6 * 3600) * warmer
    by_jason = 3.4e-10 * exp(30e3 / GAS * (1 / 303.15 - 1 / 338.15))
    vapour = vapour_density(saturation_pressure(65.0), 65.0)
    resists = [pi * vapour / (2 * MAY_LEAVE**2 * d) for d in (by_torry, by_jason)]
    assert sqrt(resists[0] * resists[1]) == pytest.approx(prior.PELLICLE, rel=0.15)
    assert all(abs(r / prior.PELLICLE) < exp(1.28 * prior.PELLICLE_LOG_SD) for r in resists)
