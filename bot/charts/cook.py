"""A cook so far and ahead: core and pit as read, the core as expected with its band, target, stall and marks."""

from datetime import datetime
from typing import TYPE_CHECKING, Any, Final

from bot.charts.hours import Flag, Flags, Span, clock, mark_hours, say_nothing, span
from bot.charts.look import FIRE, HEIGHT, INK, LARGE, MUTED, SMALL, outlined, page, png
from bot.charts.shown import Cook, Frame
from bot.charts.strokes import (
    CORE,
    PIT,
    Key,
    degree_sign,
    degrees,
    draw_curve,
    draw_readings,
    line_key,
    reach,
    temperature_key,
)
from bot.labels import CookWords

if TYPE_CHECKING:
    from matplotlib.axes import Axes

LEFT: Final = 104.0
BOTTOM: Final = HEIGHT - 88.0
PIT_SET: Final[dict[str, Any]] = {"color": FIRE, "linestyle": (0, (6, 2, 1, 2)), "linewidth": 1.6, "zorder": 2}
USUAL_C: Final = (0.0, 100.0)


def draw(cook: Cook, words: CookWords, frame: Frame) -> bytes:
    """The picture of a cook, as PNG bytes."""
    shown = _span(cook, frame)
    with page(frame.title) as sheet:
        sheet.key(_key(cook, words))
        flags = Flags(sheet, shown, _flags(cook, words, shown))
        axes = flags.axes(LEFT, BOTTOM)
        axes.set_ylabel(f"{words.temperature}, {degree_sign(frame.units)}", size=LARGE, color=INK, parse_math=False)
        axes.set_ylim(*(degrees(end, frame.units) for end in _reach(cook)))
        mark_hours(axes, shown, frame)
        if not _moments(cook):
            say_nothing(axes, frame.nothing)
        _temperatures(axes, cook, shown, frame)
        if cook.stall:
            begin, end = (shown.hours(moment) for moment in cook.stall)
            _stall(axes, (begin, end), flags.clear(begin, end), words)
        _target(axes, cook, shown, (words, frame))
        return png(sheet)


def _moments(cook: Cook) -> list[datetime]:
    """Every time that the picture must hold."""
    readings = [at for at, _ in (*cook.core, *cook.pit)]
    return [*readings, *cook.expected.at, *(cook.ready or ()), *(cook.stall or ())]


def _span(cook: Cook, frame: Frame) -> Span:
    return span(_moments(cook), (cook.now, cook.deadline, cook.wrap, cook.wrap_by), frame.zone)


def _reach(cook: Cook) -> tuple[float, float]:
    """The ends of the temperature axis. [°C]"""
    readings = [celsius for _, celsius in (*cook.core, *cook.pit)]
    lines = [line for line in (cook.pit_set, cook.target) if line is not None]
    return reach([*readings, *lines], cook.expected, USUAL_C)


def _key(cook: Cook, words: CookWords) -> Key:
    key = temperature_key(bool(cook.core), cook.expected, (words.core, words.expected, words.band))
    if cook.pit:
        key.append((line_key(PIT), words.pit))
    if cook.pit_set is not None:
        key.append((line_key(PIT_SET), words.pit_set))
    return key


def _flags(cook: Cook, words: CookWords, shown: Span) -> list[Flag]:
    """Now, the wrap, when it is ready and when it has to be off."""
    flags = []
    if cook.wrap:
        flags.append(Flag(cook.wrap, f"{words.wrap} {clock(cook.wrap, shown)}", (0, (4, 2, 1, 2))))
    if cook.wrap_by:
        flags.append(Flag(cook.wrap_by, f"{words.wrap_by} {clock(cook.wrap_by, shown)}", (0, (4, 2, 1, 2))))
    if cook.now:
        flags.append(Flag(cook.now, f"{words.now} {clock(cook.now, shown)}", "-", bold=True))
    if cook.ready:
        flags.append(Flag(cook.ready[1], f"{words.ready} {clock(cook.ready[1], shown)}", (0, (1, 4)), bold=True))
    if cook.deadline:
        flags.append(Flag(cook.deadline, f"{words.deadline} {clock(cook.deadline, shown)}", (0, (8, 3))))
    return flags


def _temperatures(axes: "Axes", cook: Cook, shown: Span, frame: Frame) -> None:
    """What was read and what is expected."""
    if cook.pit_set is not None:
        axes.axhline(degrees(cook.pit_set, frame.units), **PIT_SET)
    draw_curve(axes, cook.expected, shown, frame.units)
    draw_readings(axes, cook.pit, shown, (frame.units, PIT))
    draw_readings(axes, cook.core, shown, (frame.units, CORE))


def _stall(axes: "Axes", hours: tuple[float, float], middle: float, words: CookWords) -> None:
    """The stall as a span of dots, named at its foot. [h]"""
    axes.axvspan(*hours, facecolor="none", edgecolor=MUTED, hatch="..", linewidth=0, alpha=0.45, zorder=0)
    foot: dict[str, Any] = {"transform": axes.get_xaxis_transform(), "ha": "center", "va": "bottom"}
    axes.text(middle, 0.03, words.stall, size=LARGE, color=INK, parse_math=False, **foot, **outlined())


def _target(axes: "Axes", cook: Cook, shown: Span, said: tuple[CookWords, Frame]) -> None:
    """The target as a line, and on it when it is met: 10 to 90 % as a bar, the median as a diamond."""
    words, frame = said
    if cook.target is None:
        return
    target = degrees(cook.target, frame.units)
    axes.axhline(target, color=INK, linewidth=1.6, zorder=2)
    how: dict[str, Any] = {"size": SMALL, "color": INK, "parse_math": False, "zorder": 7, **outlined()}
    axes.annotate(words.target, (0, target), (6, 4), textcoords="offset points", va="bottom", **how)
    if cook.ready:
        low, middle, high = (shown.hours(moment) for moment in cook.ready)
        axes.plot([low, high], [target] * 2, color=INK, linewidth=6, solid_capstyle="butt", zorder=6)
        axes.plot(middle, target, "D", color=INK, markersize=11, markeredgecolor="white", zorder=7)
