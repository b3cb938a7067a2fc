"""Humid air against two general-purpose libraries, in the table and off it."""

import csv
from pathlib import Path

import psychrolib
import pytest
from CoolProp.HumidAirProp import HAPropsSI

from core.errors import OutOfRange
from core.heat.humid_air import boiling_point, humidity_ratio, pressure_at, saturation_pressure, wet_bulb

HERE = Path(__file__).parent


def rows() -> list[dict[str, str]]:
    with (HERE / "wetbulb_check.csv").open(encoding="utf-8") as file:
        return list(csv.DictReader(file))


@pytest.mark.parametrize("row", rows(), ids=lambda row: f"{row['Tdb_C']}-{row['Tdp_C']}")
def test_the_table_of_wet_bulbs(row: dict[str, str]) -> None:
    """Wet bulb to 0.001 K of psychrolib where it converged, to 0.04 K of CoolProp (real gas) everywhere."""
    dry, dew = float(row["Tdb_C"]), float(row["Tdp_C"])
    found = wet_bulb(dry, dew)
    assert float(row["Twb_C_coolprop"]) == pytest.approx(found, abs=0.04)
    if row["Twb_C_psychrolib"] != row["Tdb_C"] and float(row["Twb_C_psychrolib"]) < 100.0:
        assert float(row["Twb_C_psychrolib"]) == pytest.approx(found, abs=1e-3)
    assert float(row["Psat_Pa_psychrolib"]) == pytest.approx(saturation_pressure(dry), rel=1e-5)
    assert float(row["W_kgkg_psychrolib"]) == pytest.approx(humidity_ratio(saturation_pressure(dew)), abs=2e-6)


@pytest.mark.parametrize(("dry", "dew"), [(18.0, 3.0), (64.0, 21.0), (99.0, 33.0), (140.0, 52.0)])
@pytest.mark.parametrize("altitude", [0.0, 1600.0])
def test_off_the_table_and_higher_up(dry: float, dew: float, altitude: float) -> None:
    """Wet bulb by psychrolib at sea level and at 1600 m to 0.002 K; by CoolProp to 0.05 K."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    pressure = pressure_at(altitude)
    found = wet_bulb(dry, dew, pressure)
    ratio = psychrolib.GetHumRatioFromTDewPoint(dew, pressure)
    theirs = psychrolib.GetTWetBulbFromHumRatio(dry, ratio, pressure)
    if theirs < dry - 0.01:  # above the boiling point it may give the dry bulb back
        assert theirs == pytest.approx(found, abs=2e-3)
    kelvin = HAPropsSI("B", "T", dry + 273.15, "D", dew + 273.15, "P", pressure)
    assert kelvin - 273.15 == pytest.approx(found, abs=0.05)


@pytest.mark.parametrize("celsius", [-30.0, -0.5, 0.5, 40.0, 121.1])
def test_saturation_over_ice_and_water(celsius: float) -> None:
    """ASHRAE eqs 5 and 6, as psychrolib has them."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    assert psychrolib.GetSatVapPres(celsius) == pytest.approx(saturation_pressure(celsius), rel=1e-6)


def test_water_boils_colder_higher_up() -> None:
    """100.0 °C at sea level; 95.0 °C at 1500 m (1.8 °F less each 1000 ft, common practice)."""
    assert boiling_point() == pytest.approx(100.0, abs=0.05)
    assert boiling_point(pressure_at(1500.0)) == pytest.approx(95.0, abs=0.2)


def test_a_dew_point_above_the_air_is_refused() -> None:
    """There is no such air."""
    with pytest.raises(OutOfRange):
        wet_bulb(20.0, 25.0)
