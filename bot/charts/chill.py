"""A piece that cools: the core as read and as expected, under the stairs of the cooling rules."""

import math
from datetime import datetime
from itertools import cycle
from typing import TYPE_CHECKING, Any, Final

from bot.charts.hours import Flag, Flags, Span, clock, mark_hours, say_nothing, span
from bot.charts.look import HEIGHT, INK, LARGE, MUTED, page, png
from bot.charts.shown import Chill, Frame, Rule
from bot.charts.strokes import (
    CORE,
    Key,
    at_most,
    band_key,
    degree_sign,
    degrees,
    draw_curve,
    draw_readings,
    line_key,
    reach,
    temperature_key,
)
from bot.labels import ChillWords

if TYPE_CHECKING:
    from matplotlib.axes import Axes

LEFT: Final = 104.0
BOTTOM: Final = HEIGHT - 88.0
USUAL_C: Final = (0.0, 60.0)
TOO_WARM: Final[dict[str, Any]] = {
    "facecolor": "none",
    "edgecolor": "#a79f90",
    "hatch": "\\\\",
    "linewidth": 0.0,
    "zorder": 0,
}
STAIRS: Final[tuple[dict[str, Any], ...]] = (
    {"color": INK, "linestyle": "-", "linewidth": 2.4, "marker": "v", "markersize": 10, "zorder": 4},
    {"color": MUTED, "linestyle": (0, (4, 1.5)), "linewidth": 2.4, "marker": "^", "markersize": 10, "zorder": 4},
)


def draw(chill: Chill, words: ChillWords, frame: Frame) -> bytes:
    """The picture of a piece that cools, as PNG bytes."""
    moments = _moments(chill)
    shown = span(moments, (chill.now,), frame.zone)
    with page(frame.title) as sheet:
        sheet.key(_key(chill, words))
        axes = Flags(sheet, shown, _flags(chill, words, (shown, frame))).axes(LEFT, BOTTOM)
        axes.set_ylabel(f"{words.temperature}, {degree_sign(frame.units)}", size=LARGE, color=INK, parse_math=False)
        axes.set_ylim(*(degrees(end, frame.units) for end in _reach(chill)))
        mark_hours(axes, shown, frame)
        if not moments:
            say_nothing(axes, frame.nothing)
        _rules(axes, chill, shown, frame)
        draw_curve(axes, chill.expected, shown, frame.units)
        draw_readings(axes, chill.readings, shown, (frame.units, CORE))
        return png(sheet)


def _moments(chill: Chill) -> list[datetime]:
    """Every time that the picture must hold."""
    corners = [at for rule in chill.rules for at, _ in rule.corners]
    return [*(at for at, _ in chill.readings), *chill.expected.at, *corners]


def _reach(chill: Chill) -> tuple[float, float]:
    """The ends of the temperature axis. [°C]"""
    corners = [celsius for rule in chill.rules for _, celsius in rule.corners]
    return reach([*corners, *(celsius for _, celsius in chill.readings)], chill.expected, USUAL_C)


def _key(chill: Chill, words: ChillWords) -> Key:
    key = temperature_key(bool(chill.readings), chill.expected, (words.core, words.expected, words.band))
    key += [(line_key(stairs), rule.name) for rule, stairs in zip(chill.rules, cycle(STAIRS), strict=False)]
    if chill.rules:
        key.append((band_key(TOO_WARM), words.too_warm))
    return key


def _flags(chill: Chill, words: ChillWords, where: tuple[Span, Frame]) -> list[Flag]:
    """Now, and for each corner of a rule down to what by when."""
    shown, frame = where
    flags = [Flag(chill.now, f"{words.now} {clock(chill.now, shown)}", bold=True)] if chill.now else []
    for rule, stairs in zip(chill.rules, cycle(STAIRS), strict=False):
        for at, celsius in rule.corners[1:]:
            wanted = f"{at_most(celsius, frame.units)} {clock(at, shown)}"
            flags.append(Flag(at, wanted, stairs["linestyle"]))
    return flags


def _rules(axes: "Axes", chill: Chill, shown: Span, frame: Frame) -> None:
    """Each rule as stairs; what lies above all of them breaks every rule, and is hatched."""
    for rule, stairs in zip(chill.rules, cycle(STAIRS), strict=False):
        hours = [shown.hours(at) for at, _ in rule.corners]
        heights = [degrees(celsius, frame.units) for _, celsius in rule.corners]
        # the last step of the stairs goes on to the end of the picture
        corners = list(range(1, len(hours)))
        axes.step([*hours, shown.length], [*heights, *heights[-1:]], where="post", markevery=corners, **stairs)
    steps = sorted({shown.hours(at) for rule in chill.rules for at, _ in rule.corners})
    if steps:
        allowed = [degrees(_allowed(chill.rules, step, shown), frame.units) for step in steps]
        roof = axes.get_ylim()[1]
        floor = [min(height, roof) for height in [*allowed, allowed[-1]]]
        axes.fill_between([*steps, shown.length], floor, roof, step="post", **TOO_WARM)


def _allowed(rules: tuple[Rule, ...], hour: float, shown: Span) -> float:
    """The warmest that a core may be just after an hour, by the rule that allows most. [°C]"""
    return max(
        min((celsius for at, celsius in rule.corners if shown.hours(at) <= hour), default=math.inf) for rule in rules
    )
