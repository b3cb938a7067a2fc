"""Readings, curves and bands as strokes that can be told apart without colour."""

import math
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, Any, Final

from bot.charts.hours import Span
from bot.charts.look import BLUSH, FIRE, MEAT, PAPER
from bot.charts.shown import Band, Curve, Readings
from core.person import Units
from core.units import fahrenheit_from_celsius

if TYPE_CHECKING:
    from matplotlib.artist import Artist
    from matplotlib.axes import Axes

ROOM_C: Final = 8.0  # above the hottest thing that is shown
ROUNDING: Final = 0.1  # of a tenth: 26.67 °C is 80 °F, and no thermometer knows better
CORE: dict[str, Any] = {
    "color": MEAT,
    "linestyle": "-",
    "linewidth": 2.2,
    "marker": "o",
    "markersize": 8,
    "markeredgecolor": PAPER,
    "markeredgewidth": 1.2,
    "zorder": 5,
}
PIT: dict[str, Any] = {
    "color": FIRE,
    "linestyle": (0, (1, 1.2)),
    "linewidth": 2.0,
    "marker": "s",
    "markersize": 6.5,
    "markerfacecolor": PAPER,
    "markeredgecolor": FIRE,
    "markeredgewidth": 1.8,
    "zorder": 4,
}
EXPECTED: dict[str, Any] = {"color": MEAT, "linestyle": (0, (5, 2)), "linewidth": 3.0, "zorder": 3}
BAND: dict[str, Any] = {"facecolor": BLUSH, "edgecolor": "#dd9f88", "hatch": "///", "linewidth": 0.0, "zorder": 1}


def degrees(celsius: float, units: Units) -> float:
    """A temperature as the person reads it. [°C or °F]"""
    return fahrenheit_from_celsius(celsius) if units.temperature == "f" else celsius


def degree_sign(units: Units) -> str:
    """The person's unit of temperature."""
    return "°F" if units.temperature == "f" else "°C"


def at_most(celsius: float, units: Units) -> str:
    """A limit that must not be passed, written to a tenth and never above itself."""
    return _tenth(math.floor(degrees(celsius, units) * 10 + ROUNDING), units)


def at_least(celsius: float, units: Units) -> str:
    """A temperature that must be reached, written to a tenth and never below itself."""
    return _tenth(math.ceil(degrees(celsius, units) * 10 - ROUNDING), units)


def _tenth(tenths: int, units: Units) -> str:
    return f"{tenths / 10:.1f}".removesuffix(".0") + f" {degree_sign(units)}"


Key = list[tuple["Artist", str]]


def line_key(style: dict[str, Any]) -> "Artist":
    """A stroke for the key."""
    from matplotlib.lines import Line2D

    return Line2D([], [], **style)


def band_key(style: dict[str, Any]) -> "Artist":
    """A band for the key."""
    from matplotlib.patches import Patch

    return Patch(**{name: value for name, value in style.items() if name != "zorder"})


def temperature_key(readings: bool, expected: Curve, words: tuple[str, str, str]) -> Key:
    """The key of a core: as read, as expected, and the band; what is not drawn is not explained."""
    core, curve, band = words
    key: Key = [(line_key(CORE), core)] if readings else []
    if expected.celsius.p50:
        key.append((line_key(EXPECTED), curve))
    if expected.celsius.p10:
        key.append((band_key(BAND), band))
    return key


def draw_readings(axes: "Axes", readings: Readings, shown: Span, how: tuple[Units, dict[str, Any]]) -> None:
    """Readings as markers on a line; one alone is a marker."""
    units, style = how
    ordered = sorted(readings)
    hours = [shown.hours(at) for at, _ in ordered]
    axes.plot(hours, [degrees(celsius, units) for _, celsius in ordered], **style)


def draw_curve(axes: "Axes", curve: Curve, shown: Span, units: Units) -> None:
    """A median with its band."""
    hours = [shown.hours(at) for at in curve.at]
    low, middle, high = (
        _degrees(values, units) for values in (curve.celsius.p10, curve.celsius.p50, curve.celsius.p90)
    )
    draw_band(axes, hours, Band(tuple(low), tuple(middle), tuple(high)))


def reach(values: Iterable[float], curve: Curve, usual: tuple[float, float]) -> tuple[float, float]:
    """The ends of a temperature axis: the usual ones, and farther where there is something to show. [°C]"""
    low, high = usual
    known = [*values, *curve.celsius.p10, *curve.celsius.p50, *curve.celsius.p90]
    return min([low, *(value - ROOM_C / 2 for value in known)]), max([high, *known]) + ROOM_C


def draw_band(axes: "Axes", x: Sequence[float], band: Band) -> None:
    """A median with its band, in units of the axes; either may be missing."""
    if band.p10 and band.p90:
        axes.fill_between(x, band.p10, band.p90, **BAND)
    if band.p50:
        axes.plot(x, band.p50, **EXPECTED)


def _degrees(celsius: Iterable[float], units: Units) -> tuple[float, ...]:
    return tuple(degrees(value, units) for value in celsius)
