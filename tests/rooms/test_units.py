"""Units: exact by definition, there and back."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core import units
from core.units import celsius_from_fahrenheit, fahrenheit_from_celsius, kelvin_from_celsius


@pytest.mark.parametrize(
    ("fahrenheit", "celsius"), [(32.0, 0.0), (212.0, 100.0), (-40.0, -40.0), (145.0, 62.77777777777778), (140.0, 60.0)]
)
def test_fahrenheit(fahrenheit: float, celsius: float) -> None:
    """The fixed points of both scales, and two that the rules are printed in."""
    assert celsius_from_fahrenheit(fahrenheit) == pytest.approx(celsius, abs=1e-12)
    assert fahrenheit_from_celsius(celsius) == pytest.approx(fahrenheit, abs=1e-12)


@given(st.floats(-100.0, 1000.0))
def test_there_and_back(celsius: float) -> None:
    """°C to °F and back loses nothing that a thermometer shows."""
    assert celsius_from_fahrenheit(fahrenheit_from_celsius(celsius)) == pytest.approx(celsius, abs=1e-9)
    assert kelvin_from_celsius(celsius) - celsius == pytest.approx(273.15, abs=1e-9)


def test_pound_inch_and_gallon() -> None:
    """International Yard and Pound Agreement, 1959; the US gallon is 231 cubic inches."""
    assert units.KILOGRAMS_PER_POUND == 0.45359237
    assert units.METRES_PER_INCH == 0.0254
    assert pytest.approx(231 * 2.54**3 / 1000, rel=1e-12) == units.LITRES_PER_US_GALLON
    assert units.KILOGRAMS_PER_OUNCE * 16 == units.KILOGRAMS_PER_POUND
